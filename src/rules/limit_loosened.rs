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
        // The same figure of a limit is told of the first boat only.
        let same = |one: &Finding| {
            one.name == finding.name && one.labels[0].text == finding.labels[0].text
        };
        let told = findings.iter().any(same);
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
    let class = |boat: &Boat| boat.class.as_ref().map(|class| class.value.clone());
    let moved = class(boat) != class(there);
    let (now, there) = (InForce::new(own, boat), InForce::new(guarded, there));
    let each = LimitKey::ALL.iter().map(|(key, _, _)| *key);
    let parts = each.flat_map(|key| PARTS.map(|part| (key, part)));
    parts.filter_map(|(key, part)| one(own, boat, moved, [now, there], (key, part))).collect()
}

fn one(
    own: &Book,
    boat: &Boat,
    moved: bool,
    [now, there]: [InForce; 2],
    (key, part): (LimitKey, Part),
) -> Option<Finding> {
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
    let figure = |value: f64| words::limit(value, unit);
    let is = after.map_or("no limit".to_owned(), |after| figure(after.value));
    let layer = now.said(key, part).next().map(|said| said.layer);
    let (name, place) = whereabouts(own, boat, moved, key, layer);
    let was = format!("{} {}", part.key(), figure(before.value));
    Some(Finding::new(&RULE, name, place, format!("{was} in the guarded commit")).saying(format!(
        "{}: the limit {} allows more than it did: {was} became {is} (in the guarded commit: {})",
        boat.called(),
        key.key(),
        before.from,
    )))
}

/// Figures of limits are exact; what sums of them lose is no loosening.
fn is_less(one: f64, other: f64) -> bool {
    other - one > 1e-9
}

/// Returns the name and place of a limit as it is set now. What is set nowhere in the book is told
/// at the boat's class if that is another one, else at the top of the club's settings.
fn whereabouts(
    own: &Book,
    boat: &Boat,
    moved: bool,
    key: LimitKey,
    layer: Option<Layer>,
) -> (Name, Place) {
    let class = boat.class.as_ref().map_or("", |class| class.value.as_str());
    let place_of = |limits: &Limits| limits.of(key).map(|set| set.place);
    let set = match layer {
        Some(Layer::Boat) => place_of(&boat.limits),
        Some(Layer::Club) => {
            let of_class = own.club.limits.iter().find(|club| club.class.value == class);
            of_class.and_then(|club| place_of(&club.limits))
        }
        _ if moved => boat.class.as_ref().map(|class| class.place),
        _ => {
            let class = own.class(class).filter(|class| !own.file(class.file).built_in);
            class.map(|class| place_of(&class.limits).unwrap_or(class.id.place))
        }
    };
    let name = match layer {
        Some(Layer::Boat) => boat.record().at("limits").at(key.key()),
        _ => Name::record("club").at("limits").at(class).at(key.key()),
    };
    let top = own.club.file.map(|file| Place { file, span: Span { start: 0, end: 0 } });
    (name, set.or(top).unwrap_or(boat.id.place))
}
