//! Answers held against the record they are to stand in, and answers given all at once.

use super::answer::Answer;
use super::ask::Why;
use super::dialogue::Dialogue;
use super::dialogue::Phase;
use super::lines::LineFault;
use super::lines::Lines;
use super::lines::Said;
use super::question::Question;
use super::typed;
use crate::model::Name;
use crate::reading;
use crate::reading::Fault;
use crate::reading::NOT_MEASURED;
use crate::store::Named;
use crate::units::Date;
use crate::writing::editing::Deed;
use crate::writing::editing::Refused;
use crate::writing::editing::Wording;

/// The name under which a draft and a file of answers say the day.
const DAYS: [&str; 2] = ["rigged/date", "measured/date"];

/// The name under which they say why a boat was measured out of level.
pub(super) const ACCEPTED: &str = "rigged/level/accepted";

/// The name under which a draft says that a second reading of a value is still to come.
const AGAIN: &str = "second-reading";

/// How a draft says that it is to come because the value is a danger.
const DANGER: &str = "danger";

impl Dialogue {
    /// Returns the record with every answer in it, as it would be judged now. No day is changed.
    ///
    /// # Errors
    ///
    /// The record can't be edited.
    pub fn tentative(&self) -> Result<String, Refused> {
        let mut text = self.record.clone();
        for (question, answer) in self.answered().filter(|(own, _)| !own.is_of_the_day()) {
            text = self.with_answer(text, question, answer)?;
        }
        Ok(text)
    }

    pub(super) fn with_answer(
        &self,
        text: String,
        question: &Question,
        answer: &Answer,
    ) -> Result<String, Refused> {
        match answer {
            Answer::Read(wording) => self.edited(&text, &question.at, &Deed::Set(wording)),
            // Of what never was written nothing need be said.
            Answer::NotMeasured if question.last.is_some() => {
                self.edited(&text, &question.at, &Deed::Set(&Wording::word(NOT_MEASURED)))
            }
            _ => Ok(text),
        }
    }

    /// Returns why a value can't stand in its place, if it can't, and what to do.
    pub(super) fn readable(&self, index: usize, wording: &Wording) -> Result<(), String> {
        let question = &self.questions[index];
        let name = Name::record(&self.id).at(&question.name);
        let edited = self.edited(&self.record, &question.at, &Deed::Set(wording));
        let edited = edited.map_err(|refused| format!("{refused}. {}", refused.help()))?;
        let (_, faults) = reading::read_alone(Named::text("record.yaml", &edited));
        match faults.iter().find(|fault| fault.name.is_within(name.as_str())) {
            Some(Fault { what, .. }) => Err(format!("{what}. {}", what.help())),
            None => Ok(()),
        }
    }

    /// Takes answers that were given all at once, each as if it had been typed.
    ///
    /// # Errors
    ///
    /// Every line that is no answer. Then none was taken.
    pub fn take_all(&mut self, lines: &Lines) -> Result<(), Vec<LineFault>> {
        let mut taken = self.clone();
        let mut faults = Vec::new();
        let mut again = None;
        for (index, said) in lines.said.iter().enumerate() {
            let own = said.name.strip_prefix(&format!("{}/", self.id)).unwrap_or(&said.name);
            let before = lines.said[..index].iter().find(|before| before.name == said.name);
            let fault = match before {
                Some(before) => Some(LineFault::Twice {
                    line: said.line,
                    name: said.name.clone(),
                    before: before.line,
                }),
                None if own == AGAIN => {
                    again = Some(said.value.clone());
                    None
                }
                None => taken.take_one(own, said).err(),
            };
            faults.extend(fault);
        }
        if !faults.is_empty() {
            return Err(faults);
        }
        taken.go_to_the_first_open();
        if let Some(again) = again {
            taken.again(&again);
        }
        *self = taken;
        Ok(())
    }

    fn take_one(&mut self, name: &str, said: &Said) -> Result<(), LineFault> {
        let Said { line, value, .. } = said;
        let unreadable =
            |why: String| LineFault::Unreadable { line: *line, name: name.to_owned(), why };
        if DAYS.contains(&name) {
            let day = Date::read(value);
            self.day = day
                .map_err(|_| unreadable(format!("{value} is no day; write it like 2026-10-17")))?;
            return Ok(());
        }
        if name == ACCEPTED {
            self.accepted = (!value.is_empty()).then(|| value.clone());
            return Ok(());
        }
        let index = self.questions.iter().position(|own| own.name == name);
        let index = index.ok_or_else(|| self.unknown(name, *line))?;
        if self.questions[index].is_settled() {
            return Err(LineFault::Settled { line: *line, name: name.to_owned() });
        }
        self.answers[index] = match value.as_str() {
            "" => Answer::Kept,
            NOT_MEASURED => Answer::NotMeasured,
            value => {
                let wording = typed::wording(value);
                let wording = wording.ok_or_else(|| unreadable("a bracket is open".to_owned()))?;
                self.readable(index, &wording).map_err(unreadable)?;
                Answer::Read(wording)
            }
        };
        Ok(())
    }

    fn unknown(&self, name: &str, line: usize) -> LineFault {
        let known: Vec<&str> = self.questions.iter().map(|own| &*own.name).collect();
        let nearest = reading::nearest(name, &known).map(str::to_owned);
        LineFault::Unknown { line, name: name.to_owned(), nearest }
    }

    /// Goes back to a value that is to be read a second time.
    fn again(&mut self, said: &str) {
        let (name, why) = said.split_once(' ').unwrap_or((said, DANGER));
        let Some(index) = self.questions.iter().position(|own| own.name == name) else { return };
        let Some(first) = self.answers[index].read().cloned() else { return };
        self.at = index;
        let why = if why == DANGER { Why::Danger } else { Why::Jump(why.to_owned()) };
        self.phase = Phase::Again { first, why };
    }

    /// Returns the answers so far as lines, with which a measuring goes on where it stood.
    #[must_use]
    pub fn draft(&self) -> Lines {
        let mut lines = Lines::default();
        let is_set = self.questions.iter().any(|own| own.name.starts_with("measured/"));
        lines.push(DAYS[usize::from(is_set)], &self.day.to_string());
        for (question, answer) in self.answered() {
            match answer {
                Answer::Open => {}
                Answer::Kept => lines.push(&question.name, ""),
                Answer::NotMeasured => lines.push(&question.name, NOT_MEASURED),
                Answer::Read(wording) => lines.push(&question.name, &plain(wording)),
            }
        }
        if let Some(why) = &self.accepted {
            lines.push(ACCEPTED, why);
        }
        if let (Phase::Again { why, .. }, Some(question)) =
            (&self.phase, self.questions.get(self.at))
        {
            let why = match why {
                Why::Danger => DANGER,
                Why::Jump(words) => words,
            };
            lines.push(AGAIN, &format!("{} {why}", question.name));
        }
        lines
    }
}

/// Returns a value as it was typed.
pub(super) fn plain(wording: &Wording) -> String {
    super::questions::written(wording.meaning()).unwrap_or_default()
}
