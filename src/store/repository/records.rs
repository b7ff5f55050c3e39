//! Which texts a commit holds of a book, without reading them.
//!
//! Most commits of a history leave most folders as they were, and a folder that is as it was has the
//! same id: each is read once.

use std::cell::RefCell;
use std::collections::HashMap;
use std::path::Path;
use std::path::PathBuf;
use std::sync::Arc;

use git2::Oid;

use crate::store::layout;
use crate::store::layout::Part;
use crate::store::names;
use crate::store::repository::error::RepositoryError;
use crate::store::repository::ids::BlobId;
use crate::store::repository::objects::Objects;
use crate::store::repository::place;
use crate::store::repository::standing;
use crate::store::repository::standing::Kind;

/// How many folders and books are kept at once, so that a long history takes no more memory than a
/// short one.
const KEPT: usize = 4096;

/// One text of a book, not read yet.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Record {
    /// Its path, as in [`Named::path`](crate::store::Named::path).
    pub path: Arc<str>,
    /// What holds its bytes.
    pub blob: BlobId,
    /// Whether it is a link, which is not followed.
    pub link: bool,
}

/// The texts of a book in one commit, sorted by path. Commits that have the same ones share them.
pub type Records = Arc<[Record]>;

/// Records by the id of the folder they are in.
#[derive(Default)]
pub(super) struct Kept {
    /// By the id of the repository's whole tree, and the folder of the book's root in it.
    whole: RefCell<HashMap<(Oid, PathBuf), Records>>,
    /// By the id of the book's root.
    books: RefCell<HashMap<Oid, Records>>,
    /// By the id of one of its four folders, and its name: the paths in it begin so.
    shelves: RefCell<HashMap<(Oid, PathBuf), Records>>,
}

impl Kept {
    /// Returns the records in a folder of a repository's tree; none where there is no such folder.
    pub(super) fn records(
        &self,
        objects: &Objects<'_>,
        top: Oid,
        book: &Path,
    ) -> Result<Records, RepositoryError> {
        let key = (top, book.to_path_buf());
        if let Some(records) = self.whole.borrow().get(&key) {
            return Ok(Arc::clone(records));
        }
        let records = match place::folder(objects, top, book)? {
            Some(folder) => self.of_book(objects, folder)?,
            None => Records::default(),
        };
        keep(&self.whole, key, &records);
        Ok(records)
    }

    fn of_book(&self, objects: &Objects<'_>, book: Oid) -> Result<Records, RepositoryError> {
        if let Some(records) = self.books.borrow().get(&book) {
            return Ok(Arc::clone(records));
        }
        let mut found: Vec<Record> = Vec::new();
        for entry in &objects.tree(book, "")? {
            let path = names::path_of_bytes(entry.name_bytes().to_vec());
            let kind = Kind::of_mode(u32::try_from(entry.filemode_raw()).unwrap_or(0));
            match (Part::of(&path), kind) {
                (Part::Shelf, Kind::Folder) => {
                    found.extend_from_slice(&self.of_shelf(objects, entry.id(), &path)?);
                }
                (Part::Root, _) => found.extend(record(&path, kind, entry.id())),
                _ => {}
            }
        }
        found.sort_unstable_by(|a, b| a.path.cmp(&b.path));
        let records = Records::from(found);
        keep(&self.books, book, &records);
        Ok(records)
    }

    fn of_shelf(
        &self,
        objects: &Objects<'_>,
        id: Oid,
        shelf: &Path,
    ) -> Result<Records, RepositoryError> {
        let key = (id, shelf.to_path_buf());
        if let Some(records) = self.shelves.borrow().get(&key) {
            return Ok(Arc::clone(records));
        }
        let things = standing::in_tree(objects, id)?;
        let texts = things.iter().map(|thing| (shelf.join(&thing.path), thing));
        let found = texts.filter_map(|(path, thing)| record(&path, thing.kind, thing.id));
        let records: Records = found.collect();
        keep(&self.shelves, key, &records);
        Ok(records)
    }
}

fn record(path: &Path, kind: Kind, id: Oid) -> Option<Record> {
    let is_text = matches!(kind, Kind::File | Kind::Link) && layout::may_be_text(path);
    is_text.then(|| Record {
        path: names::shown(path).into(),
        blob: BlobId(id),
        link: kind == Kind::Link,
    })
}

fn keep<K: Eq + std::hash::Hash>(kept: &RefCell<HashMap<K, Records>>, key: K, records: &Records) {
    let mut kept = kept.borrow_mut();
    if kept.len() >= KEPT {
        kept.clear();
    }
    kept.insert(key, Arc::clone(records));
}
