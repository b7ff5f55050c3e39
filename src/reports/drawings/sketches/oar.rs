//! An oar, its shaft, and how it bends.

use maud::html;

use super::*;

const WHOLE: &[Arrow] = &[
    Arrow {
        fields: &["oar-set/oars/length"],
        lines: &[((3.0, 8.4), (43.0, 8.4))],
        says: "length",
        at: (25.0, 7.4),
        stand: Stand::Middle,
    },
    Arrow {
        fields: &["oar-set/oars/inboard"],
        lines: &[((3.0, 12.0), (15.0, 12.0))],
        says: "inboard",
        at: (16.4, 12.8),
        stand: Stand::Start,
    },
    Arrow {
        fields: &["oar-set/oars/grip"],
        lines: &[((3.0, 21.0), (6.4, 21.0))],
        says: "grip",
        at: (3.0, 24.2),
        stand: Stand::Start,
    },
    Arrow {
        fields: &["oar-set/oars/blade/length"],
        lines: &[((31.0, 22.6), (43.0, 22.6))],
        says: "blade length",
        at: (30.0, 23.4),
        stand: Stand::End,
    },
    Arrow {
        fields: &["oar-set/oars/blade/width"],
        lines: &[((35.4, 13.0), (35.4, 20.0))],
        says: "width",
        at: (36.2, 17.4),
        stand: Stand::Start,
    },
    Arrow {
        fields: &["oar-set/pitch-mark"],
        lines: &[((40.0, 26.6), (43.0, 26.6))],
        says: "pitch mark",
        at: (39.0, 27.4),
        stand: Stand::End,
    },
];

/// An oar lying flat.
pub(super) fn whole() -> Scene {
    let blade =
        [(31.0, 16.2), (34.0, 13.0), (43.0, 13.0), (43.0, 20.0), (34.0, 20.0), (31.0, 16.8)];
    let still = html! {
        (line("heavy", (3.0, 16.5), (31.0, 16.5))) (area("paper", &blade))
        (rect("full", (13.6, 14.6), (1.4, 3.8)))
        (line("thin dash", (40.0, 13.0), (40.0, 27.6))) (line("hair", (43.0, 7.4), (43.0, 27.6)))
        (line("hair", (3.0, 7.4), (3.0, 22.0))) (line("hair", (15.0, 11.0), (15.0, 14.6)))
        (line("hair", (31.0, 17.0), (31.0, 23.6)))
        (circle("paper", (6.4, 16.5), 0.9)) (line("hair", (6.4, 17.4), (6.4, 22.0)))
        (aside((15.6, 20.8), Stand::Middle, "collar"))
    };
    Scene { title: "Oar", still, arrows: WHOLE }
}

const SHAFT: &[Arrow] = &[
    Arrow {
        fields: &["oar-set/oars/shaft/widest"],
        lines: &[((4.0, 26.4), (22.0, 26.4))],
        says: "widest",
        at: (13.0, 29.8),
        stand: Stand::Middle,
    },
    Arrow {
        fields: &["oar-set/oars/shaft/narrowest"],
        lines: &[((25.0, 9.4), (25.0, 22.6))],
        says: "narrowest",
        at: (23.4, 7.8),
        stand: Stand::Middle,
    },
    Arrow {
        fields: &["oar-set/oars/shaft/round"],
        lines: &[((30.0, 26.4), (44.0, 26.4))],
        says: "round",
        at: (37.0, 29.8),
        stand: Stand::Middle,
    },
];

/// Sections of a shaft with a flat and of a round one, leather wet.
pub(super) fn shaft() -> Scene {
    let still = html! {
        ellipse class="tint" cx="13" cy="16" rx="9" ry="6.6" {}
        ellipse cx="13" cy="16" rx="9" ry="6.6" {}
        (circle("tint", (37.0, 16.0), 7.0)) (circle("", (37.0, 16.0), 7.0))
        @for x in [4.0, 22.0, 30.0, 44.0] { (line("hair", (x, 16.0), (x, 27.4))) }
        @for y in [9.4, 22.6] { (line("hair", (13.0, y), (26.0, y))) }
        (aside((13.0, 16.8), Stand::Middle, "leather wet"))
        (aside((37.0, 16.8), Stand::Middle, "or round"))
    };
    Scene { title: "Shaft, callipers once round", still, arrows: SHAFT }
}

const FLEX: &[Arrow] = &[
    Arrow {
        fields: &["oar-set/oars/flex/at"],
        lines: &[((13.0, 8.4), (37.0, 8.4))],
        says: "at",
        at: (25.0, 7.4),
        stand: Stand::Middle,
    },
    Arrow {
        fields: &["oar-set/oars/flex/drop"],
        lines: &[((37.0, 13.0), (37.0, 18.6))],
        says: "drop",
        at: (38.6, 16.4),
        stand: Stand::Start,
    },
    Arrow {
        fields: &["oar-set/oars/flex/load-kg"],
        lines: &[((34.6, 27.6), (39.4, 27.6))],
        says: "weight, kg",
        at: (33.4, 27.6),
        stand: Stand::End,
    },
];

/// An oar held at handle and collar, a weight on it.
pub(super) fn flex() -> Scene {
    let bent = [(3.0, 13.0), (13.0, 13.0), (21.0, 13.7), (29.0, 15.6), (37.0, 18.6), (43.0, 21.2)];
    let still = html! {
        (line("thin dash", (3.0, 13.0), (43.0, 13.0))) (through("heavy", &bent))
        (area("paper", &[(3.0, 12.0), (1.8, 9.6), (4.2, 9.6)]))
        (area("paper", &[(13.0, 14.0), (11.8, 16.4), (14.2, 16.4)]))
        (line("hair", (13.0, 7.4), (13.0, 12.0))) (line("hair", (37.0, 7.4), (37.0, 13.0)))
        (line("", (37.0, 18.6), (37.0, 22.0))) (rect("tint", (34.6, 22.0), (4.8, 4.4)))
        (rect("", (34.6, 22.0), (4.8, 4.4)))
        (aside((1.0, 19.6), Stand::Start, "handle and collar held"))
    };
    Scene { title: "Flex, from the side", still, arrows: FLEX }
}
