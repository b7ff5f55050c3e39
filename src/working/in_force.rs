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
        for (limits, whose) in self.layers() {
            let Some(set) = limits.of(key) else { continue };
            if set.off && !key.guards_life() {
                return None;
            }
            if let Some(limit) = self.figure(set, part, whose) {
                return Some(limit);
            }
        }
        if key.guards_life() { self.fallback(key, part) } else { None }
    }

    fn layers(&self) -> impl Iterator<Item = (&'b Limits, Whose)> {
        let class_id = self.boat.class.as_ref().map(|class| class.value.as_str());
        let of_club = move |limits: &&'b crate::model::ClubLimits| {
            Some(limits.class.value.as_str()) == class_id
        };
        let club = self.book.club.limits.iter().find(of_club);
        let boat = Some((&self.boat.limits, Whose::Set));
        let club = club.map(|club| (&club.limits, Whose::Set));
        let class = self.class.map(|class| (&class.limits, Whose::Class));
        boat.into_iter().chain(club).chain(class)
    }

    fn figure(&self, set: &SetLimit, part: Part, whose: Whose) -> Option<LimitInForce> {
        let bound = set.bounds.iter().find(|bound| bound.part == part)?;
        let source = set.source.as_ref().map(|source| source.value.clone());
        let place = bound.value.place;
        Some(LimitInForce {
            value: bound.value.value,
            from: self.from(place, whose),
            source: source.unwrap_or_else(|| "set by the club".to_owned()),
            place,
        })
    }

    fn from(&self, place: Place, whose: Whose) -> String {
        let file = self.book.file(place.file);
        match (whose, self.class) {
            (Whose::Class, Some(class)) if file.built_in => format!("class {}", class.id.value),
            _ => {
                let line = file.text[..place.span.start].matches('\n').count() + 1;
                format!("{}:{line}", file.path)
            }
        }
    }

    fn fallback(&self, key: LimitKey, part: Part) -> Option<LimitInForce> {
        let class = self.book.class(FALLBACK_CLASS)?;
        let limit = self.figure(class.limits.of(key)?, part, Whose::Class)?;
        Some(LimitInForce { from: format!("class {FALLBACK_CLASS}"), ..limit })
    }

    /// Returns the dip of the oars.
    #[must_use]
    pub fn dip(&self) -> Option<Placed<f64>> {
        let dip = self.class?.oar_angle.dip?;
        Some(Placed { value: dip.value.as_deg(), place: dip.place })
    }
}

#[derive(Clone, Copy)]
enum Whose {
    Set,
    Class,
}
