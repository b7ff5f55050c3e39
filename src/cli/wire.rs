//! `wire` and `unwire`: git is told to compare and merge the book's records by value, or no longer.

use std::fs;
use std::io::ErrorKind;
use std::path::PathBuf;

use super::arguments::Unwire;
use super::arguments::Wire;
use super::book;
use super::exit::Exit;
use super::output::Done;
use super::program;
use crate::reports::shown;
use crate::store;
use crate::store::Repository;
use crate::store::StoreError;
use crate::store::saving::save_over;
use crate::writing::wiring;
use crate::writing::wiring::ATTRIBUTES;
use crate::writing::wiring::Setting;

const NEXT: &str = "\
Commit .gitattributes. The settings are of this clone only: every clone runs
tholebook wire once. A forge merges line by line, whatever is set here; CI or
guard receive is the gate.
";

const ALLOW: &str = "wire --program-among-files";

/// What the attributes of this program say.
pub(super) const OURS: &str = "tholebook";

/// What is said of a thing that stands as `wire` puts it.
pub(super) const WELL: &str = "as it should be";

/// The book's attributes and the repository it lies in.
struct Place {
    repository: Repository,
    file: PathBuf,
    /// The attributes as they stand; nothing where there are none.
    text: String,
    /// The paths of the book's texts.
    paths: Vec<String>,
}

/// Runs `wire`.
pub(super) fn wire(arguments: &Wire) -> Done {
    let run = || {
        let place = place(arguments.book.as_deref())?;
        let program = program::own_path(&place.repository, arguments.program_among_files, ALLOW)?;
        let settings = wiring::settings(&program);
        if arguments.check { check(&place, &settings) } else { set(&place, &settings) }
    };
    run().unwrap_or_else(|refused| refused)
}

/// Runs `unwire`.
pub(super) fn unwire(arguments: &Unwire) -> Done {
    let run = || {
        let place = place(arguments.book.as_deref())?;
        let mut said = String::new();
        let text = wiring::without_attributes(&place.text);
        if text != place.text {
            place.write(&text)?;
            said.push_str(&format!("taken out of {}\n", store::shown(&place.file)));
        }
        for Setting { name, .. } in wiring::settings("") {
            let taken = place.repository.take_setting(name);
            if taken.map_err(|error| book::could_not(&error))? {
                said.push_str(&format!("taken away: {name}\n"));
            }
        }
        if said.is_empty() {
            said.push_str("Nothing was wired here.\n");
        }
        Ok(Done::result(said))
    };
    run().unwrap_or_else(|refused| refused)
}

fn place(given: Option<&std::path::Path>) -> Result<Place, Done> {
    let had = || {
        let store = book::opened(given)?;
        let paths = store.files.into_iter().map(|named| named.path).collect();
        Ok((Repository::around(&store.root)?, store.root, paths))
    };
    let (repository, root, paths) = had().map_err(|error| book::could_not(&error))?;
    let file = root.join(ATTRIBUTES);
    let is_link = fs::symlink_metadata(&file).is_ok_and(|about| about.is_symlink());
    let text = match fs::read_to_string(&file) {
        _ if is_link => Err("it is a link, and git does not follow it".to_owned()),
        Ok(text) => Ok(text),
        Err(error) if error.kind() == ErrorKind::NotFound => Ok(String::new()),
        Err(error) => Err(error.to_string()),
    };
    let text = text.map_err(|why| failed("read", &file, &why))?;
    Ok(Place { repository, file, text, paths })
}

fn failed(done: &str, file: &std::path::Path, why: &str) -> Done {
    let told = format!("{} could not be {done}: {why}", store::shown(file));
    Done::refused(Exit::NotChecked, vec![shown::line(&told)])
}

impl Place {
    /// Writes the attributes; a file with none left is taken away.
    fn write(&self, text: &str) -> Result<(), Done> {
        let written = match text {
            "" => fs::remove_file(&self.file),
            text => save_over(&self.file, text),
        };
        written.map_err(|error| failed("written", &self.file, &error.to_string()))
    }

    fn setting(&self, name: &str) -> Result<Option<String>, Done> {
        self.repository.setting(name).map_err(|error| book::could_not(&error))
    }
}

fn set(place: &Place, settings: &[Setting]) -> Result<Done, Done> {
    let mut said = format!("{}:\n", shown::line(&store::shown(&place.file)));
    for line in wiring::attributes() {
        said.push_str(&format!("  {line}\n"));
    }
    said.push_str("git config of this clone:\n");
    for Setting { name, value } in settings {
        said.push_str(&format!("  {name} = {}\n", shown::line(value)));
    }
    let text = wiring::with_attributes(&place.text);
    if text != place.text {
        place.write(&text)?;
    }
    for Setting { name, value } in settings {
        if place.setting(name)?.as_ref() != Some(value) {
            let made = place.repository.make_setting(name, value);
            made.map_err(|error| book::could_not(&error))?;
        }
    }
    Ok(Done::result(format!("{said}{NEXT}")))
}

fn check(place: &Place, settings: &[Setting]) -> Result<Done, Done> {
    let is_wired = wiring::with_attributes(&place.text) == place.text;
    let attributes = match overruled(&place.repository, &place.paths) {
        _ if !is_wired => "not wired".to_owned(),
        Some((path, name)) => {
            format!("overruled: {name} of {} is something else", shown::line(path))
        }
        None => WELL.to_owned(),
    };
    let mut rows = vec![(ATTRIBUTES, attributes)];
    for setting in settings {
        let said =
            of_setting(&place.repository, setting).map_err(|error| book::could_not(&error))?;
        rows.push((setting.name, said.to_owned()));
    }
    let all_well = rows.iter().all(|(_, said)| said == WELL);
    let mut said: String = rows.iter().map(|(name, said)| format!("{name:<26} {said}\n")).collect();
    if !all_well {
        said.push_str("To mend it: tholebook wire; what overrules it stands in another .gitattributes\nor in .git/info/attributes\n");
    }
    let exit = if all_well { Exit::Clear } else { Exit::Findings };
    Ok(Done { exit, result: said, told: Vec::new() })
}

/// Returns the first text of a book for which git is not told to ask this program, and the attribute
/// that says otherwise.
pub(super) fn overruled<'p>(
    repository: &Repository,
    paths: &'p [String],
) -> Option<(&'p str, &'static str)> {
    let lacks = |name: &str, path: &str| repository.attribute(path, name).as_deref() != Some(OURS);
    let each = paths.iter().flat_map(|path| ["merge", "diff"].map(|name| (path.as_str(), name)));
    each.into_iter().find(|(path, name)| lacks(name, path))
}

/// Returns how a setting stands in this clone.
///
/// # Errors
///
/// The settings can't be read.
pub(super) fn of_setting(
    repository: &Repository,
    setting: &Setting,
) -> Result<&'static str, StoreError> {
    Ok(match repository.setting(setting.name)? {
        Some(own) if own == setting.value => WELL,
        Some(_) => "something else is set",
        None => "not set",
    })
}
