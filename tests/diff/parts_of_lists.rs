//! Bends, knocks, people and waivers: parts of a list without an id of their own.

use super::pair::BOAT;
use super::pair::Pair;

const TWO_BENDS: &str = "bends:
  - {date: 2026-10-17, by: Ines Marlow, seat: 1, part: after-horn, deg: 3}
  - {date: 2026-10-18, by: Ines Marlow, seat: 2, part: after-horn, deg: 2}
";

fn both(lines: &str) -> Pair {
    Pair::new().add("a", BOAT, lines).add("b", BOAT, lines)
}

#[test]
fn a_bend_put_in_front_is_one_addition() {
    let front = "bends:\n  - {date: 2026-11-01, by: Tomas Reyne, seat: 4, part: pin, deg: 1}\n";
    let pair = both(TWO_BENDS).edit("b", BOAT, "bends:\n", front);
    assert_eq!(pair.changes(), ["added kittiwake/bends/1"]);
    let new = pair.change("kittiwake/bends/1");
    assert_eq!(new["new"], "date 2026-11-01, by Tomas Reyne, seat 4, part pin, deg 1");
}

#[test]
fn a_bend_that_is_corrected_is_one_change_and_a_new_order_is_none() {
    let pair = both(TWO_BENDS).edit("b", BOAT, "deg: 3", "deg: 4");
    assert_eq!(pair.changes(), ["changed kittiwake/bends/1/deg"]);
    let turned = "bends:
  - {date: 2026-10-18, by: Ines Marlow, seat: 2, part: after-horn, deg: 2}
  - {date: 2026-10-17, by: Ines Marlow, seat: 1, part: after-horn, deg: 3}
";
    let pair = Pair::new().add("a", BOAT, TWO_BENDS).add("b", BOAT, turned);
    assert_eq!(pair.changes(), [] as [&str; 0]);
}

#[test]
fn one_of_two_knocks_of_a_day_is_taken_out() {
    let knocks = "knocks:
  - {date: 2026-10-18, what: rolled in the shore break}
  - {date: 2026-10-18, what: hit the gate}
";
    let pair = both(knocks).edit(
        "b",
        BOAT,
        "  - {date: 2026-10-18, what: rolled in the shore break}\n",
        "",
    );
    assert_eq!(pair.changes(), ["removed kittiwake/knocks/2026-10-18"]);
    let old = pair.change("kittiwake/knocks/2026-10-18");
    assert_eq!(old["old"], "date 2026-10-18, what rolled in the shore break");
}

#[test]
fn a_person_put_in_front_is_one_addition_and_what_one_may_is_one_change() {
    let pair = Pair::new()
        .edit("b", "club.yaml", "people:\n", "people:\n  - {name: Jo Orme, may: [measure]}\n")
        .edit("b", "club.yaml", "may: [measure, pass, waive]", "may: [measure]");
    assert_eq!(pair.changes(), ["added club/people/1", "changed club/people/3/may"]);
}

#[test]
fn a_waiver_put_in_front_is_one_addition_and_one_made_longer_is_one_change() {
    let waiver = |rule: &str, until: &str| {
        format!(
            "- finding: kittiwake/seat-2\n  rule: {rule}\n  because: winter\n  by: Tomas Reyne\n  until: {until}\n"
        )
    };
    let pair = Pair::new();
    pair.write("a", "waivers.yaml", &waiver("gap-too-loose", "2026-12-01"));
    let both = waiver("horn-hooks", "2026-12-01") + &waiver("gap-too-loose", "2026-12-20");
    pair.write("b", "waivers.yaml", &both);
    assert_eq!(pair.changes(), ["added club/waivers/1", "changed club/waivers/2/until"]);
}
