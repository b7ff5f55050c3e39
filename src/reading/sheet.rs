//! What is collected while one file is read, and what its bare text says of commas.

use std::cell::RefCell;

use super::fault::Fault;
use super::fault::What;
use super::tree::Node;
use super::tree::Scalar;
use super::tree::Shape;
use super::tree::Style;
use super::tree::TreeFault;
use super::tree::TreeFaultKind;
use crate::model::FileId;
use crate::model::Name;
use crate::model::Place;
use crate::model::Said;
use crate::model::Span;
use crate::model::Written;

/// What is collected while one file is read.
pub(super) struct Sheet<'t> {
    file: FileId,
    pub(super) text: &'t str,
    /// Whether the whole text could be read; if not, nothing is called missing.
    pub(super) complete: bool,
    /// Keys given twice, until the section they stand in has told them.
    pub(super) twice: RefCell<Vec<TreeFault>>,
    pub(super) found: RefCell<Found>,
}

/// What was found in one file.
#[derive(Default)]
pub(super) struct Found {
    pub(super) faults: Vec<Fault>,
    pub(super) written: Vec<Written>,
    pub(super) readings: usize,
}

impl<'t> Sheet<'t> {
    pub(super) fn new(file: FileId, text: &'t str, complete: bool) -> Self {
        Self { file, text, complete, twice: RefCell::default(), found: RefCell::default() }
    }

    /// Keeps a key given twice for the section that it stands in.
    pub(super) fn keep_twice(&self, fault: TreeFault) {
        self.twice.borrow_mut().push(fault);
    }

    /// Ends the file; a key given twice where no section was read is told of the whole record.
    pub(super) fn into_found(self, record: &Name) -> Found {
        for fault in self.twice.take() {
            self.tell_twice(record, fault);
        }
        let mut found = self.found.into_inner();
        found.faults.sort_by_key(|fault| fault.place);
        found
    }

    pub(super) fn tell_twice(&self, section: &Name, fault: TreeFault) {
        let TreeFaultKind::KeyTwice { key } = &fault.what else { return };
        if self.is_cut_off(fault.at) {
            return;
        }
        let name = section.at(key);
        self.note_written(name.clone(), fault.at, Said::Unread);
        self.tell(What::Tree(fault.what), &name, fault.at, fault.also);
    }

    pub(super) fn note_written(&self, name: Name, span: Span, said: Said) {
        let place = self.place(span);
        self.found.borrow_mut().written.push(Written { name, place, said });
    }

    /// In `{catch: 1,5, square: 11}` the comma ends the value `1`. Returns the bytes of the `5`,
    /// which YAML takes for a key of its own.
    pub(super) fn cut_off(&self, value: &Node) -> Option<Span> {
        let Shape::Scalar(Scalar { text, style: Style::Plain, .. }) = &value.shape else {
            return None;
        };
        let ends_in_digit = text.bytes().next_back().is_some_and(|byte| byte.is_ascii_digit());
        let rest = self.text.get(value.span.end..)?.strip_prefix(',')?;
        let rest = &rest[..rest.find([',', '}', ':', '\n', '\r'])?];
        let goes_on = rest.bytes().next().is_some_and(|byte| byte.is_ascii_digit());
        let start = value.span.end + 1;
        let span = Span { start, end: start + rest.trim_end().len() };
        (ends_in_digit && goes_on && self.is_cut_off(span)).then_some(span)
    }

    /// Returns whether a key is no key but the rest of a number.
    pub(super) fn is_cut_off(&self, key: Span) -> bool {
        let digit = |byte: Option<u8>| byte.is_some_and(|byte| byte.is_ascii_digit());
        let before = self.text[..key.start].strip_suffix(',');
        let after = self.text[key.end..].trim_start_matches(' ').bytes().next();
        before.is_some_and(|before| digit(before.bytes().next_back()))
            && digit(self.text[key.start..key.end].bytes().next())
            && matches!(after, Some(b',' | b'}'))
    }

    pub(super) fn place(&self, span: Span) -> Place {
        Place { file: self.file, span }
    }

    pub(super) fn tell(&self, what: What, name: &Name, span: Span, also: Option<Span>) {
        let fault = Fault {
            what: what.shown(),
            name: name.clone(),
            place: self.place(span),
            also: also.map(|span| self.place(span)),
        };
        self.found.borrow_mut().faults.push(fault);
    }
}
