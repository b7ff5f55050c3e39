//! Values read at the boat: alone, several times, or with how finely they were read.

use super::fault::What;
use super::field::Field;
use super::field::READ;
use super::field::TO;
use super::form::Kind;
use super::section::Section;
use super::section::bounds;
use super::tree::Entry;
use super::tree::Node;
use super::tree::Shape;
use super::value::Readable;
use crate::model::Placed;
use crate::model::Reading;
use crate::model::Span;

/// The finest that anything is read to, in millimetres, degrees or kilograms.
pub const FINEST: f64 = 0.001;

impl<'t> Section<'t> {
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

    /// Reads `{read: …, to: …}`.
    fn reading_to<T: Readable>(
        &mut self,
        field: Field,
        node: &'t Node,
        entries: &'t [Entry],
    ) -> Option<(Vec<T>, Option<T>, Span)> {
        let name = self.name.key(field.key);
        let mut inner = Section::new(self.sheet, name, node.span, node.span, entries);
        let read_node = inner.find(READ);
        let values = read_node.and_then(|node| self.readings::<T>(field, node));
        let to = inner.get::<T>(TO);
        inner.tell_unknown_keys();
        let values = values?;
        let to = to.filter(|to| inner.is_fineness(&values, to)).map(|to| to.value);
        Some((values, to, read_node.map_or(node.span, |node| node.span)))
    }

    /// Tells a fineness that is nothing, or that is none of these readings.
    fn is_fineness<T: Readable>(&self, values: &[T], to: &Placed<T>) -> bool {
        let span = to.place.span;
        let found = self.sheet.text[span.start..span.end].to_owned();
        let what = if values.first().is_some_and(|value| !value.is_read_to(&to.value)) {
            What::OtherFineness { found }
        } else if to.value.size() < FINEST {
            What::TooFine { found }
        } else {
            return true;
        };
        self.sheet.tell(what, &self.name.at("to"), span, None);
        false
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
            let name = self.name.key(field.key);
            self.sheet.tell(What::MixedReadings, &name, node.span, None);
            return None;
        }
        Some(values)
    }
}
