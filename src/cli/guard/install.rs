//! `guard install`: puts the hooks in place.

use std::path::Path;
use std::path::PathBuf;

use super::NO_GATE;
use super::moments;
use crate::cli::arguments::Install;
use crate::cli::book;
use crate::cli::exit::Exit;
use crate::cli::output::Done;
use crate::cli::program;
use crate::reports::shown;
use crate::store;
use crate::store::HooksFolder;
use crate::store::Lies;
use crate::store::Repository;
use crate::store::hooks;
use crate::store::hooks::Hook;
use crate::store::hooks::HookError;
use crate::store::hooks::There;
use crate::writing::guard::Moment;
use crate::writing::guard::Script;

const ALLOW: &str = "guard install --program-among-files";

/// A hook that is to be put in place, and what is there.
struct Planned {
    script: Script,
    hook: Hook,
    is_own: bool,
}

/// Runs the command.
pub(super) fn run(arguments: &Install) -> Done {
    installed(arguments).unwrap_or_else(|refused| refused)
}

fn installed(arguments: &Install) -> Result<Done, Done> {
    let (repository, books) = place(&arguments.books.book)?;
    let program = program::own_path(&repository, arguments.program_among_files, ALLOW)?;
    let found = repository.hooks().map_err(|error| book::could_not(&error))?;
    let scripts = moments(&repository).iter().map(|moment| Script {
        moment: *moment,
        program: program.clone(),
        books: books.clone(),
    });
    let scripts: Vec<Script> = scripts.collect();
    if found.lies != Lies::InGit {
        return Err(not_ours(&found, &scripts));
    }
    let plan = scripts.into_iter().map(|script| planned(&found.folder, script));
    let plan =
        plan.collect::<Result<Vec<Planned>, HookError>>().map_err(|error| refused(&error))?;
    let mut told = Vec::new();
    for planned in &plan {
        match put(planned) {
            Ok(line) => told.push(line),
            Err(error) => {
                let mut done = refused(&error);
                done.told.extend(told);
                return Err(done);
            }
        }
    }
    Ok(Done::result(said(&told, &repository)))
}

fn said(told: &[String], repository: &Repository) -> String {
    let lines: String = told.iter().map(|line| format!("{line}\n")).collect();
    if repository.is_bare() {
        return format!(
            "{lines}Every push is checked before it is taken. Which branches: protect, in club.yaml.\n"
        );
    }
    format!("{lines}{NO_GATE}\n")
}

/// Returns the repository, and where in its files each book lies.
fn place(given: &[PathBuf]) -> Result<(Repository, Vec<String>), Done> {
    if given.is_empty() {
        let sought = store::find_book(Path::new("."));
        let bare = || Repository::from_environment(None).ok().filter(Repository::is_bare);
        return match (sought, bare) {
            (Ok(root), _) => of_book(&root).map(|(repository, book)| (repository, vec![book])),
            (Err(error), bare) => match bare() {
                Some(bare) => Ok((bare, Vec::new())),
                None => Err(book::could_not(&error)),
            },
        };
    }
    let mut all = given.iter().map(|book| of_book(book));
    let (first, book) = all.next().ok_or_else(|| wrong("No book was named."))??;
    let mut books = vec![book];
    for other in all {
        let (other, book) = other?;
        if other.top() != first.top() {
            return Err(wrong("The books lie in different repositories: install in each of them."));
        }
        books.push(book);
    }
    books.dedup();
    Ok((first, books))
}

fn of_book(given: &Path) -> Result<(Repository, String), Done> {
    let had = || {
        let repository = Repository::around(given)?;
        if repository.is_bare() {
            return Ok(repository);
        }
        Repository::around(&store::find_book(given)?)
    };
    let repository = had().map_err(|error| book::could_not(&error))?;
    let below = repository.below().unwrap_or_default();
    let below = if below.is_empty() { ".".to_owned() } else { below };
    if !may_stand_in_a_hook(&below) {
        return Err(wrong("The name of the book's folder can't be put into a hook. Rename it."));
    }
    Ok((repository, below))
}

/// A name on a line of its own, as it is.
fn may_stand_in_a_hook(name: &str) -> bool {
    !name.contains(|c: char| c.is_control() || c == '\\')
}

/// Nothing is written where others may be hit by it, or where a commit decides what is run.
fn not_ours(found: &HooksFolder, scripts: &[Script]) -> Done {
    let folder = store::shown(&found.folder);
    let why = match found.lies {
        Lies::AmongFiles => format!(
            "core.hooksPath leads among the files of the work tree, {folder}. Nothing was written: \
             any commit can change a hook there, and every clone would be given ours."
        ),
        _ => format!(
            "core.hooksPath leads out of the repository, {folder}. Nothing was written: other \
             repositories may use these hooks too."
        ),
    };
    let mut told = vec![
        shown::line(&why),
        "To have them checked there, add one line to each hook, for sh:".to_owned(),
    ];
    let line = |script: &Script| format!("  {}: {}", script.moment.hook(), script.line());
    told.extend(scripts.iter().map(|script| shown::line(&line(script))));
    told.push("Or let this repository have hooks of its own: git config core.hooksPath \"$(git rev-parse --git-common-dir)/hooks\"".to_owned());
    Done::refused(Exit::Usage, told)
}

fn planned(folder: &Path, mut script: Script) -> Result<Planned, HookError> {
    let hook = hooks::look(folder, script.moment.hook())?;
    let own = own(&hook, script.moment);
    let is_own = own.is_some();
    hook.may_put(is_own)?;
    let before = own.map(|own| own.books).unwrap_or_default();
    let new: Vec<String> = script.books.into_iter().filter(|book| !before.contains(book)).collect();
    script.books = before.into_iter().chain(new).collect();
    Ok(Planned { script, hook, is_own })
}

/// Returns what our own hook was made of; none where it is another program's.
pub(super) fn own(hook: &Hook, moment: Moment) -> Option<Script> {
    match &hook.there {
        There::File { text: Some(text), .. } => Script::read(moment, text),
        _ => None,
    }
}

fn put(planned: &Planned) -> Result<String, HookError> {
    let Planned { script, hook, is_own } = planned;
    let text = script.text();
    let name = script.moment.hook();
    let as_it_is = There::File { text: Some(text.clone()), is_executable: true };
    if hook.there == as_it_is {
        return Ok(format!("{name:<17} is there already"));
    }
    hook.put(&text, *is_own)?;
    let what = if *is_own { "was written anew" } else { "was put in place" };
    let keeps = hook.has_kept || (!is_own && hook.there != There::Nothing);
    let kept = if keeps { "; the hook that was there is called first" } else { "" };
    Ok(format!("{name:<17} {what}{kept}"))
}

fn wrong(told: &str) -> Done {
    Done::refused(Exit::Usage, vec![told.to_owned()])
}

/// Returns what the command comes to where a hook can't be put in place or taken away.
pub(super) fn refused(error: &HookError) -> Done {
    let exit = match error {
        HookError::Refused { .. } => Exit::NotChecked,
        _ => Exit::Usage,
    };
    Done::refused(exit, vec![shown::line(&error.to_string()), shown::line(&error.help())])
}
