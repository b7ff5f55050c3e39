//! Records in a line or two, sound and broken, for schema and reader alike.

use tholebook::reading::RecordKind;

/// A record by what is written in it.
pub(crate) enum Record {
    /// A line of a boat.
    Boat(&'static str),
    /// A field of a boat's seat.
    Seat(&'static str),
    /// A field of an oar.
    Oar(&'static str),
    /// A field of a rower.
    Rower(&'static str),
    /// A line of a class.
    Class(&'static str),
    /// A line of the club's settings.
    Club(&'static str),
    /// A line of a waiver.
    Waiver(&'static str),
    /// The whole of a record.
    Whole(RecordKind, &'static str),
}

/// A record as text.
pub(crate) struct Written {
    pub(crate) kind: RecordKind,
    pub(crate) text: String,
}

impl Record {
    pub(crate) fn written(&self) -> Written {
        let (kind, text) = match self {
            Self::Boat(line) => (RecordKind::Boat, boat(line)),
            Self::Seat(field) => (RecordKind::Boat, seat(field)),
            Self::Oar(field) => {
                (RecordKind::OarSet, in_list("oar-set: long-ash\noars", &[("oar", "A1")], field))
            }
            Self::Rower(field) => {
                (RecordKind::Crew, in_list("crew: masters-a\nrowers", &[("seat", "1")], field))
            }
            Self::Class(line) => (RecordKind::Class, with(&[("class", "inlet-boat")], line)),
            Self::Club(line) => (RecordKind::Club, with(&[("logbook", "1")], line)),
            Self::Waiver(line) => (RecordKind::Waiver, waiver(line)),
            Self::Whole(kind, text) => (*kind, (*text).to_owned()),
        };
        Written { kind, text }
    }
}

/// Returns a boat with one line more, or with that line in the place of its own.
pub(crate) fn boat(line: &str) -> String {
    let rigged = "{date: 2026-10-17, by: Ines Marlow}";
    let lines =
        [("boat", "kittiwake"), ("class", "surfboat"), ("oars", "long-ash"), ("rigged", rigged)];
    with(&lines, line)
}

/// Returns a boat of one seat, with one field more or with that field in the place of its own.
pub(crate) fn seat(field: &str) -> String {
    let lines = [("seat", "1"), ("side", "port"), ("oar", "A1")];
    in_list(&format!("{}seats", boat("name: Kittiwake")), &lines, field)
}

fn waiver(line: &str) -> String {
    let lines = [
        ("finding", "kittiwake/seat-2"),
        ("rule", "pitch-mismatch"),
        ("because", "new pins are ordered"),
        ("by", "Tomas Reyne"),
        ("until", "2026-12-31"),
    ];
    as_part(&with(&lines, line))
}

fn in_list(before: &str, lines: &[(&str, &str)], line: &str) -> String {
    format!("{before}:\n{}", as_part(&with(lines, line)))
}

fn as_part(text: &str) -> String {
    format!("- {}\n", text.trim_end().replace('\n', "\n  "))
}

/// Returns lines with one more; where its key is one of theirs, that line gives way.
fn with(lines: &[(&str, &str)], line: &str) -> String {
    let key = line.split(':').next().unwrap_or_default();
    let kept = lines.iter().filter(|(own, _)| *own != key);
    let kept: String = kept.map(|(key, value)| format!("{key}: {value}\n")).collect();
    format!("{kept}{line}\n")
}

/// What neither schema nor reader takes.
pub(crate) const BROKEN: &[(&str, Record)] = &[
    ("a decimal comma", Record::Seat("chock-to-pin: 600,5")),
    (
        "a decimal comma that YAML reads as two keys",
        Record::Seat("pitch: {catch: 1,5, square: 11}"),
    ),
    ("a Unicode minus", Record::Seat("seat-mark: −61")),
    ("a number that is none", Record::Seat("seat-mark: NaN")),
    ("a number without end", Record::Seat("seat-mark: inf mm")),
    ("a number in sixteens with a unit", Record::Seat("seat-mark: 0x1f mm")),
    ("an underscore in a number", Record::Seat("chock-to-pin: 1_000")),
    ("a power of ten with a unit", Record::Seat("chock-to-pin: 1e3 mm")),
    ("a quoted power of ten", Record::Seat("chock-to-pin: \"1e3\"")),
    ("a point without a digit before it", Record::Seat("chock-to-pin: .6 m")),
    ("a point without a digit behind it", Record::Seat("chock-to-pin: 60. cm")),
    ("a blank in a number", Record::Seat("chock-to-pin: 1 000")),
    ("hours and minutes", Record::Seat("chock-to-pin: 10:00")),
    ("digits of another script", Record::Seat("chock-to-pin: ٦٠٠")),
    ("an empty text as a number", Record::Seat("chock-to-pin: \"\"")),
    ("a unit of another trade", Record::Seat("chock-to-pin: 2 ft")),
    ("a unit in capitals", Record::Seat("chock-to-pin: 60 CM")),
    ("an inch over nothing", Record::Seat("chock-to-pin: 23 5/0 in")),
    ("a fraction without its inch", Record::Seat("chock-to-pin: 23 5/8")),
    ("a length that is a flag", Record::Seat("chock-to-pin: true")),
    ("a gap of nothing", Record::Seat("rowlock: {gap: 0}")),
    ("a gap below nothing in another unit", Record::Seat("rowlock: {gap: -6 cm}")),
    ("a pin outside the boatshed", Record::Seat("pin: {spread: 100001}")),
    (
        "an angle as a length",
        Record::Boat("rigged: {date: 2026-10-17, by: I, level: {trim: 3 mm}}"),
    ),
    (
        "a boat on her beam ends",
        Record::Boat("rigged: {date: 2026-10-17, by: I, level: {roll: 46}}"),
    ),
    ("a slope over no length", Record::Seat("pin: {lean: {aft: 11 over}}")),
    ("a slope over nothing", Record::Seat("pin: {lean: {aft: 11 over 0}}")),
    ("a slope in parts of a hundred", Record::Seat("pin: {lean: {aft: 3 %}}")),
    ("a weight below nothing", Record::Rower("weight: -82")),
    ("a weight in pounds", Record::Rower("weight: 180 lb")),
    ("a ratio in words", Record::Class("limits: {bed: {least: a third}}")),
    ("a ratio with a length's unit", Record::Waiver("at: 296 mm")),
    ("half a seat", Record::Seat("seat: 1.5")),
    ("seat 0", Record::Seat("seat: 0")),
    ("a count in words", Record::Class("seats: four")),
    ("a day in another order", Record::Waiver("until: 31.12.2026")),
    ("a day that no month has", Record::Waiver("until: 2026-04-31")),
    ("a leap day of a common year", Record::Waiver("until: 2026-02-29")),
    ("a day as a number", Record::Waiver("until: 20261231")),
    ("an id that is a no", Record::Boat("boat: no")),
    ("an id that is a Yes", Record::Seat("oar: Yes")),
    ("an id that is true", Record::Boat("boat: true")),
    ("an id that begins with a digit", Record::Boat("oars: 2nd-set")),
    ("an id with a blank", Record::Boat("oars: long ash")),
    ("an id not measured", Record::Boat("boat: not measured")),
    ("a flag in another tongue", Record::Club("publish-crew: nein")),
    ("a flag as a number", Record::Club("publish-crew: 1")),
    ("a word of no meaning", Record::Seat("side: left")),
    ("a word in capitals", Record::Seat("rowlock: {turns: FREE}")),
    (
        "a word of no meaning in a free map",
        Record::Boat("rigged: {date: 2026-10-17, by: I, walk-round: {bung: fine}}"),
    ),
    (
        "nothing in a free map",
        Record::Boat("rigged: {date: 2026-10-17, by: I, walk-round: {bung: }}"),
    ),
    ("a list as a free map", Record::Boat("rigged: {date: 2026-10-17, by: I, walk-round: [bung]}")),
    ("an unknown key", Record::Seat("rowlock: {gpa: 58}")),
    ("an unknown key of the record", Record::Boat("colour: grey")),
    (
        "a missing key",
        Record::Whole(RecordKind::Boat, "boat: kittiwake\nclass: surfboat\noars: long-ash\n"),
    ),
    ("a missing key of a section", Record::Boat("rigged: {date: 2026-10-17}")),
    ("a missing key of a list's part", Record::Boat("bends: [{date: 2026-10-17, part: pin}]")),
    ("a key left empty that must be there", Record::Boat("class:")),
    ("a text not measured that must be there", Record::Waiver("by: not measured")),
    ("a section not measured that must be there", Record::Boat("rigged: not measured")),
    ("a value as a section", Record::Seat("pin: 792")),
    ("a list as a section", Record::Seat("pin: [792]")),
    ("a section as a list", Record::Boat("seats: {seat: 1, side: port, oar: A1}")),
    ("a list of values as one of sections", Record::Boat("seats: [1, 2]")),
    ("a value as a list", Record::Boat("spares: A5")),
    ("nothing in a list", Record::Boat("spares: [A5, null]")),
    ("a list as a value", Record::Boat("name: [Kittiwake]")),
    ("a section as a value", Record::Oar("state: {sound: true}")),
    ("a reading of no values", Record::Seat("chock-to-pin: []")),
    ("a reading of lists", Record::Seat("chock-to-pin: [[600]]")),
    ("a list of readings, one not taken", Record::Seat("chock-to-pin: [600, not measured]")),
    ("a fineness without a reading", Record::Seat("chock-to-pin: {to: 1}")),
    ("a fineness of nothing", Record::Seat("chock-to-pin: {read: 600, to: 0}")),
    ("a fineness below nothing", Record::Seat("chock-to-pin: {read: 600, to: -1}")),
    ("a reading with an unknown key", Record::Seat("chock-to-pin: {read: 600, too: 1}")),
    ("a name of several lines", Record::Boat("name: |\n  Kittiwake\n  the second")),
    ("a limit switched off by another word", Record::Class("limits: {loose: off}")),
    ("a limit with a figure it has not", Record::Class("limits: {loose: {least: 3}}")),
    ("a format of another year", Record::Club("logbook: 2")),
    ("a person who may do what nobody may", Record::Club("people: [{name: I, may: [steer]}]")),
    ("waivers that are no list", Record::Whole(RecordKind::Waiver, "finding: kittiwake\n")),
    ("a record that is a list", Record::Whole(RecordKind::Boat, "- boat: kittiwake\n")),
];

/// What both take.
pub(crate) const SOUND: &[Record] = &[
    Record::Seat("chock-to-pin: 600"),
    Record::Seat("chock-to-pin: 600.5"),
    Record::Seat("chock-to-pin: \"600\""),
    Record::Seat("chock-to-pin: +600 mm"),
    Record::Seat("chock-to-pin: 60cm"),
    Record::Seat("chock-to-pin: 0.6 m"),
    Record::Seat("chock-to-pin: 23 5/8 in"),
    Record::Seat("chock-to-pin: 5/8 in"),
    Record::Seat("seat-mark: -1 1/2 in"),
    Record::Seat("seat-mark: -61"),
    Record::Seat("seat-mark: -0"),
    Record::Seat("chock-to-pin: not measured"),
    Record::Seat("chock-to-pin: \"not measured\""),
    Record::Seat("chock-to-pin:"),
    Record::Seat("chock-to-pin: ~"),
    Record::Seat("chock-to-pin: [600, 60.1 cm]"),
    Record::Seat("chock-to-pin: {read: 600, to: 1}"),
    Record::Seat("chock-to-pin: {read: [600, 601], to: 1 mm}"),
    Record::Seat("chock-to-pin: {read: 600, to: not measured, x-who: the bow}"),
    Record::Seat("chock-to-pin: {read: 600}"),
    Record::Seat("pin: {lean: {aft: 0.5, out: -0.5 over 150}}"),
    Record::Seat("pin: {lean: {aft: 1.1 cm over 0.15 m, out: 3.6 deg}}"),
    Record::Seat("pitch: {catch: -3.6°, square: [11, 12], finish: [11 over 176, 12 over 176]}"),
    Record::Seat("pitch: not measured"),
    Record::Seat("pin:"),
    Record::Seat("rowlock: {turns: not measured, gap: 0.1}"),
    Record::Seat("seat: \"1\""),
    Record::Seat("note: |\n  horn re-bent\n  3 mm\n"),
    Record::Seat("x-varnish: [2024, {coats: 3}]"),
    Record::Seat("worked-out: {pitch: 3.58 deg, gearing: 2.357, clearance: -6.0}"),
    Record::Boat("name: 12"),
    Record::Boat("name: 2026-10-17"),
    Record::Boat("name: true"),
    Record::Boat("name: not measured"),
    Record::Boat("name:"),
    Record::Boat("name: |\n  Kittiwake\n"),
    Record::Boat("boat: no-name"),
    Record::Boat("boat: A1"),
    Record::Boat("seats: []"),
    Record::Boat("seats: not measured"),
    Record::Boat("spares: []"),
    Record::Boat("predicted: true"),
    Record::Boat("predicted: \"false\""),
    Record::Boat("predicted: not measured"),
    Record::Boat("limits: {clearance: none, loose: {most: 15, source: the club's to set}}"),
    Record::Boat("limits: {clearance: not measured, loose: }"),
    Record::Boat("foot-holes: {count: +8}"),
    Record::Boat("level-mark: {found-afloat: 2028-02-29}"),
    Record::Boat("level-mark: {found-afloat: 2000-02-29}"),
    Record::Boat("level-mark: {found-afloat: \"2026-10-17\"}"),
    Record::Boat("level-mark: {found-afloat: not measured}"),
    Record::Boat(
        "rigged: {date: 2026-10-17, by: I, level: {trim: -5.7 deg, roll: {read: 45, to: 0.2°}}}",
    ),
    Record::Boat("rigged: {date: 2026-10-17, by: I, walk-round: {bung: ok, x-flag: watch}}"),
    Record::Boat(
        "knocks: [{date: 2026-10-18, what: shore break, where: [seat-3, 4, not measured]}]",
    ),
    Record::Oar("pitch: 0 deg"),
    Record::Oar("flex: {drop: 70, load-kg: 10 kg, at: 2.5 m}"),
    Record::Rower("weight: 82.5 kg"),
    Record::Rower("arc: {catch: 52, finish: 0}"),
    Record::Class("limits: {bed: {least: 0.25, most: 37 %}, bends: {most: 3, in-all: 10 deg}}"),
    Record::Class("plausible: {pin/spread: {least: 700, most: 900}}"),
    Record::Club("limits: {surfboat: {loose: none}}"),
    Record::Club("readings: {callipers: 0.2, level: 0.2 deg}"),
    Record::Club("publish-crew: false"),
    Record::Waiver("at: 2.96"),
    Record::Waiver("at: 30%"),
    Record::Whole(RecordKind::Waiver, "[]\n"),
];

/// What a schema takes, because YAML has made a number or a flag of it before, or because it joins
/// a figure to its unit or one value to another.
pub(crate) const ONLY_THE_READER_REFUSES: &[(&str, Record)] = &[
    ("a power of ten", Record::Seat("chock-to-pin: 1e3")),
    ("a number in sixteens", Record::Seat("chock-to-pin: 0x1f")),
    ("a number in eights", Record::Seat("chock-to-pin: 0o17")),
    ("YAML's own number that is none", Record::Seat("chock-to-pin: .nan")),
    ("a bare point", Record::Seat("chock-to-pin: .5")),
    ("a whole number with a point", Record::Seat("seat: 1.0")),
    ("a flag in capitals", Record::Club("publish-crew: True")),
    ("a length out of bounds in another unit", Record::Seat("chock-to-pin: 600 m")),
    (
        "an angle out of bounds with its unit",
        Record::Boat("rigged: {date: 2026-10-17, by: I, level: {trim: 50 deg}}"),
    ),
    ("a slope over less than 1 mm", Record::Seat("pin: {lean: {aft: 1 over 0.5}}")),
    ("slopes written in different ways", Record::Seat("pitch: {square: [11, 3 deg]}")),
    ("a range for what nobody measures", Record::Class("plausible: {pin/spred: {least: 700}}")),
    ("a text cut short by a remark", Record::Boat("name: Kittiwake #2")),
];
