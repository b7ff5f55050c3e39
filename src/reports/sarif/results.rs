//! Findings as results: level, place, identity, and how each stands to an earlier check.

use std::collections::BTreeMap;
use std::collections::HashMap;

use super::form::ArtifactLocation;
use super::form::Location;
use super::form::LogicalLocation;
use super::form::Outcome;
use super::form::OutcomeProperties;
use super::form::PhysicalLocation;
use super::form::Region;
use super::form::Suppression;
use super::rules;
use super::wording::message;
use super::wording::uri;
use crate::model::Book;
use crate::model::FileId;
use crate::reports::aside::aside;
use crate::reports::ended::Ended;
use crate::reports::ended::spot;
use crate::reports::place::Places;
use crate::reports::place::Position;
use crate::reports::shown;
use crate::rules::Finding;
use crate::rules::Label;
use crate::rules::Standing;

/// The folder that paths are told from: the top of the repository.
pub(super) const TOP: &str = "%SRCROOT%";

/// The key of a finding's identity, with the number of how that is made.
const FINGERPRINT: &str = "nameAndRule/v1";

/// How often each identity came up so far.
type Seen<'r> = HashMap<(&'r str, &'static str), usize>;

/// Returns every finding that is told, then what was cured, where it stood.
pub(super) fn results(ended: &Ended) -> Vec<Outcome> {
    let report = ended.report;
    let mut seen = Seen::new();
    let now = Telling { ended, book: report.book, places: Places::new(report.book) };
    let mut all: Vec<Outcome> = Vec::new();
    for finding in &report.checked.findings {
        // What is not told is counted all the same, so that the others keep their identity.
        let identity = identity(&mut seen, finding);
        if ended.show_waived || finding.waived.is_none() {
            all.push(now.outcome(finding, identity, finding.standing.map(state)));
        }
    }
    if let Some(earlier) = report.earlier {
        let then = Telling { ended, book: earlier.book, places: Places::new(earlier.book) };
        all.extend(earlier.cured.iter().map(|finding| {
            let identity = identity(&mut seen, finding);
            then.outcome(finding, identity, Some("absent"))
        }));
    }
    all
}

/// Returns what stays the same while lines move, values change and files are renamed.
fn identity<'r>(seen: &mut Seen<'r>, finding: &'r Finding) -> String {
    let count = seen.entry((finding.name.as_str(), finding.rule.id)).or_default();
    *count += 1;
    match *count {
        1 => format!("{} {}", finding.name, finding.rule.id),
        count => format!("{} {} #{count}", finding.name, finding.rule.id),
    }
}

const fn state(standing: Standing) -> &'static str {
    match standing {
        Standing::New => "new",
        Standing::Worse => "updated",
        Standing::Known => "unchanged",
    }
}

/// The book that findings point into.
struct Telling<'r> {
    ended: &'r Ended<'r>,
    book: &'r Book,
    places: Places<'r>,
}

impl<'r> Telling<'r> {
    fn outcome(
        &self,
        finding: &'r Finding,
        identity: String,
        baseline_state: Option<&'static str>,
    ) -> Outcome {
        // On a boat out of use nothing stops anything.
        let level = if finding.shown_only { "note" } else { rules::level(finding.level) };
        let words = format!("{}{}. {}", finding.message, aside(finding), finding.remedy);
        let (first, related) = self.locations(finding);
        Outcome {
            rule_id: finding.rule.id,
            rule_index: rules::index(finding.rule.id),
            level,
            rank: rules::rank(finding.level),
            message: message(&words),
            locations: [first],
            related_locations: related,
            partial_fingerprints: BTreeMap::from([(FINGERPRINT, identity)]),
            baseline_state,
            suppressions: self.ended.show_waived.then(|| suppressions(finding)),
            properties: OutcomeProperties { level: finding.level.word() },
        }
    }

    /// Returns the one place that is jumped to, and the others.
    fn locations(&self, finding: &'r Finding) -> (Location, Vec<Location>) {
        let spot = spot(self.book, &self.places, finding);
        let name = shown::line(finding.name.as_str());
        let first = Location {
            id: None,
            physical_location: self.physical(spot.file, spot.start, spot.end),
            logical_locations: vec![LogicalLocation { fully_qualified_name: name }],
            message: spot.label.map(message),
        };
        let in_book = finding.labels.iter().filter(|label| !self.places.file(label.place).built_in);
        let others = in_book.skip(1).enumerate();
        (first, others.map(|(at, label)| self.related(at + 1, label)).collect())
    }

    fn related(&self, id: usize, label: &Label) -> Location {
        let (start, end) = (self.places.start(label.place), self.places.end(label.place));
        Location {
            id: Some(id),
            physical_location: self.physical(label.place.file, start, end),
            logical_locations: Vec::new(),
            message: Some(message(&label.text)),
        }
    }

    fn physical(&self, file: FileId, start: Position, end: Position) -> PhysicalLocation {
        let uri = uri(&self.ended.path_of(self.book, file));
        PhysicalLocation {
            artifact_location: ArtifactLocation { uri, uri_base_id: TOP },
            region: Region {
                start_line: start.line,
                start_column: start.column,
                end_line: end.line,
                end_column: end.column,
            },
        }
    }
}

fn suppressions(finding: &Finding) -> Vec<Suppression> {
    let granted = finding.waived.iter();
    granted
        .map(|granted| Suppression {
            kind: "external",
            status: "accepted",
            justification: shown::line(&format!(
                "{} ({}, until {})",
                granted.because, granted.by, granted.until
            )),
        })
        .collect()
}
