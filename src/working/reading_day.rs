//! When each value of a boat was last read.

use super::sight::BoatSight;
use crate::model::Name;
use crate::model::Placed;
use crate::units::Date;

/// What stands at a seat without having been measured there.
const NOT_MEASURED: [&str; 6] = ["seat", "side", "oar", "note", "collar-to-pin", "worked-out"];

impl<'b> BoatSight<'b> {
    /// Returns the name of every measured value of a seat, as written.
    pub fn measured_at(&self, seat: &Name) -> Vec<&'b Name> {
        let measured = |name: &&Name| {
            let below = name.as_str().strip_prefix(seat.as_str());
            below.is_some_and(|below| match below.strip_prefix('/') {
                Some(field) => !NOT_MEASURED.contains(&field.split('/').next().unwrap_or(field)),
                None => below.is_empty(),
            })
        };
        let own = self.book.written_in(self.boat.file);
        own.iter().map(|written| &written.name).filter(measured).collect()
    }

    /// Returns the day a value was last read: when it was read again, else the rigging day.
    #[must_use]
    pub fn read_on(&self, name: &Name) -> Option<Placed<Date>> {
        self.last_read(name).map(|(date, _)| date)
    }

    /// Returns the day a value was last read, and by whom where that is written.
    #[must_use]
    pub fn last_read(&self, name: &Name) -> Option<(Placed<Date>, Option<&'b Placed<String>>)> {
        let record = self.boat.record();
        let covers = |whole: &Placed<String>| name.is_within(record.at(&whole.value).as_str());
        let again = self.boat.read_again.iter().filter(|entry| entry.values.iter().any(covers));
        // Of two equal days the last counts: what was read again is told from the rigging day.
        let again = again.filter_map(|entry| Some((entry.date?, entry.by.as_ref())));
        let rigged = &self.boat.rigged;
        let days = rigged.date.map(|date| (date, rigged.by.as_ref())).into_iter().chain(again);
        days.max_by_key(|(day, _)| day.value)
    }
}
