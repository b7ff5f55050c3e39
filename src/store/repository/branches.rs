//! Which branch a repository is about, and which one a name stands for; reads names only.

use git2::BranchType;
use git2::ErrorCode;

use crate::store::error::StoreError;
use crate::store::repository::Repository;

/// How often a name may stand for another. Git itself gives up here.
const LONGEST_CHAIN: usize = 5;

impl Repository {
    /// Returns the whole name of the branch that is checked out, or that a clone would check out,
    /// `refs/heads/main`, whether it has a commit or not; none where no branch is.
    ///
    /// # Errors
    ///
    /// The repository can't be read.
    pub fn head_branch(&self) -> Result<Option<String>, StoreError> {
        match self.git.find_reference("HEAD") {
            Ok(head) => Ok(head.symbolic_target().ok().flatten().map(ToOwned::to_owned)),
            Err(error) if error.code() == ErrorCode::NotFound => Ok(None),
            Err(error) => Err(self.unreadable(&error)),
        }
    }

    /// Returns whether there is any branch that has a commit.
    ///
    /// # Errors
    ///
    /// The repository can't be read.
    pub fn has_branches(&self) -> Result<bool, StoreError> {
        let branches = self.git.branches(Some(BranchType::Local));
        let mut branches = branches.map_err(|error| self.unreadable(&error))?;
        Ok(branches.next().is_some())
    }

    /// Returns the whole name of the branch that is changed where this one is: a name may stand for
    /// another.
    ///
    /// # Errors
    ///
    /// The repository can't be read, or names stand for one another in a ring.
    pub fn stands_for(&self, name: &str) -> Result<String, StoreError> {
        let mut name = name.to_owned();
        for _ in 0..LONGEST_CHAIN {
            match self.git.find_reference(&name) {
                Ok(found) => match found.symbolic_target() {
                    Ok(Some(other)) => name = other.to_owned(),
                    _ => return Ok(name),
                },
                Err(error) if error.code() == ErrorCode::NotFound => return Ok(name),
                Err(error) => return Err(self.unreadable(&error)),
            }
        }
        Err(self.unreadable(&git2::Error::from_str("branches stand for one another in a ring")))
    }
}
