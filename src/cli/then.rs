//! What the rules said of a value at a commit, with the limits, oars and waivers of that commit.

use super::lint::today;
use super::output::Done;
use super::past::OpenPast;
use super::past::committed_on;
use super::past::refused;
use crate::history::Past;
use crate::history::Step;
use crate::model::Book;
use crate::model::Name;
use crate::model::Place;
use crate::reading;
use crate::reading::RecordKind;
use crate::reports::Verdict;
use crate::rules;
use crate::rules::Against;
use crate::rules::Check;
use crate::rules::Checked;
use crate::rules::Sum;
use crate::store::Content;
use crate::store::RepositoryError;
use crate::store::Store;
use crate::store::StoreError;

/// A book as it was, and what the rules say of it.
pub(super) struct Then {
    pub(super) book: Book,
    pub(super) checked: Checked,
    sums: Vec<Sum>,
}

/// The book as it was at the step that was asked for last: a long history has many.
pub(super) struct Judge<'p> {
    open: &'p OpenPast,
    past: &'p Past,
    /// Whether other boats with the same oars matter: only to a name that has the boat's own oars.
    shares: bool,
    then: Option<(Step, Option<Then>)>,
}

impl<'p> Judge<'p> {
    /// `whole` is the name that verdicts are asked for at, or below it.
    pub(super) fn new(open: &'p OpenPast, past: &'p Past, whole: &str) -> Self {
        let shares = Name::record(&past.key.id).at("oars").is_within(whole);
        Self { open, past, shares, then: None }
    }

    /// Returns the boat's oars, where other boats that carry them matter.
    pub(super) fn shared<T>(&self, oars: Option<T>) -> Option<T> {
        oars.filter(|_| self.shares)
    }

    /// Returns the book of a step, checked; none where there was no book.
    pub(super) fn then(&mut self, step: Step, oars: Option<&str>) -> Result<Option<&Then>, Done> {
        if self.then.as_ref().is_none_or(|(last, _)| *last != step) {
            self.then = Some((step, self.check(step, oars)?));
        }
        Ok(self.then.as_ref().and_then(|(_, then)| then.as_ref()))
    }

    fn check(&self, step: Step, oars: Option<&str>) -> Result<Option<Then>, Done> {
        let (store, as_of) = match step {
            Step::Commit(id) => {
                let as_of = committed_on(&self.open.details(id)?).unwrap_or_else(today);
                (book_at(self.open, id)?, as_of)
            }
            Step::NotCommitted => (self.open.folder.clone(), today()),
        };
        let Some(mut store) = store else { return Ok(None) };
        if self.past.key.kind == RecordKind::Boat {
            store.files.retain(|named| {
                !is_other_boat(&named.content, &self.past.key.id, self.shared(oars))
            });
        }
        let (book, faults) = reading::read(&store.name, store.files);
        let mut checked = rules::check(&book, &faults, Check { as_of });
        checked.waive(&book, as_of);
        let sums = rules::sums(&book, Check { as_of });
        Ok(Some(Then { book, checked, sums }))
    }

    /// Returns what the rules said of a value: the worst of all that is found at it or rests on it.
    pub(super) fn verdict(
        &mut self,
        step: Step,
        name: &Name,
        oars: Option<&str>,
    ) -> Result<Option<Verdict>, Done> {
        Ok(self.then(step, oars)?.map(|then| then.verdict(name)))
    }
}

impl Then {
    fn verdict(&self, name: &Name) -> Verdict {
        let places = self.places(name);
        let concerns = |finding: &&rules::Finding| {
            let points = || finding.labels.iter().any(|label| places.contains(&label.place));
            finding.name.is_within(name.as_str()) || points()
        };
        let findings = self.checked.findings.iter().filter(concerns);
        let missed = |one: &rules::NotChecked| one.name.is_within(name.as_str());
        let judged = self.sums_of(name, &places).next().is_some();
        let missed = self.checked.not_checked.iter().any(missed);
        Verdict::of(findings, judged && !missed)
    }

    fn places(&self, name: &Name) -> Vec<Place> {
        let own = self.book.written.iter().filter(|own| own.name == *name);
        own.map(|own| own.place).collect()
    }

    fn sums_of<'t>(&'t self, name: &'t Name, places: &'t [Place]) -> impl Iterator<Item = &'t Sum> {
        self.sums.iter().filter(move |sum| {
            let rests = || sum.value.parts().iter().any(|part| places.contains(&part.input.place));
            sum.name.is_within(name.as_str()) || rests()
        })
    }

    /// Returns the limits that hold for a reading itself, not for something worked out from it.
    pub(super) fn limits(&self, name: &Name, number: f64, unit: &str) -> Vec<(&'static str, f64)> {
        let places = self.places(name);
        let of_itself = |sum: &&Sum| {
            let is_near = (sum.value.value() - number).abs() <= sum.value.expanded();
            sum.name == *name && sum.unit.word() == unit && is_near
        };
        let mut own = self.sums_of(name, &places).filter(of_itself);
        let own = own.find(|sum| matches!(sum.against, Against::Limit { .. }));
        let bounds = own.map(|sum| sum.against.bounds());
        let least = bounds.and_then(|bounds| bounds.least).map(|least| ("least", least));
        let most = bounds.and_then(|bounds| bounds.most).map(|most| ("most", most));
        least.into_iter().chain(most).collect()
    }
}

/// Returns the book of a commit; none where there was none.
fn book_at(open: &OpenPast, id: crate::store::CommitId) -> Result<Option<Store>, Done> {
    match open.repository.at(id) {
        Ok(store) => Ok(Some(store)),
        Err(StoreError::Repository(RepositoryError::NoBook { .. })) => Ok(None),
        Err(error) => Err(refused(&error)),
    }
}

/// Returns whether a text is surely of a boat that no rule about this one looks at: it names
/// neither this boat nor her oars.
pub(super) fn is_other_boat(content: &Content, id: &str, oars: Option<&str>) -> bool {
    let Content::Text(text) = content else { return false };
    let names = |id: &str| text.contains(id);
    let is_boat = text.lines().any(|line| line.starts_with("boat:"));
    is_boat && !text.contains('\\') && !names(id) && !oars.is_some_and(names)
}
