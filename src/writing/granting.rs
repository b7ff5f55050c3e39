//! A waiver put into the text of `waivers.yaml`; whether it may be granted is for others to say.

use super::editing;
use super::editing::Address;
use super::editing::Deed;
use super::editing::Meaning;
use super::editing::Refused;
use super::editing::Wording;
use super::editing::edited;

/// A waiver to be written.
#[derive(Clone, Copy, Debug)]
pub struct Grant<'g> {
    /// The name of the finding.
    pub finding: &'g str,
    /// The rule.
    pub rule: &'g str,
    /// Why.
    pub because: &'g str,
    /// Who grants it.
    pub by: &'g str,
    /// The last day it counts.
    pub until: &'g str,
    /// The value it is granted for, where the finding has one.
    pub at: Option<&'g str>,
}

impl<'g> Grant<'g> {
    /// Returns each key with what stands there.
    fn pairs(&self) -> Vec<(&'static str, &'g str)> {
        let mut pairs = vec![
            ("finding", self.finding),
            ("rule", self.rule),
            ("because", self.because),
            ("by", self.by),
            ("until", self.until),
        ];
        pairs.extend(self.at.map(|at| ("at", at)));
        pairs
    }

    fn meaning(&self) -> Meaning {
        let word = |text: &str| Meaning::Word(text.to_owned());
        Meaning::Map(self.pairs().iter().map(|(key, text)| ((*key).into(), word(text))).collect())
    }

    /// Returns the waiver as lines, a key a line.
    fn lines(&self) -> String {
        let line = |(key, text): &(&str, &str)| format!("{key}: {}", editing::word(text));
        self.pairs().iter().map(line).collect::<Vec<_>>().join("\n")
    }
}

/// Returns the text of the waivers with this one among them: in place of one for the same finding
/// and rule, else at the end. `text` is none where there are no waivers yet.
///
/// # Errors
///
/// The text has faults, or the waiver can't be put in without touching others.
pub fn granted(text: Option<&str>, grant: &Grant<'_>) -> Result<String, Refused> {
    let text = text.unwrap_or_default();
    if says_nothing(text) {
        return first(text, grant);
    }
    let root = Meaning::of(&editing::root(text)?);
    if let Some(number) = earlier(&root, grant) {
        return anew(text, &Address::root().number(number), grant);
    }
    let wording = Wording::as_written(grant.meaning(), grant.lines());
    edited(text, &Address::root(), &Deed::Append(&wording))
}

/// Returns whether a text holds blanks and comments only.
fn says_nothing(text: &str) -> bool {
    let lines = text.trim_start_matches('\u{feff}').lines().map(str::trim);
    lines.into_iter().all(|line| line.is_empty() || line.starts_with('#'))
}

fn first(text: &str, grant: &Grant<'_>) -> Result<String, Refused> {
    let gap = if text.is_empty() || text.ends_with('\n') { "" } else { "\n" };
    let lines = grant.lines().replace('\n', "\n  ");
    let new = format!("{text}{gap}- {lines}\n");
    let meant = Meaning::List(vec![grant.meaning()]);
    match editing::root(&new) {
        Ok(root) if Meaning::of(&root) == meant => Ok(new),
        _ => Err(Refused::Unproven { at: Address::root() }),
    }
}

/// Returns the number of a waiver for the same finding and rule, from 1.
fn earlier(root: &Meaning, grant: &Grant<'_>) -> Option<usize> {
    let Meaning::List(waivers) = root else { return None };
    let says = |waiver: &Meaning, key: &str, is: &str| {
        waiver.get(&Address::root().key(key)) == Some(&Meaning::Word(is.to_owned()))
    };
    let same = |waiver: &Meaning| {
        says(waiver, "finding", grant.finding) && says(waiver, "rule", grant.rule)
    };
    waivers.iter().position(same).map(|index| index + 1)
}

/// Returns the text with a waiver granted anew.
fn anew(text: &str, at: &Address, grant: &Grant<'_>) -> Result<String, Refused> {
    let set = |text: String, (key, word): (&str, &str)| {
        edited(&text, &at.key(key), &Deed::Set(&Wording::word(word)))
    };
    let text = grant.pairs().into_iter().try_fold(text.to_owned(), set)?;
    match (grant.at, edited(&text, &at.key("at"), &Deed::Remove)) {
        (None, Ok(without)) => Ok(without),
        (None, Err(Refused::NoSuchPlace { .. })) | (Some(_), _) => Ok(text),
        (None, Err(refused)) => Err(refused),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const GRANT: Grant = Grant {
        finding: "kittiwake/rigged/level/roll",
        rule: "boat-not-level",
        because: "the trailer stands on sand: until Sunday",
        by: "Tomas Reyne",
        until: "2026-12-01",
        at: Some("1.50"),
    };

    const WRITTEN: &str = "- finding: kittiwake/rigged/level/roll\n  rule: boat-not-level\n  \
        because: \"the trailer stands on sand: until Sunday\"\n  by: Tomas Reyne\n  \
        until: 2026-12-01\n  at: 1.50\n";

    #[test]
    fn the_first_waiver_and_the_next_stand_alike_and_comments_stay() {
        assert_eq!(granted(None, &GRANT), Ok(WRITTEN.to_owned()));
        let head = "# what the committee lives with\n";
        assert_eq!(granted(Some(head), &GRANT), Ok(format!("{head}{WRITTEN}")));
        let other = "- finding: fulmar\n  rule: overdue\n  because: winter  # as minuted\n";
        assert_eq!(granted(Some(other), &GRANT), Ok(format!("{other}{WRITTEN}")));
        let unended = other.trim_end();
        let both = granted(Some(unended), &GRANT).expect("it can be put in");
        assert_eq!(both.trim_end(), format!("{other}{WRITTEN}").trim_end());
    }

    #[test]
    fn a_waiver_is_granted_anew_where_it_stood() {
        let old = WRITTEN.replace("2026-12-01", "2026-11-01  # the last day");
        let new = granted(Some(&old), &Grant { at: None, ..GRANT }).expect("it can be");
        let meant = WRITTEN.replace("2026-12-01", "2026-12-01  # the last day");
        assert_eq!(new, meant.replace("  at: 1.50\n", ""));
    }

    #[test]
    fn waivers_with_a_fault_are_left_alone() {
        let refused = granted(Some("- finding: [kittiwake\n"), &GRANT).expect_err("a fault");
        assert!(matches!(refused, Refused::Faulty { .. }), "{refused}");
        granted(Some("finding: kittiwake\n"), &GRANT).expect_err("it is no list");
    }
}
