//! What the store gives of a book's folder, and what it says where it can't.

#[path = "store/book.rs"]
mod book;
#[path = "store/in_a_repository.rs"]
mod in_a_repository;
#[path = "store/odd_repositories.rs"]
mod odd_repositories;
#[path = "store/seeking.rs"]
mod seeking;
#[path = "store/texts.rs"]
mod texts;
#[path = "store/unreadable.rs"]
mod unreadable;
