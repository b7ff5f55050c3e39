//! How a boat stands as of the day, in words that are to be seen first. Judges nothing: it counts.

use super::Site;
use crate::model::Boat;
use crate::reports::card_words::NOT_AFLOAT;
use crate::rules::Finding;
use crate::rules::Level;
use crate::rules::NotChecked;

/// How a boat stands, the worst last.
#[derive(Clone, Copy, Debug, Eq, Ord, PartialEq, PartialOrd)]
pub(super) enum Stands {
    /// All was looked at, and nothing was found.
    Nothing,
    /// All was looked at, and only notes were found.
    Notes,
    /// Something could not be looked at, or is too close to call.
    NotAllKnown,
    /// A fault was found.
    Fault,
    /// A danger was found.
    Danger,
    /// She is out of use.
    OutOfUse,
}

/// A boat with all that was found of her.
pub(super) struct Standing<'p> {
    pub(super) boat: &'p Boat,
    pub(super) findings: Vec<&'p Finding>,
    pub(super) not_checked: Vec<&'p NotChecked>,
}

impl<'p> Standing<'p> {
    pub(super) fn of(site: &Site<'p>, boat: &'p Boat) -> Self {
        let (findings, not_checked) = (site.found.of_boat(boat), site.found.not_checked(boat));
        Self { boat, findings, not_checked }
    }

    /// Returns how many findings of a level stand, those that are waived left out.
    pub(super) fn count(&self, level: Level) -> usize {
        let of_level = |own: &&&Finding| own.level == level && own.waived.is_none();
        self.findings.iter().filter(of_level).count()
    }

    pub(super) fn stands(&self) -> Stands {
        // Whoever took her out of use need not have said all that belongs to it.
        if self.boat.out_of_use.is_some() {
            return Stands::OutOfUse;
        }
        let any = |level| self.count(level) > 0;
        if any(Level::Danger) {
            Stands::Danger
        } else if any(Level::Fault) {
            Stands::Fault
        } else if any(Level::Unsure) || !self.not_checked.is_empty() {
            Stands::NotAllKnown
        } else if any(Level::Note) {
            Stands::Notes
        } else {
            Stands::Nothing
        }
    }

    /// Returns the counts in words: "1 danger, 2 faults; 3 checks not made: not measured".
    pub(super) fn counts(&self) -> String {
        let of_level = |level: Level| {
            let count = self.count(level);
            let plural = if count == 1 || level == Level::Unsure { "" } else { "s" };
            (count > 0).then(|| format!("{count} {}{plural}", level.word()))
        };
        let mut words: Vec<String> = Level::ALL.into_iter().rev().filter_map(of_level).collect();
        words.sort_by_key(|one| rank(one));
        let waived = self.findings.iter().filter(|own| own.waived.is_some()).count();
        if waived > 0 {
            words.push(format!("{waived} waived"));
        }
        let mut words = words.join(", ");
        let open = self.not_checked.len();
        if open > 0 {
            let checks = if open == 1 { "check" } else { "checks" };
            let mark = if words.is_empty() { "" } else { "; " };
            words.push_str(&format!("{mark}{open} {checks} not made: not measured"));
        }
        words
    }

    /// Returns whether her readings are too old.
    pub(super) fn is_overdue(&self) -> bool {
        self.findings.iter().any(|own| own.rule.id == "overdue")
    }
}

/// Dangers are told first.
fn rank(words: &str) -> usize {
    let at = |level: &Level| words.contains(level.word());
    let all = [Level::Danger, Level::Fault, Level::Unsure, Level::Note];
    all.iter().position(at).unwrap_or(all.len())
}

impl Stands {
    /// Returns it in words.
    pub(super) const fn words(self) -> &'static str {
        match self {
            Self::Nothing => "Nothing found",
            Self::Notes => "Nothing found but notes",
            Self::NotAllKnown => "Not all is known of her",
            Self::Fault => "Outside her limits",
            Self::Danger | Self::OutOfUse => NOT_AFLOAT,
        }
    }

    /// Returns the level whose shape it is marked with; none where there is nothing to mark.
    pub(super) const fn level(self) -> Option<Level> {
        match self {
            Self::Nothing => None,
            Self::Notes => Some(Level::Note),
            Self::NotAllKnown => Some(Level::Unsure),
            Self::Fault => Some(Level::Fault),
            Self::Danger | Self::OutOfUse => Some(Level::Danger),
        }
    }
}
