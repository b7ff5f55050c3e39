//! What changed between two states of a book.

#[path = "diff/chance.rs"]
mod chance;
#[path = "diff/changes.rs"]
mod changes;
#[path = "diff/consequences.rs"]
mod consequences;
#[path = "diff/in_a_repository.rs"]
mod in_a_repository;
#[path = "diff/pair.rs"]
mod pair;
#[path = "diff/parts_of_lists.rs"]
mod parts_of_lists;
#[path = "diff/shown.rs"]
mod shown;
#[path = "diff/unreadable.rs"]
mod unreadable;
#[path = "diff/values.rs"]
mod values;
#[path = "diff/words.rs"]
mod words;
