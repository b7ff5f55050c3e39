//! Which findings are new, worse or gone since an earlier check. Knows no book and no git.

use std::collections::HashMap;

use super::checking::Checked;
use super::finding::Figure;
use super::finding::Finding;
use super::finding::LimitShown;

/// How a finding stands to an earlier check.
#[derive(Clone, Copy, Debug, Eq, Hash, Ord, PartialEq, PartialOrd)]
pub enum Standing {
    /// It was there, and no better.
    Known,
    /// It was there, and now it is of a higher level or further out, or no waiver counts any more.
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
pub struct Since<'c> {
    /// How each finding of the later check stands, in its order.
    pub standing: Vec<Standing>,
    /// The findings of the earlier check that are gone, in its order.
    pub cured: Vec<&'c Finding>,
}

/// How far a figure must have gone further out to be further out at all: what is lost in sums.
const LOST: f64 = 1e-9;

/// Compares two checks. A finding is the same when its name and its rule are; of several that
/// share both, the first is that of the first.
#[must_use]
pub fn compared<'c>(before: &'c Checked, after: &'c Checked) -> Since<'c> {
    let mut earlier: HashMap<(&str, &str), Vec<usize>> = HashMap::new();
    for (at, finding) in before.findings.iter().enumerate().rev() {
        earlier.entry(identity(finding)).or_default().push(at);
    }
    let mut cured = vec![true; before.findings.len()];
    let standing = after.findings.iter().map(|finding| {
        let known = earlier.get_mut(&identity(finding)).and_then(Vec::pop);
        let Some(at) = known else { return Standing::New };
        cured[at] = false;
        if is_worse(&before.findings[at], finding) { Standing::Worse } else { Standing::Known }
    });
    let standing = standing.collect();
    let gone = before.findings.iter().zip(cured).filter(|(_, cured)| *cured);
    Since { standing, cured: gone.map(|(finding, _)| finding).collect() }
}

fn identity(finding: &Finding) -> (&str, &str) {
    (finding.name.as_str(), finding.rule.id)
}

fn is_worse(before: &Finding, after: &Finding) -> bool {
    let further = beyond(before).zip(beyond(after));
    let further = further.is_some_and(|(was, is)| is > was + LOST * was.abs().max(1.0));
    let counts_now = before.waived.is_some() && after.waived.is_none();
    let gates_now = before.shown_only && !after.shown_only;
    after.level > before.level || further || counts_now || gates_now
}

/// Returns how far the value lies beyond its limit, in its unit; negative while it is within.
fn beyond(finding: &Finding) -> Option<f64> {
    let Figure { number, .. } = finding.value?;
    let LimitShown { least, most, .. } = finding.limit.as_ref()?;
    let below = least.map(|least| least - number);
    let above = most.map(|most| number - most);
    below.into_iter().chain(above).reduce(f64::max)
}
