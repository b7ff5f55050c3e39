//! A figure that no boat has.

use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;

pub(super) static RULE: Rule = Rule {
    id: "out-of-bounds",
    level: Level::Fault,
    checks: "A figure is outside of anything that can be.",
    reason: "A gap of nothing or a trim of fifty degrees is a slip of the pen or a wrong unit, and every sum with it is wrong.",
    remedy: "Look at the figure and its unit again; read it again if in doubt.",
    formula: "least <= figure <= most of the field; wide bounds, the same for every boat",
    default: "-",
    sources: &[sources::FORMAT.at("bounds of each field")],
    example: Example {
        wrong: &[
            ("boats/kittiwake.yaml", "seat: 1", "gap: 60", "gap: 0  # <--"),
            (
                "boats/kittiwake.yaml",
                "",
                "level: {trim: 0.0, roll: 0.1}",
                "level: {trim: 50, roll: 0.1}  # <--",
            ),
            (
                "boats/kittiwake.yaml",
                "seat: 2",
                "seat-mark: 61",
                "seat-mark: {read: 61, to: 0}  # <--",
            ),
            (
                "boats/kittiwake.yaml",
                "seat: 3",
                "pitch: {catch: 11,",
                "pitch: {catch: 95 deg,  # <--\n     ",
            ),
            ("crews/masters-a.yaml", "", "stature: 1780", "stature: 178"),
            ("crews/masters-a.yaml", "", "foot-hole: 4}", "foot-hole: 4}  # <--"),
        ],
        right: &[
            ("boats/kittiwake.yaml", "seat: 2", "seat-mark: 61", "seat-mark: {read: 61, to: 0.5}"),
            ("crews/masters-a.yaml", "", "stature: 1780", "stature: 178 cm"),
        ],
    },
    looks: Looks::WhileReading,
};
