//! A crew seated in her boat, as a table and a few sentences. Chooses nothing.

use super::fitting_words::Words;
use super::look::Look;
use super::look::columns;
use super::shown;
use crate::metrology::decision;
use crate::planning::fitting::Arc;
use crate::planning::fitting::Doubt;
use crate::planning::fitting::Fit;
use crate::planning::fitting::Seated;
use crate::planning::fitting::StoppedBy;
use crate::rules::Level;

/// Columns of the table; the last ends before the width of a terminal.
const HEAD: [&str; 8] =
    ["seat", "rower", "hole", "stop", "legs, mm", "finish, deg", "off mean", "catch, deg"];

/// So many characters of who it is are shown.
const LONGEST: usize = 6;

/// Returns a crew seated in her boat as a table and a few sentences.
#[must_use]
pub fn fitting_text(fit: &Fit, look: Look) -> String {
    let mut out = heading(fit, look);
    out.push_str(&table(fit, look));
    let words = Words { fit };
    for (level, sentence) in words.sentences() {
        let text = look.wrapped(&sentence, "");
        let text = level.map_or_else(|| text.clone(), |level| coloured(&text, level, look));
        out.push_str(&format!("\n{text}\n"));
    }
    for part in words.assumptions() {
        out.push_str(&format!("\n{}", look.hanging(&part, "", "  ")));
    }
    out.push('\n');
    out
}

fn coloured(text: &str, level: Level, look: Look) -> String {
    let lines: Vec<String> =
        text.lines().map(|line| look.of_level(level).style(line).to_string()).collect();
    lines.join("\n")
}

fn heading(fit: &Fit, look: Look) -> String {
    let boat = fit.boat.boat;
    let mut line =
        format!("Crew {} in {}", shown::line(&fit.crew.id.value), shown::line(boat.called()));
    if let Some(date) = boat.rigged.date {
        line.push_str(&format!(", rigged {}", date.value));
    }
    let heading = look.heading().style(look.wrapped(&line, "")).to_string();
    let about = "Stop: what ends the way of the back, the chock or straight legs; ?: too \
                 close to call. Legs: how much \
                 farther the brace could be before the legs stop the rower. Finish: abaft square; \
                 off mean: more or less than the crew's mean finish; catch: forward of square. ± \
                 is how good a figure is; m: by an arc that was measured.";
    format!("{heading}\n{}\n", look.wrapped(about, ""))
}

fn table(fit: &Fit, look: Look) -> String {
    let mut rows = vec![HEAD.map(str::to_owned)];
    rows.extend(fit.rowers.iter().map(|seated| row(seated, look)));
    let widths: Vec<usize> = (0..HEAD.len())
        .map(|column| rows.iter().map(|row| columns(&row[column])).max().unwrap_or_default())
        .collect();
    let wide = widths.iter().sum::<usize>() + 2 * (HEAD.len() - 1);
    if wide > look.width {
        return stacked(&rows[1..], look);
    }
    let line = |row: &[String; 8]| {
        let cells = row.iter().zip(&widths).enumerate().map(|(at, (cell, width))| {
            let blanks = " ".repeat(width - columns(cell));
            if (1..=3).contains(&at) {
                format!("{cell}{blanks}")
            } else {
                format!("{blanks}{cell}")
            }
        });
        let line = cells.collect::<Vec<_>>().join("  ");
        format!("{}\n", line.trim_end())
    };
    format!("\n{}", rows.iter().map(line).collect::<String>())
}

/// The rows one below the other, where the table has no room.
fn stacked(rows: &[[String; 8]], look: Look) -> String {
    let one = |row: &[String; 8]| {
        let cells: Vec<String> = HEAD
            .iter()
            .zip(row)
            .filter(|(_, cell)| !cell.is_empty())
            .map(|(head, cell)| format!("{head}: {cell}"))
            .collect();
        format!("\n{}\n", look.hanging(&cells.join("; "), "", "  "))
    };
    rows.iter().map(one).collect()
}

fn row(seated: &Seated, look: Look) -> [String; 8] {
    let seat = seated.rower.seat.map_or("?".to_owned(), |seat| seat.value.to_string());
    let who = seated
        .rower
        .who
        .as_ref()
        .map_or(String::new(), |who| look.cut_to(&shown::line(&who.value), LONGEST));
    let Ok(arc) = &seated.arc else {
        let unknown = || "unknown".to_owned();
        let blank = String::new;
        return [seat, who, blank(), unknown(), blank(), unknown(), blank(), unknown()];
    };
    let catch = match &arc.catch {
        Ok(catch) => angle(catch, 1.0, arc.catch_measured, look),
        Err(_) => "unknown".to_owned(),
    };
    [
        seat,
        who,
        hole(arc),
        stop(arc),
        legs(arc, look),
        angle(&arc.finish, -1.0, arc.finish_measured, look),
        look.words(&format!(
            "{:+.1} ± {:.1}",
            -arc.finish_off_mean.value(),
            arc.finish_off_mean.expanded()
        )),
        catch,
    ]
}

fn hole(arc: &Arc) -> String {
    match (arc.hole, arc.now) {
        (Some(hole), Some(now)) if hole != now => format!("{hole}, now {now}"),
        (Some(hole), Some(_)) => hole.to_string(),
        (Some(hole), None) => format!("{hole}, now ?"),
        (None, _) => "?".to_owned(),
    }
}

/// What stops the rower; with a mark where the legs are too near straight to tell.
fn stop(arc: &Arc) -> String {
    let by = match arc.stopped_by {
        StoppedBy::Chock => "chock",
        StoppedBy::Legs => "legs",
    };
    let sure = arc
        .leg_room
        .as_ref()
        .is_some_and(|room| decision::disagrees(room.value(), room.expanded()));
    if sure { by.to_owned() } else { format!("{by}?") }
}

fn legs(arc: &Arc, look: Look) -> String {
    let Some(room) = &arc.leg_room else { return "?".to_owned() };
    look.words(&format!("{:+.0} ± {:.0}", room.value(), room.expanded()))
}

fn angle(doubt: &Doubt, sign: f64, measured: bool, look: Look) -> String {
    let mark = if measured { "m" } else { "" };
    look.words(&format!("{:.1}{mark} ± {:.1}", sign * doubt.value(), doubt.expanded()))
}
