//! Geometry against published and plainly computable values.
//!
//! Source: `tests/data/published.tsv`; its source column stands in every failure message. Lengths
//! in inches are turned into millimetres by 25.4, exact by definition.

use tholebook::geometry::arc;
use tholebook::geometry::arc::Lean;
use tholebook::geometry::arc::Rig;
use tholebook::geometry::bedding;
use tholebook::geometry::clearance;
use tholebook::geometry::gearing;
use tholebook::geometry::handle;
use tholebook::geometry::reading;
use tholebook::units::Angle;
use tholebook::units::Length;

const MM_PER_INCH: f64 = 25.4;

/// One row of the table.
struct Row {
    id: &'static str,
    topic: &'static str,
    input: &'static str,
    expected: &'static str,
    tolerance: Option<f64>,
    source: &'static str,
}

impl Row {
    /// Returns the expected numbers: all that stand before a published rounding in brackets.
    fn expected(&self) -> Vec<f64> {
        let plain = self.expected.split('(').next().expect("split gives at least one piece");
        plain.split(',').map(|cell| cell.trim().parse().expect(self.id)).collect()
    }

    /// Returns the numbers of the input, in order, with their signs.
    fn inputs(&self) -> Vec<f64> {
        let apart = |c: char| !(c.is_ascii_digit() || c == '.' || c == '-');
        self.input.split(apart).filter_map(|word| word.parse().ok()).collect()
    }

    fn tolerance(&self) -> f64 {
        self.tolerance.expect("a row of these topics has a number for tolerance")
    }

    /// Holds the found numbers against the expected ones.
    fn check(&self, found: &[f64]) {
        let expected = self.expected();
        assert_eq!(found.len(), expected.len(), "{}: {}", self.id, self.expected);
        for (found, expected) in found.iter().zip(expected) {
            assert!(
                (found - expected).abs() <= self.tolerance(),
                "{} ({}): found {found}, expected {expected}; source: {}",
                self.id,
                self.input,
                self.source
            );
        }
    }
}

fn rows() -> Vec<Row> {
    let lines = include_str!("data/published.tsv").lines().skip(1);
    lines
        .filter(|line| !line.starts_with("total"))
        .map(|line| {
            let cells: Vec<&str> = line.split('\t').collect();
            let [id, topic, input, expected, tolerance, source, _status] = cells[..] else {
                panic!("seven cells: {line}")
            };
            let tolerance = if tolerance == "exact" { Some(1e-9) } else { tolerance.parse().ok() };
            Row { id, topic, input, expected, tolerance, source }
        })
        .collect()
}

/// Returns the rows of one topic, and fails if there are not as many as there should be.
fn rows_of(topic: &str, count: usize) -> Vec<Row> {
    let rows: Vec<Row> = rows().into_iter().filter(|row| row.topic == topic).collect();
    assert_eq!(rows.len(), count, "rows of {topic}");
    rows
}

fn mm(value: f64) -> Length {
    Length::mm(value)
}

fn level() -> Angle {
    Angle::deg(0.0)
}

/// Topics checked in this file, and those that belong to another part of the program.
const HERE: [&str; 9] = [
    "angle",
    "blade pitch",
    "gearing",
    "geometry",
    "survey",
    "7:18 rule",
    "imperial",
    "pin clearance",
    "circle segment",
];
const ELSEWHERE: [&str; 8] = [
    "mechanics",
    "oar stiffness",
    "GUM H.1",
    "GUM H.3",
    "JCGM 106 9.5.4",
    "JCGM 106 resistor",
    "decision rule",
    "NIST StRD Norris",
];

#[test]
fn every_topic_of_the_table_is_known() {
    for row in rows() {
        let people = row.topic.starts_with("ANSUR");
        let known = HERE.contains(&row.topic) || ELSEWHERE.contains(&row.topic) || people;
        assert!(known, "{}: nothing checks the topic {}", row.id, row.topic);
    }
}

/// Source: mathematics, by mpmath to 30 digits.
#[test]
fn angles_are_those_of_mathematics() {
    for row in rows_of("angle", 5) {
        let numbers = row.inputs();
        let found = match row.input.split_once('(').expect("a function of something").0 {
            "atan" => {
                let slope = reading::slope_from_offset(mm(numbers[0]), mm(numbers[1]));
                slope.expect("the run has a length").as_deg()
            }
            // 100 mm of plumb line, and the offset whose slope is the angle.
            "100*tan" => {
                let offset = row.expected()[0];
                let slope = reading::slope_from_offset(mm(offset), mm(numbers[0]));
                assert!((slope.expect("a run").as_deg() - numbers[1]).abs() < 1e-9, "{}", row.id);
                Angle::deg(numbers[1]).tan() * numbers[0]
            }
            other => panic!("{}: no function {other}", row.id),
        };
        row.check(&[found]);
    }
}

/// Source: the table's own derivation, signs as in coaching sources. It adds the rowlock's pitch to
/// the lean seen along the shaft, as if it were the oar's own; a rowlock that turns to lie flush
/// shows up to 0.0007 deg more, which is held to here as well.
#[test]
fn pitch_through_the_arc_has_the_signs_of_the_coaching_sources() {
    for row in rows_of("blade pitch", 11) {
        let numbers = row.inputs();
        let (aft, out, gate, theta) = match numbers[..] {
            // "pin stern 0, pin outward 1 deg, gate 4, sweep angle 60 (+ = catch side)"
            [aft, out, gate, theta] => (aft, out, gate, theta),
            _ => panic!("{}: {:?}", row.id, numbers),
        };
        let lean = Lean { aft: Angle::deg(aft), out: Angle::deg(out) };
        let at = |rowlock, oar| {
            let rig = Rig { rowlock_pitch: Angle::deg(rowlock), oar_pitch: Angle::deg(oar), lean };
            arc::pitch(rig, Angle::deg(theta), level()).as_deg()
        };
        row.check(&[at(0.0, gate)]);
        let flush = at(gate, 0.0) - row.expected()[0];
        assert!(flush.abs() < 7e-4, "{}: {flush}; source: {}", row.id, row.source);
    }
}

/// Source: a forum of builders of a coastal rowing boat (2016); Rankov 2012, second hand.
#[test]
fn gearings_are_the_published_ones() {
    for row in rows_of("gearing", 5) {
        let numbers = row.inputs();
        if row.input.contains("ratio") {
            let (length, ratio, inboard) = (numbers[0], numbers[1], row.expected()[0]);
            let found = gearing::gearing(mm(1000.0 * length), mm(1000.0 * inboard));
            let found = found.expect("a sound oar");
            // The published inboard is good to half its last digit: so much of the ratio.
            let slack = row.tolerance() * length / inboard.powi(2);
            let off = (found - ratio).abs();
            assert!(off <= slack, "{}: {found} against {ratio}; source: {}", row.id, row.source);
        } else {
            let (outboard, inboard) = (1000.0 * numbers[0], 1000.0 * numbers[1]);
            let found = gearing::gearing(mm(outboard + inboard), mm(inboard));
            row.check(&[found.expect("a sound oar")]);
        }
    }
}

/// Source: Rankov 2012, ch. 9 and table 9.1, second hand.
#[test]
fn a_published_oars_reach_arc_and_slope_come_out() {
    for row in rows_of("geometry", 3) {
        let numbers = row.inputs();
        match row.id {
            // "4.218*cos 30deg": a shaft that slopes by 30 deg, over the water.
            "G06" => {
                let (shaft, none) = (mm(1000.0 * numbers[0]), mm(0.0));
                let reach = handle::past_centreline(shaft, none, none, Angle::deg(numbers[1]));
                row.check(&[reach.as_mm() / 1000.0]);
            }
            // "arc: chord 0.89, radius 1.092": the arc whose chord that is.
            "G07" => {
                let (chord, radius) = (1000.0 * numbers[0], 1000.0 * numbers[1]);
                let at = |arc: f64| {
                    let half = Angle::deg(arc / 2.0);
                    gearing::chord_length(mm(radius), half, -half, level()).as_mm()
                };
                let arc = row.expected()[0];
                assert!((at(arc) - chord).abs() < 1e-4, "{}: source: {}", row.id, row.source);
                let between =
                    at(arc - row.tolerance()) < chord && chord < at(arc + row.tolerance());
                assert!(between, "{}: source: {}", row.id, row.source);
            }
            // "atan(1/3) deg"
            "G08" => {
                let slope = reading::slope_from_offset(mm(numbers[0]), mm(numbers[1]));
                row.check(&[slope.expect("a run").as_deg()]);
            }
            other => panic!("nothing here checks {other}"),
        }
    }
}

/// Source: a published sheet of formulas for surveying a rig; the numbers are worked in the table.
/// Its gearing takes the hands to be over the centreline and both arms from the collar's face.
#[test]
fn a_survey_sheets_overlap_and_gearing_come_out() {
    let [spread, inboard, length] = [84.0, 114.0, 372.0].map(|cm: f64| mm(10.0 * cm));
    // "258/(84-2)": the collar stands 2 cm from the pin.
    let collar = mm(20.0);
    let overlap = handle::past_centreline(inboard, collar, spread, level());
    for row in rows_of("survey", 2) {
        match row.id {
            "G10" => {
                assert!(row.input.starts_with("spread 84, inboard 114, length 372"));
                row.check(&[overlap.as_mm() / 10.0]);
            }
            "G11" => {
                let none = mm(0.0);
                let ratio = gearing::lever_gearing(length, inboard, none, overlap, none);
                row.check(&[ratio.expect("a sound oar")]);
            }
            other => panic!("nothing here checks {other}"),
        }
    }
}

/// Source: two published hand rules for the length of an oar: inboard is half the distance of the
/// rowlocks and two inches, and is to the whole oar as 7 to 25.
#[test]
fn the_seven_to_eighteen_rule_comes_out() {
    for row in rows_of("7:18 rule", 2) {
        let (apart, more) = (row.inputs()[0], row.inputs()[1]);
        let inches = |value: f64| mm(value * MM_PER_INCH);
        let (none, spread) = (mm(0.0), inches(apart / 2.0));
        let inboard = handle::inboard_for(inches(more), none, spread, none, level());
        let ratio = gearing::gearing(inches(row.expected()[0]), inboard).expect("a sound oar");
        let slack = row.tolerance() * MM_PER_INCH / inboard.as_mm();
        let off = (ratio - 18.0 / 7.0).abs();
        assert!(off <= slack, "{}: {ratio} against 18:7; source: {}", row.id, row.source);
    }
}

/// Source: Lehmann, Rowing (1898), ch. IV: lengths in inches.
#[test]
fn lehmanns_oars_in_inches_have_their_lengths_and_gearing() {
    for row in rows_of("imperial", 5) {
        let [length, inboard] = row.inputs()[..] else { panic!("{}: two lengths", row.id) };
        let [length, inboard] = [length, inboard].map(|inches| mm(inches * MM_PER_INCH));
        let ratio = gearing::gearing(length, inboard).expect("a sound oar");
        row.check(&[length.as_mm() / 10.0, inboard.as_mm() / 10.0, ratio]);
    }
}

/// Source: the table's own derivation. Two round thole pins are round tips: at the angle where the
/// oar locks, the gap it needs is the gap there is.
#[test]
fn an_oar_between_two_pins_locks_at_its_angle() {
    for row in rows_of("pin clearance", 3) {
        let ratio = *row.inputs().last().expect("the ratio is the input");
        let (spacing, pin) = (100.0, 20.0);
        let oar = ratio * spacing - pin;
        let need = |angle| {
            let tilt = Angle::deg(angle);
            clearance::gap_for_tilt_round_tips(mm(oar), mm(pin / 2.0), tilt).as_mm()
        };
        let (gap, angle) = (spacing - pin, row.expected()[0]);
        assert!((need(angle) - gap).abs() < 1e-6, "{}: source: {}", row.id, row.source);
        let (before, after) = (need(angle - 1e-6), need(angle + 1e-6));
        assert!(before < gap && gap < after, "{}: source: {}", row.id, row.source);
    }
}

/// Source: Pythagorean triples.
#[test]
fn flats_of_pythagorean_circles_have_whole_depths() {
    for row in rows_of("circle segment", 5) {
        let [diameter, flat] = row.inputs()[..] else { panic!("{}: two measures", row.id) };
        let depth = bedding::depth_from_chord(mm(diameter), mm(flat)).expect("inside the round");
        row.check(&[depth.as_mm()]);
        let back = bedding::chord_from_depth(mm(diameter), depth).expect("inside the round");
        assert!((back.as_mm() - flat).abs() < 1e-9, "{}: source: {}", row.id, row.source);
    }
}

/// Source: the 3-4-5 triangle, whose angles the rows C0.6 and C0.8 carry: asin is what is left of
/// acos to a right angle.
#[test]
fn pitch_across_the_blade_is_an_arc_sine() {
    for row in rows_of("pin clearance", 3) {
        let ratio = *row.inputs().last().expect("the ratio is the input");
        let pitch = reading::pitch_from_offset(mm(ratio * 176.0), mm(176.0)).expect("inside");
        let off = (90.0 - pitch.as_deg() - row.expected()[0]).abs();
        assert!(off <= row.tolerance(), "{}: {pitch}; source: {}", row.id, row.source);
    }
}
