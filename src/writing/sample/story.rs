//! The story's form: commits of several lines, a blank line between two, `#` for a remark.
//!
//! ```text
//! 2025-05-10 18:20 Ines on main: kittiwake: rigged for the regatta
//!   say The after horn of seat 2 was bent in.
//!   edit boats/kittiwake.yaml | - seat: 2 | gap: 60 | gap: 59.5
//! ```
//!
//! A branch begins where `main` stands when it is first named. A merge takes what only the branch
//! changed; what both changed is taken from the line it is made on and must be edited by hand.

/// Someone of the club.
pub(super) struct Person {
    pub(super) name: &'static str,
    pub(super) email: &'static str,
}

const PEOPLE: [Person; 3] = [
    Person { name: "Ines Marlow", email: "ines@tarrow-head.example" },
    Person { name: "Tomas Reyne", email: "tomas@tarrow-head.example" },
    Person { name: "Jora Oskin", email: "jora@tarrow-head.example" },
];

/// Returns the person of a first name.
pub(super) fn person(first: &str) -> Option<&'static Person> {
    PEOPLE.iter().find(|person| person.name.split(' ').next() == Some(first))
}

/// A commit's lines, each with its number from 1; the first is the heading.
pub(super) type Chapter<'s> = Vec<(usize, &'s str)>;

/// Splits a season into its commits.
pub(super) fn chapters(season: &str) -> Vec<Chapter<'_>> {
    let mut chapters: Vec<Chapter> = Vec::new();
    for (number, line) in (1..).zip(season.lines()) {
        if line.trim().is_empty() || line.starts_with('#') {
            continue;
        }
        match chapters.last_mut() {
            Some(chapter) if line.starts_with(' ') => chapter.push((number, line.trim())),
            _ => chapters.push(vec![(number, line)]),
        }
    }
    chapters
}
