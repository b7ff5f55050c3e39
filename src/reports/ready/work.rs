//! The work left on a boat, in the order in which it is done, because each step disturbs the next.

use super::super::figures_text::rounded;
use super::page::Page;
use crate::rules::Finding;
use crate::rules::Level;

/// A step of the work, and the rules whose remedies belong to it.
type Step = (&'static str, &'static [&'static str]);

/// Every step. What is broken comes before all, since a new part is measured anew.
const STEPS: [Step; 12] = [
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
    /// The step of the work.
    pub(super) step: &'static str,
    /// The findings, the worst first.
    pub(super) findings: Vec<&'r Finding>,
}

impl Job<'_> {
    /// Returns where it is to be done.
    pub(super) fn places(&self, boat: &str) -> String {
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
        let first = self.findings[0];
        let letter = first.level.word()[..1].to_uppercase();
        let by = first.value.filter(|_| self.findings.len() == 1).and_then(|value| {
            let good = value.uncertainty.filter(|good| *good > 0.0)?;
            let places = if value.unit == "deg" { 2 } else { 1 };
            let number = rounded(value.number, places);
            Some(format!(" ({number} {unit} ± {good:.places$} {unit})", unit = value.unit))
        });
        let (rule, remedy) = (first.rule.id, &first.remedy);
        let by = by.unwrap_or_default();
        format!("{letter} {}, {rule}{by}: {remedy}", self.places(boat))
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

/// Returns the work left: every finding that stands and is more than a note, in the order of the
/// work, what asks for the same thing together.
pub(super) fn left<'r>(page: &Page<'r>) -> Vec<Job<'r>> {
    let mut all: Vec<(usize, usize, &Finding)> = Vec::new();
    let open = page.findings.iter().copied();
    for finding in open.filter(|one| one.waived.is_none() && one.level > Level::Note) {
        let (step, within) = rank(finding);
        all.push((step, within, finding));
    }
    all.sort_by(|one, other| {
        let key = |(step, within, _): &(usize, usize, &Finding)| (*step, *within);
        key(one).cmp(&key(other)).then(other.2.level.cmp(&one.2.level))
    });
    let mut jobs: Vec<Job> = Vec::new();
    for (step, _, finding) in all {
        let same = |job: &&mut Job| {
            let first = job.findings[0];
            first.rule.id == finding.rule.id && first.remedy == finding.remedy
        };
        match jobs.iter_mut().find(same) {
            Some(job) => job.findings.push(finding),
            None => jobs.push(Job { step: STEPS[step].0, findings: vec![finding] }),
        }
    }
    jobs
}

/// Returns the step of a finding and its place within it; what no step has concerns the book.
fn rank(finding: &Finding) -> (usize, usize) {
    let within = |(step, (_, rules)): (usize, &Step)| {
        let within = rules.iter().position(|rule| *rule == finding.rule.id)?;
        Some((step, within))
    };
    STEPS.iter().enumerate().find_map(within).unwrap_or((STEPS.len() - 1, 0))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules;

    #[test]
    fn every_rule_of_a_step_is_a_rule_and_stands_in_one_step() {
        let mut all: Vec<&str> = STEPS.iter().flat_map(|(_, rules)| *rules).copied().collect();
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
