//! Going on elsewhere than at the next question: to one by its name, to the end, to where a draft
//! stood.

use super::answer::Answer;
use super::ask::Heard;
use super::dialogue::Dialogue;
use super::dialogue::Phase;
use super::question::Question;
use super::question::Screen;
use crate::reading;

impl Dialogue {
    /// Goes to the first question of a name, or of the seat, oar or part that it names.
    pub(super) fn go_to(&mut self, name: &str) -> Heard {
        let is_there = |own: &Question| {
            let rest = own.name.strip_prefix(name);
            !own.is_settled() && rest.is_some_and(|rest| rest.is_empty() || rest.starts_with('/'))
        };
        let Some(index) = self.questions.iter().position(is_there) else {
            return Heard::Unreadable(self.none_such(name));
        };
        self.at = index;
        self.phase = self.phase_here();
        Heard::Gone
    }

    /// Returns that nothing has a name, and the nearest one that something has.
    fn none_such(&self, name: &str) -> String {
        let names = self.questions.iter().map(|own| &*own.name);
        let wholes = self.questions.iter().filter_map(|own| Some(own.name.split_once('/')?.0));
        let known: Vec<&str> = names.chain(wholes).collect();
        let nearest = reading::nearest(name, &known);
        let offer = nearest.map(|nearest| format!("; did you mean {nearest}?"));
        format!("nothing is called {name} here{}", offer.unwrap_or_default())
    }

    /// Goes to the end: what nobody answered is not measured today.
    pub(super) fn go_to_the_end(&mut self) -> Heard {
        self.close();
        self.phase = if self.reads_anything() { self.phase_here() } else { Phase::End };
        Heard::Gone
    }

    /// Takes every question that nobody answered as not measured today.
    pub fn close(&mut self) {
        for (question, answer) in self.questions.iter().zip(&mut self.answers) {
            if *answer == Answer::Open && !question.is_settled() {
                *answer = Answer::Kept;
            }
        }
        self.at = self.questions.len();
        self.phase = Phase::End;
    }

    pub(super) fn go_to_the_first_open(&mut self) {
        let is_open = |(question, answer): (&Question, &Answer)| {
            !question.is_settled() && *answer == Answer::Open
        };
        let open = self.answered().position(is_open);
        self.at = open.unwrap_or(self.questions.len());
        self.phase = self.phase_here();
    }

    /// Returns what is waited for where the measuring stands now: the level's verdict goes before
    /// whatever lies behind it.
    fn phase_here(&self) -> Phase {
        match self.is_past_the_level() && self.accepted.is_none() && !self.blind {
            true => Phase::Gate,
            false if self.at < self.questions.len() => Phase::Asking,
            false => Phase::End,
        }
    }

    /// Returns whether the level stands before the question asked now.
    fn is_past_the_level(&self) -> bool {
        let level = self.questions.iter().rposition(|own| own.screen == Screen::Level);
        level.is_some_and(|level| level < self.at)
    }
}
