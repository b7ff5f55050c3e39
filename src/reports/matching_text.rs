//! Oars tried in rowlocks as text: every set in every boat in short, or seat by seat. Judges
//! nothing.

use super::cautions::WHERE_THE_SUMS_STOP;
use super::look::Look;
use super::matching_grid::coloured;
use super::matching_grid::grid;
use super::matching_rows::Fits;
use super::matching_rows::Row;
use super::matching_rows::fits;
use super::matching_rows::in_short;
use super::matching_rows::rigs;
use super::matching_words::asides;
use super::matching_words::called;
use super::matching_words::counts;
use super::matching_words::nothing_tried;
use super::matching_words::set_called;
use crate::planning::matching::Match;
use crate::planning::matching::NotFound;
use crate::planning::matching::Suits;

const ABOUT: &str = "Clearance: the gap less the widest part of the shaft, so at any turn of it; \
     looseness: less its narrowest. ± is how good a figure is; ?: too close to call, so measure \
     again.";

const MORE: &str = "Seat by seat, with gearing and handle: tholebook match and the id of a boat or \
     of an oar set.";

const FOLLOWS: &str = "In a roll: what a straight lift leaves, the oar along the boat; below 0 the \
     shaft slides up a horn. Gearing and handle as they would be there.";

const BED: &str = "In the bed: on the edges that the seat's own oar marked.";

/// Returns every set in every boat: at a glance, then in short.
#[must_use]
pub fn matching_text(matches: &[Match], not_found: &[NotFound], look: Look) -> String {
    let glance = "The worst of each oar set in each boat, any oar in any seat:";
    let mut out = format!("{}\n\n{}", look.wrapped(glance, ""), grid(matches, look));
    out.push_str(&format!("\n{}\n", look.wrapped(ABOUT, "")));
    for (at, of) in matches.iter().enumerate() {
        let before = at.checked_sub(1).map(|before| matches[before].boat.boat);
        if !before.is_some_and(|before| std::ptr::eq(before, of.boat.boat)) {
            out.push_str(&format!("\n{}\n", heading(&called(of), look)));
        }
        out.push_str(&short(of, look));
    }
    out.push_str(&format!("\n{}\n", look.wrapped(MORE, "")));
    out.push_str(&end(matches, not_found, look));
    out
}

fn short(of: &Match, look: Look) -> String {
    let set = set_called(of);
    let told = in_short(of);
    if of.all().next().is_none() {
        let line = format!("{set}: unknown: {}", nothing_tried(of));
        return format!("{}\n", coloured(&look.hanging(&line, "  ", "    "), Suits::Unknown, look));
    }
    match told.as_slice() {
        [one] => {
            let line = look.hanging(&format!("{set}: {}", one.text), "  ", "    ");
            format!("{}\n", coloured(&line, one.suits, look))
        }
        all => {
            let mut out = format!("{}\n", look.hanging(&format!("{set}:"), "  ", "    "));
            for one in all {
                let line = look.hanging(&one.text, "    ", "      ");
                out.push_str(&format!("{}\n", coloured(&line, one.suits, look)));
            }
            out
        }
    }
}

/// Returns each set in each boat, seat by seat; what is alike folded.
#[must_use]
pub fn matching_seats(matches: &[Match], not_found: &[NotFound], look: Look) -> String {
    let bed = matches.iter().flat_map(Match::all).any(|(_, tried)| tried.bed.is_some());
    let about =
        format!("{ABOUT} {FOLLOWS}{}{}", if bed { " " } else { "" }, if bed { BED } else { "" });
    let mut out = format!("{}\n", look.wrapped(&about, ""));
    for of in matches {
        let line = format!("{} in {}", set_called(of), called(of));
        out.push_str(&format!("\n{}\n", heading(&line, look)));
        out.push_str(&seat_by_seat(of, look));
    }
    out.push_str(&end(matches, not_found, look));
    out
}

fn heading(line: &str, look: Look) -> String {
    look.heading().style(look.wrapped(line, "")).to_string()
}

fn seat_by_seat(of: &Match, look: Look) -> String {
    if of.all().next().is_none() {
        let line = look.wrapped(&format!("unknown: {}", nothing_tried(of)), "  ");
        return format!("{}\n", coloured(&line, Suits::Unknown, look));
    }
    let mut out: String = fits(of).iter().map(|row| fitting(row, look)).collect();
    for row in rigs(of) {
        let line = format!("{}: {}", row.whereabouts, row.told);
        out.push_str(&format!("{}\n", look.hanging(&line, "  ", "    ")));
    }
    out
}

fn fitting(row: &Row<Fits>, look: Look) -> String {
    let told = &row.told;
    let suits = if told.unfit { Suits::Tight } else { told.suits };
    let first = format!("{}, {}: {}", told.verdict(), row.whereabouts, told.decided);
    format!(
        "{}\n{}\n",
        coloured(&look.hanging(&first, "  ", "    "), suits, look),
        look.wrapped(&told.beside, "    ")
    )
}

fn end(matches: &[Match], not_found: &[NotFound], look: Look) -> String {
    let mut out = String::new();
    for line in asides(matches, not_found) {
        out.push_str(&format!("\n{}", look.hanging(&line, "", "  ")));
    }
    if !out.is_empty() {
        out.push('\n');
    }
    let counts = counts(matches);
    let all: usize = counts.iter().sum();
    let counted = Suits::ALL.iter().zip(counts).rev();
    let counted: Vec<String> =
        counted.map(|(suits, count)| format!("{} {count}", suits.word())).collect();
    let tried = format!("{all} tries, one oar in one rowlock each: {}.", counted.join(", "));
    out.push_str(&format!("\n{}\n", look.wrapped(&tried, "")));
    out.push_str(&format!("{}\n", look.wrapped(WHERE_THE_SUMS_STOP, "")));
    out
}
