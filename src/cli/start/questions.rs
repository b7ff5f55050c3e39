//! What a new club is asked, one question after the other; reads no terminal and prints nothing.
//!
//! Each answer is read as `club.yaml` would be before the next question is asked, so that what is
//! wrong with it is told in the words of lint and asked again.

use crate::model::Book;
use crate::model::Tool;
use crate::reading::Fault;
use crate::reading::nearest;
use crate::reading::read_alone;
use crate::store::CLUB_FILE;
use crate::store::Named;
use crate::working::Tools;
use crate::writing::starting;

use crate::cli::arguments::Ci;

/// What a new book is begun with.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Answers {
    pub(super) club: Option<String>,
    pub(super) readings: Vec<(Tool, String)>,
    pub(super) ci: Option<Ci>,
}

/// One question.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Question {
    Club,
    Tool(Tool, &'static str),
    Ci,
}

/// The questions that are left, and the answers so far.
#[derive(Clone, Debug)]
pub(super) struct Questions {
    answers: Answers,
}

impl Questions {
    /// Begins with what is said already.
    pub(super) const fn new(answers: Answers) -> Self {
        Self { answers }
    }

    fn open(&self) -> Option<Question> {
        let said = |tool: Tool| self.answers.readings.iter().any(|(own, _)| *own == tool);
        let mut tools = Tool::STATED.into_iter().filter(|(tool, _)| !said(*tool));
        match (&self.answers.club, tools.next(), self.answers.ci) {
            (None, _, _) => Some(Question::Club),
            (_, Some((tool, key)), _) => Some(Question::Tool(tool, key)),
            (_, None, None) => Some(Question::Ci),
            (_, None, Some(_)) => None,
        }
    }

    /// Returns the next question, with what an empty answer stands for; none when all is said.
    pub(super) fn next(&self) -> Option<String> {
        Some(match self.open()? {
            Question::Club => "The club's name? ".to_owned(),
            Question::Tool(tool, key) => {
                format!("{key}: a reading is good to how much, either way? [{}] ", usual(tool))
            }
            Question::Ci => {
                "A recipe for a server that checks the book: github, gitlab or none? [none] "
                    .to_owned()
            }
        })
    }

    /// Takes an answer to the question that is open.
    ///
    /// # Errors
    ///
    /// Why it is asked again.
    pub(super) fn answer(&mut self, line: &str) -> Result<(), String> {
        let line = line.trim();
        let mut answers = self.answers.clone();
        match self.open() {
            None => return Ok(()),
            Some(Question::Club) if line.is_empty() => {
                return Err("A club has a name. Write it.".to_owned());
            }
            Some(Question::Club) => answers.club = Some(line.to_owned()),
            Some(Question::Tool(tool, _)) => {
                let said = if line.is_empty() { usual(tool) } else { line.to_owned() };
                answers.readings.push((tool, said));
            }
            Some(Question::Ci) => answers.ci = Some(ci(line)?),
        }
        answers.must_be_read()?;
        self.answers = answers;
        Ok(())
    }

    pub(super) fn into_answers(self) -> Answers {
        self.answers
    }
}

fn ci(line: &str) -> Result<Ci, String> {
    match line.to_lowercase().as_str() {
        "" | "none" => Ok(Ci::None),
        "github" => Ok(Ci::Github),
        "gitlab" => Ok(Ci::Gitlab),
        _ => Err("Write github, gitlab or none.".to_owned()),
    }
}

/// Returns how finely a careful hand reads with a tool, as it is written.
pub(super) fn usual(tool: Tool) -> String {
    let figure = Tools::of_club(&Book::default()).half_width(tool);
    let is_angle = matches!(tool, Tool::Level | Tool::OarAngle | Tool::Dip);
    format!("{figure}{}", if is_angle { " deg" } else { "" })
}

impl Answers {
    /// Takes `callipers=0.2` from the command line.
    ///
    /// # Errors
    ///
    /// What is wrong with it.
    pub(super) fn take_tool(&mut self, given: &str) -> Result<(), String> {
        let keys = Tool::STATED.map(|(_, key)| key);
        let Some((key, said)) = given.split_once('=') else {
            return Err(format!("--tool takes TOOL=FINENESS, such as callipers=0.2, not {given}"));
        };
        let Some((tool, _)) = Tool::STATED.into_iter().find(|(_, own)| *own == key.trim()) else {
            let offer = nearest(key, &keys).map(|near| format!("Did you mean {near}?"));
            let offer = offer.unwrap_or_else(|| format!("One of: {}", keys.join(", ")));
            return Err(format!("There is no tool called {key}. {offer}"));
        };
        if self.readings.iter().any(|(own, _)| *own == tool) {
            return Err(format!("--tool {key} is given twice"));
        }
        self.readings.push((tool, said.trim().to_owned()));
        self.must_be_read()
    }

    /// Returns how finely each tool reads: what is said, else what is usual.
    pub(super) fn all_readings(&self) -> Vec<(Tool, String)> {
        let said = |tool: Tool| self.readings.iter().find(|(own, _)| *own == tool).cloned();
        Tool::STATED.map(|(tool, _)| said(tool).unwrap_or_else(|| (tool, usual(tool)))).to_vec()
    }

    /// Refuses an answer that `club.yaml` could not hold.
    ///
    /// # Errors
    ///
    /// What lint would say, and what to do.
    pub(super) fn must_be_read(&self) -> Result<(), String> {
        let club = self.club.as_deref().unwrap_or("a club");
        let text = starting::club(club, &self.readings, "");
        let (_, faults) = read_alone(Named::text(CLUB_FILE, &text));
        match faults.first() {
            Some(Fault { what, .. }) => Err(format!("{what}. {}", what.help())),
            None => Ok(()),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn asked(lines: &[&str]) -> (Questions, Vec<String>) {
        let mut questions = Questions::new(Answers::default());
        let wrong = lines.iter().filter_map(|line| questions.answer(line).err()).collect();
        (questions, wrong)
    }

    #[test]
    fn every_question_is_asked_once_and_an_empty_answer_is_the_usual_one() {
        let (mut questions, wrong) = asked(&["Tarrow Head Boat Club", "0.1"]);
        assert_eq!(wrong, Vec::<String>::new());
        let mut asked = Vec::new();
        while let Some(question) = questions.next() {
            asked.push(question);
            questions.answer("").expect("the usual answer");
        }
        assert_eq!(asked.len(), 7);
        assert!(asked[0].starts_with("rule: a reading is good to how much"), "{asked:?}");
        let answers = questions.into_answers();
        assert_eq!(answers.readings[0], (Tool::Callipers, "0.1".to_owned()));
        assert_eq!(answers.readings[4], (Tool::Level, "0.2 deg".to_owned()));
        assert_eq!(answers.ci, Some(Ci::None));
    }

    #[test]
    fn a_wrong_answer_is_told_and_asked_again() {
        let (questions, wrong) = asked(&["", "Tarrow Head", "0,2", "0.2 deg", "-1", "0.3"]);
        assert_eq!(wrong.len(), 4, "{wrong:?}");
        assert!(wrong[1].contains("decimal comma"), "{wrong:?}");
        assert!(wrong[2].contains("no unit that is read here"), "{wrong:?}");
        assert_eq!(questions.into_answers().readings, [(Tool::Callipers, "0.3".to_owned())]);
    }

    #[test]
    fn tools_of_the_command_line_are_not_asked_for() {
        let mut answers = Answers { club: Some("Tarrow Head".to_owned()), ..Answers::default() };
        answers.take_tool("callipers=0.1").expect("a tool");
        let twice = answers.take_tool("callipers=0.1").expect_err("twice");
        assert!(twice.contains("given twice"), "{twice}");
        let unknown = answers.clone().take_tool("caliper=1").expect_err("no tool");
        assert!(unknown.contains("Did you mean callipers?"), "{unknown}");
        let question = Questions::new(answers).next().expect("a question");
        assert!(question.starts_with("rule:"), "{question}");
    }
}
