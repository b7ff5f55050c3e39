//! Worked-out values put beside the readings that give them; works nothing out.

use super::editing::Address;
use super::editing::Deed;
use super::editing::Refused;
use super::editing::Wording;
use super::editing::edited_in_form;
use crate::reading::RecordKind;
use crate::reading::form;

/// A worked-out value as it is to be written.
#[derive(Clone, Debug, Eq, PartialEq)]
pub struct WorkedOut {
    /// The seat's place in the list of seats, from 1.
    pub part: usize,
    /// The key under `worked-out`.
    pub key: &'static str,
    /// The value in the words of the record: `3.58 deg`.
    pub text: String,
}

/// Returns a boat's text with these values in it. Nothing else is changed.
///
/// # Errors
///
/// One of them can't be put in; see [`edited_in_form`].
pub fn with_worked_out(text: &str, values: &[WorkedOut]) -> Result<String, Refused> {
    let form = form(RecordKind::Boat);
    values.iter().try_fold(text.to_owned(), |text, value| {
        let seat = Address::root().key("seats").number(value.part);
        let at = seat.key("worked-out").key(value.key);
        edited_in_form(&text, &at, &Deed::Set(&Wording::word(&value.text)), &form)
    })
}
