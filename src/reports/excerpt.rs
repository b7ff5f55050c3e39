//! The lines of the book that a finding points at, cut out and cleaned, ready to be drawn.
//!
//! One text holds several sheets, each from one place of one file. Drawing needs only these few
//! lines, however long the files are.

use std::ops::Range;

use super::cutting::cut_line;
use super::look::Look;
use super::place::Places;
use super::shown;
use crate::model::Place;
use crate::rules::Label;

/// No line is drawn longer than this.
const LONGEST: usize = 200;

/// What a drawing needs to the left of a line.
const GUTTER: usize = 10;

/// What leads from a mark to its words.
const POINTER: usize = 4;

/// No words of a mark are broken into lines shorter than this.
const NARROWEST: usize = 16;

/// Marks so few lines apart are drawn in one sheet.
const NEAR: usize = 3;

/// Lines cut out of the book.
#[derive(Debug)]
pub(super) struct Excerpt {
    pub(super) text: String,
    pub(super) sheets: Vec<Sheet>,
    pub(super) marks: Vec<Mark>,
}

/// Lines that stand together in one file.
#[derive(Debug)]
pub(super) struct Sheet {
    /// Path, line and column of its first mark.
    pub(super) heading: String,
    /// The number of its first line, from 1.
    pub(super) first_line: usize,
    /// How many lines it has.
    pub(super) lines: usize,
    /// Its bytes in the text.
    pub(super) bytes: Range<usize>,
}

/// What is pointed at.
#[derive(Debug)]
pub(super) struct Mark {
    /// Its bytes in the text; at least one character.
    pub(super) bytes: Range<usize>,
    pub(super) text: String,
}

/// A label with its line.
struct Seen<'l> {
    label: &'l Label,
    line: usize,
    order: usize,
}

impl Excerpt {
    /// Cuts out the lines of the labels: the sheet of the first label first, with a line before
    /// and after it.
    pub(super) fn of(places: &Places, labels: &[&Label], look: Look) -> Self {
        let mut excerpt = Self { text: String::new(), sheets: Vec::new(), marks: Vec::new() };
        for group in groups(places, labels) {
            excerpt.add(places, &group, look);
        }
        excerpt
    }

    fn add(&mut self, places: &Places, group: &[Seen], look: Look) {
        let (Some(first), Some(last)) = (group.first(), group.last()) else { return };
        let Some(named) = group.iter().min_by_key(|seen| seen.order) else { return };
        let lines = places.lines(first.label.place);
        let around = usize::from(named.order == 0);
        let numbers =
            first.line.saturating_sub(around).max(1)..=(last.line + around).min(lines.lines());
        let start = self.text.len();
        for number in numbers.clone() {
            let on_line: Vec<&Seen> = group.iter().filter(|seen| seen.line == number).collect();
            self.add_line(places, first.label.place, number, &on_line, look);
        }
        self.sheets.push(Sheet {
            heading: places.shown(named.label.place),
            first_line: *numbers.start(),
            lines: numbers.count(),
            bytes: start..self.text.len(),
        });
    }

    fn add_line(
        &mut self,
        places: &Places,
        place: Place,
        number: usize,
        on_line: &[&Seen],
        look: Look,
    ) {
        let range = places.lines(place).line(number);
        let mut line = places.file(place).text[range.clone()].to_owned();
        let mut marks = Vec::new();
        for seen in on_line {
            let from = places.start(seen.label.place).byte.clamp(range.start, range.end);
            let to = places.end(seen.label.place).byte.clamp(from, range.end);
            marks.push(visible(&mut line, from - range.start..to - range.start));
        }
        let room = look.width.saturating_sub(GUTTER).clamp(30, LONGEST);
        let cut = cut_line(&line, &marks, room, look.cut());
        let start = self.text.len();
        self.text.push_str(&cut.text);
        self.text.push('\n');
        for (seen, mark) in on_line.iter().zip(cut.marks) {
            let before = cut.text[..mark.start].chars().count();
            let room = look.width.saturating_sub(GUTTER + before + POINTER).max(NARROWEST);
            let text = Look { width: room, ..look }.wrapped(&shown::line(&seen.label.text), "");
            self.add_mark(start + mark.start..start + mark.end, text);
        }
    }

    /// Adds a mark; two at the same bytes become one.
    fn add_mark(&mut self, bytes: Range<usize>, text: String) {
        match self.marks.iter_mut().find(|mark| mark.bytes == bytes) {
            Some(mark) if mark.text == text => {}
            Some(mark) => mark.text = format!("{}; {text}", mark.text),
            None => self.marks.push(Mark { bytes, text }),
        }
    }
}

/// Returns a mark that covers at least one character: where there is none, a blank is added.
fn visible(line: &mut String, mark: Range<usize>) -> Range<usize> {
    if !mark.is_empty() {
        return mark;
    }
    let next = line[mark.start..].chars().next();
    if next.is_none() {
        line.push(' ');
    }
    mark.start..mark.start + next.map_or(1, char::len_utf8)
}

/// Returns the labels in groups that stand together, the group of the first label first.
fn groups<'l>(places: &Places, labels: &[&'l Label]) -> Vec<Vec<Seen<'l>>> {
    let seen = |(order, label): (usize, &&'l Label)| {
        let line = places.start(label.place).line;
        Seen { label, line, order }
    };
    let mut all: Vec<Seen> = labels.iter().enumerate().map(seen).collect();
    all.sort_by_key(|seen| (seen.label.place, seen.order));
    let mut groups: Vec<Vec<Seen>> = Vec::new();
    for seen in all {
        let near = |last: &Seen| {
            last.label.place.file == seen.label.place.file && seen.line - last.line <= NEAR
        };
        match groups.last_mut() {
            Some(group) if group.last().is_some_and(near) => group.push(seen),
            _ => groups.push(vec![seen]),
        }
    }
    groups.sort_by_key(|group| group.iter().map(|seen| seen.order).min());
    groups
}
