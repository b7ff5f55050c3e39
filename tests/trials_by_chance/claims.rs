//! What the counts must prove, and the table that shows them.

use std::fmt::Write;

use crate::counting::Counts;
use crate::counting::Table;

/// The normal quantile of the bound above a rate counted: 99 % one-sided.
const SURE: f64 = 2.33;

/// Rules that judge a danger.
const DANGERS: [&str; 2] = ["gap-too-tight", "horn-hooks"];

/// Returns the rate that the true rate is surely below, by the counts: 99 % one-sided.
///
/// # Source
///
/// Wilson, Probable inference, the law of succession, and statistical inference, J. Am. Stat.
/// Assoc. 22 (1927), the upper end of the score interval; from memory.
pub(crate) fn surely_below(events: usize, of: usize) -> f64 {
    let (of, rate) = (of as f64, events as f64 / of as f64);
    let square = SURE * SURE;
    let spread = SURE * (rate * (1.0 - rate) / of + square / (4.0 * of * of)).sqrt();
    (rate + square / (2.0 * of) + spread) / (1.0 + square / of)
}

/// Returns every claim that the counts don't prove.
pub(crate) fn unproven(table: &Table) -> String {
    let mut unproven = String::new();
    for (&(row, place), &counts) in table {
        for (what, events, below) in claims(row, place, counts) {
            let bound = surely_below(events, counts.all());
            if bound >= below {
                let (of, bound, below) = (counts.all(), 100.0 * bound, 100.0 * below);
                writeln!(
                    unproven,
                    "{row} at {place}: {what}: {events} of {of}, below {bound:.2} %, not {below} %"
                )
                .expect("a text grows");
            }
        }
    }
    unproven
}

/// What is claimed of a row: what it is, how often it came about, and the rate it stays below.
fn claims(row: &str, place: i32, counts: Counts) -> Vec<(&'static str, usize, f64)> {
    let danger = DANGERS.contains(&row);
    let Counts { nothing, proven, .. } = counts;
    match place {
        0 if danger => {
            vec![("danger passed", nothing, 0.025), ("told to bend in doubt", proven, 0.025)]
        }
        0 => vec![("sound boat accused", proven, 0.05)],
        -1 => vec![("sound boat accused", proven, 0.05)],
        _ if danger => vec![("danger passed", nothing, 0.025)],
        // Two readings that should be one are never unsure: half are told at 1 U.
        1 if row == "handle-past-mark-disagrees" => Vec::new(),
        1 => vec![("fault missed", nothing, 0.10)],
        _ => vec![("fault missed", nothing, 0.05)],
    }
}

/// Returns the counts as a table in Markdown, one row a rule.
pub(crate) fn shown(table: &Table) -> String {
    let mut text = String::from(
        "| rule | tried at the limit | nothing said | unsure | fault or proven short | nothing said 1 U beyond | 2 U beyond | fault 1 U within |\n|---|---|---|---|---|---|---|---|\n",
    );
    for (&(row, _), &counts) in table.iter().filter(|((_, place), _)| *place == 0) {
        let Counts { nothing, doubt, proven } = counts;
        let of = counts.all();
        let elsewhere = |place, pick: fn(Counts) -> usize| {
            let counts = table.get(&(row, place));
            counts.map_or("-".to_owned(), |counts| percent(pick(*counts), counts.all()))
        };
        let accused = if 20 * proven > of {
            format!("**{}**", percent(proven, of))
        } else {
            percent(proven, of)
        };
        writeln!(
            text,
            "| {row} | {of} | {} | {} | {accused} | {} | {} | {} |",
            percent(nothing, of),
            percent(doubt, of),
            elsewhere(1, |counts| counts.nothing),
            elsewhere(2, |counts| counts.nothing),
            elsewhere(-1, |counts| counts.proven),
        )
        .expect("a text grows");
    }
    text
}

fn percent(events: usize, of: usize) -> String {
    format!("{:.1} %", 100.0 * events as f64 / of as f64)
}
