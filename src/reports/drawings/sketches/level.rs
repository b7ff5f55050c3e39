//! The level on its mark: from the side, and from the end.

use maud::html;

use super::*;

const ARROWS: &[Arrow] = &[
    Arrow {
        fields: &["boat/rigged/level/trim"],
        lines: &[((3.6, 19.0), (3.6, 8.5))],
        says: "trim: bow up +",
        at: (1.0, 31.0),
        stand: Stand::Start,
    },
    Arrow {
        fields: &["boat/rigged/level/roll"],
        lines: &[((30.4, 10.0), (30.4, 21.0))],
        says: "roll: port down +",
        at: (45.0, 31.0),
        stand: Stand::End,
    },
    Arrow {
        fields: &["boat/level-mark/where"],
        lines: &[((12.4, 16.6), (20.4, 16.6))],
        says: "level mark",
        at: (16.4, 19.6),
        stand: Stand::Middle,
    },
];

pub(super) fn level() -> Scene {
    let hull = [(4.0, 15.0), (27.0, 15.0), (25.0, 22.0), (7.0, 22.0)];
    let end = [(32.4, 15.0), (44.6, 15.0), (41.8, 22.0), (35.2, 22.0)];
    let still = html! {
        (area("hull", &hull)) (area("hull", &end))
        (rect("paper", (12.4, 12.6), (8.0, 2.4))) (circle("blue", (16.4, 13.8), 0.7))
        (rect("paper", (34.5, 12.6), (8.0, 2.4))) (circle("blue", (38.5, 13.8), 0.7))
        (aside((4.4, 25.4), Stand::Start, "bow")) (aside((27.0, 25.4), Stand::End, "stern"))
        (aside((32.4, 25.4), Stand::Start, "port"))
        (aside((38.5, 9.6), Stand::Middle, "to the bow"))
        (aside((16.4, 9.6), Stand::Middle, "then end for end"))
    };
    Scene { title: "Level on its mark", still, arrows: ARROWS }
}
