//! The club's own settings.

use super::Limits;
use super::place::{FileId, Place, Placed};
use super::reading::Tool;
use super::words::May;

/// The club, from `club.yaml`.
#[derive(Clone, Debug, Default)]
pub struct Club {
    /// The file, where there is one that could be read.
    pub file: Option<FileId>,
    /// The format's number.
    pub format: Option<Placed<u32>>,
    /// The club's name.
    pub name: Option<Placed<String>>,
    /// How finely the club reads with each tool.
    pub half_widths: HalfWidths,
    /// Limits by class.
    pub limits: Vec<ClubLimits>,
    /// Who may sign; anyone, where nobody is listed.
    pub people: Vec<Person>,
    /// What the gate protects.
    pub protect: Protect,
    /// Whether stature, leg and weight may be published.
    pub publish_crew: Option<Placed<bool>>,
}

/// How finely each tool reads, in millimetres or degrees.
#[derive(Clone, Debug, Default)]
pub struct HalfWidths(pub Vec<(Tool, Placed<f64>)>);

impl HalfWidths {
    /// Returns how finely a tool reads, where it is written.
    #[must_use]
    pub fn of(&self, tool: Tool) -> Option<Placed<f64>> {
        self.0.iter().find(|(written, _)| *written == tool).map(|(_, half_width)| *half_width)
    }
}

/// The club's limits for one class.
#[derive(Clone, Debug)]
pub struct ClubLimits {
    /// The class.
    pub class: Placed<String>,
    /// The limits.
    pub limits: Limits,
}

/// A person who may sign.
#[derive(Clone, Debug)]
pub struct Person {
    /// The name.
    pub name: Option<Placed<String>>,
    /// What the person may put the name to.
    pub may: Vec<Placed<May>>,
}

/// What the gate protects.
#[derive(Clone, Debug, Default)]
pub struct Protect {
    /// The place of the whole, where it is written.
    pub place: Option<Place>,
    /// The longest a waiver may last.
    pub longest_waiver_days: Option<Placed<u32>>,
    /// The branches.
    pub branches: Vec<Placed<String>>,
}
