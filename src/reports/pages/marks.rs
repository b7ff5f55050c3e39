//! Marks among words: a shape, a letter and a word for each level, never colour alone.

use maud::Markup;
use maud::html;

use crate::reports::verdict::Verdict;
use crate::reports::verdict::with_letter;
use crate::rules::Level;

/// Returns the shape of a level, as the drawings have it.
pub(super) const fn shape(level: Level) -> &'static str {
    match level {
        Level::Danger => "▲",
        Level::Fault => "■",
        Level::Unsure => "◇",
        Level::Note => "○",
    }
}

/// Returns a level as shape, letter and word.
pub(super) fn level(level: Level) -> Markup {
    html! {
        b class={ "lv lv-" (level.word()) } {
            span aria-hidden="true" { (shape(level)) } " " (with_letter(level))
        }
    }
}

/// Returns a verdict; one that nobody looked for is said so.
pub(super) fn verdict(verdict: Verdict) -> Markup {
    match verdict {
        Verdict::Found(found) => level(found),
        Verdict::NotChecked => html! { span class="quiet" { "not checked" } },
        other => html! { span class="quiet" { (other.words()) } },
    }
}
