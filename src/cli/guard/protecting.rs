//! Which branches a gate guards: those that club.yaml names under `protect`, all where it names
//! none.

use super::lines::Update;
use super::local::is_no_book;
use crate::reading;
use crate::reports::shown;
use crate::store::CLUB_FILE;
use crate::store::CommitId;
use crate::store::Repository;
use crate::store::StoreError;

/// How a branch is guarded.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Hold {
    /// Not at all.
    Free,
    /// What is pushed to it is checked.
    Checked,
    /// The same, and it is neither deleted nor replaced.
    Kept,
}

/// The branches that a list names.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Listed {
    /// Their names; none where all are guarded.
    names: Option<Vec<String>>,
}

/// What is guarded, by what stood in the repository before a push: no push frees itself.
pub(super) struct Guarded {
    /// The branch that a clone checks out. Its club.yaml says what is guarded, so it always is.
    own: Option<String>,
    listed: Listed,
    /// What is wrong with the repository itself.
    pub(super) told: Option<String>,
}

impl Listed {
    /// Returns the list of a commit. One that can't be read frees no branch.
    ///
    /// # Errors
    ///
    /// The commit or something of it is missing or damaged.
    pub(super) fn of(repository: &Repository, id: CommitId) -> Result<Self, StoreError> {
        let mut store = match repository.at(id) {
            Ok(store) => store,
            Err(error) if is_no_book(&error) => return Ok(Self::default()),
            Err(error) => return Err(error),
        };
        store.files.retain(|named| named.path == CLUB_FILE);
        let (book, faults) = reading::read(&store.name, store.files);
        let branches = book.club.protect.branches;
        if !faults.is_empty() || branches.is_empty() {
            return Ok(Self::default());
        }
        let short = |name: &str| name.strip_prefix("refs/heads/").unwrap_or(name).to_owned();
        Ok(Self { names: Some(branches.iter().map(|branch| short(&branch.value)).collect()) })
    }

    /// Returns whether it guards a branch.
    pub(super) fn guards(&self, branch: &str) -> bool {
        self.names.as_ref().is_none_or(|_| self.names_it(branch))
    }

    fn names_it(&self, branch: &str) -> bool {
        self.names.iter().flatten().any(|name| name == branch)
    }
}

impl Guarded {
    /// Returns what is guarded. In a repository without a commit it is what the push itself says.
    ///
    /// # Errors
    ///
    /// The state before the push can't be had.
    pub(super) fn before(repository: &Repository, updates: &[Update]) -> Result<Self, StoreError> {
        let own = repository.head_branch()?;
        let own = own.as_deref();
        let short = own.and_then(|name| name.strip_prefix("refs/heads/")).map(ToOwned::to_owned);
        let guarded = |listed, told| Ok(Self { own: short.clone(), listed, told });
        match (repository.head()?, first(updates, own)) {
            (Some(head), _) => guarded(Listed::of(repository, head)?, None),
            // Whose list would hold? Until somebody says so, every branch is guarded.
            (None, _) if repository.has_branches()? => {
                guarded(Listed::default(), Some(no_head(own)))
            }
            (None, Some(id)) => {
                let listed = Listed::of(repository, repository.commit(id)?)?;
                guarded(listed, None)
            }
            (None, None) => guarded(Listed::default(), None),
        }
    }

    /// Returns how a branch is guarded. One that its own club.yaml named before the push is, too.
    ///
    /// # Errors
    ///
    /// The branch's state before the push can't be had.
    pub(super) fn hold(
        &self,
        repository: &Repository,
        branch: &str,
        old: Option<CommitId>,
    ) -> Result<Hold, StoreError> {
        if self.own.as_deref() == Some(branch) || self.listed.names_it(branch) {
            return Ok(Hold::Kept);
        }
        let by_itself = match old {
            Some(old) => Listed::of(repository, old)?.names_it(branch),
            None => false,
        };
        Ok(match (by_itself, self.listed.guards(branch)) {
            (true, _) => Hold::Kept,
            (false, true) => Hold::Checked,
            (false, false) => Hold::Free,
        })
    }

    /// Returns which branches are guarded, in words.
    pub(super) fn said(&self) -> String {
        let own = self.own.iter().cloned();
        match &self.listed.names {
            None => "all branches are guarded: club.yaml names none under protect".to_owned(),
            Some(names) => {
                let mut all: Vec<String> = own.chain(names.iter().cloned()).collect();
                all.dedup();
                format!("guarded: {}", shown::line(&all.join(", ")))
            }
        }
    }
}

fn no_head(own: Option<&str>) -> String {
    let own = own.unwrap_or("no branch");
    format!(
        "The server's own branch is {own}, which has no commit, so every branch is guarded. Whoever \
         keeps the server names the right one: git symbolic-ref HEAD refs/heads/NAME"
    )
}

/// Returns the commit that a new repository's own branch is to have, else that of the first branch.
fn first<'u>(updates: &'u [Update], own: Option<&str>) -> Option<&'u str> {
    let branches = || updates.iter().filter(|update| update.branch().is_some());
    let of_own = branches().find(|update| Some(update.name.as_str()) == own);
    let chosen = of_own.filter(|update| update.new.is_some());
    chosen.or_else(|| branches().find(|update| update.new.is_some()))?.new.as_deref()
}
