//! A book whose folder was moved inside its repository: where it lay before. It is known by its
//! texts, not by the name of the folder; reads none of them.

use std::cell::RefCell;
use std::collections::HashMap;
use std::collections::HashSet;
use std::path::Path;
use std::path::PathBuf;

use git2::ObjectType;
use git2::Oid;

use crate::store::Content;
use crate::store::Named;
use crate::store::error::StoreError;
use crate::store::layout::CLUB_FILE;
use crate::store::names;
use crate::store::repository::CommitId;
use crate::store::repository::Record;
use crate::store::repository::Records;
use crate::store::repository::Repository;
use crate::store::repository::RepositoryError;
use crate::store::repository::place;
use crate::store::repository::place::Place;
use crate::store::repository::standing;
use crate::store::repository::standing::Kind;
use crate::store::repository::state;

/// A commit that has the book in another folder than the commit before it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Moved {
    /// The commit; none where the move is not committed yet.
    pub commit: Option<CommitId>,
    /// The book's folder before, relative to the repository's top; empty at the top itself.
    pub from: String,
    /// Whether the texts tell that it is the same book, so that its past there is its own.
    pub followed: bool,
}

/// Where the book lay in commits that have it in another folder than it is now.
#[derive(Default)]
pub(super) struct Lay(RefCell<HashMap<Oid, PathBuf>>);

impl Lay {
    pub(super) fn at(&self, id: Oid) -> Option<PathBuf> {
        self.0.borrow().get(&id).cloned()
    }
}

/// Another folder that holds a book, beside the texts of the one that is sought.
struct Candidate {
    place: PathBuf,
    /// How many of its texts are texts of the one sought.
    same: usize,
    /// How many of its texts have the path of one.
    alike: usize,
    /// Whether it holds none any more where the one sought is.
    gone: bool,
}

impl Candidate {
    /// Returns whether it is the book that is sought: its texts went away and some are there, or it
    /// was copied.
    fn is_it(&self, texts: usize) -> bool {
        (self.gone && (self.same > 0 || self.alike > 0)) || 2 * self.same > texts
    }
}

impl Repository {
    /// Follows the book back through commits, itself first and none before all its children, as
    /// [`walk`](Self::walk) gives them. From then on the texts of each of them are those of the
    /// folder where the book lay. `here` are the texts that follow on the first commit, if there are
    /// any. Returns each move, the newest first.
    ///
    /// # Errors
    ///
    /// Something on the way is missing or damaged.
    pub fn follow(&self, walked: &[CommitId], here: &[Named]) -> Result<Vec<Moved>, StoreError> {
        let mut moves = Vec::new();
        if let (Some(first), false) = (walked.first(), here.is_empty()) {
            let (found, lost) = self.beside(*first, here)?;
            let mut tell = |place: &PathBuf, followed| {
                moves.push(Moved { commit: None, from: names::shown(place), followed });
            };
            if let Some(found) = found {
                tell(&found, true);
                self.lay.0.borrow_mut().insert(first.0, found);
            } else if let Some(lost) = lost {
                tell(&lost, false);
            }
        }
        let mut passed = HashSet::new();
        for id in walked.iter().copied() {
            let Some(own) = self.place_at(id)? else { continue };
            for parent in self.parents(id)? {
                if !passed.insert(parent) {
                    continue;
                }
                let is_there = self.tree(parent)? == self.tree(id)?
                    || !self.records_in(parent, &own)?.is_empty();
                let place = if is_there || self.records_in(id, &own)?.is_empty() {
                    own.clone()
                } else {
                    self.moved(id, parent, &own, &mut moves)?
                };
                if self.place.known().is_some_and(|known| known != place) {
                    self.lay.0.borrow_mut().insert(parent.0, place);
                }
            }
        }
        Ok(moves)
    }

    /// Returns where the book lay before a commit, and tells the move.
    fn moved(
        &self,
        id: CommitId,
        parent: CommitId,
        own: &Path,
        moves: &mut Vec<Moved>,
    ) -> Result<PathBuf, StoreError> {
        let texts = self.records_in(id, own)?;
        let gone = |place: &Path| Ok(self.records_in(id, place)?.is_empty());
        let candidates = self.candidates(parent, own, &Texts::of(&texts), gone)?;
        let tell = |own: &Candidate, followed| Moved {
            commit: Some(id),
            from: names::shown(&own.place),
            followed,
        };
        if let Some(found) = candidates.iter().find(|own| own.is_it(texts.len())) {
            moves.push(tell(found, true));
            return Ok(found.place.clone());
        }
        moves.extend(candidates.iter().filter(|own| own.gone).map(|own| tell(own, false)));
        Ok(own.to_owned())
    }

    /// Returns where the book lay in a commit if, in a later one, its records are still there and
    /// another folder is taken for the book: the folder before and the folder after, empty at the
    /// top. A book whose place was given is never another.
    ///
    /// # Errors
    ///
    /// No book in the later commit, several, or something missing or damaged.
    pub fn left_behind(
        &self,
        before: CommitId,
        after: CommitId,
    ) -> Result<Option<(String, String)>, StoreError> {
        if self.place.is_given() {
            return Ok(None);
        }
        let sought = |id: CommitId| {
            let anywhere = Place::new(self.top.clone(), None);
            let found = anywhere.in_tree(&self.objects()?, self.tree(id)?, &state(id));
            Ok::<_, StoreError>(found.map(|(place, _)| place))
        };
        let was = match sought(before)? {
            Ok(was) => was,
            Err(RepositoryError::NoBook { .. } | RepositoryError::SeveralBooks { .. }) => {
                return Ok(None);
            }
            Err(error) => return Err(error.into()),
        };
        let is = sought(after)??;
        let left = was != is && !self.records_in(after, &was)?.is_empty();
        Ok(left.then(|| (names::shown(&was), names::shown(&is))))
    }

    /// Returns the texts of a commit, as [`records`](Self::records) does. Where the book is not in
    /// its folder there, they are those of the folder that holds some of the texts given.
    ///
    /// # Errors
    ///
    /// Something on the way missing or damaged, or a book that went away and shares no text.
    pub fn records_beside(&self, id: CommitId, texts: &[Named]) -> Result<Records, StoreError> {
        let own = self.place.known().unwrap_or_default();
        match self.beside(id, texts)? {
            (Some(found), _) => self.records_in(id, &found),
            (None, Some(_)) => Err(place::none(&state(id), Some(&own)).into()),
            (None, None) => self.records(id),
        }
    }

    /// Returns the other folder in which a commit has the book of these texts, where it is not in
    /// its own; else one of a book that went away and can't be told to be it.
    fn beside(
        &self,
        id: CommitId,
        texts: &[Named],
    ) -> Result<(Option<PathBuf>, Option<PathBuf>), StoreError> {
        let (true, Some(own)) = (self.records(id)?.is_empty(), self.place.known()) else {
            return Ok((None, None));
        };
        let gone = |place: &Path| Ok(!self.is_here(place)?);
        let candidates = self.candidates(id, &own, &Texts::of_named(texts), gone)?;
        let found = candidates.iter().find(|own| own.same > 0 || own.is_it(texts.len()));
        let lost = candidates.iter().find(|own| own.gone);
        let place = |own: &Candidate| own.place.clone();
        Ok((found.map(place), lost.map(place)))
    }

    /// Returns whether a folder holds a book now: in the working tree, else in the last commit.
    fn is_here(&self, place: &Path) -> Result<bool, StoreError> {
        if !self.git.is_bare() {
            return Ok(self.top.join(place).join(CLUB_FILE).symlink_metadata().is_ok());
        }
        match self.head()? {
            Some(head) => Ok(!self.records_in(head, place)?.is_empty()),
            None => Ok(false),
        }
    }

    /// Returns the other folders of a commit that hold a book, the most alike first.
    fn candidates(
        &self,
        id: CommitId,
        own: &Path,
        texts: &Texts,
        gone: impl Fn(&Path) -> Result<bool, StoreError>,
    ) -> Result<Vec<Candidate>, StoreError> {
        let standing = standing::in_tree(&self.objects()?, self.tree(id)?)?;
        let clubs = standing.iter().filter(|thing| thing.kind == Kind::File);
        let clubs =
            clubs.filter(|thing| thing.path.file_name().is_some_and(|name| name == CLUB_FILE));
        let mut found = Vec::new();
        for place in clubs.filter_map(|thing| thing.path.parent()).filter(|place| *place != own) {
            let records = self.records_in(id, place)?;
            let count = |is: fn(&Texts, &Record) -> bool| {
                records.iter().filter(|record| is(texts, record)).count()
            };
            found.push(Candidate {
                place: place.to_owned(),
                same: count(Texts::has_text),
                alike: count(Texts::has_path),
                gone: gone(place)?,
            });
        }
        found.sort_by_key(|own| std::cmp::Reverse((own.same, own.alike)));
        Ok(found)
    }

    /// Returns the folder that a commit's texts are read from; none where there is no book.
    pub(super) fn place_at(&self, id: CommitId) -> Result<Option<PathBuf>, StoreError> {
        if let Some(known) = self.lay.at(id.0).or_else(|| self.place.known()) {
            return Ok(Some(known));
        }
        match self.place.in_tree(&self.objects()?, self.tree(id)?, &state(id)) {
            Ok((place, _)) => Ok(Some(place)),
            Err(RepositoryError::NoBook { .. }) => Ok(None),
            Err(error) => Err(error.into()),
        }
    }

    pub(super) fn records_in(&self, id: CommitId, place: &Path) -> Result<Records, StoreError> {
        let objects = self.objects()?;
        Ok(self.kept.records(&objects, self.tree(id)?, place)?)
    }

    fn tree(&self, id: CommitId) -> Result<Oid, StoreError> {
        Ok(self.lineage.header(&self.objects()?, id.0)?.tree)
    }
}

/// What a book is known by: its texts, and their paths but for those every book has.
struct Texts {
    blobs: HashSet<Oid>,
    paths: HashSet<String>,
}

impl Texts {
    fn of(records: &Records) -> Self {
        let blobs = records.iter().map(|record| record.blob.0).collect();
        Self { blobs, paths: records.iter().map(|record| record.path.to_string()).collect() }
    }

    fn of_named(texts: &[Named]) -> Self {
        let blob = |named: &Named| match &named.content {
            Content::Text(text) => Oid::hash_object(ObjectType::Blob, text.as_bytes()).ok(),
            Content::Refused(_) => None,
        };
        let paths = texts.iter().map(|named| named.path.clone()).collect();
        Self { blobs: texts.iter().filter_map(blob).collect(), paths }
    }

    /// Empty texts are all alike.
    fn has_text(&self, record: &Record) -> bool {
        self.blobs.contains(&record.blob.0) && !record.blob.is_of("")
    }

    fn has_path(&self, record: &Record) -> bool {
        record.path.contains('/') && self.paths.contains(&*record.path)
    }
}
