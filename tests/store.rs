//! What the store gives of a book's folder, and what it says where it can't.

#[path = "store/book.rs"]
mod book;
#[path = "store/commits.rs"]
mod commits;
#[path = "store/in_a_repository.rs"]
mod in_a_repository;
#[path = "store/index_entry.rs"]
mod index_entry;
#[path = "store/merges.rs"]
mod merges;
#[path = "store/odd_repositories.rs"]
mod odd_repositories;
#[path = "store/past.rs"]
mod past;
#[path = "store/seeking.rs"]
mod seeking;
#[path = "store/staged.rs"]
mod staged;
#[path = "store/states.rs"]
mod states;
#[path = "store/texts.rs"]
mod texts;
#[path = "store/unreadable.rs"]
mod unreadable;
