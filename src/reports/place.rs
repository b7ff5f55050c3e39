//! Bytes of a file as line and column; knows the files of a book and nothing of what they say.

use std::cell::OnceCell;
use std::ops::Range;

use crate::model::Book;
use crate::model::Place;
use crate::model::SourceFile;

/// How many bytes apart the characters of a text are counted once and for all.
const BLOCK: usize = 256;

/// Where a byte stands in a text.
#[derive(Clone, Copy, Debug, Eq, PartialEq)]
pub struct Position {
    /// The line, from 1.
    pub line: usize,
    /// The column in characters, from 1.
    pub column: usize,
    /// The byte, from 0.
    pub byte: usize,
}

/// The lines of a text, looked through once: any number of places is found quickly, even in a
/// text that is one long line.
#[derive(Debug)]
pub struct LineIndex<'t> {
    text: &'t str,
    /// The first byte of each line.
    starts: Vec<usize>,
    /// How many characters begin before each block.
    counted: Vec<usize>,
}

impl<'t> LineIndex<'t> {
    /// Looks through a text.
    #[must_use]
    pub fn new(text: &'t str) -> Self {
        let ends = text.bytes().enumerate().filter(|(_, byte)| *byte == b'\n');
        let starts = std::iter::once(0).chain(ends.map(|(at, _)| at + 1)).collect();
        let begun = |block: &[u8]| block.iter().filter(|byte| begins(**byte)).count();
        let mut counted = vec![0];
        for block in text.as_bytes().chunks(BLOCK) {
            counted.push(counted[counted.len() - 1] + begun(block));
        }
        Self { text, starts, counted }
    }

    /// Returns where a byte stands; one past the end stands at the end, one inside a character at
    /// that character.
    #[must_use]
    pub fn position(&self, byte: usize) -> Position {
        let byte = on_boundary(self.text, byte);
        let line = self.starts.partition_point(|start| *start <= byte);
        let column = self.characters_before(byte) - self.characters_before(self.starts[line - 1]);
        Position { line, column: column + 1, byte }
    }

    /// Returns the bytes of a line, counted from 1, without its line end.
    #[must_use]
    pub fn line(&self, number: usize) -> Range<usize> {
        let start = self.starts[number - 1];
        let end = self.starts.get(number).map_or(self.text.len(), |next| next - 1);
        let end = if self.text[start..end].ends_with('\r') { end - 1 } else { end };
        start..end
    }

    /// Returns how many lines there are; text after the last line end counts, and so does none.
    #[must_use]
    pub fn lines(&self) -> usize {
        self.starts.len()
    }

    fn characters_before(&self, byte: usize) -> usize {
        let block = byte / BLOCK;
        let rest = &self.text.as_bytes()[block * BLOCK..byte];
        self.counted[block] + rest.iter().filter(|byte| begins(**byte)).count()
    }
}

/// Returns whether a character of UTF-8 begins with this byte.
const fn begins(byte: u8) -> bool {
    byte & 0b1100_0000 != 0b1000_0000
}

/// Returns the byte itself, or the nearest before it where a character begins.
fn on_boundary(text: &str, byte: usize) -> usize {
    let mut byte = byte.min(text.len());
    while !text.is_char_boundary(byte) {
        byte -= 1;
    }
    byte
}

/// The places of a book, each file looked through once and only if it is asked for.
#[derive(Debug)]
pub struct Places<'b> {
    book: &'b Book,
    files: Vec<OnceCell<LineIndex<'b>>>,
}

impl<'b> Places<'b> {
    /// Makes ready to look up places of a book.
    #[must_use]
    pub fn new(book: &'b Book) -> Self {
        Self { book, files: book.files.iter().map(|_| OnceCell::new()).collect() }
    }

    /// Returns the file of a place.
    #[must_use]
    pub fn file(&self, place: Place) -> &'b SourceFile {
        self.book.file(place.file)
    }

    /// Returns the lines of the file of a place.
    #[must_use]
    pub fn lines(&self, place: Place) -> &LineIndex<'b> {
        self.files[place.file.0].get_or_init(|| LineIndex::new(&self.file(place).text))
    }

    /// Returns where a place begins.
    #[must_use]
    pub fn start(&self, place: Place) -> Position {
        self.lines(place).position(place.span.start)
    }

    /// Returns where a place ends: the byte after its last.
    #[must_use]
    pub fn end(&self, place: Place) -> Position {
        self.lines(place).position(place.span.end.max(place.span.start))
    }

    /// Returns a place as people and editors write it: path, line, column.
    #[must_use]
    pub fn shown(&self, place: Place) -> String {
        let Position { line, column, .. } = self.start(place);
        format!("{}:{line}:{column}", super::shown::line(&self.file(place).path))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn at(text: &str, byte: usize) -> (usize, usize) {
        let position = LineIndex::new(text).position(byte);
        (position.line, position.column)
    }

    #[test]
    fn lines_and_columns_count_from_one_and_columns_in_characters() {
        let text = "gap: 58\nnäme: x\r\n\n漢字: 1";
        assert_eq!(at(text, 0), (1, 1));
        assert_eq!(at(text, 5), (1, 6));
        assert_eq!(at(text, 8), (2, 1));
        assert_eq!(at(text, text.find('x').expect("an x")), (2, 7));
        assert_eq!(at(text, text.find('字').expect("the sign")), (4, 2));
        assert_eq!(at(text, text.len()), (4, 6));
    }

    #[test]
    fn a_byte_inside_a_character_or_past_the_end_is_still_somewhere() {
        assert_eq!(at("é", 1), (1, 1));
        assert_eq!(at("é\n", 99), (2, 1));
        assert_eq!(at("", 0), (1, 1));
    }

    #[test]
    fn a_line_is_given_without_its_end() {
        let text = "one\r\ntwo\nthree";
        let index = LineIndex::new(text);
        let lines: Vec<&str> = (1..=index.lines()).map(|n| &text[index.line(n)]).collect();
        assert_eq!(lines, ["one", "two", "three"]);
    }

    proptest! {
        /// The plain way, counting from the start of the text each time, says the same.
        #[test]
        fn the_index_agrees_with_counting(text in "([a-zé漢\n]{0,40}\n?){0,30}", at in 0_usize..1200) {
            let mut byte = at.min(text.len());
            while !text.is_char_boundary(byte) {
                byte -= 1;
            }
            let before = &text[..byte];
            let line = before.matches('\n').count() + 1;
            let column = before.rsplit('\n').next().unwrap_or_default().chars().count() + 1;
            let found = LineIndex::new(&text).position(byte);
            prop_assert_eq!(found, Position { line, column, byte });
        }
    }
}
