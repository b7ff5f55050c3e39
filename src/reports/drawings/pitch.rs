//! The pitch of a blade over its arc, catch to the left: readings with how good they are, the curve
//! that pin and rowlock make of them, and the limits square off.

use maud::Markup;
use maud::html;

use super::called;
use super::marks::mark;
use super::paper::*;
use crate::model::LimitKey;
use crate::reports::card::Subject;
use crate::reports::said::range;
use crate::reports::said::value;
use crate::working::Attitude;
use crate::working::SeatSight;

const SIZE: At = (46.0, 26.0);
const LEFT: f64 = 7.0;
const RIGHT: f64 = 44.0;
const TOP: f64 = 6.0;
const LOW: f64 = 18.4;

/// How many straight pieces the curve is drawn in.
const PIECES: u32 = 30;

/// How many degrees of arc are left free at each side.
const ASIDE: f64 = 6.0;

/// The degrees of pitch that a plot shows; one for all seats, so that they can be compared.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(in crate::reports) struct PitchAxis {
    least: f64,
    most: f64,
}

impl PitchAxis {
    /// Returns the axis on which the readings and limits of all seats have room.
    pub(in crate::reports) fn of(seats: &[SeatSight]) -> Self {
        let read = seats.iter().flat_map(|seat| Attitude::ALL.map(|attitude| seat.pitch(attitude)));
        let ends = read
            .flatten()
            .flat_map(|pitch| [pitch.value() - pitch.expanded(), pitch.value() + pitch.expanded()]);
        let limits = seats.iter().flat_map(|seat| range(seat, LimitKey::Pitch)).flatten();
        let all: Vec<f64> = ends.chain(limits).filter(|pitch| pitch.abs() < 60.0).collect();
        let least = all.iter().copied().fold(f64::INFINITY, f64::min);
        let most = all.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        if least > most {
            return Self { least: 0.0, most: 10.0 };
        }
        Self { least: (least - 0.5).floor(), most: (most + 0.5).ceil() }
    }

    fn y(self, pitch: f64) -> f64 {
        LOW - (pitch.clamp(self.least, self.most) - self.least) / (self.most - self.least)
            * (LOW - TOP)
    }
}

/// Oar angles from the catch on the left to the finish on the right.
struct Arc {
    catch: f64,
    finish: f64,
}

impl Arc {
    fn x(&self, theta: f64) -> f64 {
        let (first, last) = (self.catch + ASIDE, self.finish - ASIDE);
        LEFT + (first - theta) / (first - last) * (RIGHT - LEFT)
    }
}

/// Returns the plot of a seat.
pub(in crate::reports) fn pitch(subject: &Subject, seat: &SeatSight, axis: PitchAxis) -> Drawing {
    let laid = |attitude| seat.laid_at(attitude);
    let arc = match (laid(Attitude::Catch), laid(Attitude::Finish)) {
        (Ok(catch), Ok(finish)) if catch > finish => Some(Arc { catch, finish }),
        _ => None,
    };
    let body = html! {
        (text("t2", (1.0, 3.6), Stand::Start, &called(seat)))
        (frame(seat, axis))
        @if let Some(arc) = &arc {
            (curve(seat, axis, arc))
            @for attitude in Attitude::ALL { (reading(seat, axis, arc, attitude)) }
        } @else { (text("", (LEFT + 2.0, 13.0), Stand::Start, "oar angles not known")) }
        (below(subject, seat))
    };
    let each = Attitude::ALL
        .map(|attitude| format!("{} {}", attitude.words(), value(&seat.pitch(attitude), 2, "deg")));
    Drawing {
        title: format!("Pitch over the arc of {}", called(seat)),
        about: format!("Pitch of the blade, its top to the stern positive: {}.", each.join("; ")),
        size: SIZE,
        one_to: None,
        body,
    }
}

/// The axes and the band of the limits square off.
fn frame(seat: &SeatSight, axis: PitchAxis) -> Markup {
    let limits = range(seat, LimitKey::Pitch);
    let at = |limit: Option<f64>, else_at: f64| limit.map_or(else_at, |limit| axis.y(limit));
    let (low, high) = (at(limits[0], LOW), at(limits[1], TOP));
    let ticks = [Some(axis.least), Some(axis.most)].into_iter().chain(limits).flatten();
    html! {
        @if limits != [None, None] { (rect("band tint", (LEFT, high), (RIGHT - LEFT, (low - high).max(0.0)))) }
        @for limit in limits.into_iter().flatten() {
            (line("thin dash", (LEFT, axis.y(limit)), (RIGHT, axis.y(limit))))
        }
        (through("thin", &[(LEFT, TOP), (LEFT, LOW), (RIGHT, LOW)]))
        @for tick in ticks {
            (text("inquiet", (LEFT - 0.8, axis.y(tick) + 0.85), Stand::End, &n(tick)))
        }
        (text("inquiet", (1.0, (TOP + LOW) / 2.0 + 0.8), Stand::Start, "deg"))
    }
}

fn curve(seat: &SeatSight, axis: PitchAxis, arc: &Arc) -> Markup {
    let theta =
        |piece| arc.finish + (arc.catch - arc.finish) * f64::from(piece) / f64::from(PIECES);
    let thetas: Vec<f64> = (0..=PIECES).map(theta).collect();
    let Ok(pitches) = seat.pitch_along_arc(&thetas) else { return html! {} };
    let points: Vec<At> =
        thetas.iter().zip(&pitches).map(|(theta, pitch)| (arc.x(*theta), axis.y(*pitch))).collect();
    through("curve blue", &points)
}

fn reading(seat: &SeatSight, axis: PitchAxis, arc: &Arc, attitude: Attitude) -> Markup {
    let Ok(theta) = seat.laid_at(attitude) else { return html! {} };
    let x = arc.x(theta);
    let (called, stand) = match attitude {
        Attitude::Square => ("square off".to_owned(), Stand::Middle),
        Attitude::Finish => (format!("finish {}°", n(theta.abs())), Stand::End),
        Attitude::Catch => (format!("catch {}°", n(theta.abs())), Stand::Start),
    };
    let below = |stand| match stand {
        Stand::Start => LEFT,
        Stand::Middle => x,
        Stand::End => RIGHT + 1.0,
    };
    // Beside its line, within the axes, and where three stand, none over another.
    let (aside, down) = match attitude {
        Attitude::Catch => (0.6, 3.0),
        Attitude::Square => (0.0, 6.4),
        Attitude::Finish => (-0.6, 3.0),
    };
    let drawn = match seat.pitch(attitude) {
        Ok(pitch) => {
            let ends = [-1.0, 1.0].map(|way| axis.y(pitch.value() + way * pitch.expanded()));
            html! {
                (measure("good-to thin", (x, ends[0]), (x, ends[1])))
                (circle("reading fullblue", (x, axis.y(pitch.value())), 0.85))
            }
        }
        Err(_) => html! {
            (line("missing thin dot", (x, TOP), (x, LOW)))
            (text("inquiet halo", (x + aside, TOP + down), stand, "not read"))
        },
    };
    html! { (drawn) (text("", (below(stand), LOW + 3.2), stand, &called)) }
}

/// What is outside, or why there is no curve.
fn below(subject: &Subject, seat: &SeatSight) -> Markup {
    let own = mark(&subject.findings, &seat.name().at("pitch"));
    let at = (1.2, SIZE.1 - 0.8);
    if let Some(own) = own {
        return own.drawn(at);
    }
    let words = match seat.arc_lean() {
        _ if seat.hands_set_pitch() => "round shaft: the hands set the blade".to_owned(),
        Ok(arc) => format!("rowlock and oar {}", value(&Ok(arc.rig_pitch), 2, "deg")),
        Err(_) => "no curve: not all three were read".to_owned(),
    };
    text_within("inquiet", (1.0, at.1), Stand::Start, &words, 44)
}
