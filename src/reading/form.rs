//! The form of a record: every field that its reader asks for, in order.

use super::field::Field;
use super::value::ValueKind;

/// A field and what stands in it.
#[derive(Clone, Debug, PartialEq)]
pub struct Described {
    /// The field.
    pub field: Field,
    /// What stands in it.
    pub kind: Kind,
}

/// What stands in a field.
#[derive(Clone, Debug, PartialEq)]
pub enum Kind {
    /// A single value.
    Value(ValueKind),
    /// A value read at the boat: alone, as a list, or with how finely it was read.
    Reading(ValueKind),
    /// A section of fields.
    Section(Vec<Described>),
    /// A list.
    List(Box<Kind>),
    /// A map whose keys are the club's own.
    Free(Box<Kind>),
}
