//! The dialogue: one question after another, back, second readings, and the level before all else.

use super::answer;
use super::answer::Answer;
use super::ask::Ask;
use super::ask::Heard;
use super::ask::Why;
use super::jump;
use super::question::Question;
use super::question::Screen;
use super::typed::Typed;
use crate::model::Name;
use crate::reading;
use crate::reading::Described;
use crate::reading::RecordKind;
use crate::units::Date;
use crate::writing::editing;
use crate::writing::editing::Address;
use crate::writing::editing::Deed;
use crate::writing::editing::Refused;
use crate::writing::editing::Wording;

/// Where a measuring stands.
#[derive(Clone, Debug)]
pub struct Dialogue {
    /// The id of the record.
    pub(super) id: String,
    /// The record as it was before.
    pub(super) record: String,
    /// The record's form: where a key that is not written yet is put.
    pub(super) form: Vec<Described>,
    pub(super) questions: Vec<Question>,
    pub(super) answers: Vec<Answer>,
    pub(super) at: usize,
    pub(super) phase: Phase,
    pub(super) day: Date,
    /// Why the boat is measured though she is not level.
    pub(super) accepted: Option<String>,
    /// Whether somebody measures who must not know what the first one read.
    pub(super) blind: bool,
}

/// What is waited for.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Phase {
    /// An answer.
    Asking,
    /// A verdict on the value just read.
    Judging {
        /// Whether this was the second reading.
        second: bool,
    },
    /// A second reading.
    Again {
        first: Wording,
        why: Why,
    },
    /// A verdict on the level.
    Gate,
    /// The boat level, or a reason.
    NotLevel(String),
    End,
}

impl Dialogue {
    /// Begins to measure a record on a day.
    #[must_use]
    pub fn new(
        (kind, id): (RecordKind, &str),
        record: &str,
        questions: Vec<Question>,
        day: Date,
    ) -> Self {
        let answers = vec![Answer::Open; questions.len()];
        let mut own = Self {
            id: id.to_owned(),
            record: record.to_owned(),
            form: reading::form(kind),
            questions,
            answers,
            at: 0,
            phase: Phase::Asking,
            day,
            accepted: None,
            blind: false,
        };
        own.skip_settled();
        own
    }

    /// Hides what the record says from whoever measures: a second person's own readings.
    #[must_use]
    pub fn blind(mut self) -> Self {
        self.blind = true;
        self
    }

    /// Returns the day that is measured on.
    #[must_use]
    pub const fn day(&self) -> Date {
        self.day
    }

    /// Returns every question with what was answered to it.
    pub fn answered(&self) -> impl Iterator<Item = (&Question, &Answer)> {
        self.questions.iter().zip(&self.answers)
    }

    /// Returns why she was measured out of level, where she was.
    #[must_use]
    pub fn accepted(&self) -> Option<&str> {
        self.accepted.as_deref()
    }

    /// Does something at a place of the record's text.
    pub(super) fn edited(
        &self,
        text: &str,
        at: &Address,
        deed: &Deed<'_>,
    ) -> Result<String, Refused> {
        editing::edited_in_form(text, at, deed, &self.form)
    }

    /// Returns what is to be asked now.
    #[must_use]
    pub fn ask(&self) -> Ask<'_> {
        let Some(question) = self.questions.get(self.at) else {
            return match &self.phase {
                Phase::Gate => Ask::Level,
                Phase::NotLevel(why) => Ask::Reason(why),
                _ => Ask::End,
            };
        };
        match &self.phase {
            Phase::Asking => Ask::Value(question, &self.answers[self.at]),
            Phase::Judging { .. } => Ask::Verdict(question),
            Phase::Again { first, why } => Ask::Again { question, first, why },
            Phase::Gate => Ask::Level,
            Phase::NotLevel(why) => Ask::Reason(why),
            Phase::End => Ask::End,
        }
    }

    /// Hears a typed line.
    pub fn hear(&mut self, line: &str) -> Heard {
        match (&self.phase, Typed::of(line)) {
            (_, Typed::Stop) => Heard::Stopped,
            (Phase::NotLevel(_), typed) => self.reason(typed, line),
            (Phase::Judging { .. } | Phase::Gate, _) => Heard::Kept,
            (_, Typed::To(name)) => self.go_to(&name),
            (_, Typed::End) => self.go_to_the_end(),
            (_, Typed::Back) if self.at == self.questions.len() => self.back(),
            (Phase::Asking | Phase::Again { .. }, Typed::How) => Heard::How,
            (Phase::Asking, typed) => self.answer(typed),
            (Phase::Again { .. }, typed) => self.second(typed),
            (Phase::End, _) => Heard::Kept,
        }
    }

    fn answer(&mut self, typed: Typed) -> Heard {
        if self.questions.get(self.at).is_none() {
            return Heard::Kept;
        }
        match typed {
            Typed::Value(wording) => self.take(wording, false),
            Typed::Broken => Heard::Unreadable(NOT_CLOSED.to_owned()),
            Typed::Back => self.back(),
            Typed::Forget => {
                self.answers[self.at] = Answer::Open;
                Heard::Forgotten
            }
            Typed::NotMeasured if self.questions[self.at].screen != Screen::Day => {
                self.answers[self.at] = Answer::NotMeasured;
                self.changed();
                self.advance();
                Heard::NotMeasured
            }
            _ => {
                if self.answers[self.at] == Answer::Open {
                    self.answers[self.at] = Answer::Kept;
                }
                self.advance();
                Heard::Kept
            }
        }
    }

    fn second(&mut self, typed: Typed) -> Heard {
        let Phase::Again { first, .. } = &self.phase else { return Heard::Kept };
        match typed {
            Typed::Value(wording) => self.take(answer::both(first, &wording), true),
            Typed::Broken => Heard::Unreadable(NOT_CLOSED.to_owned()),
            Typed::Back | Typed::Forget => {
                self.answers[self.at] = Answer::Open;
                self.phase = Phase::Asking;
                Heard::Back
            }
            Typed::NotMeasured => {
                self.answers[self.at] = Answer::NotMeasured;
                self.advance();
                Heard::NotMeasured
            }
            // Nobody can be made to read twice: the one reading stays, and with it the verdict.
            _ => {
                self.advance();
                Heard::Kept
            }
        }
    }

    fn take(&mut self, wording: Wording, second: bool) -> Heard {
        if let Err(why) = self.readable(self.at, &wording) {
            return Heard::Unreadable(why);
        }
        self.answers[self.at] = Answer::Read(wording);
        self.changed();
        self.phase = Phase::Judging { second };
        Heard::Taken
    }

    /// A reason holds for the level that it was given for.
    fn changed(&mut self) {
        if self.questions[self.at].name.starts_with("rigged/level/") {
            self.accepted = None;
        }
    }

    fn back(&mut self) -> Heard {
        let before = (0..self.at).rev().find(|index| !self.questions[*index].is_settled());
        match before {
            Some(index) => {
                self.at = index;
                self.phase = Phase::Asking;
                Heard::Back
            }
            None => Heard::AtTheBeginning,
        }
    }

    fn reason(&mut self, typed: Typed, line: &str) -> Heard {
        match typed {
            Typed::Back | Typed::Forget => {
                let is_level = |own: &Question| own.name.starts_with("rigged/level/");
                self.at = self.questions.iter().position(is_level).unwrap_or(0);
                self.phase = Phase::Asking;
                Heard::Back
            }
            Typed::Value(_) => {
                self.accepted = Some(line.trim().to_owned());
                self.phase = Phase::Asking;
                Heard::Accepted
            }
            _ => Heard::NeedsReason,
        }
    }

    /// Takes the verdict on the value just read: whether it is a danger, or not shown to be none.
    /// Returns why a second reading is asked for, if it is.
    pub fn judged(&mut self, danger: bool) -> Option<Why> {
        let Phase::Judging { second } = self.phase else { return None };
        let again = self.questions.get(self.at).and_then(|own| self.why_again_of(own, danger));
        let why = again.filter(|_| !second && !self.blind);
        match (why, self.answers.get(self.at).and_then(Answer::read).cloned()) {
            (Some(why), Some(first)) => {
                self.phase = Phase::Again { first, why: why.clone() };
                Some(why)
            }
            _ => {
                self.advance();
                None
            }
        }
    }

    /// Returns why a value should be read a second time, if it should.
    #[must_use]
    pub fn why_again_of(&self, question: &Question, danger: bool) -> Option<Why> {
        let (_, answer) = self.answered().find(|(own, _)| own.name == question.name)?;
        if !question.is_reading() || !answer.read().is_some_and(answer::is_single) {
            return None;
        }
        if danger { Some(Why::Danger) } else { self.jump(question).map(Why::Jump) }
    }

    fn jump(&self, question: &Question) -> Option<String> {
        // The boat is chocked anew each time: her level is free to move.
        if question.screen == Screen::Level {
            return None;
        }
        let name = Name::record(&self.id).at(&question.name);
        let (_, answer) = self.answered().find(|(own, _)| own.name == question.name)?;
        let before = &self.record;
        let now = self.with_answer(before.clone(), question, answer).ok()?;
        jump::jump(jump::figure(before, &name), jump::figure(&now, &name), question.fine?)
    }

    /// Takes the verdict on the level: what is beyond its limit, in words, if anything is.
    pub fn levelled(&mut self, beyond: Option<String>) {
        if self.phase != Phase::Gate {
            return;
        }
        self.phase = match self.not_level(beyond) {
            Some(why) => Phase::NotLevel(why),
            None => Phase::Asking,
        };
    }

    /// Returns why she is refused, if she is: beyond the limit, or not levelled on this day, and no
    /// reason given to go on.
    #[must_use]
    pub fn not_level(&self, beyond: Option<String>) -> Option<String> {
        let why = beyond.or_else(|| self.is_level_old().then(|| NOT_LEVELLED.to_owned()));
        why.filter(|_| self.accepted.is_none())
    }

    /// Returns whether any value that has a day was read.
    #[must_use]
    pub fn reads_anything(&self) -> bool {
        self.answered().any(|(own, answer)| own.is_dated && answer.read().is_some())
    }

    /// Returns whether trim or roll were not read on this day.
    fn is_level_old(&self) -> bool {
        let mut level = self.answered().filter(|(own, _)| own.name.starts_with("rigged/level/"));
        level.any(|(question, answer)| {
            let on_this_day = question.last.as_ref().is_some_and(|last| last.on == Some(self.day));
            !matches!(answer, Answer::Read(_)) && !on_this_day
        })
    }

    fn advance(&mut self) {
        let is_level = |own: Option<&Question>| own.is_some_and(|own| own.screen == Screen::Level);
        let was = is_level(self.questions.get(self.at));
        self.at += 1;
        self.skip_settled();
        let is = is_level(self.questions.get(self.at));
        self.phase = match (was && !is && !self.blind, self.at < self.questions.len()) {
            (true, _) => Phase::Gate,
            (false, true) => Phase::Asking,
            (false, false) => Phase::End,
        };
    }

    pub(super) fn skip_settled(&mut self) {
        while self.questions.get(self.at).is_some_and(Question::is_settled) {
            self.at += 1;
        }
    }
}

const NOT_CLOSED: &str = "the bracket is not closed. Write several readings as [58, 58.5].";

const NOT_LEVELLED: &str = "the level was not read today, and nothing plumbed means anything \
    before it is";
