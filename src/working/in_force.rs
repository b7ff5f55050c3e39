//! What is in force for one boat: oar angles, and limits with who set them.

use super::tools::Tools;
use crate::model::Boat;
use crate::model::Book;
use crate::model::Class;
use crate::model::LimitKey;
use crate::model::Limits;
use crate::model::Part;
use crate::model::Place;
use crate::model::Placed;
use crate::model::SetLimit;

/// The class whose danger limits hold where nothing else sets them.
const FALLBACK_CLASS: &str = "surfboat";

/// One figure of a limit, in force.
#[derive(Clone, Debug, PartialEq)]
pub struct LimitInForce {
    /// The figure.
    pub value: f64,
    /// Who set it: a class, or a file and line.
    pub from: String,
    /// Where the figure comes from.
    pub source: String,
    /// Where it was written.
    pub place: Place,
}

/// Who may set a limit, in the order of say.
#[derive(Clone, Copy, Debug, Eq, PartialEq)]
pub enum Layer {
    /// The boat herself.
    Boat,
    /// The club, for the boat's class.
    Club,
    /// The boat's class.
    Class,
    /// The program's own class, for limits that guard life.
    Fallback,
}

/// What one layer says of one figure of a limit.
#[derive(Clone, Debug, PartialEq)]
pub struct LimitSaid {
    /// The layer.
    pub layer: Layer,
    /// Who set it: a class, or a file and line.
    pub from: String,
    /// Whether the limit is switched off here. One that guards life stays in force all the same.
    pub off: bool,
    /// The figure; none where the limit is switched off.
    pub limit: Option<LimitInForce>,
}

/// What is in force for one boat.
#[derive(Clone, Copy)]
pub struct InForce<'b> {
    book: &'b Book,
    boat: &'b Boat,
    /// The boat's class, where there is one.
    pub class: Option<&'b Class>,
}

impl<'b> InForce<'b> {
    /// Looks up what is in force for a boat.
    #[must_use]
    pub fn new(book: &'b Book, boat: &'b Boat) -> Self {
        let class = boat.class.as_ref().and_then(|class| book.class(&class.value));
        Self { book, boat, class }
    }

    /// Returns how finely tools read on the boat's rigging day.
    #[must_use]
    pub fn tools(&self) -> Tools<'b> {
        Tools::of_day(self.book, self.boat)
    }

    /// Returns one figure of a limit, unless it is switched off or set nowhere.
    ///
    /// The boat's own limits win over the club's, the club's over the class's, figure by figure.
    /// A limit that guards life can't be switched off: where nothing sets it, the program's own
    /// class does.
    #[must_use]
    pub fn limit(&self, key: LimitKey, part: Part) -> Option<LimitInForce> {
        let mut said = self.said(key, part);
        said.find(|said| !said.off || !key.guards_life())?.limit
    }

    /// Returns what each layer says of one figure of a limit, in the order of say: the boat, the
    /// club, the class, and for a limit that guards life the program's own class.
    ///
    /// The first that says anything wins; of a limit that guards life, the first with a figure.
    pub fn said(&self, key: LimitKey, part: Part) -> impl Iterator<Item = LimitSaid> {
        let this = *self;
        let layers = this.layers().filter_map(move |(limits, layer)| {
            let set = limits.of(key)?;
            if set.off {
                let from = this.set_at(set.place, layer);
                return Some(LimitSaid { layer, from, off: true, limit: None });
            }
            this.figure(set, part, layer).map(|limit| this.figured(layer, limit))
        });
        layers.chain(this.fallback(key, part))
    }

    fn layers(&self) -> impl Iterator<Item = (&'b Limits, Layer)> + use<'b> {
        let class_id = self.boat.class.as_ref().map(|class| class.value.as_str());
        let of_club = move |limits: &&'b crate::model::ClubLimits| {
            Some(limits.class.value.as_str()) == class_id
        };
        let club = self.book.club.limits.iter().find(of_club);
        let boat = Some((&self.boat.limits, Layer::Boat));
        let club = club.map(|club| (&club.limits, Layer::Club));
        let class = self.class.map(|class| (&class.limits, Layer::Class));
        boat.into_iter().chain(club).chain(class)
    }

    fn figured(&self, layer: Layer, limit: LimitInForce) -> LimitSaid {
        LimitSaid { layer, from: limit.from.clone(), off: false, limit: Some(limit) }
    }

    fn figure(&self, set: &SetLimit, part: Part, layer: Layer) -> Option<LimitInForce> {
        let bound = set.bounds.iter().find(|bound| bound.part == part)?;
        let source = set.source.as_ref().map(|source| source.value.clone());
        let place = bound.value.place;
        Some(LimitInForce {
            value: bound.value.value,
            from: self.set_at(place, layer),
            source: source.unwrap_or_else(|| "set by the club".to_owned()),
            place,
        })
    }

    /// Returns where something was set, as people say it: the program's own class by its name,
    /// all else by file and line.
    #[must_use]
    pub fn set_at(&self, place: Place, layer: Layer) -> String {
        let file = self.book.file(place.file);
        match (layer, self.class) {
            (Layer::Fallback, _) => format!("class {FALLBACK_CLASS}"),
            (Layer::Class, Some(class)) if file.built_in => format!("class {}", class.id.value),
            _ => self.book.file_and_line(place),
        }
    }

    /// What the program's own class says of a limit that guards life, where the boat's own class
    /// says nothing.
    fn fallback(&self, key: LimitKey, part: Part) -> Option<LimitSaid> {
        let of = |class: &Class| self.figure(class.limits.of(key)?, part, Layer::Fallback);
        let own = self.class.and_then(of);
        if own.is_some() || !key.guards_life() {
            return None;
        }
        let limit = of(self.book.class(FALLBACK_CLASS)?)?;
        Some(self.figured(Layer::Fallback, limit))
    }

    /// Returns the dip of the oars.
    #[must_use]
    pub fn dip(&self) -> Option<Placed<f64>> {
        let dip = self.class?.oar_angle.dip?;
        Some(Placed { value: dip.value.as_deg(), place: dip.place })
    }
}
