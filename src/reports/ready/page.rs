//! What concerns one boat, put together once for every form of her page.

use super::super::concerning::concerns;
use super::super::summary::counted;
use super::Ready;
use super::seats;
use super::seats::SeatRow;
use crate::history::Change;
use crate::model::Crew;
use crate::model::Placed;
use crate::rules::Finding;
use crate::rules::Level;
use crate::rules::NotChecked;
use crate::working::BoatSight;

/// What concerns one boat.
pub(super) struct Page<'r> {
    pub(super) ready: Ready<'r>,
    pub(super) boat: BoatSight<'r>,
    pub(super) crews: Vec<&'r Crew>,
    /// What was found, the worst first.
    pub(super) findings: Vec<&'r Finding>,
    /// What could not be looked at.
    pub(super) not_checked: Vec<&'r NotChecked>,
    pub(super) seats: Vec<SeatRow<'r>>,
}

/// How she stands on the day, in one of these.
#[derive(Clone, Copy, Debug, Eq, PartialEq)]
pub(super) enum Stands {
    /// She is out of use.
    OutOfUse,
    /// Something was found at or above the failing level.
    MayNot,
    /// Nothing at or above it was found, but not all could be looked at.
    NotAllKnown,
    /// All was looked at, and only something below it was found.
    Below,
    /// All was looked at, and nothing was found.
    Nothing,
}

impl Stands {
    /// Returns what programs call it.
    pub(super) const fn word(self) -> &'static str {
        match self {
            Self::OutOfUse => "not-to-go-afloat",
            Self::MayNot => "may-not-go-afloat",
            Self::NotAllKnown => "not-all-known",
            Self::Below => "found-below-gate",
            Self::Nothing => "nothing-found",
        }
    }
}

/// Returns a page for each boat.
pub(super) fn pages<'r>(ready: &Ready<'r>) -> Vec<Page<'r>> {
    let report = &ready.report;
    let page = |boat: &&'r crate::model::Boat| {
        let (book, own) = (report.book, BoatSight::new(report.book, boat));
        let findings = report.checked.findings.iter();
        let findings: Vec<&Finding> =
            findings.filter(|finding| concerns(book, boat, &finding.name)).collect();
        let of_others = |missing: &&NotChecked| {
            book.boats.iter().any(|other| concerns(book, other, &missing.name))
        };
        let missing = report.checked.not_checked.iter();
        let not_checked =
            missing.filter(|missing| concerns(book, boat, &missing.name) || !of_others(missing));
        let crews: Vec<&Crew> = book.crews_of(boat).collect();
        let seats = seats::rows(&own, &findings, &crews);
        Page {
            ready: *ready,
            boat: own,
            crews,
            findings,
            not_checked: not_checked.collect(),
            seats,
        }
    };
    ready.boats.iter().map(page).collect()
}

impl<'r> Page<'r> {
    /// Returns how she stands.
    pub(super) fn stands(&self) -> Stands {
        let standing = || self.findings.iter().filter(|finding| finding.waived.is_none());
        let gates = |finding: &&&Finding| finding.stands() && finding.level >= self.ready.gate;
        if self.boat.boat.out_of_use.is_some() {
            Stands::OutOfUse
        } else if standing().any(|finding| gates(&finding)) {
            Stands::MayNot
        } else if !self.not_checked.is_empty() || self.count(Level::Unsure) > 0 {
            Stands::NotAllKnown
        } else if standing().next().is_some() {
            Stands::Below
        } else {
            Stands::Nothing
        }
    }

    /// Returns how she stands in words: the words to be seen first, and the rest.
    pub(super) fn stands_words(&self) -> (&'static str, String) {
        match self.stands() {
            Stands::OutOfUse => ("NOT TO GO AFLOAT", format!(": {}.", self.out_of_use())),
            Stands::MayNot => ("MAY NOT GO AFLOAT", format!(": {}.", self.counts())),
            Stands::NotAllKnown => {
                ("NOT ALL IS KNOWN OF HER", format!(": {}. See below.", self.counts()))
            }
            Stands::Below => ("Nothing found", format!(" but {}.", self.counts())),
            Stands::Nothing => ("Nothing found", format!("{}.", self.waived())),
        }
    }

    fn out_of_use(&self) -> String {
        let Some(out) = &self.boat.boat.out_of_use else { return String::new() };
        let said = |text: &Option<Placed<String>>| {
            text.as_ref().map_or("not said".to_owned(), |text| text.value.clone())
        };
        let since = out.since.map_or("not said".to_owned(), |day| day.value.to_string());
        let (by, because) = (said(&out.by), said(&out.because));
        let counts = self.counts();
        let rest = if counts.is_empty() { String::new() } else { format!("; {counts}") };
        format!("out of use since {since}, by {by}, because: {because}{rest}")
    }

    /// How many findings of each level stand, and how many checks were not made.
    fn counts(&self) -> String {
        let of_level = |level: Level| {
            let count = self.count(level);
            let words = match level {
                Level::Unsure => format!("{count} unsure"),
                _ => counted(count, level.word()),
            };
            (count > 0).then_some(words)
        };
        let mut all: Vec<String> = Level::ALL.into_iter().filter_map(of_level).collect();
        if !self.not_checked.is_empty() {
            let checks = counted(self.not_checked.len(), "check");
            all.push(format!("{checks} not made: not measured"));
        }
        all.join(", ") + &self.waived()
    }

    fn waived(&self) -> String {
        let count = self.findings.iter().filter(|finding| finding.waived.is_some()).count();
        if count == 0 { String::new() } else { format!("; {count} waived") }
    }

    fn count(&self, level: Level) -> usize {
        let of_level = |finding: &&&Finding| finding.level == level && finding.waived.is_none();
        self.findings.iter().filter(of_level).count()
    }

    /// Returns what changed of her, her oars, her crews, the club's limits and the waivers.
    pub(super) fn changes(&self) -> Vec<&'r Change> {
        let Some(before) = self.ready.before else { return Vec::new() };
        let (book, boat) = (self.ready.report.book, self.boat.boat);
        let of_crew =
            |change: &Change| self.crews.iter().any(|crew| change.name.is_within(&crew.id.value));
        let of_all =
            |change: &Change| ["club", "waivers"].iter().any(|whole| change.name.is_within(whole));
        let all = before.changes.iter();
        let mine = |change: &&Change| {
            concerns(book, boat, &change.name) || of_crew(change) || of_all(change)
        };
        all.filter(mine).collect()
    }
}
