//! One text of the book that comes from standard input, as an editor sends what is not yet saved.

use std::fs;
use std::io;
use std::io::Read;
use std::path::Component;
use std::path::Path;
use std::path::PathBuf;

use super::exit::Exit;
use super::output::Done;
use crate::reports::shown;
use crate::store;
use crate::store::Content;
use crate::store::MAX_FILE_BYTES;
use crate::store::Named;
use crate::store::Refusal;
use crate::store::Store;

/// A text, and the file that it stands for.
pub(super) struct TextGiven {
    path: PathBuf,
    content: Content,
}

impl TextGiven {
    /// Reads standard input to its end.
    ///
    /// # Errors
    ///
    /// What the command comes to instead: the text could not be read.
    pub(super) fn from_standard_input(path: &Path) -> Result<Self, Done> {
        let content = content(io::stdin().lock()).map_err(|error| {
            let told = format!("Standard input could not be read: {error}");
            Done::refused(Exit::NotChecked, vec![told])
        })?;
        Ok(Self { path: path.to_owned(), content })
    }

    /// A text that stands for a file.
    pub(super) fn of_text(path: &Path, text: &str) -> Self {
        Self { path: path.to_owned(), content: Content::Text(text.to_owned()) }
    }

    /// Puts the text into the book, in place of the file or beside the others.
    ///
    /// # Errors
    ///
    /// What the command comes to instead: nothing of that name can be a text of the book.
    pub(super) fn put_into(self, store: &mut Store) -> Result<(), Done> {
        let Self { path, content } = self;
        let here = std::env::current_dir().and_then(fs::canonicalize).unwrap_or_default();
        let Some(own) = own_path(store, &here, &path) else {
            let path = shown::line(&path.to_string_lossy());
            let told = format!(
                "{path} is no file of this book. Its texts are club.yaml, waivers.yaml and the \
                 .yaml files below boats, oars, crews and classes."
            );
            return Err(Done::refused(Exit::Usage, vec![told]));
        };
        store.files.retain(|named| named.path != own);
        let at = store.files.partition_point(|named| named.path < own);
        store.files.insert(at, Named { path: own, content });
        Ok(())
    }
}

fn content(from: impl Read) -> io::Result<Content> {
    let mut bytes = Vec::new();
    from.take(MAX_FILE_BYTES + 1).read_to_end(&mut bytes)?;
    let length = bytes.len() as u64;
    if length > MAX_FILE_BYTES {
        return Ok(Content::Refused(Refusal::TooLarge { bytes: length }));
    }
    Ok(Content::of_bytes(bytes))
}

/// Returns the path of a text of the book as the book writes it. It may be given from the current
/// folder or from the book's; a file that is there wins over one that could be.
fn own_path(store: &Store, here: &Path, given: &Path) -> Option<String> {
    let from = |folder: &Path| {
        let whole = resolved(&folder.join(given));
        whole.strip_prefix(&store.root).ok().map(Path::to_owned)
    };
    let below: Vec<PathBuf> = [from(here), from(&store.root)].into_iter().flatten().collect();
    let there = below.iter().find_map(|path| {
        let file = store.root.join(path);
        store.files.iter().find(|named| store.file(&named.path) == file)
    });
    let could_be = || {
        let path = below.iter().find(|path| store::may_be_text(path))?;
        let parts: Vec<_> = path.iter().map(|part| part.to_string_lossy()).collect();
        Some(parts.join("/"))
    };
    there.map(|named| named.path.clone()).or_else(could_be)
}

/// Returns a path without `..`, and without links as far as its folder is there.
fn resolved(path: &Path) -> PathBuf {
    let folder = path.parent().and_then(|folder| fs::canonicalize(folder).ok());
    if let (Some(folder), Some(name)) = (folder, path.file_name()) {
        return folder.join(name);
    }
    let mut plain = PathBuf::new();
    for part in path.components() {
        match part {
            Component::CurDir => {}
            Component::ParentDir => drop(plain.pop()),
            other => plain.push(other),
        }
    }
    plain
}

#[cfg(test)]
mod tests {
    use super::*;

    fn store() -> Store {
        let files = ["boats/kittiwake.yaml", "club.yaml"];
        Store {
            root: PathBuf::from("/no/such/book"),
            name: "book".to_owned(),
            files: files.iter().map(|path| Named::text(path, "")).collect(),
            absent: Vec::new(),
            left_out: Vec::new(),
            strays: Vec::new(),
            warnings: Vec::new(),
        }
    }

    fn own(here: &str, given: &str) -> Option<String> {
        own_path(&store(), Path::new(here), Path::new(given))
    }

    #[test]
    fn a_path_is_taken_from_the_current_folder_or_from_the_books() {
        let boat = Some("boats/kittiwake.yaml".to_owned());
        assert_eq!(own("/no/such/book", "boats/kittiwake.yaml"), boat);
        assert_eq!(own("/no/such/book/boats", "kittiwake.yaml"), boat);
        assert_eq!(own("/no/such/book/boats", "boats/kittiwake.yaml"), boat);
        assert_eq!(own("/elsewhere", "boats/kittiwake.yaml"), boat);
        assert_eq!(own("/elsewhere", "/no/such/book/boats/kittiwake.yaml"), boat);
        assert_eq!(own("/no/such/book/oars", "../boats/kittiwake.yaml"), boat);
        assert_eq!(own("/no/such/book", "crews/new.yaml"), Some("crews/new.yaml".to_owned()));
    }

    #[test]
    fn a_path_outside_the_books_folders_is_none_of_its_texts() {
        for given in ["kittiwake.yaml", "../boats/kittiwake.yaml", "notes/x.yaml", "boats/x.txt"] {
            assert_eq!(own("/no/such/book", given), None, "{given}");
        }
    }

    #[test]
    fn what_is_no_text_is_kept_as_such() {
        let odd = content(&b"a: \xff"[..]).expect("bytes in memory");
        assert!(matches!(odd, Content::Refused(Refusal::NotUtf8 { at: 3, .. })), "{odd:?}");
        let long = content(io::repeat(b'a')).expect("bytes from nowhere");
        assert!(matches!(long, Content::Refused(Refusal::TooLarge { .. })));
    }
}
