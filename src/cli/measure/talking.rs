//! The dialogue on the terminal: shows what is asked together, asks, tells the verdict, saves the
//! draft.

use super::draft::Draft;
use super::ending;
use super::ending::Hearer;
use super::subject::Measured;
use super::terminal::BrokenOff;
use super::terminal::Terminal;
use crate::cli::arguments::Measure;
use crate::cli::exit::Exit;
use crate::cli::output::Done;
use crate::reading::Kind;
use crate::reading::ValueKind;
use crate::reports;
use crate::reports::MeasuredRow;
use crate::reports::shown;
use crate::writing::editing::Meaning;
use crate::writing::editing::Wording;
use crate::writing::measuring::Answer;
use crate::writing::measuring::Ask;
use crate::writing::measuring::Dialogue;
use crate::writing::measuring::Heard;
use crate::writing::measuring::Question;
use crate::writing::measuring::Screen;
use crate::writing::measuring::Why;

/// How the asking ended.
enum Ended {
    All,
    Stopped,
}

/// Measures on the terminal.
///
/// # Errors
///
/// What the command comes to instead.
pub(super) fn run(measured: &Measured, arguments: &Measure) -> Result<Done, Done> {
    let mut dialogue = measured.dialogue(arguments.second)?;
    let terminal = Terminal::open().ok_or_else(|| {
        Done::refused(Exit::Usage, vec!["The terminal can't be used for questions.".to_owned()])
    })?;
    let draft = Draft::of(measured, arguments.second);
    let mut talk =
        Talk { measured, terminal, draft, blind: arguments.second, screen: None, unsaved: false };
    let ended = match talk.begin(&mut dialogue) {
        Ok(Some(stopped)) => return Ok(stopped),
        Ok(None) => talk.through(&mut dialogue),
        Err(BrokenOff) => Err(BrokenOff),
    };
    match ended {
        Ok(Ended::All) => {
            let Talk { terminal, draft, .. } = talk;
            let hearer = Hearer::at(terminal);
            ending::run(measured, arguments, &dialogue, hearer, Some(&draft))
        }
        Ok(Ended::Stopped) => Ok(talk.stopped(Exit::Clear)),
        Err(BrokenOff) => Ok(talk.stopped(Exit::NotChecked)),
    }
}

struct Talk<'m> {
    measured: &'m Measured,
    terminal: Terminal,
    draft: Draft,
    blind: bool,
    /// What was shown last.
    screen: Option<Screen>,
    /// Whether it was told that no draft can be saved.
    unsaved: bool,
}

impl Talk<'_> {
    /// Says what is begun, and offers the draft of one that was broken off.
    fn begin(&mut self, dialogue: &mut Dialogue) -> Result<Option<Done>, BrokenOff> {
        let called = shown::line(self.measured.called());
        self.terminal.show(&format!("Measuring {called} on {}.\n{KEYS}", dialogue.day()));
        let lines = match self.draft.lines() {
            Ok(Some(lines)) => lines,
            Ok(None) => return Ok(None),
            Err(unreadable) => return Ok(Some(unreadable)),
        };
        let day = lines.said.first().map(|own| shown::line(&own.value)).unwrap_or_default();
        let count = lines.said.len().saturating_sub(1);
        self.terminal.show(&format!(
            "A measuring of {day} was broken off after {count} answers. What is typed now gets that \
             day too.\n"
        ));
        if self.terminal.yes("Go on with it?")? {
            return Ok(match dialogue.take_all(&lines) {
                Ok(()) => None,
                Err(faults) => {
                    let why = faults.iter().map(ToString::to_string).collect();
                    Some(self.draft.unfit("The draft no longer fits the record.", why))
                }
            });
        }
        if self.terminal.yes("Throw it away and begin anew?")? {
            self.draft.remove();
            return Ok(None);
        }
        Ok(Some(Done::result("Nothing was changed.\n".to_owned())))
    }

    fn through(&mut self, dialogue: &mut Dialogue) -> Result<Ended, BrokenOff> {
        loop {
            match dialogue.ask() {
                Ask::End => match self.end(dialogue)? {
                    Heard::Stopped => return Ok(Ended::Stopped),
                    Heard::Kept => return Ok(Ended::All),
                    _ => {}
                },
                Ask::Level => {
                    let beyond = self.measured.beyond_level(dialogue);
                    dialogue.levelled(beyond);
                }
                Ask::Verdict(question) => {
                    let question = question.clone();
                    self.judge(dialogue, &question);
                }
                Ask::Value(..) | Ask::Again { .. } | Ask::Reason(_) => {
                    if self.ask(dialogue)? == Heard::Stopped {
                        return Ok(Ended::Stopped);
                    }
                }
            }
        }
    }

    /// All is answered: whoever measures may still go back.
    fn end(&mut self, dialogue: &mut Dialogue) -> Result<Heard, BrokenOff> {
        self.screen = None;
        self.terminal.show("\nThat was the last one.\n");
        let line = self.terminal.ask("  Enter: see what changed; b: back; g seat-2: go there: ")?;
        let heard = dialogue.hear(&line);
        self.answer(&heard, None);
        self.save(dialogue);
        Ok(heard)
    }

    fn judge(&mut self, dialogue: &mut Dialogue, question: &Question) {
        // What tells of the day is written at the end: until then its old state would be judged.
        let is_judged = !self.blind && !question.is_of_the_day();
        let judged = is_judged.then(|| self.measured.judged(dialogue)).flatten();
        let (words, danger) = judged.map(|judged| judged.verdict(question)).unwrap_or_default();
        self.terminal.show(&words);
        match dialogue.judged(danger) {
            Some(Why::Danger) => self.terminal.show("    A danger: read it a second time.\n"),
            Some(Why::Jump(how)) => {
                self.terminal.show(&format!("    {how}: read it a second time.\n"));
            }
            None => {}
        }
        self.save(dialogue);
    }

    fn ask(&mut self, dialogue: &mut Dialogue) -> Result<Heard, BrokenOff> {
        let prompt = match dialogue.ask() {
            Ask::Value(question, answer) => {
                let (question, answer) = (question.clone(), answer.clone());
                self.show_screen(dialogue, &question);
                self.prompt(&question, &answer)
            }
            Ask::Again { question, first, .. } => {
                let first = if self.blind { String::new() } else { plain(first) };
                format!("  {}, second reading (first {first}): ", question.short())
            }
            Ask::Reason(why) => {
                let told = format!("Not level: {why}.");
                let look = self.measured.look;
                format!("{}\n{ACCEPT}\n  reason: ", look.wrapped(&shown::line(&told), "  "))
            }
            _ => String::new(),
        };
        // A prompt is one line; what is told before it is shown.
        let (before, prompt) = prompt.rsplit_once('\n').unwrap_or(("", &prompt));
        if !before.is_empty() {
            self.terminal.show(&format!("{before}\n"));
        }
        let line = self.terminal.ask(&shown::line(prompt))?;
        let question = match dialogue.ask() {
            Ask::Value(question, _) | Ask::Again { question, .. } => Some(question.clone()),
            _ => None,
        };
        let heard = dialogue.hear(&line);
        self.answer(&heard, question.as_ref());
        self.save(dialogue);
        Ok(heard)
    }

    fn answer(&mut self, heard: &Heard, question: Option<&Question>) {
        let look = self.measured.look;
        let told = match (heard, question) {
            (Heard::How, Some(question)) => {
                let tool = question.is_reading().then_some(question.tool);
                reports::how_to_measure(question.short(), question.about, tool, look)
            }
            (Heard::Unreadable(why), _) => {
                format!("{}\n", look.hanging(&shown::line(why), "    ", "    "))
            }
            (Heard::NeedsReason, _) => {
                "    A few words, or b to read the level again.\n".to_owned()
            }
            (Heard::AtTheBeginning, _) => "    This is the first question.\n".to_owned(),
            (Heard::Forgotten, _) => "    Taken back.\n".to_owned(),
            (Heard::NotMeasured, _) => "    The record will say: not measured.\n".to_owned(),
            _ => return,
        };
        self.terminal.show(&told);
    }

    /// Shows what is asked together, when it is new.
    fn show_screen(&mut self, dialogue: &Dialogue, question: &Question) {
        if self.screen.as_ref() == Some(&question.screen) {
            return;
        }
        self.screen = Some(question.screen.clone());
        let row = |(own, answer): (&Question, &Answer)| {
            let last = own.last.as_ref().filter(|_| !self.blind);
            let text = |pick: fn(&crate::writing::measuring::Last) -> String| {
                last.map(pick).unwrap_or_default()
            };
            MeasuredRow {
                what: own.short().to_owned(),
                last: text(|last| last.text.clone()),
                on: text(|last| last.on.map(|on| on.to_string()).unwrap_or_default()),
                by: text(|last| last.by.clone().unwrap_or_default()),
                now: today(answer),
            }
        };
        let here = |own: &&(&Question, &Answer)| own.0.screen == question.screen && !own.0.settled;
        let all: Vec<(&Question, &Answer)> = dialogue.answered().collect();
        let rows: Vec<MeasuredRow> = all.iter().filter(here).map(|own| row(*own)).collect();
        let heading = self.heading(&question.screen);
        let text = reports::measuring_screen(&heading, &rows, self.measured.look);
        self.terminal.show(&text);
    }

    fn heading(&self, screen: &Screen) -> String {
        let called = self.measured.called();
        match screen {
            Screen::Day => format!("{called}: the day"),
            Screen::Level => format!("{called}: level first"),
            Screen::Whole => format!("{called}: foot holes and the walk round"),
            Screen::Oar(id) => format!("{called}: oar {id}"),
            Screen::Seat(number) => self.seat(called, *number),
        }
    }

    fn seat(&self, called: &str, number: u32) -> String {
        let seats = self.measured.boat().map_or(&[][..], |boat| &boat.seats);
        let is_it = |own: &&crate::model::Seat| own.number.is_some_and(|own| own.value == number);
        let seat = seats.iter().find(is_it);
        let side = seat.and_then(|seat| seat.side).map(|side| match side.value {
            crate::geometry::Side::Port => ", port",
            crate::geometry::Side::Starboard => ", starboard",
        });
        let oar = seat.and_then(|seat| seat.oar.as_ref());
        let oar = oar.map(|oar| format!(", oar {}", oar.value)).unwrap_or_default();
        let of = seats.len();
        format!("{called}: seat {number} of {of}{}{oar}", side.unwrap_or_default())
    }

    /// What is asked: the name, what may be typed, and what stands there.
    fn prompt(&self, question: &Question, answer: &Answer) -> String {
        let stands = match (answer, &question.last) {
            (Answer::Open, _) if self.blind && question.screen != Screen::Day => String::new(),
            (Answer::Open, Some(last)) => {
                let on = last.on.map(|on| format!(", {on}")).unwrap_or_default();
                format!(" [{}{on}]", last.text)
            }
            (Answer::Open, None) => String::new(),
            (answer, _) => match today(answer).as_str() {
                "" => " [kept]".to_owned(),
                now => format!(" [today {now}]"),
            },
        };
        format!("  {}{}{stands}: ", question.short(), may_be(&question.kind))
    }

    fn save(&mut self, dialogue: &Dialogue) {
        if let Err(why) = self.draft.save(self.measured, dialogue) {
            if !self.unsaved {
                let told = format!("No draft can be saved: {why}. Don't close this terminal.");
                self.terminal.show(&format!("  {}\n", shown::line(&told)));
            }
            self.unsaved = true;
        }
    }

    fn stopped(&self, exit: Exit) -> Done {
        let told = match self.unsaved {
            true => "Stopped. Nothing was written, and no draft could be saved.".to_owned(),
            false => format!(
                "Stopped. Nothing was written; the draft is kept. To go on: tholebook measure {}",
                self.measured.id
            ),
        };
        Done { exit, result: String::new(), told: vec![shown::line(&told)] }
    }
}

/// Returns what was answered today, as it was typed.
fn today(answer: &Answer) -> String {
    match answer {
        Answer::Open | Answer::Kept => String::new(),
        Answer::NotMeasured => "not measured".to_owned(),
        Answer::Read(wording) => plain(wording),
    }
}

fn plain(wording: &Wording) -> String {
    match wording.meaning() {
        Meaning::Word(text) => text.clone(),
        _ => wording.on_one_line(),
    }
}

/// Returns what may be typed, in a word.
fn may_be(kind: &Kind) -> String {
    let (Kind::Value(kind) | Kind::Reading(kind)) = kind else { return String::new() };
    match kind {
        ValueKind::Length | ValueKind::Slope => ", mm".to_owned(),
        ValueKind::Angle => ", deg".to_owned(),
        ValueKind::Weight => ", kg".to_owned(),
        ValueKind::Date => ", like 2026-10-17".to_owned(),
        ValueKind::Word(words) => format!(" ({})", words.join(", ")),
        _ => String::new(),
    }
}

const KEYS: &str = "\
Enter: not measured today, the value keeps its date.  n: not measured.  b: back.
x: take back today's answer.  ?: how do I measure this?  g seat-2: go there.
e: to the end, the rest is not measured today.  q: stop, the draft is kept.
";

const ACCEPT: &str = "  Chock her until the level reads true, then b and read it again. To measure \
all\n  the same, say why; the record keeps the reason.";
