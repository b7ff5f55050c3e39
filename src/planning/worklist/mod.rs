//! The work that brings a boat inside all her limits, in the order in which it is done.
//!
//! Each stage asks the rules what is wrong with her as she is after the stage before, chooses, and
//! writes down what its work makes of her readings; so what one piece of work does to the others is
//! carried through, and the rules themselves say whether it was enough. What is only in doubt is
//! read again and never bent.

mod alike;
mod bench;
mod blade;
mod chocks;
mod collars;
mod gaps;
mod level;
mod pins;
mod pitch;
mod predicted;
mod step;

pub use step::{At, Change, ChangeTo, Conflict, NotPlanned, Step, Work, Worklist};

use self::bench::Bench;
use self::bench::is_not_shown;
use crate::model::Boat;
use crate::model::Book;
use crate::reading::Fault;
use crate::rules;
use crate::rules::Check;
use crate::rules::Finding;
use crate::rules::Level;
use crate::units::Date;

/// Rules whose findings this work is for. What they find in doubt is read again before it.
const WORKED_ON: [&str; 12] = [
    "boat-not-level",
    "pin-not-vertical",
    "pitch-varies-through-arc",
    "pitch-out-of-range",
    "pitch-mismatch",
    "sides-unequal",
    "gap-too-tight",
    "gap-too-loose",
    "horn-hooks",
    collars::WRONG,
    collars::UNLIKE,
    "chocks-unlike",
];

/// Two readings that contradict each other are read again, both.
const CONTRADICTS: &str = "handle-past-mark-disagrees";

/// An oar that was not lifted out since the last bend.
const LIFT: &str = "lift-not-tried";

/// Returns the work for one boat of a book; `faults` is what was told while it was read. A boat that
/// is not of this book has none.
#[must_use]
pub fn worklist(book: &Book, faults: &[Fault], boat: &Boat, as_of: Date) -> Worklist {
    let now = found(book, faults, boat, as_of);
    let (waived, now): (Vec<_>, Vec<_>) =
        now.into_iter().partition(|finding| finding.waived.is_some());
    let at = book.boats.iter().position(|own| own.file == boat.file && own.id == boat.id);
    let Some(at) = at else { return Worklist::none(book.clone(), boat, as_of) };
    let bench = worked(Bench::new(book, at, &waived, as_of), book);
    let before = |finding: &Finding| (finding.rule, finding.name.clone());
    let tried: Vec<_> = now.iter().filter(|own| own.rule.id == LIFT).map(before).collect();
    let measure: Vec<Finding> = now.into_iter().filter(is_in_doubt).collect();
    // That a bend is to be followed by lifting the oar out is in the list already.
    let told = |finding: &Finding| {
        let again = measure.iter().any(|own| own.rule == finding.rule && own.name == finding.name);
        again || (finding.rule.id == LIFT && !tried.contains(&before(finding)))
    };
    let after = found(&bench.book, faults, bench.boat(), as_of);
    let left = after.into_iter().filter(|finding| {
        finding.level >= Level::Unsure && finding.waived.is_none() && !told(finding)
    });
    let (left, changes) = (left.collect(), predicted::changes(book, &bench));
    let Bench { book: predicted, steps, not_planned, conflicts, .. } = bench;
    let none = Worklist::none(predicted, boat, as_of);
    Worklist { measure, steps, not_planned, conflicts, waived, left, changes, ..none }
}

/// Does all of the work, stage by stage.
fn worked(mut bench: Bench, before: &Book) -> Bench {
    level::plan(&mut bench);
    pins::plan(&mut bench);
    let gaps = gaps::before(&bench);
    pitch::plan(&mut bench);
    gaps::plan(&mut bench, &gaps);
    read_again(&mut bench);
    collars::plan(&mut bench);
    chocks::plan(&mut bench);
    predicted::restate(&mut bench, before);
    predicted::record_bends(&mut bench);
    bench
}

/// What was bent or packed is worked out: only a reading tells what came of it.
fn read_again(bench: &mut Bench) {
    let touched = |at: &usize| {
        let number = bench.number(*at);
        let here = |step: &Step| step.work > Work::Level && step.seat == number;
        number.is_some() && bench.steps.iter().any(here)
    };
    let seats: Vec<usize> = bench.seats().filter(touched).collect();
    if seats.is_empty() {
        return;
    }
    let seats = bench.seats_words(seats);
    bench.step(Step {
        work: Work::ReadAgain,
        seat: None,
        oar: None,
        deed: format!(
            "At {seats}, read the pitch and the gap again, and lift the oar out by hand square off, at the catch, at the finish and lying along the boat. Write down what you read, and each bend."
        ),
        because: "Each of these was worked out; only a reading tells what came of it.".to_owned(),
        amounts: Vec::new(),
    });
}

/// Returns what is found of one boat, and of how her oars' collars stand.
fn found(book: &Book, faults: &[Fault], boat: &Boat, as_of: Date) -> Vec<Finding> {
    let mut checked = rules::check(book, faults, Check { as_of });
    checked.waive(book, as_of);
    let collars = boat.oars.as_ref().map(|set| format!("{}/*/inboard", set.value));
    let own = |finding: &Finding| {
        let unlike = finding.rule.id == collars::UNLIKE;
        let collar = collars.as_ref().is_some_and(|collars| finding.name.is_within(collars));
        finding.name.is_within(&boat.id.value) || (unlike && collar)
    };
    checked.findings.into_iter().filter(own).collect()
}

/// Whether a finding is too close to call, or two readings contradict each other.
fn is_in_doubt(finding: &Finding) -> bool {
    let unsure = finding.level == Level::Unsure || is_not_shown(finding);
    (WORKED_ON.contains(&finding.rule.id) && unsure) || finding.rule.id == CONTRADICTS
}
