//! Budgets: what is shared, what cancels, what is refused.

use std::cell::RefCell;

use tholebook::metrology::budget::Budget;
use tholebook::metrology::budget::Part;

/// Asserts that two figures agree to twelve digits.
fn same(computed: f64, expected: f64) {
    let off = (computed - expected).abs();
    assert!(off <= 1e-12 * expected.abs().max(1.0), "computed {computed}, expected {expected}");
}

fn product(one: &Budget<&'static str>, other: &Budget<&'static str>) -> Budget<&'static str> {
    Budget::through([one, other], |[one, other]| Some(one * other)).expect("a product is finite")
}

#[test]
fn an_exact_value_has_no_uncertainty_and_no_shares() {
    let exact = Budget::<&str>::exact(176.0);
    same(exact.value(), 176.0);
    same(exact.expanded(), 0.0);
    assert!(exact.parts().is_empty() && exact.shares().is_empty());
}

#[test]
fn the_expanded_uncertainty_is_twice_the_standard_one() {
    let reading = Budget::reading(58.2, 3_f64.sqrt(), "gap");
    same(reading.standard_uncertainty(), 1.0);
    same(reading.expanded(), 2.0);
}

/// By hand: both pins were read from one line, good to 1 mm; what the line is out by, both are.
#[test]
fn what_two_values_share_cancels_in_their_difference_and_doubles_in_their_sum() {
    let port = Budget::reading(900.0, 1.0, "line").with_input(0.2, 1.0, "port pin");
    let starboard = Budget::reading(905.0, 1.0, "line").with_input(0.3, 1.0, "starboard pin");

    let difference = starboard.minus(&port);
    same(difference.value(), 5.0);
    same(difference.standard_uncertainty(), ((0.04 + 0.09) / 3_f64).sqrt());

    let sum = starboard.plus(&port);
    same(sum.standard_uncertainty(), ((4.0 + 0.04 + 0.09) / 3_f64).sqrt());
}

#[test]
fn values_that_share_their_only_input_differ_by_an_exact_amount() {
    let level = Budget::reading(0.4, 0.2, "level");
    let lean = Budget::linear(2.4, [(&level, -1.0)]);
    let other = Budget::linear(2.0, [(&level, -1.0)]);
    let difference = lean.minus(&other);
    same(difference.value(), 0.4);
    assert_eq!(difference.expanded().total_cmp(&0.0), std::cmp::Ordering::Equal);
    assert!(difference.shares().is_empty());
    let stepped = Budget::through([&lean, &other], |[one, two]| Some(one - two)).expect("finite");
    assert!(stepped.expanded() < 1e-9);
}

/// By hand: `d(xy) = y dx + x dy`.
#[test]
fn a_product_takes_each_input_by_the_size_of_the_other() {
    let (x, y) = (Budget::reading(3.0, 0.1, "x"), Budget::reading(7.0, 0.2, "y"));
    let area = product(&x, &y);
    let sensitivities: Vec<_> = area.parts().iter().map(|part| part.sensitivity).collect();
    assert!((sensitivities[0] - 7.0).abs() < 1e-8 && (sensitivities[1] - 3.0).abs() < 1e-8);
    same(area.value(), 21.0);
}

/// By hand: `d(x²) = 2x dx`, not the root-sum-square of two independent factors.
#[test]
fn a_reading_multiplied_by_itself_is_one_input() {
    let x = Budget::reading(3.0, 0.1, "x");
    let square = product(&x, &x);
    assert_eq!(square.parts().len(), 1);
    assert!((square.parts()[0].sensitivity - 6.0).abs() < 1e-8);
}

/// Source: the derivatives of the standard functions. Values near and far from zero, and zero.
#[test]
fn sensitivities_are_good_to_eight_digits() {
    type Case = (fn(f64) -> f64, fn(f64) -> f64);
    let cases: [Case; 4] = [
        (f64::exp, f64::exp),
        (f64::tan, |x| 1.0 / x.cos().powi(2)),
        (|x| 1180.0 * x.sin() + 320.0, |x| 1180.0 * x.cos()),
        (|x| (x + 20.0).recip(), |x| -(x + 20.0).powi(-2)),
    ];
    for (f, derivative) in cases {
        for at in [-6.0, -0.5, 0.0, 1e-3, 0.8, 9.0] {
            let x = Budget::reading(at, 0.05, ());
            let y = Budget::through([&x], |[x]| Some(f(x))).expect("finite");
            let (found, right) = (y.parts()[0].sensitivity, derivative(at));
            assert!((found - right).abs() < 1e-8 * right.abs(), "at {at}: {found}, not {right}");
        }
    }
}

/// Keeps the points that a function of one value is asked for.
fn asked(input: &Budget<&'static str>) -> Vec<f64> {
    let asked = RefCell::new(Vec::new());
    let result = Budget::through([input], |[x]| {
        asked.borrow_mut().push(x);
        Some(x)
    });
    assert!(result.is_some());
    let mut asked = asked.into_inner();
    asked.sort_by(f64::total_cmp);
    asked
}

#[test]
fn a_value_is_stepped_by_a_hundred_thousandth_of_itself() {
    let points = asked(&Budget::reading(-100.0, 0.5, "x"));
    assert_eq!(points.len(), 3);
    assert!((points[0] + 100.001).abs() < 1e-12 && (points[2] + 99.999).abs() < 1e-12);
}

#[test]
fn a_value_of_zero_is_stepped_by_its_uncertainty() {
    let points = asked(&Budget::reading(0.0, 3_f64.sqrt(), "x"));
    assert!((points[2] - 2e-5).abs() < 1e-15, "{points:?}");
    let points = asked(&Budget::reading(0.0, 0.0, "x"));
    assert!((points[2] - 1e-5).abs() < 1e-15, "{points:?}");
}

/// The step really made differs from the step meant by rounding; the slope goes by the former.
#[test]
fn a_value_passed_on_unchanged_has_a_sensitivity_of_one() {
    for value in [58.2, -0.3, 1180.7] {
        let passed = Budget::through([&Budget::reading(value, 0.2, "x")], |[x]| Some(x));
        let sensitivity = passed.expect("finite").parts()[0].sensitivity;
        assert!((sensitivity - 1.0).abs() < 1e-15, "{value}: {sensitivity}");
    }
}

#[test]
fn an_exact_value_is_not_stepped() {
    assert_eq!(asked(&Budget::exact(100.0)).len(), 1);
}

#[test]
fn nothing_comes_of_a_function_that_fails_at_the_value_or_beside_it() {
    let root = |[x]: [f64; 1]| (x >= 0.0).then(|| x.sqrt());
    assert_eq!(Budget::through([&Budget::reading(-1.0, 0.1, "x")], root), None);
    assert_eq!(Budget::through([&Budget::reading(0.0, 0.1, "x")], root), None);
    assert!(Budget::through([&Budget::reading(1.0, 0.1, "x")], root).is_some());
    assert!(Budget::through([&Budget::<&str>::exact(0.0)], root).is_some());
    let falls_off_above = |[x]: [f64; 1]| (x <= 1.0).then_some(x);
    assert_eq!(Budget::through([&Budget::reading(1.0, 0.1, "x")], falls_off_above), None);
}

#[test]
fn nothing_comes_of_a_number_that_is_not_finite() {
    let one_over = |[x]: [f64; 1]| Some(1.0 / x);
    let pass = |[x]: [f64; 1]| Some(x);
    for lost in [f64::NAN, f64::INFINITY] {
        assert_eq!(Budget::through([&Budget::<&str>::exact(lost)], pass), None);
        assert_eq!(Budget::through([&Budget::reading(1.0, lost, "x")], pass), None);
        assert_eq!(Budget::through([&Budget::reading(1.0, 0.1, "x")], |_| Some(lost)), None);
    }
    assert_eq!(Budget::through([&Budget::<&str>::exact(0.0)], one_over), None);
    assert_eq!(Budget::through([&Budget::<&str>::exact(f64::INFINITY)], one_over), None);
}

#[test]
fn parts_stand_in_order_of_first_use_and_shares_by_size() {
    let (a, b) = (Budget::reading(1.0, 0.1, "a"), Budget::reading(1.0, 0.3, "b"));
    let sum = a.plus(&b).plus(&a);
    let expected = [
        Part { input: "a", half_width: 0.1, sensitivity: 2.0 },
        Part { input: "b", half_width: 0.3, sensitivity: 1.0 },
    ];
    assert_eq!(sum.parts(), expected);
    let shares = sum.shares();
    assert_eq!([shares[0].0, shares[1].0], ["b", "a"]);
    same(shares[0].1, 9.0 / 13.0);
    same(shares[1].1, 4.0 / 13.0);
}

#[test]
fn a_key_with_two_half_widths_counts_the_wider() {
    for (one, other) in [(0.1, 0.3), (0.3, 0.1)] {
        let sum = Budget::reading(1.0, one, "a").plus(&Budget::reading(1.0, other, "a"));
        same(sum.parts()[0].half_width, 0.3);
    }
    for (one, other) in [(f64::NAN, 0.3), (0.3, f64::NAN)] {
        let sum = Budget::reading(1.0, one, "a").plus(&Budget::reading(1.0, other, "a"));
        assert!(sum.expanded().is_nan());
    }
}

#[test]
fn the_mean_of_four_readings_is_twice_as_sure_as_one() {
    let readings: Vec<_> =
        (0..4).map(|seat| Budget::reading(10.0 + f64::from(seat), 0.2, seat)).collect();
    let mean = Budget::mean(&readings).expect("four readings");
    same(mean.value(), 11.5);
    same(mean.expanded(), readings[0].expanded() / 2.0);
    let one_reading_four_times = vec![readings[0].clone(); 4];
    let mean = Budget::mean(&one_reading_four_times).expect("four times");
    same(mean.expanded(), readings[0].expanded());
    assert_eq!(Budget::<u8>::mean([]), None);
    // 49 times 1/49 is not 1: the sum is divided, not multiplied.
    let ones = vec![Budget::reading(1.0, 0.2, 0); 49];
    let mean = Budget::mean(&ones).expect("49 readings").value();
    assert_eq!(mean.to_bits(), 1.0_f64.to_bits(), "{mean}");
}

#[test]
fn another_tool_changes_that_reading_alone() {
    let gap = Budget::reading(58.2, 1.0, "gap").minus(&Budget::reading(53.2, 0.3, "shaft"));
    let finer = gap.read_again_with("gap", 0.4);
    same(finer.value(), gap.value());
    same(finer.standard_uncertainty(), (0.25_f64 / 3.0).sqrt());
    assert_eq!(gap.read_again_with("after tip", 0.1), gap);
    let exact = Budget::reading(1.0, 0.0, "gap");
    same(exact.read_again_with("gap", 0.5).standard_uncertainty(), 0.5 / 3_f64.sqrt());
}

#[test]
fn the_half_width_that_would_do_is_found() {
    let gap = Budget::reading(58.2, 1.0, "gap").minus(&Budget::reading(53.2, 0.3, "shaft"));
    let needed = gap.half_width_for("gap", 0.5).expect("the shaft alone gives less");
    same(gap.read_again_with("gap", needed).expanded(), 0.5);
    assert_eq!(gap.half_width_for("gap", 0.3), None, "the shaft alone gives 0.35");
    assert_eq!(gap.half_width_for("after tip", 0.5), None);
    assert_eq!(gap.half_width_for("gap", f64::NAN), None);
    let alone = Budget::reading(58.2, 1.0, "gap");
    assert_eq!(alone.half_width_for("gap", 0.0), None, "no tool reads to nothing");
    let without = gap.with_input(0.1, 0.0, "level");
    assert_eq!(without.half_width_for("level", 5.0), None);
}
