//! Every way to write a number, and every way that is refused.

use tholebook::units::Slope;

use super::told::pairs;
use super::told::read;
use super::told::seat;

/// What is refused, and a word of the message that tells it.
const REFUSED: [(&str, &str); 22] = [
    ("1,5", "decimal comma"),
    (".nan", "not a number that can be measured"),
    ("NaN", "not a number that can be measured"),
    (".inf", "not a number that can be measured"),
    ("-.inf", "not a number that can be measured"),
    ("\u{2212}2", "dash"),
    ("\u{2013}2", "dash"),
    ("0x1f", "computer's counting"),
    ("0o17", "computer's counting"),
    ("1_000", "underscore"),
    ("1e3", "powers of ten"),
    ("1.5e-3", "powers of ten"),
    (".5", "a digit is missing"),
    ("5.", "a digit is missing"),
    ("12:30", "a time"),
    ("1 000", "blank"),
    ("\u{661}\u{662}", "0 to 9"),
    ("1.2.3", "not a number"),
    ("--5", "not a number"),
    ("nine", "not a number"),
    ("1,5 mm", "decimal comma"),
    ("''", "no number here"),
];

#[test]
fn each_wrong_number_has_its_own_message_at_its_bytes() {
    for (written, message) in REFUSED {
        let (read, told) = seat(&format!("seat-mark: {written}"));
        assert_eq!(pairs(&told), [("not-a-number", written)], "{written}");
        assert!(told[0].message.contains(message), "{written}: {}", told[0].message);
        assert_eq!(told[0].name, "petrel/seat-1/seat-mark");
        assert!(read.seat_mark.is_none(), "{written} was used");
    }
}

#[test]
fn the_same_holds_inside_brackets() {
    for (written, message) in REFUSED.iter().filter(|(written, _)| !written.contains("1,5 ")) {
        let (read, told) = seat(&format!("pitch: {{catch: {written}, square: 11}}"));
        assert_eq!(pairs(&told), [("not-a-number", *written)], "{written}");
        assert!(told[0].message.contains(message), "{written}: {}", told[0].message);
        assert!(read.pitch.catch.is_none(), "{written} was used");
        assert!(read.pitch.square.is_some(), "{written} took its neighbour with it");
    }
}

#[test]
fn a_number_of_four_hundred_digits_is_refused_in_a_short_message() {
    let (_, told) = seat(&format!("seat-mark: {}", "9".repeat(400)));
    assert_eq!(told[0].rule, "not-a-number");
    assert_eq!(told[0].text.len(), 400);
    assert!(told[0].message.contains("too large"), "{}", told[0].message);
    assert!(told[0].message.chars().count() < 120, "{}", told[0].message);
}

/// The inch is 25.4 mm by definition (international yard and pound agreement, 1959).
#[test]
fn a_length_is_read_in_every_unit_with_or_without_a_blank() {
    let cases = [
        ("600", 600.0),
        ("+600", 600.0),
        ("-600", -600.0),
        ("0", 0.0),
        ("600.0", 600.0),
        ("600 mm", 600.0),
        ("600mm", 600.0),
        ("1.5mm", 1.5),
        ("60 cm", 600.0),
        ("60cm", 600.0),
        ("0.6 m", 600.0),
        ("23 5/8 in", 600.075),
        ("5/8 in", 15.875),
        ("\"60 cm\"", 600.0),
        ("'600'", 600.0),
        ("600  # by the tape", 600.0),
    ];
    for (written, mm) in cases {
        let (read, told) = seat(&format!("seat-mark: {written}"));
        assert!(told.is_empty(), "{written}: {told:?}");
        let values: Vec<f64> = read.seat_mark.iter().map(|mark| mark.values[0].as_mm()).collect();
        assert_eq!(values, [mm], "{written}");
    }
}

#[test]
fn angles_keep_their_sign_and_read_with_or_without_the_unit() {
    for (written, deg) in [("-0.1", -0.1), ("0.1 deg", 0.1), ("0.1deg", 0.1), ("5.7°", 5.7)] {
        let text = format!(
            "boat: b\nclass: surfboat\noars: o\nrigged: {{date: 2026-10-17, by: I., level: {{trim: {written}, roll: 0}}}}\n"
        );
        let (book, told) = read(&text);
        assert!(told.is_empty(), "{written}: {told:?}");
        let trim = book.boats[0].rigged.trim.as_ref().map(|trim| trim.values[0].as_deg());
        assert_eq!(trim, Some(deg), "{written}");
    }
}

#[test]
fn a_slope_is_an_offset_an_offset_over_a_length_or_an_angle() {
    let pitch = |written: &str| {
        let (read, told) = seat(&format!("pitch: {{square: {written}}}"));
        assert!(told.is_empty(), "{written}: {told:?}");
        read.pitch.square.expect("a pitch").values[0]
    };
    let mm = tholebook::units::Length::mm;
    assert_eq!(pitch("-11"), Slope::Offset(mm(-11.0)));
    assert_eq!(pitch("11 over 176"), Slope::Over { offset: mm(11.0), down: mm(176.0) });
    assert_eq!(pitch("1.1 cm over 176 mm"), Slope::Over { offset: mm(11.0), down: mm(176.0) });
    assert_eq!(pitch("3.6 deg"), Slope::Angle(tholebook::units::Angle::deg(3.6)));
}

#[test]
fn a_weight_is_in_kilograms() {
    let (book, told) = read("crew: c\nsweep: {who: T.R., weight: 84 kg}\n");
    assert!(told.is_empty(), "{told:?}");
    let weight = book.crews[0].sweep.weight.as_ref().map(|weight| weight.values[0].as_kg());
    assert_eq!(weight, Some(84.0));
    let (_, told) = read("crew: c\nsweep: {who: T.R., weight: 13 st}\n");
    assert_eq!(pairs(&told), [("wrong-unit", "13 st")]);
}

#[test]
fn a_unit_of_another_kind_is_refused_and_the_known_ones_are_told() {
    for written in ["6 ft", "3 deg", "60 CM", "5 kg", "10 %"] {
        let (_, told) = seat(&format!("seat-mark: {written}"));
        assert_eq!(pairs(&told), [("wrong-unit", written)]);
        assert!(told[0].help.contains("mm, cm, m, in"), "{}", told[0].help);
    }
}

#[test]
fn what_no_boat_has_is_out_of_bounds() {
    for written in ["0", "-58", "200 m"] {
        let (read, told) = seat(&format!("rowlock: {{gap: {written}}}"));
        assert_eq!(pairs(&told), [("out-of-bounds", written)]);
        assert!(read.rowlock.gap.is_none(), "{written} was used");
    }
    for written in ["11 over 0", "95 deg", "11 over -5"] {
        let (_, told) = seat(&format!("pitch: {{square: {written}}}"));
        assert_eq!(pairs(&told), [("out-of-bounds", written)]);
    }
}

#[test]
fn a_count_is_a_whole_number() {
    for written in ["8.5", "8.0", "50 %"] {
        let (_, told) = read(&format!(
            "boat: b\nclass: surfboat\noars: o\nrigged: {{date: 2026-10-17, by: I.}}\nfoot-holes: {{count: {written}}}\n"
        ));
        assert_eq!(pairs(&told), [("not-a-number", written)]);
    }
}

#[test]
fn a_worked_out_value_remembers_its_last_digit() {
    let (read, told) = seat("worked-out: {pitch: 3.58 deg, gearing: 2.357, clearance: 0.8 cm}");
    assert!(told.is_empty(), "{told:?}");
    let digits = |stated: Option<tholebook::model::Placed<tholebook::model::Stated>>| {
        stated.map(|stated| (stated.value.value, stated.value.half_digit))
    };
    assert_eq!(digits(read.worked_out.pitch), Some((3.58, 0.005)));
    assert_eq!(digits(read.worked_out.gearing), Some((2.357, 0.0005)));
    assert_eq!(digits(read.worked_out.clearance), Some((8.0, 0.5)));
}
