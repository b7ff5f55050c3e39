//! One plain sentence a finding, for screen readers: no drawing, units spelled out.

use super::Report;
use super::aside::aside;
use super::cautions::NO_PERMISSION;
use super::look::Look;
use super::place::Places;
use super::shown;
use super::summary::last_line;
use crate::rules::Finding;

/// Signs and units, and how they are said.
const SAID: [(&str, &str); 9] = [
    ("±", "plus or minus"),
    ("mm", "millimetres"),
    ("deg", "degrees"),
    ("kg", "kilograms"),
    ("%", "percent"),
    ("m", "metres"),
    ("→", "to"),
    ("≤", "at the latest"),
    ("≥", "at least"),
];

/// Returns the report of a check to be read aloud: a line a finding, then the last line.
#[must_use]
pub fn spoken(report: &Report, look: Look) -> String {
    let places = Places::new(report.book);
    let line = |finding| format!("{}\n", sentence(&places, finding));
    let mut out: String = report.checked.findings.iter().map(line).collect();
    out.extend(report.earlier.into_iter().flat_map(|earlier| earlier.cured).map(cured));
    out.push_str(&last_line(report, look));
    if report.book.readings > 0 {
        out.push_str(NO_PERMISSION);
        out.push('\n');
    }
    out
}

fn sentence(places: &Places, finding: &Finding) -> String {
    let level = finding.level.word();
    let begin = format!("{}{}", level[..1].to_uppercase(), &level[1..]);
    let message = said(&shown::line(&finding.message));
    let remedy = said(&shown::line(&finding.remedy));
    let place = places.shown(finding.labels[0].place);
    let mut parts = place.rsplitn(3, ':');
    let (_, row, path) = (parts.next(), parts.next(), parts.next());
    let row = row.unwrap_or_default();
    let path = path.unwrap_or_default();
    let aside = aside(finding);
    format!("{begin}{aside}. {message}. {remedy} See line {row} of {path}.").replace("..", ".")
}

fn cured(finding: &Finding) -> String {
    let message = said(&shown::line(&finding.message));
    format!("Cured ({}). It was: {message}.\n", finding.level.word()).replace("..", ".")
}

/// Spells out signs and units where they stand as words of their own.
pub(super) fn said(text: &str) -> String {
    text.split(' ').map(word).collect::<Vec<_>>().join(" ")
}

fn word(word: &str) -> String {
    let bare = word.trim_end_matches([',', '.', ';', ':', ')']);
    let end = &word[bare.len()..];
    match SAID.iter().find(|(sign, _)| *sign == bare) {
        Some((_, words)) => format!("{words}{end}"),
        None => word.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn units_are_spelled_out_and_words_are_left_alone() {
        assert_eq!(
            said("by 5.4 mm, good to ± 0.6 mm: 10 % of 3 deg (at least 5 mm)"),
            "by 5.4 millimetres, good to plus or minus 0.6 millimetres: 10 percent of 3 degrees \
             (at least 5 millimetres)"
        );
        assert_eq!(said("a commodore's command"), "a commodore's command");
    }
}
