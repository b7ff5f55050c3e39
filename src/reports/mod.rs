//! Findings, rules and values as text and JSON.

mod schema;

pub use schema::{schema, schema_file};
