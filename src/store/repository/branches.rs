//! Which branch a repository is about; reads names only.

use git2::ErrorCode;

use crate::store::error::StoreError;
use crate::store::repository::Repository;

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
}
