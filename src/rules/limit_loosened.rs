//! A limit that allows more than it does where the limits are guarded.

use super::finding::Finding;
use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;
use super::words;
use crate::model::Boat;
use crate::model::Book;
use crate::model::LimitKey;
use crate::model::Limits;
use crate::model::Name;
use crate::model::Part;
use crate::model::Place;
use crate::model::Span;
use crate::working::InForce;
use crate::working::Layer;
use crate::working::LimitSaid;

pub(super) static RULE: Rule = Rule {
    id: "limit-loosened",
    level: Level::Fault,
    checks: "A limit in force for a boat allows more than it does in the commit that the rules are taken from. Asked for with --rules-from.",
    reason: "A boat must not become good by moving the limit in the same change that moves the boat.",
    remedy: "Put the limit back. If the club has decided to loosen it, commit that alone, with its source, and have it agreed.",
    formula: "least now < least there, or most now > most there, or switched off",
    default: "-",
    sources: &[sources::CLUB.at("who may loosen a limit")],
    example: Example {
        wrong: &[(
            "club.yaml",
            "",
            "people:",
            "limits:\n  surfboat:\n    loose: {most: 18}  # <--\npeople:",
        )],
        right: &[(
            "club.yaml",
            "",
            "people:",
            "limits:\n  surfboat:\n    loose: {most: 14}\npeople:",
        )],
    },
    looks: Looks::BesideEarlier,
};

/// The parts of a limit that allow more when they move one way.
const PARTS: [Part; 4] = [Part::Least, Part::Most, Part::Within, Part::InAll];

/// Tells every limit that is looser in a book than where it is guarded; places are of the book.
#[must_use]
pub fn loosened(own: &Book, guarded: &Book) -> Vec<Finding> {
    let mut findings: Vec<Finding> = Vec::new();
    for finding in own.boats.iter().flat_map(|boat| of_boat(own, guarded, boat)) {
        let is_told = |one: &Finding| one.name == finding.name && one.labels == finding.labels;
        let told = findings.iter().any(is_told);
        if !told {
            findings.push(finding);
        }
    }
    findings
}

fn of_boat(own: &Book, guarded: &Book, boat: &Boat) -> Vec<Finding> {
    // Where the guarded book does not know her, she has no limits of her own there.
    let unknown = Boat { limits: Limits::default(), ..boat.clone() };
    let there = guarded.boat(&boat.id.value).unwrap_or(&unknown);
    let (now, there) = (InForce::new(own, boat), InForce::new(guarded, there));
    let each = LimitKey::ALL.iter().map(|(key, _, _)| *key);
    let parts = each.flat_map(|key| PARTS.map(|part| (key, part)));
    parts.filter_map(|(key, part)| one(own, boat, [now, there], (key, part))).collect()
}

fn one(
    own: &Book,
    boat: &Boat,
    [now, there]: [InForce; 2],
    of: (LimitKey, Part),
) -> Option<Finding> {
    let (key, part) = of;
    let before = there.limit(key, part)?;
    let after = now.limit(key, part);
    let looser = match (&after, part) {
        (None, _) => true,
        (Some(after), Part::Least) => is_less(after.value, before.value),
        (Some(after), _) => is_less(before.value, after.value),
    };
    if !looser {
        return None;
    }
    let unit = key.quantity(part).map_or("", |quantity| quantity.unit());
    let figure = |value: f64| words::number(value, unit);
    let is = after.map_or("no limit".to_owned(), |after| figure(after.value));
    let said = now.said(key, part).next();
    let (name, place) = whereabouts(own, boat, key, said.as_ref());
    let was = format!("{} {}", part.key(), figure(before.value));
    Some(Finding::new(&RULE, name, place, format!("{was} there")).saying(format!(
        "{}: the limit {} allows more than it did: {was} became {is} (there: {})",
        boat.called(),
        key.key(),
        before.from,
    )))
}

/// Figures of limits are exact; what sums of them lose is no loosening.
fn is_less(one: f64, other: f64) -> bool {
    other - one > 1e-9
}

/// Returns the name and place of a limit as it is set now; what is set nowhere is told at the
/// top of the club's settings.
fn whereabouts(own: &Book, boat: &Boat, key: LimitKey, said: Option<&LimitSaid>) -> (Name, Place) {
    let layer = said.map(|said| said.layer);
    let limits = match layer {
        Some(Layer::Boat) => Some(&boat.limits),
        Some(Layer::Club) => {
            let class = boat.class.as_ref().map(|class| &class.value);
            let of_class = own.club.limits.iter().find(|club| Some(&club.class.value) == class);
            of_class.map(|club| &club.limits)
        }
        _ => None,
    };
    let place = limits.and_then(|limits| limits.of(key)).map(|set| set.place);
    let class = boat.class.as_ref().map_or("", |class| class.value.as_str());
    let name = match layer {
        Some(Layer::Boat) => boat.record().at("limits").at(key.key()),
        _ => Name::record("club").at("limits").at(class).at(key.key()),
    };
    let top = own.club.file.map(|file| Place { file, span: Span { start: 0, end: 0 } });
    (name, place.or(top).unwrap_or(boat.id.place))
}
