//! What the rules say of a value just read: the book is read and judged again with it.

use super::subject::Measured;
use crate::model::Book;
use crate::model::Name;
use crate::reading;
use crate::reading::Fault;
use crate::reading::RecordKind;
use crate::reports;
use crate::rules;
use crate::rules::Check;
use crate::rules::Checked;
use crate::rules::Level;
use crate::rules::Sum;
use crate::store::Content;
use crate::store::Named;
use crate::writing::measuring::Dialogue;
use crate::writing::measuring::Question;

/// A book with the answers so far, and what the rules say of it.
pub(super) struct Judged<'m> {
    measured: &'m Measured,
    book: Book,
    checked: Checked,
    sums: Vec<Sum>,
}

impl Judged<'_> {
    /// Returns what the rules say of a value, and whether it is a danger.
    pub(super) fn verdict(&self, question: &Question) -> (String, bool) {
        let name = Name::record(&self.measured.id).at(&question.name);
        let all = (&self.checked, &*self.sums);
        reports::verdict_beside(&self.book, all, &name, self.measured.look)
    }
}

impl Measured {
    /// Returns the book with another text of the record. Where a boat is measured, other boats say
    /// nothing of her and are left out, unless all are `wanted`.
    pub(super) fn book_with(&self, text: &str, wanted: bool) -> (Book, Vec<Fault>) {
        let own = self.path();
        let is_other = |named: &Named| {
            self.kind == RecordKind::Boat && named.path.starts_with("boats/") && named.path != own
        };
        let mut files = self.store.files.clone();
        files.retain(|named| wanted || !is_other(named));
        if let Some(named) = files.iter_mut().find(|named| named.path == own) {
            named.content = Content::Text(text.to_owned());
        }
        let (mut book, faults) = reading::read(&self.store.name, files);
        book.unread.clone_from(&self.store.absent);
        (book, faults)
    }

    /// Judges the book with every answer so far; none where the answers can't stand in the record.
    pub(super) fn judged(&self, dialogue: &Dialogue) -> Option<Judged<'_>> {
        let text = dialogue.tentative().ok()?;
        let (book, faults) = self.book_with(&text, false);
        let as_of = dialogue.day();
        let (mut checked, sums) = rules::check_with_sums(&book, &faults, Check { as_of });
        checked.waive(&book, as_of);
        Some(Judged { measured: self, book, checked, sums })
    }

    /// Returns what is wrong with how the boat lies, in words; nothing where she is level.
    pub(super) fn beyond_level(&self, dialogue: &Dialogue) -> Option<String> {
        let text = dialogue.tentative().ok()?;
        let (book, faults) = self.book_with(&text, false);
        let checked = rules::check(&book, &faults, Check { as_of: dialogue.day() });
        let name = Name::record(&self.id);
        let told = checked.findings.iter().filter(|finding| {
            finding.rule.id == "boat-not-level"
                && finding.name.is_within(name.as_str())
                && finding.level >= Level::Unsure
        });
        let told: Vec<&str> = told.map(|finding| &*finding.message).collect();
        (!told.is_empty()).then(|| told.join("; "))
    }
}
