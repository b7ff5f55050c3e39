//! A waiver that may not be granted.

use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;

pub(super) static RULE: Rule = Rule {
    id: "waiver-not-allowed",
    level: Level::Fault,
    checks: "A waiver is for a danger, lasts longer than the club allows, says no value, or is granted by someone who may not.",
    reason: "A waiver must not be an easy way past a boat that can hurt someone.",
    remedy: "Put the boat right, or have the waiver granted by someone who may, for a time the club allows.",
    formula: "no danger; last day less today <= longest-waiver-days; signer listed with `waive`",
    default: "-",
    sources: &[sources::FORMAT.at("waivers")],
    example: Example {
        wrong: &[
            ("boats/kittiwake.yaml", "seat: 2", "gap: 60", "gap: 54"),
            ("boats/kittiwake.yaml", "seat: 2", "clearance: 8.0", "clearance: 2.0"),
            ("boats/kittiwake.yaml", "", "foot-straps: ok", "foot-straps: watch"),
            (
                "waivers.yaml",
                "",
                "",
                "- finding: kittiwake/seat-2/rowlock/gap  # <--\n  rule: gap-too-tight\n  because: only for today\n  by: Tomas Reyne\n  until: 2026-11-02\n  at: 2\n- finding: kittiwake/rigged/walk-round/foot-straps  # <--\n  rule: walk-round\n  because: new straps are on order\n  by: Tomas Reyne\n  until: 2027-01-01\n",
            ),
        ],
        right: &[
            ("boats/kittiwake.yaml", "", "foot-straps: ok", "foot-straps: watch"),
            (
                "waivers.yaml",
                "",
                "",
                "- finding: kittiwake/rigged/walk-round/foot-straps\n  rule: walk-round\n  because: new straps are on order\n  by: Tomas Reyne\n  until: 2026-12-31\n",
            ),
        ],
    },
    looks: Looks::WhileWaiving,
};
