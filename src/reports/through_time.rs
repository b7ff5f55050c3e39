//! What a report of the past is made of: rows and values with the commits that made them.

use super::drifting::Drifting;
use super::verdict::Verdict;
use crate::history::Event;
use crate::history::Kept;
use crate::history::Key;
use crate::history::Rewritten;
use crate::history::Row;
use crate::history::Set;
use crate::history::tells_which;
use crate::model::Said;
use crate::units::Date;

/// A commit, as far as a reader wants to know it.
#[derive(Clone, Debug, Default, Eq, PartialEq)]
pub struct Made {
    /// Its whole id.
    pub commit: String,
    /// Its id, cut short.
    pub short: String,
    /// Who wrote the change.
    pub author: String,
    /// Who put it into the history, where that is somebody else.
    pub committer: Option<String>,
    /// When it was committed, on the committer's own clock.
    pub committed_on: Option<Date>,
    /// Whether what came before it was left behind.
    pub is_edge: bool,
}

/// A row of a timeline with the commit that made it; none for what is not committed yet.
#[derive(Clone, Debug)]
pub struct TimelineRow {
    /// The row.
    pub row: Row,
    /// The commit.
    pub made: Option<Made>,
    /// The sides of a merge, in the row's order: the commit that set each.
    pub sides: Vec<Option<Made>>,
    /// What the rules of the day said of the value.
    pub verdict: Option<Verdict>,
}

/// The changes of a value, or of all below a name.
#[derive(Clone, Debug)]
pub struct Timeline {
    /// The name asked for.
    pub name: String,
    /// The rows, the oldest first.
    pub rows: Vec<TimelineRow>,
    /// Why the history is not whole, and what helps; none where it is.
    pub cut: Option<String>,
    /// The values of a single number through time, for a chart and a trend.
    pub points: Points,
    /// Whether the trend was asked for.
    pub trend: bool,
}

/// A number through time.
#[derive(Clone, Debug, Default)]
pub struct Points {
    /// The day and the number, in the order of the days.
    pub points: Vec<(Date, f64)>,
    /// The unit.
    pub unit: &'static str,
    /// The limits in force now, and what each is called.
    pub limits: Vec<(&'static str, f64)>,
    /// Its readings and what breaks them, for a trend.
    pub drifting: Drifting,
}

/// Who set every value of a record.
#[derive(Clone, Debug)]
pub struct Blame {
    /// The records, most often one.
    pub records: Vec<(Key, Vec<BlameRow>)>,
    /// Only values older than so many days were asked for.
    pub older_than: Option<i64>,
    /// The day that ages are counted to.
    pub as_of: Date,
    /// Why the history is not whole, and what helps; none where it is.
    pub cut: Option<String>,
}

/// A value with the commit that set it; none for what is not committed yet.
#[derive(Clone, Debug)]
pub struct BlameRow {
    /// The value.
    pub set: Set,
    /// The commit.
    pub made: Option<Made>,
    /// How many days ago it was measured, or committed where no day is written.
    pub age: Option<i64>,
    /// Whether it may be older: it was there when the history that is here begins.
    pub may_be_older: bool,
}

impl BlameRow {
    /// Returns its age in days, marked where it may be more; a day that has not come is ahead.
    pub(super) fn age_words(&self) -> Option<String> {
        let mark = if self.may_be_older { "≥ " } else { "" };
        self.age.map(|age| if age < 0 { "ahead".to_owned() } else { format!("{mark}{age}") })
    }
}

/// Returns a value in words, with its unit.
pub(super) fn words(value: &Kept) -> String {
    let each: Vec<String> = value.said.iter().map(one).collect();
    match (value.number(), each.as_slice()) {
        (_, [one]) => one.clone(),
        (Some((_, unit)), each) if !unit.is_empty() => {
            let numbers = each.iter().map(|one| one.trim_end_matches(unit).trim_end());
            format!("{} {unit}", numbers.collect::<Vec<_>>().join(", "))
        }
        (_, each) => each.join(", "),
    }
}

fn one(said: &Said) -> String {
    match said {
        Said::Unread => "unreadable".to_owned(),
        Said::Figure { value, of } => format!("{value} {}", of.unit()).trim_end().to_owned(),
        Said::Slope(slope) => slope_words(*slope),
        Said::Text(text) => text.to_string(),
    }
}

fn slope_words(slope: crate::units::Slope) -> String {
    use crate::units::Slope;
    match slope {
        Slope::Offset(offset) => format!("{} mm", offset.as_mm()),
        Slope::Over { offset, down } => format!("{} over {} mm", offset.as_mm(), down.as_mm()),
        Slope::Angle(angle) => format!("{} deg", angle.as_deg()),
    }
}

/// Returns by how much a row's value rose, with sign and unit.
pub(super) fn delta(row: &Row) -> Option<(f64, &'static str)> {
    let (new, old) = (row.new.as_ref()?, row.old.as_ref()?);
    let is_amount = !tells_which(&row.name);
    new.more_than(old).filter(|_| is_amount && !new.is_same(old))
}

/// Returns what a kind of row is called, for programs.
pub(super) fn kind(event: &Event) -> &'static str {
    match event {
        Event::FirstRecorded => "first-recorded",
        Event::HistoryStarts => "history-starts",
        Event::Changed => "changed",
        Event::Again => "recorded-again",
        Event::TakenOut => "taken-out",
        Event::NotMeasured => "not-measured",
        Event::Merged { .. } => "merge",
        Event::MergedAnew { .. } => "merge-anew",
        Event::Unclear(_) => "unreadable",
        Event::Rewritten(Rewritten::Unit) => "unit-only",
        Event::Rewritten(_) => "precision-only",
        Event::Moved(_) => "moved",
        Event::Untouched => "untouched",
    }
}

/// Returns who wrote a change and who committed it, and when.
pub(super) fn by_whom(made: &Made) -> String {
    match &made.committer {
        Some(committer) => {
            format!("written by {}, committed {} by {committer}", made.author, committed(made))
        }
        None => format!("committed {} by {}", committed(made), made.author),
    }
}

/// Returns the day of a commit; where what came before was left behind, it is the latest it can be.
pub(super) fn committed(made: &Made) -> String {
    let day = made.committed_on.map_or_else(|| "unknown".to_owned(), |day| day.to_string());
    if made.is_edge { format!("≤ {day}") } else { day }
}
