//! Boats whose truth is known, read with tools of a known half-width, written down, and judged as
//! a user would have them judged: how often is the verdict wrong?
//!
//! `cargo test --test trials_by_chance -- --nocapture` prints the tables.

mod brute;
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

/// A standard deviation of 20,000 draws is itself good to half a hundredth; 3 in a hundred leave
/// room for what a budget of the first order leaves out.
#[test]
#[allow(clippy::print_stdout, reason = "the table is there to be read with --nocapture")]
fn a_value_is_as_good_as_drawing_its_readings_again_says() {
    println!("| value | rig | good to ± | by brute force |\n|---|---|---|---|");
    for rig in 0..4 {
        for (what, (program, brute)) in brute::VALUES.iter().zip(brute::compared(rig)) {
            println!("| {what} | {rig} | {program:.4} | {brute:.4} |");
            let apart = (program / brute - 1.0).abs();
            assert!(apart < 0.03, "{what} of rig {rig}: {program}, by brute force {brute}");
        }
    }
}
