//! `why`: a rule in full, or a reading's own sums step by step.

use super::arguments::Why;
use super::book;
use super::book::OpenBook;
use super::book::unknown;
use super::exit::Exit;
use super::lint::today;
use super::look::look;
use super::output::Done;
use crate::model::Name;
use crate::model::Place;
use crate::model::Written;
use crate::reports;
use crate::reports::SumsAsked;
use crate::reports::shown;
use crate::rules;
use crate::rules::Check;
use crate::rules::Checked;
use crate::rules::RULES;
use crate::rules::Rule;
use crate::rules::Sum;

/// Runs the command.
pub(super) fn run(arguments: &Why) -> Done {
    let what = &arguments.what;
    let rule = if arguments.rule.is_none() { rules::find(what) } else { None };
    if let Some(rule) = rule {
        return Done::result(reports::explain(rule, look(&arguments.look)));
    }
    named(arguments).unwrap_or_else(|refused| refused)
}

/// A word that is neither a name nor, in this book, a boat was meant for a rule.
fn no_rule(what: &str) -> Done {
    let known: Vec<&str> = RULES.iter().map(|rule| rule.id).collect();
    Done::refused(Exit::Usage, unknown("rule", what, &known, "All of them: tholebook rules"))
}

/// Everything a book says of itself, looked at once.
struct Asked<'b> {
    open: &'b OpenBook,
    name: &'b str,
    rule: Option<&'static Rule>,
    checked: Checked,
    sums: Vec<Sum>,
}

fn named(arguments: &Why) -> Result<Done, Done> {
    let name = arguments.what.trim_end_matches('/');
    let rule = match &arguments.rule {
        Some(rule) => Some(rules::find(rule).ok_or_else(|| no_rule(rule))?),
        None => None,
    };
    let open = book::open(arguments.book.as_deref(), None);
    let a_word = rule.is_none() && !arguments.what.contains('/');
    let open = open.map_err(|refused| if a_word { no_rule(&arguments.what) } else { refused })?;
    if a_word && open.book.boat(name).is_none() {
        return Err(no_rule(&arguments.what));
    }
    let with = Check { as_of: arguments.as_of.unwrap_or_else(today) };
    let checked = rules::check(&open.book, &open.faults, with);
    let sums = rules::sums(&open.book, with);
    let asked = Asked { open: &open, name, rule, checked, sums };
    let result = asked.told(arguments)?;
    Ok(Done { exit: Exit::Clear, result, told: open.told.clone() })
}

impl Asked<'_> {
    fn told(&self, arguments: &Why) -> Result<String, Done> {
        let look = look(&arguments.look);
        let of_rule = |id: &str| self.rule.is_none_or(|rule| rule.id == id);
        let here = |name: &Name| name.is_within(self.name);
        let findings: Vec<_> =
            self.checked.findings.iter().filter(|one| of_rule(one.rule.id)).collect();
        if self.rule.is_none() && self.open.book.boat(self.name).is_some() {
            let below: Vec<&Sum> = self.sums.iter().filter(|sum| here(&sum.name)).collect();
            return Ok(reports::names_to_ask(self.name, &findings, &below, look));
        }
        let sums: Vec<&Sum> = self.sums().into_iter().filter(|s| of_rule(s.rule.id)).collect();
        let findings: Vec<_> =
            findings.into_iter().filter(|one| self.concerns(one, &sums)).collect();
        let not_checked = self.checked.not_checked.iter();
        let not_checked: Vec<_> =
            not_checked.filter(|one| of_rule(one.rule) && here(&one.name)).collect();
        if sums.is_empty() && findings.is_empty() && not_checked.is_empty() {
            return self.nothing();
        }
        let (book, full) = (&self.open.book, arguments.full);
        let asked = SumsAsked {
            book,
            name: self.name,
            sums: &sums,
            findings: &findings,
            not_checked: &not_checked,
            full,
        };
        Ok(reports::sums(asked, look))
    }

    fn concerns(&self, finding: &rules::Finding, sums: &[&Sum]) -> bool {
        let of_sum = |sum: &&Sum| {
            sum.rule.id == finding.rule.id && finding.name.is_within(sum.name.as_str())
        };
        finding.name.is_within(self.name) || sums.iter().any(of_sum)
    }

    /// Returns every sum that is judged at the name, then those that rest on a reading there. A
    /// record as a whole has only its own.
    fn sums(&self) -> Vec<&Sum> {
        if !self.name.contains('/') {
            return self.sums.iter().filter(|sum| sum.name.as_str() == self.name).collect();
        }
        let read: Vec<Place> = self.written().map(|own| own.place).collect();
        let here = |sum: &&Sum| sum.name.is_within(self.name);
        let rests =
            |sum: &&Sum| sum.value.parts().iter().any(|part| read.contains(&part.input.place));
        let judged_here = self.sums.iter().filter(here);
        judged_here.chain(self.sums.iter().filter(|sum| !here(sum) && rests(sum))).collect()
    }

    fn written(&self) -> impl Iterator<Item = &Written> {
        self.open.book.written().filter(|own| own.name.is_within(self.name))
    }

    /// There is no such name, or nothing is worked out from it.
    fn nothing(&self) -> Result<String, Done> {
        let mut told = self.open.told.clone();
        if self.written().next().is_some() || !self.sums().is_empty() {
            let shown = shown::line(self.name);
            let Some(rule) = self.rule else {
                return Ok(format!(
                    "Nothing is worked out from {shown}, and nothing is wrong with it.\n"
                ));
            };
            told.push(format!(
                "{} works out nothing at {shown}. All that is worked out there: tholebook why {shown}",
                rule.id
            ));
            return Err(Done::refused(Exit::Usage, told));
        }
        let written = self.open.book.written().map(|own| own.name.as_str());
        let judged = self.sums.iter().map(|sum| sum.name.as_str());
        let found = self.checked.findings.iter().map(|finding| finding.name.as_str());
        let known: Vec<&str> = judged.chain(written).chain(found).collect();
        let record = self.name.split('/').next().unwrap_or_default();
        let see = match self.open.book.boat(record) {
            Some(_) => format!("All that can be asked: tholebook why {record}"),
            None => "A name begins with a boat's id, such as kittiwake/seat-2".to_owned(),
        };
        told.extend(unknown("reading", self.name, &known, &see));
        Err(Done::refused(Exit::Usage, told))
    }
}
