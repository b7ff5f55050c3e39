//! Which findings are new, worse or gone since an earlier check. Knows no book and no git.

use std::collections::BTreeMap;

use super::checking::Checked;
use super::finding::Finding;
use super::pairing::pairs;

/// How a finding stands to an earlier check.
#[derive(Clone, Copy, Debug, Eq, Hash, Ord, PartialEq, PartialOrd)]
pub enum Standing {
    /// It was there, and no better.
    Known,
    /// It was there, and now it is of a higher level or further out, or it says something that was
    /// not said, or no waiver counts any more.
    Worse,
    /// It was not there.
    New,
}

impl Standing {
    /// Returns the word for it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Known => "known",
            Self::Worse => "worse",
            Self::New => "new",
        }
    }
}

/// What became of the findings since an earlier check.
#[derive(Clone, Debug)]
pub struct Comparison<'c> {
    /// How each finding of the later check stands, in its order.
    pub standing: Vec<Standing>,
    /// The findings of the earlier check that are gone, in its order.
    pub cured: Vec<&'c Finding>,
}

/// The positions of findings that share a name and a rule, before and after.
#[derive(Default)]
struct Alike {
    before: Vec<usize>,
    after: Vec<usize>,
}

/// Compares two checks. A finding is the same when its name and its rule are; several that share
/// both are told apart by what they say, then by the value that is nearest. What can't be told
/// apart is `worse`, or `new`.
#[must_use]
pub fn compared<'c>(before: &'c Checked, after: &'c Checked) -> Comparison<'c> {
    let mut cured = vec![true; before.findings.len()];
    let mut standing = vec![Standing::New; after.findings.len()];
    for alike in alike(&before.findings, &after.findings).values() {
        let pick = |from: &'c [Finding], at: &[usize]| -> Vec<&'c Finding> {
            at.iter().map(|at| &from[*at]).collect()
        };
        let was = pick(&before.findings, &alike.before);
        let is = pick(&after.findings, &alike.after);
        for (old, new, stands) in pairs(&was, &is) {
            cured[alike.before[old]] = false;
            standing[alike.after[new]] = stands;
        }
    }
    let gone = before.findings.iter().zip(cured).filter(|(_, cured)| *cured);
    Comparison { standing, cured: gone.map(|(finding, _)| finding).collect() }
}

fn alike<'c>(
    before: &'c [Finding],
    after: &'c [Finding],
) -> BTreeMap<(&'c str, &'static str), Alike> {
    let mut all: BTreeMap<_, Alike> = BTreeMap::new();
    let identity = |finding: &'c Finding| (finding.name.as_str(), finding.rule.id);
    for (at, finding) in before.iter().enumerate() {
        all.entry(identity(finding)).or_default().before.push(at);
    }
    for (at, finding) in after.iter().enumerate() {
        all.entry(identity(finding)).or_default().after.push(at);
    }
    all
}
