//! Oars tried in rowlocks as a Markdown table, alike ones folded. Judges nothing.

use super::cautions::WHERE_THE_SUMS_STOP;
use super::cell::cell;
use super::matching_rows::Fits;
use super::matching_rows::Row;
use super::matching_rows::whole;
use super::matching_words::asides;
use super::matching_words::called;
use super::matching_words::nothing_tried;
use super::matching_words::set_called;
use crate::planning::matching::Match;
use crate::planning::matching::NotFound;

const HEAD: &str = "| Boat | Set | Verdict | Which | What decides | Beside | Rigged |\n\
     |---|---|---|---|---|---|---|\n";

/// Returns each set in each boat, seat by seat, as a table.
#[must_use]
pub fn matching_markdown(matches: &[Match], not_found: &[NotFound]) -> String {
    let mut out = format!("### Oars and rowlocks\n\n{HEAD}");
    for of in matches {
        let (boat, set) = (cell(&called(of)), cell(&set_called(of)));
        let all = whole(of);
        if all.is_empty() {
            out.push_str(&format!("| {boat} | {set} | unknown | | {} | | |\n", nothing_tried(of)));
        }
        for row in all {
            out.push_str(&format!("| {boat} | {set} | {} |\n", cells(&row).join(" | ")));
        }
    }
    let asides = asides(matches, not_found);
    for line in asides.iter().map(String::as_str).chain([WHERE_THE_SUMS_STOP]) {
        out.push_str(&format!("\n{}\n", cell(line)));
    }
    out
}

fn cells(row: &Row<(Fits, String)>) -> [String; 5] {
    let (fits, rigged) = &row.told;
    [&fits.verdict(), &row.whereabouts, &fits.decided, &fits.beside, rigged].map(|text| cell(text))
}
