//! A page to write on: what it has boxes for, and what it leaves off.

use tholebook::reports::Asked;
use tholebook::reports::WHERE_THE_SUMS_STOP;

use super::page::BOAT;
use super::page::blank;
use super::page::sheet;

const PLAIN: Asked = Asked { last: false, twice: false };
const LAST: Asked = Asked { last: true, twice: false };
const TWICE: Asked = Asked { last: false, twice: true };

#[test]
fn seats_stand_bow_to_stern_whatever_their_order_in_the_record() {
    let page = blank(&[(BOAT, "", "seat: 1", "seat: 9")], PLAIN);
    let at = |said: &str| page.find(said).unwrap_or_else(|| panic!("no {said}"));
    assert!(at("2 · port · A2") < at("4 · port · A4"));
    assert!(at("4 · port · A4") < at("9 · starboard · A1"));
}

#[test]
fn level_and_wind_come_first_and_the_rest_in_the_order_of_the_work() {
    let page = blank(&[], PLAIN);
    let steps =
        ["trim, deg", "wind", "Pins", "Handles", "Back chocks", "Pitch", "Rowlocks", "Oars"];
    let mut at = page.find("<main").expect("a page");
    for step in steps {
        at +=
            page[at..].find(&format!(">{step}")).unwrap_or_else(|| panic!("{step} not after {at}"));
    }
    assert!(page.contains("Side 1 of 2: turn over") && page.contains("Side 2 of 2"));
    assert!(page.contains("height:10mm"));
}

#[test]
fn every_value_has_its_tool_and_pitch_and_gap_a_box_before_and_after() {
    let page = blank(&[], PLAIN);
    for row in page.split("<tr>").filter(|row| row.contains("scope=\"row\"")) {
        assert!(row.contains("class=\"tool small\""), "{row}");
    }
    assert!(page.contains("callipers ± 0.2 mm") && page.contains("plumb bob ± 1 mm"));
    assert_eq!(page.matches(">found<").count(), 4 * 4);
    assert_eq!(page.matches(">left<").count(), 4 * 4);
    assert!(page.contains("not measured"));
}

#[test]
fn nothing_of_last_time_stands_on_it_unless_it_is_asked_for() {
    let odd: &[_] = &[
        (BOAT, "seat: 1", "gap: 60", "gap: 58.7"),
        (BOAT, "seat: 2", "gap: 60", "gap: not measured"),
    ];
    assert!(!blank(odd, PLAIN).contains("58.7"));
    let last = blank(odd, LAST);
    assert!(last.contains("last 58.7") && last.contains("last not measured"));
}

#[test]
fn a_second_reader_has_a_box_and_never_sees_earlier_values() {
    let odd: &[_] = &[(BOAT, "seat: 1", "gap: 60", "gap: 58.7")];
    for asked in [TWICE, Asked { last: true, twice: true }] {
        let page = blank(odd, asked);
        assert!(!page.contains("58.7") && !page.contains("last "), "{page}");
        assert!(page.contains("first reader") && page.contains(">second<"));
        assert!(page.contains("gap, mm, found") && page.contains("gap, mm, left"));
    }
}

#[test]
fn a_boat_without_seats_still_has_four_columns() {
    let page = blank(&[(BOAT, "", "", "boat: tern\nclass: surfboat\n")], PLAIN);
    assert!(page.contains(">seat 4"), "{page}");
}

#[test]
fn both_pages_say_where_the_sums_stop_and_that_they_are_no_permission() {
    for page in [sheet(&[]), blank(&[], PLAIN), blank(&[], TWICE)] {
        assert!(page.contains(WHERE_THE_SUMS_STOP) && page.contains("no permission to launch"));
    }
}

#[test]
fn every_drawing_has_a_title_and_words_under_names_of_its_own() {
    for page in [sheet(&[]), blank(&[], PLAIN)] {
        let drawings = page.matches("<svg").count();
        assert!(drawings >= 12, "{drawings}");
        assert_eq!(page.matches("role=\"img\"").count(), drawings);
        let mut ids: Vec<&str> =
            page.split(" id=\"").skip(1).filter_map(|rest| rest.split('"').next()).collect();
        assert_eq!(ids.len(), drawings * 2);
        ids.sort_unstable();
        ids.dedup();
        assert_eq!(ids.len(), drawings * 2, "each id once");
        let own = ids.iter().filter_map(|id| id.strip_suffix("-title"));
        for id in own {
            assert!(page.contains(&format!("labelledby=\"{id}-title {id}-about\"")), "{id}");
        }
    }
}

#[test]
fn the_card_tells_the_worst_first_with_letter_word_and_limit() {
    let page = sheet(&[(BOAT, "seat: 1", "gap: 60", "gap: 55")]);
    assert!(page.contains("NOT TO GO AFLOAT") && page.contains("D danger"), "{page}");
    assert!(page.contains("at least 5 mm") && page.contains("In no git repository"));
    assert!(!sheet(&[]).contains("NOT TO GO AFLOAT"));
}
