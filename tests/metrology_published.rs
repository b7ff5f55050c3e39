//! Metrology against published figures, read from `tests/data/`. Clause numbers of the guides
//! that the table does not give are from memory.

use tholebook::metrology::budget::Budget;
use tholebook::metrology::chance;
use tholebook::metrology::decision;
use tholebook::metrology::decision::Bounds;
use tholebook::metrology::decision::DangerVerdict;
use tholebook::metrology::decision::Verdict;
use tholebook::metrology::drift::Drift;
use tholebook::metrology::drift::NotForetold;
use tholebook::metrology::half_width;
use tholebook::metrology::trend::Trend;

/// The cells of one row of the table of published figures.
struct Row {
    input: &'static str,
    expected: &'static str,
    tolerance: &'static str,
}

fn row(id: &str) -> Row {
    let line = include_str!("data/published.tsv")
        .lines()
        .find(|line| line.split('\t').next() == Some(id))
        .unwrap_or_else(|| panic!("no row {id} in the table"));
    let cells: Vec<_> = line.split('\t').collect();
    let [_, _, input, expected, tolerance, _, _] = cells[..] else { panic!("seven cells: {line}") };
    Row { input, expected, tolerance }
}

impl Row {
    /// The figures expected, each as it was printed; remarks in brackets left out.
    fn figures(&self) -> Vec<&'static str> {
        let bare = self.expected.split('(').next().unwrap_or_default();
        bare.split(['/', ',']).map(str::trim).collect()
    }

    /// Asserts that the figures are these, within the tolerance of the row or half the last digit
    /// printed, whichever is more.
    fn agrees_with(&self, computed: &[f64]) {
        let figures = self.figures();
        assert_eq!(figures.len(), computed.len(), "{}", self.expected);
        for (figure, computed) in figures.into_iter().zip(computed) {
            let (expected, tolerance) = (number(figure), self.tolerance_of(figure));
            let off = (computed - expected).abs();
            assert!(off <= tolerance, "{}: expected {figure}, computed {computed}", self.input);
        }
    }

    fn tolerance_of(&self, figure: &str) -> f64 {
        if let Some(relative) = self.tolerance.strip_suffix(" rel") {
            return number(relative) * number(figure).abs();
        }
        let decimals = figure.split_once('.').map_or(0, |(_, decimals)| decimals.len());
        let half_digit = 0.5 / 10_f64.powf(decimals as f64);
        number(self.tolerance).max(half_digit)
    }
}

fn number(text: &str) -> f64 {
    text.trim().parse().unwrap_or_else(|_| panic!("not a number: {text}"))
}

/// The end gauge of GUM H.1: four standard uncertainties in nm, independent.
fn end_gauge() -> Budget<&'static str> {
    let parts =
        [("standard", 25.0), ("comparison", 9.7), ("expansion", 2.9), ("temperature", 16.6)];
    parts.into_iter().fold(Budget::exact(50_000_838.0), |budget, (input, u)| {
        budget.with_input(half_width::of_standard_uncertainty(u), 1.0, input)
    })
}

/// Source: JCGM 100:2008 (GUM), H.1.4, combined standard uncertainty.
#[test]
fn m01_the_end_gauge_of_the_gum_is_good_to_32_nm() {
    row("M01").agrees_with(&[end_gauge().standard_uncertainty()]);
}

/// Source: JCGM 100:2008 (GUM), H.1.6: degrees of freedom 18, 25.6, 50 and 2 (from memory) give
/// 16 by G.4, cut off; U99 is k99 times the rounded uncertainty. The program has no Student's t,
/// so k99 is taken from the row.
#[test]
fn m02_the_shares_of_the_end_gauge_give_its_degrees_of_freedom() {
    let row = row("M02");
    let mut figures = row.expected.split(['>', '/']).skip(1);
    let mut next = || number(figures.next().expect("three figures").trim_end_matches(" nm"));
    let (whole, k99, u99) = (next(), next(), next());

    let freedom = |input| match input {
        "standard" => 18.0,
        "comparison" => 25.6,
        "expansion" => 50.0,
        _ => 2.0,
    };
    let shares = end_gauge().shares();
    let effective = 1.0 / shares.iter().map(|&(k, share)| share * share / freedom(k)).sum::<f64>();
    assert!((effective.floor() - whole).abs() < 1e-12, "{effective}");
    let expanded = (k99 * end_gauge().standard_uncertainty().round()).round();
    assert!((expanded - u99).abs() < 1e-12, "{expanded}");
}

/// Source: JCGM 100:2008 (GUM), 4.3.7 and H.1.3.4.
#[test]
fn m03_a_rectangular_half_width_is_divided_by_the_root_of_three() {
    row("M03").agrees_with(&[half_width::standard_uncertainty(0.05)]);
    row("M03").agrees_with(&[Budget::reading(0.0, 0.05, ()).standard_uncertainty()]);
}

/// Source: JCGM 100:2008 (GUM), H.3, table H.6: thermometer readings and corrections in degC. The
/// readings are from memory; the published results come out of them to every digit.
#[test]
fn m05_the_calibration_line_of_the_gum_comes_out() {
    let readings = [
        (21.521, -0.171),
        (22.012, -0.169),
        (22.512, -0.166),
        (23.003, -0.159),
        (23.507, -0.164),
        (23.999, -0.165),
        (24.513, -0.156),
        (25.002, -0.157),
        (25.503, -0.159),
        (26.010, -0.161),
        (26.511, -0.160),
    ];
    let from_20: Vec<_> = readings.iter().map(|(t, b)| (t - 20.0, *b)).collect();
    let line = Trend::through(&from_20).expect("eleven readings");
    row("M05").agrees_with(&[
        line.intercept,
        line.intercept_uncertainty,
        line.slope,
        line.slope_uncertainty,
        line.correlation,
        line.value_at(10.0),
        line.standard_uncertainty_at(10.0),
    ]);
}

/// The limit of JCGM 106, 9.5.4.
const AT_MOST_2: Bounds = Bounds { least: None, most: Some(2.0) };

/// Sums `weight` over what is made in JCGM 106, 9.5.4: gamma distributed with shape 4 and scale
/// 0.25. Two-point Gauss steps, so that no point falls on the limit.
fn over_all_made(from: f64, weight: impl Fn(f64) -> f64) -> f64 {
    let (steps, width) = (1000, (16.0 - from) / 1000.0);
    let density = |y: f64| 256.0 * y.powi(3) * (-4.0 * y).exp() / 6.0;
    let off = width / 2.0 / 3_f64.sqrt();
    (0..steps)
        .map(|step| from + (f64::from(step) + 0.5) * width)
        .flat_map(|middle| [middle - off, middle + off])
        .map(|y| density(y) * weight(y) * width / 2.0)
        .sum()
}

/// The chance that something made is over 2 and yet reads under `acceptance`, u = 0.25.
fn falsely_accepted(acceptance: f64) -> f64 {
    let bounds = Bounds { least: None, most: Some(acceptance) };
    over_all_made(2.0, |made| 1.0 - chance::beyond(made, 0.25, bounds))
}

/// Source: JCGM 106:2012, 9.5.4: 4.2 % of what is made is over the limit. Each thing made is
/// known exactly here, so its own chance is 0 or 1.
#[test]
fn m06_an_exact_value_counts_as_beyond_or_not() {
    let over = over_all_made(0.0, |made| chance::beyond(made, 0.0, AT_MOST_2));
    row("M06").agrees_with(&[over]);
}

/// Source: JCGM 106:2012, 9.5.4: 0.8 %.
#[test]
fn m07_without_a_guard_band_eight_in_a_thousand_are_falsely_accepted() {
    row("M07").agrees_with(&[falsely_accepted(2.0)]);
}

/// Source: JCGM 106:2012, 9.5.4: 1.67.
#[test]
fn m08_the_acceptance_limit_for_one_false_in_a_thousand() {
    let (mut low, mut high) = (1.0, 2.0);
    for _ in 0..40 {
        let middle = (low + high) / 2.0;
        if falsely_accepted(middle) < 0.001 { low = middle } else { high = middle }
    }
    row("M08").agrees_with(&[low]);
}

/// Source: JCGM 106:2012, the resistor example.
#[test]
fn m09_the_resistor_lies_between_both_limits() {
    let bounds = Bounds { least: Some(1499.8), most: Some(1500.2) };
    row("M09").agrees_with(&[1.0 - chance::beyond(1500.0, 0.12, bounds)]);
}

/// Source: table of the normal distribution.
#[test]
fn m10_the_normal_table() {
    let guard_band = chance::guard_band(0.05, 1.0).expect("between 0 and 1");
    row("M10").agrees_with(&[guard_band, chance::beyond(0.0, 1.0, AT_MOST_2)]);
}

/// Source: the example page of ILAC-G8 for the first two; the other two were worked out from it.
/// `conforms`, `not proven` and `fails` are what a danger limit says; an ordinary limit lets
/// everything pass that is not proven to fail.
#[test]
fn m11_four_values_about_a_limit() {
    let at_most = Bounds { least: None, most: Some(0.003) };
    let row = row("M11");
    let (_, cases) = row.input.split_once(": ").expect("the limit, then the cases");
    for case in cases.split("; ") {
        let (value, words) = case.split_once(' ').expect("a value, then what is said of it");
        let value = number(value);
        let danger = decision::danger(value, 0.001, at_most);
        let ordinary = decision::ordinary(value, 0.001, at_most);
        let right = match words.split('(').next().expect("at least one word").trim() {
            "conforms" => {
                matches!(danger, DangerVerdict::Clear { .. }) && ordinary == Verdict::Within
            }
            "fails" => {
                matches!(danger, DangerVerdict::Short { .. })
                    && matches!(ordinary, Verdict::Beyond { .. })
            }
            "not proven" => {
                matches!(danger, DangerVerdict::NotShown { .. })
                    && matches!(ordinary, Verdict::Undecided { .. }) == (value > 0.003)
                    && !matches!(ordinary, Verdict::Beyond { .. })
            }
            other => panic!("unknown words: {other}"),
        };
        assert!(right, "{case}: {danger:?}, {ordinary:?}");
    }
    assert_eq!(cases.split("; ").count(), 4);
}

const NORRIS: &str = include_str!("data/norris.dat");

/// The data of Norris: `y`, then `x`, from line 61 on.
fn norris_points() -> Vec<(f64, f64)> {
    let points: Vec<_> = NORRIS
        .lines()
        .skip(60)
        .map(|line| line.split_whitespace().map(number).collect::<Vec<_>>())
        .filter(|cells| !cells.is_empty())
        .map(|cells| (cells[1], cells[0]))
        .collect();
    assert_eq!(points.len(), 36);
    points
}

/// The line through them.
fn norris() -> Trend {
    Trend::through(&norris_points()).expect("36 points")
}

/// The certified figures on the line that begins with `label`.
fn certified(label: &str) -> Vec<f64> {
    let line = NORRIS.lines().take(60).map(str::trim).filter(|line| line.starts_with(label)).last();
    let figures = line.and_then(|line| line.strip_prefix(label));
    figures.unwrap_or_else(|| panic!("no line {label}")).split_whitespace().map(number).collect()
}

fn agrees(computed: f64, certified: f64, relative: f64) {
    let off = (computed - certified).abs();
    assert!(off <= relative * certified.abs(), "computed {computed}, certified {certified}");
}

/// Source: NIST `StRD`, Norris, certified values.
#[test]
fn n01_the_slope_of_norris() {
    agrees(norris().slope, certified("B1")[0], 1e-12);
    row("N01").agrees_with(&[norris().slope]);
}

/// Source: NIST `StRD`, Norris, certified values.
#[test]
fn n02_the_intercept_of_norris() {
    agrees(norris().intercept, certified("B0")[0], 1e-10);
    row("N02").agrees_with(&[norris().intercept]);
    agrees(norris().value_at(0.0), certified("B0")[0], 1e-10);
}

/// Source: NIST `StRD`, Norris, certified values.
#[test]
fn n03_the_standard_errors_of_norris() {
    let line = norris();
    agrees(line.slope_uncertainty, certified("B1")[1], 1e-9);
    agrees(line.intercept_uncertainty, certified("B0")[1], 1e-9);
    agrees(line.standard_uncertainty_at(0.0), certified("B0")[1], 1e-9);
    row("N03").agrees_with(&[line.slope_uncertainty, line.intercept_uncertainty]);
}

/// Source: NIST `StRD`, Norris: with the certified B0, B1 and their standard deviations alone, the
/// line reaches y at (y - B0)/B1; at the ends of the interval `(y - B0 - B1 x)²` is 4 times the
/// variance of the line, whose covariance term is minus the mean of x times that of B1 (GUM H.3).
#[test]
fn n05_the_interval_in_which_norris_reaches_a_value() {
    let points = norris_points();
    let (b0, b1) = (certified("B0"), certified("B1"));
    let mean = points.iter().map(|(x, _)| x).sum::<f64>() / 36.0;
    let drift = Drift::of(&points, 0.0).expect("36 points");
    for limit in [1005.0, 1500.0, 2500.0] {
        let reached = drift.reaches(limit).expect("ahead of the last point");
        agrees(reached.at, (limit - b0[0]) / b1[0], 1e-10);
        let variance =
            |x: f64| b0[1] * b0[1] + x * x * b1[1] * b1[1] - 2.0 * x * mean * b1[1] * b1[1];
        for end in [reached.early, reached.late.expect("within twice the span")] {
            let off = limit - b0[0] - b1[0] * end;
            agrees(off.abs(), 2.0 * variance(end).sqrt(), 1e-6);
        }
    }
    assert_eq!(drift.reaches(3100.0), Err(NotForetold::TooFar));
}

/// Source: NIST `StRD`, Norris, certified values.
#[test]
fn n04_the_scatter_of_norris() {
    let line = norris();
    let (r_squared, f) = (line.r_squared.expect("y varies"), line.f.expect("points scatter"));
    agrees(line.residual_sd, certified("Standard Deviation")[0], 1e-9);
    agrees(r_squared, certified("R-Squared")[0], 1e-9);
    agrees(f, certified("Regression")[3], 1e-9);
    row("N04").agrees_with(&[line.residual_sd, r_squared, f]);
}
