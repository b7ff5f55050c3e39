//! How good a value is, by brute force: the readings of a few rigs drawn again and again, each
//! value worked out by a sum written here alone.

use tholebook::geometry::Side;
use tholebook::reading;
use tholebook::store::Named;
use tholebook::working::Attitude;
use tholebook::working::BoatSight;
use tholebook::working::Worked;

use crate::drawing::Draw;
use crate::record::CLUB;
use crate::record::Record;
use crate::record::SeatRecord;
use crate::rig::ANGLES;
use crate::rig::BOB;
use crate::rig::Boat;
use crate::rig::CALLIPERS;
use crate::rig::COLLAR;
use crate::rig::DIP;
use crate::rig::LEVEL;
use crate::rig::OAR_ANGLE;
use crate::rig::PIN_GAUGE;
use crate::rig::RULE;
use crate::rig::TAPE;
use crate::rig::USUAL_DIP;

const DRAWS: usize = 20_000;

/// What is compared, in this order.
pub(crate) const VALUES: [&str; 7] = [
    "pitch square off",
    "lean out",
    "handle worked out",
    "clearance",
    "lean aft by the arc",
    "lean out by the arc",
    "side difference",
];

/// Returns, for one rig, what the program and what brute force say each value is good to.
pub(crate) fn compared(seed: u64) -> [(f64, f64); 7] {
    let mut draw = Draw::seeded(seed);
    let record = Boat::in_order(&mut draw).read(&mut draw);
    let program = by_program(&record);
    let mut sums = [(0.0, 0.0); 7];
    for _ in 0..DRAWS {
        for (sum, value) in sums.iter_mut().zip(drawn(&record, &mut draw)) {
            *sum = (sum.0 + value, sum.1 + value * value);
        }
    }
    let of = DRAWS as f64;
    let expanded = |(sum, squares): (f64, f64)| 2.0 * ((squares - sum * sum / of) / of).sqrt();
    std::array::from_fn(|at| (program[at], expanded(sums[at])))
}

fn by_program(record: &Record) -> [f64; 7] {
    let mut texts = vec![Named::text("club.yaml", CLUB)];
    texts.extend(record.texts(0));
    let (book, faults) = reading::read("rig", texts);
    assert!(faults.is_empty(), "{faults:#?}");
    let sight = BoatSight::new(&book, &book.boats[0]);
    let seat = sight.seats().next().expect("the first seat");
    let arc = seat.arc_lean().expect("three readings");
    let good_to = |worked: Worked| worked.expect("everything was read").expanded();
    [
        good_to(seat.pitch(Attitude::Square)),
        good_to(seat.lean_out()),
        good_to(seat.handle_computed()),
        good_to(seat.clearance()),
        arc.aft.expanded(),
        arc.out.expanded(),
        good_to(sight.side_difference()),
    ]
}

/// The values of the first seat, and of the boat, by one draw of what every reading might be. The
/// readings' own scatter about what is written: the same rectangle.
fn drawn(record: &Record, draw: &mut Draw) -> [f64; 7] {
    let seat = &record.seats[0];
    let (trim, roll) = (draw.read(record.trim, LEVEL), draw.read(record.roll, LEVEL));
    let dip = draw.read(USUAL_DIP, DIP).to_radians();
    let at_marks = record.seats.each_ref().map(|seat| draw.read(seat.at_mark, TAPE));
    let laid = ANGLES.map(|angle| draw.read(angle, OAR_ANGLE).to_radians());
    let offsets = seat.pitch.map(|offset| draw.read(offset, RULE));
    let as_read = offsets.map(|offset| degrees((offset / at_marks[0]).asin()));
    let roll_out = if seat.side == Side::Port { roll } else { -roll };
    let pitches: [f64; 3] =
        std::array::from_fn(|at| as_read[at] - trim * laid[at].cos() - roll_out * laid[at].sin());
    let [aft, out] = implied(pitches, laid, dip);
    [
        pitches[1],
        degrees((draw.read(seat.out, RULE) / PIN_GAUGE).atan()) - roll_out,
        handle(seat, dip, draw),
        draw.read(seat.gap, CALLIPERS) - draw.read(seat.widest, CALLIPERS),
        aft,
        out,
        port_above(record, &at_marks, as_read[1], draw),
    ]
}

fn handle(seat: &SeatRecord, dip: f64, draw: &mut Draw) -> f64 {
    let along = draw.read(seat.inboard, TAPE) + COLLAR;
    along * dip.cos() - draw.read(seat.spread, BOB) - draw.read(seat.seat_mark, BOB)
}

fn port_above(record: &Record, at_marks: &[f64; 4], first: f64, draw: &mut Draw) -> f64 {
    let mut difference = 0.0;
    for (at, (seat, at_mark)) in record.seats.iter().zip(at_marks).enumerate() {
        let again = degrees((draw.read(seat.pitch[1], RULE) / at_mark).asin());
        let read = if at == 0 { first } else { again };
        // An oar not laid quite square shows some of its pin's lean out, as plumbed.
        let lean = degrees((seat.out / PIN_GAUGE).atan());
        let pitch = read - lean * draw.read(0.0, OAR_ANGLE).to_radians().sin();
        difference += if seat.side == Side::Port { pitch / 2.0 } else { -pitch / 2.0 };
    }
    difference
}

/// The lean aft and out that three pitches imply: the small-angle answer, put right by what it
/// leaves over until nothing is.
fn implied(pitches: [f64; 3], laid: [f64; 3], dip: f64) -> [f64; 2] {
    let mut rig = [0.0; 3];
    for _ in 0..5 {
        let left: [f64; 3] =
            std::array::from_fn(|at| pitches[at] - blade(rig.map(f64::to_radians), laid[at], dip));
        let more = small_angles(left, laid);
        rig = std::array::from_fn(|at| rig[at] + more[at]);
    }
    [rig[1], rig[2]]
}

/// Solves `pitch = rowlock + aft cos(angle) + out sin(angle)` at three angles.
fn small_angles(pitches: [f64; 3], laid: [f64; 3]) -> [f64; 3] {
    let [c, s, f] = laid.map(f64::sin_cos);
    let (first, last) = (pitches[0] - pitches[1], pitches[2] - pitches[1]);
    let ((a, b), (d, e)) = ((c.1 - s.1, c.0 - s.0), (f.1 - s.1, f.0 - s.0));
    let whole = a * e - b * d;
    let (aft, out) = ((first * e - b * last) / whole, (a * last - first * d) / whole);
    [pitches[1] - aft * s.1 - out * s.0, aft, out]
}

/// Pitch of a blade by turning vectors: the working face square to nothing but its own slope on
/// the pin, the shaft lying flush on it; in degrees, from radians.
fn blade([rowlock, aft, out]: [f64; 3], laid: f64, dip: f64) -> f64 {
    let shaft = [laid.sin() * dip.cos(), laid.cos() * dip.cos(), -dip.sin()];
    let pin = unit([-aft.tan(), out.tan(), 1.0]);
    let (onto, level) = (dot(shaft, pin), unit(cross([0.0, 0.0, 1.0], shaft)));
    // The face's way ahead lies square to the pin, so turned that the shaft is in the face.
    let along = unit(std::array::from_fn(|at| shaft[at] - onto * pin[at]));
    let across = cross(pin, along);
    let turned = (rowlock.tan() * onto / (1.0 - onto * onto).sqrt()).asin();
    let ahead: [f64; 3] =
        std::array::from_fn(|at| across[at] * turned.cos() + along[at] * turned.sin());
    let face: [f64; 3] =
        std::array::from_fn(|at| ahead[at] * rowlock.cos() - pin[at] * rowlock.sin());
    let up = cross(shaft, level);
    degrees((-dot(face, up)).atan2(dot(face, level)))
}

fn degrees(radians: f64) -> f64 {
    radians.to_degrees()
}

fn dot(a: [f64; 3], b: [f64; 3]) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

fn cross(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}

fn unit(a: [f64; 3]) -> [f64; 3] {
    let long = dot(a, a).sqrt();
    a.map(|part| part / long)
}

/// The sum above against the table of another derivation: rowlock 4, dip 6, leans 2 and 1, at the
/// catch, square off and at the finish. Source: the geometry notes' table, to its last digit.
#[test]
fn turned_vectors_give_the_pitches_of_the_table() {
    let rig = [4.0_f64, 2.0, 1.0].map(f64::to_radians);
    for (angle, pitch) in [(50.0_f64, 6.095), (35.0, 6.250), (0.0, 6.023), (-35.0, 5.077)] {
        let found = blade(rig, angle.to_radians(), 6.0_f64.to_radians());
        assert!((found - pitch).abs() < 0.0006, "{angle}: {found}");
    }
}
