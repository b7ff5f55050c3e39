//! A boat out of use that was measured: whether she is used again. A danger keeps her out.

use super::ending;
use super::ending::After;
use super::ending::Hearer;
use super::subject::Measured;
use super::terminal::BrokenOff;
use crate::reports::shown;
use crate::rules::Level;
use crate::units::Date;
use crate::writing::editing;
use crate::writing::editing::Address;
use crate::writing::editing::Deed;

/// Returns the book with the boat in use again, where that is said or answered.
pub(super) fn used_again(
    measured: &Measured,
    said: bool,
    after: After,
    as_of: Date,
    hearer: &mut Hearer,
) -> Result<After, BrokenOff> {
    let boat = after.book.boat(&measured.id).filter(|boat| boat.is_out_of_use());
    let Some(out) = boat.and_then(|boat| boat.out_of_use.as_ref()) else { return Ok(after) };
    let text = |text: &Option<crate::model::Placed<String>>| {
        text.as_ref().map(|text| text.value.clone()).unwrap_or_default()
    };
    let since = out.since.map(|since| since.value.to_string()).unwrap_or_default();
    let told = format!(
        "She is out of use since {since}, by {}: {}.",
        text(&out.by),
        text(&out.because).trim_end_matches('.')
    );
    hearer.show(&format!("{}\n", measured.look.wrapped(&shown::line(&told), "")));
    let at = Address::root().key("out-of-use");
    let Ok(edited) = editing::edited(&after.text, &at, &Deed::Remove) else { return Ok(after) };
    let again = ending::after(measured, edited, as_of);
    if ending::of_record(measured, &again).worst() >= Some(Level::Danger) {
        hearer.show("A danger stands, so she stays out of use.\n");
        return Ok(after);
    }
    if hearer.agrees(said, "Is she used again?")? {
        hearer.show("She is used again; what lint finds on her counts from now on.\n");
        return Ok(again);
    }
    hearer.show("She stays out of use.\n");
    Ok(after)
}
