//! A unit that is not read where it stands.

use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;

pub(super) static RULE: Rule = Rule {
    id: "wrong-unit",
    level: Level::Fault,
    checks: "A number has a unit that is not read there, or the readings of one value are written in different ways.",
    reason: "Feet for centimetres, or degrees for millimetres, is a rig that nobody measured.",
    remedy: "Write it in a unit that is read there; a length in mm, cm, m or in, an angle in deg.",
    formula: "the unit is one of those of the field; a list of readings, and what they are read to, are of one kind",
    default: "-",
    sources: &[sources::FORMAT.at("lengths, angles, slopes")],
    example: Example {
        wrong: &[
            ("boats/kittiwake.yaml", "seat: 1", "gap: 60", "gap: 2 ft  # <--"),
            (
                "boats/kittiwake.yaml",
                "",
                "level: {trim: 0.0, roll: 0.1}",
                "level: {trim: 0.0, roll: 0.1 %}  # <--",
            ),
            (
                "boats/kittiwake.yaml",
                "seat: 2",
                "pitch: {catch: 11,",
                "pitch: {catch: [11, 3.6 deg],  # <--\n     ",
            ),
            (
                "boats/kittiwake.yaml",
                "seat: 3",
                "lean: {aft: 0.5,",
                "lean: {aft: {read: 0.5, to: 0.1 deg},  # <--\n      ",
            ),
        ],
        right: &[
            ("boats/kittiwake.yaml", "seat: 1", "gap: 60", "gap: 6 cm"),
            (
                "boats/kittiwake.yaml",
                "seat: 2",
                "pitch: {catch: 11,",
                "pitch: {catch: 1.1 cm over 176,",
            ),
            (
                "boats/kittiwake.yaml",
                "seat: 3",
                "lean: {aft: 0.5,",
                "lean: {aft: {read: 0.5, to: 0.5 mm},",
            ),
            ("boats/kittiwake.yaml", "seat: 4", "chock-to-pin: 600", "chock-to-pin: 0.6 m"),
        ],
    },
    looks: Looks::WhileReading,
};
