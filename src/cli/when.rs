//! `history --when`: since when a finding stands, and where it was cured.

use std::collections::HashMap;

use super::arguments::History;
use super::arguments::PastFormat;
use super::book;
use super::exit::Exit;
use super::lint::today;
use super::look::look;
use super::output::Done;
use super::past::OpenPast;
use super::past::committed_on;
use super::past::refused;
use super::then::Judge;
use super::then::Then;
use crate::history::Cell;
use crate::history::Graph;
use crate::history::Past;
use crate::history::State;
use crate::history::Step;
use crate::history::Walked;
use crate::reports;
use crate::reports::FoundRow;
use crate::reports::Since;
use crate::rules;
use crate::rules::Level;
use crate::rules::Looks;
use crate::rules::Rule;
use crate::store::BlobId;
use crate::units::Date;

/// What a step has of a finding, by number: not, or at a level.
const LEVELS: [Option<Level>; 5] =
    [None, Some(Level::Note), Some(Level::Unsure), Some(Level::Fault), Some(Level::Danger)];

/// The number of what can't be told.
const UNCLEAR: usize = LEVELS.len();

/// Tells when a rule's finding first stood at the name asked for, and where it was cured.
pub(super) fn run(
    arguments: &History,
    open: &OpenPast,
    walked: &Walked,
    pasts: &[Past],
    rule: &str,
    cut: Option<String>,
) -> Result<Done, Done> {
    let rule = rules::find(rule).ok_or_else(|| no_rule(rule))?;
    let mut rows = Vec::new();
    for past in pasts {
        let seek = Seek { open, walked, past, name: &arguments.name, rule };
        rows.extend(seek.rows()?);
    }
    let since = Since { name: arguments.name.clone(), rule: rule.id, rows, cut };
    let result = match arguments.format {
        PastFormat::Text => reports::since_text(&since, look(&arguments.look)),
        PastFormat::Json => reports::since_json(&since),
        PastFormat::Markdown => reports::since_markdown(&since),
    };
    Ok(Done { exit: Exit::Clear, result, told: open.told.clone() })
}

fn no_rule(rule: &str) -> Done {
    let ids: Vec<&str> = rules::RULES.iter().map(|rule| rule.id).collect();
    let told = book::unknown("rule", rule, &ids, "Every rule there is: tholebook rules");
    Done::refused(Exit::Usage, told)
}

struct Seek<'s> {
    open: &'s OpenPast,
    walked: &'s Walked,
    past: &'s Past,
    name: &'s str,
    rule: &'static Rule,
}

/// What decides what a rule says: the record's oars, the texts and, where it counts, the day.
type Deciding = (Option<String>, Vec<(String, BlobId)>, Option<Date>);

impl Seek<'_> {
    fn rows(&self) -> Result<Vec<FoundRow>, Done> {
        let mut graph = Graph::default();
        let mut judge = Judge::new(self.open, self.past);
        let mut known: HashMap<Deciding, usize> = HashMap::new();
        for number in 0..self.walked.steps.len() {
            let found = self.found(number, &mut judge, &mut known)?;
            graph.add(self.walked.parents(number), found);
        }
        let cell = |state: usize| match state {
            UNCLEAR => Cell::Unclear,
            0 => Cell::Value(0),
            _ => Cell::Value(1),
        };
        let traced = graph.trace(cell);
        let mut rows = Vec::new();
        for (number, node) in graph.nodes.iter().enumerate() {
            let stood = node.parents.iter().any(|own| traced[*own].cell == Cell::Value(1));
            let level = LEVELS.get(node.state).copied().flatten();
            if traced[number].origin != number
                || node.state == UNCLEAR
                || (level.is_none() && !stood)
            {
                continue;
            }
            let made = self.open.made(self.walked.steps[node.commit])?;
            rows.push(FoundRow { name: self.past.key.id.clone(), made, level });
        }
        Ok(rows)
    }

    fn found(
        &self,
        number: usize,
        judge: &mut Judge<'_>,
        known: &mut HashMap<Deciding, usize>,
    ) -> Result<usize, Done> {
        let step = self.walked.steps[number];
        let node = &self.past.graph.nodes[self.past.graph.of_commit(number)];
        let state = &self.past.states[node.state];
        let record = state.record();
        let unreadable = !matches!(self.rule.looks, Looks::WhileReading);
        if matches!(state, State::Unclear(_)) || record.is_some_and(|own| unreadable && !own.whole)
        {
            return Ok(UNCLEAR);
        }
        let oars = record.and_then(|record| record.oars.clone());
        let Step::Commit(id) = step else { return self.judged(step, judge, oars.as_deref()) };
        let records = self.open.repository.records(id).map_err(|error| refused(&error))?;
        let texts = records.iter().map(|text| (text.path.to_string(), text.blob)).collect();
        let on = self.depends_on_the_day().then(|| self.day(id)).transpose()?;
        let deciding = (oars.clone(), texts, on);
        if let Some(found) = known.get(&deciding) {
            return Ok(*found);
        }
        let found = self.judged(step, judge, oars.as_deref())?;
        known.insert(deciding, found);
        Ok(found)
    }

    fn depends_on_the_day(&self) -> bool {
        matches!(self.rule.looks, Looks::AtTheBook(_) | Looks::WhileWaiving)
    }

    fn day(&self, id: crate::store::CommitId) -> Result<Date, Done> {
        Ok(committed_on(&self.open.details(id)?).unwrap_or_else(today))
    }

    fn judged(&self, step: Step, judge: &mut Judge<'_>, oars: Option<&str>) -> Result<usize, Done> {
        let worst = judge.then(step, oars)?.and_then(|then| self.worst(then));
        Ok(LEVELS.iter().position(|level| *level == worst).unwrap_or(0))
    }

    fn worst(&self, then: &Then) -> Option<Level> {
        let record = self.past.key.id.as_str();
        let own = then.checked.findings.iter().filter(|finding| {
            finding.rule == self.rule
                && finding.name.is_within(self.name)
                && finding.name.is_within(record)
        });
        own.map(|finding| finding.level).max()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_level_has_its_number() {
        for level in Level::ALL {
            assert!(LEVELS.contains(&Some(level)), "{}", level.word());
        }
        assert_eq!(LEVELS.len(), Level::ALL.len() + 1);
    }
}
