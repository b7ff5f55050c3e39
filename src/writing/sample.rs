//! An invented club's book with two seasons of commits, to try everything on.
//!
//! The story is two texts, one a season, in the form of `story`; this room tells it and gives the
//! planned commits. It knows what the club wrote and when, not what any of it is worth.

mod edit;
mod line;
mod story;
mod telling;

use thiserror::Error;

use crate::store::founding::Founding;

/// The story, from its beginning.
const SEASONS: [&str; 2] =
    [include_str!("sample/first-season.txt"), include_str!("sample/second-season.txt")];

/// Files that the story brings into the book, by path.
const RECORDS: [(&str, &str); 8] = [
    ("club.yaml", include_str!("sample/book/club.yaml")),
    ("boats/kittiwake.yaml", include_str!("sample/book/boats/kittiwake.yaml")),
    ("boats/fulmar.yaml", include_str!("sample/book/boats/fulmar.yaml")),
    ("boats/gannet.yaml", include_str!("sample/book/boats/gannet.yaml")),
    ("oars/long-ash.yaml", include_str!("sample/book/oars/long-ash.yaml")),
    ("oars/spruce.yaml", include_str!("sample/book/oars/spruce.yaml")),
    ("oars/short-ash.yaml", include_str!("sample/book/oars/short-ash.yaml")),
    ("crews/masters-a.yaml", include_str!("sample/book/crews/masters-a.yaml")),
];

/// Where the story can't be told: a fault of the story, told with its line.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
#[error("season {season}, line {line}: {what}")]
pub struct StoryFault {
    /// The season, from 1.
    pub season: usize,
    /// The line in the season's text, from 1.
    pub line: usize,
    /// What is wrong there.
    pub what: String,
}

/// Returns the club's two seasons as planned commits.
///
/// # Errors
///
/// [`StoryFault`]: a line that is not understood, or whose text is not found in the book.
///
/// # Example
///
/// ```
/// let seasons = tholebook::writing::sample::seasons()?;
/// assert_eq!(seasons.commits[0].by.name, "Ines Marlow");
/// # Ok::<(), tholebook::writing::sample::StoryFault>(())
/// ```
pub fn seasons() -> Result<Founding, StoryFault> {
    telling::tell(&SEASONS)
}
