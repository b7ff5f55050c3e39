//! The uncertainty of a pin's lean worked out from three blade readings, against figures that
//! another program computed.

use tholebook::metrology::budget::Budget;

/// How the readings were taken.
struct Taken {
    catch: f64,
    finish: f64,
    gauge: f64,
    offset_half_width: f64,
    angle_half_width: f64,
}

/// What comes of them, all in degrees.
struct Lean {
    built_in: Budget<usize>,
    stern: Budget<usize>,
    outboard: Budget<usize>,
    square_off: Budget<usize>,
}

const BUILT_IN: f64 = 4.0;
const STERN: f64 = 2.0;
const OUTBOARD: f64 = 1.0;

/// Small leans: `pitch = built-in + stern cos(angle) + outboard sin(angle)`. Works from three
/// offsets and three oar angles back to the three unknowns.
fn solve(taken: &Taken) -> Lean {
    let angles = [taken.catch, 0.0, taken.finish];
    let offset = |angle: f64| {
        let (sin, cos) = angle.to_radians().sin_cos();
        taken.gauge * (BUILT_IN + STERN * cos + OUTBOARD * sin).to_radians().tan()
    };
    let offsets = angles.map(offset);
    let read: Vec<_> = (0..3)
        .map(|at| Budget::reading(offsets[at], taken.offset_half_width, at))
        .chain((0..3).map(|at| Budget::reading(angles[at], taken.angle_half_width, at + 3)))
        .collect();
    let through = |pick: fn([f64; 3]) -> f64| {
        let inputs = [&read[0], &read[1], &read[2], &read[3], &read[4], &read[5]];
        Budget::through(inputs, |x| unknowns(x, taken.gauge).map(pick))
            .expect("three angles differ")
    };
    Lean {
        built_in: through(|[built_in, _, _]| built_in),
        stern: through(|[_, stern, _]| stern),
        outboard: through(|[_, _, outboard]| outboard),
        square_off: through(|[built_in, stern, _]| built_in + stern),
    }
}

fn unknowns(x: [f64; 6], gauge: f64) -> Option<[f64; 3]> {
    let pitch = [x[0], x[1], x[2]].map(|offset| (offset / gauge).atan().to_degrees());
    let rows = [x[3], x[4], x[5]].map(|angle| {
        let (sin, cos) = angle.to_radians().sin_cos();
        [1.0, cos, sin]
    });
    let whole = determinant(rows);
    (whole.abs() > 1e-12).then(|| {
        [0, 1, 2].map(|column| {
            let mut replaced = rows;
            for (row, pitch) in replaced.iter_mut().zip(pitch) {
                row[column] = pitch;
            }
            determinant(replaced) / whole
        })
    })
}

fn determinant([a, b, c]: [[f64; 3]; 3]) -> f64 {
    a[0] * (b[1] * c[2] - b[2] * c[1]) - a[1] * (b[0] * c[2] - b[2] * c[0])
        + a[2] * (b[0] * c[1] - b[1] * c[0])
}

fn agrees(what: &str, computed: f64, expected: f64, tolerance: f64) {
    assert!((computed - expected).abs() <= tolerance, "{what}: {computed}, expected {expected}");
}

/// Source: `tests/data/geometry.json`, topic uncertainty; its field `made_by` says how.
#[test]
fn the_lean_of_a_pin_is_as_uncertain_as_another_program_says() {
    let file: serde_json::Value =
        serde_json::from_str(include_str!("data/geometry.json")).expect("the file is JSON");
    let cases = file["cases"].as_array().expect("a list of cases");
    let mut checked = 0;
    for case in cases.iter().filter(|case| case["topic"] == "uncertainty") {
        let given = |key: &str| case["inputs"][key].as_f64().expect(key);
        agrees("built in", given("built_in_deg"), BUILT_IN, 0.0);
        agrees("stern lean", given("stern_lean_deg"), STERN, 0.0);
        agrees("outboard lean", given("outboard_lean_deg"), OUTBOARD, 0.0);
        let lean = solve(&Taken {
            catch: given("catch_deg"),
            finish: given("finish_deg"),
            gauge: given("gauge_mm"),
            offset_half_width: given("offset_half_width_mm"),
            angle_half_width: given("angle_half_width_deg"),
        });
        let tolerance = case["tolerance"].as_f64().expect("a tolerance");
        let expected = |key: &str| case["outputs"][key].as_f64().expect(key);
        for (key, budget) in [
            ("u_built_in_deg", &lean.built_in),
            ("u_stern_deg", &lean.stern),
            ("u_outboard_deg", &lean.outboard),
            ("u_square_off_sum_deg", &lean.square_off),
        ] {
            agrees(key, budget.standard_uncertainty(), expected(key), tolerance);
        }
        agrees("stern lean found", lean.stern.value(), STERN, 1e-9);
        checked += 1;
    }
    assert!(checked >= 2, "gum_01 and gum_03 at least");
}

/// Source: `tests/data/lean_uncertainty.tsv`, which says how it was made. To half the last digit,
/// and a tenth of that more, for two of its figures are rounded twice.
#[test]
fn wider_angles_and_a_longer_gauge_make_the_lean_surer() {
    let table = include_str!("data/lean_uncertainty.tsv");
    let mut rows = 0;
    for line in table.lines().filter(|line| line.starts_with(|first: char| first.is_ascii_digit()))
    {
        let cells: Vec<f64> = line.split('\t').map(|cell| cell.parse().expect(line)).collect();
        let [catch, finish, gauge, u_b, u_s, u_l, u_square_off, expanded_s, expanded_l] = cells[..]
        else {
            panic!("nine cells: {line}")
        };
        let lean =
            solve(&Taken { catch, finish, gauge, offset_half_width: 0.5, angle_half_width: 3.0 });
        agrees(line, lean.built_in.standard_uncertainty(), u_b, 0.0055);
        agrees(line, lean.stern.standard_uncertainty(), u_s, 0.0055);
        agrees(line, lean.outboard.standard_uncertainty(), u_l, 0.0055);
        agrees(line, lean.square_off.standard_uncertainty(), u_square_off, 0.0005);
        agrees(line, lean.stern.expanded(), expanded_s, 0.005);
        agrees(line, lean.outboard.expanded(), expanded_l, 0.005);
        rows += 1;
    }
    assert_eq!(rows, 6);
}

/// Two oars read to half a millimetre on 100 mm. Source: worked by hand, 0.165 deg each near zero
/// pitch, times the root of two.
#[test]
fn two_oars_a_hundred_millimetres_wide_cannot_be_told_apart_within_half_a_degree() {
    let pitch = |oar| {
        let offset = Budget::reading(0.0, 0.5, oar);
        Budget::through([&offset], |[offset]| Some((offset / 100.0).atan().to_degrees()))
            .expect("the arc tangent is always finite")
    };
    let difference = pitch("A1").minus(&pitch("A2"));
    agrees("u", difference.standard_uncertainty(), 0.234, 0.0005);
    agrees("U", difference.expanded(), 0.47, 0.005);
}
