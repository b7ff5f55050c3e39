//! Oars tried in rowlocks as a Markdown table, alike ones folded. Judges nothing.

use super::cautions::WHERE_THE_SUMS_STOP;
use super::cell::cell;
use super::matching_rows::Row;
use super::matching_rows::asides;
use super::matching_rows::rows;
use super::matching_rows::seats;
use super::matching_rows::worst;
use crate::planning::matching::Match;

const HEAD: &str = "| Boat | Set | Seats | Oars | Verdict | What decides | What follows |\n\
     |---|---|---|---|---|---|---|\n";

/// Returns each set in each boat, seat by seat, as a table.
#[must_use]
pub fn matching_markdown(matches: &[Match]) -> String {
    let mut out = format!("### Oars and rowlocks\n\n{HEAD}");
    for of in matches {
        let (boat, set) = (cell(of.boat.boat.called()), cell(&of.set.id.value));
        let all = rows(of);
        if all.is_empty() {
            out.push_str(&format!("| {boat} | {set} | | | unknown | {} | |\n", cell(&worst(of))));
        }
        for row in all {
            out.push_str(&format!("| {boat} | {set} | {} |\n", cells(&row).join(" | ")));
        }
    }
    for line in asides(matches).iter().map(String::as_str).chain([WHERE_THE_SUMS_STOP]) {
        out.push_str(&format!("\n{}\n", cell(line)));
    }
    out
}

fn cells(row: &Row) -> [String; 5] {
    let told = &row.told;
    let follows = told.follows.iter().map(|(called, value)| format!("{called} {value}"));
    let unfit = if told.unfit { " (marked unfit)" } else { "" };
    [
        cell(&seats(&row.seats)),
        cell(&format!("{}{unfit}", row.oars.join(", "))),
        cell(&told.verdict()),
        cell(&told.decided),
        cell(&follows.collect::<Vec<_>>().join("; ")),
    ]
}
