//! The texts of one state of a book, read out of the objects.

use std::collections::BTreeMap;
use std::path::Component;
use std::path::Path;
use std::path::PathBuf;

use git2::Oid;

use crate::store::Store;
use crate::store::error::StoreError;
use crate::store::named::Content;
use crate::store::named::Named;
use crate::store::named::Refusal;
use crate::store::names;
use crate::store::repository::objects::Missed;
use crate::store::repository::objects::Objects;
use crate::store::repository::standing;
use crate::store::repository::standing::Kind;
use crate::store::repository::standing::Standing;
use crate::store::walking::Survey;

/// Returns the texts of what stands there. `file_at` says whether a path, relative to the
/// repository's top, is a plain file of the same state.
pub(super) fn store(
    objects: &Objects<'_>,
    top: &Path,
    below: &Path,
    things: &[Standing],
    file_at: impl Fn(&Path) -> bool,
) -> Result<Store, StoreError> {
    let survey = standing::survey(things, |link| {
        target(objects, below, link).is_some_and(|target| file_at(&target))
    });
    let files = read_all(objects, things, &survey)?;
    let strays = strays(objects, things, &survey);
    let mut left_out: Vec<String> = survey.left_out.iter().map(|path| names::shown(path)).collect();
    left_out.sort_unstable();
    let root: PathBuf = top.join(below).components().collect();
    Ok(Store {
        name: name(&root),
        root,
        files,
        left_out,
        strays,
        absent: survey.absent,
        warnings: survey.warnings,
    })
}

/// Returns the folder's own name; that of a bare repository without its ending.
fn name(root: &Path) -> String {
    let name = root.file_name().map_or(root, Path::new);
    let shown = names::shown(name);
    shown.strip_suffix(".git").filter(|name| !name.is_empty()).unwrap_or(&shown).to_owned()
}

fn read_all(
    objects: &Objects<'_>,
    things: &[Standing],
    survey: &Survey,
) -> Result<Vec<Named>, StoreError> {
    if !survey.unread.is_empty() {
        let mut unread = survey.unread.clone();
        unread.sort_unstable();
        return Err(StoreError::CannotRead { unread });
    }
    let ids: BTreeMap<&Path, Oid> =
        things.iter().map(|thing| (thing.path.as_path(), thing.id)).collect();
    let mut absent = Vec::new();
    let link = |path: &PathBuf| Named {
        path: names::shown(path),
        content: Content::Refused(Refusal::Link),
    };
    let mut files: Vec<Named> = survey.links.iter().map(link).collect();
    for path in &survey.files {
        let path = path.as_path();
        match objects.content(ids.get(path).copied().unwrap_or(Oid::ZERO_SHA1)) {
            Ok(content) => files.push(Named { path: names::shown(path), content }),
            Err(Missed::Absent) => absent.push(names::shown(path)),
            Err(damaged) => return Err(objects.error(&names::shown(path), damaged).into()),
        }
    }
    absent.sort_unstable();
    files.sort_unstable_by(|a, b| a.path.cmp(&b.path));
    if absent.is_empty() { Ok(files) } else { Err(objects.absent(absent).into()) }
}

/// What can't be had was not going to be read: it is named as left out all the same.
fn strays(objects: &Objects<'_>, things: &[Standing], survey: &Survey) -> Vec<Named> {
    let plain: BTreeMap<&Path, Oid> = things
        .iter()
        .filter(|thing| thing.kind == Kind::File)
        .map(|thing| (thing.path.as_path(), thing.id))
        .collect();
    let read = survey.strays().filter_map(|path| {
        let content = objects.content(*plain.get(path.as_path())?).ok()?;
        Some(Named { path: names::shown(path), content })
    });
    let mut strays: Vec<Named> = read.collect();
    strays.sort_unstable_by(|a, b| a.path.cmp(&b.path));
    strays
}

/// Returns where a link leads, relative to the repository's top, if it stays below it.
fn target(objects: &Objects<'_>, below: &Path, link: &Standing) -> Option<PathBuf> {
    let Ok(Content::Text(to)) = objects.content(link.id) else { return None };
    let mut path = below.join(link.path.parent()?);
    for part in Path::new(&to).components() {
        match part {
            Component::CurDir => {}
            Component::ParentDir if path.pop() => {}
            Component::Normal(part) => path.push(part),
            _ => return None,
        }
    }
    Some(path)
}
