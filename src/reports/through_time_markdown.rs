//! The past as Markdown tables.

use super::cell::cell;
use super::through_time::Blame;
use super::through_time::Made;
use super::through_time::Timeline;
use super::through_time::committed;
use super::through_time::words;
use super::timeline_text::happened;
use super::timeline_text::trend_words;

/// Returns the changes of a value as a Markdown table.
#[must_use]
pub fn timeline_markdown(timeline: &Timeline) -> String {
    let mut out = format!("### {}\n\n", cell(&timeline.name));
    out.push_str(
        "| measured | by | committed | written by | commit | what happened | verdict then |\n",
    );
    out.push_str("| --- | --- | --- | --- | --- | --- | --- |\n");
    for row in &timeline.rows {
        let measured = row.row.measured.as_ref();
        let (day, author, commit) = match &row.made {
            Some(made) => (day_and_committer(made), made.author.clone(), made.short.clone()),
            None => ("not committed yet".to_owned(), String::new(), String::new()),
        };
        out.push_str(&line(&[
            &measured.map(|own| own.on.to_string()).unwrap_or_default(),
            measured.and_then(|own| own.by.as_deref()).unwrap_or_default(),
            &day,
            &author,
            &commit,
            &happened(timeline, row),
            row.verdict.and_then(super::verdict::Verdict::word).unwrap_or("-"),
        ]));
    }
    if timeline.trend {
        out.extend(trend_words(timeline).iter().map(|line| format!("\n{}\n", cell(line))));
    }
    out.push_str(&end(timeline.cut.as_deref()));
    out
}

/// Returns who set every value as a Markdown table.
#[must_use]
pub fn blame_markdown(blame: &Blame) -> String {
    let mut out = String::new();
    for (key, rows) in &blame.records {
        out.push_str(&format!("### {}\n\n", cell(&key.id)));
        out.push_str("| value of | is | commit | written by | committed | measured | days |\n");
        out.push_str("| --- | --- | --- | --- | --- | --- | ---: |\n");
        for row in rows {
            let value = row.set.value.as_ref().map_or_else(|| "unreadable".to_owned(), words);
            let (commit, author, day) = match &row.made {
                Some(made) => (made.short.clone(), made.author.clone(), day_and_committer(made)),
                None => (String::new(), String::new(), "not committed yet".to_owned()),
            };
            let measured =
                row.set.measured.as_ref().map(|own| own.on.to_string()).unwrap_or_default();
            let age = row.age_words().unwrap_or_default();
            out.push_str(&line(&[
                row.set.name.as_str(),
                &value,
                &commit,
                &author,
                &day,
                &measured,
                &age,
            ]));
        }
        out.push('\n');
    }
    out.push_str(&end(blame.cut.as_deref()));
    out
}

/// Returns when a change was committed, and by whom, where that is not who wrote it.
fn day_and_committer(made: &Made) -> String {
    let by = made.committer.as_ref().map(|by| format!(" by {by}"));
    format!("{}{}", committed(made), by.unwrap_or_default())
}

fn line(cells: &[&str]) -> String {
    let cells: Vec<String> = cells.iter().map(|text| cell(text)).collect();
    format!("| {} |\n", cells.join(" | "))
}

fn end(cut: Option<&str>) -> String {
    cut.map(|cut| format!("\n{}\n", cell(cut))).unwrap_or_default()
}
