//! `sample`: writes an invented club's book as a repository with two seasons of commits.

use std::collections::BTreeSet;
use std::path::Path;

use super::arguments::Sample;
use super::exit::Exit;
use super::output::Done;
use crate::reports::shown;
use crate::store;
use crate::store::founding;
use crate::store::founding::Founding;
use crate::store::founding::FoundingError;
use crate::store::founding::MAIN;
use crate::units::Date;
use crate::writing::sample;

/// Runs the command.
pub(super) fn run(arguments: &Sample) -> Done {
    let plan = sample::seasons().expect("the tests tell the whole story, which never changes");
    match founding::found(&arguments.folder, &plan) {
        Ok(_) => Done::result(made(&arguments.folder, &plan)),
        Err(refused) => {
            let exit = match refused {
                FoundingError::CannotWrite { .. } => Exit::NotChecked,
                _ => Exit::Usage,
            };
            let told = [refused.to_string(), refused.help().to_owned()];
            Done::refused(exit, told.iter().map(|line| shown::line(line)).collect())
        }
    }
}

fn made(folder: &Path, plan: &Founding) -> String {
    let others: Vec<&str> =
        plan.branches.keys().map(String::as_str).filter(|branch| *branch != MAIN).collect();
    let tags: Vec<&str> = plan.tags.iter().map(|tag| tag.name.as_str()).collect();
    let authors: BTreeSet<&str> =
        plan.commits.iter().map(|commit| commit.by.name.as_str()).collect();
    let book = store::quoted(folder);
    let lines = [
        format!("An invented club's book is in {}.", store::shown(folder)),
        format!("{} commits by {}", plan.commits.len(), listed(authors)),
        format!("branches: {MAIN}, {}", others.join(", ")),
        format!("tags: {}", tags.join(", ")),
        String::new(),
        "Try:".to_owned(),
        format!("  tholebook history kittiwake/seat-2/rowlock/gap --book {book}"),
        format!("  tholebook blame kittiwake --book {book}"),
        format!("  tholebook diff spring-sands-2026.. --book {book}"),
        format!("Today in this book is {}:", last_day(plan)),
        format!("  tholebook lint {book} --as-of {}", last_day(plan)),
    ];
    lines.iter().map(|line| format!("{}\n", shown::line(line))).collect()
}

fn listed(names: BTreeSet<&str>) -> String {
    names.into_iter().collect::<Vec<_>>().join(", ")
}

/// Returns the day of the last commit, by the club's own clock.
fn last_day(plan: &Founding) -> Date {
    let local =
        plan.commits.iter().map(|commit| commit.by.seconds + i64::from(commit.by.ahead) * 60);
    let day = local.max().unwrap_or_default();
    let last = jiff::Timestamp::from_second(day).unwrap_or_default();
    Date::from_civil(jiff::tz::TimeZone::UTC.to_datetime(last).date())
}
