//! What the examples of the rules about the record, the oars and the crew don't show.

mod sound_book;

use sound_book::SoundBook;
use tholebook::rules::Checked;
use tholebook::rules::Edit;
use tholebook::rules::Finding;
use tholebook::rules::Level;

const BOAT: &str = "boats/kittiwake.yaml";
const OARS: &str = "oars/long-ash.yaml";
const CREW: &str = "crews/masters-a.yaml";

fn checked(edits: &[Edit]) -> Checked {
    SoundBook::with(edits).check().1
}

fn of<'c>(checked: &'c Checked, rule: &str) -> Vec<&'c Finding> {
    checked.findings.iter().filter(|finding| finding.rule.id == rule).collect()
}

/// Names and levels of what one rule finds in the book with edits.
fn found(edits: &[Edit], rule: &str) -> Vec<(String, Level)> {
    let checked = checked(edits);
    let name = |finding: &&Finding| (finding.name.to_string(), finding.level);
    of(&checked, rule).iter().map(name).collect()
}

/// The one finding of a rule.
fn only(edits: &[Edit], rule: &str) -> Finding {
    let checked = checked(edits);
    let found = of(&checked, rule);
    assert_eq!(found.len(), 1, "{found:#?}");
    found[0].clone()
}

fn not_checked(edits: &[Edit], rule: &str) -> Vec<String> {
    let checked = checked(edits);
    let of_rule = checked.not_checked.iter().filter(|missing| missing.rule == rule);
    of_rule.map(|missing| format!("{}: {}", missing.name, missing.missing.join(", "))).collect()
}

/// An edit that puts lines of the boat before her seats, in the place of her foot holes.
fn before_seats(lines: &'static str) -> Edit {
    (BOAT, "", "foot-holes: {first: 820, apart: 30, count: 8}\n", lines)
}

fn uncertainty(finding: &Finding) -> f64 {
    finding.value.and_then(|value| value.uncertainty).expect("a measured value")
}

// ---- the back chock

#[test]
fn a_short_crew_wants_the_chock_nearer_the_pin() {
    // 600 + 16.8/100 x (1700 - 1800) = 583.2; 600 is 16.8 off, 1.8 beyond 15. The reading and the
    // stature are good to 2 mm each: u = sqrt(2^2 + (0.168 x 2)^2) / sqrt 3 = 1.171, U = 2.34.
    let crew = "crew: masters-a\nboat: kittiwake\nrowers:\n  - {seat: 1, stature: 1700}\n";
    let edits = [(CREW, "", "", crew)];
    let checked = checked(&edits);
    let notes = of(&checked, "chock-distance");
    assert_eq!(notes.len(), 4);
    assert!(notes[0].message.contains("583.2 mm suits"), "{}", notes[0].message);
    assert!(notes[0].message.contains("masters-a"), "{}", notes[0].message);
    assert!((uncertainty(notes[0]) - 2.3418).abs() < 1e-3);
    // Within what it is good to: still a note, and nobody is told to move a chock.
    assert!(notes.iter().all(|note| note.level == Level::Note));
    assert!(notes[0].remedy.starts_with("Too close to call"), "{}", notes[0].remedy);
}

#[test]
fn only_crews_that_name_the_boat_count_and_without_one_the_aim_is_as_set() {
    let other = "crew: masters-a\nboat: fulmar\nrowers:\n  - {seat: 1, stature: 1300}\n";
    let edits =
        [(CREW, "", "", other), (BOAT, "seat: 2", "chock-to-pin: 600", "chock-to-pin: 621")];
    let note = only(&edits, "chock-distance");
    assert!(note.message.contains("600.0 mm suits"), "{}", note.message);
    assert!(note.message.contains("a stature of 1800 mm"), "{}", note.message);
}

#[test]
fn a_limit_switched_off_moves_no_chock() {
    let edits = [
        (BOAT, "seat: 2", "chock-to-pin: 600", "chock-to-pin: 700"),
        before_seats("limits: {chock: none, chocks: none}\n"),
    ];
    assert!(found(&edits, "chock-distance").is_empty());
    assert!(found(&edits, "chocks-unlike").is_empty());
}

// ---- oars of a set

const FLEX: &str = "{drop: 70, load-kg: 10, at: 2500}";

#[test]
fn half_the_load_and_half_the_drop_is_the_same_flex() {
    let like = [(OARS, "oar: A2", FLEX, "{drop: 35, load-kg: 5, at: 2500}")];
    assert!(found(&like, "oars-unlike").is_empty());
    let limp = [(OARS, "oar: A2", FLEX, "{drop: 70, load-kg: 5, at: 2500}")];
    let name = "long-ash/A2/flex/drop".to_owned();
    assert_eq!(found(&limp, "oars-unlike"), [(name, Level::Fault)]);
}

#[test]
fn a_drop_is_brought_to_one_reach_by_its_cube() {
    // 34 at 2000 is 34 x (2500/2000)^3 = 66.41 at 2500: 3.59 of a mean of 69.28 is 5.2 %.
    let like = [(OARS, "oar: A2", FLEX, "{drop: 34, load-kg: 10, at: 2000}")];
    assert!(found(&like, "oars-unlike").is_empty());
    // 45 comes to 87.89: 17.89 of a mean of 73.58 is 24.3 %.
    let limp = [(OARS, "oar: A2", FLEX, "{drop: 45, load-kg: 10, at: 2000}")];
    let value = only(&limp, "oars-unlike").value.expect("a value");
    assert_eq!(format!("{:.1} {}", value.number, value.unit), "24.3 %");
}

/// A second boat that carries the same set, with stricter limits of her own.
const FULMAR: &str = "boat: fulmar\nclass: surfboat\noars: long-ash\n\
                      limits: {oar-length: {most: 2}}\nrigged: {date: 2026-10-17, by: Ines Marlow}\n";

#[test]
fn of_two_boats_that_carry_a_set_the_stricter_limit_counts() {
    let longer = (OARS, "oar: A3", "length: 3860", "length: 3864");
    assert!(found(&[longer], "oars-unlike").is_empty());
    // 4 mm, 2 beyond, good to 2 sqrt 2 x 2 / sqrt 3 = 3.27: it can't be called.
    let finding = only(&[longer, ("boats/fulmar.yaml", "", "", FULMAR)], "oars-unlike");
    assert_eq!((finding.name.as_str(), finding.level), ("long-ash/A3/length", Level::Unsure));
    let limit = finding.limit.expect("a limit");
    assert_eq!((limit.most, &*limit.from), (Some(2.0), "boats/fulmar.yaml:4"));
}

#[test]
fn oars_are_read_as_the_club_reads_whatever_a_rigging_day_says() {
    let edits = [
        (OARS, "oar: A3", "length: 3860", "length: 3870"),
        (BOAT, "rigged", "  where: trailer", "  readings: {tape: 0.1}\n  where: trailer"),
    ];
    assert!((uncertainty(&only(&edits, "oars-unlike")) - 3.266).abs() < 1e-3);
}

#[test]
fn a_set_that_no_boat_carries_is_counted_as_not_checked() {
    let set =
        "oar-set: short-ash\noars:\n  - {oar: B1, length: 3860}\n  - {oar: B2, length: 3960}\n";
    let edits = [("oars/short-ash.yaml", "", "", set)];
    assert!(found(&edits, "oars-unlike").is_empty());
    assert_eq!(not_checked(&edits, "oars-unlike"), ["short-ash: a boat that carries the set"]);
}

#[test]
fn an_oar_that_was_not_measured_is_counted_and_the_others_are_compared() {
    let unmeasured = (OARS, "oar: A2", "    length: 3860\n", "");
    assert_eq!(not_checked(&[unmeasured], "oars-unlike"), ["long-ash: A2/length"]);
    let edits = [unmeasured, (OARS, "oar: A3", "length: 3860", "length: 3880")];
    assert_eq!(found(&edits, "oars-unlike")[0].0, "long-ash/A3/length");
}

#[test]
fn an_oar_with_one_diameter_written_is_round_and_the_hands_set_it() {
    let edits = [(OARS, "oar: A1", "widest: 52, narrowest: 46, bears: flat", "round: 48")];
    assert_eq!(found(&edits, "hands-set-pitch")[0].0, "kittiwake/seat-1/oar");
    assert_eq!(not_checked(&edits, "bed-wrong"), ["kittiwake/seat-1/oar-bed: oar-bed"]);
    assert_eq!(found(&edits, "oars-unlike")[0].0, "long-ash/A1/shaft/round");
}

// ---- walk round

#[test]
fn a_boat_that_nobody_walked_round_has_one_finding_not_fourteen() {
    let edits = [(BOAT, "rigged", "  walk-round:", "  x-walk-round:")];
    let finding = only(&edits, "walk-round");
    let name = "kittiwake/rigged/walk-round";
    assert_eq!((finding.name.as_str(), finding.level), (name, Level::Unsure));
    assert_eq!(finding.message.matches(", ").count(), 13, "{}", finding.message);
}

#[test]
fn the_clubs_own_item_counts_like_the_classs() {
    let edits = [(BOAT, "rigged", "hull: ok", "hull: ok\n    anchor: unfit")];
    let name = "kittiwake/rigged/walk-round/anchor".to_owned();
    assert_eq!(found(&edits, "walk-round"), [(name, Level::Danger)]);
}

// ---- knocks

#[test]
fn a_knock_before_the_rigging_day_is_in_the_readings() {
    let edits = [before_seats("knocks:\n  - {date: 2026-10-16, what: hit a post}\n")];
    assert!(found(&edits, "knocked-since").is_empty());
}

#[test]
fn a_knock_on_the_rigging_day_counts_until_a_seat_is_read_again() {
    let knock = "knocks:\n  - {date: 2026-10-17, what: rolled, where: [seat-3]}\n";
    assert_eq!(found(&[before_seats(knock)], "knocked-since")[0].0, "kittiwake/knocks/2026-10-17");
    let again = "knocks:\n  - {date: 2026-10-17, what: rolled, where: [seat-3]}\n\
                 read-again:\n  - {date: 2026-10-17, by: Ines Marlow, checked-by: Tomas Reyne, values: [seat-3]}\n";
    assert!(found(&[before_seats(again)], "knocked-since").is_empty());
}

#[test]
fn a_seat_read_again_in_part_is_still_knocked() {
    let lines = "knocks:\n  - {date: 2026-10-18, what: rolled, where: [seat-3]}\n\
                 read-again:\n  - {date: 2026-10-20, by: Ines Marlow, checked-by: Tomas Reyne, values: [seat-3/pin, \"*/rowlock\", seat-3/lifts-out, seat-3/seat-mark, seat-3/handle-past-mark, seat-3/pitch]}\n";
    let finding = only(&[before_seats(lines)], "knocked-since");
    assert!(finding.message.contains("such as seat-3/chock-to-pin"), "{}", finding.message);
}

#[test]
fn a_knock_that_names_no_seat_of_hers_concerns_them_all() {
    for place in ["[]", "[bow]", "[seat-1, seat-9]"] {
        let lines = format!("knocks:\n  - {{date: 2026-10-18, what: hit, where: {place}}}\n");
        let mut book = SoundBook::new();
        book.edit(BOAT, "", "foot-holes: {first: 820, apart: 30, count: 8}\n", &lines);
        let (_, checked) = book.check();
        let message = &of(&checked, "knocked-since")[0].message;
        assert!(message.contains("seat 1, seat 2, seat 3, seat 4"), "{place}: {message}");
    }
}

// ---- bends

#[test]
fn three_bends_of_one_horn_are_allowed_and_the_other_horn_is_counted_apart() {
    let lines = "bends:\n\
                 - {date: 2024-05-04, seat: 2, part: after-horn, deg: 1}\n\
                 - {date: 2025-05-03, seat: 2, part: after-horn, deg: 1}\n\
                 - {date: 2026-05-02, seat: 2, part: after-horn, deg: 1}\n\
                 - {date: 2026-05-02, seat: 2, part: forward-horn, deg: 1}\n\
                 - {date: 2026-05-02, seat: 3, part: after-horn, deg: 1}\n";
    assert!(found(&[before_seats(lines)], "bent-often").is_empty());
}

#[test]
fn bending_there_and_back_is_bending_twice() {
    let lines = "bends:\n\
                 - {date: 2024-05-04, seat: 2, part: pin, deg: 6}\n\
                 - {date: 2025-05-03, seat: 2, part: pin, deg: -6}\n";
    let finding = only(&[before_seats(lines)], "bent-often");
    assert_eq!(finding.name.as_str(), "kittiwake/seat-2/pin");
    assert!(finding.message.contains("12.00 deg in all"), "{}", finding.message);
    assert_eq!(finding.labels.len(), 2);
}

#[test]
fn a_bend_of_unknown_size_is_counted_as_not_checked_when_nothing_else_decides() {
    let lines = "bends:\n- {date: 2024-05-04, seat: 2, part: pin}\n";
    let edits = [before_seats(lines)];
    assert!(found(&edits, "bent-often").is_empty());
    assert_eq!(
        not_checked(&edits, "bent-often"),
        ["kittiwake/seat-2/pin: degrees of a bend of the pin"]
    );
}

// ---- worked-out values

#[test]
fn a_sum_is_right_when_it_is_rounded_as_it_is_written() {
    // Gearing: (3860 - 1150) / 1150 = 2.3565.
    for (written, right) in [("2.4", true), ("2.36", true), ("2.3565", true), ("2.35", false)] {
        let mut book = SoundBook::new();
        book.edit(BOAT, "seat: 1", "gearing: 2.357", &format!("gearing: {written}"));
        let (_, checked) = book.check();
        assert_eq!(of(&checked, "sum-wrong").is_empty(), right, "{written}");
    }
}

#[test]
fn a_wrong_sum_is_shown_as_written_beside_the_readings_it_rests_on() {
    let edits = [(BOAT, "seat: 1", "clearance: 8.0", "clearance: 9.25")];
    let finding = only(&edits, "sum-wrong");
    assert!(finding.message.contains("written as 9.25 mm; the readings give 8.0 mm"));
    let labels: Vec<&str> = finding.labels.iter().map(|label| &*label.text).collect();
    assert_eq!(
        labels[1..],
        ["gap between the horns: 60.0 mm", "widest part of the shaft: 52.0 mm"]
    );
}

#[test]
fn a_sum_whose_readings_are_missing_is_counted_as_not_checked() {
    let edits = [(BOAT, "seat: 1", "      gap: 60\n", "")];
    assert!(found(&edits, "sum-wrong").is_empty());
    let expected = ["kittiwake/seat-1/worked-out/clearance: rowlock/gap"];
    assert_eq!(not_checked(&edits, "sum-wrong"), expected);
}

// ---- units

#[test]
fn a_value_that_no_unit_helps_is_told_all_the_same() {
    let edits = [(BOAT, "seat: 1", "chock-to-pin: 600", "chock-to-pin: 2")];
    let finding = only(&edits, "unit-suspect");
    // 2 mm: 20, 50.8, 2000, 0.2, ... none lies in 350 to 900.
    assert_eq!(finding.remedy, "Read it again, and write it with its unit.");
}

#[test]
fn a_list_with_two_odd_readings_is_one_finding() {
    let edits = [(BOAT, "seat: 1", "chock-to-pin: 600", "chock-to-pin: [60, 60.5]")];
    assert_eq!(found(&edits, "unit-suspect").len(), 1);
}

#[test]
fn a_range_for_a_length_that_nobody_measures_is_told() {
    let class = "class: fourcar\nplausible:\n  rowlock/gab: {least: 35, most: 100}\n";
    let finding = only(&[("classes/fourcar.yaml", "", "", class)], "unknown-key");
    assert_eq!(finding.name.as_str(), "fourcar/plausible/rowlock/gab");
    assert!(finding.remedy.contains("rowlock/gap"), "{}", finding.remedy);
}

// ---- tools

#[test]
fn a_coarse_tool_is_told_once_a_limit_at_the_worst_seat() {
    // 2 x 15 / sqrt 3 = 17.3 and 2 x 20 / sqrt 3 = 23.1, both over half of 305 to 335.
    let edits = [
        (BOAT, "seat: 2", "handle-past-mark: 321", "handle-past-mark: {read: 321, to: 15}"),
        (BOAT, "seat: 3", "handle-past-mark: 321", "handle-past-mark: {read: 321, to: 20}"),
    ];
    let finding = only(&edits, "tool-too-coarse");
    assert!(
        finding.message.starts_with("Kittiwake, seat 3: handle past mark"),
        "{}",
        finding.message
    );
    assert!(finding.remedy.ends_with("with the plumb bob."), "{}", finding.remedy);
}

#[test]
fn a_pitch_read_too_coarsely_fails_each_limit_it_is_judged_by() {
    // A rule read to 3 mm: u = 3 / sqrt 3 / (176 cos 3.58 deg) rad = 0.565 deg. One blade against
    // the other: 2 sqrt 2 x 0.565 = 1.60 deg > 0.6; the means of the sides: 2 x 0.565 = 1.13 > 0.5;
    // one blade alone: with trim, 1.15 deg < half of 3 to 7.
    let edits = [(BOAT, "rigged", "  where: trailer", "  readings: {rule: 3}\n  where: trailer")];
    let checked = checked(&edits);
    let limits: Vec<String> = of(&checked, "tool-too-coarse")
        .iter()
        .filter(|finding| finding.message.contains("pitch"))
        .map(|finding| format!("{:.2}", uncertainty(finding)))
        .collect();
    assert!(
        limits.contains(&"1.60".to_owned()) && limits.contains(&"1.13".to_owned()),
        "{limits:?}"
    );
    assert!(
        !checked.findings.iter().any(|finding| finding.message.contains("pitch square off is"))
    );
}

// ---- days

#[test]
fn what_was_read_again_has_a_day_of_its_own() {
    let all = "read-again:\n  - {date: 2026-12-01, by: Ines Marlow, checked-by: Tomas Reyne, values: [\"*\"]}\n";
    let (_, checked) = SoundBook::with(&[before_seats(all)]).check_as_of("2026-12-20");
    assert!(of(&checked, "overdue").is_empty());
    let one = "read-again:\n  - {date: 2026-12-01, by: Ines Marlow, checked-by: Tomas Reyne, values: [seat-1]}\n";
    let (_, checked) = SoundBook::with(&[before_seats(one)]).check_as_of("2026-12-20");
    // 17 October to 20 December: 14 + 30 + 20 = 64 days.
    let overdue = of(&checked, "overdue");
    assert_eq!(overdue[0].value.map(|value| value.number), Some(64.0));
    assert!(overdue[0].message.contains("64 days ago: over by 22 days"), "{}", overdue[0].message);
}

#[test]
fn every_day_of_the_book_is_looked_at_where_it_stands() {
    let lines = "knocks:\n  - {date: 2027-01-01, what: hit}\n\
                 bends:\n  - {date: 2027-01-02, seat: 1, part: pin, deg: 1}\n\
                 defects:\n  - {found: 2027-01-03, what: crack, state: watch, put-right: {date: 2027-01-04}}\n\
                 out-of-use: {since: 2027-01-05}\n\
                 read-again:\n  - {date: 2027-01-06, by: Ines Marlow, checked-by: Tomas Reyne, values: [seat-1]}\n";
    let edits = [
        before_seats(lines),
        (BOAT, "", "found-afloat: 2026-09-05", "found-afloat: 2027-01-07"),
        (
            OARS,
            "oar: A1",
            "state: sound",
            "defects: [{found: 2027-01-08, what: split, state: watch}]",
        ),
        (CREW, "", "boat: kittiwake", "boat: kittiwake\nmeasured: {date: 2027-01-09}"),
    ];
    let mut names: Vec<String> = found(&edits, "date-in-future").into_iter().map(|f| f.0).collect();
    names.sort();
    assert_eq!(
        names,
        [
            "kittiwake/bends/1/date",
            "kittiwake/defects/2027-01-03/found",
            "kittiwake/defects/2027-01-03/put-right/date",
            "kittiwake/knocks/2027-01-01/date",
            "kittiwake/level-mark/found-afloat",
            "kittiwake/out-of-use/since",
            "kittiwake/read-again/1/date",
            "long-ash/A1/defects/2027-01-08/found",
            "masters-a/measured/date",
        ]
    );
}

// ---- signatures

#[test]
fn readings_without_a_second_person_are_unsure() {
    let edits = [(BOAT, "rigged", "  checked-by: Tomas Reyne\n", "")];
    let name = "kittiwake/rigged/checked-by".to_owned();
    assert_eq!(found(&edits, "not-signed-off"), [(name, Level::Unsure)]);
}

#[test]
fn every_name_of_the_book_must_be_listed_where_the_club_lists_people() {
    let lines = "bends:\n  - {date: 2026-05-02, by: Nobody, seat: 1, part: pin, deg: 1}\n\
                 out-of-use: {since: 2026-10-20, by: Nobody}\n\
                 defects:\n  - {found: 2026-10-03, what: crack, state: watch, put-right: {date: 2026-10-04, by: Nobody, how: new, passed-by: Nobody}}\n";
    let edits = [before_seats(lines)];
    let mut names: Vec<String> = found(&edits, "signer-unknown").into_iter().map(|f| f.0).collect();
    names.sort();
    assert_eq!(
        names,
        [
            "kittiwake/bends/1/by",
            "kittiwake/defects/2026-10-03/put-right/by",
            "kittiwake/defects/2026-10-03/put-right/passed-by",
            "kittiwake/out-of-use/by",
        ]
    );
    let open = ("club.yaml", "", "people:", "x-people:");
    let edits: Vec<Edit> = edits.into_iter().chain([open]).collect();
    assert!(found(&edits, "signer-unknown").is_empty());
}

// ---- predicted

#[test]
fn a_predicted_record_of_a_boat_out_of_use_is_shown_and_stops_nothing() {
    let edits = [before_seats(
        "predicted: true\nout-of-use: {since: 2026-10-20, by: Ines Marlow, because: gap}\n",
    )];
    let finding = only(&edits, "predicted-not-measured");
    assert_eq!(finding.level, Level::Danger);
    assert!(finding.shown_only);
}
