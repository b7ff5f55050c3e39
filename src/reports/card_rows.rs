//! The rows of a rig card for one seat, in the order of the work: what was read, under which
//! names findings are made of it, and what is worked out from it.

use super::card_readings::offset;
use super::card_readings::read;
use super::card_readings::word;
use super::said::limit;
use super::shown;
use crate::model::LimitKey;
use crate::model::Name;
use crate::model::Oar;
use crate::model::Reading;
use crate::units::Length;
use crate::units::Slope;
use crate::working::Attitude;
use crate::working::SeatSight;
use crate::working::Worked;

/// What stands beside a reading of which nothing is worked out but how good it is.
pub(super) const GOOD_TO: &str = "good to";

/// One row of the card at one seat.
pub(super) struct Row {
    /// What people call it, with its unit.
    pub(super) called: String,
    /// What was read; none where it was not. An empty text: nothing is read here.
    pub(super) read: Option<String>,
    /// What a value is called that is missing.
    pub(super) missing: &'static str,
    /// Names of the value: findings of these, and of anything within them, are of it.
    pub(super) names: Vec<Name>,
    /// Names that findings of this value have, too.
    pub(super) beside: Vec<Name>,
    /// Whether any rule in force judges it.
    pub(super) judged: bool,
    /// The limit it is judged by, in words, where it has one of its own.
    pub(super) limit: Option<String>,
    /// What is worked out from it: what people call that, its decimals, and the value.
    pub(super) worked: Vec<(&'static str, usize, Worked)>,
}

/// Rows of one step of the work.
pub(super) struct Step {
    /// What people call the step.
    pub(super) called: &'static str,
    pub(super) rows: Vec<Row>,
}

impl Row {
    fn new(called: impl Into<String>, read: Option<String>, names: Vec<Name>) -> Self {
        let (beside, worked) = (Vec::new(), Vec::new());
        let (called, missing) = (called.into(), "not measured");
        Self { called, read, missing, names, beside, judged: false, limit: None, worked }
    }

    fn judged(self, judged: bool) -> Self {
        Self { judged, ..self }
    }

    fn only_if(self, judged: bool) -> Self {
        Self { judged: self.judged && judged, ..self }
    }

    /// It is judged by how far it is from others of its kind, where such a limit is in force.
    fn alike(self, seat: &SeatSight, key: LimitKey) -> Self {
        let own = self.by(seat, key);
        let limit = own.limit.as_deref().map(|said| said.replacen("at most", "alike to", 1));
        Self { limit, ..own }
    }

    /// It is judged by a limit, where that is in force.
    fn by(self, seat: &SeatSight, key: LimitKey) -> Self {
        Self { judged: in_force(seat, key), limit: limit(seat, key), ..self }
    }

    fn beside(self, name: Name) -> Self {
        Self { beside: vec![name], ..self }
    }

    fn missing(self, missing: &'static str) -> Self {
        Self { missing, ..self }
    }

    fn gives(mut self, called: &'static str, places: usize, worked: Worked) -> Self {
        self.worked.push((called, places, worked));
        self
    }

    /// Returns whether a rule could look at it: it was read, and what is worked out first could be.
    pub(super) fn is_checked(&self) -> bool {
        let worked = self.worked.first().is_none_or(|(.., worked)| worked.is_ok());
        self.judged && self.read.is_some() && worked
    }
}

/// Returns every row of a seat. All seats of a boat have the same rows.
pub(super) fn steps(seat: &SeatSight) -> Vec<Step> {
    let step = |called, rows| Step { called, rows };
    vec![
        step("", vec![oar(seat)]),
        step("pin", pin(seat)),
        step("handle", handle(seat)),
        step("back chock", chock(seat)),
        step("pitch", pitch(seat)),
        step("gap and horns", gap(seat)),
        step("lift out by hand", lifts(seat)),
        step("gearing", gearing(seat)),
        step("oar", oar_data(seat)),
    ]
}

fn in_force(seat: &SeatSight, key: LimitKey) -> bool {
    key.parts().iter().any(|(part, _)| seat.at.in_force.limit(key, *part).is_some())
}

fn length(seat: &SeatSight, called: &str, reading: Option<&Reading<Length>>, field: &str) -> Row {
    Row::new(called, read(reading), vec![seat.name().at(field)])
}

fn oar(seat: &SeatSight) -> Row {
    let id = seat.seat.oar.as_ref().map(|id| shown::line(&id.value));
    let state = seat.oar.map(|oar| name_of(seat, oar).at("state"));
    let names = std::iter::once(seat.name().at("oar")).chain(state).collect();
    Row::new("oar", id, names).missing("not named").judged(seat.oar.is_some())
}

fn pin(seat: &SeatSight) -> Vec<Row> {
    let pin = &seat.seat.pin;
    let lean = |called: &str, reading: Option<&Reading<Slope>>, field: &str| {
        Row::new(called, offset(reading), vec![seat.name().at(field)])
    };
    vec![
        lean("lean aft, mm", pin.lean.aft.as_ref(), "pin/lean/aft")
            .by(seat, LimitKey::PinAft)
            .gives("true lean, deg", 2, seat.lean_aft()),
        lean("lean out, mm", pin.lean.out.as_ref(), "pin/lean/out")
            .by(seat, LimitKey::PinOut)
            .gives("true lean, deg", 2, seat.lean_out()),
        length(seat, "spread, mm", pin.spread.as_ref(), "pin/spread").gives(
            GOOD_TO,
            1,
            seat.spread(),
        ),
    ]
}

fn handle(seat: &SeatSight) -> Vec<Row> {
    let record = seat.seat;
    let inboard = seat.oar.and_then(|oar| oar.inboard.as_ref());
    let of_oar = seat.oar.map(|oar| name_of(seat, oar).at("inboard"));
    vec![
        Row::new("inboard, mm", read(inboard), of_oar.into_iter().collect())
            .alike(seat, LimitKey::OarInboard)
            .gives(GOOD_TO, 1, seat.inboard()),
        length(seat, "seat mark, mm", record.seat_mark.as_ref(), "seat-mark").gives(
            GOOD_TO,
            1,
            seat.seat_mark(),
        ),
        length(seat, "past mark, mm", record.handle_past_mark.as_ref(), "handle-past-mark")
            .by(seat, LimitKey::Handle)
            .gives("true past mark", 1, seat.handle_read())
            .gives("by the sum", 1, seat.handle_computed())
            .gives("past centreline", 1, seat.overlap()),
    ]
}

fn chock(seat: &SeatSight) -> Vec<Row> {
    let chock = seat.seat.chock_to_pin.as_ref();
    vec![length(seat, "chock to pin, mm", chock, "chock-to-pin").by(seat, LimitKey::Chock).gives(
        GOOD_TO,
        1,
        seat.chock_to_pin(),
    )]
}

fn pitch(seat: &SeatSight) -> Vec<Row> {
    let by_rowlock = !seat.hands_set_pitch();
    let one = |called: &str, attitude: Attitude| {
        let name = seat.name().at("pitch").at(attitude.key());
        Row::new(called, offset(seat.pitch_reading(attitude)), vec![name]).gives(
            "pitch, deg",
            2,
            seat.pitch(attitude),
        )
    };
    let arc = seat.arc_lean();
    let arc = |pick: fn(&crate::working::ArcLean) -> &crate::working::Budget| {
        arc.as_ref().map(|arc| pick(arc).clone()).map_err(Clone::clone)
    };
    let whole = Attitude::ALL.iter().all(|attitude| seat.pitch_reading(*attitude).is_some());
    vec![
        one("catch, mm", Attitude::Catch),
        one("square off, mm", Attitude::Square).by(seat, LimitKey::Pitch).only_if(by_rowlock),
        one("finish, mm", Attitude::Finish),
        Row::new("catch to finish", whole.then(String::new), vec![seat.name().at("pitch")])
            .alike(seat, LimitKey::Arc)
            .only_if(by_rowlock)
            .gives("varies, deg", 2, varies(seat))
            .gives("lean aft, deg", 2, arc(|arc| &arc.aft))
            .gives("lean out, deg", 2, arc(|arc| &arc.out)),
    ]
}

/// The highest pitch of a blade over its arc less the lowest.
fn varies(seat: &SeatSight) -> Worked {
    let [catch, square, finish] = Attitude::ALL.map(|attitude| seat.pitch(attitude));
    let mut all = [catch?, square?, finish?];
    all.sort_by(|one, other| one.value().total_cmp(&other.value()));
    Ok(all[2].minus(&all[0]))
}

fn gap(seat: &SeatSight) -> Vec<Row> {
    let rowlock = &seat.seat.rowlock;
    let own = length(seat, "gap, mm", rowlock.gap.as_ref(), "rowlock/gap")
        .by(seat, LimitKey::Clearance)
        .judged(true)
        .beside(seat.name().at("rowlock"))
        .gives("clearance", 1, seat.clearance())
        .gives("looseness", 1, seat.looseness())
        .gives("left in a roll", 1, seat.clearance_in_roll());
    let spares = seat.at.boat.spares.iter().map(|id| {
        let name = seat.name().at(format_args!("spare/{}", id.value));
        let oar = seat.at.book.oar(seat.at.boat, id);
        let clearance = match oar {
            Some(oar) => seat.clearance_of(oar),
            None => seat.clearance().and(seat.widest()),
        };
        let read = oar.and(rowlock.gap.as_ref()).map(|_| String::new());
        let row = Row::new(format!("spare {}, mm", shown::line(&id.value)), read, vec![name]);
        match oar {
            Some(_) => row.judged(true).gives("clearance", 1, clearance),
            None => row.missing("no such oar"),
        }
    });
    let mut rows = vec![own];
    rows.extend(spares);
    rows.push(
        length(seat, "after tip, mm", rowlock.after_tip.as_ref(), "rowlock/after-tip")
            .judged(true)
            .gives(GOOD_TO, 1, seat.after_tip()),
    );
    rows.push(length(seat, "horn, mm", rowlock.horn.as_ref(), "rowlock/horn").gives(
        GOOD_TO,
        1,
        seat.horn(),
    ));
    rows.push(
        Row::new("turns", word(rowlock.turns), vec![seat.name().at("rowlock/turns")])
            .missing("not tried")
            .judged(true),
    );
    let round = |seat: SeatSight| seat.oar.is_some_and(|oar| oar.shaft.is_round());
    if seat.at.seats().any(|seat| seat.seat.oar_bed.is_some() || round(seat)) {
        rows.push(
            length(seat, "mark in bed, mm", seat.seat.oar_bed.as_ref(), "oar-bed")
                .by(seat, LimitKey::Bed)
                .gives("part of shaft", 3, seat.bed_fraction()),
        );
    }
    rows
}

fn lifts(seat: &SeatSight) -> Vec<Row> {
    let called = |attitude| match attitude {
        "square" => "square off",
        "along" => "along the boat",
        other => other,
    };
    let row = |(attitude, lift)| {
        let whole = seat.name().at("lifts-out");
        Row::new(called(attitude), word(lift), vec![whole.at(attitude)])
            .missing("not tried")
            .judged(true)
            .beside(whole)
    };
    seat.seat.lifts_out.each().into_iter().map(row).collect()
}

fn gearing(seat: &SeatSight) -> Vec<Row> {
    let sums = seat.name().at("worked-out");
    let sound = seat.sums().iter().all(|sum| sum.stated.is_none() || sum.worked.is_ok());
    let written = seat.sums().iter().any(|sum| sum.stated.is_some());
    vec![
        Row::new("sums as written", written.then(|| "written".to_owned()), vec![sums])
            .missing("none")
            .judged(sound)
            .gives("gearing", 3, seat.gearing())
            .gives("by levers", 3, seat.gearing_levers()),
    ]
}

fn oar_data(seat: &SeatSight) -> Vec<Row> {
    type Pick = fn(&Oar) -> Option<&Reading<Length>>;
    let row = |called: &str, field: &str, pick: Pick| {
        let reading = seat.oar.and_then(pick);
        let name = seat.oar.map(|oar| name_of(seat, oar).at(field));
        Row::new(called, read(reading), name.into_iter().collect())
    };
    let own_pitch = seat.oar.and_then(|oar| oar.pitch.as_ref());
    let pitch_name = seat.oar.map(|oar| name_of(seat, oar).at("pitch"));
    let own = seat.oar_sight().and_then(|oar| oar.own_pitch());
    vec![
        row("length, mm", "length", |oar| oar.length.as_ref())
            .alike(seat, LimitKey::OarLength)
            .gives(GOOD_TO, 1, seat.oar_length()),
        Row::new("own pitch", offset(own_pitch), pitch_name.into_iter().collect())
            .alike(seat, LimitKey::OarPitch)
            .gives(GOOD_TO, 2, own),
        row("widest, mm", "shaft/widest", |oar| oar.shaft.widest())
            .alike(seat, LimitKey::OarShaft)
            .gives(GOOD_TO, 1, seat.widest()),
        row("narrowest, mm", "shaft/narrowest", |oar| oar.shaft.narrowest()).gives(
            GOOD_TO,
            1,
            seat.narrowest(),
        ),
        row("drop, mm", "flex", |oar| oar.flex.drop.as_ref()).alike(seat, LimitKey::OarFlex).gives(
            GOOD_TO,
            1,
            seat.oar_sight().and_then(|oar| oar.drop()),
        ),
    ]
}

fn name_of(seat: &SeatSight, oar: &Oar) -> Name {
    match seat.at.oars {
        Some(set) => set.name_of(oar),
        None => Name::record(oar.called()),
    }
}
