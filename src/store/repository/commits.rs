//! The commits of a repository: which one is named, how they follow from one another, and which texts
//! of the book each of them holds.

use std::fs;
use std::io::ErrorKind;

use git2::ErrorClass;
use git2::ErrorCode;
use git2::Oid;

use crate::store::Content;
use crate::store::Refusal;
use crate::store::error::StoreError;
use crate::store::layout::CLUB_FILE;
use crate::store::repository::Commit;
use crate::store::repository::CommitId;
use crate::store::repository::Record;
use crate::store::repository::Records;
use crate::store::repository::Repository;
use crate::store::repository::commit;
use crate::store::repository::ids::BlobId;
use crate::store::repository::loose;
use crate::store::repository::objects::Missed;
use crate::store::repository::revision;
use crate::store::repository::standing;

impl Repository {
    /// Returns whether the history is cut short.
    #[must_use]
    pub fn is_shallow(&self) -> bool {
        self.lineage.is_cut()
    }

    /// Returns the commit that a branch, a tag, an id or a step back from one of them names.
    ///
    /// # Errors
    ///
    /// It names nothing, several things, a range or no commit.
    pub fn commit(&self, rev: &str) -> Result<CommitId, StoreError> {
        Ok(CommitId(revision::commit(&self.git, rev)?))
    }

    /// Returns the commit that is checked out; none before the first one.
    ///
    /// # Errors
    ///
    /// The repository can't be read.
    pub fn head(&self) -> Result<Option<CommitId>, StoreError> {
        match self.git.head() {
            Ok(head) => Ok(head.target().map(CommitId)),
            Err(error) if error.code() == ErrorCode::UnbornBranch => Ok(None),
            Err(error) => Err(self.unreadable(&error)),
        }
    }

    /// Returns the commits that are being merged into the one checked out, while that merge is not
    /// committed yet.
    ///
    /// # Errors
    ///
    /// Git's note of them can't be read.
    pub fn being_merged(&self) -> Result<Vec<CommitId>, StoreError> {
        let note = self.git.path().join("MERGE_HEAD");
        let ids = match fs::read_to_string(note) {
            Ok(text) => text.lines().map(Oid::from_str).collect::<Result<Vec<Oid>, _>>(),
            Err(error) if error.kind() == ErrorKind::NotFound => Ok(Vec::new()),
            Err(error) => Err(git2::Error::from_str(&error.to_string())),
        };
        let ids = ids.map_err(|error| self.unreadable(&error))?;
        Ok(ids.into_iter().map(CommitId).collect())
    }

    /// Returns whether a commit holds a book, when, and from what.
    ///
    /// # Errors
    ///
    /// The commit is missing or damaged.
    pub fn details(&self, id: CommitId) -> Result<Commit, StoreError> {
        let objects = self.objects()?;
        let header = self.lineage.header(&objects, id.0)?;
        let (author, committer, subject) = commit::people_and_subject(&objects.commit(id.0)?);
        let parents = header.parents.iter().copied().map(CommitId).collect();
        let at_the_edge = self.lineage.is_edge(id.0);
        Ok(Commit { id, parents, author, committer, subject, at_the_edge })
    }

    /// Returns the commits that one was made from, the first one first; none where the history is cut
    /// short.
    ///
    /// # Errors
    ///
    /// The commit is missing or damaged.
    pub fn parents(&self, id: CommitId) -> Result<Vec<CommitId>, StoreError> {
        let header = self.lineage.header(&self.objects()?, id.0)?;
        Ok(header.parents.iter().copied().map(CommitId).collect())
    }

    /// Returns the commit that two others follow from, the best one where there are several; none
    /// where they share no history that is here.
    ///
    /// # Errors
    ///
    /// A commit on the way is missing or damaged.
    pub fn merge_base(&self, a: CommitId, b: CommitId) -> Result<Option<CommitId>, StoreError> {
        loose::refuse_broken(&self.git)?;
        match self.git.merge_base(a.0, b.0) {
            Ok(id) => Ok(Some(CommitId(id))),
            // What can't be found otherwise is a commit on the way, and no answer.
            Err(error) if error.class() == ErrorClass::Merge => Ok(None),
            Err(error) => {
                let what = format!("a commit before {} or {}", a.short(), b.short());
                Err(self.objects()?.error(&what, Missed::because(error)).into())
            }
        }
    }

    /// Returns every commit that one follows from, itself first and none before all its children.
    ///
    /// # Errors
    ///
    /// A commit on the way is missing or damaged.
    pub fn walk(&self, from: CommitId) -> Result<Vec<CommitId>, StoreError> {
        let walked = self.lineage.walk(&self.objects()?, from.0)?;
        Ok(walked.into_iter().map(CommitId).collect())
    }

    /// Returns which texts a commit holds of the book, without reading them; none where it holds no
    /// book. Commits with the same ones give the same allocation: `Arc::ptr_eq` tells, though not
    /// always.
    ///
    /// # Errors
    ///
    /// Several books, or something on the way missing or damaged.
    pub fn records(&self, id: CommitId) -> Result<Records, StoreError> {
        match self.place_at(id)? {
            Some(place) => self.records_in(id, &place),
            None => Ok(Records::default()),
        }
    }

    /// Returns whether a commit holds a book, in whatever folder.
    ///
    /// # Errors
    ///
    /// Something on the way missing or damaged.
    pub fn has_any_book(&self, id: CommitId) -> Result<bool, StoreError> {
        let objects = self.objects()?;
        let top = self.lineage.header(&objects, id.0)?.tree;
        let standing = standing::in_tree(&objects, top)?;
        Ok(standing
            .iter()
            .any(|thing| thing.path.file_name().is_some_and(|name| name == CLUB_FILE)))
    }

    /// Returns what a record holds.
    ///
    /// # Errors
    ///
    /// Its bytes are missing or damaged.
    pub fn content(&self, record: &Record) -> Result<Content, StoreError> {
        if record.link {
            return Ok(Content::Refused(Refusal::Link));
        }
        let objects = self.objects()?;
        let content = objects.content(record.blob.0);
        Ok(content.map_err(|missed| objects.error(&record.path, missed))?)
    }

    /// Returns the bytes of an id as a text.
    ///
    /// # Errors
    ///
    /// They are missing or damaged.
    pub fn text(&self, blob: BlobId) -> Result<Content, StoreError> {
        let objects = self.objects()?;
        let content = objects.content(blob.0);
        Ok(content.map_err(|missed| objects.error(&format!("text {blob}"), missed))?)
    }
}
