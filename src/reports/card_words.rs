//! The words around the table of a rig card: what the boat is, and what stands against her.

use super::aside::aside;
use super::card::Subject;
use super::cautions::COLD_BENDING;
use super::cautions::NO_PERMISSION;
use super::cautions::WHERE_THE_SUMS_STOP;
use super::cautions::bends_metal;
use super::figures_text::rounded;
use super::look::Look;
use super::said::ago;
use super::shown;
use super::verdict::Verdict;
use super::verdict::with_letter;
use crate::model::Condition;
use crate::model::Defect;
use crate::model::LimitKey;
use crate::model::Name;
use crate::model::Part;
use crate::model::Placed;
use crate::model::Where;
use crate::rules::Finding;
use crate::rules::Level;
use crate::units::Date;
use crate::working::Worked;

pub(super) const NOT_AFLOAT: &str = "NOT TO GO AFLOAT";

/// Parts of her record that have a place of their own below the table.
const TOLD_APART: [&str; 4] = ["defects", "knocks", "rigged/walk-round", "rigged/level"];

/// Returns what stands above the table.
pub(super) fn head(subject: &Subject, look: Look) -> String {
    let boat = subject.boat.boat;
    let mut out = String::new();
    let mut title = boat.called().to_owned();
    if boat.called() != boat.id.value {
        title.push_str(&format!(" ({})", boat.id.value));
    }
    title.push_str(&format!(", class {}", said(boat.class.as_ref())));
    out.push_str(&format!("{}\n", look.heading().style(look.wrapped(&shown::line(&title), ""))));
    not_afloat(subject, look, &mut out);
    let mut add = |line: String| {
        out.push_str(&look.hanging(&shown::line(&line), "", "  "));
        out.push('\n');
    };
    add(day(subject));
    add(level(subject));
    add(oars(subject));
    out
}

/// Why she is not to go afloat, with every danger in full.
fn not_afloat(subject: &Subject, look: Look, out: &mut String) {
    let dangers: Vec<&&Finding> =
        subject.findings.iter().filter(|finding| finding.level == Level::Danger).collect();
    let out_of_use = &subject.boat.boat.out_of_use;
    if dangers.is_empty() && out_of_use.is_none() {
        return;
    }
    let style = look.of_level(Level::Danger);
    out.push_str(&format!("{}\n", style.style(NOT_AFLOAT)));
    if let Some(reason) = out_of_use {
        let since = reason.since.map_or_else(String::new, |day| format!(" since {}", day.value));
        let by = reason.by.as_ref().map_or_else(String::new, |by| format!(" by {}", by.value));
        let because = said(reason.because.as_ref());
        let line = format!("out of use{since}{by}: {because}");
        out.push_str(&format!("{}\n", look.hanging(&shown::line(&line), "  ", "    ")));
    }
    let mut before = "";
    for finding in dangers {
        found(finding, finding.remedy == before, look, out);
        before = &finding.remedy;
    }
}

pub(super) fn day(subject: &Subject) -> String {
    let rigged = &subject.boat.boat.rigged;
    let date = rigged.date.map_or("on no day".to_owned(), |date| {
        format!("{} ({})", date.value, ago(subject.report.as_of.days_after(date.value)))
    });
    let lay = match rigged.whereabouts.map(|lay| lay.value) {
        Some(Where::Trailer) => " on the trailer",
        Some(Where::Sand) => " on the sand",
        Some(Where::Afloat) => " afloat",
        None => "",
    };
    let by = said(rigged.by.as_ref());
    let checked_by = rigged.checked_by.as_ref();
    let checked = checked_by
        .map_or("checked by nobody".to_owned(), |who| format!("checked by {}", who.value));
    let mut words = format!("Rigged {date}{lay} by {by}, {checked}.");
    for again in &subject.boat.boat.read_again {
        let day = again.date.map_or("on no day".to_owned(), |day| day.value.to_string());
        let values: Vec<&str> = again.values.iter().map(|value| &*value.value).collect();
        let by = said(again.by.as_ref());
        words.push_str(&format!(" Read again {day} by {by}: {}.", values.join(", ")));
    }
    words
}

pub(super) fn level(subject: &Subject) -> String {
    let boat = &subject.boat;
    let axis = |called: &str, worked: &Worked| {
        let name = boat.boat.record().at("rigged/level").at(called);
        let judged = boat.in_force.limit(LimitKey::Level, Part::Most).is_some();
        let verdict = verdict(subject, &name, judged && worked.is_ok());
        match worked {
            Ok(angle) => {
                let number = rounded(angle.value(), 2);
                format!("{called} {number} deg, good to ± {:.2} deg: {verdict}", angle.expanded())
            }
            Err(_) if verdict == "-" => format!("{called} not measured"),
            Err(_) => format!("{called} not measured: {verdict}"),
        }
    };
    let mark = &boat.boat.level_mark;
    let mark = match (&mark.whereabouts, mark.found_afloat) {
        (Some(place), Some(day)) => format!("{}, found afloat {}", place.value, day.value),
        (Some(place), None) => format!("{}, never found afloat", place.value),
        (None, _) => "not recorded".to_owned(),
    };
    let (trim, roll) = (axis("trim", &boat.trim()), axis("roll", &boat.roll()));
    format!("Level: {trim}; {roll}. Level mark: {mark}.")
}

pub(super) fn oars(subject: &Subject) -> String {
    let boat = subject.boat.boat;
    let spares: Vec<&str> = boat.spares.iter().map(|spare| &*spare.value).collect();
    let spares = if spares.is_empty() { "none".to_owned() } else { spares.join(", ") };
    let measured = subject.boat.oars.and_then(|set| set.measured.date);
    let measured = measured.map_or_else(String::new, |day| format!(", measured {}", day.value));
    format!("Oars: {}{measured}; spares: {spares}.", said(boat.oars.as_ref()))
}

/// Returns what stands below the table: what is told of the boat as a whole, and the cautions.
pub(super) fn below(subject: &Subject, in_table: impl Fn(&Finding) -> bool, look: Look) -> String {
    let mut out = String::new();
    section("Open defects", &defects(subject), look, &mut out);
    section("Knocks since", &knocks(subject), look, &mut out);
    section("Walk round", &walk_round(subject), look, &mut out);
    let record = subject.boat.boat.record();
    let apart = |finding: &Finding| {
        TOLD_APART.iter().any(|part| finding.name.is_within(record.at(part).as_str()))
    };
    let rest = subject
        .findings
        .iter()
        .filter(|finding| finding.level != Level::Danger && !in_table(finding) && !apart(finding));
    for (number, finding) in rest.enumerate() {
        if number == 0 {
            out.push_str(&format!("\n{}\n", look.heading().style("The boat as a whole")));
        }
        found(finding, false, look, &mut out);
    }
    let set = subject.boat.oars.map(|set| format!(" --only {}", set.id.value)).unwrap_or_default();
    let more = format!("What to do at each value: tholebook lint --only {record}{set}");
    let bends = subject.findings.iter().any(|finding| bends_metal(finding.rule));
    let bending = bends.then_some(COLD_BENDING);
    let cautions = [&*more, WHERE_THE_SUMS_STOP].into_iter().chain(bending);
    for caution in cautions.chain([NO_PERMISSION]) {
        out.push_str(&format!("\n{}\n", look.wrapped(caution, "")));
    }
    out
}

fn section(called: &str, lines: &[String], look: Look, out: &mut String) {
    if lines.is_empty() {
        return;
    }
    out.push_str(&format!("\n{}\n", look.heading().style(called)));
    for line in lines {
        out.push_str(&look.hanging(&shown::line(line), "  ", "    "));
        out.push('\n');
    }
}

/// Adds a finding: its level, rule and message, and below what to do, unless that is as above.
fn found(finding: &Finding, as_above: bool, look: Look, out: &mut String) {
    let (level, rule, aside) = (with_letter(finding.level), finding.rule.id, aside(finding));
    let words = format!("{level} {rule}{aside}: {}", finding.message);
    let words = look.hanging(&shown::line(&words), "  ", "    ");
    let words = Verdict::Found(finding.level).coloured(&words, look);
    let remedy = if as_above { "What to do: as above." } else { &finding.remedy };
    let remedy = look.wrapped(&shown::line(remedy), "    ");
    out.push_str(&format!("{words}\n{remedy}\n"));
}

/// Every defect of the boat and of the oars aboard that is not put right.
pub(super) fn defects(subject: &Subject) -> Vec<String> {
    let boat = subject.boat.boat;
    let seats = boat.seats.iter().filter_map(|seat| seat.oar.as_ref());
    let mut ids: Vec<&Placed<String>> = seats.chain(&boat.spares).collect();
    ids.sort_by_key(|id| &id.value);
    ids.dedup_by_key(|id| &id.value);
    let oars = ids.into_iter().filter_map(|id| subject.report.book.oar(boat, id));
    let of_oars = oars.filter_map(|oar| {
        let name = subject.boat.oars?.name_of(oar);
        Some((format!("oar {}: ", oar.called()), name, &oar.defects))
    });
    let own = std::iter::once((String::new(), boat.record(), &boat.defects));
    let open = own.chain(of_oars).flat_map(|(whose, name, defects)| {
        let numbered = (1..).zip(defects).filter(|(_, defect)| is_open(defect));
        numbered.map(move |(number, defect)| (whose.clone(), name.clone(), number, defect))
    });
    let line = |(whose, name, number, defect): (String, Name, usize, &Defect)| {
        let found = on(defect.found);
        let part = defect.found.map_or_else(|| number.to_string(), |_| found.clone());
        let verdict = verdict(subject, &name.at("defects").at(part), false);
        format!("{whose}{}, found {found}: {verdict}", said(defect.what.as_ref()))
    };
    open.map(line).collect()
}

fn is_open(defect: &Defect) -> bool {
    defect.put_right.as_ref().is_none_or(|right| !right.missing().is_empty())
}

/// Every knock of the rigging day or later.
pub(super) fn knocks(subject: &Subject) -> Vec<String> {
    let boat = subject.boat.boat;
    let rigged = boat.rigged.date.map(|date| date.value);
    let since = |day: Option<Placed<Date>>| day.map(|day| day.value) >= rigged || day.is_none();
    let knocks = boat.knocks.iter().filter(|knock| since(knock.date));
    let line = |knock: &crate::model::Knock| {
        let day = on(knock.date);
        let at: Vec<&str> = knock.seats.iter().map(|seat| &*seat.value).collect();
        let at = if at.is_empty() { String::new() } else { format!(" ({})", at.join(", ")) };
        let checked = knock.date.is_some() && boat.rigged.date.is_some();
        let verdict = verdict(subject, &boat.record().at("knocks").at(&day), checked);
        format!("{day}: {}{at}: {verdict}", said(knock.what.as_ref()))
    };
    knocks.map(line).collect()
}

/// Every item of the walk round that is not in order, or was not looked at.
pub(super) fn walk_round(subject: &Subject) -> Vec<String> {
    let boat = subject.boat.boat;
    let record = boat.record().at("rigged/walk-round");
    let answers = &boat.rigged.walk_round;
    let bad = answers.iter().filter(|answer| answer.condition.value != Condition::Ok);
    let bad = bad.map(|answer| {
        let word = match answer.condition.value {
            Condition::Unfit => "not to be used",
            _ => "to be watched",
        };
        let verdict = verdict(subject, &record.at(&answer.item.value), false);
        format!("{}: {word}: {verdict}", answer.item.value)
    });
    let mut lines: Vec<String> = bad.collect();
    let asked = subject.boat.in_force.class.map_or(&[][..], |class| &class.walk_round);
    let answered =
        |item: &&Placed<String>| answers.iter().any(|answer| answer.item.value == item.value);
    let open: Vec<&str> =
        asked.iter().filter(|item| !answered(item)).map(|item| &*item.value).collect();
    if !open.is_empty() {
        lines.push(format!("not looked at: {}: U unsure", open.join(", ")));
    }
    lines
}

/// The verdict of a name in words.
fn verdict(subject: &Subject, name: &Name, checked: bool) -> String {
    let own = subject.findings.iter().copied();
    Verdict::of(own.filter(|finding| finding.name.is_within(name.as_str())), checked).words()
}

fn on(day: Option<Placed<Date>>) -> String {
    day.map_or_else(|| "on no day".to_owned(), |day| day.value.to_string())
}

fn said(text: Option<&Placed<String>>) -> &str {
    text.map_or("not said", |text| text.value.as_str())
}
