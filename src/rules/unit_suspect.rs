//! A length that makes sense in another unit only, or in none.

use super::finding::Figure;
use super::finding::Finding;
use super::finding::NotChecked;
use super::finding::Outcome;
use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;
use super::words;
use crate::metrology::decision;
use crate::metrology::decision::Bounds;
use crate::metrology::decision::Verdict;
use crate::model::Boat;
use crate::model::Book;
use crate::model::Class;
use crate::model::Crew;
use crate::model::LengthOf;
use crate::model::Name;
use crate::model::OF_A_ROWER;
use crate::model::OF_AN_OAR;
use crate::model::Oar;
use crate::model::OarSet;
use crate::model::Plausible;
use crate::model::Reading;
use crate::model::Rower;
use crate::model::Seat;
use crate::units::Date;
use crate::units::Length;

pub(super) static RULE: Rule = Rule {
    id: "unit-suspect",
    level: Level::Fault,
    checks: "A length is far from any boat's of the class, most often because it was read in another unit than it is written in.",
    reason: "A gap of 6.0 read in centimetres and written bare stands in the book as 6 mm. Every sum \
             made with it is wrong, and the wrong part gets bent.",
    remedy: "Look at the tool: write the number with the unit it was read in, such as `6.0 cm`, or read it again.",
    formula: "the reading lies outside the class's plausible range; times 10, 25.4 or 1000, or a tenth, a thousandth or 1/25.4 of it may lie inside",
    default: "the class's plausible ranges",
    sources: &[sources::PRACTICE.at("what boats of the class measure")],
    example: Example {
        wrong: &[
            ("boats/kittiwake.yaml", "seat: 1", "chock-to-pin: 600", "chock-to-pin: 60.0  # <--"),
            ("boats/kittiwake.yaml", "seat: 2", "horn: 46", "horn: 1.8  # <--"),
            ("boats/kittiwake.yaml", "seat: 3", "long: 38", "long: 38 cm  # <--"),
            ("oars/long-ash.yaml", "oar: A2", "length: 3860", "length: 3.86  # <--"),
            (
                "crews/masters-a.yaml",
                "seat: 1",
                "leg: 850, weight: 82, foot-hole: 4}",
                "leg: 85, weight: 82, foot-hole: 4}  # <--",
            ),
        ],
        right: &[
            ("boats/kittiwake.yaml", "seat: 2", "horn: 46", "horn: 1.8 in"),
            ("oars/long-ash.yaml", "oar: A2", "length: 3860", "length: 3.86 m"),
            ("crews/masters-a.yaml", "seat: 1", "leg: 850", "leg: 85 cm"),
        ],
    },
    looks: Looks::AtTheBook(check),
};

/// What a number may have been read in, or been written in by mistake: how many of the millimetres
/// that it stands for now it would be.
const UNITS: [(f64, &str); 6] = [
    (10.0, "read in cm"),
    (1000.0, "read in m"),
    (25.4, "read in inches"),
    (1.0 / 10.0, "read in mm and written as cm"),
    (1.0 / 1000.0, "read in mm and written as m"),
    (1.0 / 25.4, "read in mm and written as inches"),
];

fn check(book: &Book, _: Date) -> Vec<Outcome> {
    let boats = book.boats.iter().flat_map(|boat| of_boat(book, boat));
    let sets = book.oar_sets.iter().flat_map(|set| of_set(book, set));
    let crews = book.crews.iter().flat_map(|crew| of_crew(book, crew));
    boats.chain(sets).chain(crews).collect()
}

fn class_of<'b>(book: &'b Book, boat: &Boat) -> Option<&'b Class> {
    book.class(&boat.class.as_ref()?.value)
}

fn of_boat(book: &Book, boat: &Boat) -> Vec<Outcome> {
    let record = boat.record();
    let Some(class) = class_of(book, boat) else { return no_class(record, "class of the boat") };
    let plausible = plausible(class, "", &Seat::LENGTHS);
    let of_seat = |seat: &Seat| {
        let name = seat.number.map_or_else(|| record.at("seats"), |own| record.seat(own.value));
        looked_at(&plausible, &name, seat)
    };
    boat.seats.iter().flat_map(of_seat).collect()
}

fn of_set(book: &Book, set: &OarSet) -> Vec<Outcome> {
    let mut classes = book.boats_with(set).filter_map(|boat| class_of(book, boat));
    let Some(class) = classes.next() else {
        return no_class(Name::record(&set.id.value), "a boat that carries the set");
    };
    let plausible = plausible(class, OF_AN_OAR, &Oar::LENGTHS);
    let of_oar = |oar| looked_at(&plausible, &set.name_of(oar), oar);
    set.oars.iter().flat_map(of_oar).collect()
}

fn of_crew(book: &Book, crew: &Crew) -> Vec<Outcome> {
    let boat = crew.boat.as_ref().and_then(|boat| book.boat(&boat.value));
    let Some(class) = boat.and_then(|boat| class_of(book, boat)) else {
        return no_class(Name::record(&crew.id.value), "boat that the crew rows");
    };
    let plausible = plausible(class, OF_A_ROWER, &Rower::LENGTHS);
    let of_rower = |rower| looked_at(&plausible, &crew.name_of(rower), rower);
    crew.rowers.iter().flat_map(of_rower).collect()
}

fn no_class(name: Name, missing: &str) -> Vec<Outcome> {
    vec![Outcome::NotChecked(NotChecked { rule: RULE.id, name, missing: vec![missing.to_owned()] })]
}

/// Returns the lengths that the class says something of, with what it says.
fn plausible<'b, T>(
    class: &'b Class,
    prefix: &str,
    lengths: &[LengthOf<T>],
) -> Vec<(LengthOf<T>, &'b Plausible)> {
    let ranged = |length: &LengthOf<T>| {
        let own = |range: &&Plausible| range.field.value.strip_prefix(prefix) == Some(length.0);
        Some((*length, class.plausible.iter().find(own)?))
    };
    lengths.iter().filter_map(ranged).collect()
}

/// Looks at every length of one seat, oar or rower.
fn looked_at<T>(plausible: &[(LengthOf<T>, &Plausible)], name: &Name, whose: &T) -> Vec<Outcome> {
    let look = |((field, length), range): &(LengthOf<T>, &Plausible)| {
        one(|| name.key(field), length(whose)?, range)
    };
    plausible.iter().filter_map(look).collect()
}

fn one(name: impl Fn() -> Name, reading: &Reading<Length>, range: &Plausible) -> Option<Outcome> {
    let figure = |length: &Option<crate::model::Placed<Length>>| {
        length.as_ref().map(|length| length.value.as_mm())
    };
    let bounds = Bounds { least: figure(&range.least), most: figure(&range.most) };
    let inside = |value: f64| decision::ordinary(value, 0.0, bounds) == Verdict::Within;
    let value = reading.values.iter().map(|value| value.as_mm()).find(|value| !inside(*value))?;
    let shown = words::limit(value, "mm");
    let fits = UNITS.iter().filter(|(times, _)| inside(value * times));
    let fits: Vec<String> = fits
        .map(|(times, how)| format!("{} if it was {how}", words::number(value * times, "mm")))
        .collect();
    let remedy = if fits.is_empty() {
        "Read it again, and write it with its unit.".to_owned()
    } else {
        format!("It would be {}. Write it with the unit it was read in.", fits.join(", or "))
    };
    let (name, seen) = (name(), seen(bounds));
    let finding = Finding::new(&RULE, name.clone(), reading.place, format!("{shown}?"))
        .saying(format!("{name} is {shown}: far from any boat's ({seen})"))
        .remedy(remedy)
        .judged(Figure { number: value, uncertainty: None, unit: "mm" }, None);
    Some(finding.found())
}

fn seen(bounds: Bounds) -> String {
    match (bounds.least, bounds.most) {
        (Some(least), Some(most)) => format!("{least} to {}", words::limit(most, "mm")),
        (Some(least), None) => format!("at least {}", words::limit(least, "mm")),
        (None, Some(most)) => format!("at most {}", words::limit(most, "mm")),
        (None, None) => "any".to_owned(),
    }
}
