//! One thing that is not as it was. Holds what is told of it, and compares nothing.

use super::group_words::contents;
use super::grouping::Group;
use super::measured::LastMeasured;
use super::value::Value;
use crate::model::Name;
use crate::model::Place;

/// How something changed.
#[derive(Clone, Copy, Debug, Eq, Hash, Ord, PartialEq, PartialOrd)]
pub enum ChangeKind {
    /// It says something else.
    Changed,
    /// It was not there before.
    Added,
    /// It is not there any more.
    Removed,
    /// An oar or a set is carried somewhere else.
    Moved,
    /// It was measured again, and is the same.
    ReMeasured,
    /// The same number in another unit.
    UnitOnly,
    /// The same number to other digits.
    PrecisionOnly,
    /// It can't be read on one side, so nobody knows.
    Unreadable,
}

impl ChangeKind {
    /// Returns the word for it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Changed => "changed",
            Self::Added => "added",
            Self::Removed => "removed",
            Self::Moved => "moved",
            Self::ReMeasured => "re-measured",
            Self::UnitOnly => "unit-only",
            Self::PrecisionOnly => "precision-only",
            Self::Unreadable => "unreadable",
        }
    }
}

/// What stood on one side of a change.
#[derive(Clone, Debug, PartialEq)]
pub struct State {
    /// It, as it is written; of a seat, an oar or a part of a list, what stands in it.
    pub text: String,
    /// Its figure, where it can be compared with that of the other side.
    pub figure: Option<f64>,
    /// How many readings were taken; 1 of what is no reading.
    pub count: usize,
    /// Where it stands.
    pub place: Option<Place>,
    /// When it was measured, and by whom.
    pub measured: Option<LastMeasured>,
}

impl State {
    /// What has no figure and no day, only words.
    pub(super) fn words(text: impl Into<String>, place: Option<Place>) -> Self {
        Self { text: text.into(), figure: None, count: 1, place, measured: None }
    }

    pub(super) fn of(value: &Value) -> Self {
        Self {
            text: value.text(),
            figure: None,
            count: value.said.len(),
            place: Some(value.place()),
            measured: value.measured.clone(),
        }
    }

    pub(super) fn of_group(values: &[&Value], group: &Group) -> Self {
        Self::words(contents(values, group), values.first().map(|value| value.place()))
    }
}

/// One thing that is not as it was.
#[derive(Clone, Debug, PartialEq)]
pub struct Change {
    /// The name of it, as it is now; of what is gone, as it was.
    pub name: Name,
    /// The name of the seat, oar, part of a list or record that it belongs to.
    pub whole: Name,
    /// How it changed.
    pub kind: ChangeKind,
    /// Before; none where it was not there.
    pub old: Option<State>,
    /// After; none where it is not there.
    pub new: Option<State>,
    /// After less before, of figures.
    pub delta: Option<f64>,
    /// The unit of the figures.
    pub unit: &'static str,
    /// Whether it is a text of words.
    pub is_text: bool,
}

impl Change {
    pub(super) fn of_whole(
        kind: ChangeKind,
        name: Name,
        old: Option<State>,
        new: Option<State>,
    ) -> Self {
        let whole = name.clone();
        Self { name, whole, kind, old, new, delta: None, unit: "", is_text: false }
    }

    /// Returns its name below the whole that it belongs to; nothing of the whole itself.
    #[must_use]
    pub fn below(&self) -> &str {
        let rest = self.name.as_str().strip_prefix(self.whole.as_str()).unwrap_or_default();
        rest.strip_prefix('/').unwrap_or(rest)
    }
}
