//! How a pin leans, seen from the side and from the end, ten times as much as it does.

use maud::Markup;
use maud::html;

use super::marks::mark;
use super::paper::*;
use super::{called, marks};
use crate::model::LimitKey;
use crate::reports::card::Subject;
use crate::reports::said::range;
use crate::reports::said::value;
use crate::working::SeatSight;
use crate::working::Worked;

const SIZE: At = (46.0, 25.6);

/// How many times the lean is drawn: a degree alone can't be seen.
const TIMES: f64 = 10.0;

/// How far a pin is drawn to lean at most, in degrees of the drawing.
const FARTHEST: f64 = 60.0;

/// How long the pin is drawn, and how high its foot stands.
const LONG: f64 = 10.0;
const FOOT: f64 = 16.2;

/// One way of looking at a pin.
struct View<'w> {
    /// Where its foot is.
    x: f64,
    /// What it is called: "aft".
    kind: &'static str,
    /// Where a positive lean goes on the paper: 1 to the right.
    way: f64,
    lean: &'w Worked,
    limits: [Option<f64>; 2],
}

/// Returns how the pin of a seat leans.
pub(in crate::reports) fn lean(subject: &Subject, seat: &SeatSight) -> Drawing {
    let (aft, out) = (seat.lean_aft(), seat.lean_out());
    // Looking to the bow, port is on the left.
    let way = seat.beside_string(0.0, 1.0).map_or(0.0, |(_, across)| -across);
    let limits = |key| range(seat, key);
    let side =
        View { x: 12.0, kind: "aft", way: 1.0, lean: &aft, limits: limits(LimitKey::PinAft) };
    let end = View { x: 35.0, kind: "out", way, lean: &out, limits: limits(LimitKey::PinOut) };
    let own = mark(&subject.findings, &seat.name().at("pin"));
    let body = html! {
        (text("t2", (1.0, 3.6), Stand::Start, &called(seat)))
        (view(&side)) (view(&end))
        @if let Some(own) = own { (marks::Mark::drawn(&own, (1.2, SIZE.1 - 0.8))) }
    };
    Drawing {
        title: format!("Lean of the pin of {}", called(seat)),
        about: format!(
            "From the side, lean aft {}; from the end looking to the bow, lean out {}. Drawn ten times as much.",
            value(&aft, 2, "deg"),
            value(&out, 2, "deg"),
        ),
        size: SIZE,
        one_to: None,
        body,
    }
}

impl View<'_> {
    /// The point at the end of a line from the foot that leans so far, in degrees of the boat.
    fn head(&self, lean: f64, long: f64) -> At {
        let drawn = (lean * TIMES).clamp(-FARTHEST, FARTHEST).to_radians();
        (self.x + self.way * long * drawn.sin(), FOOT - long * drawn.cos())
    }
}

fn view(view: &View) -> Markup {
    let foot = (view.x, FOOT);
    let way = match view.way {
        way if way > 0.5 => format!("{}, deg →", view.kind),
        way if way < -0.5 => format!("← {}, deg", view.kind),
        _ => format!("{}, deg", view.kind),
    };
    html! {
        g class={ "lean-" (view.kind) } {
            (line("plumb thin dash", foot, (view.x, FOOT - LONG - 1.0)))
            (line("wide", (view.x - 4.0, FOOT), (view.x + 4.0, FOOT)))
            @for limit in view.limits.into_iter().flatten() {
                (line("limit thin dot", foot, view.head(limit, LONG + 1.5)))
            }
            @if let Ok(lean) = view.lean {
                @for way in [-1.0, 1.0] {
                    (line("good-to hair", foot, view.head(lean.value() + way * lean.expanded(), LONG)))
                }
                (line("pin blue heavy", foot, view.head(lean.value(), LONG)))
            }
            (text("inquiet", (view.x, FOOT + 3.2), Stand::Middle, &way))
            (text("", (view.x, FOOT + 6.0), Stand::Middle, &value(view.lean, 2, "")))
        }
    }
}
