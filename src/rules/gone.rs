//! What was found on records that are no longer in the book: it is not cured, for nobody mended
//! anything. Knows no git.

use super::finding::Finding;
use super::finding::Label;
use super::level::Level;
use super::since::Standing;
use crate::model::Book;
use crate::model::FileId;
use crate::model::Name;
use crate::model::Place;
use crate::model::Span;

/// What became of findings that are not there any more.
#[derive(Clone, Debug, Default)]
pub struct Parted {
    /// Those that were mended, or that nothing is known against any more.
    pub cured: Vec<Finding>,
    /// The dangers that stood against a record that went away, as findings of the later book: to
    /// take the record away takes no danger away.
    pub dangers: Vec<Finding>,
    /// The names of all that went away with their records, the dangers too.
    pub gone: Vec<Name>,
}

/// Parts findings of an earlier book, which the later one does not have, by whether their records
/// are still there.
#[must_use]
pub fn part_gone(found: Vec<Finding>, before: &Book, after: &Book) -> Parted {
    let mut parted = Parted::default();
    for finding in found {
        if !is_gone(&finding, before, after) {
            parted.cured.push(finding);
            continue;
        }
        parted.gone.push(finding.name.clone());
        if finding.stands() && finding.level == Level::Danger {
            parted.dangers.extend(carried(finding, before, after));
        }
    }
    parted
}

/// Returns whether the record that a finding was about is not in the later book.
#[must_use]
pub fn is_gone(finding: &Finding, before: &Book, after: &Book) -> bool {
    let id = record(finding);
    let path = &before.file(finding.labels[0].place.file).path;
    !holds(after, id) && (holds(before, id) || !has_file(after, path))
}

fn record(finding: &Finding) -> &str {
    finding.name.as_str().split('/').next().unwrap_or_default()
}

fn holds(book: &Book, id: &str) -> bool {
    let is_crew = || book.crews.iter().any(|crew| crew.id.value == id);
    book.boat(id).is_some()
        || book.oar_set(id).is_some()
        || book.class(id).is_some()
        || id == "club"
        || is_crew()
}

fn has_file(book: &Book, path: &str) -> bool {
    book.files.iter().any(|file| file.path == path)
}

/// Returns a danger as one that still stands, told at the top of the club's settings: the record has
/// no place any more.
fn carried(finding: Finding, before: &Book, after: &Book) -> Option<Finding> {
    let file = after.club.file.or_else(|| after.files.first().map(|_| FileId(0)))?;
    let id = record(&finding);
    let path = before
        .boat(id)
        .map(|boat| boat.file)
        .or_else(|| before.oar_set(id).map(|set| set.file))
        .unwrap_or(finding.labels[0].place.file);
    let path = &before.file(path).path;
    let how =
        if has_file(after, path) { "can't be read any more" } else { "is no longer in the book" };
    let message = format!("{id} {how}, and this danger stood there: {}", finding.message);
    let mut remedy = format!("Put {path} back as a record.");
    if before.boat(id).is_some() {
        remedy.push_str(
            " To take her out of the book: first write out-of-use: {since: DATE, by: NAME, \
             because: WHY} in it and have that taken, then take the record away.",
        );
    }
    let place = Place { file, span: Span { start: 0, end: 0 } };
    let labels = vec![Label { place, text: format!("{id} was in {path}") }];
    let standing = Some(Standing::Known);
    Some(Finding { message, remedy, labels, standing, ..finding })
}
