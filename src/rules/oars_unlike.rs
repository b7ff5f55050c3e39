//! Oars of one set that are not alike.

use super::apart;
use super::apart::Apart;
use super::apart::Measure;
use super::finding::Finding;
use super::finding::NotChecked;
use super::finding::Outcome;
use super::judging::Judged;
use super::judging::Range;
use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;
use super::words;
use crate::model::Book;
use crate::model::LimitKey;
use crate::model::Name;
use crate::model::Oar;
use crate::model::OarSet;
use crate::model::Part;
use crate::model::Place;
use crate::units::Date;
use crate::working::Budget;
use crate::working::InForce;
use crate::working::LimitInForce;
use crate::working::OarSight;
use crate::working::Tools;
use crate::working::Unit;
use crate::working::Worked;

pub(super) static RULE: Rule = Rule {
    id: "oars-unlike",
    level: Level::Fault,
    checks: "The oars of a set, spares among them, differ in length, inboard, own pitch, widest section or flex by more than the limit.",
    reason: "A boat rowed with unlike oars is pulled crooked, and a rowlock set for one oar may hold \
             the next one too tight or let it jump out.",
    remedy: "Measure the odd oar again; bring it in line with the set, or take it out of the set.",
    formula: "highest less lowest of each; flex as the drop under one load at one reach, drop x (load0 / load) x (at0 / at)^3, in parts of a hundred of the mean",
    default: "length 5 mm, inboard 5 mm, own pitch 0.5 deg, widest section 1.5 mm, flex 10 %; of several boats that carry the set, the strictest limit",
    sources: &[
        sources::CLUB.at("all five"),
        sources::GEOMETRY.at("the end of a beam held at one end drops with the cube of its length"),
    ],
    example: Example {
        wrong: &[
            ("oars/long-ash.yaml", "oar: A3", "length: 3860", "length: 3872  # <--"),
            ("oars/long-ash.yaml", "oar: A2", "inboard: 1150", "inboard: 1140  # <--"),
            ("oars/long-ash.yaml", "oar: A4", "pitch: 0 deg", "pitch: 1.5 deg  # <--"),
            ("oars/long-ash.yaml", "oar: A5", "leather: wet}", "leather: wet}  # <--"),
            ("oars/long-ash.yaml", "oar: A5", "widest: 52", "widest: 50"),
            (
                "oars/long-ash.yaml",
                "oar: A1",
                "{drop: 70, load-kg: 10, at: 2500}",
                "{drop: 90, load-kg: 10, at: 2500}  # <--",
            ),
        ],
        right: &[
            ("oars/long-ash.yaml", "oar: A5", "length: 3860", "length: 3864"),
            ("oars/long-ash.yaml", "oar: A5", "inboard: 1150", "inboard: 1145"),
            ("oars/long-ash.yaml", "oar: A5", "widest: 52", "widest: 50.6"),
            (
                "oars/long-ash.yaml",
                "oar: A5",
                "{drop: 70, load-kg: 10, at: 2500}",
                "{drop: 39, load-kg: 10, at: 2000}",
            ),
        ],
    },
    looks: Looks::AtTheBook(check),
};

/// One thing in which the oars of a set should be alike.
struct Likeness {
    key: LimitKey,
    unit: Unit,
    called: &'static str,
    read: fn(&OarSight, Reference) -> Worked,
    found_at: fn(&Oar) -> (&'static str, Option<Place>),
    /// How an odd oar is brought in line.
    cure: &'static str,
}

impl Likeness {
    fn measure(&self) -> Measure {
        if self.unit == Unit::Percent { Measure::Percent } else { Measure::Own }
    }
}

/// The load and the reach that every drop is brought to.
#[derive(Clone, Copy)]
struct Reference {
    load: f64,
    at: f64,
}

const LIKENESSES: [Likeness; 5] = [
    Likeness {
        key: LimitKey::OarLength,
        unit: Unit::Mm,
        called: "length",
        read: |sight, _| sight.length(),
        found_at: |oar| ("length", oar.length.as_ref().map(|read| read.place)),
        cure: "a longer oar can be cut at the handle, a shorter one can't be helped",
    },
    Likeness {
        key: LimitKey::OarInboard,
        unit: Unit::Mm,
        called: "inboard",
        read: |sight, _| sight.inboard(),
        found_at: |oar| ("inboard", oar.inboard.as_ref().map(|read| read.place)),
        cure: "slide its collar, to the handle for less inboard, to the blade for more",
    },
    Likeness {
        key: LimitKey::OarPitch,
        unit: Unit::Deg,
        called: "own pitch",
        read: |sight, _| sight.own_pitch(),
        found_at: |oar| ("pitch", oar.pitch.as_ref().map(|read| read.place)),
        cure: "pack or plane the flat under its leather",
    },
    Likeness {
        key: LimitKey::OarShaft,
        unit: Unit::Mm,
        called: "widest section",
        read: |sight, _| sight.widest(),
        found_at: widest_at,
        cure: "give it a leather as thick as the others'",
    },
    Likeness {
        key: LimitKey::OarFlex,
        unit: Unit::Percent,
        called: "flex",
        read: |sight, reference| sight.drop_under(reference.load, reference.at),
        found_at: |oar| ("flex/drop", oar.flex.drop.as_ref().map(|read| read.place)),
        cure: "no oar is made stiffer at the boat: row it in another set",
    },
];

fn widest_at(oar: &Oar) -> (&'static str, Option<Place>) {
    let place = oar.shaft.widest().map(|read| read.place);
    let round = oar.shaft.widest.is_none() && oar.shaft.round.is_some();
    (if round { "shaft/round" } else { "shaft/widest" }, place)
}

fn check(book: &Book, _: Date) -> Vec<Outcome> {
    let of_set = |set| LIKENESSES.iter().flat_map(move |likeness| one(book, set, likeness));
    book.oar_sets.iter().flat_map(of_set).collect()
}

fn one(book: &Book, set: &OarSet, likeness: &Likeness) -> Vec<Outcome> {
    if book.boats_with(set).next().is_none() {
        return no_boat(set, likeness);
    }
    let tools = Tools::of_club(book);
    let strictest = strictest(book, set, likeness.key);
    let range = Range::of_figures(tools, None, strictest, likeness.unit);
    let reference = reference(set);
    let read = |oar| {
        let sight = OarSight { tools, oar };
        (sight, (likeness.read)(&sight, reference))
    };
    let say = |oars: &Apart<OarSight>, by: &Budget, judged: &Judged, range: &Range| {
        told(set, likeness, oars).saying(format!(
            "{}: the oars differ in {} by {}: {}; the odd one is {}",
            set.id.value,
            likeness.called,
            words::measured(by, likeness.unit),
            range.beyond(judged),
            oars.odd_one().0.oar.called(),
        ))
    };
    let (oars, name) = (set.oars.iter().map(read), Name::record(&set.id.value));
    apart::judge_as(likeness.measure(), range.as_ref(), &RULE, &name, oars, say)
}

/// A finding at the odd oar, with what to do about it.
fn told(set: &OarSet, likeness: &Likeness, oars: &Apart<OarSight>) -> Finding {
    let odd = oars.odd_one().0.oar;
    let name = set.name_of(odd).at((likeness.found_at)(odd).0);
    // A flex is compared in parts of a hundred, and shown as the drop in millimetres.
    let percent = likeness.measure() == Measure::Percent;
    let unit = if percent { Unit::Mm } else { likeness.unit };
    let label = |(sight, value): &(OarSight, Budget)| {
        let place = (likeness.found_at)(sight.oar).1.unwrap_or(sight.oar.place);
        (place, format!("{}: {}", sight.oar.called(), words::number(value.value(), unit.word())))
    };
    apart::labelled(&RULE, name, oars, label).remedy(format!(
        "Measure the {} of {} again. If it still differs, bring it in line ({}), or take it out of the set.",
        likeness.called,
        odd.called(),
        likeness.cure
    ))
}

/// No boat, no class, no limit; told once a set.
fn no_boat(set: &OarSet, likeness: &Likeness) -> Vec<Outcome> {
    let missing = vec!["a boat that carries the set".to_owned()];
    let name = Name::record(&set.id.value);
    let first = likeness.key == LIKENESSES[0].key;
    let missing = NotChecked { rule: RULE.id, name, missing };
    first.then_some(Outcome::NotChecked(missing)).into_iter().collect()
}

/// Returns the least of the limits of every boat that carries the set.
fn strictest(book: &Book, set: &OarSet, key: LimitKey) -> Option<LimitInForce> {
    let limits =
        book.boats_with(set).filter_map(|boat| InForce::new(book, boat).limit(key, Part::Most));
    limits.min_by(|one, other| one.value.total_cmp(&other.value))
}

/// Returns the load and the reach of the first oar that was hung with a weight. Which oar's they
/// are makes no difference to a part of a hundred.
fn reference(set: &OarSet) -> Reference {
    let hung = |oar: &Oar| {
        let load = oar.flex.load.as_ref()?.values.first()?.as_kg();
        Some(Reference { load, at: oar.flex.at.as_ref()?.values.first()?.as_mm() })
    };
    set.oars.iter().find_map(hung).unwrap_or(Reference { load: 1.0, at: 1.0 })
}
