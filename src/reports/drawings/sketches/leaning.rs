//! A pin with a tube on it and a bob beside it.

use maud::Markup;
use maud::html;

use super::*;

const ARROWS: &[Arrow] = &[
    Arrow {
        fields: &["boat/seats/pin/lean/aft"],
        lines: &[((9.6, 9.0), (13.0, 9.0)), ((6.5, 24.0), (13.0, 24.0))],
        says: "aft: low − high",
        at: (10.0, 31.0),
        stand: Stand::Middle,
    },
    Arrow {
        fields: &["boat/seats/pin/lean/out"],
        lines: &[((32.6, 9.0), (36.0, 9.0)), ((29.5, 24.0), (36.0, 24.0))],
        says: "out: low − high",
        at: (33.0, 31.0),
        stand: Stand::Middle,
    },
    Arrow {
        fields: &["boat/rigged/pin-gauge"],
        lines: &[((18.4, 9.0), (18.4, 24.0))],
        says: "gauge",
        at: (19.4, 17.2),
        stand: Stand::Start,
    },
];

pub(super) fn leaning() -> Scene {
    let still = html! {
        (view(6.0)) (view(29.0))
        (line("hair", (13.0, 9.0), (19.4, 9.0))) (line("hair", (13.0, 24.0), (19.4, 24.0)))
        (aside((14.8, 28.0), Stand::Start, "stern →")) (aside((37.6, 28.0), Stand::Start, "out →"))
    };
    Scene { title: "Lean of a pin, by the bob", still, arrows: ARROWS }
}

/// A tube whose head leans to the line of the bob.
fn view(foot: f64) -> Markup {
    html! {
        (line("wide", (foot - 4.0, 26.0), (foot + 5.0, 26.0)))
        (line("heavy", (foot, 26.0), (foot + 3.9, 7.0)))
        (line("thin", (foot + 7.0, 6.0), (foot + 7.0, 25.6))) (bob((foot + 7.0, 25.4)))
    }
}
