//! Every waiver with whether it counts, the next to lapse first. Judges none itself.

use super::shown;
use crate::model::Placed;
use crate::model::Waiver;
use crate::units::Date;

/// A waiver and what is said of it.
#[derive(Clone, Copy, Debug)]
pub struct WaiverRow<'w> {
    /// The waiver.
    pub waiver: &'w Waiver,
    /// Why it does not count; nothing where it does.
    pub against: Option<&'w str>,
}

/// Returns the waivers as text; those that don't count come last.
#[must_use]
pub fn waivers(mut rows: Vec<WaiverRow>, as_of: Date) -> String {
    if rows.is_empty() {
        return "No waivers: the club lives with nothing that lint tells.\n".to_owned();
    }
    rows.sort_by_key(|row| (row.against.is_some(), row.waiver.until.map(|until| until.value)));
    let mut lines = vec![head(&rows, as_of)];
    for row in &rows {
        lines.push(String::new());
        lines.extend(one(row, as_of));
    }
    lines.iter().map(|line| format!("{}\n", shown::line(line))).collect()
}

fn head(rows: &[WaiverRow], as_of: Date) -> String {
    let waivers =
        if rows.len() == 1 { "1 waiver".to_owned() } else { format!("{} waivers", rows.len()) };
    let next = rows.iter().find(|row| row.against.is_none());
    match next.and_then(|row| Some((row, row.waiver.until?.value))) {
        Some((row, until)) => {
            let name = said(row.waiver.finding.as_ref());
            format!("{waivers}; the next to lapse: {name} after {until}, {}", left(until, as_of))
        }
        None => format!("{waivers}; none counts"),
    }
}

fn one(row: &WaiverRow, as_of: Date) -> Vec<String> {
    let WaiverRow { waiver, against } = row;
    let until = waiver.until.map(|until| until.value);
    let until = match until {
        Some(until) if until >= as_of => format!("{until}, {}", left(until, as_of)),
        Some(until) => format!("{until}, past"),
        None => "no day that can be read".to_owned(),
    };
    let at = waiver.at.map(|at| format!(", at {}", at.value)).unwrap_or_default();
    vec![
        format!("{}  {}", said(waiver.finding.as_ref()), said(waiver.rule.as_ref())),
        format!("  by {}{at}, until {until}", said(waiver.by.as_ref())),
        format!("  because {}", said(waiver.because.as_ref())),
        match against {
            None => "  counts".to_owned(),
            Some(why) => format!("  {why}"),
        },
    ]
}

fn left(until: Date, as_of: Date) -> String {
    match until.days_after(as_of) {
        0 => "today is its last day".to_owned(),
        1 => "1 day left".to_owned(),
        days => format!("{days} days left"),
    }
}

fn said(text: Option<&Placed<String>>) -> &str {
    text.map_or("(not written)", |text| text.value.trim())
}
