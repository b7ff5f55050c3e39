//! A back chock that does not suit the crew that rows the boat.

use super::finding::Finding;
use super::finding::Outcome;
use super::judging::Range;
use super::judging::not_checked;
use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;
use super::unread;
use super::words;
use crate::metrology::decision::Bound;
use crate::model::LimitKey;
use crate::model::Part;
use crate::working::BoatSight;
use crate::working::Budget;
use crate::working::Lack;
use crate::working::LimitInForce;
use crate::working::SeatSight;
use crate::working::Unit;
use crate::working::Worked;

pub(super) static RULE: Rule = Rule {
    id: "chock-distance",
    level: Level::Note,
    checks: "The back chock stands farther from the distance to the pin that suits the mean stature of the crews that row the boat than is allowed.",
    reason: "The chock stops the rower at the finish. Too near the pin, the hands finish in the ribs; \
             too far, the blade comes out early and the reach is lost.",
    remedy: "Move the chock: to the bow when it is too near the pin, to the stern when it is too far; every seat alike.",
    formula: "aim + per-100 / 100 x (mean stature - at-stature); without a stature, the aim itself",
    default: "600 mm at a stature of 1800 mm, 16.8 mm more for each 100 mm of stature, within 15 mm",
    sources: &[
        sources::PRACTICE.at("600 mm from the back chock to the pin"),
        sources::GEOMETRY.at("the finish angle of a seated rower kept, the chock moves 16.8 mm for 100 mm of stature"),
    ],
    example: Example {
        wrong: &[("boats/kittiwake.yaml", "seat: 2", "chock-to-pin: 600", "chock-to-pin: 621  # <--")],
        right: &[("boats/kittiwake.yaml", "seat: 2", "chock-to-pin: 600", "chock-to-pin: 613")],
    },
    looks: Looks::AtEachBoat(check),
};

/// The distance that suits a boat's crews.
struct Aim {
    /// The distance, with what it rests on.
    at: Budget,
    /// Whose stature was used.
    whose: String,
    /// How far either way is allowed.
    within: LimitInForce,
}

fn check(boat: &BoatSight) -> Vec<Outcome> {
    let Some(aim) = aim(boat) else { return Vec::new() };
    if let Some(crew) = unread::crew(boat.book) {
        let lack = Lack::NotMeasured(vec![crew.what()]);
        let name = |seat: SeatSight| seat.name().at("chock-to-pin");
        return boat.seats().map(|seat| not_checked(&RULE, &name(seat), &lack)).collect();
    }
    boat.seats().flat_map(|seat| one(&seat, &aim)).collect()
}

/// Returns the distance aimed at; none where the limit is switched off or set nowhere.
fn aim(boat: &BoatSight) -> Option<Aim> {
    let limit = |part| boat.in_force.limit(LimitKey::Chock, part);
    let (base, within) = (limit(Part::Aim)?, limit(Part::Within)?);
    let plain = |whose| Aim { at: Budget::exact(base.value), whose, within: within.clone() };
    let (Some(at), Some(per)) = (limit(Part::AtStature), limit(Part::Per100)) else {
        return Some(plain("the same for every stature".to_owned()));
    };
    let used =
        format!("for a stature of {}; no crew of hers says another", words::limit(at.value, "mm"));
    let Some((mean, whose)) = boat.mean_stature() else { return Some(plain(used)) };
    let gained = mean.minus(&Budget::exact(at.value)).scaled(per.value / 100.0);
    let stature = words::number(mean.value(), "mm");
    let whose = format!("for the mean stature of {}, {stature}", whose.join(" and "));
    Some(Aim { at: Budget::exact(base.value).plus(&gained), whose, within })
}

/// Returns the distance from back chock to pin that suits a boat's crews, and how far off it a chock
/// may be either way, in millimetres; nothing where no limit is set or a crew can't be read.
#[must_use]
pub fn chock_that_suits(boat: &BoatSight) -> Option<(f64, f64)> {
    let aim = aim(boat).filter(|_| unread::crew(boat.book).is_none())?;
    Some((aim.at.value(), aim.within.value))
}

/// Returns how far each chock is off the distance aimed at, to be looked at with
/// [`either_way`]; nothing where none is.
pub(super) fn off_aim<'b>(boat: &BoatSight<'b>) -> Vec<(SeatSight<'b>, Worked)> {
    let Some(aim) = aim(boat) else { return Vec::new() };
    let off = |seat: SeatSight<'b>| (seat, seat.chock_to_pin().map(|chock| chock.minus(&aim.at)));
    boat.seats().map(off).collect()
}

/// Returns how far off the distance aimed at a chock may be, either way.
pub(super) fn either_way<'b>(boat: &BoatSight<'b>) -> Option<Range<'b>> {
    around(boat, 0.0, &aim(boat)?)
}

fn around<'b>(boat: &BoatSight<'b>, centre: f64, aim: &Aim) -> Option<Range<'b>> {
    let figure = |value| Some(LimitInForce { value, ..aim.within.clone() });
    let (least, most) = (figure(centre - aim.within.value), figure(centre + aim.within.value));
    Range::of_figures(boat.tools, least, most, Unit::Mm)
}

fn one(seat: &SeatSight, aim: &Aim) -> Vec<Outcome> {
    let name = seat.name().at("chock-to-pin");
    let chock = match seat.chock_to_pin() {
        Ok(chock) => chock,
        Err(lack) => return vec![not_checked(&RULE, &name, &lack)],
    };
    // The aim itself is only as good as the statures: its part counts with the reading's.
    let centre = aim.at.value();
    let judged = chock.minus(&aim.at).plus(&Budget::exact(centre));
    let range = around(&seat.at, centre, aim);
    let place = seat.seat.chock_to_pin.as_ref().map_or(seat.seat.place, |read| read.place);
    Range::finding(range.as_ref(), &RULE, &name, &Ok(judged), |value, judged, _| {
        let (near, way) = match judged.bound {
            Bound::Least => ("near", "to the bow"),
            Bound::Most => ("far", "to the stern"),
        };
        let centre = words::number(centre, "mm");
        let out = words::number((value.value() - aim.at.value()).abs(), "mm");
        Finding::new(&RULE, name.clone(), place, format!("too {near}"))
            .saying(format!(
                "{}: back chock to pin is {}; {centre} suits, within {}, {}: too {near} by {out}",
                seat.called(),
                words::measured(value, Unit::Mm),
                words::limit(aim.within.value, "mm"),
                aim.whose,
            ))
            .remedy(format!(
                "Move the chock {out} {way}, to {centre} from the pin; then the foot holes."
            ))
    })
}
