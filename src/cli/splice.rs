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
use crate::store::Marks;
use crate::store::saving::save_over;
use crate::writing::editing::Meaning;
use crate::writing::splicing;
use crate::writing::splicing::Change;
use crate::writing::splicing::Labels;
use crate::writing::splicing::Sides;

const OURS: &str = "ours";
const THEIRS: &str = "theirs";

/// What the texts were joined into.
struct Joined {
    text: String,
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
    let joined = joined(arguments, &base, &ours, &theirs)?;
    if let Err(error) = save_over(&arguments.ours, &joined.text) {
        return Err(failed("written", &arguments.ours, &error));
    }
    let exit = if joined.disputed.is_empty() { Exit::Clear } else { Exit::Findings };
    let file = arguments.path.as_deref().unwrap_or(&arguments.ours);
    let file = shown::line(&file.display().to_string());
    let told = joined.disputed.iter().map(|why| shown::line(&format!("{file}: {why}")));
    Ok(Done { exit, result: String::new(), told: told.collect() })
}

fn read(path: &Path) -> Result<String, Done> {
    let bytes = fs::read(path).map_err(|error| failed("read", path, &error))?;
    String::from_utf8(bytes).map_err(|_| {
        let told = format!("{} is not UTF-8, so it can't be joined.", path.display());
        Done::refused(Exit::NotChecked, vec![shown::line(&told)])
    })
}

fn failed(done: &str, path: &Path, error: &std::io::Error) -> Done {
    let told = format!("{} could not be {done}: {error}", path.display());
    Done::refused(Exit::NotChecked, vec![shown::line(&told)])
}

fn joined(arguments: &Splice, base: &str, ours: &str, theirs: &str) -> Result<Joined, Done> {
    let sides = Sides { base, ours, theirs };
    let marks = Marks { ours: OURS, theirs: THEIRS, size: arguments.marks };
    let by_lines = store::by_lines(base.as_bytes(), ours.as_bytes(), theirs.as_bytes(), marks)
        .map(|merge| (String::from_utf8_lossy(&merge.text).into_owned(), merge.clean))
        .map_err(|said| Done::refused(Exit::NotChecked, vec![shown::line(&said)]))?;
    let labels = Labels { ours: OURS, theirs: THEIRS, size: arguments.marks.into() };
    let Ok(mut changes) = splicing::changes(&sides) else {
        return Ok(of_lines(by_lines, "one of the texts has a fault; joined line by line"));
    };
    let Ok(by_fields) = splicing::joined(&sides, &changes, &labels, &[]) else {
        return Ok(of_lines(
            by_lines,
            "a change could not be put in by itself; joined line by line",
        ));
    };
    let disputed: Vec<String> = changes.iter().filter(|own| own.disputed).map(in_words).collect();
    if !disputed.is_empty() {
        return Ok(Joined { text: by_fields, disputed });
    }
    let text = with_both_layouts(by_lines, by_fields);
    let together = Together::of(arguments, ours, theirs, &text)?;
    if together.unsafe_only_so.is_empty() {
        let disputed = together.not_looked_at.into_iter().collect();
        return Ok(Joined { text, disputed });
    }
    together.put_in_dispute(&mut changes);
    let reasons = together.reasons();
    let text = splicing::joined(&sides, &changes, &labels, &reasons).unwrap_or(text);
    Ok(Joined { text, disputed: reasons })
}

/// What was joined line by line is never taken for good: nobody read it.
fn of_lines((text, _): (String, bool), why: &str) -> Joined {
    Joined { text, disputed: vec![format!("{why}: look it through, then run tholebook lint")] }
}

/// Lines that git can join keep the layout and the comments of both sides, if they say the same.
fn with_both_layouts((lines, clean): (String, bool), fields: String) -> String {
    let says = |text: &str| {
        let tree = tree::read(text);
        let sound = tree.faults.is_empty() && tree.complete;
        tree.root.filter(|_| sound).map(|root| Meaning::of(&root).settled())
    };
    if clean && says(&lines).is_some() && says(&lines) == says(&fields) { lines } else { fields }
}

fn in_words(change: &Change) -> String {
    format!("both sides changed {}", change.at)
}
