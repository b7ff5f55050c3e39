//! The dialogue.
