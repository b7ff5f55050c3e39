//! Measuring: the dialogue, the answers in a file, the terminal, and a book made from nothing.

#[path = "measuring/answers.rs"]
mod answers;
#[path = "measuring/book.rs"]
mod book;
#[path = "measuring/dialogue.rs"]
mod dialogue;
#[path = "measuring/from_file.rs"]
mod from_file;
#[path = "measuring/from_nothing.rs"]
mod from_nothing;
#[path = "measuring/second_person.rs"]
mod second_person;
#[cfg(unix)]
#[path = "measuring/terminal.rs"]
mod terminal;
