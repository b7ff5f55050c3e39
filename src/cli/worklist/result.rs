//! The texts of the book as they should read after the work. Nothing of it is ever written into a
//! book that is there: nobody measured it.

use std::fs;
use std::io;
use std::path::Path;

use super::super::arguments::Worklist as Arguments;
use super::super::exit::Exit;
use super::super::output::Done;
use crate::model::Book;
use crate::planning::worklist::Worklist;
use crate::reports::shown;
use crate::store;
use crate::store::saving::save_over;
use crate::writing::editing::Refused;

/// Returns what is printed: the boat's record, or where the whole book went.
pub(super) fn handed(
    arguments: &Arguments,
    to: &Path,
    book: &Book,
    list: &Worklist,
    texts: &[(String, String)],
    told: &mut Vec<String>,
) -> Result<String, Done> {
    if to == Path::new("-") {
        for (path, _) in texts.iter().skip(1) {
            told.push(shown::line(&format!(
                "{path} changes too: collars slide. --result FOLDER writes both."
            )));
        }
        return Ok(texts.first().map_or(String::new(), |(_, text)| text.clone()));
    }
    check_outside(arguments, to)?;
    write_all(to, book, texts).map_err(|error| could_not(to, &error))?;
    let folder = store::quoted(to);
    Ok(format!(
        "The book with {} as she should read after the work is in {folder}. Nobody measured it: keep it out of the book.\nTry: tholebook lint {folder} --only {} --as-of {}\n",
        shown::line(&list.called),
        shown::line(&list.boat),
        list.as_of
    ))
}

/// A predicted record inside a book is a danger: the folder must be new or empty, and in no book.
fn check_outside(arguments: &Arguments, to: &Path) -> Result<(), Done> {
    let usage = |why: String| {
        let told = vec![shown::line(&why), "Give a new folder outside the book.".to_owned()];
        Err(Done::refused(Exit::Usage, told))
    };
    match fs::read_dir(to).map(Iterator::count) {
        Ok(0) => {}
        Ok(_) => return usage(format!("{} is not empty.", store::shown(to))),
        Err(error) if error.kind() == io::ErrorKind::NotFound => {}
        Err(error) => return Err(could_not(to, &error)),
    }
    let whole = std::path::absolute(to).map_err(|error| could_not(to, &error))?;
    let there = whole.ancestors().find(|folder| folder.exists()).unwrap_or(&whole);
    let there = fs::canonicalize(there).map_err(|error| could_not(to, &error))?;
    let given = arguments.book.as_deref().and_then(|book| fs::canonicalize(book).ok());
    let inside = given.is_some_and(|book| there.starts_with(book));
    if inside || store::find_book(&there).is_ok() {
        return usage(format!("{} is inside a book.", store::shown(to)));
    }
    Ok(())
}

fn write_all(to: &Path, book: &Book, texts: &[(String, String)]) -> io::Result<()> {
    for file in book.files.iter().filter(|file| !file.built_in) {
        let changed = texts.iter().find(|(path, _)| *path == file.path);
        let text = changed.map_or(&file.text, |(_, text)| text);
        let path = to.join(&file.path);
        if let Some(folder) = path.parent() {
            fs::create_dir_all(folder)?;
        }
        save_over(&path, text)?;
    }
    Ok(())
}

/// Says why no result could be made.
pub(super) fn refused(refused: &Refused) -> Done {
    let told = [format!("No result: {refused}."), format!("{}.", refused.help())];
    Done::refused(Exit::NotChecked, told.iter().map(|line| shown::line(line)).collect())
}

fn could_not(to: &Path, error: &io::Error) -> Done {
    let told = format!("Could not write into {}: {error}", store::shown(to));
    Done::refused(Exit::NotChecked, vec![shown::line(&told)])
}
