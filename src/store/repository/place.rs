//! Where in the files of a repository the book lies; reads no text.

use std::cell::RefCell;
use std::path::Path;
use std::path::PathBuf;

use git2::Index;
use git2::ObjectType;
use git2::Oid;

use crate::store::layout::CLUB_FILE;
use crate::store::names;
use crate::store::repository::error::RepositoryError;
use crate::store::repository::objects::Objects;
use crate::store::repository::standing;
use crate::store::repository::standing::Kind;
use crate::store::repository::standing::Standing;

/// The book's root, relative to the repository's top: given, or sought in the first state that is
/// read, and kept.
pub(super) struct Place {
    top: PathBuf,
    given: bool,
    known: RefCell<Option<PathBuf>>,
}

impl Place {
    pub(super) fn new(top: PathBuf, given: Option<PathBuf>) -> Self {
        Self { top, given: given.is_some(), known: RefCell::new(given) }
    }

    /// Returns the place, if it is known yet.
    pub(super) fn known(&self) -> Option<PathBuf> {
        self.known.borrow().clone()
    }

    /// Returns whether the place was given, and is not sought.
    pub(super) const fn is_given(&self) -> bool {
        self.given
    }

    /// Returns the place in a tree and the id of the folder there.
    pub(super) fn in_tree(
        &self,
        objects: &Objects<'_>,
        top: Oid,
        state: &str,
    ) -> Result<(PathBuf, Oid), RepositoryError> {
        if let Some(known) = self.known() {
            match folder(objects, top, &known)? {
                Some(id) if holds_club(objects, id)? => return Ok((known, id)),
                _ if self.given => return Err(none(state, Some(&known))),
                _ => {}
            }
        }
        let found = if holds_club(objects, top)? {
            PathBuf::new()
        } else {
            self.only(&standing::in_tree(objects, top)?, state)?
        };
        let id = folder(objects, top, &found)?.ok_or_else(|| none(state, Some(&found)))?;
        self.known.replace(Some(found.clone()));
        Ok((found, id))
    }

    /// Returns a place that was found otherwise, and the id of the folder there.
    pub(super) fn is_in_tree(
        &self,
        objects: &Objects<'_>,
        top: Oid,
        place: PathBuf,
        state: &str,
    ) -> Result<(PathBuf, Oid), RepositoryError> {
        match folder(objects, top, &place)? {
            Some(id) if holds_club(objects, id)? => Ok((place, id)),
            _ => Err(none(state, Some(&place))),
        }
    }

    /// Returns the place in an index.
    pub(super) fn in_index(&self, index: &Index, state: &str) -> Result<PathBuf, RepositoryError> {
        let holds = |place: &Path| {
            let club = names::bytes(&place.join(CLUB_FILE));
            index.iter().any(|entry| entry.path == club)
        };
        if let Some(known) = self.known() {
            if holds(&known) {
                return Ok(known);
            }
            if self.given {
                return Err(none(state, Some(&known)));
            }
        }
        let found = if holds(Path::new("")) {
            PathBuf::new()
        } else {
            self.only(&standing::in_index(index, Path::new("")), state)?
        };
        self.known.replace(Some(found.clone()));
        Ok(found)
    }

    fn only(&self, standing: &[Standing], state: &str) -> Result<PathBuf, RepositoryError> {
        let clubs = standing.iter().filter(|thing| thing.kind == Kind::File);
        let clubs =
            clubs.filter(|thing| thing.path.file_name().is_some_and(|name| name == CLUB_FILE));
        let mut places: Vec<PathBuf> =
            clubs.filter_map(|thing| thing.path.parent().map(Into::into)).collect();
        places.sort_unstable();
        match places.len() {
            0 => Err(none(state, None)),
            1 => Ok(places.remove(0)),
            _ => Err(RepositoryError::SeveralBooks {
                state: state.to_owned(),
                places: places.iter().map(|place| names::shown(place)).collect(),
                top: self.top.clone(),
            }),
        }
    }
}

/// Returns the id of a folder in a tree, if there is one of that name.
pub(super) fn folder(
    objects: &Objects<'_>,
    top: Oid,
    path: &Path,
) -> Result<Option<Oid>, RepositoryError> {
    let mut id = top;
    for part in path {
        let tree = objects.tree(id, "")?;
        let name = names::bytes(Path::new(part));
        let entry = tree.get_name_bytes(&name);
        match entry.filter(|entry| entry.kind() == Some(ObjectType::Tree)) {
            Some(entry) => id = entry.id(),
            None => return Ok(None),
        }
    }
    Ok(Some(id))
}

fn holds_club(objects: &Objects<'_>, folder: Oid) -> Result<bool, RepositoryError> {
    Ok(objects.tree(folder, "")?.get_name_bytes(CLUB_FILE.as_bytes()).is_some())
}

pub(super) fn none(state: &str, place: Option<&Path>) -> RepositoryError {
    RepositoryError::NoBook { state: state.to_owned(), place: place.map(names::shown) }
}
