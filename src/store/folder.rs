//! Opens a book that lies in a folder: walks it, reads its files side by side.

use std::convert::Infallible;
use std::fs::File;
use std::io;
use std::io::Read;
use std::path::Path;
use std::path::PathBuf;

use rayon::prelude::*;

use crate::store::Store;
use crate::store::error::StoreError;
use crate::store::error::Unread;
use crate::store::layout;
use crate::store::named::Content;
use crate::store::named::MAX_FILE_BYTES;
use crate::store::named::Named;
use crate::store::named::Refusal;
use crate::store::names;
use crate::store::repository;
use crate::store::repository::Ignoring;
use crate::store::seeking;
use crate::store::walking;
use crate::store::walking::Survey;

/// Returns every text of the book in a folder. The folder must be the book's root.
///
/// Links are not followed. What git ignores is left out unless git tracks it; when git can't be
/// asked, nothing is left out and a warning says so.
///
/// # Errors
///
/// [`StoreError`]: no such folder, not a folder, no `club.yaml` in it, or bytes that could not be
/// had, with every such path.
pub fn open_folder(root: &Path) -> Result<Store, StoreError> {
    let folder = seeking::real_folder(root)?;
    if !seeking::is_book(&folder)? {
        return Err(seeking::no_book(root, &folder));
    }
    let survey = survey(&folder);
    let files = read_all(&folder, &survey)?;
    let mut left_out: Vec<String> = survey.left_out.iter().map(|path| names::shown(path)).collect();
    left_out.sort_unstable();
    let name = name_of(root, &folder);
    let strays = strays(&folder, &survey);
    Ok(Store {
        root: folder,
        name,
        files,
        left_out,
        strays,
        absent: survey.absent,
        warnings: survey.warnings,
    })
}

/// Returns the same with the texts that a sparse checkout keeps out of the folder, as git's index
/// has them: that they are not there does not mean that they were taken out. A warning names them.
///
/// # Errors
///
/// Those of [`open_folder`], an index that is cut short, or one of those texts that can't be had.
pub fn open_tracked(root: &Path) -> Result<Store, StoreError> {
    let mut store = open_folder(root)?;
    repository::refuse_cut_index(&store.root)?;
    if store.absent.is_empty() {
        return Ok(store);
    }
    let absent = std::mem::take(&mut store.absent);
    store.files.extend(repository::kept_out(&store.root, &absent)?);
    store.files.sort_unstable_by(|a, b| a.path.cmp(&b.path));
    let told = sparse(&store.root, &absent);
    store.warnings.retain(|warning| Some(warning) != told.as_ref());
    store.warnings.push(format!(
        "This checkout is sparse: not in the folder, and so taken as git's index has them: {}. To \
         have all: git -C {} sparse-checkout disable",
        absent.join(", "),
        names::quoted(&store.root)
    ));
    Ok(store)
}

/// Walks the folder by git's rules where they can be had, else without.
fn survey(root: &Path) -> Survey {
    match survey_by_rules(root) {
        Ok(survey) => survey,
        Err(reason) => {
            let mut survey = survey_of_all(root);
            let warning =
                format!("Git's ignore rules were not used; every file was read: {reason}");
            survey.warnings.insert(0, warning);
            survey
        }
    }
}

fn survey_by_rules(root: &Path) -> Result<Survey, String> {
    let Some(rules) = Ignoring::around(root)? else { return Ok(survey_of_all(root)) };
    let mut survey = walking::survey(root, |path| rules.leaves_out(path))?;
    survey.absent = absent(root, &rules);
    survey.warnings.extend(sparse(root, &survey.absent));
    Ok(survey)
}

fn survey_of_all(root: &Path) -> Survey {
    let Ok(survey) = walking::survey(root, |_| Ok::<bool, Infallible>(false));
    survey
}

/// Returns the texts that a sparse checkout keeps out of the folder.
fn absent(root: &Path, rules: &Ignoring) -> Vec<String> {
    let texts = rules.sparse().filter(|path| layout::may_be_text(path));
    let gone = texts.filter(|path| root.join(path).symlink_metadata().is_err());
    gone.map(|path| names::shown(&path)).collect()
}

/// Returns a warning for texts that are not in the folder.
fn sparse(root: &Path, names: &[String]) -> Option<String> {
    (!names.is_empty()).then(|| {
        format!(
            "This checkout is sparse: tracked, but not in the folder and so not read: {}. To have \
             all: git -C {} sparse-checkout disable",
            names.join(", "),
            names::quoted(root)
        )
    })
}

fn read_all(root: &Path, survey: &Survey) -> Result<Vec<Named>, StoreError> {
    let read: Vec<(&PathBuf, io::Result<Content>)> =
        survey.files.par_iter().map(|path| (path, read(&root.join(path)))).collect();
    let mut unread = survey.unread.clone();
    let mut files: Vec<Named> = survey.links.iter().map(|path| link(path)).collect();
    for (path, content) in read {
        match content {
            Ok(content) => files.push(Named { path: names::shown(path), content }),
            Err(error) => unread.push(Unread::because(path, &error)),
        }
    }
    unread.sort_unstable();
    files.sort_unstable_by(|a, b| a.path.cmp(&b.path));
    if unread.is_empty() { Ok(files) } else { Err(StoreError::CannotRead { unread }) }
}

/// What can't be read was not going to be: it is named as left out all the same.
fn strays(root: &Path, survey: &Survey) -> Vec<Named> {
    let plain = survey.strays().filter(|path| {
        root.join(path).symlink_metadata().is_ok_and(|about| about.file_type().is_file())
    });
    let read = plain.filter_map(|path| {
        let content = read(&root.join(path)).ok()?;
        Some(Named { path: names::shown(path), content })
    });
    let mut strays: Vec<Named> = read.collect();
    strays.sort_unstable_by(|a, b| a.path.cmp(&b.path));
    strays
}

fn link(path: &Path) -> Named {
    Named { path: names::shown(path), content: Content::Refused(Refusal::Link) }
}

/// Reads a file. One that grows while it is read can't take more than the limit either.
fn read(path: &Path) -> io::Result<Content> {
    let file = File::open(path)?;
    let bytes = file.metadata()?.len();
    if bytes > MAX_FILE_BYTES {
        return Ok(Content::Refused(Refusal::TooLarge { bytes }));
    }
    let mut content = Vec::new();
    file.take(MAX_FILE_BYTES + 1).read_to_end(&mut content)?;
    let bytes = content.len() as u64;
    if bytes > MAX_FILE_BYTES {
        return Ok(Content::Refused(Refusal::TooLarge { bytes }));
    }
    Ok(Content::of_bytes(content))
}

fn name_of(given: &Path, folder: &Path) -> String {
    let name = given.file_name().or_else(|| folder.file_name());
    names::shown(name.map_or(folder, Path::new))
}
