//! `splice`: two changed texts of a record made one, field by field, as git's merge asks for it.

mod together;

use std::fs;
use std::path::Path;

use self::together::Together;
use super::arguments::Splice;
use super::exit::Exit;
use super::output::Done;
use crate::reading::tree;
use crate::reports::shown;
use crate::store;
use crate::store::LineMerge;
use crate::store::Marks;
use crate::store::saving::save_over;
use crate::writing::editing::Meaning;
use crate::writing::splicing;
use crate::writing::splicing::Change;
use crate::writing::splicing::Dispute;
use crate::writing::splicing::Labels;
use crate::writing::splicing::Sides;

const BASE: &str = "what both began from";
const OURS: &str = "ours";
const THEIRS: &str = "theirs";

/// What the texts were joined into.
struct Joined {
    text: Vec<u8>,
    /// What keeps it in conflict, in words; nothing where it is joined for good.
    disputed: Vec<String>,
}

/// Runs the command.
pub(super) fn run(arguments: &Splice) -> Done {
    run_or_refused(arguments).unwrap_or_else(|refused| refused)
}

fn run_or_refused(arguments: &Splice) -> Result<Done, Done> {
    let [base, ours, theirs] = [&arguments.base, &arguments.ours, &arguments.theirs];
    let [base, ours, theirs] = [read(base)?, read(ours)?, read(theirs)?];
    let joined = joined(arguments, [&base, &ours, &theirs])?;
    if let Err(error) = save_over(&arguments.ours, &joined.text) {
        return Err(failed("written", &arguments.ours, &error));
    }
    let exit = if joined.disputed.is_empty() { Exit::Clear } else { Exit::Findings };
    let file = arguments.path.as_deref().unwrap_or(&arguments.ours);
    let file = shown::line(&file.display().to_string());
    let told = joined.disputed.iter().map(|why| shown::line(&format!("{file}: {why}")));
    let mut told: Vec<String> = told.collect();
    if arguments.path.is_none() {
        told.push("Not looked at: whether the result is safe. Name the record with --path.".into());
    }
    Ok(Done { exit, result: String::new(), told })
}

fn read(path: &Path) -> Result<Vec<u8>, Done> {
    fs::read(path).map_err(|error| failed("read", path, &error))
}

fn failed(done: &str, path: &Path, error: &std::io::Error) -> Done {
    let told = format!("{} could not be {done}: {error}", path.display());
    Done::refused(Exit::NotChecked, vec![shown::line(&told)])
}

fn joined(arguments: &Splice, bytes: [&[u8]; 3]) -> Result<Joined, Done> {
    let marks = Marks { ours: OURS, theirs: THEIRS, size: arguments.marks };
    let by_lines = store::by_lines(bytes[0], bytes[1], bytes[2], marks)
        .map_err(|said| Done::refused(Exit::NotChecked, vec![shown::line(&said)]))?;
    let texts = match readable(bytes) {
        Ok(texts) => texts,
        Err(why) => return Ok(of_lines(by_lines, &why)),
    };
    let sides = Sides { base: texts[0], ours: texts[1], theirs: texts[2] };
    by_fields(arguments, &sides, by_lines)
}

/// Returns the three texts, or why one of them can't be read as a record.
fn readable(bytes: [&[u8]; 3]) -> Result<[&str; 3], String> {
    let mut texts = [""; 3];
    for ((text, bytes), side) in texts.iter_mut().zip(bytes).zip([BASE, OURS, THEIRS]) {
        *text = std::str::from_utf8(bytes).map_err(|_| format!("{side} is not UTF-8"))?;
        let fault = tree::read(text).faults.into_iter().next();
        let is_new = side == BASE && text.trim().is_empty();
        if let Some(fault) = fault.filter(|_| !is_new) {
            let line = text[..fault.at.start].matches('\n').count() + 1;
            return Err(format!("{side} has a fault in line {line}"));
        }
    }
    Ok(texts)
}

fn by_fields(arguments: &Splice, sides: &Sides<'_>, by_lines: LineMerge) -> Result<Joined, Done> {
    let labels = Labels { ours: OURS, theirs: THEIRS, size: arguments.marks.into() };
    let Ok(mut changes) = splicing::changes(sides) else {
        return Ok(of_lines(by_lines, "it can't be read as a record"));
    };
    let Ok(by_fields) = splicing::joined(sides, &changes, &labels, &[]) else {
        return Ok(of_lines(by_lines, "a change could not be put in by itself"));
    };
    let disputed: Vec<String> = changes.each.iter().filter_map(in_words).collect();
    if !disputed.is_empty() {
        return Ok(Joined { text: by_fields.into_bytes(), disputed });
    }
    let text = with_both_layouts(by_lines, by_fields);
    let together = Together::of(arguments, sides.ours, sides.theirs, &text)?;
    if together.unsafe_only_so.is_empty() {
        let disputed = together.not_looked_at.into_iter().collect();
        return Ok(Joined { text: text.into_bytes(), disputed });
    }
    together.put_in_dispute(&mut changes.each);
    let reasons = together.reasons();
    let text = splicing::joined(sides, &changes, &labels, &reasons).unwrap_or(text);
    Ok(Joined { text: text.into_bytes(), disputed: reasons })
}

/// What was joined line by line is never taken for good: nobody read it.
fn of_lines(by_lines: LineMerge, why: &str) -> Joined {
    let marks = match by_lines.clean {
        true => "there are no marks in it",
        false => "both forms stand between marks",
    };
    let disputed = format!(
        "{why}, so it was joined line by line; {marks}. Look it through, then run tholebook lint"
    );
    Joined { text: by_lines.text, disputed: vec![disputed] }
}

/// Lines that git can join keep the layout and the comments of both sides, if they say the same.
fn with_both_layouts(by_lines: LineMerge, fields: String) -> String {
    let says = |text: &str| {
        let tree = tree::read(text);
        let sound = tree.faults.is_empty() && tree.complete;
        tree.root.filter(|_| sound).map(|root| Meaning::of(&root).settled())
    };
    let lines = String::from_utf8(by_lines.text).ok().filter(|_| by_lines.clean);
    let same = |lines: &String| says(lines).is_some() && says(lines) == says(&fields);
    lines.filter(same).unwrap_or(fields)
}

fn in_words(change: &Change) -> Option<String> {
    let at = &change.at;
    Some(match change.dispute? {
        Dispute::Both => format!("both sides changed {at}"),
        Dispute::Signature => format!("both sides signed anew: {at}"),
        Dispute::Remeasured => {
            format!("one side measured her anew on another day, the other changed {at}")
        }
        Dispute::Together => format!("{at} is not sound together with the other side"),
    })
}
