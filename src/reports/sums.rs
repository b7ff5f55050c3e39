//! A reading's own sums, step by step: what was read, the sum, how good it is, the limit, the
//! verdict, and what to measure next. Judges nothing: every verdict is the rule's own.

use super::cautions::NO_PERMISSION;
use super::cautions::WHERE_THE_SUMS_STOP;
use super::cautions::is_about_the_rowlock;
use super::look::Look;
use super::place::Places;
use super::putting_in::numbers_put_in;
use super::shown;
use super::sums_in_full;
use super::telling;
use crate::metrology::Part;
use crate::metrology::decision::GRAIN;
use crate::model::Book;
use crate::model::Place;
use crate::model::Tool;
use crate::rules::Against;
use crate::rules::Finding;
use crate::rules::NotChecked;
use crate::rules::Sharper;
use crate::rules::Sum;
use crate::working::BoatSight;
use crate::working::Input;
use crate::working::SeatSight;
use crate::working::Tools;

/// Below a heading.
const INDENT: &str = "    ";

/// Below the first line of one of several.
const HANGING: &str = "      ";

/// Headings of the verdict, of what was found, and of what to do.
type Headings = (&'static str, &'static str, &'static str);

const OF_THE_VALUE: Headings = ("The verdict", "What was found", "What to do");

/// Those of a number that somebody wrote down, told beside the value itself: it may be wrong where
/// no reading is.
const OF_THE_WRITTEN: Headings = (
    "Apart from that, the number written under worked-out",
    "What was found of the number written down, not of the reading",
    "What to do about the number written down",
);

/// Less than this changes no figure that is shown.
const NEXT_TO_NOTHING: f64 = 0.000_5;

/// The sums that were asked for, with what else is known at the same name.
#[derive(Clone, Copy, Debug)]
pub struct SumsAsked<'r> {
    /// The book.
    pub book: &'r Book,
    /// The name that was asked for.
    pub name: &'r str,
    /// Every worked-out value to be told.
    pub sums: &'r [&'r Sum],
    /// What was found.
    pub findings: &'r [&'r Finding],
    /// What could not be looked at.
    pub not_checked: &'r [&'r NotChecked],
    /// Whether to add the metrologist's words.
    pub full: bool,
}

/// Sections of a report, one under the other.
pub(super) struct Sheet {
    out: String,
    look: Look,
}

impl Sheet {
    pub(super) fn section(&mut self, heading: &str, lines: &[String]) {
        self.out.push_str(&format!("\n  {}\n", self.look.heading().style(heading)));
        for line in lines {
            let (own, deeper) = match line.strip_prefix(' ') {
                Some(own) => (own, true),
                None => (&**line, false),
            };
            let first = if deeper { HANGING } else { INDENT };
            self.out.push_str(&self.look.hanging(own, first, HANGING));
            self.out.push('\n');
        }
    }

    fn title(&mut self, title: &str) {
        let blank = if self.out.is_empty() { "" } else { "\n" };
        let title = self.look.wrapped(&shown::line(title), "");
        self.out.push_str(&format!("{blank}{}\n", self.look.heading().style(title)));
    }
}

/// Returns the sums that were asked for, step by step.
#[must_use]
pub fn sums(asked: SumsAsked, look: Look) -> String {
    let mut sheet = Sheet { out: String::new(), look };
    let places = Places::new(asked.book);
    for alike in grouped(asked.sums) {
        told(&mut sheet, asked, &places, &alike);
    }
    for missing in asked.not_checked {
        let what = missing.missing.iter().map(|what| shown::line(what)).collect::<Vec<_>>();
        sheet.title(&format!("{}  {}", missing.rule, missing.name));
        let verdict = format!("Not checked. What is missing: {}.", what.join(", "));
        sheet.section("The verdict", &[verdict]);
    }
    let unsummed = |finding: &&&Finding| !asked.sums.iter().any(|sum| is_of(finding, sum));
    for finding in asked.findings.iter().filter(unsummed) {
        sheet.title(&format!("{}  {}", finding.rule.id, finding.name));
        sheet.section("What was found, without a sum", &[shown::line(&finding.message)]);
        sheet.section("What to do", &[shown::line(&finding.remedy)]);
    }
    of_the_pin(&mut sheet, asked);
    let mut cautions = vec![NO_PERMISSION.to_owned()];
    if asked.sums.iter().any(|sum| is_about_the_rowlock(sum.rule)) {
        cautions.insert(0, WHERE_THE_SUMS_STOP.to_owned());
    }
    sheet.title("Caution");
    for caution in cautions {
        sheet.out.push_str(&format!("{}\n", look.wrapped(&caution, INDENT)));
    }
    sheet.out
}

/// Tells what the readings of a seat can tell of her pin, where its pitch or its pin is asked for.
fn of_the_pin(sheet: &mut Sheet, asked: SumsAsked) {
    let record = asked.name.split('/').next().unwrap_or_default();
    let Some(boat) = asked.book.boat(record) else { return };
    let is_asked = |seat: &SeatSight| {
        let Some(below) = asked.name.strip_prefix(seat.name().as_str()) else { return false };
        let is_within = |part: &str| below == part || below.starts_with(&format!("{part}/"));
        matches!(below, "" | "/pin") || is_within("/pitch") || is_within("/pin/lean")
    };
    let Some(seat) = BoatSight::new(asked.book, boat).seats().find(is_asked) else { return };
    sheet.title(&format!("What the readings tell of the pin  {}", seat.name()));
    sheet.section("What can be told apart", &telling::tells(&seat));
    let next = telling::next(&seat, true);
    let numbered = (1..).zip(&next).map(|(number, next)| format!(" {number}. {next}"));
    let lines = std::iter::once(telling::heading(&next).to_owned()).chain(numbered);
    sheet.section("What to measure next", &lines.collect::<Vec<_>>());
}

/// Returns the sums with those that judge one and the same value put together.
fn grouped<'r>(sums: &[&'r Sum]) -> Vec<Vec<&'r Sum>> {
    let mut groups: Vec<Vec<&Sum>> = Vec::new();
    for sum in sums {
        let same = |group: &&mut Vec<&Sum>| {
            let first = group[0];
            !first.value.parts().is_empty() && first.value == sum.value && first.unit == sum.unit
        };
        match groups.iter_mut().find(same) {
            Some(group) => group.push(sum),
            None => groups.push(vec![sum]),
        }
    }
    groups
}

fn told(sheet: &mut Sheet, asked: SumsAsked, places: &Places, alike: &[&Sum]) {
    let Some(sum) = alike.first() else { return };
    sheet.title(&format!("{}  {}", sum.rule.id, sum.name));
    sheet.section("What the rule objects to", &[sum.rule.checks.to_owned()]);
    sheet.section("What was read", &read(asked.book, places, sum));
    let mut formula = vec![sum.rule.formula.to_owned()];
    formula.push(numbers_put_in(sum));
    sheet.section("The sum", &formula);
    sheet.section("The result", &result(sum));
    for judged in alike {
        let with = if alike.len() > 1 { format!(" ({})", judged.rule.id) } else { String::new() };
        let beside = alike.len() > 1 && matches!(judged.against, Against::Written { .. });
        let (verdict, found, to_do) = if beside { OF_THE_WRITTEN } else { OF_THE_VALUE };
        if !beside {
            sheet.section(&format!("The limit{with}"), &judged.limit());
        }
        sheet.section(&format!("{verdict}{with}"), &[judged.verdict()]);
        for finding in asked.findings.iter().filter(|finding| is_of(finding, judged)) {
            sheet.section(found, &[shown::line(&finding.message)]);
            sheet.section(to_do, &[shown::line(&finding.remedy)]);
        }
    }
    let sharper = sum.sharper(tools(asked.book, sum));
    sheet.section("What would sharpen it most", &[next(asked.book, places, sum, sharper)]);
    if asked.full {
        sums_in_full::add(sheet, alike);
    }
}

/// Whether a finding is of this sum; of an oar set, the finding names the odd oar.
fn is_of(finding: &Finding, sum: &Sum) -> bool {
    // A written value is found by what is written, not by what the readings give; and a boat can
    // have several sums of one rule.
    let same = matches!(sum.against, Against::Written { .. })
        || finding.value.is_none_or(|value| (value.number - sum.value.value()).abs() < GRAIN);
    finding.rule.id == sum.rule.id && finding.name.is_within(sum.name.as_str()) && same
}

fn tools<'b>(book: &'b Book, sum: &Sum) -> Tools<'b> {
    let record = sum.name.as_str().split('/').next().unwrap_or_default();
    let boat = book.boat(record).map(|boat| BoatSight::new(book, boat).tools);
    boat.unwrap_or_else(|| Tools::of_club(book))
}

/// Returns each reading with its place, its tool, how finely it was read and what it does.
fn read(book: &Book, places: &Places, sum: &Sum) -> Vec<String> {
    let shares = sum.value.shares();
    let share = |input: &Input| {
        shares.iter().find(|(own, _)| own == input).map_or(0.0, |(_, share)| *share)
    };
    let mut parts: Vec<&Part<Input>> = sum.value.parts().iter().collect();
    if parts.is_empty() {
        return vec![
            "Nothing is measured here: it is counted, or both are one reading.".to_owned(),
        ];
    }
    parts.sort_by(|one, other| share(&other.input).total_cmp(&share(&one.input)));
    let each = |part: &&Part<Input>| {
        let Input { what, place, value, unit, tool } = part.input;
        let value = number(value, unit.word());
        let finely = number(part.half_width, unit.word());
        let read = if part.half_width <= 0.0 {
            format!("{what}: {value}, taken as it stands.")
        } else if tool == Tool::Dip {
            format!("{what}: {value}, known to ± {finely}.")
        } else {
            format!("{what}: {value}, read with {} to ± {finely}.", tool.words())
        };
        let doubt = format!(" {}. {}", effect(part, sum), of_the_doubt(share(&part.input)));
        [read, format!(" {}", whereabouts(book, places, place)), doubt]
    };
    parts.iter().flat_map(each).collect()
}

fn of_the_doubt(share: f64) -> String {
    let percent = 100.0 * share;
    match percent {
        percent if percent >= 0.5 => format!("{percent:.0} % of the doubt comes from it."),
        percent if percent > 0.0 => "Less than 1 % of the doubt comes from it.".to_owned(),
        _ => "No doubt comes from it.".to_owned(),
    }
}

fn effect(part: &Part<Input>, sum: &Sum) -> String {
    let unit = if part.input.unit.word().is_empty() { "unit" } else { part.input.unit.word() };
    let by = part.sensitivity;
    if by.abs() < NEXT_TO_NOTHING {
        return format!("1 {unit} more of it changes next to nothing");
    }
    let more = if by > 0.0 { "more" } else { "less" };
    let amount = number(by.abs(), sum.unit.word());
    format!("1 {unit} more of it makes the result {amount} {more}")
}

/// Returns the file and line of a reading, and its name where it has one.
fn whereabouts(book: &Book, places: &Places, place: Place) -> String {
    let file = book.file(place.file);
    let line = places.start(place).line;
    if file.built_in {
        return format!("a figure of the program's own class, {}", shown::line(&file.path));
    }
    let at = format!("{}:{line}", shown::line(&file.path));
    let written = book.written_in(place.file).iter().find(|own| own.place == place);
    written.map_or(at.clone(), |own| format!("{at} ({})", shown::line(own.name.as_str())))
}

fn result(sum: &Sum) -> Vec<String> {
    let mut told = vec![format!("{}.", sum.result())];
    let shares = sum.value.shares();
    let Some((most, share)) = shares.first() else { return told };
    let alike = shares.iter().filter(|(input, _)| input.what == most.what);
    let (count, of_all) = alike.fold((0, 0.0), |(count, all), (_, share)| (count + 1, all + share));
    let percent = |share: f64| format!("{:.0} %", 100.0 * share);
    told.push(match (shares.len(), count) {
        (1, _) => format!("All of the doubt comes from the {}.", most.what),
        (_, 1) => format!("Most of the doubt comes from the {}: {}.", most.what, percent(*share)),
        _ => format!(
            "Most of the doubt comes from the {count} readings of the {}: {} together.",
            most.what,
            percent(of_all)
        ),
    });
    told
}

fn next(book: &Book, places: &Places, sum: &Sum, sharper: Option<Sharper>) -> String {
    let Some(Sharper { what, place, with, good_to }) = sharper else {
        return if sum.value.parts().is_empty() {
            "Nothing: no reading is in doubt.".to_owned()
        } else {
            "No tool at hand reads finer. Read it several times.".to_owned()
        };
    };
    let at = whereabouts(book, places, place);
    let (now, then) = (sum.figure(sum.value.expanded()), sum.figure(good_to));
    if now == then {
        return format!(
            "Little is won: with the {what} read again {with}, it stays good to ± {now}."
        );
    }
    format!(
        "Read the {what} again {with}: {at}. Then the result is good to ± {then}; now it is ± {now}."
    )
}

/// Returns a number with its unit, and no more decimals than it needs.
pub(super) fn number(value: f64, unit: &str) -> String {
    let places = match unit {
        "mm" | "%" | "kg" => 1,
        "deg" => 2,
        "times" | "days" => 0,
        _ => 3,
    };
    let shown = format!("{value:.places$}");
    let text = if is_nought(shown.trim_start_matches('-')) { format!("{value:.3}") } else { shown };
    let text =
        if is_nought(text.trim_start_matches('-')) { format!("{value:.places$}") } else { text };
    let text = text.strip_prefix('-').filter(|rest| is_nought(rest)).unwrap_or(&text);
    format!("{text} {unit}").trim_end().to_owned()
}

fn is_nought(text: &str) -> bool {
    text.trim_start_matches(['0', '.']).is_empty()
}
