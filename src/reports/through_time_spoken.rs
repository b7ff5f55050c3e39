//! The past to be read aloud: one plain sentence a row, units spelled out, no table and no drawing.

use super::shown;
use super::since::Since;
use super::spoken::said;
use super::through_time::Blame;
use super::through_time::BlameRow;
use super::through_time::Made;
use super::through_time::Timeline;
use super::through_time::TimelineRow;
use super::through_time::by_whom;
use super::through_time::words;
use super::timeline_text::happened;
use super::timeline_text::trend_words;
use super::timeline_text::who;
use super::verdict::Verdict;

/// Returns the changes of a value, a sentence each.
#[must_use]
pub fn timeline_spoken(timeline: &Timeline) -> String {
    let mut out = String::new();
    if timeline.rows.is_empty() {
        out.push_str(&sentence(&format!("{}: no change of value", timeline.name)));
    }
    out.extend(timeline.rows.iter().map(|row| sentence(&change(timeline, row))));
    if timeline.trend {
        out.extend(trend_words(timeline).iter().map(|line| sentence(line)));
    }
    out + &cut(timeline.cut.as_deref())
}

fn change(timeline: &Timeline, row: &TimelineRow) -> String {
    let is_own = row.row.name.as_str() == timeline.name;
    let whose = if is_own { format!("{}: ", timeline.name) } else { String::new() };
    let day = row.row.measured.as_ref().map(|own| format!(", measured {}", own.on));
    let verdict = row.verdict.and_then(Verdict::word);
    let verdict = verdict.map(|word| format!(", verdict then: {word}"));
    let (day, verdict) = (day.unwrap_or_default(), verdict.unwrap_or_default());
    format!("{whose}{}{day} {}{verdict}", happened(timeline, row), who(row))
}

/// Returns who set every value, a sentence each.
#[must_use]
pub fn blame_spoken(blame: &Blame) -> String {
    let mut out = String::new();
    for (key, rows) in &blame.records {
        if rows.is_empty() {
            out.push_str(&sentence(&format!("{}: no such value", key.id)));
        }
        out.extend(rows.iter().map(|row| sentence(&set(row))));
    }
    out + &cut(blame.cut.as_deref())
}

fn set(row: &BlameRow) -> String {
    let value = row.set.value.as_ref().map_or_else(|| "unreadable".to_owned(), words);
    let by = |by: &String| format!(" by {by}");
    let measured = row.set.measured.as_ref();
    let measured = measured
        .map(|own| format!(", measured {}{}", own.on, own.by.as_ref().map(by).unwrap_or_default()));
    let days = match row.age_words() {
        Some(_) if row.age < Some(0) => ", of a day yet to come".to_owned(),
        Some(age) => format!(", {age} days ago"),
        None => String::new(),
    };
    let made = |made: &Made| format!("{}, {}", by_whom(made), made.short);
    let made = row.made.as_ref().map_or_else(|| "not committed yet".to_owned(), made);
    format!("{} is {value}{}{days}; {made}", row.set.name, measured.unwrap_or_default())
}

/// Returns since when a finding stands, a sentence for each coming and going.
#[must_use]
pub fn since_spoken(since: &Since) -> String {
    let mut out = String::new();
    let about = format!("{} {}", since.name, since.rule);
    if since.rows.is_empty() {
        out.push_str(&sentence(&format!("{about}: never found there")));
    }
    for (number, row) in since.rows.iter().enumerate() {
        let told = format!("{about}: {}, {} {}", row.what(number == 0), row.day(), row.who());
        out.push_str(&sentence(&told));
    }
    out + &cut(since.cut.as_deref())
}

fn cut(cut: Option<&str>) -> String {
    cut.map(sentence).unwrap_or_default()
}

/// Returns words as one line that ends with a full stop.
fn sentence(words: &str) -> String {
    let line = said(&shown::line(words));
    let line = line.trim_end();
    format!("{}.\n", line.strip_suffix('.').unwrap_or(line))
}
