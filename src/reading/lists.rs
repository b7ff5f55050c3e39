//! Lists, and groups whose keys are the club's own.

use super::fault::What;
use super::field::Field;
use super::form::Bounds;
use super::form::Kind;
use super::form::Naming;
use super::section::Section;
use super::section::bounds;
use super::section::is_refused;
use super::section::stands_for;
use super::section::text_of;
use super::sheet::Sheet;
use super::tree::Entry;
use super::tree::Node;
use super::tree::Shape;
use super::value::Id;
use super::value::Text;
use super::value::Value;
use crate::model::Name;
use crate::model::Placed;
use crate::model::Said;

impl<'t> Section<'t> {
    /// Reads a list of sections.
    pub(super) fn list<R>(
        &mut self,
        field: Field,
        naming: Naming,
        read: impl Fn(&mut Section) -> R,
    ) -> Vec<R> {
        if self.form.is_some() {
            let (form, result) = self.describe(read);
            self.note(field, Bounds::default(), || {
                Kind::List(Box::new(Kind::Section(form)), naming)
            });
            return vec![result];
        }
        let Some(node) = self.find(field) else { return Vec::new() };
        let Shape::List(items) = &node.shape else {
            self.misshapen(field, node, "a list, each part on a line that begins with `-`");
            return Vec::new();
        };
        let (sheet, name) = (self.sheet, self.name.clone());
        read_list(sheet, &name.key(field.key), &name, items, naming, read)
    }

    /// Reads a list of single values.
    pub(super) fn values<T: Value>(&mut self, field: Field) -> Vec<Placed<T>> {
        self.note(field, bounds::<T>(field), || {
            Kind::List(Box::new(Kind::Value(T::kind())), Naming::Unnamed)
        });
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
        let name = self.name.key(field.key);
        let Some((span, whole, entries)) = self.map(field) else { return Vec::new() };
        let section = Section::new(self.sheet, name, span, whole, entries);
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
        let whole = |entry: &&'t Entry| {
            !self.sheet.is_cut_off(entry.key_span) && self.sheet.cut_off(&entry.value).is_none()
        };
        entries.iter().filter(whole).filter_map(read).collect()
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
        let name = self.name.key(field.key);
        let Some((span, whole, entries)) = self.map(field) else { return Vec::new() };
        let section = Section::new(self.sheet, name, span, whole, entries);
        let inner = |entry: &'t Entry| {
            let Shape::Map(below) = &entry.value.shape else {
                section.misshapen(field, &entry.value, "a group of `key: value` pairs");
                return None;
            };
            let name = section.name.key(&entry.key);
            let span = entry.value.span;
            let read = Section::new(self.sheet, name, span, span, below).finish(&read);
            Some((section.key_of(entry), read))
        };
        entries.iter().filter_map(inner).collect()
    }

    fn key_of(&self, entry: &Entry) -> Placed<String> {
        Placed { value: entry.key.clone(), place: self.sheet.place(entry.key_span) }
    }
}

/// Reads every part of a list as a section of its own.
fn read_list<'t, R>(
    sheet: &'t Sheet<'t>,
    below: &Name,
    beside: &Name,
    items: &'t [Node],
    naming: Naming,
    read: impl Fn(&mut Section) -> R,
) -> Vec<R> {
    let one = |(index, item): (usize, &'t Node)| {
        let number = index + 1;
        let Shape::Map(entries) = &item.shape else {
            if !is_refused(item) {
                let what = What::Shape { expected: "a group of `key: value` pairs" };
                sheet.tell(what, &below.at(number), item.span, None);
            }
            sheet.note_written(below.at(number), item.span, Said::Unread);
            return None;
        };
        let by = |key: &str| text_of(entries, key);
        let (name, key) = match naming {
            Naming::Seat => (by("seat").map(|seat| beside.at(format_args!("seat-{seat}"))), "seat"),
            Naming::Id(key) => (by(key).map(|id| beside.at(id)), key),
            Naming::By(key) => (by(key).map(|text| below.at(text)), key),
            Naming::Numbered | Naming::Unnamed => (None, ""),
        };
        let span = stands_for(entries, key, item.span);
        let name = name.unwrap_or_else(|| below.at(number));
        Some(Section::new(sheet, name, span, item.span, entries).finish(&read))
    };
    items.iter().enumerate().filter_map(one).collect()
}
