//! One section of a record: a map of keys, asked field by field.
//!
//! The record's own reader asks for each field by its [`Field`]; what was not asked for is an
//! unknown key. Asked without a text, the same reader lists its fields: the form of the record.

use super::fault::What;
use super::field::Field;
use super::form::Bounds;
use super::form::Described;
use super::form::Kind;
use super::form::NOT_MEASURED;
use super::nearest::nearest;
use super::sheet::Sheet;
use super::tree::Entry;
use super::tree::Node;
use super::tree::Scalar;
use super::tree::Shape;
use super::tree::TreeFault;
use super::tree::TreeFaultKind;
use super::value::Id;
use super::value::Text;
use super::value::Value;
use super::value::ValueKind;
use crate::model::Name;
use crate::model::Place;
use crate::model::Placed;
use crate::model::Said;
use crate::model::Span;

/// One section.
pub(super) struct Section<'t> {
    pub(super) sheet: &'t Sheet<'t>,
    pub(super) name: Name,
    /// What stands for the section where a value is missing.
    span: Span,
    entries: &'t [Entry],
    /// Keys of this section that were given twice.
    twice: Vec<String>,
    present: bool,
    asked: Vec<&'static str>,
    pub(super) form: Option<Vec<Described>>,
}

const NONE: &[Entry] = &[];

/// How many unknown keys of one section are compared with the known ones.
const OFFERED: usize = 50;

impl<'t> Section<'t> {
    /// A section that stands in a text; `whole` is all of its bytes.
    pub(super) fn new(
        sheet: &'t Sheet<'t>,
        name: Name,
        span: Span,
        whole: Span,
        entries: &'t [Entry],
    ) -> Self {
        let mut section = Self { entries, present: true, ..Self::absent(sheet, name, span) };
        section.tell_keys_given_twice(whole);
        section.tell_decimal_commas();
        section
    }

    fn absent(sheet: &'t Sheet<'t>, name: Name, span: Span) -> Self {
        let (asked, twice) = (Vec::new(), Vec::new());
        Self { sheet, name, span, entries: NONE, twice, present: false, asked, form: None }
    }

    /// A section without a text, whose fields are listed as they are asked for.
    pub(super) fn describing(sheet: &'t Sheet<'t>) -> Self {
        let name = Name::record("");
        let span = Span { start: 0, end: 0 };
        Self { form: Some(Vec::new()), ..Self::absent(sheet, name, span) }
    }

    pub(super) fn into_form(self) -> Vec<Described> {
        self.form.unwrap_or_default()
    }

    /// Returns the name of the section as an id, for a record whose own can't be read.
    pub(super) fn named(&self) -> Placed<String> {
        Placed { value: self.name.to_string(), place: self.place() }
    }

    /// Returns the place that stands for the whole section.
    pub(super) fn place(&self) -> Place {
        self.sheet.place(self.span)
    }

    /// Returns the place of the section, if it is written.
    pub(super) fn written_place(&self) -> Option<Place> {
        self.present.then(|| self.place())
    }

    /// Returns the place of a key, if it is written.
    pub(super) fn key_place(&self, key: &str) -> Option<Place> {
        let entry = self.entries.iter().find(|entry| entry.key == key)?;
        Some(self.sheet.place(entry.key_span))
    }

    /// Tells a fault of one key.
    pub(super) fn tell(&self, what: What, key: &str, place: Place) {
        self.sheet.tell(what, &self.name.key(key), place.span, None);
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

    /// Reads a section below this one; where it is not written, all of its values are absent.
    pub(super) fn section<R>(&mut self, field: Field, read: impl Fn(&mut Section) -> R) -> R {
        if self.form.is_some() {
            let (form, result) = self.describe(read);
            self.note(field, Bounds::default(), || Kind::Section(form));
            return result;
        }
        let name = self.name.key(field.key);
        match self.map(field) {
            Some((span, whole, entries)) => {
                Section::new(self.sheet, name, span, whole, entries).finish(read)
            }
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
        let name = self.name.key(field.key);
        let (span, whole, entries) = self.map(field)?;
        Some(Section::new(self.sheet, name, span, whole, entries).finish(read))
    }

    /// Returns whether the field's one word stands for it, and takes it as read if so.
    pub(super) fn is_word(&mut self, field: Field) -> Option<Place> {
        let entry = self.entries.iter().find(|entry| entry.key == field.key)?;
        let Shape::Scalar(scalar) = &entry.value.shape else { return None };
        if field.word != Some(scalar.text.as_str()) {
            return None;
        }
        self.asked.push(field.key);
        let said = Said::Text(scalar.text.as_str().into());
        self.sheet.note_written(self.name.key(field.key), entry.value.span, said);
        Some(self.sheet.place(entry.value.span))
    }

    /// Reads the section with `read`, then tells every key that it did not ask for.
    pub(super) fn finish<R>(mut self, read: impl Fn(&mut Section) -> R) -> R {
        let result = read(&mut self);
        self.tell_unknown_keys();
        result
    }

    pub(super) fn describe<R>(&self, read: impl Fn(&mut Section) -> R) -> (Vec<Described>, R) {
        let mut below = Section::describing(self.sheet);
        let result = read(&mut below);
        (below.into_form(), result)
    }

    pub(super) fn note(&mut self, field: Field, bounds: Bounds, kind: impl FnOnce() -> Kind) {
        if let Some(form) = &mut self.form {
            form.push(Described { field, kind: kind(), bounds });
        }
    }

    /// Returns the node of a field, unless it is not written, empty, or `not measured`.
    pub(super) fn find(&mut self, field: Field) -> Option<&'t Node> {
        self.asked.push(field.key);
        let entry = self.entries.iter().find(|entry| entry.key == field.key);
        let node = match entry {
            Some(entry)
                if is_refused(&entry.value) || self.sheet.cut_off(&entry.value).is_some() =>
            {
                let name = self.name.key(field.key);
                self.sheet.note_written(name, entry.value.span, Said::Unread);
                return None;
            }
            Some(entry) if !is_unmeasured(&entry.value) => return Some(&entry.value),
            other => other,
        };
        let span = node.map_or(self.span, |entry| entry.key_span);
        let given_twice = node.is_none() && self.was_refused(field.key);
        if field.must && self.present && self.sheet.complete && !given_twice {
            let name = self.name.key(field.key);
            self.sheet.tell(What::MissingKey { key: field.key }, &name, span, None);
        }
        None
    }

    /// Returns whether a key of this section was told as given twice: it is not missing too.
    fn was_refused(&self, key: &str) -> bool {
        self.twice.iter().any(|twice| twice == key)
    }

    fn scalar(&mut self, field: Field) -> Option<(&'t Node, &'t Scalar)> {
        let node = self.find(field)?;
        let Shape::Scalar(scalar) = &node.shape else {
            self.misshapen(field, node, "a single value");
            return None;
        };
        Some((node, scalar))
    }

    /// Returns what stands for a section, all of its bytes, and its entries.
    pub(super) fn map(&mut self, field: Field) -> Option<(Span, Span, &'t [Entry])> {
        let node = self.find(field)?;
        let Shape::Map(entries) = &node.shape else {
            self.misshapen(field, node, "a group of `key: value` pairs");
            return None;
        };
        // A block of many lines is pointed at by its first key.
        let one_line = !self.sheet.text[node.span.start..node.span.end].contains('\n');
        let stands_for = if one_line { node.span } else { stands_for(entries, "", node.span) };
        Some((stands_for, node.span, entries))
    }

    pub(super) fn misshapen(&self, field: Field, node: &Node, expected: &'static str) {
        if !is_refused(node) {
            let name = self.name.key(field.key);
            self.sheet.note_written(name.clone(), node.span, Said::Unread);
            self.sheet.tell(What::Shape { expected }, &name, node.span, None);
        }
    }

    pub(super) fn value<T: Value>(&self, field: Field, scalar: &Scalar, span: Span) -> Option<T> {
        self.value_named(field, field.key, scalar, span)
    }

    /// Reads one text as a value and tells what is wrong with it.
    pub(super) fn value_named<T: Value>(
        &self,
        field: Field,
        key: &str,
        scalar: &Scalar,
        span: Span,
    ) -> Option<T> {
        let name = self.name.key(key);
        let read = T::read(&scalar.text).and_then(|value| in_bounds(field, value, &scalar.text));
        let said = read.as_ref().map_or(Said::Unread, |value| value.said(&scalar.text));
        self.sheet.note_written(name.clone(), span, said);
        match read {
            Ok(value) => {
                if T::kind() == ValueKind::Text {
                    self.tell_about_text(field, &name, scalar, span);
                }
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

    /// Tells the keys of this section, not of those inside it, that were given twice. The rest
    /// of a number behind a comma is no key.
    fn tell_keys_given_twice(&mut self, whole: Span) {
        let is_within = |at: Span, of: Span| of.start <= at.start && at.end <= of.end;
        let is_own = |fault: &TreeFault| {
            let below = self.entries.iter().any(|entry| is_within(fault.at, entry.value.span));
            is_within(fault.at, whole) && !below
        };
        let (own, others) = self.sheet.twice.take().into_iter().partition(is_own);
        self.sheet.twice.replace(others);
        let own: Vec<TreeFault> = own;
        for fault in own {
            if let TreeFaultKind::KeyTwice { key } = &fault.what {
                self.twice.push(key.clone());
            }
            self.sheet.tell_twice(&self.name, fault);
        }
    }

    fn tell_decimal_commas(&self) {
        for entry in self.entries {
            let Some(rest) = self.sheet.cut_off(&entry.value) else { continue };
            let span = Span { start: entry.value.span.start, end: rest.end };
            let found = &self.sheet.text[span.start..span.end];
            self.sheet.tell(What::comma(found), &self.name.key(&entry.key), span, None);
        }
    }

    pub(super) fn tell_unknown_keys(&self) {
        let mut told = 0;
        for entry in self.entries {
            let known = self.asked.contains(&entry.key.as_str());
            let own = entry.key.starts_with("x-");
            if known || own || self.sheet.is_cut_off(entry.key_span) {
                continue;
            }
            told += 1;
            let offered = if told > OFFERED { None } else { nearest(&entry.key, &self.asked) };
            let nearest = offered.map(str::to_owned);
            let what = What::UnknownKey { key: entry.key.clone(), nearest };
            self.sheet.tell(what, &self.name.key(&entry.key), entry.key_span, None);
        }
    }
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
pub(super) fn bounds<T: Value>(field: Field) -> Bounds {
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

pub(super) fn is_refused(node: &Node) -> bool {
    matches!(node.shape, Shape::Refused)
}

fn is_unmeasured(node: &Node) -> bool {
    match &node.shape {
        Shape::Empty => true,
        Shape::Scalar(scalar) => scalar.text == NOT_MEASURED,
        _ => false,
    }
}
