//! The record after a measuring: the values read, and the day of those, of no others.

use thiserror::Error;

use super::answer::Answer;
use super::answering;
use super::dialogue::Dialogue;
use super::level::Level;
use super::question::Question;
use super::readings_day::Days;
use crate::units::Date;
use crate::writing::editing::Address;
use crate::writing::editing::Deed;
use crate::writing::editing::Meaning;
use crate::writing::editing::Refused;
use crate::writing::editing::Wording;

/// A record as it is after a measuring.
#[derive(Clone, Debug, Eq, PartialEq)]
pub struct Recorded {
    /// Its text.
    pub text: String,
    /// What became of the days.
    pub days: Days,
    /// What else whoever measured should know.
    pub notes: Vec<String>,
}

/// Why a measuring can't be written down as it is.
#[derive(Clone, Debug, Eq, Error, PartialEq)]
pub enum Cannot {
    /// The record can't be edited there.
    #[error("{0}")]
    Edit(#[from] Refused),
    /// Nobody said who measured.
    #[error("nobody said who measured")]
    Nobody,
    /// A second person read on another day than the first.
    #[error("the first readings are not of {today}, so the two can't be joined")]
    OtherDay {
        /// The day of the second person.
        today: Date,
    },
    /// A second person is the first one.
    #[error("the second person is the one who measured first")]
    SamePerson,
    /// Some of what is plumbed was read today, some is older, and the boat lay otherwise.
    #[error(
        "the boat lies otherwise than when the rest was plumbed ({how}): {new} was read today, {old} was not, and the record has one level for both"
    )]
    TwoLevels {
        /// How she lies otherwise.
        how: String,
        /// A value that was not read today.
        old: String,
        /// A value that was.
        new: String,
    },
}

impl Cannot {
    /// Returns what to do about it.
    #[must_use]
    pub fn help(&self) -> String {
        match self {
            Self::Edit(refused) => refused.help().to_owned(),
            Self::Nobody => "answer the first question: who measures".to_owned(),
            Self::OtherDay { .. } => "measure the values that disagree anew".to_owned(),
            Self::SamePerson => "have somebody else read".to_owned(),
            Self::TwoLevels { .. } => "chock her until the level reads as it did then, or plumb \
                pins, pitch and handles at every seat today"
                .to_owned(),
        }
    }
}

/// Who measured, and when: the keys under which a record says so.
struct Keys {
    section: &'static str,
    is_boat: bool,
}

impl Dialogue {
    /// Returns the record after this measuring.
    ///
    /// # Errors
    ///
    /// It can't be written down as it is.
    pub fn recorded(&self) -> Result<Recorded, Cannot> {
        let is_boat = self.questions.iter().any(|own| own.name == "rigged/by");
        let keys = Keys { section: if is_boat { "rigged" } else { "measured" }, is_boat };
        let level = self.level()?;
        let stays = |question: &Question| {
            level == Level::Stays && question.name.starts_with("rigged/level/")
        };
        let days = self.days(stays);
        let mut notes = Vec::new();
        let mut text = self.with_days(self.record.clone(), &days, &keys, &mut notes)?;
        for (question, answer) in self.answered() {
            if question.is_of_the_day() || stays(question) {
                continue;
            }
            text = self.with_answer(text, question, answer)?;
        }
        if level == Level::Stays {
            notes.push(LEVEL_STAYS.to_owned());
        } else {
            text = self.with_reason(text)?;
        }
        Ok(Recorded { text, days, notes })
    }

    fn with_days(
        &self,
        text: String,
        days: &Days,
        keys: &Keys,
        notes: &mut Vec<String>,
    ) -> Result<String, Cannot> {
        match days {
            Days::Nothing => Ok(text),
            Days::All => self.with_new_day(text, keys),
            Days::Some(_) if !keys.is_boat => {
                notes.push(ONE_DAY.to_owned());
                Ok(text)
            }
            Days::Some(values) => self.with_read_again(text, values, notes),
        }
    }

    /// All was read: the day is the record's, and what was read again before is older than that.
    fn with_new_day(&self, text: String, keys: &Keys) -> Result<String, Cannot> {
        let at = Address::root().key(keys.section);
        let put = |text: &str, key: &str, value: &str| {
            self.edited(text, &at.key(key), &Deed::Set(&Wording::word(value)))
        };
        let mut text = put(&text, "date", &self.day.to_string())?;
        text = put(&text, "by", &self.by()?)?;
        let others: &[&str] =
            if keys.is_boat { &["checked-by", "where", "wind"] } else { &["checked-by"] };
        for key in others {
            text = match self.typed(&format!("{}/{key}", keys.section)) {
                Some(value) => put(&text, key, &value)?,
                None => self.without(text, &at.key(key))?,
            };
        }
        if keys.is_boat { self.without(text, &Address::root().key("read-again")) } else { Ok(text) }
    }

    fn with_read_again(
        &self,
        text: String,
        values: &[String],
        notes: &mut Vec<String>,
    ) -> Result<String, Cannot> {
        let word = |text: &str| Meaning::Word(text.to_owned());
        let mut entry = vec![
            ("date".to_owned(), word(&self.day.to_string())),
            ("by".to_owned(), word(&self.by()?)),
        ];
        if let Some(checked_by) = self.typed("rigged/checked-by") {
            entry.push(("checked-by".to_owned(), word(&checked_by)));
        }
        let values = values.iter().map(|name| word(name)).collect();
        entry.push(("values".to_owned(), Meaning::List(values)));
        if ["rigged/where", "rigged/wind"].iter().any(|name| self.typed(name).is_some()) {
            notes.push(PLACE_STAYS.to_owned());
        }
        let at = Address::root().key("read-again");
        Ok(self.edited(&text, &at, &Deed::Append(&Wording::of(Meaning::Map(entry))))?)
    }

    /// Writes why she was measured out of level; of a level read anew, an older reason goes.
    fn with_reason(&self, text: String) -> Result<String, Cannot> {
        let at = answering::ACCEPTED.split('/').fold(Address::root(), |at, key| at.key(key));
        let level = |own: &Question| own.name.starts_with("rigged/level/");
        let is_new = self.answered().any(|(own, answer)| level(own) && answer.read().is_some());
        match &self.accepted {
            Some(why) => Ok(self.edited(&text, &at, &Deed::Set(&Wording::word(why)))?),
            None if is_new => self.without(text, &at),
            None => Ok(text),
        }
    }

    /// Takes a value out of a text, if it is there.
    fn without(&self, text: String, at: &Address) -> Result<String, Cannot> {
        match self.edited(&text, at, &Deed::Remove) {
            Err(Refused::NoSuchPlace { .. }) => Ok(text),
            edited => Ok(edited?),
        }
    }

    /// Returns who measured: as typed, else whoever the question named.
    ///
    /// # Errors
    ///
    /// Nobody.
    pub fn by(&self) -> Result<String, Cannot> {
        let names = ["rigged/by", "measured/by"];
        let who = self.answered().find(|(own, _)| names.contains(&&*own.name));
        let said = who.and_then(|(question, answer)| match answer {
            Answer::Read(wording) => Some(answering::plain(wording)),
            _ => question.last.as_ref().map(|last| last.text.clone()),
        });
        said.ok_or(Cannot::Nobody)
    }

    /// Returns what was typed in answer to a question.
    pub(super) fn typed(&self, name: &str) -> Option<String> {
        let (_, answer) = self.answered().find(|(own, _)| own.name == name)?;
        answer.read().map(answering::plain)
    }
}

impl Question {
    /// Returns whether its answer tells of the day, not of the boat: where it is written depends on
    /// how much was read.
    #[must_use]
    pub fn is_of_the_day(&self) -> bool {
        let names = ["by", "checked-by", "where", "wind"];
        let whole = self.name.strip_prefix("rigged/").or(self.name.strip_prefix("measured/"));
        whole.is_some_and(|name| names.contains(&name))
    }
}

const LEVEL_STAYS: &str = "The level in the record stays: pins, pitch and handles that were not \
    read today were plumbed under it.";

const ONE_DAY: &str = "A set of oars has one day for all that is measured of it. Not everything was \
    measured today, so that day stays.";

const PLACE_STAYS: &str = "Where she lay and the wind are the rigging day's. Not everything was \
    measured today, so they stay as they were.";
