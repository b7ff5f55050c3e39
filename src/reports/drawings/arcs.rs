//! The arcs of a crew side by side: from catch to finish as measured, seat under seat, with the mean
//! of each end.

use maud::Markup;
use maud::html;

use super::paper::*;
use crate::reports::said::value;
use crate::working::Worked;

const WIDE: f64 = 60.0;
const LEFT: f64 = 17.0;
const RIGHT: f64 = 57.0;
const TOP: f64 = 12.0;
const ROW: f64 = 7.0;

/// How long an arc is drawn that has room for both of its numbers above it.
const INSIDE: f64 = 24.0;

/// A rower's arc as measured: to the catch positive, abaft square below zero.
pub(in crate::reports) struct ArcRowed {
    pub(in crate::reports) called: String,
    pub(in crate::reports) catch: Worked,
    pub(in crate::reports) finish: Worked,
}

/// Oar angles from the catch on the left to the finish on the right.
struct Scale {
    catch: f64,
    finish: f64,
}

impl Scale {
    fn of(arcs: &[ArcRowed]) -> Self {
        let ends = |arc: &ArcRowed| {
            let all = [&arc.catch, &arc.finish].into_iter().flatten();
            all.flat_map(|end| [end.value() + end.expanded(), end.value() - end.expanded()])
                .filter(|end| end.abs() < 90.0)
                .collect::<Vec<f64>>()
        };
        let all: Vec<f64> = arcs.iter().flat_map(ends).collect();
        let catch = all.iter().copied().fold(50.0, f64::max);
        let finish = all.iter().copied().fold(-30.0, f64::min);
        Self { catch: catch + 4.0, finish: finish - 4.0 }
    }

    fn x(&self, theta: f64) -> f64 {
        let theta = theta.clamp(self.finish, self.catch);
        LEFT + (self.catch - theta) / (self.catch - self.finish) * (RIGHT - LEFT)
    }
}

/// Returns the arcs of a crew.
pub(in crate::reports) fn arcs(crew: &str, arcs: &[ArcRowed]) -> Drawing {
    let scale = Scale::of(arcs);
    let low = TOP + ROW * arcs.len() as f64;
    let height = low + 8.0;
    let end = |pick: fn(&ArcRowed) -> &Worked| {
        let all: Vec<f64> =
            arcs.iter().filter_map(|arc| Some(pick(arc).as_ref().ok()?.value())).collect();
        (all.len() > 1).then(|| all.iter().sum::<f64>() / all.len() as f64)
    };
    let means = [end(|arc| &arc.catch), end(|arc| &arc.finish)];
    let body = html! {
        (text("t2", (1.0, 3.6), Stand::Start, "Arcs rowed, as measured, deg"))
        (line("thin", (scale.x(0.0), TOP - 2.0), (scale.x(0.0), low)))
        (text("inquiet", (scale.x(0.0), TOP - 3.0), Stand::Middle, "square off"))
        @for mean in means.into_iter().flatten() {
            (line("mean thin dot", (scale.x(mean), TOP - 2.0), (scale.x(mean), low)))
            (text("inquiet", (scale.x(mean), low + 3.2), Stand::Middle, &format!("mean {} deg", whole(mean))))
        }
        (text("inquiet", (LEFT, low + 6.6), Stand::Start, "catch"))
        (text("inquiet", (RIGHT, low + 6.6), Stand::End, "finish"))
        @for (at, arc) in arcs.iter().enumerate() { (row(arc, &scale, TOP + ROW * at as f64 + ROW / 2.0)) }
    };
    let said = |arc: &ArcRowed| {
        let (catch, finish) = (value(&arc.catch, 0, "deg"), value(&arc.finish, 0, "deg"));
        format!("{}: catch {catch}, finish {finish}", arc.called)
    };
    let each: Vec<String> = arcs.iter().map(said).collect();
    Drawing {
        title: format!("Arcs of the crew {}", cut(crew, 40)),
        about: format!("Abaft square is below zero. {}.", each.join("; ")),
        size: (WIDE, height),
        one_to: None,
        body,
    }
}

fn whole(theta: f64) -> String {
    crate::reports::figures_text::rounded(theta.abs(), 1)
}

fn row(arc: &ArcRowed, scale: &Scale, y: f64) -> Markup {
    let name = text_within("", (1.0, y + 0.85), Stand::Start, &arc.called, 11);
    let (Ok(catch), Ok(finish)) = (&arc.catch, &arc.finish) else {
        let missing = match (&arc.catch, &arc.finish) {
            (Err(_), Err(_)) => "arc not measured",
            (Err(_), _) => "catch not measured",
            _ => "finish not measured",
        };
        return html! { (name) (text("inquiet halo", (LEFT + 1.0, y + 0.85), Stand::Start, missing)) };
    };
    // Within the arc, where it is long enough for both numbers with how good they are.
    let is_long = scale.x(finish.value()) - scale.x(catch.value()) > INSIDE;
    let ends = match is_long {
        true => [(catch, 0.0, Stand::Start), (finish, 0.0, Stand::End)],
        false => [(catch, -0.8, Stand::End), (finish, 0.8, Stand::Start)],
    };
    html! {
        (name)
        (line("arc-rowed blue heavy", (scale.x(catch.value()), y), (scale.x(finish.value()), y)))
        @for (end, aside, stand) in ends {
            @let (value, good) = (end.value(), end.expanded());
            (measure("good-to thin", (scale.x(value - good), y), (scale.x(value + good), y)))
            @let said = if is_long { format!("{} ± {good:.1}", whole(value)) } else { whole(value) };
            (text("halo", (scale.x(value) + aside, y - 1.6), stand, &said))
        }
    }
}
