//! Oars that a boat should carry and that can't be tried: they stand in no set.

use super::Whose;
use crate::model::Boat;
use crate::model::Placed;
use crate::working::BoatSight;

/// What a boat names and nothing has.
#[derive(Clone, Copy, Debug, Eq, PartialEq)]
pub enum Wanted<'b> {
    /// Her oar set; nothing of it was tried.
    Set(&'b str),
    /// An oar, as the seat's own or a spare.
    Oar(&'b str, Whose),
}

/// Something that a boat names and that was not tried.
#[derive(Clone, Copy, Debug)]
pub struct NotFound<'b> {
    /// The boat.
    pub boat: &'b Boat,
    /// Her oar set, as she names it.
    pub set: Option<&'b str>,
    /// What is not found.
    pub wanted: Wanted<'b>,
}

/// Returns what a boat names that is in no set: the set itself; else each oar and each spare.
#[must_use]
pub fn not_found<'b>(sight: &BoatSight<'b>) -> Vec<NotFound<'b>> {
    let boat = sight.boat;
    let set = boat.oars.as_ref().map(|set| set.value.as_str());
    let lacks = |wanted| NotFound { boat, set, wanted };
    if let Some(set) = set.filter(|_| sight.oars.is_none()) {
        return vec![lacks(Wanted::Set(set))];
    }
    let missing = |oar: &&'b Placed<String>| sight.book.oar(boat, oar).is_none();
    let own = boat.seats.iter().filter_map(|seat| seat.oar.as_ref()).filter(missing);
    let spares = boat.spares.iter().filter(missing);
    let own = own.map(|oar| lacks(Wanted::Oar(&oar.value, Whose::Own)));
    own.chain(spares.map(|oar| lacks(Wanted::Oar(&oar.value, Whose::Spare)))).collect()
}
