//! What must hold for any numbers.

use proptest::prelude::*;

use tholebook::metrology::budget::Budget;
use tholebook::metrology::chance;
use tholebook::metrology::decision;
use tholebook::metrology::decision::Bounds;
use tholebook::metrology::decision::DangerVerdict;
use tholebook::metrology::decision::Verdict;
use tholebook::metrology::half_width;
use tholebook::metrology::trend::Trend;

/// A reading of one of five things, so that some are shared.
fn reading() -> impl Strategy<Value = Budget<u8>> {
    (-500.0..500.0, 0_u8..5).prop_map(|(value, key)| {
        // One key is one reading: its half-width goes with it.
        Budget::reading(value, 0.1 + f64::from(key), key)
    })
}

/// A sum of several readings, each with a sensitivity of its own.
fn budget() -> impl Strategy<Value = Budget<u8>> {
    prop::collection::vec((reading(), -3.0..3.0), 1..6).prop_map(|terms| {
        terms.iter().fold(Budget::exact(0.0), |sum, (reading, by)| sum.plus(&reading.scaled(*by)))
    })
}

fn bounds() -> impl Strategy<Value = Bounds> {
    (prop::option::of(-10.0..0.0), prop::option::of(0.0..10.0))
        .prop_map(|(least, most)| Bounds { least, most })
}

fn near(one: f64, other: f64) -> bool {
    (one - other).abs() <= 1e-6 * (1.0 + one.abs() + other.abs())
}

proptest! {
    #[test]
    fn stepping_gives_what_sums_and_differences_give(a in budget(), b in budget()) {
        let stepped = Budget::through([&a, &b], |[a, b]| Some(2.0 * a - b)).expect("finite");
        let summed = a.scaled(2.0).minus(&b);
        let known = Budget::linear(stepped.value(), [(&a, 2.0), (&b, -1.0)]);
        prop_assert!(near(stepped.value(), summed.value()));
        prop_assert!(near(stepped.expanded(), summed.expanded()));
        prop_assert!(near(known.expanded(), summed.expanded()));
    }

    #[test]
    fn a_value_less_itself_is_exact(a in budget()) {
        prop_assert!(a.minus(&a).expanded() < 1e-300);
        prop_assert!(near(a.plus(&a).expanded(), 2.0 * a.expanded()));
    }

    #[test]
    fn order_does_not_matter(a in budget(), b in budget()) {
        prop_assert!(near(a.plus(&b).expanded(), b.plus(&a).expanded()));
        prop_assert!(near(a.minus(&b).expanded(), b.minus(&a).expanded()));
    }

    #[test]
    fn a_sum_is_no_less_sure_than_its_terms_together(a in budget(), b in budget()) {
        let together = a.expanded() + b.expanded();
        prop_assert!(a.plus(&b).expanded() <= together * (1.0 + 1e-12));
    }

    #[test]
    fn shares_sum_to_one_and_fall(a in budget()) {
        let shares = a.shares();
        prop_assert!(near(shares.iter().map(|(_, share)| share).sum(), 1.0));
        prop_assert!(shares.windows(2).all(|pair| pair[0].1 >= pair[1].1));
        prop_assert_eq!(shares.len(), a.parts().len());
    }

    #[test]
    fn a_finer_tool_never_makes_a_value_less_sure(
        a in budget(), key in 0_u8..5, finer in 0.0..0.1,
    ) {
        prop_assert!(a.read_again_with(key, finer).expanded() <= a.expanded() * (1.0 + 1e-12));
    }

    #[test]
    fn the_half_width_found_gives_the_uncertainty_asked(
        a in budget(), key in 0_u8..5, asked in 0.1..9.0,
    ) {
        if let Some(half_width) = a.half_width_for(key, asked) {
            prop_assert!(near(a.read_again_with(key, half_width).expanded(), asked));
        } else {
            let rests_on_it = a.parts().iter().any(|part| part.input == key);
            prop_assert!(!rests_on_it || a.read_again_with(key, 0.0).expanded() >= asked);
        }
    }

    #[test]
    fn a_half_width_is_never_finer_than_the_tool_or_half_the_spread(
        values in prop::collection::vec(-500.0..500.0_f64, 1..6), tool in 0.0..2.0,
    ) {
        let (mean, half_width) = half_width::of_readings(&values, tool).expect("some, all finite");
        let most = values.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let least = values.iter().copied().fold(f64::INFINITY, f64::min);
        prop_assert!(half_width >= tool && half_width >= (most - least) / 2.0);
        prop_assert!(mean >= least - 1e-9 && mean <= most + 1e-9);
    }

    #[test]
    fn what_is_clear_of_danger_is_within_and_what_is_beyond_is_short(
        value in -15.0..15.0, expanded in 0.0..5.0, bounds in bounds(),
    ) {
        let ordinary = decision::ordinary(value, expanded, bounds);
        let agree = match decision::danger(value, expanded, bounds) {
            DangerVerdict::Clear { by } => ordinary == Verdict::Within && by > expanded - 1e-8,
            DangerVerdict::Short { by, bound } => ordinary == Verdict::Beyond { by, bound },
            DangerVerdict::NotShown { margin, bound } => match ordinary {
                Verdict::Within => margin > -1e-8,
                undecided => undecided == Verdict::Undecided { by: -margin, bound },
            },
        };
        prop_assert!(agree, "{ordinary:?}");
    }

    #[test]
    fn a_mirrored_value_gets_the_mirrored_verdict(
        value in -15.0..15.0_f64, expanded in 0.0..5.0, limit in 0.0..10.0,
    ) {
        let most = Bounds { least: None, most: Some(limit) };
        let least = Bounds { least: Some(-limit), most: None };
        let amount = |verdict| match verdict {
            Verdict::Within => (0, 0.0),
            Verdict::Undecided { by, .. } => (1, by),
            Verdict::Beyond { by, .. } => (2, by),
        };
        let mirrored = amount(decision::ordinary(-value, expanded, least));
        prop_assert_eq!(amount(decision::ordinary(value, expanded, most)), mirrored);
    }

    #[test]
    fn a_guard_band_gives_the_chance_it_was_made_for(chance in 1e-9..0.999, u in 0.01..5.0) {
        let inside = chance::guard_band(chance, u).expect("between 0 and 1");
        let bounds = Bounds { least: Some(0.0), most: None };
        let found = chance::beyond(inside, u, bounds);
        prop_assert!((found - chance).abs() < 1e-12 + 1e-9 * chance, "{found}");
    }

    #[test]
    fn a_trend_is_moved_and_stretched_with_its_points(
        points in prop::collection::vec((-50.0..50.0, -50.0..50.0), 4..20),
        up in -9.0..9.0, by in 0.5..3.0,
    ) {
        let Some(line) = Trend::through(&points) else { return Ok(()) };
        let moved: Vec<_> = points.iter().map(|&(x, y)| (x, up + by * y)).collect();
        let moved = Trend::through(&moved).expect("the same places along x");
        prop_assert!(near(moved.slope, by * line.slope));
        prop_assert!(near(moved.value_at(7.0), up + by * line.value_at(7.0)));
        let stretched = by * line.standard_uncertainty_at(7.0);
        prop_assert!(near(moved.standard_uncertainty_at(7.0), stretched));
    }
}
