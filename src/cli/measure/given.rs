//! Answers given all at once in a file: the same rules, everything or nothing.

use std::fs;
use std::io;
use std::io::Read as _;
use std::path::Path;

use super::draft::Draft;
use super::ending;
use super::ending::Hearer;
use super::is_terminal;
use super::subject::Measured;
use super::terminal::Terminal;
use crate::cli::arguments::Measure;
use crate::cli::exit::Exit;
use crate::cli::output::Done;
use crate::reports::shown;
use crate::store::MAX_FILE_BYTES;
use crate::writing::measuring::Dialogue;
use crate::writing::measuring::LineFault;
use crate::writing::measuring::Lines;
use crate::writing::measuring::Why;

/// Measures by the answers in a file.
///
/// # Errors
///
/// What the command comes to instead; nothing is written then.
pub(super) fn run(measured: &Measured, arguments: &Measure, file: &Path) -> Result<Done, Done> {
    let text = text(file)?;
    let lines = Lines::read(&text).map_err(|faults| refused(&faults))?;
    let mut dialogue = measured.dialogue(arguments.second)?;
    dialogue.take_all(&lines).map_err(|faults| refused(&faults))?;
    let mut told = Vec::new();
    if Draft::of(measured, arguments.second).is_there() {
        told.push(format!(
            "There is a draft too, which is not used: tholebook measure {}",
            measured.id
        ));
    }
    if !arguments.second {
        level(measured, &mut dialogue)?;
        told.extend(once_only(measured, &dialogue));
    }
    dialogue.close();
    let terminal = Some(()).filter(|()| !arguments.no_input && is_terminal());
    let hearer = match terminal.and_then(|()| Terminal::open()) {
        Some(terminal) => Hearer::at(terminal),
        None => Hearer::nobody(),
    };
    let mut done = ending::run(measured, arguments, &dialogue, hearer, None)?;
    told.append(&mut done.told);
    Ok(Done { told: told.iter().map(|line| shown::line(line)).collect(), ..done })
}

/// A boat out of level, or not levelled, is refused without a reason.
fn level(measured: &Measured, dialogue: &mut Dialogue) -> Result<(), Done> {
    let nothing_of_level = measured.boat().is_none() || dialogue.accepted().is_some();
    if nothing_of_level || !dialogue.reads_anything() {
        return Ok(());
    }
    let beyond = measured.beyond_level(dialogue);
    match dialogue.not_level(beyond) {
        None => Ok(()),
        Some(why) => {
            let told = [
                format!("Not level: {why}. Nothing was written."),
                "Chock her until the level reads true and read it again; or say why she is measured \
                 all the same, on a line of the file: rigged/level/accepted: the reason"
                    .to_owned(),
            ];
            Err(Done::refused(Exit::Findings, told.map(|line| shown::line(&line)).to_vec()))
        }
    }
}

/// Returns a line for each value that was read once and should have been read twice. It counts all
/// the same: a danger must be easier to write down than to leave out.
fn once_only(measured: &Measured, dialogue: &Dialogue) -> Vec<String> {
    let mut told = Vec::new();
    let judged = measured.judged(dialogue);
    for question in dialogue.read_once() {
        let danger = judged.as_ref().is_some_and(|judged| judged.verdict(question).1);
        let name = &question.name;
        match dialogue.why_again_of(question, danger) {
            Some(Why::Danger) => told.push(format!(
                "{name}: a danger, and read once only. Read it again and write both: [first, second]"
            )),
            Some(Why::Jump(how)) => told.push(format!(
                "{name}: {how}, and read once only. Read it again and write both: [first, second]"
            )),
            None => {}
        }
    }
    told
}

fn text(file: &Path) -> Result<String, Done> {
    let read = || -> io::Result<String> {
        let mut text = String::new();
        let from: Box<dyn io::Read> = if file == Path::new("-") {
            Box::new(io::stdin().lock())
        } else {
            Box::new(fs::File::open(file)?)
        };
        from.take(MAX_FILE_BYTES).read_to_string(&mut text)?;
        Ok(text)
    };
    read().map_err(|error| {
        let file = shown::line(&file.to_string_lossy());
        let told = format!("The answers in {file} could not be read: {error}");
        Done::refused(Exit::NotChecked, vec![told])
    })
}

fn refused(faults: &[LineFault]) -> Done {
    let mut told: Vec<String> =
        faults.iter().map(|fault| shown::line(&fault.to_string())).collect();
    told.push("Nothing was written.".to_owned());
    Done::refused(Exit::Usage, told)
}
