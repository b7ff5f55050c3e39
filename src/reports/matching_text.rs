//! Oars tried in rowlocks as text: the worst of each set in each boat, or seat by seat. Judges
//! nothing.

use super::cautions::WHERE_THE_SUMS_STOP;
use super::look::Look;
use super::matching_rows::Row;
use super::matching_rows::asides;
use super::matching_rows::counts;
use super::matching_rows::level;
use super::matching_rows::rows;
use super::matching_rows::seats;
use super::matching_rows::verdict;
use super::matching_rows::worst;
use super::shown;
use crate::planning::matching::Match;
use crate::planning::matching::Suits;

const ABOUT: &str = "Clearance: the gap less the widest part of the shaft, so at any turn of it; \
     looseness: less its narrowest. ± is how good a figure is; ?: too close to call.";

const FOLLOWS: &str = "In a roll: what a straight lift leaves, the oar along the boat; below 0 the \
     shaft slides up a horn. Handle past mark and gearing as they would be there.";

/// Returns the worst of each set in each boat.
#[must_use]
pub fn matching_text(matches: &[Match], look: Look) -> String {
    let mut out = format!("{}\n", look.wrapped(ABOUT, ""));
    let mut boat = "";
    for of in matches {
        let id = of.boat.boat.id.value.as_str();
        if id != boat {
            boat = id;
            out.push_str(&format!("\n{}\n", heading(&called(of), look)));
        }
        let proven = of.worst().is_none_or(|(_, tried)| tried.decided.proven);
        let line = format!(
            "{}: {}; {}",
            shown::line(&of.set.id.value),
            verdict(of.suits(), proven),
            worst(of)
        );
        out.push_str(&format!(
            "{}\n",
            coloured(&look.hanging(&line, "  ", "    "), of.suits(), look)
        ));
    }
    out.push_str(&end(matches, look));
    out
}

/// Returns each set in each boat, seat by seat; what is alike folded.
#[must_use]
pub fn matching_seats(matches: &[Match], look: Look) -> String {
    let about = format!("{ABOUT} {FOLLOWS}");
    let mut out = format!("{}\n", look.wrapped(&about, ""));
    for of in matches {
        let line = format!("{} in {}", shown::line(&of.set.id.value), called(of));
        out.push_str(&format!("\n{}\n", heading(&line, look)));
        let all = rows(of);
        if all.is_empty() {
            out.push_str(&format!("{}\n", look.wrapped(&format!("unknown: {}", worst(of)), "  ")));
        }
        for row in all {
            out.push_str(&told(&row, look));
        }
    }
    out.push_str(&end(matches, look));
    out
}

fn called(of: &Match) -> String {
    let boat = of.boat.boat;
    let name = shown::line(boat.called());
    let id = shown::line(&boat.id.value);
    if name == id { name } else { format!("{name} ({id})") }
}

fn heading(line: &str, look: Look) -> String {
    look.heading().style(look.wrapped(line, "")).to_string()
}

fn coloured(text: &str, suits: Suits, look: Look) -> String {
    let Some(level) = level(suits) else { return text.to_owned() };
    let lines = text.lines().map(|line| look.of_level(level).style(line).to_string());
    lines.collect::<Vec<_>>().join("\n")
}

fn told(row: &Row, look: Look) -> String {
    let told = &row.told;
    let unfit = if told.unfit { " (marked unfit)" } else { "" };
    let first = format!(
        "{}, {}{unfit}: {}; {}",
        seats(&row.seats),
        row.oars.join(", "),
        told.verdict(),
        told.decided
    );
    let follows = told.follows.iter().map(|(called, value)| format!("{called} {value}"));
    let follows = follows.collect::<Vec<_>>().join("; ");
    format!(
        "{}\n{}\n",
        coloured(&look.hanging(&first, "  ", "    "), told.suits, look),
        look.wrapped(&follows, "    ")
    )
}

fn end(matches: &[Match], look: Look) -> String {
    let counted: Vec<String> = Suits::ALL
        .iter()
        .zip(counts(matches))
        .map(|(suits, count)| format!("{count} {}", suits.word()))
        .collect();
    let all: usize = counts(matches).iter().sum();
    let mut out = String::new();
    for line in asides(matches) {
        out.push_str(&format!("\n{}", look.wrapped(&line, "")));
    }
    if !out.is_empty() {
        out.push('\n');
    }
    let tried = format!("Tried {all} times, an oar in a rowlock: {}.", counted.join(", "));
    out.push_str(&format!("\n{}\n", look.wrapped(&tried, "")));
    out.push_str(&format!("{}\n", look.wrapped(WHERE_THE_SUMS_STOP, "")));
    out
}
