//! A text, or a part of one, that is no record.

use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;

pub(super) static RULE: Rule = Rule {
    id: "unreadable",
    level: Level::Fault,
    checks: "A file, or a line of it, can't be read as a record: a slip in its form, a text cut short by a #, several lines where one belongs, a list where a value belongs, or none of the keys that say what it is.",
    reason: "What can't be read is not checked. The rest of the file is still read as far as it goes.",
    remedy: "Mend the place that is shown; put quotes round a text that holds a colon, a # or a bracket.",
    formula: "the text is YAML, of a known format, and every field holds what belongs there",
    default: "-",
    sources: &[sources::YAML.at("chapters 5 to 9"), sources::FORMAT.at("the shape of each field")],
    example: Example {
        wrong: &[
            ("boats/kittiwake.yaml", "", "name: Kittiwake", "name: Kittiwake #2  # <--"),
            (
                "boats/kittiwake.yaml",
                "",
                "wind: light",
                "wind: |  # <--\n    light\n    from the west",
            ),
            (
                "boats/kittiwake.yaml",
                "",
                "foot-holes: {first: 820, apart: 30, count: 8}",
                "foot-holes: 820  # <--",
            ),
            (
                "boats/kittiwake.yaml",
                "seat: 2",
                "lifts-out: {",
                "lifts-out: [freely]  # <--\n    x-lifts-out: {",
            ),
            ("boats/petrel.yaml", "", "", "bote: petrel  # <--\nclas: surfboat\n"),
            (
                "crews/juniors.yaml",
                "",
                "",
                "crew: juniors\n<<<<<<< ours  # <--\nboat: kittiwake\n=======\nboat: petrel\n>>>>>>> theirs\n",
            ),
            ("crews/veterans.yaml", "", "", "crew: veterans\nsweep: {who: T.R.: helm}  # <--\n"),
            ("club.yaml", "", "logbook: 1", "logbook: 2  # <--"),
            ("waivers.yaml", "", "", "finding: kittiwake/seat-2/pitch  # <--\n"),
        ],
        right: &[
            ("boats/kittiwake.yaml", "", "name: Kittiwake", "name: 'Kittiwake #2'"),
            ("boats/kittiwake.yaml", "", "wind: light", "wind: light  # from the west"),
            (
                "boats/kittiwake.yaml",
                "seat: 2",
                "worked-out:",
                "note: |\n      horn re-bent 3 mm;\n      looked at again\n    worked-out:",
            ),
        ],
    },
    looks: Looks::WhileReading,
};
