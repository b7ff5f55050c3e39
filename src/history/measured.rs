//! When a value was last measured, and by whom. Judges no age.

use super::known::Record;
use crate::model::Book;
use crate::model::Measured;
use crate::model::Name;
use crate::model::Placed;
use crate::units::Date;
use crate::working::BoatSight;

/// When a value was last measured, and by whom.
#[derive(Clone, Debug, Eq, PartialEq)]
pub struct LastMeasured {
    /// The day.
    pub on: Date,
    /// Who; none where nobody is written.
    pub by: Option<String>,
}

/// What of a boat is measured or looked at on a day, below her own name.
const OF_A_BOAT: [&str; 3] = ["rigged/level", "rigged/walk-round", "foot-holes"];

/// What stands at a seat, an oar or a rower without having been measured there.
const NOT_MEASURED: [&str; 11] = [
    "seat",
    "side",
    "oar",
    "note",
    "collar-to-pin",
    "worked-out",
    "state",
    "defects",
    "who",
    "boat",
    "measured",
];

/// Who measured the record in one file.
pub(super) enum Measuring<'b> {
    Boat(BoatSight<'b>),
    Record { id: &'b str, measured: &'b Measured },
    Nothing,
}

impl<'b> Measuring<'b> {
    pub(super) fn of(book: &'b Book, record: Record<'b>) -> Self {
        let of_record = |id: &'b Placed<String>, measured| Self::Record { id: &id.value, measured };
        match record {
            Record::Boat(boat) => Self::Boat(BoatSight::new(book, boat)),
            Record::OarSet(set) => of_record(&set.id, &set.measured),
            Record::Crew(crew) => of_record(&crew.id, &crew.measured),
            Record::Class(_) | Record::Club | Record::Waivers => Self::Nothing,
        }
    }

    /// Returns when a value was last measured; none of a value that is nothing measured.
    pub(super) fn of_value(&self, name: &Name) -> Option<LastMeasured> {
        match self {
            Self::Boat(sight) if is_measured_in_boat(&sight.boat.id.value, name) => {
                let (on, by) = sight.last_read(name)?;
                Some(LastMeasured { on: on.value, by: by.map(|by| by.value.clone()) })
            }
            Self::Record { id, measured } if is_measured_in_record(id, name) => {
                let by = measured.by.as_ref().map(|by| by.value.clone());
                Some(LastMeasured { on: measured.date?.value, by })
            }
            _ => None,
        }
    }
}

fn is_measured_in_boat(id: &str, name: &Name) -> bool {
    let below = below(id, name);
    let of_boat = |whole: &str| Name::record(below).is_within(whole);
    let of_seat = below.split_once('/').filter(|(part, _)| part.starts_with("seat-"));
    of_seat.is_some_and(|(_, rest)| is_measured(rest)) || OF_A_BOAT.iter().any(|own| of_boat(own))
}

fn is_measured_in_record(id: &str, name: &Name) -> bool {
    let below = below(id, name);
    let inner = below.split_once('/').map_or(
        below,
        |(first, rest)| {
            if first == "measured" { first } else { rest }
        },
    );
    is_measured(inner)
}

fn is_measured(field: &str) -> bool {
    let first = field.split('/').next().unwrap_or_default();
    !NOT_MEASURED.contains(&first)
}

fn below<'n>(id: &str, name: &'n Name) -> &'n str {
    name.as_str().strip_prefix(id).and_then(|rest| rest.strip_prefix('/')).unwrap_or_default()
}
