//! A rowlock seen along the shaft, bow to the left: bed, both horns, the shaft as wide and as narrow
//! as it turns, and what clears.

use maud::Markup;
use maud::html;

use super::called;
use super::marks::mark;
use super::paper::*;
use crate::model::LimitKey;
use crate::reports::card::Subject;
use crate::reports::said::limits;
use crate::reports::said::range;
use crate::reports::said::value;
use crate::working::SeatSight;
use crate::working::Worked;

const SIZE: At = (46.0, 40.6);
const SCALES: [f64; 6] = [2.0, 2.5, 3.0, 4.0, 5.0, 10.0];
/// The room for the horns, and where the bed's middle is.
const ROOM: At = (30.0, 18.0);
const BED: At = (23.0, 24.6);

/// How wide and how high a rowlock is drawn whose size nobody measured, in millimetres.
const UNMEASURED: (f64, f64) = (60.0, 45.0);

/// What the drawing shows, in millimetres of the boat; none where it was not measured.
struct Sizes {
    gap: Option<f64>,
    horn: Option<f64>,
    tip: Option<f64>,
    widest: Option<f64>,
    narrowest: Option<f64>,
}

impl Sizes {
    fn of(seat: &SeatSight) -> Self {
        let plain = |worked: Worked| worked.ok().map(|budget| budget.value());
        let horn = seat.seat.rowlock.horn.as_ref().map(|horn| horn.mean());
        Self {
            gap: plain(seat.gap()),
            horn,
            tip: plain(seat.after_tip()),
            widest: plain(seat.widest()),
            narrowest: plain(seat.narrowest()),
        }
    }

    fn wide(&self) -> f64 {
        self.gap.unwrap_or_else(|| self.widest.map_or(UNMEASURED.0, |widest| widest * 1.15))
    }

    fn high(&self) -> f64 {
        self.horn.unwrap_or_else(|| self.widest.unwrap_or(UNMEASURED.1))
    }

    fn one_to(&self) -> f64 {
        let wide = self.wide().max(self.widest.unwrap_or(0.0));
        let high = self.high().max(self.widest.unwrap_or(0.0));
        let fits = |one_to: &&f64| wide / **one_to <= ROOM.0 && high / **one_to <= ROOM.1;
        *SCALES.iter().find(fits).unwrap_or(&SCALES[SCALES.len() - 1])
    }
}

/// Returns the rowlock of a seat.
pub(in crate::reports) fn rowlock(subject: &Subject, seat: &SeatSight) -> Drawing {
    let sizes = Sizes::of(seat);
    let one_to = sizes.one_to();
    let forward = BED.0 - sizes.wide() / 2.0 / one_to;
    let body = html! {
        (text("t2", (1.0, 3.6), Stand::Start, &called(seat)))
        (shaft(&sizes, forward, one_to))
        (horns(&sizes, forward, one_to))
        (gap(&sizes, forward, one_to))
        (place_for(seat, &sizes, forward, one_to))
        (words(subject, seat, one_to))
    };
    Drawing {
        title: format!("Rowlock of {}", called(seat)),
        about: format!(
            "Seen along the shaft, bow to the left. Gap {}; shaft at its widest {}, at its narrowest {}; clears {}.",
            value(&seat.gap(), 1, "mm"),
            value(&seat.widest(), 1, "mm"),
            value(&seat.narrowest(), 1, "mm"),
            value(&seat.clearance(), 1, "mm"),
        ),
        size: SIZE,
        one_to: Some(one_to),
        body,
    }
}

fn shaft(sizes: &Sizes, forward: f64, one_to: f64) -> Markup {
    let round = |class: &str, wide: f64| {
        let radius = wide / 2.0 / one_to;
        circle(class, (forward + radius, BED.1 - radius), radius)
    };
    html! {
        @if let Some(widest) = sizes.widest { (round("widest tint", widest)) (round("widest blue", widest)) }
        @if let Some(narrowest) = sizes.narrowest { (round("narrowest blue thin dash", narrowest)) }
    }
}

/// The inner faces of the horns and the bed; broken where they were not measured.
fn horns(sizes: &Sizes, forward: f64, one_to: f64) -> Markup {
    let top = BED.1 - sizes.high() / one_to;
    let tip = sizes.tip.unwrap_or(0.0) / one_to;
    let shank = forward + sizes.wide() / one_to + (-tip).max(0.0);
    let middle = BED.1
        - sizes.widest.map_or(sizes.high(), |widest| widest.min(sizes.high() * 1.6)) / 2.0 / one_to;
    let measured = |known: bool| if known { "heavy" } else { "wide dash" };
    let (horn, after) = (sizes.horn.is_some(), sizes.horn.is_some() && sizes.gap.is_some());
    html! {
        (through(&format!("forward-horn {}", measured(horn)), &[(forward, top), (forward, BED.1)]))
        (through(&format!("bed {}", measured(sizes.gap.is_some())), &[(forward, BED.1), (shank, BED.1)]))
        (through(&format!("after-horn {}", measured(after)), &[(shank, BED.1), (shank, middle.max(top)), (shank + tip, top)]))
        (text("inquiet", (forward - 1.6, BED.1 - 4.5), Stand::End, "forward"))
        (text("inquiet", (forward - 1.6, BED.1 - 1.7), Stand::End, "horn"))
        (text("inquiet", (shank + 1.6, BED.1 - 4.5), Stand::Start, "after"))
        (text("inquiet", (shank + 1.6, BED.1 - 1.7), Stand::Start, "horn"))
        (text("inquiet", (1.0, BED.1 + 3.0), Stand::Start, "bow"))
        (text("inquiet", (SIZE.0 - 1.0, BED.1 + 3.0), Stand::End, "stern"))
    }
}

/// The gap, and what clears beside the shaft at its widest.
fn gap(sizes: &Sizes, forward: f64, one_to: f64) -> Markup {
    let Some(gap) = sizes.gap else { return html! {} };
    // Above the shaft, too: it may stand higher than the horns.
    let top = BED.1 - sizes.high().max(sizes.widest.unwrap_or(0.0)) / one_to;
    let right = forward + gap / one_to;
    html! {
        (measure("gap thin", (forward, top - 1.6), (right, top - 1.6)))
        @if let Some(widest) = sizes.widest.filter(|widest| *widest < gap) {
            (measure("clears orange", (forward + widest / one_to, BED.1 - widest / 2.0 / one_to), (right, BED.1 - widest / 2.0 / one_to)))
        }
    }
}

/// The narrowest and the widest gap that both clears and holds the shaft, as a bar below the bed.
fn place_for(seat: &SeatSight, sizes: &Sizes, forward: f64, one_to: f64) -> Markup {
    let [Some(least), Some(most)] = gap_range(seat, sizes) else { return html! {} };
    let (from, to) = (forward + least / one_to, forward + most / one_to);
    let y = BED.1 + 1.9;
    html! { @if most >= least { (measure("may-stand blue wide", (from, y), (to, y))) } }
}

/// The least and the most that the gap may be for the seat's own shaft.
fn gap_range(seat: &SeatSight, sizes: &Sizes) -> [Option<f64>; 2] {
    let [clear, _] = range(seat, LimitKey::Clearance);
    let [_, loose] = range(seat, LimitKey::Loose);
    let sum = |section: Option<f64>, limit: Option<f64>| Some(section? + limit?);
    [sum(sizes.widest, clear), sum(sizes.narrowest, loose)]
}

fn words(subject: &Subject, seat: &SeatSight, one_to: f64) -> Markup {
    let sizes = Sizes::of(seat);
    let may = limits(gap_range(seat, &sizes)).map_or(String::new(), |may| format!(" ({may})"));
    let least = limits(range(seat, LimitKey::Clearance))
        .map_or(String::new(), |least| format!(" ({least})"));
    let lines = [
        format!("gap {}{may}", value(&seat.gap(), 1, "mm")),
        format!("shaft, widest {}", value(&seat.widest(), 1, "mm")),
        format!("narrowest {}", value(&seat.narrowest(), 1, "mm")),
        format!("clears {}{least}", value(&seat.clearance(), 1, "mm")),
    ];
    let own = mark(&subject.findings, &seat.name().at("rowlock"));
    html! {
        @for (y, line) in [30.2, 32.7, 35.2, 37.7].into_iter().zip(&lines) {
            (text_within("", (1.0, y), Stand::Start, line, 46))
        }
        @if let Some(own) = &own { (own.drawn((1.2, 40.2))) }
        (text("inquiet", (SIZE.0 - 1.0, 40.2), Stand::End, &format!("1 : {}", n(one_to))))
    }
}
