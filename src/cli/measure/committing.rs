//! The commit after a measuring: offered, judged as the hook of a clone would, never pushed.

use super::ending::After;
use super::ending::Hearer;
use super::subject::Measured;
use super::terminal::BrokenOff;
use crate::cli::arguments::Measure;
use crate::cli::book;
use crate::cli::exit::Exit;
use crate::cli::guard::judging;
use crate::cli::guard::judging::Asked;
use crate::cli::output::Done;
use crate::cli::subject::Origin;
use crate::cli::subject::Subject;
use crate::history::Change;
use crate::reports::shown;
use crate::store::Content;
use crate::store::Named;
use crate::store::Repository;
use crate::store::RepositoryError;
use crate::store::Store;
use crate::store::StoreError;
use crate::store::committing;
use crate::writing::measuring::Dialogue;

/// So many changed values are named in the message of a commit.
const NAMED: usize = 40;

/// What is to be committed.
struct Planned {
    /// The last commit's texts.
    before: Option<Store>,
    repository: Repository,
    /// Texts that no commit has yet, which go along.
    new: Vec<String>,
    /// Whether the record had changes that no commit has.
    had_changes: bool,
}

/// Offers to commit what was written; returns what the command ends with.
pub(super) fn offer(
    measured: &Measured,
    arguments: &Measure,
    dialogue: &Dialogue,
    after: &After,
    hearer: &mut Hearer,
) -> Result<Exit, BrokenOff> {
    let planned = match planned(measured) {
        Ok(Some(planned)) => planned,
        Ok(None) if arguments.commit => {
            hearer.show("Not committed: the book lies in no git repository.\n");
            return Ok(Exit::NotChecked);
        }
        Ok(None) => return Ok(Exit::Clear),
        Err(error) => {
            let Done { told, .. } = book::could_not(&error);
            hearer.show(&format!("Not committed: {}\n", told.join(" ")));
            return Ok(Exit::NotChecked);
        }
    };
    tell_what_goes_along(measured, &planned, hearer);
    if !hearer.agrees(arguments.commit, "Commit it? It is not pushed.")? {
        hearer.show("Not committed.\n");
        return Ok(Exit::Clear);
    }
    let paths: Vec<String> =
        std::iter::once(measured.path().to_owned()).chain(planned.new.clone()).collect();
    if !is_let_pass(measured, planned, after, hearer)? {
        return Ok(Exit::Findings);
    }
    let message = message(measured, dialogue, &after.changes);
    let paths: Vec<&str> = paths.iter().map(String::as_str).collect();
    Ok(match committing::commit(&measured.open.root, &paths, &message) {
        Ok(id) => {
            let told = format!(
                "Committed as {}. Git's hooks were not run: the record was judged as guard does. \
                 Nothing was pushed.",
                id.short()
            );
            hearer.show(&format!("{}\n", measured.look.wrapped(&told, "")));
            Exit::Clear
        }
        Err(why) => {
            let told = format!("Not committed: {why}. {}.", why.help());
            hearer.show(&format!("{}\n", measured.look.wrapped(&shown::line(&told), "")));
            Exit::NotChecked
        }
    })
}

fn planned(measured: &Measured) -> Result<Option<Planned>, StoreError> {
    let repository = match Repository::around(&measured.open.root) {
        Err(StoreError::Repository(RepositoryError::None { .. })) => return Ok(None),
        repository => repository?,
    };
    let before = match repository.head()? {
        None => None,
        Some(head) => match repository.at(head) {
            Err(StoreError::Repository(RepositoryError::NoBook { .. })) => None,
            store => Some(store?),
        },
    };
    let had =
        |path: &str| before.iter().flat_map(|store| &store.files).find(|own| own.path == path);
    let own = had(measured.path()).map(|named| &named.content);
    let had_changes = own.is_some_and(|own| *own != Content::Text(measured.text().to_owned()));
    let is_new = |named: &&Named| had(&named.path).is_none() && named.path != measured.path();
    let new = measured.store.files.iter().filter(is_new).map(|own| own.path.clone()).collect();
    Ok(Some(Planned { before, repository, new, had_changes }))
}

fn tell_what_goes_along(measured: &Measured, planned: &Planned, hearer: &mut Hearer) {
    let mut told = Vec::new();
    if planned.had_changes {
        told.push(format!(
            "{} had other changes that were not committed; they go along.",
            measured.path()
        ));
    }
    if !planned.new.is_empty() {
        told.push(format!("Files that no commit has yet go along: {}.", planned.new.join(", ")));
    }
    for line in told {
        hearer.show(&format!("{}\n", measured.look.wrapped(&shown::line(&line), "")));
    }
}

/// Judges what would be committed as the hook of a clone would. What it would refuse is told, and
/// asked about once more; where nobody can be asked, it is not committed.
fn is_let_pass(
    measured: &Measured,
    planned: Planned,
    after: &After,
    hearer: &mut Hearer,
) -> Result<bool, BrokenOff> {
    let asked = Asked { since: Some("HEAD"), beside: &[], rules_from: None, as_of: measured.today };
    let judged = match subject(measured, planned, after) {
        Ok(subject) => judging::judged(subject, &asked),
        Err(error) => judging::could_not(&error),
    };
    if judged.exit == Exit::Clear {
        return Ok(true);
    }
    hearer.show(&format!("\n{}", judged.text));
    hearer.show(
        "The check before a commit would refuse this one, and CI and the server's gate will.\n",
    );
    if hearer.agrees(false, "Commit it all the same?")? {
        return Ok(true);
    }
    hearer.show("Not committed. What was measured is written.\n");
    Ok(false)
}

/// Returns the book as the commit would hold it.
fn subject(measured: &Measured, planned: Planned, after: &After) -> Result<Subject, StoreError> {
    let Planned { before, repository, new, .. } = planned;
    let empty = Store { files: Vec::new(), ..measured.store.clone() };
    let mut store = before.unwrap_or(empty);
    let is_new = |own: &&Named| new.contains(&own.path);
    store.files.extend(measured.store.files.iter().filter(is_new).cloned());
    store.files.retain(|own| own.path != measured.path());
    store.files.push(Named::text(measured.path(), &after.text));
    store.files.sort_by(|one, other| one.path.cmp(&other.path));
    let parents: Vec<_> = repository.head()?.into_iter().collect();
    let origin = Origin { repository, tips: parents.clone(), parents, sides: None };
    Ok(Subject { store, day: None, origin: Some(origin), no_past: None, conflicts: Vec::new() })
}

/// Returns what the commit says: who measured what on which day, and each value that changed.
fn message(measured: &Measured, dialogue: &Dialogue, changes: &[Change]) -> String {
    let by = dialogue.by().map(|by| format!(" by {by}")).unwrap_or_default();
    let mut lines =
        vec![format!("{}: measured on {}{by}", measured.id, dialogue.day()), String::new()];
    let change = |change: &Change| {
        let name = &change.name;
        match (&change.old, &change.new) {
            (Some(old), Some(new)) => format!("{name}: {} -> {}", old.text, new.text),
            (None, Some(new)) => format!("{name}: {}, new", new.text),
            (Some(old), None) => format!("{name}: {}, taken out", old.text),
            (None, None) => name.to_string(),
        }
    };
    lines.extend(changes.iter().take(NAMED).map(change));
    if changes.len() > NAMED {
        lines.push(format!("and {} more", changes.len() - NAMED));
    }
    lines.extend(dialogue.accepted().map(|why| format!("Measured out of level: {why}")));
    lines.iter().map(|line| format!("{}\n", shown::line(line))).collect()
}
