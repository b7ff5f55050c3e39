//! `guard status`: what stands in the place of each hook, and the cure.

use std::path::Path;

use super::NO_GATE;
use super::around;
use super::install::own;
use super::moments;
use crate::cli::arguments::Books;
use crate::cli::book;
use crate::cli::exit::Exit;
use crate::cli::output::Done;
use crate::reports::shown;
use crate::store::Lies;
use crate::store::Repository;
use crate::store::StoreError;
use crate::store::hooks;
use crate::store::hooks::Hook;
use crate::store::hooks::There;
use crate::store::hooks::is_program;
use crate::writing::guard::Moment;
use crate::writing::guard::Script;

/// How a hook stands.
pub(in crate::cli) struct Standing {
    /// The name that git has for it.
    pub(in crate::cli) hook: &'static str,
    /// How it stands, in words.
    pub(in crate::cli) said: String,
    /// What helps; none where it is in order.
    pub(in crate::cli) cure: Option<String>,
}

const INSTALL: &str = "tholebook guard install";

/// Runs the command.
pub(super) fn run(arguments: &Books) -> Done {
    let had = || {
        let repository = around(&arguments.book)?;
        Ok((standings(&repository)?, repository.is_bare()))
    };
    let (standings, is_bare) = match had() {
        Ok(had) => had,
        Err(error) => return book::could_not(&error),
    };
    let mut result: String = standings.iter().map(|one| format!("{}\n", line(one))).collect();
    if !is_bare {
        result.push_str(&format!("{NO_GATE}\n"));
    }
    let in_order = standings.iter().all(|one| one.cure.is_none());
    let exit = if in_order { Exit::Clear } else { Exit::Findings };
    Done { exit, result, told: Vec::new() }
}

fn line(standing: &Standing) -> String {
    let cure = standing.cure.as_ref().map(|cure| format!(" | {cure}")).unwrap_or_default();
    shown::line(&format!("{:<17} {}{cure}", standing.hook, standing.said))
}

/// Returns how every hook of a repository stands.
///
/// # Errors
///
/// Its settings can't be read.
pub(in crate::cli) fn standings(repository: &Repository) -> Result<Vec<Standing>, StoreError> {
    let found = repository.hooks()?;
    let of = |moment: &Moment| standing(&found.folder, *moment, found.lies);
    Ok(moments(repository).iter().map(of).collect())
}

fn standing(folder: &Path, moment: Moment, lies: Lies) -> Standing {
    let (said, cure) = match hooks::look(folder, moment.hook()) {
        Ok(hook) => match (own(&hook, moment), &hook.there) {
            (Some(script), There::File { text, is_executable }) => {
                of_ours(&script, text.as_deref(), *is_executable, &hook)
            }
            (_, there) => of_others(there, moment, &hook),
        },
        Err(error) => (format!("can't be looked at: {error}"), Some(error.help())),
    };
    let cure = match (cure, lies) {
        (Some(cure), Lies::AmongFiles | Lies::Elsewhere) if cure == INSTALL => {
            Some(format!("{INSTALL} says the line to add (core.hooksPath)"))
        }
        (cure, _) => cure,
    };
    Standing { hook: moment.hook(), said, cure }
}

fn of_ours(
    script: &Script,
    text: Option<&str>,
    is_executable: bool,
    hook: &Hook,
) -> (String, Option<String>) {
    let program = &script.program;
    let install = Some(INSTALL.to_owned());
    if !is_executable {
        return ("ours, but not executable: git does not run it".to_owned(), install);
    }
    if !is_program(Path::new(program)) {
        return (format!("calls {program}, which is not there"), install);
    }
    if text != Some(&script.text()) {
        return ("out of date, or changed by hand".to_owned(), install);
    }
    let kept = if hook.has_kept { "; another program's hook is called first" } else { "" };
    (format!("installed, calls {program}{kept}"), None)
}

fn of_others(there: &There, moment: Moment, hook: &Hook) -> (String, Option<String>) {
    let install = Some(INSTALL.to_owned());
    let call = moment.words().split(" --").next().unwrap_or_default();
    match there {
        There::Nothing if hook.has_kept => {
            ("not there, though another program's is kept".to_owned(), install)
        }
        There::Nothing => ("not installed".to_owned(), install),
        There::NoFile => ("not a file".to_owned(), Some("take it away, then install".to_owned())),
        There::File { is_executable: false, .. } => {
            ("another program's hook, and not executable".to_owned(), install)
        }
        There::File { text: Some(text), .. } if calls(text, call) => {
            let said = "another program's hook; it names tholebook, and whether it stops anything was \
                        not looked at";
            (said.to_owned(), None)
        }
        There::File { .. } => ("another program's hook".to_owned(), install),
    }
}

/// Returns whether a line that is no comment makes a call, and does not do away with its answer.
fn calls(text: &str, call: &str) -> bool {
    let lines = text.lines().filter(|line| !line.trim_start().starts_with('#'));
    lines.into_iter().any(|line| line.contains(call) && !line.contains("|| true"))
}
