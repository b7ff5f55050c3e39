//! `completions` and `man`: what a shell needs, made from the very arguments that are read.

use std::path::Path;

use clap::CommandFactory as _;

use super::arguments::Arguments;
use super::arguments::Completions;
use super::arguments::Man;
use super::exit::Exit;
use super::output::Done;
use crate::reports::shown;
use crate::store::saving::save_over;

const NAME: &str = "tholebook";

/// Runs `completions`.
pub(super) fn completions(arguments: &Completions) -> Done {
    let mut text = Vec::new();
    clap_complete::generate(arguments.shell, &mut Arguments::command(), NAME, &mut text);
    Done::result(String::from_utf8_lossy(&text).into_owned())
}

/// Runs `man`.
pub(super) fn man(arguments: &Man) -> Done {
    let command = Arguments::command();
    match &arguments.out {
        Some(folder) => written(folder, command),
        None => page(command).map_or_else(|refused| refused, Done::result),
    }
}

fn page(command: clap::Command) -> Result<String, Done> {
    let mut text = Vec::new();
    match clap_mangen::Man::new(command).render(&mut text) {
        Ok(()) => Ok(String::from_utf8_lossy(&text).into_owned()),
        Err(error) => Err(failed("The manual", &error)),
    }
}

/// Writes a page for the program and one for each command that is shown.
fn written(folder: &Path, mut command: clap::Command) -> Done {
    command.build();
    let shown = command.get_subcommands().filter(|own| !own.is_hide_set());
    let commands = shown.map(|own| (format!("{NAME}-{}", own.get_name()), own.clone()));
    let all: Vec<(String, clap::Command)> =
        std::iter::once((NAME.to_owned(), command.clone())).chain(commands).collect();
    let write = |(name, command): (String, clap::Command)| {
        let path = folder.join(format!("{name}.1"));
        let called = shown::line(&path.display().to_string());
        let text = page(command)?;
        save_over(&path, &text).map_err(|error| failed(&called, &error))?;
        Ok(format!("{called}\n"))
    };
    all.into_iter().map(write).collect::<Result<String, Done>>().map_or_else(|no| no, Done::result)
}

fn failed(what: &str, error: &std::io::Error) -> Done {
    Done::refused(Exit::NotChecked, vec![format!("{what} could not be written: {error}")])
}
