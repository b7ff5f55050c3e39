//! Whether a clone is fit to be trusted, one line a thing; looks at none of it.

use serde::Serialize;

use super::shown;

/// The number of the form of the JSON.
const FORMAT_VERSION: u32 = 1;

/// How a thing stands.
#[derive(Clone, Copy, Debug, Eq, Ord, PartialEq, PartialOrd)]
pub enum Standing {
    /// In order.
    Well,
    /// To be mended.
    Mend,
    /// It could not be looked at.
    Unseen,
}

/// One thing that was looked at.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LookedAt {
    /// What it is.
    pub what: &'static str,
    /// How it stands.
    pub standing: Standing,
    /// How it is, in words.
    pub said: String,
    /// What helps; none where nothing has to be done.
    pub cure: Option<String>,
}

impl Standing {
    /// Returns the word for it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Well => "well",
            Self::Mend => "mend",
            Self::Unseen => "not seen",
        }
    }
}

#[derive(Serialize)]
struct CheckupJson<'l> {
    format_version: u32,
    checks: Vec<LookedAtJson<'l>>,
}

#[derive(Serialize)]
struct LookedAtJson<'l> {
    what: &'l str,
    state: &'static str,
    said: &'l str,
    cure: Option<&'l str>,
}

/// Returns one line a thing, the cure behind it.
#[must_use]
pub fn checkup_text(looked_at: &[LookedAt]) -> String {
    let line = |one: &LookedAt| {
        let cure = one.cure.as_ref().map(|cure| format!(" | {cure}")).unwrap_or_default();
        let words = format!("{:<9} {:<17} {}{cure}", one.standing.word(), one.what, one.said);
        format!("{}\n", shown::line(&words))
    };
    looked_at.iter().map(line).collect()
}

/// Returns the same as JSON.
#[must_use]
pub fn checkup_json(looked_at: &[LookedAt]) -> String {
    shown::json(&CheckupJson {
        format_version: FORMAT_VERSION,
        checks: looked_at.iter().map(json).collect(),
    })
}

fn json(one: &LookedAt) -> LookedAtJson<'_> {
    let LookedAt { what, standing, said, cure } = one;
    LookedAtJson { what, state: standing.word(), said, cure: cure.as_deref() }
}
