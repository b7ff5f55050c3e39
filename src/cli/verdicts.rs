//! What the rules said of a value at a commit, with the limits, oars and waivers of that commit.

use std::collections::BTreeSet;
use std::collections::HashSet;

use rayon::prelude::*;

use super::lint::today;
use super::open_past::OpenPast;
use super::open_past::committed_on;
use super::output::Done;
use super::states::refused;
use crate::history::Past;
use crate::history::Step;
use crate::history::Walked;
use crate::model::Book;
use crate::model::Name;
use crate::model::Place;
use crate::reading;
use crate::reading::RecordKind;
use crate::reports::Objection;
use crate::reports::Verdict;
use crate::rules;
use crate::rules::Against;
use crate::rules::Check;
use crate::rules::Checked;
use crate::rules::Sum;
use crate::store::BlobId;
use crate::store::CommitId;
use crate::store::Content;
use crate::store::Named;
use crate::store::RepositoryError;
use crate::store::Store;
use crate::store::StoreError;
use crate::units::Date;
use crate::working::BoatSight;

/// A worked-out value that moves by less than this with a reading doesn't rest on it.
const NEXT_TO_NOTHING: f64 = 1e-6;

/// How many books are held in memory at once while they are judged.
const AT_ONCE: usize = 64;

/// A book as it was, and what the rules say of it.
pub(super) struct Then {
    pub(super) book: Book,
    pub(super) checked: Checked,
    sums: Vec<Sum>,
}

/// The texts of a book as they were, and the day they are judged on.
struct Texts {
    store: Store,
    as_of: Date,
}

/// A value that a verdict is asked for, and the boat's oars at that step.
pub(super) struct AskedOf<'a> {
    pub(super) step: Step,
    pub(super) name: &'a Name,
    pub(super) oars: Option<&'a str>,
}

/// The book as it was at the step that was asked for last: a long history has many.
pub(super) struct Judge<'p> {
    open: &'p OpenPast,
    walked: &'p Walked,
    past: &'p Past,
    /// Whether other boats with the same oars matter: only to a name that has the boat's own oars.
    shares: bool,
    then: Option<(Step, Option<Then>)>,
}

impl<'p> Judge<'p> {
    /// `whole` is the name that verdicts are asked for at, or below it.
    pub(super) fn new(open: &'p OpenPast, walked: &'p Walked, past: &'p Past, whole: &str) -> Self {
        let shares = Name::record(&past.key.id).at("oars").is_within(whole);
        Self { open, walked, past, shares, then: None }
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
        Ok(self.texts(step, oars)?.map(Texts::checked))
    }

    /// Returns the texts of a step that the rules about the record look at; none where there was
    /// no book.
    fn texts(&self, step: Step, oars: Option<&str>) -> Result<Option<Texts>, Done> {
        let is_boat = self.past.key.kind == RecordKind::Boat;
        let oars = self.shared(oars);
        let (store, as_of) = match step {
            Step::Commit(id) => {
                let as_of = committed_on(&self.open.details(id)?).unwrap_or_else(today);
                let others = &self.walked.other_boats;
                let is_short = |blob| others.in_short(blob).is_some();
                let is_other = |blob| is_boat && (others.has(blob, oars) || is_short(blob));
                let mut store = book_at(self.open, id, is_other)?;
                if let Some(store) = store.as_mut().filter(|_| is_boat && oars.is_some()) {
                    self.add_in_short(store, id, oars)?;
                }
                (store, as_of)
            }
            Step::NotCommitted => (self.open.folder.clone(), today()),
        };
        let Some(mut store) = store else { return Ok(None) };
        if is_boat {
            store.files.retain(|named| !is_other_boat(&named.content, &self.past.key.id, oars));
        }
        Ok(Some(Texts { store, as_of }))
    }

    /// Adds the boats that carry the same oars, by what of them matters.
    fn add_in_short(
        &self,
        store: &mut Store,
        id: CommitId,
        oars: Option<&str>,
    ) -> Result<(), Done> {
        let others = &self.walked.other_boats;
        let records = self.open.repository.records(id).map_err(refused)?;
        let same = records.iter().filter(|text| !text.link && !others.has(text.blob, oars));
        let named = same.filter_map(|text| {
            let content = Content::Text(others.in_short(text.blob)?);
            Some(Named { path: text.path.to_string(), content })
        });
        store.files.extend(named);
        store.files.sort_unstable_by(|one, other| one.path.cmp(&other.path));
        Ok(())
    }

    /// Returns what the rules said of each value: the worst of all that is found at it or rests on
    /// it; none where there was no book. Texts are read in turn, and many are judged at once.
    pub(super) fn verdicts(&self, asked: &[AskedOf<'_>]) -> Result<Vec<Option<Verdict>>, Done> {
        let by_step: Vec<&[AskedOf]> = asked.chunk_by(|a, b| a.step == b.step).collect();
        let mut verdicts = Vec::with_capacity(asked.len());
        for steps in by_step.chunks(AT_ONCE) {
            let read = |of: &&[AskedOf]| self.texts(of[0].step, of[0].oars);
            let texts: Vec<Option<Texts>> = steps.iter().map(read).collect::<Result<_, _>>()?;
            let judged: Vec<Vec<Option<Verdict>>> = texts
                .into_par_iter()
                .zip(steps.par_iter())
                .map(|(texts, asked)| judged(texts, asked))
                .collect();
            verdicts.extend(judged.into_iter().flatten());
            self.open.progress.told("judging", verdicts.len(), asked.len(), "changes");
        }
        Ok(verdicts)
    }
}

fn judged(texts: Option<Texts>, asked: &[AskedOf<'_>]) -> Vec<Option<Verdict>> {
    let then = texts.map(Texts::checked);
    asked.iter().map(|one| then.as_ref().map(|then| then.verdict(one.name))).collect()
}

impl Texts {
    fn checked(self) -> Then {
        let with = Check { as_of: self.as_of };
        let (book, faults) = reading::read(&self.store.name, self.store.files);
        let (mut checked, sums) = rules::check_with_sums(&book, &faults, with);
        checked.waive(&book, self.as_of);
        Then { book, checked, sums }
    }
}

impl Then {
    fn verdict(&self, name: &Name) -> Verdict {
        let places = self.places(name);
        let concerns = |finding: &&rules::Finding| {
            let points = || finding.labels.iter().any(|label| places.contains(&label.place));
            // A sum written down wrong is no fault of the readings that it points at.
            let points = || finding.rule.id != "sum-wrong" && points();
            finding.name.is_within(name.as_str()) || points()
        };
        let findings = self.checked.findings.iter().filter(concerns);
        let missed = |one: &rules::NotChecked| one.name.is_within(name.as_str());
        let judged = self.sums_of(name, &places).next().is_some();
        let missed = self.checked.not_checked.iter().any(missed);
        Verdict::of(findings, judged && !missed)
    }

    fn places(&self, name: &Name) -> Vec<Place> {
        let own = self.book.written().filter(|own| own.name == *name);
        own.map(|own| own.place).collect()
    }

    fn sums_of<'t>(&'t self, name: &'t Name, places: &'t [Place]) -> impl Iterator<Item = &'t Sum> {
        self.sums.iter().filter(move |sum| {
            let rests = || sum.value.parts().iter().any(|part| places.contains(&part.input.place));
            sum.name.is_within(name.as_str()) || rests()
        })
    }

    /// Returns the readings that a worked-out value rests on; none where the name is of no such.
    pub(super) fn rests_on(&self, whole: &str) -> BTreeSet<&Name> {
        let bare = whole.replace("/worked-out", "");
        let judged = self.sums.iter().filter(|sum| sum.name.is_within(&bare));
        let mut places: HashSet<Place> = HashSet::new();
        places.extend(judged.flat_map(|sum| sum.value.parts()).map(|part| part.input.place));
        let sights = self.book.boats.iter().map(|boat| BoatSight::new(&self.book, boat));
        for seat in sights.flat_map(|sight| sight.seats()) {
            let name = seat.name();
            let own = seat.sums().into_iter().filter(|sum| name.at(sum.key).as_str() == bare);
            let worked = own.filter_map(|sum| sum.worked.ok());
            for value in worked {
                places.extend(value.parts().iter().map(|part| part.input.place));
            }
        }
        let own = self.book.written().filter(|own| places.contains(&own.place));
        own.map(|own| &own.name).collect()
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

    /// Returns how finely a reading is read, as far as anything is worked out from it.
    pub(super) fn half_width(&self, name: &Name) -> f64 {
        let places = self.places(name);
        let parts = self.sums.iter().flat_map(|sum| sum.value.parts());
        let own = parts.filter(|part| places.contains(&part.input.place));
        own.map(|part| part.half_width).fold(0.0, f64::max)
    }

    /// Returns to what a reading would have to come for a rule to object to what is worked out
    /// from it, all else staying as it is. Of a danger, being clear must be shown: the rule objects
    /// as soon as the value is inside by less than it is good to.
    pub(super) fn objections(&self, name: &Name, number: f64) -> Vec<Objection> {
        let places = self.places(name);
        let mut all = Vec::new();
        for sum in &self.sums {
            let Against::Limit { danger, .. } = sum.against else { continue };
            let own = sum.value.parts().iter();
            let own = own.filter(|part| places.contains(&part.input.place));
            let by: f64 = own.map(|part| part.sensitivity).sum();
            if by.abs() < NEXT_TO_NOTHING {
                continue;
            }
            let margin = if danger { sum.value.expanded() } else { 0.0 };
            let bounds = sum.against.bounds();
            let least = bounds.least.map(|own| (own + margin, by < 0.0));
            let most = bounds.most.map(|own| (own - margin, by > 0.0));
            all.extend(least.into_iter().chain(most).map(|(limit, is_above)| Objection {
                rule: sum.rule.id,
                at: number + (limit - sum.value.value()) / by,
                is_above,
            }));
        }
        all
    }
}

/// Returns the book of a commit; none where there was none.
fn book_at(
    open: &OpenPast,
    id: CommitId,
    left_out: impl Fn(BlobId) -> bool,
) -> Result<Option<Store>, Done> {
    match open.repository.at_without(id, left_out) {
        Ok(store) => Ok(Some(store)),
        Err(StoreError::Repository(RepositoryError::NoBook { .. })) => Ok(None),
        Err(error) => Err(refused(error)),
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
