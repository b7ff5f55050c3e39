//! Opens the history of a book, once a command.

use std::path::Path;

use super::exit::Exit;
use super::output::Done;
use super::progress::Progress;
use super::states::refused;
use crate::history::Past;
use crate::history::Step;
use crate::history::Walked;
use crate::reports::Made;
use crate::reports::shown;
use crate::store;
use crate::store::Commit;
use crate::store::CommitId;
use crate::store::Moved;
use crate::store::Person;
use crate::store::Repository;
use crate::store::Store;
use crate::store::StoreError;
use crate::units::Date;

/// A book's repository, and from where back its history is asked for.
pub(super) struct OpenPast {
    pub(super) repository: Repository,
    /// The commit; none before the first one.
    pub(super) from: Option<CommitId>,
    /// What lies in the folder; none where a commit was asked for.
    pub(super) folder: Option<Store>,
    pub(super) told: Vec<String>,
    pub(super) progress: Progress,
}

/// Opens the repository around a book: the one in the folder given, else the one around the
/// current folder. Without `at`, the history ends with what lies in the folder.
///
/// # Errors
///
/// What the command comes to instead.
pub(super) fn open(given: Option<&Path>, at: Option<&str>) -> Result<OpenPast, Done> {
    opened(given, at).map_err(refused)
}

fn opened(given: Option<&Path>, at: Option<&str>) -> Result<OpenPast, StoreError> {
    let progress = Progress::begin();
    let root = match (given, at) {
        (Some(folder), _) => folder.to_owned(),
        // Of a commit no file need lie in the folder, nor need the repository have any.
        (None, Some(_)) => store::find_book(Path::new(".")).unwrap_or_else(|_| ".".into()),
        (None, None) => store::find_book(Path::new("."))?,
    };
    let repository = Repository::around(&root)?;
    if let Some(at) = at {
        let from = Some(repository.commit(at)?);
        return Ok(OpenPast { repository, from, folder: None, told: Vec::new(), progress });
    }
    let from = repository.head()?;
    let (folder, told) = in_folder(&root, from.is_some())?;
    Ok(OpenPast { repository, from, folder, told, progress })
}

fn in_folder(root: &Path, committed: bool) -> Result<(Option<Store>, Vec<String>), StoreError> {
    match store::open_tracked(root) {
        Ok(store) => {
            let told = store.warnings.iter().map(|line| shown::line(line)).collect();
            Ok((Some(store), told))
        }
        Err(StoreError::NoBook { .. } | StoreError::NoFolder { .. }) if committed => {
            let told = "There is no club.yaml in the folder: only what was committed is told.";
            Ok((None, vec![told.to_owned()]))
        }
        Err(error) => Err(error),
    }
}

impl OpenPast {
    /// Walks the history for the records of an id; of all, where it is none.
    pub(super) fn walk(&self, id: Option<&str>) -> Result<Walked, Done> {
        let folder = self.folder.clone();
        let looked = |done, of| self.progress.told("looking back", done, of, "commits");
        let walked = Walked::back_from_telling(&self.repository, self.from, folder, id, &looked);
        walked.map_err(refused)
    }

    /// Returns who made a step; none for what is not committed yet.
    pub(super) fn made(&self, step: Step) -> Result<Option<Made>, Done> {
        let Step::Commit(id) = step else { return Ok(None) };
        self.details(id).map(|commit| Some(made(&commit)))
    }

    /// Returns who made the commit of a node.
    pub(super) fn made_at(
        &self,
        walked: &Walked,
        past: &Past,
        node: usize,
    ) -> Result<Option<Made>, Done> {
        self.made(walked.steps[past.graph.nodes[node].commit])
    }

    pub(super) fn details(&self, id: CommitId) -> Result<Commit, Done> {
        self.repository.details(id).map_err(refused)
    }

    /// Returns what the user should know besides, with each move of the book's folder.
    pub(super) fn told(&self, walked: &Walked) -> Result<Vec<String>, Done> {
        let mut told = self.told.clone();
        for own in walked.moves.iter().filter(|own| own.followed) {
            let before = self.before(own)?;
            told.push(format!("Before {before}. Its past there is told too."));
        }
        Ok(told)
    }

    /// Returns why the history is not whole, and what helps; none where it is.
    pub(super) fn cut(&self, walked: &Walked) -> Result<Option<String>, Done> {
        let lost = walked.moves.iter().find(|own| !own.followed);
        let lost = lost.map(|own| self.lost(own)).transpose()?;
        let whys: Vec<String> = self.edge(walked)?.into_iter().chain(lost).collect();
        Ok(Some(whys.join(" ")).filter(|whys| !whys.is_empty()))
    }

    fn lost(&self, own: &Moved) -> Result<String, Done> {
        Ok(format!(
            "History starts here because the book's folder was another before: before {}, and none \
             of its texts tells that it is the same book. To be told of it: tholebook history NAME \
             --at REV --book DIR, with a commit before and that folder",
            self.before(own)?,
        ))
    }

    /// Returns where a book lay before a move, in words.
    fn before(&self, own: &Moved) -> Result<String, Done> {
        let at = match own.from.as_str() {
            "" => "at the top of the repository".to_owned(),
            from => format!("in \"{}\"", shown::line(from)),
        };
        let Some(id) = own.commit else {
            return Ok(format!("what is not committed yet the book lay {at}"));
        };
        let day = committed_on(&self.details(id)?);
        let day = day.map(|day| format!(" of {day}")).unwrap_or_default();
        Ok(format!("commit {}{day} the book lay {at}", id.short()))
    }

    /// Returns where the clone was cut off.
    fn edge(&self, walked: &Walked) -> Result<Option<String>, Done> {
        if !self.repository.is_shallow() {
            return Ok(None);
        }
        let mut edges = Vec::new();
        for step in walked.first_steps() {
            edges.extend(self.made(step)?.filter(|made| made.is_edge));
        }
        let Some(edge) = edges.into_iter().min_by_key(|made| made.committed_on) else {
            return Ok(None);
        };
        let day = edge.committed_on.map(|day| format!(" of {day}")).unwrap_or_default();
        Ok(Some(format!(
            "History starts here because the clone is shallow: what came before commit {}{day} is \
             not in it, and days marked ≤ may be earlier. To fetch the rest: git fetch --unshallow",
            edge.short
        )))
    }
}

/// Returns the refusal for a name that is empty.
pub(super) fn must_name_something(name: &str) -> Result<(), Done> {
    if !name.trim().is_empty() {
        return Ok(());
    }
    let told = "The name is empty. Give that of a record, such as kittiwake, or of a value, such as \
                kittiwake/seat-2/rowlock/gap.";
    Err(Done::refused(Exit::Usage, vec![told.to_owned()]))
}

/// Returns the refusal for a history that is not whole, where a whole one was asked for.
pub(super) fn must_be_whole(cut: Option<&String>, asked: bool) -> Result<(), Done> {
    match cut {
        Some(cut) if asked => Err(Done::refused(Exit::NotChecked, vec![cut.clone()])),
        _ => Ok(()),
    }
}

/// Returns who made a commit.
pub(super) fn made(commit: &Commit) -> Made {
    let (author, committer) = (called(&commit.author), called(&commit.committer));
    let is_other = author != committer;
    Made {
        commit: commit.id.to_string(),
        short: commit.id.short(),
        author,
        committer: Some(committer).filter(|_| is_other),
        committed_on: committed_on(commit),
        is_edge: commit.at_the_edge,
    }
}

fn called(person: &Person) -> String {
    let named = [&person.name, &person.email];
    let named = named.into_iter().find(|text| !text.trim().is_empty());
    named.map_or_else(|| "nobody named".to_owned(), Clone::clone)
}

/// Returns the day of a commit, on the committer's own clock.
pub(super) fn committed_on(commit: &Commit) -> Option<Date> {
    let when = commit.committer.when?;
    Date::on_clock(when.seconds, when.offset_minutes)
}
