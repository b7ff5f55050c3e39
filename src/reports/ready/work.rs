//! The work left on a boat, in the order in which it is done, because each step disturbs the next.

use super::super::figures_text::rounded;
use super::page::Page;
use crate::planning::worklist::Step;
use crate::planning::worklist::Work;
use crate::planning::worklist::Worklist;
use crate::rules::Finding;
use crate::rules::Level;

/// A stage of the work, and the rules whose remedies belong to it.
type Stage = (&'static str, &'static [&'static str]);

/// Every stage. What is broken comes before all, since a new part is measured anew.
const STAGES: [Stage; 12] = [
    ("broken", &["defect-open", "oar-unfit"]),
    ("level", &["boat-not-level", "level-not-recorded"]),
    ("measure", &["gap-not-measured", "not-measured", "knocked-since", "overdue"]),
    ("pins", &["pin-not-vertical", "pitch-varies-through-arc", "arc-disagrees"]),
    ("bed", &["bed-wrong"]),
    ("pitch", &["pitch-out-of-range", "pitch-mismatch", "sides-unequal", "hands-set-pitch"]),
    (
        "gap",
        &[
            "bent-often",
            "oar-cannot-suit",
            "rowlock-not-free",
            "horn-hooks",
            "gap-too-tight",
            "gap-too-loose",
            "gap-rubs-in-roll",
        ],
    ),
    ("lift out", &["oar-did-not-lift-out", "lift-not-tried"]),
    (
        "collars",
        &["oars-unlike", "handle-past-mark-wrong", "handle-past-mark-disagrees", "gearing-unlike"],
    ),
    ("chocks", &["chock-distance", "chocks-unlike"]),
    ("walk round", &["walk-round"]),
    ("the book", &[]),
];

/// Something to do, and every finding that asks for it.
pub(super) struct Job<'r> {
    /// The stage of the work.
    pub(super) stage: &'static str,
    /// The work that is planned; none where a finding says itself what to do.
    pub(super) planned: Option<&'r Step>,
    /// The findings, the worst first; none, where the work follows from other work.
    pub(super) findings: Vec<&'r Finding>,
    /// What to do.
    pub(super) remedy: &'r str,
}

impl Job<'_> {
    /// Returns where it is to be done.
    pub(super) fn places(&self, boat: &str) -> String {
        if let Some(planned) = self.planned {
            return planned.seat.map_or_else(|| "boat".to_owned(), |seat| format!("seat {seat}"));
        }
        let mut places: Vec<String> = Vec::new();
        for finding in &self.findings {
            let place = place(finding.name.as_str(), boat);
            if !places.contains(&place) {
                places.push(place);
            }
        }
        match places.as_slice() {
            [most @ .., last] if !most.is_empty() && places.iter().all(|one| is_seat(one)) => {
                let bare = |one: &String| one.trim_start_matches("seat ").to_owned();
                let most: Vec<String> = most.iter().map(bare).collect();
                format!("seats {} and {}", most.join(", "), bare(last))
            }
            _ => places.join(", "),
        }
    }

    /// Returns the line that tells it.
    pub(super) fn line(&self, boat: &str) -> String {
        let (places, remedy) = (self.places(boat), self.remedy);
        let Some(first) = self.findings.first() else {
            let at = if is_seat(&places) { format!("{places}: ") } else { String::new() };
            return format!("{at}{remedy}");
        };
        let letter = first.level.word()[..1].to_uppercase();
        let by = first.value.filter(|_| self.findings.len() == 1).and_then(|value| {
            let good = value.uncertainty.filter(|good| *good > 0.0)?;
            let places = if value.unit == "deg" { 2 } else { 1 };
            let number = rounded(value.number, places);
            Some(format!(" ({number} {unit} ± {good:.places$} {unit})", unit = value.unit))
        });
        let by = by.unwrap_or_default();
        format!("{letter} {places}, {}{by}: {remedy}", self.rules().join(", "))
    }

    /// Returns the rules that ask for it, each once.
    fn rules(&self) -> Vec<&'static str> {
        let mut rules: Vec<&str> = Vec::new();
        for finding in &self.findings {
            if !rules.contains(&finding.rule.id) {
                rules.push(finding.rule.id);
            }
        }
        rules
    }
}

fn is_seat(place: &str) -> bool {
    place.starts_with("seat ")
}

/// Returns the seat of a name; of the boat as a whole, the boat; of an oar, the oar.
fn place(name: &str, boat: &str) -> String {
    let mut parts = name.split('/');
    let record = parts.next().unwrap_or_default();
    let part = parts.next().unwrap_or_default();
    match (part.strip_prefix("seat-"), record == boat) {
        (Some(number), true) => format!("seat {number}"),
        (_, true) => "boat".to_owned(),
        (_, false) => format!("{record} {part}").trim_end().to_owned(),
    }
}

/// The stage of a job and its place within it.
type Rank = (usize, usize);

/// Returns the work left, in its order: what is planned for her, what is to be read again before it,
/// and what is to be done for every other finding that stands and is more than a note; what asks for
/// the same thing together.
pub(super) fn left<'r>(page: &Page<'r>) -> Vec<Job<'r>> {
    let open = page.findings.iter().copied();
    let again = |one: &Finding| among(&page.plan.measure, one).is_some();
    let open = open.filter(|one| one.waived.is_none() && (one.level > Level::Note || again(one)));
    let (cured, other): (Vec<&Finding>, Vec<&Finding>) =
        open.partition(|one| among(&page.plan.cured, one).is_some());
    let mut jobs = planned(page);
    for finding in cured {
        for at in asking(page, &jobs, finding) {
            jobs[at].1.findings.push(finding);
        }
    }
    jobs.extend(told_by_themselves(page, other));
    jobs.sort_by_key(|(rank, _)| *rank);
    jobs.into_iter().map(|(_, job)| job).collect()
}

/// Returns the planned work; its own order is never changed.
fn planned<'r>(page: &Page<'r>) -> Vec<(Rank, Job<'r>)> {
    let mut last = 0;
    let job = |step: &'r Step| {
        last = last.max(stage(step.work));
        let stage = STAGES[last].0;
        ((last, 0), Job { stage, planned: Some(step), findings: Vec::new(), remedy: &step.deed })
    };
    page.plan.steps.iter().map(job).collect()
}

fn stage(work: Work) -> usize {
    let called = match work {
        Work::Level => "level",
        Work::PackPin | Work::BendPin | Work::ReplacePin => "pins",
        Work::BendForwardHorn | Work::ReplaceRowlock => "pitch",
        Work::BendAfterHorn => "gap",
        Work::ReadAgain => "lift out",
        Work::SlideCollar => "collars",
        Work::MoveChock | Work::MoveFootHole => "chocks",
    };
    STAGES.iter().position(|(own, _)| *own == called).unwrap_or(STAGES.len() - 1)
}

/// Returns which of the planned jobs put a finding right: those of its stage, at its seat where it
/// has one; where there is none, the side effect of another one.
fn asking(page: &Page, jobs: &[(Rank, Job)], finding: &Finding) -> Vec<usize> {
    let boat = &page.boat.boat.id.value;
    let own = place(finding.name.as_str(), boat);
    let at_seat = |job: &Job| !is_seat(&own) || job.places(boat) == own;
    let stage = rank(finding).0;
    let all = |fits: &dyn Fn(&(Rank, Job)) -> bool| -> Vec<usize> {
        (0..jobs.len()).filter(|at| fits(&jobs[*at])).collect()
    };
    let of_stage = all(&|(rank, job)| rank.0 == stage && at_seat(job));
    if !of_stage.is_empty() {
        return of_stage;
    }
    let first = all(&|(_, job)| at_seat(job)).into_iter().next();
    first.or((!jobs.is_empty()).then_some(0)).into_iter().collect()
}

/// Returns the findings that say themselves what to do. What is still open after the planned work
/// says what is to be done then.
fn told_by_themselves<'r>(page: &Page<'r>, findings: Vec<&'r Finding>) -> Vec<(Rank, Job<'r>)> {
    let mut findings: Vec<(Rank, &Finding)> =
        findings.into_iter().map(|finding| (rank_in(page.plan, finding), finding)).collect();
    findings.sort_by(|(one, first), (other, second)| {
        one.cmp(other).then(second.level.cmp(&first.level))
    });
    let mut jobs: Vec<(Rank, Job)> = Vec::new();
    for (rank, finding) in findings {
        let left = among(&page.plan.left, finding).unwrap_or(finding);
        let same = |(_, job): &&mut (Rank, Job)| {
            job.findings[0].rule.id == finding.rule.id && job.remedy == left.remedy
        };
        match jobs.iter_mut().find(same) {
            Some((_, job)) => job.findings.push(finding),
            None => {
                let (stage, findings) = (STAGES[rank.0].0, vec![finding]);
                jobs.push((rank, Job { stage, planned: None, findings, remedy: &left.remedy }));
            }
        }
    }
    jobs
}

fn among<'r>(findings: &'r [Finding], one: &Finding) -> Option<&'r Finding> {
    findings.iter().find(|own| own.rule == one.rule && own.name == one.name)
}

/// What is in doubt is read again before any metal is bent.
fn rank_in(plan: &Worklist, finding: &Finding) -> Rank {
    let (stage, within) = rank(finding);
    if among(&plan.measure, finding).is_none() {
        return (stage, within + 1);
    }
    let measure = STAGES.iter().position(|(called, _)| *called == "measure");
    // After what that stage has of its own, in the order of the work.
    (measure.unwrap_or(stage), STAGES[measure.unwrap_or(stage)].1.len() + 1 + stage)
}

/// Returns the stage of a finding and its place within it; what no stage has concerns the book.
fn rank(finding: &Finding) -> Rank {
    let within = |(stage, (_, rules)): (usize, &Stage)| {
        let within = rules.iter().position(|rule| *rule == finding.rule.id)?;
        Some((stage, within))
    };
    STAGES.iter().enumerate().find_map(within).unwrap_or((STAGES.len() - 1, 0))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules;

    #[test]
    fn every_rule_of_a_stage_is_a_rule_and_stands_in_one_stage() {
        let mut all: Vec<&str> = STAGES.iter().flat_map(|(_, rules)| *rules).copied().collect();
        for rule in &all {
            assert!(rules::find(rule).is_some(), "{rule}");
        }
        let count = all.len();
        all.sort_unstable();
        all.dedup();
        assert_eq!(all.len(), count);
    }

    #[test]
    fn a_place_is_a_seat_the_boat_or_an_oar() {
        assert_eq!(place("kittiwake/seat-2/rowlock/gap", "kittiwake"), "seat 2");
        assert_eq!(place("kittiwake/rigged/date", "kittiwake"), "boat");
        assert_eq!(place("long-ash/A2/inboard", "kittiwake"), "long-ash A2");
    }
}
