//! `start`: begins a book.

mod files;
mod questions;

use std::io;
use std::io::BufRead as _;
use std::io::IsTerminal as _;
use std::io::Write as _;
use std::path::Path;
use std::path::PathBuf;

use super::arguments::Ci;
use super::arguments::Start;
use super::exit::Exit;
use super::output::Done;
use crate::reading::RecordKind;
use crate::reports;
use crate::reports::shown;
use crate::store;
use crate::store::CLUB_FILE;
use crate::writing::starting;
use crate::writing::starting::Server;
use crate::writing::wiring;
use files::Made;
use questions::Answers;
use questions::Questions;

/// The folders of the records. One that is empty is nothing to git but for a file in it.
const SHELVES: [&str; 4] = ["boats", "oars", "crews", "classes"];
const KEPT: &str = ".gitkeep";

/// Runs the command.
pub(super) fn run(arguments: &Start) -> Done {
    started(arguments).unwrap_or_else(|refused| refused)
}

fn started(arguments: &Start) -> Result<Done, Done> {
    must_be_free(&arguments.folder)?;
    let mut answers =
        Answers { club: arguments.club.clone(), ci: arguments.ci, ..Answers::default() };
    if answers.club.as_ref().is_some_and(|club| club.trim().is_empty()) {
        return Err(refused(vec!["--club: a club has a name.".to_owned()]));
    }
    answers.must_be_read().map_err(|why| refused(vec![format!("--club: {why}")]))?;
    for tool in &arguments.tool {
        answers.take_tool(tool).map_err(|why| refused(vec![why]))?;
    }
    let answers = match io::stdin().is_terminal() {
        true => asked(answers)?,
        false if answers.club.is_none() => {
            let told = "Not said: the club's name. Give --club NAME; there is nobody to ask here.";
            return Err(refused(vec![told.to_owned()]));
        }
        false => answers,
    };
    let mut made = Made::default();
    match write(&arguments.folder, &answers, &mut made) {
        Ok(done) => Ok(done),
        Err(why) => {
            made.take_back();
            let told = [why, "What was begun is taken away again.".to_owned()];
            let told = told.iter().map(|line| shown::line(line)).collect();
            Err(Done::refused(Exit::NotChecked, told))
        }
    }
}

/// Refuses a folder that is a book already, or lies in one.
fn must_be_free(folder: &Path) -> Result<(), Done> {
    if folder.symlink_metadata().is_ok() && !folder.is_dir() {
        let told = format!("\"{}\" is not a folder.", store::shown(folder));
        return Err(refused(vec![told]));
    }
    let around = folder.ancestors().map(|above| match above.as_os_str().is_empty() {
        true => Path::new("."),
        false => above,
    });
    let there = around.into_iter().find(|above| above.is_dir());
    match there.map(store::find_book) {
        Some(Ok(root)) => Err(refused(vec![
            format!("There is a book already: \"{}\".", store::shown(&root)),
            "A book holds no other book. To add to it: tholebook add --help".to_owned(),
        ])),
        _ => Ok(()),
    }
}

fn refused(mut told: Vec<String>) -> Done {
    told.push("Nothing is written.".to_owned());
    Done::refused(Exit::Usage, told.iter().map(|line| shown::line(line)).collect())
}

/// Asks on the terminal what is not said yet.
fn asked(answers: Answers) -> Result<Answers, Done> {
    let mut questions = Questions::new(answers);
    let mut lines = io::stdin().lock().lines();
    let mut out = io::stderr().lock();
    let broken = |_| refused(vec!["Not all was answered.".to_owned()]);
    while let Some(question) = questions.next() {
        write!(out, "{question}").and_then(|()| out.flush()).map_err(broken)?;
        let line = lines.next().ok_or_else(|| refused(vec!["Not all was answered.".to_owned()]))?;
        if let Err(why) = questions.answer(&line.map_err(broken)?) {
            writeln!(out, "{}", shown::line(&why)).map_err(broken)?;
        }
    }
    Ok(questions.into_answers())
}

/// Writes the book, `club.yaml` last: until then there is none.
fn write(folder: &Path, answers: &Answers, made: &mut Made) -> Result<Done, String> {
    let mut written = Written { folder, made, kept: Vec::new() };
    for shelf in SHELVES {
        written.made.folder(&folder.join(shelf))?;
        written.file(&format!("{shelf}/{KEPT}"), "")?;
    }
    written.made.folder(&folder.join("schema"))?;
    for (kind, _) in RecordKind::ALL {
        let file = format!("schema/{}", reports::schema_file(kind));
        written.file(&file, &reports::schema(kind))?;
    }
    written.file(wiring::ATTRIBUTES, &wiring::with_attributes(""))?;
    let recipe = written.recipe(answers)?;
    let schema = format!("schema/{}", reports::schema_file(RecordKind::Club));
    let club = answers.club.as_deref().unwrap_or_default().trim();
    let text = starting::club(club, &answers.all_readings(), &schema);
    if !written.made.file(&folder.join(CLUB_FILE), &text)? {
        return Err("club.yaml came to be there while this ran".to_owned());
    }
    let kept = written.kept;
    let mut told: Vec<String> =
        kept.iter().map(|file| format!("{file} was there already and stays as it is.")).collect();
    if kept.iter().any(|file| file == wiring::ATTRIBUTES) {
        told.push("For git's attributes of a book: tholebook wire".to_owned());
    }
    let result = said(folder, club, &recipe);
    let told = told.iter().map(|line| shown::line(line)).collect();
    Ok(Done { exit: Exit::Clear, result, told })
}

struct Written<'m> {
    folder: &'m Path,
    made: &'m mut Made,
    /// Files that were there already.
    kept: Vec<String>,
}

impl Written<'_> {
    fn file(&mut self, below: &str, text: &str) -> Result<(), String> {
        if !self.made.file(&self.folder.join(below), text)? {
            self.kept.push(below.to_owned());
        }
        Ok(())
    }

    /// Writes what a server runs, at the top of the repository, and returns what is said of it.
    fn recipe(&mut self, answers: &Answers) -> Result<String, String> {
        let server = match answers.ci {
            Some(Ci::Github) => Server::Github,
            Some(Ci::Gitlab) => Server::Gitlab,
            Some(Ci::None) | None => {
                return Ok(
                    "No server checks it: that is what --ci github and --ci gitlab are for.\n\
                     Or: tholebook guard install"
                        .to_owned(),
                );
            }
        };
        let root = self.folder.canonicalize().map_err(|error| error.to_string())?;
        let below = store::below_top(&root);
        let Some(text) = server.recipe(&below) else {
            return Ok(format!(
                "No recipe is written: \"{below}\" can't stand in one. Give the folder a plain name."
            ));
        };
        let up = below.split('/').filter(|part| !part.is_empty()).count();
        let top: PathBuf = root.ancestors().nth(up).unwrap_or(&root).to_owned();
        let file = top.join(server.file());
        self.made.folder(file.parent().unwrap_or(&top))?;
        if self.made.file(&file, &text)? {
            return Ok(format!("A server checks it by {}.", store::shown(&file)));
        }
        self.kept.push(store::shown(&file));
        Ok(format!("The recipe in {} is not this book's.", store::shown(&file)))
    }
}

fn said(folder: &Path, club: &str, recipe: &str) -> String {
    let book = store::quoted(folder);
    let place = match folder == Path::new(".") {
        true => "here".to_owned(),
        false => format!("in {}", store::shown(folder)),
    };
    let mut lines = vec![format!("A book for {club} is begun {place}."), recipe.to_owned()];
    if store::Repository::around(folder).is_err() {
        lines.push(format!(
            "It lies in no git repository, so nothing keeps its past: git init {book}"
        ));
    }
    lines.push("Next:".to_owned());
    lines.push(format!("  tholebook add oars long-ash --book {book}"));
    lines.push(format!("  tholebook add boat kittiwake --by WHO --book {book}"));
    lines.iter().flat_map(|line| line.lines()).map(|line| shown::line(line) + "\n").collect()
}
