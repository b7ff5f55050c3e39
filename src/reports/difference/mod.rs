//! What changed between two states of a book, what follows from it, and what became of the
//! findings: as text, as JSON and as Markdown. Compares nothing but worked-out values as shown.

mod called;
mod consequences;
mod folding;
mod json;
mod markdown;
mod spoken;
mod text;
mod wording;

use std::collections::HashSet;

pub use json::diff_json;
pub use markdown::diff_markdown;
pub(super) use spoken::plain;
pub use text::diff_text;
pub(super) use text::of_change;

use self::consequences::Consequence;
use crate::history::Change;
use crate::history::ChangeKind;
use crate::model::Book;
use crate::model::Name;
use crate::rules;
use crate::rules::Checked;
use crate::rules::Comparison;
use crate::rules::Finding;
use crate::rules::Standing;
use crate::units::Date;

/// Two states of a book and all that is not the same in them.
#[derive(Clone, Copy, Debug)]
pub struct Difference<'r> {
    /// What the state before is called.
    pub from: &'r str,
    /// What the state after is called.
    pub to: &'r str,
    /// The book before.
    pub old: &'r Book,
    /// The book after.
    pub new: &'r Book,
    /// What changed.
    pub changes: &'r [Change],
    /// What was found after.
    pub after: &'r Checked,
    /// What became of the findings.
    pub since: &'r Comparison<'r>,
    /// The day that was taken for today, for both.
    pub as_of: Date,
    /// The names that were asked for; all, where there are none.
    pub only: &'r [String],
}

impl<'r> Difference<'r> {
    /// Returns whether nothing is told: nothing changed, and all could be read.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.changes().next().is_none()
            && self.consequences().is_empty()
            && self.standing(Standing::New).next().is_none()
            && self.standing(Standing::Worse).next().is_none()
            && self.cured().next().is_none()
    }

    fn asked(&self, name: &Name) -> bool {
        self.only.is_empty() || self.only.iter().any(|whole| name.is_within(whole))
    }

    fn changes(&self) -> impl Iterator<Item = &'r Change> + use<'r, '_> {
        self.changes.iter().filter(|change| self.asked(&change.name))
    }

    fn standing(&self, asked: Standing) -> impl Iterator<Item = &'r Finding> + use<'r, '_> {
        let all = self.after.findings.iter().zip(&self.since.standing);
        let those = all.filter(move |(_, standing)| **standing == asked);
        those.map(|(finding, _)| finding).filter(|finding| self.asked(&finding.name))
    }

    fn cured(&self) -> impl Iterator<Item = &'r Finding> + use<'r, '_> {
        let is_gone = |finding: &Finding| rules::is_gone(finding, self.old, self.new);
        let cured = self.since.cured.iter().copied();
        cured.filter(move |finding| self.asked(&finding.name) && !is_gone(finding))
    }

    fn consequences(&self) -> Vec<Consequence> {
        let mut all = consequences::consequences(self.old, self.new);
        all.retain(|consequence| self.asked(&consequence.name));
        all
    }

    /// Returns the wholes of which something was measured again, each once, in order.
    fn measured_again(&self) -> Vec<&'r Name> {
        let again = self.changes().filter(|change| change.kind == ChangeKind::ReMeasured);
        let mut seen = HashSet::new();
        again.map(|change| &change.whole).filter(|whole| seen.insert(*whole)).collect()
    }
}
