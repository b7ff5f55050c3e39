//! Where an oar is laid, and a blade beside the bob.

use maud::html;

use super::*;

const ATTITUDES: &[Arrow] = &[
    Arrow {
        fields: &["boat/seats/lifts-out/square"],
        lines: &[((23.0, 24.0), (23.0, 8.0))],
        says: "square off",
        at: (24.4, 8.4),
        stand: Stand::Start,
    },
    Arrow {
        fields: &["boat/seats/lifts-out/catch"],
        lines: &[((23.0, 24.0), (10.8, 13.7))],
        says: "catch",
        at: (9.4, 13.4),
        stand: Stand::End,
    },
    Arrow {
        fields: &["boat/seats/lifts-out/finish"],
        lines: &[((23.0, 24.0), (32.2, 10.9))],
        says: "finish",
        at: (33.4, 12.4),
        stand: Stand::Start,
    },
    Arrow {
        fields: &["boat/seats/lifts-out/along"],
        lines: &[((23.0, 24.0), (39.0, 24.0))],
        says: "along the boat",
        at: (45.0, 22.4),
        stand: Stand::End,
    },
];

/// An oar at each turn, seen from above.
pub(super) fn attitudes() -> Scene {
    let still = html! {
        (line("thin dash", (2.0, 28.6), (45.0, 28.6))) (aside((45.0, 31.6), Stand::End, "string"))
        (circle("paper wide", (23.0, 24.0), 1.2))
        (aside((1.0, 31.6), Stand::Start, "← bow"))
        (aside((1.0, 27.4), Stand::Start, "lift by hand"))
    };
    Scene { title: "Oar laid, from above", still, arrows: ATTITUDES }
}

const CATCH: (At, At) = ((39.0, 14.0), (34.6, 10.3));
const SQUARE: (At, At) = ((39.0, 14.0), (39.0, 8.2));
const FINISH: (At, At) = ((39.0, 14.0), (42.3, 9.3));
const OFFSET: (At, At) = ((13.0, 24.0), (21.0, 24.0));

const PITCH: &[Arrow] = &[
    Arrow {
        fields: &["boat/seats/pitch/catch"],
        lines: &[OFFSET, CATCH],
        says: "catch",
        at: (33.8, 11.4),
        stand: Stand::End,
    },
    Arrow {
        fields: &["boat/seats/pitch/square"],
        lines: &[OFFSET, SQUARE],
        says: "square off",
        at: (39.0, 7.0),
        stand: Stand::Middle,
    },
    Arrow {
        fields: &["boat/seats/pitch/finish"],
        lines: &[OFFSET, FINISH],
        says: "finish",
        at: (45.0, 16.6),
        stand: Stand::End,
    },
    Arrow {
        fields: &["oar-set/oars/blade/at-mark"],
        lines: &[((10.4, 22.7), (18.4, 6.7))],
        says: "at mark",
        at: (10.8, 13.0),
        stand: Stand::End,
    },
];

/// A blade seen along its shaft, the bob over its top edge.
pub(super) fn pitch() -> Scene {
    let still = html! {
        (line("heavy", (13.0, 24.0), (21.0, 8.0)))
        (line("hair", (10.0, 22.5), (13.0, 24.0))) (line("hair", (18.0, 6.5), (21.0, 8.0)))
        (line("thin", (21.0, 8.0), (21.0, 27.4))) (bob((21.0, 27.0)))
        (aside((22.6, 25.0), Stand::Start, "offset: edge to line"))
        (aside((22.6, 20.4), Stand::Start, "driving side"))
        (aside((1.0, 30.8), Stand::Start, "← bow")) (aside((45.0, 30.8), Stand::End, "stern →"))
        (circle("paper", (39.0, 14.0), 0.9))
    };
    Scene { title: "Pitch, at the pitch mark", still, arrows: PITCH }
}

const OWN_PITCH: &[Arrow] = &[Arrow {
    fields: &["oar-set/oars/pitch"],
    lines: &[((14.9, 28.0), (18.0, 28.0))],
    says: "own pitch",
    at: (20.0, 29.0),
    stand: Stand::Start,
}];

/// A blade against the flat of its own shaft.
pub(super) fn own_pitch() -> Scene {
    let still = html! {
        (circle("tint", (23.0, 17.0), 6.4)) (circle("thin", (23.0, 17.0), 6.4))
        (line("wide", (18.0, 13.0), (18.0, 21.0))) (line("thin dash", (18.0, 7.0), (18.0, 29.0)))
        (line("heavy", (21.2, 6.0), (14.9, 27.4)))
        (aside((30.8, 17.8), Stand::Start, "shaft"))
        (aside((16.6, 10.0), Stand::End, "flat")) (aside((22.6, 8.0), Stand::Start, "blade"))
    };
    Scene { title: "Blade against the flat", still, arrows: OWN_PITCH }
}
