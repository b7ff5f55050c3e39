//! The way back through the commits: what each has of the records asked for, found by their ids in
//! whatever file they stood.

use std::collections::BTreeMap;
use std::collections::BTreeSet;
use std::collections::HashMap;
use std::rc::Rc;

use super::graph::Graph;
use super::library::Library;
use super::other_boats::OtherBoats;
use super::past::Past;
use super::past::RecordState;
use super::record::Held;
use super::record::Key;
use super::record::Record;
use crate::store::CommitId;
use crate::store::Moved;
use crate::store::Records;
use crate::store::Repository;
use crate::store::Store;
use crate::store::StoreError;

/// One step of a history.
#[derive(Clone, Copy, Debug, Eq, Hash, PartialEq)]
pub enum Step {
    /// A commit.
    Commit(CommitId),
    /// What lies in the folder and is not committed yet.
    NotCommitted,
}

/// What stands in one file at one step.
type Standing = (Rc<str>, Rc<Held>);

/// Every step of a history, none before those it follows from, and what stood there of the records
/// asked for.
pub struct Walked {
    /// The steps.
    pub steps: Vec<Step>,
    /// The steps that each follows from.
    parents: Vec<Vec<usize>>,
    /// Which of the `shelves` stood at each step.
    shelf_of: Vec<usize>,
    shelves: Vec<Vec<Standing>>,
    /// How many texts were read in full.
    pub read: usize,
    /// Texts of commits that are surely of a boat of another id, and don't name the id asked for.
    pub other_boats: OtherBoats,
    /// The moves of the book's folder, the newest first.
    pub moves: Vec<Moved>,
}

/// What is called while a history is walked: with how many commits were looked at, and of how many.
pub type Looked<'t> = &'t dyn Fn(usize, usize);

impl Walked {
    /// Walks the history that a commit follows from, and what lies in the folder after it. `id` is
    /// that of the records asked for; without one, all are.
    ///
    /// # Errors
    ///
    /// Something on the way is missing or damaged.
    pub fn back_from(
        repository: &Repository,
        from: Option<CommitId>,
        folder: Option<Store>,
        id: Option<&str>,
    ) -> Result<Self, StoreError> {
        Self::back_from_telling(repository, from, folder, id, &|_, _| {})
    }

    /// Walks as [`back_from`](Self::back_from) does, and calls `looked` after each commit.
    ///
    /// # Errors
    ///
    /// Something on the way is missing or damaged.
    pub fn back_from_telling(
        repository: &Repository,
        from: Option<CommitId>,
        folder: Option<Store>,
        id: Option<&str>,
        looked: Looked<'_>,
    ) -> Result<Self, StoreError> {
        let mut walked = Self {
            steps: Vec::new(),
            parents: Vec::new(),
            shelf_of: Vec::new(),
            shelves: Vec::new(),
            read: 0,
            other_boats: OtherBoats::default(),
            moves: Vec::new(),
        };
        let mut library = Library::new(repository, id);
        if let Some(from) = from {
            let ids = repository.walk(from)?;
            let here = folder.as_ref().map_or(&[][..], |folder| &folder.files);
            walked.moves = repository.follow(&ids, here)?;
            walked.take_commits(repository, &ids, &mut library, looked)?;
        }
        if let Some(folder) = folder {
            walked.take_folder(folder, &mut library);
        }
        walked.read = library.read();
        walked.other_boats = library.into_other_boats();
        Ok(walked)
    }

    /// Adds what lies in the folder. What is there as it was committed is one and the same.
    fn take_folder(&mut self, folder: Store, library: &mut Library<'_>) {
        let head = self.steps.len().checked_sub(1);
        let committed = head.map_or(&[][..], |head| &self.shelves[self.shelf_of[head]]);
        let files = folder.files.into_iter().filter_map(|named| {
            let held = library.take(&named.path, named.content)?;
            let is_it = |(path, own): &&Standing| **path == *named.path && *own == held;
            let known = committed.iter().find(is_it).map(|(_, own)| Rc::clone(own));
            Some((Rc::from(named.path), known.unwrap_or(held)))
        });
        let shelf = files.collect();
        self.shelves.push(shelf);
        self.add(Step::NotCommitted, head.into_iter().collect(), self.shelves.len() - 1);
    }

    fn take_commits(
        &mut self,
        repository: &Repository,
        ids: &[CommitId],
        library: &mut Library<'_>,
        looked: Looked<'_>,
    ) -> Result<(), StoreError> {
        let mut known = Known::default();
        let mut numbers: HashMap<CommitId, usize> = HashMap::new();
        for (number, id) in ids.iter().rev().copied().enumerate() {
            let parents = repository.parents(id)?;
            let parents = parents.iter().filter_map(|parent| numbers.get(parent).copied());
            let parents = parents.collect();
            let records = repository.records(id)?;
            let shelf = known.shelf(&records, library, &mut self.shelves)?;
            numbers.insert(id, self.steps.len());
            self.add(Step::Commit(id), parents, shelf);
            looked(number + 1, ids.len());
        }
        Ok(())
    }

    fn add(&mut self, step: Step, parents: Vec<usize>, shelf: usize) {
        self.steps.push(step);
        self.parents.push(parents);
        self.shelf_of.push(shelf);
    }

    /// Returns every record that was found, ever.
    #[must_use]
    pub fn keys(&self) -> BTreeSet<Key> {
        let standing = self.shelves.iter().flatten();
        standing.filter_map(|(_, held)| record(held)).map(|record| record.key.clone()).collect()
    }

    /// Returns the steps that one follows from, by their numbers.
    #[must_use]
    pub fn parents(&self, step: usize) -> &[usize] {
        &self.parents[step]
    }

    /// Returns the steps that follow from nothing that is here.
    pub fn first_steps(&self) -> impl Iterator<Item = Step> {
        let first = self.parents.iter().zip(&self.steps);
        first.filter(|(parents, _)| parents.is_empty()).map(|(_, step)| *step)
    }

    /// Returns the past of one record.
    #[must_use]
    pub fn past(&self, key: &Key) -> Past {
        let paths = self.paths(key);
        let mut numbers: BTreeMap<(Option<Rc<str>>, Vec<usize>), usize> = BTreeMap::new();
        let mut states = Vec::new();
        let mut of_shelf = Vec::with_capacity(self.shelves.len());
        for shelf in &self.shelves {
            let own = of_key(shelf, key, &paths);
            let id = (
                own.first().map(|(path, _)| Rc::clone(path)),
                own.iter().map(|(_, held)| Rc::as_ptr(held) as usize).collect(),
            );
            of_shelf.push(*numbers.entry(id).or_insert_with(|| {
                states.push(state(&own));
                states.len() - 1
            }));
        }
        let mut graph = Graph::default();
        for (parents, shelf) in self.parents.iter().zip(&self.shelf_of) {
            graph.add(parents, of_shelf[*shelf]);
        }
        Past::new(key.clone(), graph, states)
    }

    /// Returns every file that held the record at some step.
    fn paths(&self, key: &Key) -> BTreeSet<Rc<str>> {
        let is_it = |held: &Held| record(held).is_some_and(|record| record.key == *key);
        let standing = self.shelves.iter().flatten().filter(|(_, held)| is_it(held));
        standing.map(|(path, _)| Rc::clone(path)).collect()
    }
}

/// What was found on the shelves so far, so that equal ones are kept once.
#[derive(Default)]
struct Known {
    last: Option<(Records, usize)>,
    by_content: HashMap<Vec<(Rc<str>, usize)>, usize>,
}

impl Known {
    fn shelf(
        &mut self,
        records: &Records,
        library: &mut Library<'_>,
        shelves: &mut Vec<Vec<Standing>>,
    ) -> Result<usize, StoreError> {
        if let Some((last, shelf)) = &self.last
            && std::sync::Arc::ptr_eq(last, records)
        {
            return Ok(*shelf);
        }
        let mut standing: Vec<Standing> = Vec::new();
        for text in records.iter() {
            if let Some(held) = library.held(text)? {
                standing.push((Rc::from(&*text.path), held));
            }
        }
        let content = standing.iter();
        let content = content.map(|(path, held)| (Rc::clone(path), Rc::as_ptr(held) as usize));
        let shelf = *self.by_content.entry(content.collect()).or_insert_with(|| {
            shelves.push(standing);
            shelves.len() - 1
        });
        self.last = Some((Records::clone(records), shelf));
        Ok(shelf)
    }
}

/// Returns what of a shelf is the record or, where it is not there, what can't be read in its place.
fn of_key(shelf: &[Standing], key: &Key, paths: &BTreeSet<Rc<str>>) -> Vec<Standing> {
    let is_it = |held: &Held| record(held).is_some_and(|record| record.key == *key);
    let own: Vec<Standing> = shelf.iter().filter(|(_, held)| is_it(held)).cloned().collect();
    if !own.is_empty() {
        return own;
    }
    let unread = |(path, held): &&Standing| record(held).is_none() && paths.contains(path);
    shelf.iter().filter(unread).cloned().collect()
}

fn state(own: &[Standing]) -> RecordState {
    let Some((path, held)) = own.first() else { return RecordState::Gone };
    if let Held::Unread(why) = &**held {
        return RecordState::Unclear(format!("{path} can't be read: {why}"));
    }
    let first = record(held).filter(|first| first.whole);
    let says_other =
        |held: &Held| record(held).zip(first).is_none_or(|(own, first)| !own.says_same(first));
    if own.iter().skip(1).any(|(_, other)| says_other(other)) {
        let paths: Vec<&str> = own.iter().map(|(path, _)| &**path).collect();
        return RecordState::Unclear(format!("two records have this id: {}", paths.join(" and ")));
    }
    RecordState::Held { path: Rc::clone(path), held: Rc::clone(held) }
}

pub(super) fn record(held: &Held) -> Option<&Record> {
    match held {
        Held::Record(record) => Some(record),
        Held::Unread(_) => None,
    }
}
