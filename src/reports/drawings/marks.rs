//! What is outside, marked by a shape and a word, never by colour alone.

use maud::Markup;
use maud::html;

use super::paper::At;
use super::paper::Stand;
use super::paper::area;
use super::paper::circle;
use super::paper::rect;
use super::paper::text_within;
use crate::model::Name;
use crate::reports::verdict::with_letter;
use crate::rules::Finding;
use crate::rules::Level;

/// How many characters the words of a mark may take.
const ROOM: usize = 34;

/// The room that a mark takes with its letter and its word, in millimetres of paper.
const SHORT: f64 = 12.5;

/// What was found of one thing that is drawn.
pub(super) struct Mark {
    pub(super) level: Level,
    /// What it is found of, as names below the thing's own.
    pub(super) of: Vec<String>,
}

/// Returns the worst that was found within a name and not waived, with every value it is found of;
/// nothing where nothing was.
pub(super) fn mark(findings: &[&Finding], within: &Name) -> Option<Mark> {
    let own = findings
        .iter()
        .filter(|finding| finding.waived.is_none() && finding.name.is_within(within.as_str()));
    let own: Vec<&&Finding> = own.filter(|finding| finding.level > Level::Note).collect();
    let level = own.iter().map(|finding| finding.level).max()?;
    let below = |finding: &&&Finding| {
        let below = finding.name.as_str().strip_prefix(within.as_str()).unwrap_or_default();
        below.trim_start_matches('/').replace('/', " ")
    };
    let mut of: Vec<String> =
        own.iter().filter(|finding| finding.level == level).map(below).collect();
    of.dedup();
    Some(Mark { level, of })
}

impl Mark {
    /// Returns it in words: "F fault: pin lean out".
    pub(super) fn words(&self) -> String {
        let of: Vec<&str> =
            self.of.iter().map(String::as_str).filter(|of| !of.is_empty()).collect();
        match of.as_slice() {
            [] => with_letter(self.level),
            of => format!("{}: {}", with_letter(self.level), of.join(", ")),
        }
    }

    /// Returns the mark beside its letter, and its word where there is room: of what it is found is
    /// not said.
    pub(super) fn drawn_short(&self, at: At, room: f64) -> Markup {
        let words = with_letter(self.level);
        let most = if room > SHORT { words.len() } else { 1 };
        let words: String = words.chars().take(most).collect();
        self.with(&words, at)
    }

    /// Returns the mark at the start of its words.
    pub(super) fn drawn(&self, at: At) -> Markup {
        self.with(&self.words(), at)
    }

    fn with(&self, words: &str, at: At) -> Markup {
        let words = text_within("inorange halo", (at.0 + 2.2, at.1), Stand::Start, words, ROOM);
        html! { g class="mark" { (shape(self.level, (at.0, at.1 - 0.85))) (words) } }
    }
}

/// Returns the shape of a level: a full triangle for danger, a full square for a fault, a hollow
/// diamond for what is unsure, a ring for a note.
pub(super) fn shape(level: Level, (x, y): At) -> Markup {
    let r = 1.1;
    match level {
        Level::Danger => {
            let (low, side) = (y + r * 0.85, r * 1.2);
            area("fullorange", &[(x, y - r * 1.1), (x + side, low), (x - side, low)])
        }
        Level::Fault => rect("fullorange", (x - 0.85, y - 0.85), (1.7, 1.7)),
        Level::Unsure => area("orange", &[(x, y - r), (x + r, y), (x, y + r), (x - r, y)]),
        Level::Note => circle("orange", (x, y), 0.85),
    }
}
