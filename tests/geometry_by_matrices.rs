//! Second opinion: the same rig built from vectors and turned by rotation matrices.
//!
//! Source: the library nalgebra turns the vectors; nothing here uses a formula of the program. Both
//! sides of the boat are built as they stand, x to the bow, y to port, z up. The rigs are random
//! from a fixed seed.

use nalgebra::Rotation3;
use nalgebra::Unit;
use nalgebra::Vector3;
use proptest::prelude::Strategy;
use proptest::test_runner::Config;
use proptest::test_runner::RngAlgorithm;
use proptest::test_runner::TestCaseError;
use proptest::test_runner::TestRng;
use proptest::test_runner::TestRunner;
use tholebook::geometry::Side;
use tholebook::geometry::arc;
use tholebook::geometry::arc::Lean;
use tholebook::geometry::arc::Rig;
use tholebook::geometry::arc_inverse;
use tholebook::geometry::arc_inverse::ArcReadings;
use tholebook::geometry::clearance;
use tholebook::geometry::level;
use tholebook::units::Angle;
use tholebook::units::Length;

const RIGS: u32 = 3000;

type Vector = Vector3<f64>;

/// A boat, an oar and a day, degrees.
#[derive(Clone, Copy, Debug)]
struct Scene {
    side: Side,
    rig: Rig,
    theta: Angle,
    dip: Angle,
    trim: Angle,
    roll: Angle,
}

fn degrees(from: f64, to: f64) -> impl Strategy<Value = Angle> {
    (from..to).prop_map(Angle::deg)
}

fn scenes() -> impl Strategy<Value = Scene> {
    let side = proptest::bool::ANY;
    let leans = (degrees(-8.0, 8.0), degrees(-8.0, 8.0));
    let pitches = (degrees(-4.0, 10.0), degrees(-3.0, 3.0));
    let oar = (degrees(-70.0, 80.0), degrees(0.0, 12.0));
    let boat = (degrees(-8.0, 8.0), degrees(-30.0, 30.0));
    (side, leans, pitches, oar, boat).prop_map(|(port, leans, pitches, oar, boat)| Scene {
        side: if port { Side::Port } else { Side::Starboard },
        rig: Rig {
            rowlock_pitch: pitches.0,
            oar_pitch: pitches.1,
            lean: Lean { aft: leans.0, out: leans.1 },
        },
        theta: oar.0,
        dip: oar.1,
        trim: boat.0,
        roll: boat.1,
    })
}

/// Tries every scene of a fixed seed, and makes sure that there were enough.
fn for_each_scene(check: impl Fn(Scene) -> Result<(), TestCaseError>) {
    let config = Config { cases: RIGS, failure_persistence: None, ..Config::default() };
    let rng = TestRng::deterministic_rng(RngAlgorithm::ChaCha);
    let tried = std::cell::Cell::new(0_u32);
    let counted = |scene| {
        tried.set(tried.get() + 1);
        check(scene)
    };
    TestRunner::new_with_rng(config, rng).run(&scenes(), counted).expect("all rigs agree");
    assert!(tried.get() >= RIGS, "only {} rigs", tried.get());
}

fn near(found: f64, expected: f64, within: f64, what: &str) -> Result<(), TestCaseError> {
    if (found - expected).abs() <= within {
        return Ok(());
    }
    Err(TestCaseError::fail(format!("{what}: {found} against {expected}")))
}

fn turned(axis: Vector, angle: f64, vector: Vector) -> Vector {
    Rotation3::from_axis_angle(&Unit::new_normalize(axis), angle) * vector
}

fn pin(lean: Lean, side: Side) -> Vector {
    // As a plumb line shows it: so much aft and so much outboard for one up.
    Vector::new(-lean.aft.tan(), side.sign() * lean.out.tan(), 1.0).normalize()
}

/// The shaft, outward to the blade: laid square off, dipped, then swung to its angle.
fn shaft(scene: Scene) -> Vector {
    let square = Vector::new(0.0, scene.side.sign(), 0.0);
    let dipped = turned(Vector::x(), -scene.side.sign() * scene.dip.as_rad(), square);
    // From above, a port oar swings clockwise to the catch and a starboard one the other way.
    turned(Vector::z(), -scene.side.sign() * scene.theta.as_rad(), dipped)
}

/// The way the blade is pushed: level, square to the shaft, to the stern when square off.
fn drive(scene: Scene) -> Vector {
    turned(Vector::z(), -scene.side.sign() * scene.theta.as_rad(), -Vector::x())
}

/// The rowlock's working face when it has turned on its pin until the shaft lies flush.
fn flush_face(scene: Scene) -> Vector {
    let (pin, shaft) = (pin(scene.rig.lean, scene.side), shaft(scene));
    let across = pin.cross(&shaft).normalize();
    let straight = if across.dot(&drive(scene)) > 0.0 { across } else { -across };
    let face = |turn: f64| {
        let level = turned(pin, turn, straight);
        // Pitched, its top goes to the stern, so the face looks down by as much.
        level * scene.rig.rowlock_pitch.cos() - pin * scene.rig.rowlock_pitch.sin()
    };
    let gap = |turn: f64| shaft.dot(&face(turn));
    let (mut low, mut high) = (-0.5, 0.5);
    let rising = gap(high) > gap(low);
    for _ in 0..60 {
        let middle = f64::midpoint(low, high);
        if (gap(middle) > 0.0) == rising { high = middle } else { low = middle }
    }
    face(low)
}

/// The pitch of the blade, measured between its face and the vertical plane through the shaft.
fn pitch_by_vectors(scene: Scene) -> f64 {
    let (along, flat) = (shaft(scene), flush_face(scene));
    // Twisting the blade's top to the stern is a turn about the shaft, mirrored on starboard.
    let twist = -scene.side.sign() * scene.rig.oar_pitch.as_rad();
    let face = turned(along, twist, flat);
    let up = (Vector::z() - along * along.z).normalize();
    (-face.dot(&up)).atan2(face.dot(&drive(scene))).to_degrees()
}

/// Turns a thing fixed in the boat bow up by the trim, then port side down by the roll.
fn with_the_boat(trim: Angle, roll: Angle, vector: Vector) -> Vector {
    let bow_up = turned(Vector::y(), -trim.as_rad(), vector);
    turned(Vector::x(), -roll.as_rad(), bow_up)
}

fn plumbed(pin: Vector, side: Side) -> [f64; 2] {
    [(-pin.x / pin.z).atan().to_degrees(), (side.sign() * pin.y / pin.z).atan().to_degrees()]
}

#[test]
fn the_frame_is_the_one_of_the_book() {
    let bow_up = with_the_boat(Angle::deg(2.0), Angle::deg(0.0), Vector::x());
    assert!(bow_up.z > 0.0, "the bow goes up");
    let port_down = with_the_boat(Angle::deg(0.0), Angle::deg(2.0), Vector::y());
    assert!(port_down.z < 0.0, "the port side goes down");
    for side in [Side::Port, Side::Starboard] {
        let level = Lean { aft: Angle::deg(0.0), out: Angle::deg(0.0) };
        let rig = Rig { rowlock_pitch: Angle::deg(4.0), oar_pitch: Angle::deg(0.0), lean: level };
        let (theta, dip, none) = (Angle::deg(50.0), Angle::deg(6.0), Angle::deg(0.0));
        let scene = Scene { side, rig, theta, dip, trim: none, roll: none };
        let blade = shaft(scene);
        assert!(blade.x > 0.0, "at the catch the blade is towards the bow");
        assert!(blade.z < 0.0, "a dipped blade is low");
        assert!(blade.y * side.sign() > 0.0, "the blade is outboard");
        assert!(drive(scene).x < 0.0, "the blade goes to the stern");
    }
}

#[test]
fn pitch_agrees_with_the_vectors() {
    for_each_scene(|scene| {
        let found = arc::pitch(scene.rig, scene.theta, scene.dip).as_deg();
        near(found, pitch_by_vectors(scene), 1e-11, "pitch")
    });
}

#[test]
fn apparent_lean_agrees_with_the_vectors() {
    for_each_scene(|scene| {
        let Scene { side, trim, roll, rig, .. } = scene;
        let [aft, out] = plumbed(with_the_boat(trim, roll, pin(rig.lean, side)), side);
        let found = level::apparent_lean(rig.lean, trim, roll, side);
        near(found.aft.as_deg(), aft, 1e-11, "aft")?;
        near(found.out.as_deg(), out, 1e-11, "out")
    });
}

/// Small angles, so that the sign and the size of the correction are told from its error.
#[test]
fn the_corrections_for_level_bring_the_true_boat_back() {
    let small = |angle: Angle, by: f64| Angle::deg(angle.as_deg() * by);
    for_each_scene(|scene| {
        let Scene { side, theta, dip, .. } = scene;
        let (trim, roll) = (small(scene.trim, 0.1), small(scene.roll, 0.03));
        let lean = scene.rig.lean;
        let lean = Lean { aft: small(lean.aft, 0.1), out: small(lean.out, 0.1) };
        let rig = Rig { rowlock_pitch: Angle::deg(0.0), oar_pitch: Angle::deg(0.0), lean };
        let [aft, out] = plumbed(with_the_boat(trim, roll, pin(lean, side)), side).map(Angle::deg);
        let seen = Lean { aft, out };
        let back = level::true_lean(seen, trim, roll, side);
        near(back.aft.as_deg(), lean.aft.as_deg(), 1e-3, "aft")?;
        near(back.out.as_deg(), lean.out.as_deg(), 1e-3, "out")?;
        let shown = pitch_by_vectors(Scene { rig: Rig { lean: seen, ..rig }, ..scene });
        let pitch = level::true_pitch(Angle::deg(shown), theta, trim, roll, side);
        near(pitch.as_deg(), arc::pitch(rig, theta, dip).as_deg(), 0.03, "pitch")
    });
}

/// The bob hangs down the true vertical; mark and string are fixed in the boat.
#[test]
fn a_bob_from_the_handle_agrees_with_the_vectors() {
    for_each_scene(|scene| {
        let Scene { side, roll, .. } = scene;
        let (past, height) = (320.0, 300.0);
        // From the seat mark, in the boat's own frame: past the mark is away from the rowlock.
        let handle = Vector::new(0.0, -side.sign() * past, height);
        let down = with_the_boat(Angle::deg(0.0), -roll, -Vector::z());
        let bob = handle + down * (height / -down.z);
        let read = Length::mm(-side.sign() * bob.y);
        let found = level::true_past_mark(read, Length::mm(height), roll, side);
        near(found.as_mm(), past, 1e-9, "past the mark")
    });
}

#[test]
fn the_inverse_finds_the_rig_of_the_vectors_again() {
    for_each_scene(|scene| {
        // Catch and finish of a stroke that a boat can row, from the random angle.
        let catch_at = Angle::deg(50.0 + scene.theta.as_deg() / 8.0);
        let finish_at = Angle::deg(-35.0 + scene.theta.as_deg() / 8.0);
        let at = |theta| Angle::deg(pitch_by_vectors(Scene { theta, ..scene }));
        let readings = ArcReadings {
            catch: at(catch_at),
            square: at(Angle::deg(0.0)),
            finish: at(finish_at),
            catch_at,
            finish_at,
            dip: scene.dip,
            oar_pitch: scene.rig.oar_pitch,
        };
        let found = arc_inverse::inverse(readings)
            .map_err(|error| TestCaseError::fail(error.to_string()))?;
        let Rig { rowlock_pitch, oar_pitch, lean } = scene.rig;
        let both = rowlock_pitch.as_deg() + oar_pitch.as_deg();
        near(found.rowlock_pitch.as_deg(), rowlock_pitch.as_deg(), 1e-8, "rowlock pitch")?;
        near(found.rig_pitch.as_deg(), both, 1e-8, "rowlock and oar")?;
        near(found.lean.aft.as_deg(), lean.aft.as_deg(), 1e-8, "aft")?;
        near(found.lean.out.as_deg(), lean.out.as_deg(), 1e-8, "out")
    });
}

/// The line between the horns is square to the pin and, in a free rowlock, to the shaft; the mouth
/// opens square to both.
#[test]
fn mouth_tilt_agrees_with_the_vectors() {
    for_each_scene(|scene| {
        let Scene { side, theta, dip, roll, .. } = scene;
        let upright = Lean { aft: Angle::deg(0.0), out: Angle::deg(0.0) };
        // Outboard side down: port down on port.
        let port_down = Angle::deg(side.sign() * roll.as_deg());
        let pin = with_the_boat(Angle::deg(0.0), port_down, pin(upright, side));
        let along = shaft(scene);
        let horns = along.cross(&pin).normalize();
        let opens = horns.cross(&along);
        let opens = if opens.z > 0.0 { opens } else { -opens };
        let up = (Vector::z() - along * along.z).normalize();
        // Positive with the top of the mouth against the drive's way: to the stern.
        let tilt = opens.dot(&drive(scene)).atan2(opens.dot(&up)).to_degrees();
        near(clearance::mouth_tilt(roll, theta, dip).as_deg(), tilt, 1e-11, "mouth tilt")?;
        straight_lift(tilt)
    });
}

/// A round shaft is lifted straight up between two walls that lean with the mouth: its middle must
/// pass every point of both walls at half its thickness, and only just.
fn straight_lift(tilt: f64) -> Result<(), TestCaseError> {
    let (shaft, wall) = (50.0, 10.0);
    let gap = clearance::gap_for_tilt(Length::mm(shaft), Length::mm(wall), Angle::deg(tilt));
    // In the mouth's own frame the walls stand upright and the lift leans, away from the first one.
    let lift = turned(Vector::y(), tilt.abs().to_radians(), Vector::z());
    let points = (0..=10).map(|step| wall * f64::from(step) / 10.0);
    let walls: Vec<Vector> =
        points.flat_map(|z| [Vector::new(0.0, 0.0, z), Vector::new(gap.as_mm(), 0.0, z)]).collect();
    // Touching the foot of the first wall.
    let beside = turned(Vector::y(), std::f64::consts::FRAC_PI_2, lift);
    let middle = beside * (shaft / 2.0);
    let passed = walls.iter().map(|point| (point - middle).cross(&lift).norm());
    let nearest_far_wall = walls
        .iter()
        .filter(|point| point.x > 0.0)
        .map(|point| (point - middle).cross(&lift).norm())
        .fold(f64::INFINITY, f64::min);
    near(passed.fold(f64::INFINITY, f64::min), shaft / 2.0, 1e-9, "nearest wall")?;
    near(nearest_far_wall, shaft / 2.0, 1e-9, "far wall")
}
