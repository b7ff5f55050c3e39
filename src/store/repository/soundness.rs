//! Whether a clone is whole, and what git is told to do with the book's files; reads settings and
//! headers only.

use std::path::Path;

use git2::AttrCheckFlags;
use git2::ErrorCode;
use git2::ObjectType;
use git2::Oid;

use crate::store::error::StoreError;
use crate::store::names;
use crate::store::repository::Moment;
use crate::store::repository::Repository;
use crate::store::repository::RepositoryError;
use crate::store::repository::commit;
use crate::store::repository::loose;
use crate::store::repository::objects;

impl Repository {
    /// Returns whether the clone was made with a filter, and lacks what it left out.
    #[must_use]
    pub fn is_filtered(&self) -> bool {
        objects::is_filtered(&self.git)
    }

    /// Returns whether only some of the files are checked out.
    ///
    /// # Errors
    ///
    /// The settings can't be read.
    pub fn is_sparse(&self) -> Result<bool, StoreError> {
        match self.git.config().and_then(|config| config.get_bool("core.sparseCheckout")) {
            Ok(sparse) => Ok(sparse),
            Err(error) if error.code() == ErrorCode::NotFound => Ok(false),
            Err(error) => Err(self.unreadable(&error)),
        }
    }

    /// Reads the index and forgets it.
    ///
    /// # Errors
    ///
    /// It is of a kind that can't be read here, or damaged.
    pub fn try_index(&self) -> Result<(), StoreError> {
        let index = self.git.index().map(|_| ());
        index.map_err(|error| RepositoryError::index(&self.top, &error).into())
    }

    /// Returns when the newest commit was made that a branch, a tag or the checkout stands at, by
    /// its committer's clock; none before the first one.
    ///
    /// # Errors
    ///
    /// A commit is missing or damaged.
    pub fn newest(&self) -> Result<Option<Moment>, StoreError> {
        let objects = self.objects()?;
        let mut newest = None;
        for id in self.tips()? {
            let (_, committer, _) = commit::people_and_subject(&objects.commit(id)?);
            newest = newest.max(committer.when);
        }
        Ok(newest)
    }

    /// Returns an attribute that git gives a text of the book: `merge`, `diff`. None where it gives
    /// none, or where it can't be asked.
    #[must_use]
    pub fn attribute(&self, path: &str, name: &str) -> Option<String> {
        let whole = self.place.known()?.join(names::path_of(path));
        let flags = AttrCheckFlags::FILE_THEN_INDEX;
        let value = self.git.get_attr(Path::new(&whole), name, flags).ok()??;
        Some(value.to_owned())
    }

    /// Returns whether git's settings say anything under a name.
    #[must_use]
    pub fn is_set(&self, name: &str) -> bool {
        self.git.config().is_ok_and(|config| config.get_entry(name).is_ok())
    }

    fn tips(&self) -> Result<Vec<Oid>, StoreError> {
        let mut tips: Vec<Oid> = self.head()?.into_iter().map(|id| id.0).collect();
        loose::refuse_broken(&self.git)?;
        let references = self.git.references().map_err(|error| self.unreadable(&error))?;
        for reference in references.flatten() {
            if let Ok(object) = reference.peel(ObjectType::Commit) {
                tips.push(object.id());
            }
        }
        tips.sort_unstable();
        tips.dedup();
        Ok(tips)
    }
}
