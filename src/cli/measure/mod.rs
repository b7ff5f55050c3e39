//! `measure`: guided entry at the boat, in the order of the work.

mod committing;
mod draft;
mod ending;
mod given;
mod returning;
mod subject;
mod talking;
mod terminal;
mod verdicts;

use std::io;
use std::io::IsTerminal as _;

use self::subject::Measured;
use super::arguments::Measure;
use super::exit::Exit;
use super::output::Done;

/// Runs the command.
pub(super) fn run(arguments: &Measure) -> Done {
    measured(arguments).unwrap_or_else(|refused| refused)
}

fn measured(arguments: &Measure) -> Result<Done, Done> {
    if arguments.from.is_none() && !is_terminal() {
        return Err(Done::refused(Exit::Usage, NO_TERMINAL.map(str::to_owned).to_vec()));
    }
    let measured = Measured::open(arguments)?;
    match &arguments.from {
        Some(file) => given::run(&measured, arguments, file),
        None => talking::run(&measured, arguments),
    }
}

fn is_terminal() -> bool {
    io::stdin().is_terminal() && io::stdout().is_terminal()
}

const NO_TERMINAL: [&str; 2] = [
    "measure asks questions, and this is no terminal: nobody could answer.",
    "With the answers in a file, a line each (seat-1/rowlock/gap: 58): tholebook measure BOAT --from \
     FILE --no-input",
];
