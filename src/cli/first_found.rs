//! `history --when`: since when a finding stands, and where it was cured.

use std::collections::HashMap;

use super::arguments::History;
use super::arguments::PastFormat;
use super::book;
use super::exit::Exit;
use super::lint::today;
use super::look::look;
use super::open_past::OpenPast;
use super::open_past::committed_on;
use super::output::Done;
use super::states::refused;
use super::verdicts::Judge;
use super::verdicts::Then;
use super::verdicts::is_other_boat;
use crate::history::Cell;
use crate::history::Graph;
use crate::history::Past;
use crate::history::RecordState;
use crate::history::Step;
use crate::history::Walked;
use crate::reading::RecordKind;
use crate::reports;
use crate::reports::FoundRow;
use crate::reports::Since;
use crate::rules;
use crate::rules::Level;
use crate::rules::Looks;
use crate::rules::Rule;
use crate::store::BlobId;
use crate::store::CommitId;
use crate::store::WAIVERS_FILE;
use crate::units::Date;

/// What a step has of a finding, by number: not, or at a level.
const LEVELS: [Option<Level>; 5] =
    [None, Some(Level::Note), Some(Level::Unsure), Some(Level::Fault), Some(Level::Danger)];

/// The number that is added where the finding was waived.
const WAIVED: usize = LEVELS.len();

/// The number of what can't be told.
const UNCLEAR: usize = 2 * LEVELS.len();

/// What a cell says of a finding: not there, there, there and waived.
const ABSENT: Cell = Cell::Value(0);
const STANDING: Cell = Cell::Value(1);
const AND_WAIVED: Cell = Cell::Value(2);

fn cell(state: usize) -> Cell {
    match state {
        UNCLEAR => Cell::Unclear,
        0 => ABSENT,
        1..WAIVED => STANDING,
        _ => AND_WAIVED,
    }
}

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
    if matches!(rule.looks, Looks::BesideEarlier) {
        return Err(beside_another_state(rule));
    }
    let (mut rows, mut stands) = (Vec::new(), false);
    for past in pasts {
        let seek = Seek { open, walked, past, name: &arguments.name, rule };
        let (own, still) = seek.rows()?;
        rows.extend(own);
        stands |= still;
    }
    let since = Since { name: arguments.name.clone(), rule: rule.id, rows, stands, cut };
    let result = match arguments.format {
        _ if arguments.spoken => reports::since_spoken(&since),
        PastFormat::Text => reports::since_text(&since, look(&arguments.look)),
        PastFormat::Json => reports::since_json(&since),
        PastFormat::Markdown => reports::since_markdown(&since),
    };
    Ok(Done { exit: Exit::Clear, result, told: open.told(walked)? })
}

/// What a rule says only of two states held beside each other stands at no commit by itself.
fn beside_another_state(rule: &Rule) -> Done {
    let told = format!(
        "{} is told of two states beside each other. For one commit: tholebook lint --at REV",
        rule.id
    );
    Done::refused(Exit::Usage, vec![told])
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

/// What was decided so far, and which texts are of boats that no rule about this one looks at.
#[derive(Default)]
struct Known {
    found: HashMap<Deciding, usize>,
    others: HashMap<(BlobId, Option<String>), bool>,
}

impl Seek<'_> {
    /// Returns each coming and going, and whether the finding stands at the end.
    fn rows(&self) -> Result<(Vec<FoundRow>, bool), Done> {
        let mut graph = Graph::default();
        let mut judge = Judge::new(self.open, self.walked, self.past, self.name);
        let mut known = Known::default();
        for number in 0..self.walked.steps.len() {
            let found = self.found(number, &mut judge, &mut known)?;
            graph.add(self.walked.parents(number), found);
            let all = self.walked.steps.len();
            self.open.progress.told("judging", number + 1, all, "commits");
        }
        let traced = graph.trace(cell);
        let found = |node: usize| [STANDING, AND_WAIVED].contains(&traced[node].cell);
        let mut rows = Vec::new();
        for (number, node) in graph.nodes.iter().enumerate() {
            let level = LEVELS.get(node.state % WAIVED).copied().flatten();
            let waived = traced[number].cell == AND_WAIVED;
            let stood = node.parents.iter().any(|parent| found(*parent));
            let turned = traced[number].origin == number && node.state != UNCLEAR;
            if turned && (level.is_some() || stood) {
                let made = self.open.made(self.walked.steps[node.commit])?;
                rows.push(FoundRow { name: self.past.key.id.clone(), made, level, waived, stood });
            }
        }
        Ok((rows, graph.last().is_some_and(found)))
    }

    fn found(
        &self,
        number: usize,
        judge: &mut Judge<'_>,
        known: &mut Known,
    ) -> Result<usize, Done> {
        let step = self.walked.steps[number];
        let node = &self.past.graph.nodes[self.past.graph.of_commit(number)];
        let state = &self.past.states[node.state];
        let record = state.record();
        let is_clear =
            !matches!(state, RecordState::Unclear(_)) && record.is_none_or(|own| own.whole);
        if !is_clear && !matches!(self.rule.looks, Looks::WhileReading) {
            return Ok(UNCLEAR);
        }
        let oars = judge.shared(record.and_then(|record| record.oars.clone()));
        let found = match step {
            Step::Commit(id) => self.at(id, oars, judge, known)?,
            Step::NotCommitted => self.judged(step, judge, oars.as_deref())?,
        };
        Ok(if found == 0 && !is_clear { UNCLEAR } else { found })
    }

    fn at(
        &self,
        id: CommitId,
        oars: Option<String>,
        judge: &mut Judge<'_>,
        known: &mut Known,
    ) -> Result<usize, Done> {
        let texts = self.deciding(id, oars.as_ref(), &mut known.others)?;
        let dated = self.depends_on_the_day();
        // A waiver ends on a day, but nothing is waived where nothing is found.
        let has_waivers = texts.iter().any(|(path, _)| path == WAIVERS_FILE);
        let on = (dated || has_waivers).then(|| self.day(id)).transpose()?;
        let on_any_day = (oars.clone(), texts.clone(), None);
        let deciding = (oars.clone(), texts, on);
        if let Some(found) = known.found.get(&deciding) {
            return Ok(*found);
        }
        if let Some(found) = known.found.get(&on_any_day).filter(|found| **found == 0) {
            return Ok(*found);
        }
        let found = self.judged(Step::Commit(id), judge, oars.as_deref())?;
        if found == 0 && !dated {
            known.found.insert(on_any_day, found);
        }
        known.found.insert(deciding, found);
        Ok(found)
    }

    /// Returns the texts of a commit that the rules about this record look at.
    fn deciding(
        &self,
        id: CommitId,
        oars: Option<&String>,
        others: &mut HashMap<(BlobId, Option<String>), bool>,
    ) -> Result<Vec<(String, BlobId)>, Done> {
        let repository = &self.open.repository;
        let records = repository.records(id).map_err(refused)?;
        let mut texts = Vec::new();
        let is_boat = self.past.key.kind == RecordKind::Boat;
        let is_known =
            |blob| is_boat && self.walked.other_boats.has(blob, oars.map(String::as_str));
        for text in records.iter() {
            if !text.link && is_known(text.blob) {
                continue;
            }
            let key = (text.blob, oars.cloned());
            let is_other = match others.get(&key) {
                Some(is_other) => *is_other,
                None if is_boat => {
                    let content = repository.content(text).map_err(refused)?;
                    is_other_boat(&content, &self.past.key.id, oars.map(String::as_str))
                }
                None => false,
            };
            others.insert(key, is_other);
            if !is_other {
                texts.push((text.path.to_string(), text.blob));
            }
        }
        Ok(texts)
    }

    fn depends_on_the_day(&self) -> bool {
        matches!(self.rule.looks, Looks::AtTheBook(_) | Looks::WhileWaiving)
    }

    fn day(&self, id: CommitId) -> Result<Date, Done> {
        Ok(committed_on(&self.open.details(id)?).unwrap_or_else(today))
    }

    fn judged(&self, step: Step, judge: &mut Judge<'_>, oars: Option<&str>) -> Result<usize, Done> {
        let worst = judge.then(step, oars)?.and_then(|then| self.worst(then));
        let level = worst.map(|(level, _)| level);
        let number = LEVELS.iter().position(|own| *own == level).unwrap_or(0);
        Ok(if worst.is_some_and(|(_, waived)| waived) { number + WAIVED } else { number })
    }

    /// Returns the worst of the findings that stand, else of those that are waived.
    fn worst(&self, then: &Then) -> Option<(Level, bool)> {
        let record = self.past.key.id.as_str();
        let own = then.checked.findings.iter().filter(|finding| {
            finding.rule == self.rule
                && finding.name.is_within(self.name)
                && finding.name.is_within(record)
        });
        let each = own.map(|finding| (finding.level, finding.waived.is_some()));
        each.max_by_key(|(level, waived)| (!waived, *level))
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
