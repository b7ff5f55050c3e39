//! The cells of a page's table of seats, as words; and what the figures in it are good to.

use super::super::figures_text::rounded;
use super::super::verdict::Verdict;
use super::page::Page;
use super::seats::SeatRow;
use super::seats::Spare;
use super::seats::Value;
use crate::model::LimitKey;
use crate::model::Part;

/// The headings of the columns, over two lines.
pub(super) const HEADS: [(&str, &str); 12] = [
    ("seat", ""),
    ("side", ""),
    ("oar", ""),
    ("spare", "clears"),
    ("to spare", "mm"),
    ("lifted", "out"),
    ("pitch", "catch"),
    ("deg", "square"),
    ("", "finish"),
    ("handle", "mm"),
    ("chock", "mm"),
    ("hole", ""),
];

/// What stands where nothing was measured.
const MISSING: &str = "-";

/// What the letters mean, and the figures.
pub(super) const LEGEND: &str = "D danger, F fault, U unsure, N note, W waived; -: not measured. \
     To spare: what the gap leaves beside the shaft";

/// Returns the cells of a seat's row.
pub(super) fn cells(row: &SeatRow) -> [String; 12] {
    let [catch, square, finish] = row.pitch.each_ref().map(|value| figure(value, 2));
    [
        row.number.map_or("?".to_owned(), |number| number.to_string()),
        row.side.map_or("?".to_owned(), |side| side.replace("starboard", "stbd")),
        format!("{}{}", row.oar.unwrap_or("?"), letter(row.oar_verdict)),
        spares(row),
        figure(&row.to_spare, 1),
        format!("{}{}", row.lifted.word(), letter(row.lifted.verdict)),
        catch,
        square,
        finish,
        figure(&row.handle, 1),
        figure(&row.chock, 0),
        holes(row),
    ]
}

fn figure(value: &Value, places: usize) -> String {
    let number = value.worked.as_ref().map_or(MISSING.to_owned(), |budget| {
        let tenths = (budget.value() * 10.0).round() / 10.0;
        let whole = places > 0 || tenths.fract().abs() < f64::EPSILON;
        rounded(budget.value(), if whole { places } else { 1 })
    });
    format!("{number}{}", letter(value.verdict))
}

/// A verdict that is not clear, as one letter.
fn letter(verdict: Verdict) -> String {
    match verdict {
        Verdict::Found(_) => format!(" {}", verdict.short()),
        Verdict::Waived => " W".to_owned(),
        Verdict::Clear | Verdict::NotChecked => String::new(),
    }
}

/// The spares that clear and are fit; a question mark after one that nobody measured.
fn spares(row: &SeatRow) -> String {
    let said = |spare: &Spare| match spare.clears {
        _ if spare.unfit => None,
        Some(true) => Some(spare.oar.to_owned()),
        Some(false) => None,
        None => Some(format!("{}?", spare.oar)),
    };
    let all: Vec<String> = row.spares.iter().filter_map(said).collect();
    if all.is_empty() { "none".to_owned() } else { all.join(",") }
}

fn holes(row: &SeatRow) -> String {
    let said = |hole: &Option<u32>| hole.map_or(MISSING.to_owned(), |hole| hole.to_string());
    if row.holes.is_empty() {
        return MISSING.to_owned();
    }
    row.holes.iter().map(said).collect::<Vec<_>>().join("/")
}

/// Returns what the figures of the table are good to: the worst seat's.
pub(super) fn good_to(page: &Page) -> String {
    type Pick = for<'s, 'r> fn(&'s SeatRow<'r>) -> Vec<&'s Value>;
    let columns: [(&str, &str, usize, Pick); 4] = [
        ("to spare", "mm", 1, |row| vec![&row.to_spare]),
        ("pitch", "deg", 2, |row| row.pitch.iter().collect()),
        ("handle past its mark", "mm", 1, |row| vec![&row.handle]),
        ("chock to pin", "mm", 1, |row| vec![&row.chock]),
    ];
    let said = |(called, unit, places, pick): (&str, &str, usize, Pick)| {
        let values = page.seats.iter().flat_map(pick);
        let good = values.filter_map(|value| Some(value.worked.as_ref().ok()?.expanded()));
        let worst = good.fold(0.0, f64::max);
        (worst > 0.0).then(|| format!("{called} ± {worst:.places$} {unit}"))
    };
    let all: Vec<String> = columns.into_iter().filter_map(said).collect();
    let least = page.boat.in_force.limit(LimitKey::Clearance, Part::Least);
    let least = least.map_or(String::new(), |least| format!(", at least {} mm", least.value));
    let good =
        if all.is_empty() { String::new() } else { format!(" Good to: {}.", all.join(", ")) };
    format!("{LEGEND}{least}.{good}")
}
