//! What is read of a text, and what is said of every part that can't be.

#[path = "reading/club.rs"]
mod club;
#[path = "reading/decimal_commas.rs"]
mod decimal_commas;
#[path = "reading/everything_at_once.rs"]
mod everything_at_once;
#[path = "reading/keys.rs"]
mod keys;
#[path = "reading/numbers.rs"]
mod numbers;
#[path = "reading/texts.rs"]
mod texts;
#[path = "reading/told.rs"]
mod told;
#[path = "reading/values.rs"]
mod values;
#[path = "reading/written.rs"]
mod written;
