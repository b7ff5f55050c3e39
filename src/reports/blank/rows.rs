//! The rows of a sheet to write on, in the order of the work. Knows no paper.

use crate::model::LimitKey;
use crate::model::Oar;
use crate::model::Reading;
use crate::reports::card_readings::offset;
use crate::reports::card_readings::read;
use crate::reports::figures_text::rounded;
use crate::units::Length;
use crate::units::Slope;
use crate::working::SeatSight;

/// One value to be taken at every seat.
pub(super) struct Row {
    /// The field it goes to, as the records' form names it.
    pub(super) field: &'static str,
    /// What people call it, with its unit.
    pub(super) called: &'static str,
    /// The limit that is told beside it, and of what it is one.
    pub(super) limit: Option<(LimitKey, &'static str)>,
    /// What is written.
    pub(super) written: Written,
    /// Another value that shares the row, with what both and each are called.
    pub(super) beside: Option<Box<Beside>>,
}

/// A value that shares a row with another.
pub(super) struct Beside {
    /// What both are called.
    pub(super) both: &'static str,
    /// What stands in the box of the first, and in that of the other.
    pub(super) each: [&'static str; 2],
    pub(super) row: Row,
}

/// What is written into a box.
#[derive(Clone, Copy, Eq, PartialEq)]
pub(super) enum Written {
    /// A number.
    Number,
    /// A number before anything was bent or packed, and one after.
    FoundAndLeft,
    /// One of these words, marked.
    Word(&'static [&'static str]),
    /// One of three letters for each way that the oar is lifted.
    Lifts,
}

/// A step of the work with its rows.
pub(super) struct Step {
    pub(super) called: &'static str,
    pub(super) rows: Vec<Row>,
}

const fn row(field: &'static str, called: &'static str) -> Row {
    Row { field, called, limit: None, written: Written::Number, beside: None }
}

/// Two values in one row, each with half of the box.
fn pair(both: &'static str, one: (&'static str, Row), other: (&'static str, Row)) -> Row {
    let beside = Beside { both, each: [one.0, other.0], row: other.1 };
    Row { beside: Some(Box::new(beside)), ..one.1 }
}

impl Row {
    /// Returns every value of the row.
    pub(super) fn each(&self) -> impl Iterator<Item = &Self> {
        std::iter::once(self).chain(self.beside.as_deref().map(|beside| &beside.row))
    }

    const fn by(mut self, key: LimitKey, of: &'static str) -> Self {
        self.limit = Some((key, of));
        self
    }

    const fn writes(mut self, written: Written) -> Self {
        self.written = written;
        self
    }
}

/// Returns the steps of the first side: what is done before the oars are laid.
pub(super) fn first_side() -> Vec<Step> {
    let pins = vec![
        row("boat/seats/pin/spread", "spread, mm"),
        row("boat/seats/pin/along", "along, mm"),
        pair(
            "lean aft | out, mm",
            ("aft", row("boat/seats/pin/lean/aft", "lean aft, mm").by(LimitKey::PinAft, "aft")),
            ("out", row("boat/seats/pin/lean/out", "lean out, mm").by(LimitKey::PinOut, "out")),
        ),
        row("boat/seats/pin/thick", "pin thick, mm"),
        pair(
            "plate along | across, mm",
            ("along", row("boat/seats/pin/plate/along", "plate along, mm")),
            ("across", row("boat/seats/pin/plate/across", "plate across, mm")),
        ),
    ];
    let handles = vec![
        pair(
            "inboard | grip, mm",
            ("inboard", row("oar-set/oars/inboard", "inboard, mm")),
            ("grip", row("oar-set/oars/grip", "grip, mm")),
        ),
        row("boat/seats/seat-mark", "seat mark, mm"),
        row("boat/seats/handle-past-mark", "past mark, mm").by(LimitKey::Handle, "past mark"),
        row("boat/seats/rowlock/above-seat", "rowlock above seat, mm"),
    ];
    let to_pin = "boat/seats/chock-to-pin";
    let chocks = vec![pair(
        "chock to pin | collar to pin, mm",
        ("chock", row(to_pin, "chock to pin, mm").by(LimitKey::Chock, "chock to pin")),
        ("collar", row("boat/seats/collar-to-pin", "collar to pin, mm")),
    )];
    let step = |called, rows| Step { called, rows };
    vec![step("Pins", pins), step("Handles", handles), step("Back chocks", chocks)]
}

/// Returns the steps of the second side: blades, rowlocks, oars, rowers.
pub(super) fn second_side() -> Vec<Step> {
    let step = |called, rows| Step { called, rows };
    vec![
        step("Pitch", pitch()),
        step("Rowlocks", rowlocks()),
        step("Oars", oars()),
        step("Rowers", rowers()),
    ]
}

/// Returns steps for two readers, who need the whole box of each value: what is read at the boat,
/// each value in a row of its own.
pub(super) fn apart(steps: Vec<Step>) -> Vec<Step> {
    let alone = |row: Row| {
        let Row { beside, .. } = row;
        let other = beside.map(|beside| beside.row);
        std::iter::once(Row { beside: None, ..row }).chain(other)
    };
    let at_the_boat = |row: &Row| !OF_THE_BENCH.contains(&row.field);
    let own = |step: Step| {
        let rows = step.rows.into_iter().flat_map(alone).filter(at_the_boat).collect();
        Step { rows, ..step }
    };
    steps.into_iter().filter(|step| step.called != "Rowers").map(own).collect()
}

/// What is read once at a bench, where a second reader takes another sheet.
const OF_THE_BENCH: [&str; 8] = [
    "boat/seats/collar-to-pin",
    "oar-set/oars/shaft/round",
    "oar-set/oars/grip",
    "oar-set/oars/flex/drop",
    "oar-set/oars/blade/length",
    "oar-set/oars/blade/width",
    "oar-set/oars/blade/at-mark",
    "oar-set/oars/pitch",
];

fn pitch() -> Vec<Row> {
    use Written::FoundAndLeft;
    vec![
        row("boat/seats/pitch/catch", "catch, mm").writes(FoundAndLeft),
        row("boat/seats/pitch/square", "square off, mm")
            .by(LimitKey::Pitch, "pitch")
            .writes(FoundAndLeft),
        row("boat/seats/pitch/finish", "finish, mm").writes(FoundAndLeft),
    ]
}

fn rowlocks() -> Vec<Row> {
    vec![
        row("boat/seats/rowlock/gap", "gap, mm")
            .by(LimitKey::Clearance, "clears")
            .writes(Written::FoundAndLeft),
        row("boat/seats/rowlock/after-tip", "after tip, mm"),
        pair(
            "horn | horn long, mm",
            ("horn", row("boat/seats/rowlock/horn", "horn, mm")),
            ("long", row("boat/seats/rowlock/long", "horn long, mm")),
        ),
        pair(
            "mark in bed | round shaft, mm",
            (
                "mark",
                row("boat/seats/oar-bed", "mark in bed, mm").by(LimitKey::Bed, "part of shaft"),
            ),
            ("round", row("oar-set/oars/shaft/round", "round shaft, mm")),
        ),
        row("boat/seats/rowlock/turns", "turns")
            .writes(Written::Word(&["free", "stiff", "seized"])),
        row("boat/seats/lifts-out", "lifts out").writes(Written::Lifts),
    ]
}

fn oars() -> Vec<Row> {
    vec![
        pair(
            "widest | narrowest, mm",
            ("widest", row("oar-set/oars/shaft/widest", "widest, mm")),
            ("narrowest", row("oar-set/oars/shaft/narrowest", "narrowest, mm")),
        ),
        pair(
            "drop | length, mm",
            ("drop", row("oar-set/oars/flex/drop", "drop, mm")),
            ("length", row("oar-set/oars/length", "length, mm")),
        ),
        pair(
            "blade: length | width, mm",
            ("length", row("oar-set/oars/blade/length", "blade length, mm")),
            ("width", row("oar-set/oars/blade/width", "blade width, mm")),
        ),
        pair(
            "blade: at mark | own pitch, mm",
            ("at mark", row("oar-set/oars/blade/at-mark", "at mark, mm")),
            ("own pitch", row("oar-set/oars/pitch", "own pitch, mm")),
        ),
    ]
}

fn rowers() -> Vec<Row> {
    vec![
        pair(
            "stature | leg, mm",
            ("stature", row("crew/rowers/stature", "stature, mm")),
            ("leg", row("crew/rowers/leg", "leg, mm")),
        ),
        pair(
            "weight, kg | foot hole",
            ("weight", row("crew/rowers/weight", "weight, kg")),
            ("hole", row("crew/rowers/foot-hole", "foot hole")),
        ),
        pair(
            "arc: catch | finish, deg",
            ("catch", row("crew/rowers/arc/catch", "arc catch, deg")),
            ("finish", row("crew/rowers/arc/finish", "arc finish, deg")),
        ),
    ]
}

/// Returns what was read of a row's value at a seat last time. Of rowers nothing is told.
pub(super) fn last(seat: &SeatSight, field: &str) -> Option<String> {
    let (record, pin, rowlock) = (seat.seat, &seat.seat.pin, &seat.seat.rowlock);
    let of_oar = |pick: fn(&Oar) -> Option<&Reading<Length>>| seat.oar.and_then(pick);
    let slope: Option<&Reading<Slope>> = match field {
        "boat/seats/pin/lean/aft" => pin.lean.aft.as_ref(),
        "boat/seats/pin/lean/out" => pin.lean.out.as_ref(),
        "oar-set/oars/pitch" => seat.oar.and_then(|oar| oar.pitch.as_ref()),
        "boat/seats/pitch/catch" => record.pitch.catch.as_ref(),
        "boat/seats/pitch/square" => record.pitch.square.as_ref(),
        "boat/seats/pitch/finish" => record.pitch.finish.as_ref(),
        _ => None,
    };
    let length = match field {
        "boat/seats/pin/spread" => pin.spread.as_ref(),
        "boat/seats/pin/along" => pin.along.as_ref(),
        "boat/seats/pin/thick" => pin.thick.as_ref(),
        "boat/seats/pin/plate/along" => pin.plate.along.as_ref(),
        "boat/seats/pin/plate/across" => pin.plate.across.as_ref(),
        "oar-set/oars/inboard" => of_oar(|oar| oar.inboard.as_ref()),
        "boat/seats/seat-mark" => record.seat_mark.as_ref(),
        "boat/seats/handle-past-mark" => record.handle_past_mark.as_ref(),
        "boat/seats/chock-to-pin" => record.chock_to_pin.as_ref(),
        "boat/seats/rowlock/gap" => rowlock.gap.as_ref(),
        "boat/seats/rowlock/after-tip" => rowlock.after_tip.as_ref(),
        "boat/seats/rowlock/horn" => rowlock.horn.as_ref(),
        "boat/seats/rowlock/long" => rowlock.long.as_ref(),
        "boat/seats/rowlock/above-seat" => rowlock.above_seat.as_ref(),
        "boat/seats/oar-bed" => record.oar_bed.as_ref(),
        "oar-set/oars/length" => of_oar(|oar| oar.length.as_ref()),
        "oar-set/oars/grip" => of_oar(|oar| oar.grip.as_ref()),
        "oar-set/oars/blade/length" => of_oar(|oar| oar.blade.length.as_ref()),
        "oar-set/oars/blade/width" => of_oar(|oar| oar.blade.width.as_ref()),
        "oar-set/oars/blade/at-mark" => of_oar(|oar| oar.blade.at_mark.as_ref()),
        "oar-set/oars/flex/drop" => of_oar(|oar| oar.flex.drop.as_ref()),
        "oar-set/oars/shaft/round" => of_oar(|oar| oar.shaft.round.as_ref()),
        "oar-set/oars/shaft/widest" => of_oar(|oar| oar.shaft.widest()),
        "oar-set/oars/shaft/narrowest" => of_oar(|oar| oar.shaft.narrowest()),
        _ => None,
    };
    let collar = record.collar_to_pin.filter(|_| field == "boat/seats/collar-to-pin");
    let collar = collar.map(|collar| rounded(collar.value.as_mm(), 1));
    offset(slope).or_else(|| read(length)).or(collar)
}
