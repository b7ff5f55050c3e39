//! A decimal comma inside brackets, which YAML takes for the end of the value.

use super::told::pairs;
use super::told::seat;

#[test]
fn one_is_told_whole_and_its_first_digits_are_not_used() {
    let (read, told) = seat("pitch: {catch: 1,5, square: 11}");
    assert_eq!(pairs(&told), [("not-a-number", "1,5")]);
    assert!(told[0].message.contains("`1,5`"), "{}", told[0].message);
    assert_eq!(told[0].name, "petrel/seat-1/pitch/catch");
    assert!(read.pitch.catch.is_none());
    assert!(read.pitch.square.is_some());
}

#[test]
fn several_with_the_same_digits_are_each_told_and_none_is_called_a_key_given_twice() {
    let (read, told) = seat("pitch: {catch: 1,5, square: 1,5, finish: -1,5}");
    let expected = [("not-a-number", "1,5"), ("not-a-number", "1,5"), ("not-a-number", "-1,5")];
    assert_eq!(pairs(&told), expected);
    let names: Vec<&str> = told.iter().map(|told| told.name.as_str()).collect();
    let pitch = ["catch", "square", "finish"].map(|at| format!("petrel/seat-1/pitch/{at}"));
    assert_eq!(names, pitch);
    assert!(read.pitch.catch.is_none() && read.pitch.square.is_none());
    assert!(read.pitch.finish.is_none());
}

#[test]
fn the_last_of_a_group_and_one_with_a_unit_are_told_too() {
    let (read, told) = seat("rowlock: {gap: 58,5 mm, horn: 46,25}");
    assert_eq!(pairs(&told), [("not-a-number", "58,5 mm"), ("not-a-number", "46,25")]);
    assert!(read.rowlock.gap.is_none() && read.rowlock.horn.is_none());
}

#[test]
fn a_comma_without_a_blank_before_a_key_is_no_decimal_comma() {
    let (read, told) = seat("pitch: {catch: 11,square: 12,finish: 13}");
    assert!(told.is_empty(), "{told:?}");
    assert!(read.pitch.finish.is_some());
}

#[test]
fn two_readings_without_a_blank_between_are_two_readings() {
    let (read, told) = seat("seat-mark: [61,62]");
    assert!(told.is_empty(), "{told:?}");
    assert_eq!(read.seat_mark.map(|mark| mark.values.len()), Some(2));
}

#[test]
fn a_fineness_with_a_comma_does_not_pass_for_a_whole_one() {
    let (read, told) = seat("rowlock: {gap: {read: 58, to: 0,2}}");
    assert_eq!(pairs(&told), [("not-a-number", "0,2")]);
    assert!(read.rowlock.gap.is_none_or(|gap| gap.to.is_none()));
}
