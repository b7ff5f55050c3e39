//! Values that are to be alike: which are left, which are moved, and to what. Bare numbers; knows
//! neither blades nor collars nor chocks.
//!
//! ```text
//!              room left by those that stay
//!                  |<------------>|
//!   ---x-----x-----+--x-----------+-------x----->
//!    stay   stay      stays             moved, to the nearest end of the room
//! ```

/// How many values are looked at: every set of those moved is tried.
pub(super) const MOST: usize = 12;

/// How far inside its room a common value is put, where there is that much room: half of the last
/// digit a reading is written with.
const INSIDE: f64 = 0.005;

/// Totals closer than this are the same.
const GRAIN: f64 = 1e-9;

/// One value.
#[derive(Clone, Copy, Debug)]
pub(super) struct Item {
    /// What it is.
    pub(super) value: f64,
    /// Whether it may be left as it is.
    pub(super) may_stay: bool,
    /// Where it may be put; nowhere, where it can't be moved.
    pub(super) room: Option<Room>,
    /// What it is best moved to: its own value, where moving does harm, as bending does; else what
    /// is aimed at.
    pub(super) wish: f64,
}

/// A stretch of values.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Room {
    /// The least of them.
    pub(super) least: f64,
    /// The most of them.
    pub(super) most: f64,
}

impl Room {
    /// Every value.
    pub(super) const ALL: Self = Self { least: f64::NEG_INFINITY, most: f64::INFINITY };

    /// Returns what two have in common; it may be empty.
    pub(super) fn and(self, other: Self) -> Self {
        Self { least: self.least.max(other.least), most: self.most.min(other.most) }
    }

    /// Returns whether no value is in it.
    pub(super) fn is_empty(self) -> bool {
        // Not `least > most`: a bound that is no number leaves no room.
        !matches!(
            self.least.partial_cmp(&self.most),
            Some(std::cmp::Ordering::Less | std::cmp::Ordering::Equal)
        )
    }

    /// Returns the value of it that is nearest to one.
    fn nearest(self, value: f64) -> f64 {
        value.max(self.least).min(self.most)
    }

    /// Returns it without its ends, or its middle where it is hardly more than one value.
    fn inner(self) -> Self {
        if self.most - self.least > 2.0 * INSIDE {
            return Self { least: self.least + INSIDE, most: self.most - INSIDE };
        }
        let middle = f64::midpoint(self.least, self.most);
        Self { least: middle, most: middle }
    }
}

/// What was chosen.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Choice {
    /// Which values are moved.
    pub(super) moved: Vec<bool>,
    /// The common value they are moved to; of no meaning where none is moved.
    pub(super) to: f64,
    /// Where the common value might be with the same ones moved.
    pub(super) room: Room,
    /// How far all of them together come to lie from what each is best moved to.
    pub(super) total: f64,
    /// Other sets of as many that are as good.
    pub(super) ties: Vec<Vec<bool>>,
}

/// Chooses one common value and those that are moved to it: the fewest first, then the nearest to
/// what each is best moved to; of several, those that come first.
///
/// `alike` is how far a moved value may be from any other. `also` gives what else leaves room with
/// some moved. `holds` is asked last, of a set moved to a value.
///
/// # Formula
///
/// With a set of moved values, `sum |wish - p|` over the set is convex in the common value `p`: least at the middle one of them (between the middle two, of an even count), and within
/// a stretch at the nearest place to that. Every set is tried, smaller ones first, so nothing better
/// is passed over.
pub(super) fn choose(
    items: &[Item],
    alike: f64,
    also: impl Fn(&[bool]) -> Room,
    mut holds: impl FnMut(&[bool], f64) -> bool,
) -> Option<Choice> {
    if items.len() > MOST {
        return None;
    }
    (0..=items.len()).find_map(|count| {
        let mut best: Option<Choice> = None;
        for moved in sets(items.len(), count) {
            let Some(choice) = with_moved(items, alike, moved, &also) else { continue };
            let least = best.as_ref().map_or(f64::INFINITY, |best| best.total);
            if choice.total > least + GRAIN || !holds(&choice.moved, choice.to) {
                continue;
            }
            match &mut best {
                Some(best) if choice.total > best.total - GRAIN => best.ties.push(choice.moved),
                _ => best = Some(choice),
            }
        }
        best
    })
}

/// Returns the best common value for one set of moved values, if there is room for any.
fn with_moved(
    items: &[Item],
    alike: f64,
    moved: Vec<bool>,
    also: impl Fn(&[bool]) -> Room,
) -> Option<Choice> {
    let (mut room, mut ways) = (also(&moved), Vec::new());
    let mut kept = Vec::new();
    for (item, moved) in items.iter().zip(&moved) {
        if *moved {
            room = room.and(item.room?);
            ways.push(item.wish);
        } else if item.may_stay {
            room = room.and(Room { least: item.value - alike, most: item.value + alike });
            kept.push(item.value);
        } else {
            return None;
        }
    }
    if ways.is_empty() {
        return Some(Choice { moved, to: f64::NAN, room, total: 0.0, ties: Vec::new() });
    }
    if room.is_empty() {
        return None;
    }
    let (inner, middle) = (room.inner(), middle_of(&mut ways));
    let free = Room { least: inner.nearest(middle.least), most: inner.nearest(middle.most) };
    // Where any place costs the same, the one nearest to what stays is the most alike.
    let others = if kept.is_empty() { f64::midpoint(free.least, free.most) } else { mean(&kept) };
    let to = free.nearest(others);
    let total = ways.iter().map(|value| (value - to).abs()).sum();
    Some(Choice { moved, to, room, total, ties: Vec::new() })
}

/// Returns the stretch between the middle two values, of an odd count the middle one.
fn middle_of(values: &mut [f64]) -> Room {
    values.sort_by(f64::total_cmp);
    let last = values.len() - 1;
    Room { least: values[last / 2], most: values[last.div_ceil(2)] }
}

fn mean(values: &[f64]) -> f64 {
    values.iter().sum::<f64>() / values.len() as f64
}

/// Returns every set of so many out of so many, the first ones first.
fn sets(of: usize, count: usize) -> impl Iterator<Item = Vec<bool>> {
    let chosen = move |bits: u32| (0..of).map(|at| bits >> at & 1 == 1).collect();
    (0..1_u32 << of).filter(move |bits| bits.count_ones() as usize == count).map(chosen)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const BAND: Room = Room { least: 3.0, most: 7.0 };

    fn blades(values: &[f64]) -> Vec<Item> {
        let item = |value: &f64| Item {
            value: *value,
            may_stay: (BAND.least..=BAND.most).contains(value),
            room: Some(BAND),
            wish: *value,
        };
        values.iter().map(item).collect()
    }

    /// Those that stay must be alike among themselves, too.
    fn stay_alike(values: &[f64], alike: f64, moved: &[bool]) -> bool {
        let kept = values.iter().zip(moved).filter(|(_, moved)| !**moved).map(|(value, _)| *value);
        let (least, most) = kept
            .fold((f64::MAX, f64::MIN), |(least, most), value| (least.min(value), most.max(value)));
        most - least <= alike
    }

    fn chosen(values: &[f64], alike: f64) -> Choice {
        let holds = |moved: &[bool], _| stay_alike(values, alike, moved);
        choose(&blades(values), alike, |_| Room::ALL, holds).expect("the band has room")
    }

    #[test]
    fn the_odd_one_is_moved_to_the_nearest_place_that_suits_all_others() {
        let choice = chosen(&[3.58, 3.91, 4.89, 3.58], 0.6);
        assert_eq!(choice.moved, [false, false, true, false]);
        assert!((choice.to - (4.18 - INSIDE)).abs() < 1e-12, "{}", choice.to);
        assert!(choice.ties.is_empty());
    }

    #[test]
    fn nothing_is_moved_where_all_are_alike() {
        assert_eq!(chosen(&[4.0, 4.3, 4.5], 0.6).moved, [false; 3]);
    }

    #[test]
    fn two_pairs_that_cost_the_same_are_told_as_a_tie() {
        let choice = chosen(&[4.0, 4.0, 5.0, 5.0], 0.6);
        assert_eq!(choice.moved, [true, true, false, false]);
        assert_eq!(choice.ties, [[false, false, true, true]]);
    }

    proptest! {
        /// A grid is no finer than its steps: nothing on it may be better than what was chosen.
        #[test]
        fn nothing_on_a_fine_grid_is_better(
            values in proptest::collection::vec(1.0..9.0_f64, 1..5),
            alike in 0.1..2.0_f64,
        ) {
            let choice = chosen(&values, alike);
            let count = choice.moved.iter().filter(|moved| **moved).count();
            for moved in (0..=values.len()).flat_map(|count| sets(values.len(), count)) {
                let fewer = moved.iter().filter(|moved| **moved).count();
                for step in 0..=400 {
                    let to = 3.0 + f64::from(step) / 100.0;
                    let at = |at: usize| if moved[at] { to } else { values[at] };
                    let in_band = (0..values.len()).all(|one| (3.0..=7.0).contains(&at(one)));
                    let alike = (0..values.len()).all(|one| {
                        (0..one).all(|other| (at(one) - at(other)).abs() <= alike)
                    });
                    if in_band && alike {
                        let total: f64 = (0..values.len()).map(|one| (values[one] - at(one)).abs()).sum();
                        prop_assert!(fewer >= count, "{moved:?} to {to}: {choice:?}");
                        let slack = INSIDE * count as f64 + 1e-9;
                        prop_assert!(fewer > count || total >= choice.total - slack, "{moved:?} to {to}: {choice:?}");
                    }
                }
            }
        }
    }
}
