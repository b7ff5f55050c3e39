//! The whole book.

use std::collections::HashMap;

use super::{Boat, Class, Club, Crew, FileId, Oar, OarSet, Place, Placed, Span, Waiver, Written};

/// A file of the book.
#[derive(Clone, Debug)]
pub struct SourceFile {
    /// Its path below the book's root, `/` between the parts.
    pub path: String,
    /// Its text.
    pub text: String,
    /// Whether it is part of the program, not of the club's book.
    pub built_in: bool,
    /// Whether it could be read to its end; if not, what seems to be missing may only be unread.
    pub whole: bool,
    /// Every value that was written in it, also where it could not be read.
    pub written: Vec<Written>,
}

/// The whole book: every record that could be read.
#[derive(Clone, Debug, Default)]
pub struct Book {
    /// What the book is called: its folder.
    pub name: String,
    /// The club.
    pub club: Club,
    /// The boats, by file.
    pub boats: Vec<Boat>,
    /// The oar sets, by file.
    pub oar_sets: Vec<OarSet>,
    /// The crews, by file.
    pub crews: Vec<Crew>,
    /// The classes: the program's own first, then the club's.
    pub classes: Vec<Class>,
    /// The waivers.
    pub waivers: Vec<Waiver>,
    /// Every file.
    pub files: Vec<SourceFile>,
    /// Paths of texts of the book that can't be had here: in conflict, or kept out of the folder.
    /// What seems to be missing may stand in them.
    pub unread: Vec<String>,
    /// How many readings were read.
    pub readings: usize,
    /// Where each id is found.
    index: Index,
}

/// Where each id is found: the first record that has it, and every record that names it.
#[derive(Clone, Debug, Default)]
struct Index {
    boats: HashMap<String, usize>,
    oar_sets: HashMap<String, usize>,
    classes: HashMap<String, usize>,
    boats_by_oars: HashMap<String, Vec<usize>>,
    crews_by_boat: HashMap<String, Vec<usize>>,
}

fn first_of<'a>(ids: impl Iterator<Item = &'a Placed<String>>) -> HashMap<String, usize> {
    let mut index = HashMap::new();
    for (number, id) in ids.enumerate() {
        index.entry(id.value.clone()).or_insert(number);
    }
    index
}

fn all_that_name<'a>(
    ids: impl Iterator<Item = Option<&'a Placed<String>>>,
) -> HashMap<String, Vec<usize>> {
    let mut index: HashMap<String, Vec<usize>> = HashMap::new();
    let named = ids.enumerate().filter_map(|(number, id)| Some((number, id?)));
    for (number, id) in named {
        index.entry(id.value.clone()).or_default().push(number);
    }
    index
}

impl Book {
    /// Returns the book with its ids indexed; records added later are not found by id.
    #[must_use]
    pub fn indexed(mut self) -> Self {
        self.index = Index {
            boats: first_of(self.boats.iter().map(|boat| &boat.id)),
            oar_sets: first_of(self.oar_sets.iter().map(|set| &set.id)),
            classes: first_of(self.classes.iter().map(|class| &class.id)),
            boats_by_oars: all_that_name(self.boats.iter().map(|boat| boat.oars.as_ref())),
            crews_by_boat: all_that_name(self.crews.iter().map(|crew| crew.boat.as_ref())),
        };
        self
    }

    /// Returns the file of a place.
    ///
    /// # Panics
    ///
    /// If the place is of another book.
    #[must_use]
    pub fn file(&self, id: FileId) -> &SourceFile {
        &self.files[id.0]
    }

    /// Returns a place in a file of another reading of this book, as one of this. A file that is
    /// not the same here, such as settings that were set aside, is added.
    pub fn adopt(&mut self, file: &SourceFile, span: Span) -> Place {
        let is_it = |own: &SourceFile| own.path == file.path && own.text == file.text;
        let known = self.files.iter().position(is_it);
        let at = known.unwrap_or_else(|| {
            // What it says is said where it was read; here it is only shown.
            self.files.push(SourceFile { written: Vec::new(), ..file.clone() });
            self.files.len() - 1
        });
        Place { file: FileId(at), span }
    }

    /// Returns the file and line of a place: `club.yaml:12`.
    ///
    /// # Panics
    ///
    /// If the place is of another book.
    #[must_use]
    pub fn file_and_line(&self, place: Place) -> String {
        let file = self.file(place.file);
        let line = file.text[..place.span.start].matches('\n').count() + 1;
        format!("{}:{line}", file.path)
    }

    /// Returns every value that was written, also where it could not be read. In the order of the
    /// files.
    pub fn written(&self) -> impl Iterator<Item = &Written> {
        self.files.iter().flat_map(|file| &file.written)
    }

    /// Returns every value that was written in a file, by name.
    ///
    /// # Panics
    ///
    /// If the file is of another book.
    #[must_use]
    pub fn written_in(&self, file: FileId) -> &[Written] {
        &self.file(file).written
    }

    /// Returns the class called `id`.
    #[must_use]
    pub fn class(&self, id: &str) -> Option<&Class> {
        self.index.classes.get(id).map(|number| &self.classes[*number])
    }

    /// Returns the oar set called `id`.
    #[must_use]
    pub fn oar_set(&self, id: &str) -> Option<&OarSet> {
        self.index.oar_sets.get(id).map(|number| &self.oar_sets[*number])
    }

    /// Returns the boat called `id`.
    #[must_use]
    pub fn boat(&self, id: &str) -> Option<&Boat> {
        self.index.boats.get(id).map(|number| &self.boats[*number])
    }

    /// Returns the oar set that a boat carries.
    #[must_use]
    pub fn oars_of(&self, boat: &Boat) -> Option<&OarSet> {
        self.oar_set(&boat.oars.as_ref()?.value)
    }

    /// Returns every boat that carries an oar set.
    pub fn boats_with<'b>(&'b self, set: &'b OarSet) -> impl Iterator<Item = &'b Boat> {
        let numbers = self.index.boats_by_oars.get(&set.id.value);
        numbers.into_iter().flatten().map(|number| &self.boats[*number])
    }

    /// Returns every crew that rows a boat.
    pub fn crews_of<'b>(&'b self, boat: &'b Boat) -> impl Iterator<Item = &'b Crew> {
        let numbers = self.index.crews_by_boat.get(&boat.id.value);
        numbers.into_iter().flatten().map(|number| &self.crews[*number])
    }

    /// Returns an oar of the set that a boat carries.
    #[must_use]
    pub fn oar(&self, boat: &Boat, id: &Placed<String>) -> Option<&Oar> {
        self.oars_of(boat)?.oars.iter().find(|oar| oar.is_called(&id.value))
    }
}

impl Oar {
    /// Returns what people call the oar: its id.
    #[must_use]
    pub fn called(&self) -> &str {
        self.id.as_ref().map_or("an oar without an id", |id| &id.value)
    }

    /// Returns whether this is the oar's id.
    #[must_use]
    pub fn is_called(&self, id: &str) -> bool {
        self.id.as_ref().is_some_and(|own| own.value == id)
    }
}
