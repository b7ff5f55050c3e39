//! Boats whose truth is known, read with tools of a known half-width, written down, and judged as
//! a user would have them judged: how often is the verdict wrong?
//!
//! `cargo test --test trials_by_chance -- --nocapture` prints the tables.

mod claims;
mod counting;
mod design;
mod drawing;
mod record;
mod rig;

#[test]
#[allow(clippy::print_stdout, reason = "the table is there to be read with --nocapture")]
fn a_verdict_is_wrong_no_more_often_than_it_says() {
    let table = counting::counted();
    println!("{}", claims::shown(&table));
    let unproven = claims::unproven(&table);
    assert!(unproven.is_empty(), "{unproven}\n{}", claims::shown(&table));
}
