//! Every text of a history, each read once: which record it holds, if it is one that is asked for.

use std::collections::HashMap;
use std::rc::Rc;

use super::other_boats::OtherBoats;
use super::record::Held;
use super::record::Key;
use super::record::held;
use crate::store::BlobId;
use crate::store::CLUB_FILE;
use crate::store::Content;
use crate::store::Record as Text;
use crate::store::Repository;
use crate::store::StoreError;
use crate::store::WAIVERS_FILE;

/// Keys at the beginning of a line that tell a record.
const TELLING: [&str; 4] = ["boat:", "oar-set:", "crew:", "class:"];

/// The texts that were read, by their ids.
pub(super) struct Library<'r> {
    repository: &'r Repository,
    /// The id that is asked for; any, where there is none.
    wanted: Option<&'r str>,
    by_blob: HashMap<(BlobId, bool, bool), Option<Rc<Held>>>,
    read: usize,
    other_boats: OtherBoats,
}

impl<'r> Library<'r> {
    pub(super) fn new(repository: &'r Repository, wanted: Option<&'r str>) -> Self {
        Self {
            repository,
            wanted,
            by_blob: HashMap::new(),
            read: 0,
            other_boats: OtherBoats::default(),
        }
    }

    /// Returns how many texts were read in full.
    pub(super) fn read(&self) -> usize {
        self.read
    }

    /// Returns the texts that are surely of a boat of another id, and don't name the id asked for.
    pub(super) fn into_other_boats(self) -> OtherBoats {
        self.other_boats
    }

    /// Returns what a text holds: a record that is asked for, or something that can't be read. None
    /// for a record that nobody asked for.
    pub(super) fn held(&mut self, text: &Text) -> Result<Option<Rc<Held>>, StoreError> {
        let at = (text.blob, text.link, is_root(&text.path));
        if let Some(known) = self.by_blob.get(&at) {
            return Ok(known.clone());
        }
        let content = self.repository.content(text)?;
        if self.is_another(&text.path, &content) && is_boat(&content) {
            let whole = if let Content::Text(text) = &content { Some(&**text) } else { None };
            self.other_boats.add(text.blob, whole);
        }
        let found = self.take(&text.path, content);
        self.by_blob.insert(at, found.clone());
        Ok(found)
    }

    /// Returns the same of a text that is in no repository yet.
    pub(super) fn take(&mut self, path: &str, content: Content) -> Option<Rc<Held>> {
        if is_root(path) && self.wanted.is_some_and(|id| id != "club") {
            return None;
        }
        if self.is_another(path, &content) {
            return None;
        }
        self.read += 1;
        let found = held(path, content);
        let asked = match &found {
            Held::Record(record) => self.is_wanted(&record.key),
            Held::Unread(_) => true,
        };
        asked.then(|| Rc::new(found))
    }

    fn is_wanted(&self, key: &Key) -> bool {
        self.wanted.is_none_or(|id| id == key.id)
    }

    /// Returns whether a text is surely a record of another id, without reading it in full.
    fn is_another(&self, path: &str, content: &Content) -> bool {
        let (Some(id), Content::Text(text)) = (self.wanted, content) else { return false };
        let begins = |line: &str| TELLING.iter().any(|key| line.starts_with(key));
        !is_root(path) && !text.contains(id) && !text.contains('\\') && text.lines().any(begins)
    }
}

/// Returns whether a text has the key that tells a boat.
fn is_boat(content: &Content) -> bool {
    matches!(content, Content::Text(text) if text.lines().any(|line| line.starts_with("boat:")))
}

/// Returns whether a path is that of a text which its path alone tells.
fn is_root(path: &str) -> bool {
    [CLUB_FILE, WAIVERS_FILE].contains(&path)
}
