//! The bibliography. A rule cites from here, so that a title is written once.

use std::fmt;

/// A published work, or the plain word that there is none.
#[derive(Debug)]
pub struct Work {
    /// Who wrote or issued it, and its title, edition and year.
    pub title: &'static str,
}

/// A place in a published work.
#[derive(Clone, Copy, Debug)]
pub struct Source {
    /// The work.
    pub work: &'static Work,
    /// The section, page, table or equation; or what it is cited for.
    pub place: &'static str,
}

impl Work {
    /// Cites a place in this work.
    #[must_use]
    pub const fn at(&'static self, place: &'static str) -> Source {
        Source { work: self, place }
    }
}

impl fmt::Display for Source {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { work, place } = self;
        if place.is_empty() {
            f.write_str(work.title)
        } else {
            write!(f, "{}: {place}", work.title)
        }
    }
}

/// The guide to stating how sure a measurement is.
pub static GUM: Work =
    Work { title: "JCGM 100:2008, Guide to the expression of uncertainty in measurement" };

/// Proving that a limit is kept or not.
pub static ISO_14253: Work =
    Work { title: "ISO 14253-1, Decision rules for verifying conformity or nonconformity" };

/// A handbook of rowing.
pub static LEHMANN: Work = Work { title: "R. C. Lehmann, Rowing (1898)" };

/// Galvanised steel and cold work.
pub static ASTM_A143: Work = Work {
    title: "ASTM A143, Safeguarding against embrittlement of hot-dip galvanized structural steel",
};

/// Dates as they are written.
pub static ISO_8601: Work = Work { title: "ISO 8601, Representation of dates and times" };

/// The text format of the records.
pub static YAML: Work = Work { title: "YAML Ain't Markup Language, revision 1.2.2 (2021)" };

/// Triangles, circles and rotations.
pub static GEOMETRY: Work = Work { title: "Plane and solid geometry" };

/// What riggers do.
pub static PRACTICE: Work = Work { title: "Common practice, no source" };

/// What a club decides for itself.
pub static CLUB: Work = Work { title: "The club's to set; no published figure" };

/// What the format of the book asks for.
pub static FORMAT: Work = Work { title: "The book's own format 1" };
