//! One section of a record: a map of keys, asked field by field.
//!
//! The record's own reader asks for each field by its [`Field`]; what was not asked for is an
//! unknown key. Asked without a text, the same reader lists its fields: the form of the record.

use std::cell::RefCell;

use super::fault::Fault;
use super::fault::What;
use super::field::Field;
use super::field::READ;
use super::field::TO;
use super::form::Bounds;
use super::form::Described;
use super::form::Kind;
use super::form::NOT_MEASURED;
use super::nearest::nearest;
use super::tree::Entry;
use super::tree::Node;
use super::tree::Scalar;
use super::tree::Shape;
use super::value::Id;
use super::value::Readable;
use super::value::Text;
use super::value::Value;
use super::value::ValueKind;
use crate::model::FileId;
use crate::model::Name;
use crate::model::Place;
use crate::model::Placed;
use crate::model::Reading;
use crate::model::Span;

/// What is collected while one file is read.
pub(super) struct Sheet {
    file: FileId,
    /// Whether the whole text could be read; if not, nothing is called missing.
    complete: bool,
    found: RefCell<Found>,
}

/// What was found in one file.
#[derive(Default)]
pub(super) struct Found {
    pub(super) faults: Vec<Fault>,
    pub(super) written: Vec<(Name, Place)>,
    pub(super) readings: usize,
}

impl Sheet {
    pub(super) fn new(file: FileId, complete: bool) -> Self {
        Self { file, complete, found: RefCell::default() }
    }

    pub(super) fn into_found(self) -> Found {
        self.found.into_inner()
    }

    pub(super) fn place(&self, span: Span) -> Place {
        Place { file: self.file, span }
    }

    pub(super) fn tell(&self, what: What, name: &Name, span: Span, also: Option<Span>) {
        let fault = Fault {
            what,
            name: name.clone(),
            place: self.place(span),
            also: also.map(|span| self.place(span)),
        };
        self.found.borrow_mut().faults.push(fault);
    }
}

/// How the parts of a list are named.
#[derive(Clone, Copy)]
pub(super) enum Naming {
    /// `seat-2`, by the key `seat`; the list's own key is left out.
    Seat,
    /// By the id under this key; the list's own key is left out.
    Id(&'static str),
    /// Below the list's key, by the text under this key.
    By(&'static str),
    /// Below the list's key, counted from 1.
    Numbered,
}

/// One section.
pub(super) struct Section<'t> {
    sheet: &'t Sheet,
    name: Name,
    /// What stands for the section where a value is missing.
    span: Span,
    entries: &'t [Entry],
    present: bool,
    asked: Vec<&'static str>,
    form: Option<Vec<Described>>,
}

const NONE: &[Entry] = &[];

/// How many unknown keys of one section are compared with the known ones.
const OFFERED: usize = 50;

impl<'t> Section<'t> {
    /// A section that stands in a text.
    pub(super) fn new(sheet: &'t Sheet, name: Name, span: Span, entries: &'t [Entry]) -> Self {
        let section =
            Self { sheet, name, span, entries, present: true, asked: Vec::new(), form: None };
        section.tell_decimal_commas();
        section
    }

    fn absent(sheet: &'t Sheet, name: Name, span: Span) -> Self {
        Self { sheet, name, span, entries: NONE, present: false, asked: Vec::new(), form: None }
    }

    /// A section without a text, whose fields are listed as they are asked for.
    pub(super) fn describing(sheet: &'t Sheet) -> Self {
        let name = Name::record("");
        let span = Span { start: 0, end: 0 };
        Self { form: Some(Vec::new()), ..Self::absent(sheet, name, span) }
    }

    pub(super) fn into_form(self) -> Vec<Described> {
        self.form.unwrap_or_default()
    }

    /// Returns the place that stands for the whole section.
    pub(super) fn place(&self) -> Place {
        self.sheet.place(self.span)
    }

    /// Returns the place of the section, if it is written.
    pub(super) fn written_place(&self) -> Option<Place> {
        self.present.then(|| self.place())
    }

    /// Reads one value.
    pub(super) fn get<T: Value>(&mut self, field: Field) -> Option<Placed<T>> {
        self.note(field, bounds::<T>(field), || Kind::Value(T::kind()));
        let (node, scalar) = self.scalar(field)?;
        let value = self.value::<T>(field, scalar, node.span)?;
        Some(Placed { value, place: self.sheet.place(node.span) })
    }

    /// Reads an id.
    pub(super) fn id(&mut self, field: Field) -> Option<Placed<String>> {
        self.get::<Id>(field).map(|id| Placed { value: id.value.0, place: id.place })
    }

    /// Reads a text.
    pub(super) fn text(&mut self, field: Field) -> Option<Placed<String>> {
        self.get::<Text>(field).map(|text| Placed { value: text.value.0, place: text.place })
    }

    /// Reads a value taken at the boat: alone, as a list, or with how finely it was read.
    pub(super) fn reading<T: Readable>(&mut self, field: Field) -> Option<Reading<T>> {
        self.note(field, bounds::<T>(field), || Kind::Reading(T::kind()));
        let node = self.find(field)?;
        let (values, to, span) = match &node.shape {
            Shape::Map(entries) => self.reading_to::<T>(field, node, entries)?,
            _ => (self.readings::<T>(field, node)?, None, node.span),
        };
        self.sheet.found.borrow_mut().readings += 1;
        let place = self.sheet.place(span);
        Some(Reading { values, to, tool: field.tool, place })
    }

    /// Reads a section below this one; where it is not written, all of its values are absent.
    pub(super) fn section<R>(&mut self, field: Field, read: impl Fn(&mut Section) -> R) -> R {
        if self.form.is_some() {
            let (form, result) = self.describe(read);
            self.note(field, Bounds::default(), || Kind::Section(form));
            return result;
        }
        let name = self.name.at(field.key);
        match self.map(field) {
            Some((span, entries)) => Section::new(self.sheet, name, span, entries).finish(read),
            None => Section::absent(self.sheet, name, self.span).finish(read),
        }
    }

    /// Reads a section below this one, if it is written.
    pub(super) fn if_written<R>(
        &mut self,
        field: Field,
        read: impl Fn(&mut Section) -> R,
    ) -> Option<R> {
        if self.form.is_some() {
            return Some(self.section(field, read));
        }
        let name = self.name.at(field.key);
        let (span, entries) = self.map(field)?;
        Some(Section::new(self.sheet, name, span, entries).finish(read))
    }

    /// Reads a list of sections.
    pub(super) fn list<R>(
        &mut self,
        field: Field,
        naming: Naming,
        read: impl Fn(&mut Section) -> R,
    ) -> Vec<R> {
        if self.form.is_some() {
            let (form, result) = self.describe(read);
            self.note(field, Bounds::default(), || Kind::List(Box::new(Kind::Section(form))));
            return vec![result];
        }
        let Some(node) = self.find(field) else { return Vec::new() };
        let Shape::List(items) = &node.shape else {
            self.misshapen(field, node, "a list, each part on a line that begins with `-`");
            return Vec::new();
        };
        let (sheet, name) = (self.sheet, self.name.clone());
        read_list(sheet, &name.at(field.key), &name, items, naming, read)
    }

    /// Reads a list of single values.
    pub(super) fn values<T: Value>(&mut self, field: Field) -> Vec<Placed<T>> {
        self.note(field, bounds::<T>(field), || Kind::List(Box::new(Kind::Value(T::kind()))));
        let Some(node) = self.find(field) else { return Vec::new() };
        let Shape::List(items) = &node.shape else {
            self.misshapen(field, node, "a list, such as [A5, A6]");
            return Vec::new();
        };
        let read = |item: &'t Node| {
            let Shape::Scalar(scalar) = &item.shape else {
                self.misshapen(field, item, "a list of single words");
                return None;
            };
            let value = self.value::<T>(field, scalar, item.span)?;
            Some(Placed { value, place: self.sheet.place(item.span) })
        };
        items.iter().filter_map(read).collect()
    }

    /// Reads a list of ids.
    pub(super) fn ids(&mut self, field: Field) -> Vec<Placed<String>> {
        let ids = self.values::<Id>(field).into_iter();
        ids.map(|id| Placed { value: id.value.0, place: id.place }).collect()
    }

    /// Reads a list of texts.
    pub(super) fn texts(&mut self, field: Field) -> Vec<Placed<String>> {
        let texts = self.values::<Text>(field).into_iter();
        texts.map(|text| Placed { value: text.value.0, place: text.place }).collect()
    }

    /// Reads a map whose keys are the club's own: each key with a value.
    pub(super) fn free<T: Value>(&mut self, field: Field) -> Vec<(Placed<String>, Placed<T>)> {
        self.note(field, bounds::<T>(field), || Kind::Free(Box::new(Kind::Value(T::kind()))));
        let name = self.name.at(field.key);
        let Some((span, entries)) = self.map(field) else { return Vec::new() };
        let section = Section::new(self.sheet, name, span, entries);
        let read = |entry: &'t Entry| {
            let Shape::Scalar(scalar) = &entry.value.shape else {
                section.misshapen(field, &entry.value, "a single word");
                return None;
            };
            let own = Field { key: field.key, ..field };
            let value = section.value_named::<T>(own, &entry.key, scalar, entry.value.span)?;
            let place = self.sheet.place(entry.value.span);
            Some((section.key_of(entry), Placed { value, place }))
        };
        let own = |(index, entry): (usize, &'t Entry)| (!is_comma(entries, index)).then_some(entry);
        entries.iter().enumerate().filter_map(own).filter_map(read).collect()
    }

    /// Reads a map whose keys are the club's own: each key with a section.
    pub(super) fn free_sections<R>(
        &mut self,
        field: Field,
        read: impl Fn(&mut Section) -> R,
    ) -> Vec<(Placed<String>, R)> {
        if self.form.is_some() {
            let (form, _) = self.describe(read);
            self.note(field, Bounds::default(), || Kind::Free(Box::new(Kind::Section(form))));
            return Vec::new();
        }
        let name = self.name.at(field.key);
        let Some((span, entries)) = self.map(field) else { return Vec::new() };
        let section = Section::new(self.sheet, name, span, entries);
        let inner = |entry: &'t Entry| {
            let Shape::Map(below) = &entry.value.shape else {
                section.misshapen(field, &entry.value, "a group of `key: value` pairs");
                return None;
            };
            let name = section.name.at(&entry.key);
            let read = Section::new(self.sheet, name, entry.value.span, below).finish(&read);
            Some((section.key_of(entry), read))
        };
        entries.iter().filter_map(inner).collect()
    }

    /// Returns whether the field's one word stands for it, and takes it as read if so.
    pub(super) fn is_word(&mut self, field: Field) -> Option<Place> {
        let entry = self.entries.iter().find(|entry| entry.key == field.key)?;
        let Shape::Scalar(scalar) = &entry.value.shape else { return None };
        if field.word != Some(scalar.text.as_str()) {
            return None;
        }
        self.asked.push(field.key);
        Some(self.sheet.place(entry.value.span))
    }

    /// Reads the section with `read`, then tells every key that it did not ask for.
    pub(super) fn finish<R>(mut self, read: impl Fn(&mut Section) -> R) -> R {
        let result = read(&mut self);
        self.tell_unknown_keys();
        result
    }

    fn describe<R>(&self, read: impl Fn(&mut Section) -> R) -> (Vec<Described>, R) {
        let mut below = Section::describing(self.sheet);
        let result = read(&mut below);
        (below.into_form(), result)
    }

    fn note(&mut self, field: Field, bounds: Bounds, kind: impl FnOnce() -> Kind) {
        if let Some(form) = &mut self.form {
            form.push(Described { field, kind: kind(), bounds });
        }
    }

    /// Returns the node of a field, unless it is not written, empty, or `not measured`.
    fn find(&mut self, field: Field) -> Option<&'t Node> {
        self.asked.push(field.key);
        let entry = self.entries.iter().find(|entry| entry.key == field.key);
        let node = match entry {
            Some(entry) if self.is_split_by_comma(entry) => return None,
            Some(entry) if is_refused(&entry.value) => return None,
            Some(entry) if !is_unmeasured(&entry.value) => return Some(&entry.value),
            other => other,
        };
        let span = node.map_or(self.span, |entry| entry.key_span);
        let given_twice = node.is_none() && self.was_refused(field.key);
        if field.must && self.present && self.sheet.complete && !given_twice {
            let name = self.name.at(field.key);
            self.sheet.tell(What::MissingKey { key: field.key }, &name, span, None);
        }
        None
    }

    /// Returns whether a key of this section was told as given twice: it is not missing too.
    fn was_refused(&self, key: &str) -> bool {
        let name = self.name.at(key);
        let found = self.sheet.found.borrow();
        found.faults.iter().any(|fault| fault.what.rule() == "key-twice" && fault.name == name)
    }

    fn scalar(&mut self, field: Field) -> Option<(&'t Node, &'t Scalar)> {
        let node = self.find(field)?;
        let Shape::Scalar(scalar) = &node.shape else {
            self.misshapen(field, node, "a single value");
            return None;
        };
        Some((node, scalar))
    }

    fn map(&mut self, field: Field) -> Option<(Span, &'t [Entry])> {
        let node = self.find(field)?;
        let Shape::Map(entries) = &node.shape else {
            self.misshapen(field, node, "a group of `key: value` pairs");
            return None;
        };
        Some((node.span, entries))
    }

    fn misshapen(&self, field: Field, node: &Node, expected: &'static str) {
        if !is_refused(node) {
            let name = self.name.at(field.key);
            self.sheet.tell(What::Shape { expected }, &name, node.span, None);
        }
    }

    fn value<T: Value>(&self, field: Field, scalar: &Scalar, span: Span) -> Option<T> {
        self.value_named(field, field.key, scalar, span)
    }

    /// Reads one text as a value and tells what is wrong with it.
    fn value_named<T: Value>(
        &self,
        field: Field,
        key: &str,
        scalar: &Scalar,
        span: Span,
    ) -> Option<T> {
        let name = self.name.at(key);
        let read = T::read(&scalar.text).and_then(|value| in_bounds(field, value, &scalar.text));
        match read {
            Ok(value) => {
                if T::kind() == ValueKind::Text {
                    self.tell_about_text(field, &name, scalar, span);
                }
                let place = self.sheet.place(span);
                self.sheet.found.borrow_mut().written.push((name, place));
                Some(value)
            }
            Err(what) => {
                self.sheet.tell(what, &name, span, None);
                None
            }
        }
    }

    fn tell_about_text(&self, field: Field, name: &Name, scalar: &Scalar, span: Span) {
        if let Some(rest) = scalar.cut_by {
            self.sheet.tell(What::CutShort, name, rest, Some(span));
        }
        if !field.many_lines && scalar.text.trim_end().contains('\n') {
            self.sheet.tell(What::ManyLines, name, span, None);
        }
    }

    /// Reads `{read: …, to: …}`.
    fn reading_to<T: Readable>(
        &mut self,
        field: Field,
        node: &'t Node,
        entries: &'t [Entry],
    ) -> Option<(Vec<T>, Option<T>, Span)> {
        let name = self.name.at(field.key);
        let mut inner = Section::new(self.sheet, name, node.span, entries);
        let read_node = inner.find(READ);
        let values = read_node.and_then(|node| self.readings::<T>(field, node));
        let to = inner.get::<T>(TO).map(|to| to.value);
        inner.tell_unknown_keys();
        Some((values?, to, read_node.map_or(node.span, |node| node.span)))
    }

    /// Reads one reading or a list of them.
    fn readings<T: Readable>(&self, field: Field, node: &'t Node) -> Option<Vec<T>> {
        let items = match &node.shape {
            Shape::List(items) if !items.is_empty() => items.as_slice(),
            Shape::Scalar(_) => std::slice::from_ref(node),
            _ => {
                self.misshapen(
                    field,
                    node,
                    "a reading, such as 58, [58, 59] or {read: 58, to: 0.2}",
                );
                return None;
            }
        };
        let read = |item: &Node| match &item.shape {
            Shape::Scalar(scalar) => self.value::<T>(field, scalar, item.span),
            _ => {
                self.misshapen(field, item, "a single reading");
                None
            }
        };
        let all: Vec<Option<T>> = items.iter().map(read).collect();
        let values: Vec<T> = all.into_iter().collect::<Option<_>>()?;
        if values.iter().any(|value| !value.alike(&values[0])) {
            let name = self.name.at(field.key);
            self.sheet.tell(What::MixedReadings, &name, node.span, None);
            return None;
        }
        Some(values)
    }

    fn key_of(&self, entry: &Entry) -> Placed<String> {
        Placed { value: entry.key.clone(), place: self.sheet.place(entry.key_span) }
    }

    fn is_split_by_comma(&self, entry: &Entry) -> bool {
        let next = self.entries.iter().position(|own| std::ptr::eq(own, entry));
        let next = next.and_then(|index| self.entries.get(index + 1));
        next.is_some_and(|next| splits(entry, next))
    }

    fn tell_decimal_commas(&self) {
        for pair in self.entries.windows(2) {
            let [before, after] = pair else { continue };
            if let (true, Shape::Scalar(scalar)) = (splits(before, after), &before.value.shape) {
                let span = Span { start: before.value.span.start, end: after.key_span.end };
                let name = self.name.at(&before.key);
                let found = format!("{},{}", scalar.text, after.key);
                self.sheet.tell(What::comma(&found), &name, span, None);
            }
        }
    }

    fn tell_unknown_keys(&self) {
        let mut told = 0;
        for (index, entry) in self.entries.iter().enumerate() {
            let known = self.asked.contains(&entry.key.as_str());
            if known || entry.key.starts_with("x-") || is_comma(self.entries, index) {
                continue;
            }
            told += 1;
            let offered = if told > OFFERED { None } else { nearest(&entry.key, &self.asked) };
            let nearest = offered.map(str::to_owned);
            let what = What::UnknownKey { key: entry.key.clone(), nearest };
            self.sheet.tell(what, &self.name.at(&entry.key), entry.key_span, None);
        }
    }
}

/// Reads every part of a list as a section of its own.
fn read_list<R>(
    sheet: &Sheet,
    below: &Name,
    beside: &Name,
    items: &[Node],
    naming: Naming,
    read: impl Fn(&mut Section) -> R,
) -> Vec<R> {
    let one = |(index, item): (usize, &Node)| {
        let number = index + 1;
        let Shape::Map(entries) = &item.shape else {
            if !is_refused(item) {
                let what = What::Shape { expected: "a group of `key: value` pairs" };
                sheet.tell(what, &below.at(number), item.span, None);
            }
            return None;
        };
        let by = |key: &str| text_of(entries, key);
        let (name, key) = match naming {
            Naming::Seat => (by("seat").map(|seat| beside.at(format_args!("seat-{seat}"))), "seat"),
            Naming::Id(key) => (by(key).map(|id| beside.at(id)), key),
            Naming::By(key) => (by(key).map(|text| below.at(text)), key),
            Naming::Numbered => (None, ""),
        };
        let span = stands_for(entries, key, item.span);
        let name = name.unwrap_or_else(|| below.at(number));
        Some(Section::new(sheet, name, span, entries).finish(&read))
    };
    items.iter().enumerate().filter_map(one).collect()
}

/// Returns the text under a key, if it is a single value.
pub(super) fn text_of<'t>(entries: &'t [Entry], key: &str) -> Option<&'t str> {
    let entry = entries.iter().find(|entry| entry.key == key)?;
    match &entry.value.shape {
        Shape::Scalar(scalar) => Some(&scalar.text),
        _ => None,
    }
}

/// Returns the bytes that stand for a whole section: its naming value, else its first key.
pub(super) fn stands_for(entries: &[Entry], key: &str, whole: Span) -> Span {
    let named = entries.iter().find(|entry| entry.key == key);
    match named {
        Some(entry) if !is_unmeasured(&entry.value) => entry.value.span,
        _ => entries.first().map_or(whole, |entry| entry.key_span),
    }
}

/// Returns what a figure of a field can be: the field's own bounds, else those of its kind.
fn bounds<T: Value>(field: Field) -> Bounds {
    Bounds { least: field.least.or(T::BOUNDS.least), most: field.most.or(T::BOUNDS.most) }
}

fn in_bounds<T: Value>(field: Field, value: T, found: &str) -> Result<T, What> {
    let Bounds { least, most } = bounds::<T>(field);
    let (least, most) = (least.unwrap_or(f64::MIN), most.unwrap_or(f64::MAX));
    let unit = match T::kind() {
        ValueKind::Length | ValueKind::Slope => " mm",
        ValueKind::Angle => " deg",
        ValueKind::Weight => " kg",
        _ => "",
    };
    match value.figure() {
        Some(figure) if !(least..=most).contains(&figure) => Err(What::OutOfBounds {
            key: field.key,
            found: found.to_owned(),
            least: format!("{least}{unit}"),
            most: format!("{most}{unit}"),
        }),
        _ => Ok(value),
    }
}

/// Returns whether the second entry is the rest of the first one's number, cut off at a comma.
fn splits(before: &Entry, after: &Entry) -> bool {
    let number = |text: &str| text.bytes().next_back().is_some_and(|byte| byte.is_ascii_digit());
    let rest = after.key.bytes().next().is_some_and(|byte| byte.is_ascii_digit());
    let empty = matches!(after.value.shape, Shape::Empty);
    let joined = before.value.span.end + 1 == after.key_span.start;
    match &before.value.shape {
        Shape::Scalar(scalar) => number(&scalar.text) && rest && empty && joined,
        _ => false,
    }
}

/// In `{catch: 1,5, square: 11}` the comma ends the value and `5` stands as a key of its own.
fn is_comma(entries: &[Entry], index: usize) -> bool {
    index > 0 && splits(&entries[index - 1], &entries[index])
}

fn is_refused(node: &Node) -> bool {
    matches!(node.shape, Shape::Refused)
}

fn is_unmeasured(node: &Node) -> bool {
    match &node.shape {
        Shape::Empty => true,
        Shape::Scalar(scalar) => scalar.text == NOT_MEASURED,
        _ => false,
    }
}
