//! A rowlock along the shaft and across it, and the plate of its pin.

use maud::html;

use super::*;

const PLATE: &[Arrow] = &[
    Arrow {
        fields: &["boat/seats/pin/plate/along"],
        lines: &[((11.0, 27.4), (31.0, 27.4))],
        says: "plate along",
        at: (21.0, 30.8),
        stand: Stand::Middle,
    },
    Arrow {
        fields: &["boat/seats/pin/plate/across"],
        lines: &[((36.4, 9.6), (36.4, 22.4))],
        says: "across",
        at: (37.6, 16.8),
        stand: Stand::Start,
    },
    Arrow {
        fields: &["boat/seats/pin/thick"],
        lines: &[((18.0, 16.0), (24.0, 16.0))],
        says: "thick",
        at: (25.0, 16.8),
        stand: Stand::Start,
    },
];

/// The plate under a pin seen from above.
pub(super) fn plate() -> Scene {
    let bolts = [(11.0, 9.6), (31.0, 9.6), (11.0, 22.4), (31.0, 22.4)];
    let still = html! {
        (rect("tint", (8.0, 7.0), (26.0, 18.0))) (rect("", (8.0, 7.0), (26.0, 18.0)))
        @for bolt in bolts { (circle("paper", bolt, 1.3)) }
        (circle("paper wide", (21.0, 16.0), 3.0))
        @for bolt in [bolts[2], bolts[3]] { (line("hair", bolt, (bolt.0, 28.4))) }
        @for bolt in [bolts[1], bolts[3]] { (line("hair", bolt, (37.4, bolt.1))) }
        (aside((1.0, 30.8), Stand::Start, "← bow"))
    };
    Scene { title: "Pin and plate, from above", still, arrows: PLATE }
}

const ALONG_SHAFT: &[Arrow] = &[
    Arrow {
        fields: &["boat/seats/rowlock/gap"],
        lines: &[((14.0, 17.5), (32.0, 17.5))],
        says: "gap",
        at: (23.0, 16.2),
        stand: Stand::Middle,
    },
    Arrow {
        fields: &["boat/seats/rowlock/after-tip"],
        lines: &[((32.0, 7.6), (35.0, 7.6))],
        says: "after tip",
        at: (36.0, 8.6),
        stand: Stand::Start,
    },
    Arrow {
        fields: &["boat/seats/rowlock/horn"],
        lines: &[((10.0, 11.0), (10.0, 26.0))],
        says: "horn",
        at: (8.8, 19.4),
        stand: Stand::End,
    },
    Arrow {
        fields: &["boat/seats/oar-bed"],
        lines: &[((18.6, 28.4), (27.0, 28.4))],
        says: "mark in bed",
        at: (28.4, 29.4),
        stand: Stand::Start,
    },
];

/// A rowlock seen along the shaft.
pub(super) fn along_shaft() -> Scene {
    let still = html! {
        (circle("tint", (22.8, 17.5), 8.5)) (circle("thin", (22.8, 17.5), 8.5))
        (through("heavy", &[(14.0, 11.0), (14.0, 26.0), (32.0, 26.0), (32.0, 17.5), (35.0, 9.4)]))
        (line("hair", (10.0, 11.0), (14.0, 11.0))) (line("hair", (10.0, 26.0), (14.0, 26.0)))
        (line("hair", (32.0, 17.5), (32.0, 6.6))) (line("hair", (35.0, 9.4), (35.0, 6.6)))
        (line("hair", (18.6, 24.8), (18.6, 29.4))) (line("hair", (27.0, 24.8), (27.0, 29.4)))
        (aside((1.0, 30.8), Stand::Start, "← bow")) (aside((34.0, 18.4), Stand::Start, "after horn"))
    };
    Scene { title: "Rowlock, along the shaft", still, arrows: ALONG_SHAFT }
}

const FROM_ASTERN: &[Arrow] = &[
    Arrow {
        fields: &["boat/seats/rowlock/long"],
        lines: &[((18.0, 7.4), (28.0, 7.4))],
        says: "long",
        at: (29.4, 8.2),
        stand: Stand::Start,
    },
    Arrow {
        fields: &["boat/seats/collar-to-pin"],
        lines: &[((13.0, 28.0), (23.0, 28.0))],
        says: "collar to pin",
        at: (24.4, 28.8),
        stand: Stand::Start,
    },
];

/// A rowlock and the shaft in it seen across.
pub(super) fn from_astern() -> Scene {
    let still = html! {
        (rect("tint", (2.0, 13.4), (43.0, 6.0))) (rect("", (2.0, 13.4), (43.0, 6.0)))
        (rect("paper", (10.0, 11.4), (3.0, 10.0)))
        (rect("paper wide", (18.0, 9.0), (10.0, 12.4)))
        (line("heavy", (23.0, 21.4), (23.0, 25.4))) (line("hair", (23.0, 25.4), (23.0, 29.0)))
        (line("hair", (13.0, 21.4), (13.0, 29.0)))
        (aside((7.6, 24.8), Stand::Start, "collar"))
        (aside((1.0, 11.4), Stand::Start, "handle")) (aside((45.0, 11.4), Stand::End, "blade"))
        (aside((29.6, 24.0), Stand::Start, "horn over shaft"))
    };
    Scene { title: "Rowlock, across the shaft", still, arrows: FROM_ASTERN }
}
