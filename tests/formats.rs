//! Every format that a check's report is written in, judged by readers that know nothing of the
//! writers; and what a hostile book can't do in any of them.

#[path = "formats/also.rs"]
mod also;
#[path = "formats/books.rs"]
mod books;
#[path = "history/club.rs"]
#[allow(dead_code, reason = "shared with other tests, which use more of it")]
mod club;
#[path = "formats/github.rs"]
mod github;
#[path = "formats/hostile.rs"]
mod hostile;
#[path = "formats/json.rs"]
mod json;
#[path = "formats/junit.rs"]
mod junit;
#[path = "formats/markdown.rs"]
mod markdown;
#[path = "formats/placeless.rs"]
mod placeless;
#[path = "lint_states/run.rs"]
#[allow(dead_code, reason = "shared with other tests, which use more of it")]
mod run;
#[path = "formats/sarif.rs"]
mod sarif;
mod sound_book;
