//! A small drawing of a number through time, in plain characters.

use std::collections::BTreeSet;

use super::look::Glyphs;
use super::look::Look;
use super::look::columns;
use super::through_time::Points;
use crate::units::Date;

/// How many rows a drawing has.
const ROWS: usize = 8;

/// The most columns a drawing takes.
const WIDEST: usize = 80;

/// What marks a value.
const MARK: char = 'o';

/// Returns the drawing: values as `o`, limits as lines, days below.
///
/// ```text
///   60 mm | o                        limits are drawn as ---
///         |        o
///   58 mm |----------------- least
///          2026-10-17    2026-11-02
/// ```
pub(super) fn chart(points: &Points, look: Look) -> String {
    let scale = Scale::of(points);
    let labels: Vec<String> = (0..ROWS).map(|row| scale.label(row, points.unit)).collect();
    let margin = labels.iter().map(|label| columns(label)).max().unwrap_or(0);
    let limit_words = points.limits.iter().map(|(called, _)| called.len() + 1).max().unwrap_or(0);
    let width = look.width.min(WIDEST).saturating_sub(margin + 2 + limit_words).max(10);
    let (bar, line) = match look.glyphs {
        Glyphs::Unicode => ('│', '─'),
        Glyphs::Ascii => ('|', '-'),
    };
    let marks = marks(points, &scale, width);
    let mut out = String::new();
    for (row, label) in labels.iter().enumerate() {
        let limit = points.limits.iter().find(|(_, value)| scale.row(*value) == row);
        let cell = |column: usize| match (marks.contains(&(row, column)), limit) {
            (true, _) => MARK,
            (false, Some(_)) => line,
            (false, None) => ' ',
        };
        let drawn: String = (0..width).map(cell).collect();
        let called = limit.map(|(called, _)| format!(" {called}")).unwrap_or_default();
        let whole = format!("{label:>margin$} {bar}{drawn}{called}");
        out.push_str(whole.trim_end());
        out.push('\n');
    }
    out.push_str(&days(points, margin + 2, width));
    out
}

fn marks(points: &Points, scale: &Scale, width: usize) -> BTreeSet<(usize, usize)> {
    let Some((first, last)) = ends(points) else { return BTreeSet::new() };
    let whole = last.days_after(first).max(1) as f64;
    let column = |day: Date| {
        let part = day.days_after(first) as f64 / whole;
        (part * (width - 1) as f64).round() as usize
    };
    points.points.iter().map(|(day, value)| (scale.row(*value), column(*day))).collect()
}

fn ends(points: &Points) -> Option<(Date, Date)> {
    let days = points.points.iter().map(|(day, _)| *day);
    Some((days.clone().min()?, days.max()?))
}

fn days(points: &Points, indent: usize, width: usize) -> String {
    let Some((first, last)) = ends(points) else { return String::new() };
    let (first, last) = (first.to_string(), last.to_string());
    let indent = " ".repeat(indent);
    if first == last || first.len() + last.len() + 1 > width {
        return format!("{indent}{first}\n");
    }
    let gap = " ".repeat(width - first.len() - last.len());
    format!("{indent}{first}{gap}{last}\n")
}

/// Which number is drawn in which row.
struct Scale {
    least: f64,
    step: f64,
}

impl Scale {
    fn of(points: &Points) -> Self {
        let values = points.points.iter().map(|(_, value)| *value);
        let all = values.chain(points.limits.iter().map(|(_, value)| *value));
        let (least, most) = all.fold((f64::INFINITY, f64::NEG_INFINITY), |(least, most), value| {
            (least.min(value), most.max(value))
        });
        if most > least {
            return Self { least, step: (most - least) / (ROWS - 1) as f64 };
        }
        Self { least: least - (ROWS / 2) as f64, step: 1.0 }
    }

    /// Returns the row of a number, the greatest at the top.
    fn row(&self, value: f64) -> usize {
        let up = ((value - self.least) / self.step).round().clamp(0.0, (ROWS - 1) as f64);
        ROWS - 1 - up as usize
    }

    fn label(&self, row: usize, unit: &str) -> String {
        let value = self.least + self.step * (ROWS - 1 - row) as f64;
        let places = (-self.step.log10()).ceil().clamp(0.0, 3.0) as usize;
        format!("{value:.places$} {unit}").trim_end().to_owned()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn points(values: &[(&str, f64)], limits: &[(&'static str, f64)]) -> Points {
        let day = |text: &str| Date::read(text).expect("a day");
        Points {
            points: values.iter().map(|(on, value)| (day(on), *value)).collect(),
            unit: "mm",
            limits: limits.to_vec(),
            ..Points::default()
        }
    }

    #[test]
    fn the_greatest_is_at_the_top_and_a_limit_is_a_line() {
        let look = Look { width: 60, glyphs: Glyphs::Ascii, colour: false };
        let points = points(&[("2026-10-01", 60.0), ("2026-10-31", 53.0)], &[("least", 55.0)]);
        let text = chart(&points, look);
        let lines: Vec<&str> = text.lines().collect();
        assert_eq!(lines.len(), ROWS + 1, "{text}");
        assert!(lines[0].starts_with("60 mm |o"), "{text}");
        assert!(lines[7].trim_end().ends_with('o') && lines[7].starts_with("53 mm |"), "{text}");
        assert!(lines[5].contains("-----") && lines[5].ends_with("least"), "{text}");
        assert!(lines.iter().all(|line| line.chars().count() <= 60), "{text}");
    }

    #[test]
    fn one_value_on_one_day_is_drawn_amid_its_scale() {
        let look = Look { width: 20, glyphs: Glyphs::Unicode, colour: false };
        let text = chart(&points(&[("2026-10-01", 5.0), ("2026-10-01", 5.0)], &[]), look);
        assert_eq!(text.matches(MARK).count(), 1, "{text}");
    }
}
