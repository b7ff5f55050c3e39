//! What is taken across and along the string line.

use maud::html;

use super::*;

const ACROSS: &[Arrow] = &[
    Arrow {
        fields: &["boat/seats/pin/spread"],
        lines: &[((21.0, 7.6), (36.0, 7.6))],
        says: "spread",
        at: (28.5, 6.6),
        stand: Stand::Middle,
    },
    Arrow {
        fields: &["boat/seats/seat-mark"],
        lines: &[((17.0, 25.8), (21.0, 25.8))],
        says: "seat mark",
        at: (22.4, 26.6),
        stand: Stand::Start,
    },
    Arrow {
        fields: &["boat/seats/handle-past-mark"],
        lines: &[((9.0, 29.4), (17.0, 29.4))],
        says: "handle past mark",
        at: (18.4, 30.2),
        stand: Stand::Start,
    },
    Arrow {
        fields: &["boat/seats/rowlock/above-seat"],
        lines: &[((41.5, 13.0), (41.5, 21.0))],
        says: "above seat",
        at: (45.2, 23.6),
        stand: Stand::End,
    },
];

/// A seat, its pin and its oar seen to the bow.
pub(super) fn across() -> Scene {
    let still = html! {
        (line("thin dash", (21.0, 6.5), (21.0, 27.0))) (aside((20.2, 8.4), Stand::End, "string"))
        (line("wide", (6.0, 21.0), (33.0, 21.0))) (line("hair", (33.0, 21.0), (44.5, 21.0)))
        (line("heavy", (36.0, 13.0), (36.0, 19.5))) (line("hair", (36.0, 6.8), (36.0, 13.0)))
        (through("", &[(34.6, 10.6), (34.6, 13.0), (44.5, 13.0)]))
        (line("wide", (9.0, 14.4), (45.0, 11.4)))
        (line("thin", (9.0, 14.4), (9.0, 27.6))) (bob((9.0, 27.0)))
        (line("wide blue", (17.0, 19.6), (17.0, 22.4))) (line("hair", (17.0, 22.4), (17.0, 30.2)))
        (aside((7.2, 13.0), Stand::Start, "handle end"))
    };
    Scene { title: "A starboard seat, to the bow", still, arrows: ACROSS }
}

const ALONG: &[Arrow] = &[
    Arrow {
        fields: &["boat/seats/chock-to-pin"],
        lines: &[((10.0, 17.0), (25.0, 17.0))],
        says: "chock to pin",
        at: (17.5, 20.2),
        stand: Stand::Middle,
    },
    Arrow {
        fields: &["boat/seats/pin/along"],
        lines: &[((25.0, 28.0), (43.0, 28.0))],
        says: "along",
        at: (34.0, 31.2),
        stand: Stand::Middle,
    },
];

/// Chock, pin and stern mark seen from above.
pub(super) fn along() -> Scene {
    let still = html! {
        (line("thin dash", (2.0, 11.0), (45.0, 11.0))) (aside((30.0, 10.0), Stand::Start, "string"))
        (line("heavy", (9.4, 8.0), (9.4, 14.0))) (aside((9.4, 7.0), Stand::Middle, "back chock"))
        (line("hair", (10.0, 14.0), (10.0, 18.4)))
        (circle("blue paper wide", (25.0, 24.0), 1.2)) (aside((23.0, 25.0), Stand::End, "pin"))
        (line("hair", (25.0, 11.0), (25.0, 29.4)))
        (line("wide", (43.0, 9.0), (43.0, 13.0))) (line("hair", (43.0, 13.0), (43.0, 29.4)))
        (aside((42.0, 15.8), Stand::End, "stern mark"))
        (aside((1.0, 31.2), Stand::Start, "← bow"))
    };
    Scene { title: "Along the string, from above", still, arrows: ALONG }
}

const FOOT_HOLES: &[Arrow] = &[
    Arrow {
        fields: &["boat/foot-holes/first"],
        lines: &[((9.0, 26.0), (28.0, 26.0))],
        says: "first",
        at: (18.5, 29.2),
        stand: Stand::Middle,
    },
    Arrow {
        fields: &["boat/foot-holes/apart"],
        lines: &[((28.0, 14.6), (32.5, 14.6))],
        says: "apart",
        at: (30.2, 13.2),
        stand: Stand::Middle,
    },
];

/// The foot holes seen from the side.
pub(super) fn foot_holes() -> Scene {
    let hole = |at: u8| (28.0 + 4.5 * f64::from(at), 22.0);
    let still = html! {
        (line("heavy", (8.4, 8.0), (8.4, 14.0))) (aside((10.0, 10.4), Stand::Start, "back chock"))
        (line("wide", (4.0, 14.6), (22.0, 14.6))) (aside((12.0, 17.8), Stand::Start, "seat"))
        (line("hair", (9.0, 14.6), (9.0, 27.4)))
        (line("", (4.0, 24.0), (45.0, 24.0)))
        @for at in 0..4 { (circle("", hole(at), 0.9)) (line("hair", (hole(at).0, 14.0), (hole(at).0, 21.0))) }
        (line("wide", (28.0, 21.0), (25.6, 15.0))) (line("hair", (28.0, 22.0), (28.0, 27.4)))
        (aside((28.6, 29.2), Stand::Start, "hole 1, 2, 3, 4"))
    };
    Scene { title: "Foot holes, from port", still, arrows: FOOT_HOLES }
}
