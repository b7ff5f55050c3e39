//! What can't be read on one side is told: never taken as equal, never as removed.

use super::pair::BOAT;
use super::pair::CREW;
use super::pair::OARS;
use super::pair::Pair;
use super::pair::each;

#[test]
fn a_value_that_can_t_be_read_is_told_on_either_side_and_on_both() {
    for sides in [&["a"][..], &["b"], &["a", "b"]] {
        let pair = sides
            .iter()
            .fold(Pair::new(), |pair, side| pair.edit(side, BOAT, "gap: 60", "gap: sixty"));
        assert_eq!(pair.changes(), ["unreadable kittiwake/seat-1/rowlock/gap"], "{sides:?}");
        assert_eq!(pair.run(&["--exit-code"]).code, Some(1));
        assert!(pair.run(&[]).out.contains("can't be compared"));
    }
}

#[test]
fn nothing_is_removed_that_may_stand_in_what_can_t_be_read() {
    let broken = [
        (BOAT, "    rowlock:\n      gap: 60\n", "    rowlock: 60\n    x-was:\n      gap: 60\n"),
        (BOAT, "  - seat: 1\n", "  - seat: one\n"),
        (BOAT, "seats:\n", "seats: none\nx-seats:\n"),
        (BOAT, "boat: kittiwake\n", "boat: no\n"),
        (BOAT, "oars: long-ash\n", "oars: [long-ash\n"),
        (OARS, "- oar: A1\n", "- oar: A_1\n"),
        (CREW, "{seat: 1, who: I.M.,", "{seat: first, who: I.M.,"),
        (CREW, "crew: masters-a\nboat: kittiwake\n", "krew: masters-a\n"),
    ];
    for (path, from, to) in broken {
        let pair = Pair::new().edit("b", path, from, to);
        let json = pair.json();
        let kinds = each(&json["changes"], |change| change["kind"].clone());
        assert!(!kinds.is_empty(), "{to}");
        assert!(kinds.iter().any(|kind| kind == "unreadable"), "{to} {:#}", json["changes"]);
        assert!(!kinds.iter().any(|kind| kind == "removed"), "{to} {:#}", json["changes"]);
        let back = Pair::new().edit("a", path, from, to).json();
        let kinds = each(&back["changes"], |change| change["kind"].clone());
        assert!(!kinds.iter().any(|kind| kind == "added"), "{to} {:#}", back["changes"]);
    }
}

#[test]
fn a_record_that_really_went_is_still_removed_beside_a_broken_one() {
    let pair = Pair::new().edit("b", BOAT, "oars: long-ash\n", "oars: [long-ash\n");
    std::fs::remove_file(pair.path("b").join(CREW)).expect("a file less");
    assert!(pair.changes().contains(&"removed masters-a".to_owned()), "{:?}", pair.changes());
}
