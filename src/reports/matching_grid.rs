//! Every oar set against every boat at a glance: one word for each. Judges nothing.

use super::look::Look;
use super::look::columns;
use super::matching_words::level;
use super::matching_words::verdict;
use super::shown;
use crate::planning::matching::Match;
use crate::planning::matching::Suits;
use crate::planning::matching::worst;

/// Returns a table of boats by sets, or of sets by boats, or a list where no table has room.
pub(super) fn grid(matches: &[Match], look: Look) -> String {
    let boats = of_one_boat(matches);
    let Some(first) = boats.first() else { return String::new() };
    let ids =
        boats.iter().filter_map(|of| of.first()).map(|of| shown::line(&of.boat.boat.id.value));
    let ids: Vec<String> = ids.collect();
    let sets: Vec<String> = first.iter().map(|of| shown::line(&of.set.id.value)).collect();
    let by_set = |row: usize, column: usize| &boats[column][row];
    let by_boat = |row: usize, column: usize| &boats[row][column];
    table(&sets, &ids, by_set, look)
        .or_else(|| table(&ids, &sets, by_boat, look))
        .unwrap_or_else(|| list(&sets, &ids, by_set, look))
}

/// Returns the matches of each boat together.
fn of_one_boat<'m, 'b>(matches: &'m [Match<'b>]) -> Vec<&'m [Match<'b>]> {
    matches.chunk_by(|one, other| std::ptr::eq(one.boat.boat, other.boat.boat)).collect()
}

fn word(of: &Match) -> String {
    let proven = worst(of.all()).is_none_or(|(_, tried)| tried.decided.proven);
    verdict(of.suits(), proven)
}

fn table<'m, 'b: 'm>(
    rows: &[String],
    heads: &[String],
    at: impl Fn(usize, usize) -> &'m Match<'b>,
    look: Look,
) -> Option<String> {
    let widest = Suits::ALL.iter().map(|suits| suits.word().len() + 1).max().unwrap_or_default();
    let side = rows.iter().map(|row| columns(row)).max().unwrap_or_default();
    let widths: Vec<usize> = heads.iter().map(|head| columns(head).max(widest)).collect();
    if side + widths.iter().map(|width| width + 2).sum::<usize>() > look.width {
        return None;
    }
    let blanks = |text: &str, width: usize| " ".repeat(width - columns(text));
    let mut out = " ".repeat(side);
    for (head, width) in heads.iter().zip(&widths) {
        out.push_str(&format!("  {head}{}", blanks(head, *width)));
    }
    out = format!("{}\n", out.trim_end());
    for (number, row) in rows.iter().enumerate() {
        let mut line = format!("{row}{}", blanks(row, side));
        for (column, width) in widths.iter().enumerate() {
            let of = at(number, column);
            let word = word(of);
            let blanks =
                if column + 1 == widths.len() { String::new() } else { blanks(&word, *width) };
            line.push_str(&format!("  {}{blanks}", coloured(&word, of.suits(), look)));
        }
        out.push_str(&format!("{line}\n"));
    }
    Some(out)
}

fn list<'m, 'b: 'm>(
    sets: &[String],
    boats: &[String],
    at: impl Fn(usize, usize) -> &'m Match<'b>,
    look: Look,
) -> String {
    let line = |(row, set): (usize, &String)| {
        let words: Vec<String> = Suits::ALL
            .iter()
            .rev()
            .filter_map(|suits| {
                let alike = boats
                    .iter()
                    .enumerate()
                    .filter(|(column, _)| at(row, *column).suits() == *suits);
                let alike: Vec<&str> = alike.map(|(_, boat)| boat.as_str()).collect();
                (!alike.is_empty()).then(|| format!("{} in {}", suits.word(), alike.join(", ")))
            })
            .collect();
        format!("{}\n", look.hanging(&format!("{set}: {}", words.join("; ")), "", "  "))
    };
    sets.iter().enumerate().map(line).collect()
}

/// Returns a text in the colour of a verdict, line by line.
pub(super) fn coloured(text: &str, suits: Suits, look: Look) -> String {
    let Some(level) = level(suits) else { return text.to_owned() };
    let lines = text.lines().map(|line| look.of_level(level).style(line).to_string());
    lines.collect::<Vec<_>>().join("\n")
}
