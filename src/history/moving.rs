//! Oars and oar sets that are carried somewhere else than before.

use std::collections::HashSet;

use super::change::Change;
use super::change::ChangeKind;
use super::change::State;
use super::value::Value;
use super::values::RecordValues;
use crate::model::Name;
use crate::model::Place;
use crate::model::Said;
use crate::reading::RecordKind;

/// Something that is carried, and where.
#[derive(Clone, Debug)]
struct Carried {
    /// The oar or the set.
    thing: Name,
    /// The boat, the seat or the spares.
    at: Name,
    /// The name of the value that says so.
    said_by: Name,
    place: Place,
}

impl Carried {
    fn key(&self) -> (&Name, &Name) {
        (&self.thing, &self.at)
    }

    fn seat(&self) -> &str {
        self.at.as_str().split_once('/').map_or("", |(_, seat)| seat)
    }

    fn boat(&self) -> &str {
        self.at.as_str().split('/').next().unwrap_or_default()
    }

    fn set(&self) -> &str {
        self.thing.as_str().split('/').next().unwrap_or_default()
    }

    fn is_set(&self) -> bool {
        !self.at.as_str().contains('/')
    }
}

/// Returns the changes with those that say an oar or a set came or went told as one move each.
pub(super) fn with_moves(
    changes: Vec<Change>,
    old: &[RecordValues],
    new: &[RecordValues],
) -> Vec<Change> {
    let (was, is) = (carried(old), carried(new));
    let (gone, come) = (missing_in(&was, &is), missing_in(&is, &was));
    let (moves, left) = matched(gone, come);
    let left_by_value: HashSet<&Name> = left.iter().map(|own| &own.said_by).collect();
    let told: HashSet<&Name> =
        moves.iter().flat_map(|(from, to)| [&from.said_by, &to.said_by]).collect();
    let explained = |change: &Change| {
        told.contains(&change.name)
            && change.kind != ChangeKind::Unreadable
            && !left_by_value.contains(&change.name)
    };
    let mut kept: Vec<Change> = changes.into_iter().filter(|own| !explained(own)).collect();
    let with_its_set = |from: &Carried, to: &Carried| {
        let set = |own: &(Carried, Carried)| {
            own.0.is_set()
                && own.0.thing.as_str() == from.set()
                && own.0.at.as_str() == from.boat()
                && own.1.at.as_str() == to.boat()
        };
        !from.is_set() && from.seat() == to.seat() && moves.iter().any(set)
    };
    let own = moves.iter().filter(|(from, to)| !with_its_set(from, to));
    kept.extend(own.map(|(from, to)| moved(from, to)));
    kept
}

fn moved(from: &Carried, to: &Carried) -> Change {
    let state = |own: &Carried| Some(State::words(own.at.to_string(), Some(own.place)));
    Change::of_whole(ChangeKind::Moved, from.thing.clone(), state(from), state(to))
}

/// Returns what is carried in every boat.
fn carried(records: &[RecordValues]) -> Vec<Carried> {
    let boats = records.iter().filter(|record| record.kind == RecordKind::Boat);
    boats.flat_map(carried_in).collect()
}

fn carried_in(boat: &RecordValues) -> Vec<Carried> {
    let record = boat.name();
    let Some(set) = boat.get(&record.at("oars")) else { return Vec::new() };
    let id_of = |value: &Value| match value.said.as_slice() {
        [Said::Text(id)] => Some(id.to_string()),
        _ => None,
    };
    let Some(set_id) = id_of(set) else { return Vec::new() };
    let set_name = Name::record(&set_id);
    let one = |thing: Name, at: Name, value: &Value, nth: usize| Carried {
        thing,
        at,
        said_by: value.name.clone(),
        place: value.places[nth],
    };
    let mut all = vec![one(set_name.clone(), record.clone(), set, 0)];
    for value in &boat.values {
        let seat = value.group.name().filter(|_| value.group.below(&value.name) == "oar");
        let at = match seat {
            Some(seat) => seat.clone(),
            None if value.name == record.at("spares") => value.name.clone(),
            None => continue,
        };
        for (nth, said) in value.said.iter().enumerate() {
            if let Said::Text(oar) = said {
                all.push(one(set_name.at(oar), at.clone(), value, nth));
            }
        }
    }
    all
}

fn missing_in(own: &[Carried], other: &[Carried]) -> Vec<Carried> {
    let there: HashSet<(&Name, &Name)> = other.iter().map(Carried::key).collect();
    own.iter().filter(|own| !there.contains(&own.key())).cloned().collect()
}

/// Returns what went from one place to another, and what came from nowhere or went nowhere.
fn matched(gone: Vec<Carried>, mut come: Vec<Carried>) -> (Vec<(Carried, Carried)>, Vec<Carried>) {
    let (mut moves, mut left) = (Vec::new(), Vec::new());
    for from in gone {
        let found = come.iter().position(|to| to.thing == from.thing);
        match found {
            Some(at) => moves.push((from, come.remove(at))),
            None => left.push(from),
        }
    }
    left.extend(come);
    (moves, left)
}
