//! The form of a record: every field that its reader asks for, in order.

use super::field::Field;
use super::value::ValueKind;

/// What is written for a value that was not taken; an empty field says the same.
pub const NOT_MEASURED: &str = "not measured";

/// A field and what stands in it.
#[derive(Clone, Debug, PartialEq)]
pub struct Described {
    /// The field.
    pub field: Field,
    /// What stands in it.
    pub kind: Kind,
    /// What each figure in it can be.
    pub bounds: Bounds,
}

/// The least and the most that a figure can be, in the unit of a bare number.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Bounds {
    /// The least; of what has no least, nothing.
    pub least: Option<f64>,
    /// The most; of what has no most, nothing.
    pub most: Option<f64>,
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
    /// A list, each part of this kind, and how its parts are named.
    List(Box<Kind>, Naming),
    /// A map whose keys are the club's own.
    Free(Box<Kind>),
}

/// How the parts of a list are named.
#[derive(Clone, Copy, Debug, Eq, PartialEq)]
pub enum Naming {
    /// `seat-2`, by the key `seat`; the list's own key is left out.
    Seat,
    /// By the id under this key; the list's own key is left out.
    Id(&'static str),
    /// Below the list's key, by the text under this key.
    By(&'static str),
    /// Below the list's key, counted from 1.
    Numbered,
    /// Not at all: they are single values, and each goes by the list's own name.
    Unnamed,
}
