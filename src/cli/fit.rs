//! `fit`: a crew seated in her boat.

use super::arguments::Fit;
use super::arguments::FitFormat;
use super::book;
use super::book::OpenBook;
use super::exit::Exit;
use super::look::look;
use super::output::Done;
use crate::model::Crew;
use crate::planning::fitting;
use crate::planning::fitting::Worth;
use crate::reports;
use crate::reports::shown;
use crate::working::BoatSight;

/// Runs the command.
pub(super) fn run(arguments: &Fit) -> Done {
    fitted(arguments).unwrap_or_else(|refused| refused)
}

fn fitted(arguments: &Fit) -> Result<Done, Done> {
    let open = book::open(arguments.book.as_deref(), None)?;
    let crew = open.book.crews.iter().find(|crew| crew.id.value == arguments.crew);
    let crew = crew.ok_or_else(|| no_crew(&open, &arguments.crew))?;
    let boat = boat_of(&open, crew)?;
    let fit = fitting::fit(&open.book, crew, boat);
    let result = match arguments.format {
        FitFormat::Text => reports::fitting_text(&fit, look(&arguments.look)),
        FitFormat::Json => reports::fitting_json(&fit),
    };
    let exit = if open.settings_are_bad() { Exit::Usage } else { exit(&fit) };
    let mut told = open.told.clone();
    told.extend(open.unread());
    Ok(Done { exit, result, told })
}

/// Nothing better, something to change or not known, or nobody's arc could be worked out.
fn exit(fit: &fitting::Fit) -> Exit {
    let mut arcs = fit.rowers.iter().map(|seated| seated.arc.as_ref());
    if fit.rowers.iter().all(|seated| seated.arc.is_err()) {
        return Exit::NotChecked;
    }
    let settled = arcs.all(|arc| {
        arc.is_ok_and(|arc| arc.catch.is_ok() && !arc.arc_unused && arc.hole == arc.now)
    });
    let chocks = fit.remains.as_ref().map(|remains| remains.chocks_alike.worth);
    let swap = fit.swap.as_ref().map(|swap| swap.worth);
    let better = [fit.worth, chocks, swap].contains(&Some(Worth::Sure));
    if settled && !better && fit.holes.is_ok() { Exit::Clear } else { Exit::Findings }
}

fn boat_of<'b>(open: &'b OpenBook, crew: &Crew) -> Result<BoatSight<'b>, Done> {
    let called = shown::line(&crew.id.value);
    let refused = |told: Vec<String>| {
        let told = open.told.iter().cloned().chain(told).chain(open.unread()).collect();
        Done::refused(Exit::NotChecked, told)
    };
    let Some(id) = &crew.boat else {
        let told = format!("Crew {called} names no boat. Write in its file: boat: and her id.");
        return Err(refused(vec![told]));
    };
    let boat = open.book.boat(&id.value).ok_or_else(|| {
        let ids: Vec<&str> = open.book.boats.iter().map(|boat| &*boat.id.value).collect();
        refused(book::unknown("boat", &id.value, &ids, "See the crew's file."))
    })?;
    Ok(BoatSight::new(&open.book, boat))
}

fn no_crew(open: &OpenBook, name: &str) -> Done {
    let ids: Vec<&str> = open.book.crews.iter().map(|crew| &*crew.id.value).collect();
    let known = match ids.as_slice() {
        [] => "This book has no crew that can be read.".to_owned(),
        ids => format!("There are {}.", shown::line(&ids.join(", "))),
    };
    let mut told = open.told.clone();
    told.extend(book::unknown("crew", name, &ids, &known));
    told.extend(open.unread());
    Done::refused(Exit::Usage, told)
}
