//! A rower on the scales and against the wall, and the arc rowed.

use maud::html;

use super::*;

const STANDING: &[Arrow] = &[
    Arrow {
        fields: &["crew/rowers/stature"],
        lines: &[((11.0, 6.6), (11.0, 28.0))],
        says: "stature",
        at: (9.6, 18.0),
        stand: Stand::End,
    },
    Arrow {
        fields: &["crew/rowers/leg"],
        lines: &[((27.0, 18.4), (27.0, 28.0))],
        says: "leg, inside",
        at: (28.4, 24.0),
        stand: Stand::Start,
    },
    Arrow {
        fields: &["crew/rowers/weight", "crew/sweep/weight"],
        lines: &[((15.6, 30.3), (24.4, 30.3))],
        says: "weight",
        at: (25.8, 31.0),
        stand: Stand::Start,
    },
];

/// A rower standing barefoot.
pub(super) fn standing() -> Scene {
    let legs = [(18.0, 28.0), (20.0, 18.4), (22.0, 28.0)];
    let still = html! {
        (circle("", (20.0, 8.4), 1.8)) (line("wide", (20.0, 10.2), (20.0, 18.4)))
        (through("wide", &legs)) (through("", &[(16.6, 17.0), (20.0, 11.4), (23.4, 17.0)]))
        (rect("paper", (15.6, 28.0), (8.8, 1.6)))
        (line("hair", (10.0, 6.6), (20.0, 6.6))) (line("hair", (10.0, 28.0), (28.0, 28.0)))
        (line("hair", (20.0, 18.4), (28.0, 18.4)))
        (aside((28.4, 11.0), Stand::Start, "barefoot"))
    };
    Scene { title: "Rower", still, arrows: STANDING }
}

const ARC: &[Arrow] = &[
    Arrow {
        fields: &["crew/rowers/arc/catch", "boat/rigged/pitch-angles/catch"],
        lines: &[((23.0, 24.0), (10.8, 13.7))],
        says: "catch, deg",
        at: (1.0, 11.4),
        stand: Stand::Start,
    },
    Arrow {
        fields: &["crew/rowers/arc/finish", "boat/rigged/pitch-angles/finish"],
        lines: &[((23.0, 24.0), (32.2, 10.9))],
        says: "finish, deg",
        at: (45.0, 9.4),
        stand: Stand::End,
    },
];

/// The angles of an oar from square off, seen from above.
pub(super) fn arc() -> Scene {
    let on = |deg: f64| {
        let angle = deg.to_radians();
        (23.0 + 9.0 * angle.sin(), 24.0 - 9.0 * angle.cos())
    };
    let catch: Vec<At> = (0..=10).map(|at| on(-5.0 * f64::from(at))).collect();
    let finish: Vec<At> = (0..=10).map(|at| on(3.5 * f64::from(at))).collect();
    let still = html! {
        (line("thin dash", (2.0, 28.6), (45.0, 28.6))) (aside((45.0, 31.6), Stand::End, "string"))
        (line("thin dash", (23.0, 24.0), (23.0, 7.4))) (aside((23.0, 6.6), Stand::Middle, "square off"))
        (through("thin", &catch)) (through("thin", &finish))
        (circle("paper wide", (23.0, 24.0), 1.2)) (aside((1.0, 31.6), Stand::Start, "← bow"))
    };
    Scene { title: "Oar angles, from above", still, arrows: ARC }
}
