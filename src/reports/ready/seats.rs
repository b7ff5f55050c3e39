//! A row a seat: the oar and what came of its readings, in the words of nobody yet.

use super::super::verdict::Verdict;
use crate::model::Crew;
use crate::model::LiftsOut;
use crate::model::Name;
use crate::model::OarState;
use crate::model::Placed;
use crate::model::Word;
use crate::rules::Finding;
use crate::rules::Level;
use crate::working::Attitude;
use crate::working::BoatSight;
use crate::working::SeatSight;
use crate::working::Worked;

/// A seat.
pub(super) struct SeatRow<'r> {
    pub(super) number: Option<u32>,
    pub(super) side: Option<&'static str>,
    pub(super) oar: Option<&'r str>,
    pub(super) oar_verdict: Verdict,
    pub(super) spares: Vec<Spare<'r>>,
    /// What the gap leaves beside the seat's own oar, in millimetres.
    pub(super) to_spare: Value,
    pub(super) lifted: Lifted,
    /// At the catch, square off and at the finish, in degrees.
    pub(super) pitch: [Value; 3],
    pub(super) handle: Value,
    pub(super) chock: Value,
    /// The hole of each crew that rows her.
    pub(super) holes: Vec<Option<u32>>,
}

/// A spare oar at this seat.
pub(super) struct Spare<'r> {
    pub(super) oar: &'r str,
    /// Whether it clears the rowlock; none where nobody measured.
    pub(super) clears: Option<bool>,
    /// Whether it is marked unfit, or has a defect that makes it so.
    pub(super) unfit: bool,
}

/// A worked-out value and its verdict.
pub(super) struct Value {
    pub(super) worked: Worked,
    pub(super) verdict: Verdict,
}

/// How the oar was lifted out by hand.
pub(super) struct Lifted {
    /// In each attitude, with its key; none where it was not tried.
    pub(super) each: Vec<(&'static str, Option<&'static str>)>,
    pub(super) verdict: Verdict,
}

impl Lifted {
    /// Returns the worst of it in a word.
    pub(super) fn word(&self) -> &'static str {
        let has = |word: &str| self.each.iter().any(|(_, lift)| *lift == Some(word));
        let missing = self.each.iter().filter(|(_, lift)| lift.is_none()).count();
        match missing {
            _ if has("jams") => "jams",
            _ if has("stiffly") => "stiffly",
            0 => "freely",
            missing if missing == self.each.len() => "untried",
            _ => "in part",
        }
    }
}

/// Returns the rows, seat 1 first.
pub(super) fn rows<'r>(
    boat: &BoatSight<'r>,
    findings: &[&Finding],
    crews: &[&Crew],
) -> Vec<SeatRow<'r>> {
    let mut rows: Vec<SeatRow> = boat.seats().map(|seat| row(&seat, findings, crews)).collect();
    rows.sort_by_key(|row| row.number.unwrap_or(u32::MAX));
    rows
}

fn row<'r>(seat: &SeatSight<'r>, findings: &[&Finding], crews: &[&Crew]) -> SeatRow<'r> {
    let own = seat.name();
    let verdict = |fields: &[&str], checked: bool| {
        let names: Vec<Name> = fields.iter().map(|field| own.at(field)).collect();
        let concerns =
            |finding: &&&Finding| names.iter().any(|name| finding.name.is_within(name.as_str()));
        Verdict::of(findings.iter().filter(concerns).copied(), checked)
    };
    let value = |worked: Worked, fields: &[&str]| {
        let verdict = verdict(fields, worked.is_ok());
        Value { worked, verdict }
    };
    let arc = findings.iter().copied().filter(|finding| finding.name == own.at("pitch"));
    let pitch = Attitude::ALL.map(|attitude| {
        let worked = seat.pitch(attitude);
        let at = own.at("pitch").at(attitude.key());
        let of_it = findings.iter().copied().filter(|one| one.name.is_within(at.as_str()));
        let verdict = Verdict::of(of_it.chain(arc.clone()), worked.is_ok());
        Value { worked, verdict }
    });
    let lifts = &seat.seat.lifts_out;
    SeatRow {
        number: seat.seat.number.map(|number| number.value),
        side: seat.seat.side.map(|side| side.value.word()),
        oar: seat.seat.oar.as_ref().map(|oar| &*oar.value),
        oar_verdict: verdict(&["oar"], seat.oar.is_some()),
        spares: spares(seat, findings),
        to_spare: value(seat.clearance(), &["rowlock"]),
        lifted: lifted(lifts, verdict(&["lifts-out"], true)),
        pitch,
        handle: value(seat.handle_read(), &["handle-past-mark"]),
        chock: value(seat.chock_to_pin(), &["chock-to-pin"]),
        holes: crews.iter().map(|crew| hole(crew, seat)).collect(),
    }
}

fn lifted(lifts: &LiftsOut, verdict: Verdict) -> Lifted {
    let each = lifts.each().into_iter();
    let each = each.map(|(key, lift)| (key, lift.map(|lift| lift.value.word())));
    Lifted { each: each.collect(), verdict }
}

/// A spare clears where its clearance was worked out and nothing was found of it.
fn spares<'r>(seat: &SeatSight<'r>, findings: &[&Finding]) -> Vec<Spare<'r>> {
    let found = |name: &Name, least: Level| {
        let of_it = |one: &&&Finding| one.name.is_within(name.as_str()) && one.level >= least;
        findings.iter().any(|one| of_it(&one))
    };
    let spare = |id: &'r Placed<String>| {
        let oar = seat.at.book.oar(seat.at.boat, id);
        let name = seat.name().at("spare").at(&id.value);
        let worked = oar.is_some_and(|oar| seat.clearance_of(oar).is_ok());
        let marked = oar.and_then(|oar| oar.state).map(|state| state.value);
        let own = seat.at.oars.zip(oar).map(|(set, oar)| set.name_of(oar));
        Spare {
            oar: &id.value,
            clears: worked.then(|| !found(&name, Level::Note)),
            unfit: marked == Some(OarState::Unfit)
                || own.is_some_and(|own| found(&own, Level::Danger)),
        }
    };
    seat.at.boat.spares.iter().map(spare).collect()
}

fn hole(crew: &Crew, seat: &SeatSight) -> Option<u32> {
    let number = seat.seat.number?.value;
    let at = |seat: Option<Placed<u32>>| seat.is_some_and(|seat| seat.value == number);
    let rower = crew.rowers.iter().find(|rower| at(rower.seat))?;
    rower.foot_hole.map(|hole| hole.value)
}
