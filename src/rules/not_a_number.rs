//! A text where a number belongs.

use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;

pub(super) static RULE: Rule = Rule {
    id: "not-a-number",
    level: Level::Fault,
    checks: "A number is not written as plain digits with a point: a decimal comma, a dash for a minus, an underscore, a power of ten, or no number at all.",
    reason: "A reading that is guessed at is worse than none: 1,5 read as 1 or as 15 would pass for a measurement.",
    remedy: "Write digits, with a point where it needs one, and the plain minus sign in front.",
    formula: "[+-] digits [. digits], and the unit behind it where it has one",
    default: "-",
    sources: &[sources::FORMAT.at("numbers")],
    example: Example {
        wrong: &[
            ("boats/kittiwake.yaml", "seat: 1", "gap: 60", "gap: 60,5  # <--"),
            (
                "boats/kittiwake.yaml",
                "seat: 2",
                "pitch: {catch: 11, square: 11, finish: 11}",
                "pitch: {catch: 1,5, square: 1,5, finish: 11}  # <--",
            ),
            ("boats/kittiwake.yaml", "seat: 3", "seat-mark: 61", "seat-mark: −61  # <--"),
            ("boats/kittiwake.yaml", "seat: 4", "chock-to-pin: 600", "chock-to-pin: 6e2  # <--"),
            ("boats/kittiwake.yaml", "seat: 4", "seat-mark: 61", "seat-mark: [61, .nan]  # <--"),
            (
                "boats/kittiwake.yaml",
                "",
                "foot-holes: {first: 820, apart: 30, count: 8}",
                "foot-holes: {first: 820, apart: 30, count: 8.5}  # <--",
            ),
        ],
        right: &[
            ("boats/kittiwake.yaml", "seat: 1", "gap: 60", "gap: 60.0"),
            (
                "boats/kittiwake.yaml",
                "seat: 2",
                "pitch: {catch: 11, square: 11, finish: 11}",
                "pitch: {catch: 11.0, square: '11', finish: [11, 11.0]}",
            ),
            ("boats/kittiwake.yaml", "seat: 3", "seat-mark: 61", "seat-mark: +61"),
        ],
    },
    looks: Looks::WhileReading,
};
