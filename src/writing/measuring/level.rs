//! Whether today's level can stand in the record: it has one level for all that was plumbed.

use super::answer;
use super::answer::Answer;
use super::dialogue::Dialogue;
use super::question::Question;
use super::recording::Cannot;
use crate::model::Name;
use crate::writing::measuring::jump;

/// What becomes of the level that was read today.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Level {
    /// It is the boat's level from now on, or none was read.
    Written,
    /// The one in the record stays: what was plumbed under it stands.
    Stays,
}

/// Two readings that differ by so many half-widths may be of one level.
const ALIKE: f64 = 2.0;

impl Dialogue {
    /// Returns what becomes of today's level.
    pub(super) fn level(&self) -> Result<Level, Cannot> {
        let read_today = |(_, answer): &(&Question, &Answer)| answer.read().is_some();
        let stands = |(question, answer): &(&Question, &Answer)| {
            question.last.is_some() && matches!(answer, Answer::Kept | Answer::Open)
        };
        if !self.of_level().any(|own| read_today(&own)) {
            return Ok(Level::Written);
        }
        let old = self.plumbed().find(stands).map(|(question, _)| &question.name);
        let new = self.plumbed().find(read_today).map(|(question, _)| &question.name);
        match (old, new) {
            (None, _) => Ok(Level::Written),
            (Some(_), None) => Ok(Level::Stays),
            (Some(old), Some(new)) => match self.tilted() {
                None => Ok(Level::Stays),
                Some(how) => Err(Cannot::TwoLevels { how, old: old.clone(), new: new.clone() }),
            },
        }
    }

    fn of_level(&self) -> impl Iterator<Item = (&Question, &Answer)> {
        self.answered().filter(|(own, _)| own.name.starts_with("rigged/level/"))
    }

    /// Returns what is plumbed at the seats, and so hangs on the level.
    fn plumbed(&self) -> impl Iterator<Item = (&Question, &Answer)> {
        let hangs = ["pin/lean/", "pitch/", "handle-past-mark"];
        let plumbed = move |name: &str| {
            let seat = name.strip_prefix("seat-").and_then(|rest| rest.split_once('/'));
            seat.is_some_and(|(_, field)| hangs.iter().any(|own| field.starts_with(own)))
        };
        self.answered().filter(move |(own, _)| plumbed(&own.name))
    }

    /// Returns how the boat lies otherwise than the record says, in words, where the level could see it.
    fn tilted(&self) -> Option<String> {
        let now = self.tentative().ok()?;
        let axis = |(question, answer): (&Question, &Answer)| {
            let name = Name::record(&self.id).at(&question.name);
            let (after, unit) = answer.read().and_then(|_| jump::figure(&now, &name))?;
            let Some((before, _)) = jump::figure(&self.record, &name) else {
                return Some(format!("{} was not written down then", question.short()));
            };
            let fine = question.fine.unwrap_or_default();
            let differs = (after - before).abs() > ALIKE * fine;
            let which = question.short().rsplit('/').next().unwrap_or_default();
            differs.then(|| format!("{which} {after:.1} {unit} today, {before:.1} {unit} then"))
        };
        let all: Vec<String> = self.of_level().filter_map(axis).collect();
        (!all.is_empty()).then(|| all.join("; "))
    }

    /// Returns every reading that was asked for a second time and taken once.
    pub fn read_once(&self) -> impl Iterator<Item = &Question> {
        let once = |answer: &Answer| answer.read().is_some_and(answer::is_single);
        self.answered()
            .filter(move |(own, answer)| own.is_reading() && once(answer))
            .map(|(own, _)| own)
    }
}
