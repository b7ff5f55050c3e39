//! How each value is measured: every sketch with its arrows, and the sentences that belong to it.
//! Knows no boat.

use maud::Markup;
use maud::html;

use super::frame::Frame;
use crate::reports::drawings::sketch_book;
use crate::reports::how_to_measure::UNLESS_SAID;
use crate::reports::html::words;

pub(super) fn page() -> Frame {
    let body = html! {
        p { (UNLESS_SAID) }
        div class="how" {
            @for (at, (drawing, sentences)) in sketch_book().iter().enumerate() {
                section class="way" {
                    figure { (drawing.inline(&format!("sketch-{at}"))) }
                    (said(sentences))
                }
            }
        }
    };
    let below = "Blue: what is measured. Not to scale.".to_owned();
    Frame { heading: "How each value is measured".to_owned(), below, body, of_rig: false }
}

fn said(sentences: &[(&'static str, String)]) -> Markup {
    html! {
        dl { @for (called, sentence) in sentences {
            dt { (called) } dd { (words(sentence)) }
        } }
    }
}
