//! Worked-out values before and after, where they are not shown the same.

use std::collections::HashMap;

use super::super::figures::Figure;
use super::super::figures::of_boat;
use super::super::figures::of_seat;
use super::super::figures_text::rounded;
use crate::model::Book;
use crate::model::Name;
use crate::working::BoatSight;
use crate::working::Budget;

/// A worked-out value that is not what it was.
#[derive(Clone, Debug)]
pub(super) struct Consequence {
    /// The seat, or the boat.
    pub(super) name: Name,
    /// Its key in JSON; ends in its unit, if it has one.
    pub(super) key: &'static str,
    /// What people call it.
    pub(super) called: &'static str,
    pub(super) unit: &'static str,
    pub(super) places: usize,
    /// Before; none where it could not be worked out.
    pub(super) old: Option<Good>,
    /// After; none where it can't be worked out.
    pub(super) new: Option<Good>,
}

/// A number and how good it is.
#[derive(Clone, Copy, Debug)]
pub(super) struct Good {
    pub(super) number: f64,
    pub(super) uncertainty: f64,
}

impl Good {
    fn of(budget: &Budget) -> Self {
        Self { number: budget.value(), uncertainty: budget.expanded() }
    }

    /// Returns the number as it is shown.
    pub(super) fn shown(&self, places: usize) -> String {
        rounded(self.number, places)
    }

    /// Returns how good it is, as it is shown.
    pub(super) fn shown_good(&self, places: usize) -> String {
        format!("{:.places$}", self.uncertainty)
    }
}

/// Returns every worked-out value of boats and seats that stand in both books, where it is not
/// shown as it was.
pub(super) fn consequences(old: &Book, new: &Book) -> Vec<Consequence> {
    let mut all = Vec::new();
    for boat in &new.boats {
        let Some(before) = old.boat(&boat.id.value) else { continue };
        let is_first = new.boat(&boat.id.value).is_some_and(|first| first.file == boat.file);
        if is_first {
            all.extend(of_one(&BoatSight::new(old, before), &BoatSight::new(new, boat)));
        }
    }
    all
}

fn of_one(before: &BoatSight, after: &BoatSight) -> Vec<Consequence> {
    let mut earlier = HashMap::new();
    for seat in before.seats() {
        earlier.entry(seat.name()).or_insert(seat);
    }
    let mut all = Vec::new();
    for seat in after.seats() {
        if let Some(before) = earlier.remove(&seat.name()) {
            all.extend(differing(&seat.name(), of_seat(&before), of_seat(&seat)));
        }
    }
    all.extend(differing(&after.boat.record(), of_boat(before), of_boat(after)));
    all
}

fn differing(name: &Name, old: Vec<Figure>, new: Vec<Figure>) -> Vec<Consequence> {
    let pairs = old.into_iter().zip(new);
    pairs.filter_map(|(old, new)| one(name, &old, &new)).collect()
}

fn one(name: &Name, old: &Figure, new: &Figure) -> Option<Consequence> {
    let good = |figure: &Figure| figure.worked.as_ref().ok().map(Good::of);
    let (was, is) = (good(old), good(new));
    let shown =
        |good: Option<Good>| good.map(|good| (good.shown(new.places), good.shown_good(new.places)));
    let Figure { key, called, unit, places, .. } = *new;
    (shown(was) != shown(is)).then(|| Consequence {
        name: name.clone(),
        key,
        called,
        unit,
        places,
        old: was,
        new: is,
    })
}
