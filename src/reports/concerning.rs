//! Which names concern a boat: her own, and those of the oars she carries. Knows no verdicts.

use crate::model::Boat;
use crate::model::Book;
use crate::model::Name;

/// Returns whether a name is of the boat, of her set of oars, or of an oar that she carries.
#[must_use]
pub fn concerns(book: &Book, boat: &Boat, name: &Name) -> bool {
    if name.is_within(&boat.id.value) {
        return true;
    }
    let Some(set) = book.oars_of(boat).filter(|set| name.is_within(&set.id.value)) else {
        return false;
    };
    let seats = boat.seats.iter().filter_map(|seat| seat.oar.as_ref());
    let aboard: Vec<&str> = seats.chain(&boat.spares).map(|id| id.value.as_str()).collect();
    let others = set.oars.iter().filter(|oar| !aboard.contains(&oar.called()));
    !others.into_iter().any(|oar| name.is_within(set.name_of(oar).as_str()))
}
