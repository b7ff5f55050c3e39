//! Clearance, looseness, bed, gearing and handle of an oar in a rowlock, held against sums written
//! out here, against the geometry's independent cases and against published lengths.

use serde_json::Value;
use tholebook::metrology::decision::Verdict;
use tholebook::planning::matching::Figure;
use tholebook::planning::matching::Suits;

use crate::tries::BOAT;
use crate::tries::OARS;
use crate::tries::changed;
use crate::tries::close;
use crate::tries::figure;
use crate::tries::matches;
use crate::tries::read;
use crate::tries::tried;

/// A class like the sound one's but for the dip.
fn class(dip: &str) -> String {
    format!(
        "class: surfboat-b\nseats: 4\nalternating: true\ncollar-to-pin: 30\n\
         oar-angle: {{catch: 50, finish: 35, dip: {dip}}}\n\
         limits:\n  clearance: {{least: 5, source: ours}}\n  loose: {{most: 15, source: ours}}\n"
    )
}

/// Gap 60, widest 52, narrowest 46: 60 - 52 = 8 and 60 - 46 = 14. Two callipers good to ± 0.2, both
/// rectangular: U = 2 sqrt(2) 0.2 / sqrt(3) = 0.3266.
///
/// In a roll of 15 deg, the oar along the boat, dip 6: tan tilt = tan 15 / cos 6 = 0.269425, so cos
/// tilt = 0.965570; the horn of 46 stands 46 - 26 = 20 above the shaft's middle; a straight lift
/// needs 52 / 0.965570 + 20 x 0.269425 = 59.2427: 0.757 is left.
#[test]
fn clearance_looseness_and_the_roll_are_those_worked_by_hand() {
    tried(&[], 1, "A1", |tried| {
        let (clearance, good_to) = figure(&tried.clearance);
        close(clearance, 8.0, 1e-9);
        close(good_to, 0.326_599, 1e-6);
        close(figure(&tried.looseness).0, 14.0, 1e-9);
        close(figure(&tried.in_roll).0, 0.757, 5e-4);
        assert_eq!(tried.decided.suits, Suits::Clears);
        let (by, limit) = tried.decided.by.as_ref().expect("a figure decides");
        assert_eq!((*by, limit.value), (Figure::Clearance, 5.0));
        close(tried.decided.beyond, -3.0, 1e-9);
    });
}

/// (1126 + 30) cos 6 deg = 1156 x 0.994522 = 1149.667; less spread 792 and seat mark 61: 296.667.
/// Gearing (3860 - 1126) / 1126 = 2.428064. The handle may pass by 305 to 335: 8.3 too little, and
/// it is good to less.
#[test]
fn handle_and_gearing_are_those_of_the_oar_in_that_seat() {
    let edits = [(OARS, "oar: A2", "inboard: 1150", "inboard: 1126")];
    tried(&edits, 3, "A2", |tried| {
        close(figure(&tried.handle.past_mark).0, 296.667, 1e-3);
        close(figure(&tried.gearing).0, 2.428_064, 1e-6);
        let Some(Verdict::Beyond { by, .. }) = tried.handle.verdict else {
            panic!("{:?}", tried.handle.verdict)
        };
        close(by, 305.0 - 296.667, 1e-3);
    });
    tried(&[], 3, "A1", |tried| assert_eq!(tried.handle.verdict, Some(Verdict::Within)));
}

/// Source: chords of circles in Pythagorean triples: of 50, a chord of 30 lies 5 deep; of 34, 9.
#[test]
fn another_round_oar_is_bedded_on_the_edges_that_the_seats_own_marked() {
    let edits = [
        (OARS, "oar: A1", "{widest: 52, narrowest: 46, bears: flat", "{round: 50, bears: round"),
        (OARS, "oar: A2", "{widest: 52, narrowest: 46, bears: flat", "{round: 34, bears: round"),
        (BOAT, "seat: 1", "seat-mark: 61", "seat-mark: 61\n    oar-bed: 30"),
    ];
    let bed = |oar| tried(&edits, 1, oar, |tried| tried.bed.as_ref().map(|bed| figure(bed).0));
    close(bed("A1").expect("a round shaft"), 5.0 / 50.0, 1e-9);
    close(bed("A2").expect("a round shaft"), 9.0 / 34.0, 1e-9);
    assert_eq!(bed("A3"), None);
}

/// Source: `geometry.json`, cases of an independent derivation.
fn case(id: &str) -> Value {
    let text = include_str!("../data/geometry.json");
    let root: Value = serde_json::from_str(text).expect("JSON");
    let cases = root["cases"].as_array().expect("a list");
    cases.iter().find(|case| case["id"] == id).expect("a case").clone()
}

#[test]
fn a_lift_along_the_boat_needs_the_gap_of_a_mouth_that_leans_by_the_roll() {
    for id in ["gap_02", "gap_04"] {
        let case = case(id);
        let number = |key: &str| case["inputs"][key].as_f64().expect("a number");
        let (shaft, wall, roll) = (number("shaft_mm"), number("wall_mm"), number("tilt_deg"));
        // With no dip the mouth of an oar that lies along the boat leans by the roll itself.
        let (class, round) = (class("0"), format!("{{round: {shaft}"));
        let (horn, limit) = (format!("horn: {}", wall + shaft / 2.0), format!("{roll} deg"));
        let limits = format!("limits: {{roll: {{most: {limit}}}}}\noars: long-ash");
        let edits = [
            ("classes/surfboat-b.yaml", "", "", class.as_str()),
            (BOAT, "", "class: surfboat", "class: surfboat-b"),
            (BOAT, "", "oars: long-ash", &limits),
            (BOAT, "seat: 2", "horn: 46", &horn),
            (BOAT, "seat: 2", "gap: 60", "gap: 70"),
            (OARS, "oar: A4", "{widest: 52, narrowest: 46", &round),
        ];
        let needed = case["outputs"]["gap_needed_mm"].as_f64().expect("a number");
        let left = tried(&edits, 2, "A4", |tried| figure(&tried.in_roll).0);
        close(left, 70.0 - needed, 1e-6);
    }
}

#[test]
fn handle_and_gearing_agree_with_the_independent_cases() {
    for (id, dip) in [("overlap_02", "0"), ("overlap_04", "8")] {
        let case = case(id);
        let number = |key: &str| case["inputs"][key].as_f64().expect("a number");
        let (class, inboard) = (class(dip), format!("inboard: {}", number("inboard_mm")));
        let spread = format!("spread: {}", number("pin_to_centreline_mm"));
        let mark = format!(
            "collar-to-pin: {}\n    seat-mark: {}",
            number("swivel_offset_mm"),
            number("seat_offset_away_mm")
        );
        let edits = [
            ("classes/surfboat-b.yaml", "", "", class.as_str()),
            (BOAT, "", "class: surfboat", "class: surfboat-b"),
            (BOAT, "seat: 4", "spread: 792", &spread),
            (BOAT, "seat: 4", "seat-mark: 61", &mark),
            (OARS, "oar: A5", "inboard: 1150", &inboard),
        ];
        let overlap = case["outputs"]["overlap_mm"].as_f64().expect("a number");
        let past = tried(&edits, 4, "A5", |tried| figure(&tried.handle.past_mark).0);
        close(past, overlap, 1e-6);
    }
    let case = case("gear_02");
    let length = format!("length: {}", case["inputs"]["oar_mm"]);
    let inboard = format!("inboard: {}", case["inputs"]["inboard_mm"]);
    let edits = [
        (OARS, "oar: A5", "length: 3860", length.as_str()),
        (OARS, "oar: A5", "inboard: 1150", &inboard),
    ];
    let simple = case["outputs"]["gear_simple"].as_f64().expect("a number");
    close(tried(&edits, 1, "A5", |tried| figure(&tried.gearing).0), simple, 1e-8);
}

/// Source: Lehmann, Rowing (1898), ch. IV: lengths in inches; `published.tsv`.
#[test]
fn the_gearing_of_published_oars_is_theirs_in_every_seat() {
    let rows = include_str!("../data/published.tsv").lines().map(|line| line.split('\t'));
    let rows = rows.map(Iterator::collect::<Vec<_>>).filter(|row| row[1] == "imperial");
    let mut seen = 0;
    for row in rows {
        let inches: Vec<&str> = row[2]
            .split(|c: char| !c.is_ascii_digit() && c != '.')
            .filter(|word| word.starts_with(|c: char| c.is_ascii_digit()))
            .collect();
        let [length, inboard] = inches[..] else { panic!("{row:?}") };
        let expected: Vec<f64> = row[3].split(", ").map(|n| n.parse().expect("a number")).collect();
        let (length, inboard) = (format!("length: {length} in"), format!("inboard: {inboard} in"));
        let edits = [
            (OARS, "oar: A3", "length: 3860", length.as_str()),
            (OARS, "oar: A3", "inboard: 1150", &inboard),
        ];
        let book = read(&changed(&edits));
        let matches = matches(&book);
        let of_a3 = matches[0].all().filter(|(_, tried)| tried.oar.is_called("A3"));
        for (_, tried) in of_a3 {
            close(figure(&tried.gearing).0, expected[2], 1e-6);
            seen += 1;
        }
    }
    assert_eq!(seen, 5 * 4);
}
