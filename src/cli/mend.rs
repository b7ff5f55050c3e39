//! `mend`: corrections of spelling, shown as a diff; written only when that is asked for.

use super::arguments::Mend;
use super::book;
use super::book::OpenBook;
use super::exit::Exit;
use super::output::Done;
use super::saving;
use crate::model::FileId;
use crate::model::Name;
use crate::model::SourceFile;
use crate::reports;
use crate::reports::shown;
use crate::writing::mending;
use crate::writing::mending::Mended;

/// Runs the command.
pub(super) fn run(arguments: &Mend) -> Done {
    mended(arguments).unwrap_or_else(|refused| refused)
}

fn mended(arguments: &Mend) -> Result<Done, Done> {
    let open = book::open(arguments.book.as_deref(), None)?;
    let only = arguments.name.as_deref().map(|name| name.trim_end_matches('/'));
    if let Some(name) = only {
        must_be_there(&open, name)?;
    }
    let files = faulty(&open, only);
    let texts = files.iter().map(|file| (*file, mending::mended(&file.path, &file.text, only)));
    let texts: Vec<(&SourceFile, Mended)> = texts.collect();
    let left: usize = texts.iter().map(|(_, mended)| mended.left).sum();
    let mut done = if arguments.write { write(&open, &texts) } else { show(&open, &texts) };
    done.told.extend(told_left(left));
    Ok(done)
}

/// Returns every file with something that can't be read under this name.
fn faulty<'o>(open: &'o OpenBook, only: Option<&str>) -> Vec<&'o SourceFile> {
    let faults =
        open.faults.iter().filter(|fault| only.is_none_or(|only| fault.name.is_within(only)));
    let mut files: Vec<FileId> = faults.map(|fault| fault.place.file).collect();
    files.sort_unstable();
    files.dedup();
    files
        .into_iter()
        .map(|file| open.book.file(file))
        .filter(|file| !file.text.is_empty())
        .collect()
}

/// Refuses a name that nothing in the book has.
fn must_be_there(open: &OpenBook, name: &str) -> Result<(), Done> {
    let written = open.book.written().map(|written| &written.name);
    let mut names = written.chain(open.faults.iter().map(|fault| &fault.name));
    if names.any(|own| own.is_within(name)) {
        return Ok(());
    }
    let mut known: Vec<&str> = open.book.written().map(|own| record_of(&own.name)).collect();
    known.dedup();
    let mut told = open.told.clone();
    told.extend(book::unknown("value or record", name, &known, "See tholebook lint."));
    Err(Done::refused(Exit::Usage, told))
}

fn record_of(name: &Name) -> &str {
    name.as_str().split('/').next().unwrap_or_default()
}

fn show(open: &OpenBook, texts: &[(&SourceFile, Mended)]) -> Done {
    let mut result: String = texts
        .iter()
        .map(|(file, mended)| reports::changed_lines(&file.path, &file.text, &mended.text))
        .collect();
    let made = count(texts);
    match made {
        0 => result.push_str("Nothing to mend by spelling alone.\n"),
        made => result.push_str(&format!("{}; nothing is written yet: add --write\n", of(made))),
    }
    Done { exit: Exit::Clear, result, told: open.told.clone() }
}

fn write(open: &OpenBook, texts: &[(&SourceFile, Mended)]) -> Done {
    let mut done = Done { exit: Exit::Clear, result: String::new(), told: open.told.clone() };
    for (file, mended) in texts.iter().filter(|(_, mended)| !mended.made.is_empty()) {
        match saving::save(open, file, &mended.text) {
            Ok(()) => done.result.push_str(&told(file, mended)),
            Err(why) => {
                done.exit = Exit::NotChecked;
                done.told.push(why);
            }
        }
    }
    if count(texts) == 0 {
        done.result.push_str("Nothing to mend by spelling alone.\n");
    }
    done
}

fn told(file: &SourceFile, mended: &Mended) -> String {
    let mut lines = vec![format!("{}: {} written", file.path, of(mended.made.len()))];
    let each = mended.made.iter().map(|one| format!("  {}: {} -> {}", one.name, one.old, one.new));
    lines.extend(each);
    lines.iter().map(|line| format!("{}\n", shown::line(line))).collect()
}

fn count(texts: &[(&SourceFile, Mended)]) -> usize {
    texts.iter().map(|(_, mended)| mended.made.len()).sum()
}

fn of(count: usize) -> String {
    if count == 1 { "1 correction".to_owned() } else { format!("{count} corrections") }
}

/// Returns the words for what no spelling puts right.
fn told_left(left: usize) -> Option<String> {
    let things = if left == 1 { "1 thing needs".to_owned() } else { format!("{left} things need") };
    (left > 0).then(|| format!("{things} a person to look; see tholebook lint"))
}
