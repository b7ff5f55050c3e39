//! A waiver for something that is not there.

use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;

pub(super) static RULE: Rule = Rule {
    id: "waiver-unused",
    level: Level::Fault,
    checks: "A waiver names a finding that is not there.",
    reason: "A waiver that is left behind would excuse the same fault, unseen, when it comes back.",
    remedy: "Take the waiver out, or mend its name or its rule.",
    formula: "each waiver has a finding with its exact name and rule",
    default: "-",
    sources: &[sources::FORMAT.at("waivers")],
    example: Example {
        wrong: &[(
            "waivers.yaml",
            "",
            "",
            "- finding: kittiwake/rigged/walk-round/foot-straps  # <--\n  rule: walk-round\n  because: new straps are on order\n  by: Tomas Reyne\n  until: 2026-12-20\n",
        )],
        right: &[
            ("boats/kittiwake.yaml", "", "foot-straps: ok", "foot-straps: watch"),
            (
                "waivers.yaml",
                "",
                "",
                "- finding: kittiwake/rigged/walk-round/foot-straps\n  rule: walk-round\n  because: new straps are on order\n  by: Tomas Reyne\n  until: 2026-12-20\n",
            ),
        ],
    },
    looks: Looks::WhileWaiving,
};
