//! The readings of one boat, written as a club writes them: the fields of the sound book, without
//! worked-out values.

use std::fmt::Write;

use tholebook::geometry::Side;
use tholebook::store::Named;

pub(crate) const CLUB: &str = include_str!("../data/sound-book/club.yaml");

/// What was read of a boat.
pub(crate) struct Record {
    pub(crate) trim: f64,
    pub(crate) roll: f64,
    pub(crate) seats: [SeatRecord; 4],
}

/// What was read of a seat and its oar.
pub(crate) struct SeatRecord {
    pub(crate) side: Side,
    pub(crate) aft: f64,
    pub(crate) out: f64,
    pub(crate) pitch: [f64; 3],
    pub(crate) at_mark: f64,
    pub(crate) spread: f64,
    pub(crate) seat_mark: f64,
    pub(crate) handle: f64,
    pub(crate) above_seat: f64,
    pub(crate) inboard: f64,
    pub(crate) gap: f64,
    pub(crate) tip: f64,
    pub(crate) widest: f64,
    pub(crate) narrowest: f64,
    pub(crate) chock: f64,
}

impl Record {
    /// The boat's file and her oars' file; the boat is `b0`, `b1` and so on.
    pub(crate) fn texts(&self, number: usize) -> [Named; 2] {
        let mut boat = format!(
            "boat: b{number}\nclass: surfboat\noars: o{number}\nrigged:\n  date: 2026-10-17\n  \
             by: Ines Marlow\n  checked-by: Tomas Reyne\n  level: {{trim: {:.5}, roll: {:.5}}}\n  \
             pin-gauge: 150\n  pitch-angles: {{catch: 50, finish: 35}}\nseats:\n",
            self.trim, self.roll
        );
        let mut oars = format!("oar-set: o{number}\npitch-mark: 100\noars:\n");
        for (number, seat) in (1..).zip(&self.seats) {
            seat.write(number, &mut boat, &mut oars).expect("a text grows");
        }
        let path = |folder| format!("{folder}/{number}.yaml");
        [Named::text(&path("boats"), &boat), Named::text(&path("oars"), &oars)]
    }
}

impl SeatRecord {
    fn write(&self, number: u32, boat: &mut String, oars: &mut String) -> std::fmt::Result {
        let Self { aft, out, spread, gap, tip, above_seat, seat_mark, handle, chock, .. } = self;
        let Self { widest, narrowest, at_mark, inboard, pitch: [catch, square, finish], .. } = self;
        let side = if self.side == Side::Port { "port" } else { "starboard" };
        writeln!(boat, "  - seat: {number}\n    side: {side}\n    oar: A{number}")?;
        writeln!(boat, "    pin: {{spread: {spread:.5}, lean: {{aft: {aft:.5}, out: {out:.5}}}}}")?;
        writeln!(
            boat,
            "    rowlock: {{gap: {gap:.5}, after-tip: {tip:.5}, above-seat: {above_seat:.5}}}"
        )?;
        writeln!(boat, "    seat-mark: {seat_mark:.5}\n    handle-past-mark: {handle:.5}")?;
        writeln!(boat, "    chock-to-pin: {chock:.5}")?;
        writeln!(
            boat,
            "    pitch: {{catch: {catch:.5}, square: {square:.5}, finish: {finish:.5}}}"
        )?;
        writeln!(oars, "  - oar: A{number}\n    length: 3860\n    inboard: {inboard:.5}")?;
        writeln!(oars, "    blade: {{at-mark: {at_mark:.5}}}")?;
        writeln!(oars, "    shaft: {{widest: {widest:.5}, narrowest: {narrowest:.5}, bears: flat}}")
    }
}
