//! From a name of the book to its place in the text of the record, by the form of its kind.
//!
//! `seat-2/rowlock/gap` of a boat stands under `seats`, in the part whose `seat` says 2. Knows the
//! forms of the records and no text: whether anything stands there is for `editing` to see.

use super::editing::Address;
use crate::reading::Described;
use crate::reading::Kind;
use crate::reading::Naming;
use crate::reading::READ;
use crate::reading::RecordKind;
use crate::reading::TO;
use crate::reading::form;

/// Returns the place of a name in a record of a kind; `below` is the name without the record's id,
/// nothing for the whole record. None where a record of that kind has no such place.
///
/// # Example
///
/// ```
/// use tholebook::reading::RecordKind;
/// use tholebook::writing::addressing::address;
/// use tholebook::writing::editing::Address;
///
/// let gap = address(RecordKind::Boat, "seat-2/rowlock/gap").unwrap();
/// assert_eq!(gap, Address::root().key("seats").part("seat", "2").key("rowlock").key("gap"));
/// assert_eq!(address(RecordKind::Boat, "seat-2/rowlock/gape"), None);
/// ```
#[must_use]
pub fn address(kind: RecordKind, below: &str) -> Option<Address> {
    let parts: Vec<&str> = match below {
        "" => Vec::new(),
        below => below.split('/').collect(),
    };
    let form = form(kind);
    match kind {
        RecordKind::Waiver => {
            let (number, parts) = parts.strip_prefix(&["waivers"])?.split_first()?;
            in_section(&form, parts, numbered(&Address::root(), number)?)
        }
        _ => in_section(&form, &parts, Address::root()),
    }
}

/// Follows the parts of a name through the fields of a section.
fn in_section(form: &[Described], parts: &[&str], at: Address) -> Option<Address> {
    let Some((first, rest)) = parts.split_first() else { return Some(at) };
    let field = form.iter().find(|described| described.field.key == *first);
    let by_its_key = field.and_then(|field| in_kind(&field.kind, rest, at.key(first)));
    by_its_key.or_else(|| form.iter().find_map(|described| in_unwritten(described, parts, &at)))
}

/// Follows a name in which the list's own key is left out.
fn in_unwritten(described: &Described, parts: &[&str], at: &Address) -> Option<Address> {
    let Kind::List(part, naming) = &described.kind else { return None };
    let (first, rest) = parts.split_first()?;
    let (key, is) = match naming {
        Naming::Seat => ("seat", first.strip_prefix("seat-")?),
        Naming::Id(key) => (*key, *first),
        Naming::By(_) | Naming::Numbered | Naming::Unnamed => return None,
    };
    let part_at = at.key(described.field.key).part(key, is);
    (!is.is_empty()).then(|| in_kind(part, rest, part_at)).flatten()
}

fn in_kind(kind: &Kind, parts: &[&str], at: Address) -> Option<Address> {
    let Some((first, rest)) = parts.split_first() else { return Some(at) };
    match kind {
        Kind::Value(_) => None,
        Kind::Reading(_) => {
            let is_own = rest.is_empty() && [READ.key, TO.key].contains(first);
            is_own.then(|| at.key(first))
        }
        Kind::Section(form) => in_section(form, parts, at),
        Kind::Free(below) => in_kind(below, rest, at.key(first)),
        Kind::List(part, naming) => match (numbered(&at, first), naming) {
            (Some(part_at), _) => in_kind(part, rest, part_at),
            (None, Naming::By(key)) => in_kind(part, rest, at.part(key, first)),
            (None, _) => None,
        },
    }
}

/// Returns the place of a part that is counted, not named: `2`.
fn numbered(list: &Address, number: &str) -> Option<Address> {
    let number = number.parse().ok().filter(|number| *number > 0)?;
    Some(list.number(number))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(kind: RecordKind, below: &str) -> Address {
        address(kind, below).unwrap_or_else(|| panic!("{below} has a place"))
    }

    #[test]
    fn parts_of_lists_are_found_by_what_names_them() {
        let root = Address::root();
        let cases = [
            (RecordKind::Boat, "rigged/level/roll", root.key("rigged").key("level").key("roll")),
            (RecordKind::Boat, "seat-3", root.key("seats").part("seat", "3")),
            (RecordKind::Boat, "knocks/2026-10-18", root.key("knocks").part("date", "2026-10-18")),
            (RecordKind::Boat, "defects/2", root.key("defects").number(2)),
            (RecordKind::Boat, "read-again/1/by", root.key("read-again").number(1).key("by")),
            (
                RecordKind::Boat,
                "rigged/walk-round/bung",
                root.key("rigged").key("walk-round").key("bung"),
            ),
            (
                RecordKind::OarSet,
                "A1/shaft/widest",
                root.key("oars").part("oar", "A1").key("shaft").key("widest"),
            ),
            (RecordKind::OarSet, "measured/by", root.key("measured").key("by")),
            (
                RecordKind::Crew,
                "seat-4/stature",
                root.key("rowers").part("seat", "4").key("stature"),
            ),
            (RecordKind::Club, "people/1/may", root.key("people").number(1).key("may")),
            (
                RecordKind::Club,
                "limits/surfboat/clearance/least",
                root.key("limits").key("surfboat").key("clearance").key("least"),
            ),
            (RecordKind::Waiver, "waivers/2/until", root.number(2).key("until")),
            (
                RecordKind::Boat,
                "seat-1/rowlock/gap/to",
                root.key("seats").part("seat", "1").key("rowlock").key("gap").key("to"),
            ),
        ];
        for (kind, below, place) in cases {
            assert_eq!(at(kind, below), place, "{below}");
        }
    }

    #[test]
    fn what_a_record_never_has_has_no_place() {
        let cases = [
            (RecordKind::Boat, "seat-2/rowlock/gap/deeper"),
            (RecordKind::Boat, "seat-/oar"),
            (RecordKind::Boat, "read-again/0"),
            (RecordKind::OarSet, "A1/rowlock"),
            (RecordKind::Crew, "seat-1/rowlock/gap"),
            (RecordKind::Waiver, "until"),
        ];
        for (kind, below) in cases {
            assert_eq!(address(kind, below), None, "{below}");
        }
    }
}
