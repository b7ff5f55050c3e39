//! What of one side can't be read, so that what seems missing there may only be unread.

use std::collections::HashSet;

use super::change::Change;
use super::change::ChangeKind;
use super::change::State;
use super::grouping::Group;
use super::value::Value;
use super::values::RecordValues;
use crate::model::Book;
use crate::model::FileId;
use crate::model::Name;
use crate::model::Place;
use crate::model::Span;

/// What can't be read of one record.
pub(super) struct Doubt<'v> {
    record: &'v RecordValues<'v>,
    unread: Vec<&'v Value<'v>>,
    old: bool,
}

impl<'v> Doubt<'v> {
    pub(super) fn of(record: &'v RecordValues<'v>, old: bool) -> Self {
        let unread = record.values.iter().filter(|value| value.is_unread()).collect();
        Self { record, unread, old }
    }

    /// Returns whether this is the side before.
    pub(super) const fn is_old(&self) -> bool {
        self.old
    }

    /// Returns whether a value that is missing here may stand in what can't be read.
    pub(super) fn covers(&self, name: &Name) -> bool {
        let within = |value: &&Value| name.is_within(value.name.as_str());
        !self.record.whole || self.unread.iter().any(within)
    }

    /// Returns whether a seat, an oar or a part of a list that is missing here may stand in what
    /// can't be read.
    pub(super) fn may_hold(&self, group: &Group) -> bool {
        let of_list = |value: &&Value, list: &Name| {
            value.group == Group::Record && value.name.is_within(list.as_str())
        };
        let lists = ["seats", "rowers", "oars"].map(|list| self.record.name().at(list));
        let unread = |list: &Name| self.unread.iter().any(|value| of_list(value, list));
        let here = match group {
            Group::Record => false,
            Group::Own { .. } => !self.record.nameless.is_empty() || lists.iter().any(unread),
            Group::Part { list, .. } => unread(list) || !self.record.nameless.is_empty(),
        };
        !self.record.whole || here || group.name().is_some_and(|name| self.covers(name))
    }
}

/// Files of one side in which no record could be read.
pub(super) struct Strangers<'b> {
    files: Vec<FileId>,
    /// Paths of those in which the other side has a record.
    known: Vec<&'b str>,
    /// Whether there are others.
    others: bool,
}

/// Returns the files of a book in which no record, or no id of one, could be read.
pub(super) fn strangers<'b>(
    (book, records): (&'b Book, &[RecordValues]),
    (other, other_records): (&Book, &[RecordValues]),
) -> Strangers<'b> {
    let own: HashSet<FileId> = records.iter().map(|record| record.file).collect();
    let files = (0..book.files.len()).map(FileId).filter(|file| !book.file(*file).built_in);
    let files: Vec<FileId> = files.filter(|file| !own.contains(file)).collect();
    let nameless = records.iter().filter(|own| own.is_nameless()).map(|own| own.file);
    let paths = files.iter().copied().chain(nameless).map(|file| book.file(file).path.as_str());
    let there: HashSet<&str> =
        other_records.iter().map(|own| other.file(own.file).path.as_str()).collect();
    let (known, others): (Vec<&str>, Vec<&str>) = paths.partition(|path| there.contains(path));
    Strangers { files, known, others: !others.is_empty() }
}

impl Strangers<'_> {
    /// Returns how a record that is missing on this side is told: it may stand in a file that can't
    /// be read, or under an id that can't.
    pub(super) fn kind_of(
        &self,
        record: &RecordValues,
        in_book: &Book,
        kind: ChangeKind,
    ) -> ChangeKind {
        let path = in_book.file(record.file).path.as_str();
        let may_be_unread = self.others || self.known.contains(&path) || record.is_nameless();
        if may_be_unread { ChangeKind::Unreadable } else { kind }
    }

    /// Returns every such file as something that can't be compared.
    pub(super) fn told(&self, book: &Book, old: bool) -> Vec<Change> {
        let tell = |file: &FileId| {
            let place = Place { file: *file, span: Span { start: 0, end: 0 } };
            let path = &book.file(*file).path;
            let state = Some(State::words(path.clone(), Some(place)));
            let (before, after) = if old { (state, None) } else { (None, state) };
            Change::of_whole(ChangeKind::Unreadable, Name::record(path), before, after)
        };
        self.files.iter().map(tell).collect()
    }
}
