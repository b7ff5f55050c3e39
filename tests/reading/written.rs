//! What every value says, by its name: the same however it was written.

use tholebook::model::Quantity;
use tholebook::model::Said;

use super::told::read;

/// Returns what stands at a name, in the order it was written.
fn said(text: &str, name: &str) -> Vec<Said> {
    let (book, _) = read(text);
    let there = book.written().filter(|written| written.name.as_str() == name);
    there.map(|written| written.said.clone()).collect()
}

fn mm(value: f64) -> Said {
    Said::Figure { value, of: Quantity::Length }
}

#[test]
fn a_length_says_the_same_in_every_unit_and_to_every_digit() {
    for written in ["600", "600.0", "60 cm", "\"0.6 m\"", "{read: 600, to: 1}"] {
        let text = format!("boat: tern\nseats:\n  - seat: 1\n    chock-to-pin: {written}\n");
        assert_eq!(said(&text, "tern/seat-1/chock-to-pin"), [mm(600.0)], "{written}");
    }
}

#[test]
fn a_reading_taken_twice_stands_there_twice() {
    let text = "boat: tern\nseats:\n  - {seat: 1, rowlock: {gap: [58, 59]}}\n";
    assert_eq!(said(text, "tern/seat-1/rowlock/gap"), [mm(58.0), mm(59.0)]);
}

#[test]
fn what_was_not_measured_does_not_stand_there_and_what_can_t_be_read_says_nothing() {
    let text = "boat: tern\nseats:\n  - {seat: 1, seat-mark: not measured, oar-bed: nine}\n";
    assert_eq!(said(text, "tern/seat-1/seat-mark"), []);
    assert_eq!(said(text, "tern/seat-1/oar-bed"), [Said::Unread]);
}

#[test]
fn words_ids_and_days_say_their_text_without_quotes() {
    let text = "boat: \"tern\"\nrigged: {date: '2026-10-17', where: sand}\n";
    for (name, word) in [("boat", "tern"), ("rigged/date", "2026-10-17"), ("rigged/where", "sand")]
    {
        assert_eq!(said(text, &format!("tern/{name}")), [Said::Text(word.into())]);
    }
}
