//! Limits: who bears the doubt, what is exactly at a limit, and where no number ends.

use tholebook::metrology::decision::Bound;
use tholebook::metrology::decision::Bounds;
use tholebook::metrology::decision::DangerVerdict;
use tholebook::metrology::decision::GRAIN;
use tholebook::metrology::decision::Verdict;
use tholebook::metrology::decision::danger;
use tholebook::metrology::decision::disagrees;
use tholebook::metrology::decision::ordinary;
use tholebook::metrology::decision::tool_too_coarse;

const AT_LEAST_5: Bounds = Bounds { least: Some(5.0), most: None };
const AT_MOST_15: Bounds = Bounds { least: None, most: Some(15.0) };
const BAND: Bounds = Bounds { least: Some(3.0), most: Some(7.0) };

/// The verdict by one word and the limit meant.
fn ordinary_word(value: f64, expanded: f64, bounds: Bounds) -> (&'static str, Option<Bound>) {
    match ordinary(value, expanded, bounds) {
        Verdict::Within => ("within", None),
        Verdict::Undecided { bound, .. } => ("undecided", Some(bound)),
        Verdict::Beyond { bound, .. } => ("beyond", Some(bound)),
    }
}

fn danger_word(value: f64, expanded: f64, bounds: Bounds) -> (&'static str, Option<Bound>) {
    match danger(value, expanded, bounds) {
        DangerVerdict::Clear { .. } => ("clear", None),
        DangerVerdict::NotShown { bound, .. } => ("not shown", Some(bound)),
        DangerVerdict::Short { bound, .. } => ("short", Some(bound)),
    }
}

#[test]
fn an_ordinary_limit_needs_proof_of_a_fault_on_both_sides() {
    for (value, word, bound) in [
        (2.0, "beyond", Some(Bound::Least)),
        (2.4, "beyond", Some(Bound::Least)),
        (2.5, "undecided", Some(Bound::Least)),
        (2.9, "undecided", Some(Bound::Least)),
        (3.0, "within", None),
        (5.0, "within", None),
        (7.0, "within", None),
        (7.5, "undecided", Some(Bound::Most)),
        (7.6, "beyond", Some(Bound::Most)),
    ] {
        assert_eq!(ordinary_word(value, 0.5, BAND), (word, bound), "{value}");
    }
}

#[test]
fn a_danger_limit_needs_proof_of_being_clear_on_both_sides() {
    for (value, word, bound) in [
        (2.4, "short", Some(Bound::Least)),
        (2.5, "not shown", Some(Bound::Least)),
        (3.4, "not shown", Some(Bound::Least)),
        (3.5, "clear", None),
        (6.5, "clear", None),
        (6.6, "not shown", Some(Bound::Most)),
        (7.5, "not shown", Some(Bound::Most)),
        (7.6, "short", Some(Bound::Most)),
    ] {
        assert_eq!(danger_word(value, 0.5, BAND), (word, bound), "{value}");
    }
}

#[test]
fn the_amount_says_how_far_beyond_or_inside() {
    assert_eq!(ordinary(16.5, 1.0, AT_MOST_15), Verdict::Beyond { by: 1.5, bound: Bound::Most });
    assert_eq!(ordinary(4.5, 1.0, AT_LEAST_5), Verdict::Undecided { by: 0.5, bound: Bound::Least });
    assert_eq!(danger(3.5, 1.0, AT_LEAST_5), DangerVerdict::Short { by: 1.5, bound: Bound::Least });
    assert_eq!(
        danger(4.5, 1.0, AT_LEAST_5),
        DangerVerdict::NotShown { margin: -0.5, bound: Bound::Least }
    );
    assert_eq!(
        danger(14.5, 1.0, AT_MOST_15),
        DangerVerdict::NotShown { margin: 0.5, bound: Bound::Most }
    );
    assert_eq!(danger(6.5, 1.0, BAND), DangerVerdict::NotShown { margin: 0.5, bound: Bound::Most });
    assert_eq!(danger(4.5, 1.0, BAND), DangerVerdict::Clear { by: 1.5 });
    // In the very middle of a band the upper limit is told.
    assert_eq!(danger(5.0, 3.0, BAND), DangerVerdict::NotShown { margin: 2.0, bound: Bound::Most });
}

#[test]
fn without_a_limit_nothing_is_wrong() {
    assert_eq!(ordinary(1e9, 0.1, Bounds::default()), Verdict::Within);
    assert_eq!(danger(1e9, 0.1, Bounds::default()), DangerVerdict::Clear { by: f64::INFINITY });
    assert!(!tool_too_coarse(1e9, Bounds::default()));
}

/// Written decimal numbers that are exactly at a limit, though their binary difference is not.
#[test]
fn figures_exactly_at_a_limit_are_at_it() {
    let mut off = 0;
    for (gap, shaft) in [(58.2, 53.2), (64.1, 59.1), (64.4, 59.4), (8.7, 3.7), (8.3, 3.3)] {
        let clearance: f64 = gap - shaft;
        off += i32::from(clearance < 5.0) + 100 * i32::from(clearance > 5.0);
        assert_eq!(ordinary_word(clearance, 0.0, AT_LEAST_5).0, "within", "{gap} - {shaft}");
        assert_eq!(danger_word(clearance, 0.0, AT_LEAST_5).0, "clear", "{gap} - {shaft}");
        let at_most = Bounds { least: None, most: Some(5.0) };
        assert_eq!(ordinary_word(clearance, 0.0, at_most).0, "within", "{gap} - {shaft}");
        assert!(!disagrees(clearance - 3.0, 2.0) && !disagrees(3.0 - clearance, 2.0));
    }
    assert!(off % 100 > 0 && off > 100, "rounding goes both ways among these: {off}");
}

/// Beyond or inside by exactly the uncertainty, in numbers that binary rounding spoils.
#[test]
fn figures_exactly_an_uncertainty_away_are_so() {
    for (value, expanded) in
        [(5.1, 0.1), (5.3, 0.3), (5.7, 0.7), (4.9, 0.1), (4.7, 0.3), (4.3, 0.7)]
    {
        let ordinary = ordinary_word(value, expanded, AT_LEAST_5).0;
        assert_eq!(ordinary, if value > 5.0 { "within" } else { "undecided" }, "{value}");
        let danger = danger_word(value, expanded, AT_LEAST_5).0;
        assert_eq!(danger, if value > 5.0 { "clear" } else { "not shown" }, "{value}");
    }
}

#[test]
fn the_grain_is_a_thousand_millionth() {
    assert!((GRAIN - 1e-9).abs() < 1e-24);
    assert_eq!(ordinary_word(5.0 - 0.9e-9, 0.0, AT_LEAST_5).0, "within");
    assert_eq!(ordinary_word(5.0 - 1.1e-9, 0.0, AT_LEAST_5).0, "beyond");
    assert_eq!(ordinary_word(4.5 - 0.9e-9, 0.5, AT_LEAST_5).0, "undecided");
    assert_eq!(ordinary_word(4.5 - 1.1e-9, 0.5, AT_LEAST_5).0, "beyond");
    assert_eq!(danger_word(5.5 - 0.9e-9, 0.5, AT_LEAST_5).0, "clear");
    assert_eq!(danger_word(5.5 - 1.1e-9, 0.5, AT_LEAST_5).0, "not shown");
    assert_eq!(danger_word(4.5 - 0.9e-9, 0.5, AT_LEAST_5).0, "not shown");
    assert_eq!(danger_word(4.5 - 1.1e-9, 0.5, AT_LEAST_5).0, "short");
    let a_grain_off = Bounds { least: Some(0.5 + GRAIN), most: None };
    assert_eq!(danger_word(0.0, 0.5, a_grain_off).0, "not shown");
    assert!(!disagrees(0.5 + 0.9e-9, 0.5) && disagrees(0.5 + 1.1e-9, 0.5));
    assert!(!tool_too_coarse(2.0 + 0.9e-9, BAND) && tool_too_coarse(2.0 + 1.1e-9, BAND));
}

/// An ordinary limit takes no number for a proven fault; a danger limit for a danger not shown to
/// be clear, which says measure again and not bend.
#[test]
fn no_number_ends_on_the_worse_side() {
    const NAN: f64 = f64::NAN;
    let lost_least = Bounds { least: Some(NAN), most: Some(7.0) };
    let lost_most = Bounds { least: Some(3.0), most: Some(NAN) };
    for (value, expanded, bounds) in [
        (NAN, 0.5, BAND),
        (NAN, 0.5, AT_LEAST_5),
        (NAN, 0.5, AT_MOST_15),
        (5.0, NAN, BAND),
        (9.0, NAN, BAND),
        (5.0, 0.5, lost_least),
        (5.0, 0.5, lost_most),
        (f64::INFINITY, 0.5, Bounds { least: None, most: Some(f64::INFINITY) }),
    ] {
        let case = format!("{value} ± {expanded} against {bounds:?}");
        assert_eq!(ordinary_word(value, expanded, bounds).0, "beyond", "{case}");
        assert_eq!(danger_word(value, expanded, bounds).0, "not shown", "{case}");
    }
    assert!(disagrees(NAN, 0.5) && disagrees(0.1, NAN) && disagrees(NAN, NAN));
    assert!(tool_too_coarse(NAN, BAND) && tool_too_coarse(0.1, lost_least));
    assert!(tool_too_coarse(0.1, Bounds { least: Some(NAN), most: None }));
}

#[test]
fn an_endless_uncertainty_proves_nothing() {
    assert_eq!(ordinary_word(99.0, f64::INFINITY, BAND).0, "undecided");
    assert_eq!(danger_word(99.0, f64::INFINITY, BAND).0, "not shown");
    assert_eq!(danger_word(5.0, f64::INFINITY, BAND).0, "not shown");
}

#[test]
fn a_tool_is_too_coarse_for_half_a_band_or_the_size_of_one_limit() {
    assert!(!tool_too_coarse(2.0, BAND) && tool_too_coarse(2.1, BAND));
    assert!(!tool_too_coarse(5.0, AT_LEAST_5) && tool_too_coarse(5.1, AT_LEAST_5));
    let at_least_minus_5 = Bounds { least: Some(-5.0), most: None };
    assert!(!tool_too_coarse(5.0, at_least_minus_5) && tool_too_coarse(5.1, at_least_minus_5));
    assert!(!tool_too_coarse(0.5, Bounds { least: Some(0.0), most: None }));
    assert!(tool_too_coarse(0.5, Bounds { least: Some(0.0), most: Some(0.0) }));
}

#[test]
fn values_disagree_when_further_apart_than_they_are_good_to() {
    assert!(!disagrees(0.5, 0.5) && !disagrees(-0.5, 0.5));
    assert!(disagrees(0.6, 0.5) && disagrees(-0.6, 0.5));
}

/// With four pairs each may err in 1.25 %: 2.2414 standard uncertainties, against the 2 of U.
#[test]
fn a_picked_difference_is_judged_by_a_wider_band() {
    let sigmas = tholebook::metrology::chance::guard_band(0.05 / 4.0, 1.0).expect("a chance");
    assert!((2.0 * tholebook::metrology::decision::PICKED - sigmas).abs() < 0.005, "{sigmas}");
}
