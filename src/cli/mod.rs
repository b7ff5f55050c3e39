//! The command line: arguments in, text and an exit code out. One file a command.
//!
//! The only room that reads the clock, the environment and standard input, and the only one that
//! prints. What anything means is for the rooms below.

mod add;
mod also;
mod arguments;
mod blame;
mod book;
mod card;
mod checking;
mod checkup;
mod derive;
mod diff;
mod exit;
mod first_found;
mod fit;
mod guard;
mod history;
mod limits_from;
mod lint;
mod look;
mod matching;
mod measure;
mod mend;
mod open_past;
mod output;
mod pages;
mod parting;
mod program;
mod progress;
mod ready;
mod remeasuring;
mod rules;
mod sample;
mod saving;
mod schema;
mod settings;
mod sheet;
mod shell;
mod splice;
mod standard_input;
mod start;
mod states;
mod subject;
mod verdicts;
mod view;
mod waive;
mod waivers;
mod why;
mod wire;
mod worked_out;
mod worklist;

use std::ffi::OsString;
use std::panic;
use std::process::ExitCode;

use clap::Parser;

use self::arguments::Arguments;
use self::arguments::Command;
use self::exit::Exit;
use self::output::Done;
use crate::reports::shown;

/// Runs the command that the program was started with and returns its exit code.
#[must_use]
pub fn run() -> ExitCode {
    panic::set_hook(Box::new(|fault| output::tell(&own_fault(&fault.to_string()))));
    guarded(|| output::hand_over(answer(std::env::args_os()))).into()
}

/// Runs something; a fault of the program ends it, and the exit code says so.
fn guarded(run: impl FnOnce() -> Exit + panic::UnwindSafe) -> Exit {
    panic::catch_unwind(run).unwrap_or(Exit::OwnFault)
}

fn own_fault(fault: &str) -> Vec<String> {
    vec![
        "This is a fault of tholebook itself, not of the book. Nothing was decided.".to_owned(),
        format!("Please report it with these words: {}", shown::line(fault)),
    ]
}

fn answer(arguments: impl IntoIterator<Item = OsString>) -> Done {
    match Arguments::try_parse_from(arguments) {
        Ok(arguments) => match arguments.command {
            Command::Lint(lint) => lint::run(&lint),
            Command::Why(why) => why::run(&why),
            Command::Rules(rules) => rules::run(&rules),
            Command::Diff(diff) => diff::run(&diff),
            Command::Derive(derive) => derive::run(&derive),
            Command::Mend(mend) => mend::run(&mend),
            Command::Waive(waive) => waive::run(&waive),
            Command::Waivers(waivers) => waivers::run(&waivers),
            Command::Start(start) => start::run(&start),
            Command::Add(add) => add::run(&add),
            Command::Sample(sample) => sample::run(&sample),
            Command::Schema(schema) => schema::run(&schema),
            Command::Settings(settings) => settings::run(&settings),
            Command::Card(card) => card::run(&card),
            Command::Measure(asked) => measure::run(&asked),
            Command::Sheet(sheet) => sheet::run(&sheet),
            Command::Pages(pages) => pages::run(&pages),
            Command::Fit(fit) => fit::run(&fit),
            Command::Match(asked) => matching::run(&asked),
            Command::Ready(ready) => ready::run(&ready),
            Command::History(history) => history::run(&history),
            Command::Blame(blame) => blame::run(&blame),
            Command::Wire(asked) => wire::wire(&asked),
            Command::Unwire(asked) => wire::unwire(&asked),
            Command::Completions(asked) => shell::completions(&asked),
            Command::Man(asked) => shell::man(&asked),
            Command::View(view) => view::run(&view),
            Command::Splice(splice) => splice::run(&splice),
            Command::Guard(guard) => guard::run(&guard),
            Command::Worklist(worklist) => worklist::run(&worklist),
            Command::Checkup(checkup) => checkup::run(&checkup),
        },
        Err(asked) => not_run(&asked),
    }
}

/// Help and version are results; anything else is wrong usage.
fn not_run(asked: &clap::Error) -> Done {
    let text = shown::lines(&asked.render().to_string());
    if asked.use_stderr() {
        Done { exit: Exit::Usage, result: String::new(), told: vec![text.trim_end().to_owned()] }
    } else {
        Done::result(text)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_fault_of_the_program_has_its_own_exit_code() {
        assert_eq!(guarded(|| panic!("a pin went missing")), Exit::OwnFault);
        assert_eq!(guarded(|| Exit::Findings), Exit::Findings);
    }

    #[test]
    fn a_fault_of_the_program_is_told_in_plain_words_without_steering_the_terminal() {
        let told = own_fault("at \u{1b}[2J").join("\n");
        assert!(told.contains("not of the book") && told.contains("\\u{1b}"), "{told}");
    }

    #[test]
    fn the_arguments_make_sense() {
        use clap::CommandFactory as _;
        Arguments::command().debug_assert();
    }

    #[test]
    fn words_below_the_options_fit_a_terminal_of_eighty_columns() {
        use clap::CommandFactory as _;
        let mut told = 0;
        for command in Arguments::command().get_subcommands() {
            let words = command.get_after_help().map(ToString::to_string).unwrap_or_default();
            for line in words.lines() {
                assert!(line.chars().count() <= 80, "{}: {line}", command.get_name());
                told += 1;
            }
        }
        assert!(told > 100, "{told} lines are too few to tell");
    }
}
