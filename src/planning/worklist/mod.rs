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
use crate::model::BentPart;
use crate::model::Boat;
use crate::model::Book;
use crate::reading::Fault;
use crate::rules;
use crate::rules::Check;
use crate::rules::Finding;
use crate::rules::Level;
use crate::units::Date;

/// Rules whose findings this work is for, and what of her it is done to. What they find in doubt is
/// read again before it.
const WORKED_ON: [(&str, &str); 12] = [
    ("boat-not-level", LEVEL),
    ("pin-not-vertical", PIN),
    ("pitch-varies-through-arc", PIN),
    ("pitch-out-of-range", PITCH),
    ("pitch-mismatch", PITCH),
    ("sides-unequal", PITCH),
    ("gap-too-tight", GAP),
    ("gap-too-loose", GAP),
    ("horn-hooks", GAP),
    (collars::WRONG, COLLAR),
    (collars::UNLIKE, COLLAR),
    ("chocks-unlike", CHOCK),
];

const LEVEL: &str = "the level";
const PIN: &str = "the pin";
const PITCH: &str = "the pitch";
const GAP: &str = "the gap";
const COLLAR: &str = "the collar";
const CHOCK: &str = "the chock";

/// Readings that describe a boat that is no more: all of them are read again.
const OUT_OF_DATE: [&str; 2] = ["knocked-since", "overdue"];

/// A bob and a blade that say different things of one pin.
const BLADE_AGAINST_BOB: &str = "arc-disagrees";

/// Two readings that contradict each other are read again, both.
const CONTRADICTS: &str = "handle-past-mark-disagrees";

/// A part that is replaced.
const BENT_OFTEN: &str = "bent-often";

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
    let bench = worked(book, || Bench::new(book, at, &waived, as_of));
    let before = |finding: &Finding| (finding.rule, finding.name.clone());
    let tried: Vec<_> = now.iter().filter(|own| own.rule.id == LIFT).map(before).collect();
    let (measure, now): (Vec<Finding>, Vec<Finding>) =
        now.into_iter().partition(|finding| is_in_doubt(&bench, finding));
    // That a bend is to be followed by lifting the oar out is in the list already.
    let told = |finding: &Finding| {
        let again = measure.iter().any(|own| own.rule == finding.rule && own.name == finding.name);
        again || (finding.rule.id == LIFT && !tried.contains(&before(finding)))
    };
    let after = found(&bench.book, faults, bench.boat(), as_of);
    let cured = cured(now, &after);
    let left = after.into_iter().filter(|finding| {
        finding.level >= Level::Unsure && finding.waived.is_none() && !told(finding)
    });
    let left = left.map(|finding| with_no_other_work(&bench, finding)).collect();
    let changes = predicted::changes(book, &bench);
    let Bench { book: predicted, steps, not_planned, conflicts, .. } = bench;
    let none = Worklist::none(predicted, boat, as_of);
    Worklist { measure, steps, not_planned, conflicts, waived, cured, left, changes, ..none }
}

/// Returns what this work is for and puts right.
fn cured(before: Vec<Finding>, after: &[Finding]) -> Vec<Finding> {
    let same = |one: &Finding, other: &Finding| one.rule == other.rule && one.name == other.name;
    let is_for = |own: &Finding| worked_on(own).is_some() || own.rule.id == BENT_OFTEN;
    let is_cured = |own: &Finding| is_for(own) && !after.iter().any(|left| same(own, left));
    before.into_iter().filter(is_cured).collect()
}

/// What was looked at and not planned is not bent after all because its rule, which sees nothing
/// else, would have it bent.
fn with_no_other_work(bench: &Bench, mut finding: Finding) -> Finding {
    let Some(what) = worked_on(&finding).filter(|_| bench::is_proven(&finding)) else {
        return finding;
    };
    let name = &finding.name;
    let against = |own: &Conflict| name.is_within(own.name.as_str());
    let mut missing: Vec<&str> = Vec::new();
    for own in bench.not_planned.iter().filter(|own| own.what == what) {
        let here = name.is_within(own.name.as_str()) || own.name.is_within(name.as_str());
        if here && !missing.contains(&own.missing.as_str()) {
            missing.push(&own.missing);
        }
    }
    if bench.conflicts.iter().any(against) {
        finding.remedy = "No work is planned for it: see what can't be cured together.".to_owned();
    } else if !missing.is_empty() {
        let missing = missing.join("; ");
        finding.remedy = format!("No work is planned for it before this is known: {missing}.");
    }
    finding
}

/// Does all of the work; anew where a rowlock turns out to be replaced after a horn of the old one
/// was bent.
fn worked(before: &Book, new: impl Fn() -> Bench) -> Bench {
    let mut replaced: Vec<u32> = Vec::new();
    loop {
        let mut bench = new();
        replaced.iter().for_each(|seat| bench.replace(*seat, BentPart::ForwardHorn));
        in_order(&mut bench, before);
        let in_vain = |step: &&Step| {
            let horn = matches!(step.work, Work::BendForwardHorn | Work::BendAfterHorn);
            horn && step.seat.is_some_and(|seat| bench.is_replaced(seat, BentPart::ForwardHorn))
        };
        let in_vain: Vec<u32> =
            bench.steps.iter().filter(in_vain).filter_map(|step| step.seat).collect();
        if in_vain.iter().all(|seat| replaced.contains(seat)) {
            return bench;
        }
        replaced.extend(in_vain);
    }
}

/// Does all of the work, stage by stage.
fn in_order(bench: &mut Bench, before: &Book) {
    level::plan(bench);
    pins::plan(bench);
    let gaps = gaps::before(bench);
    pitch::plan(bench);
    gaps::plan(bench, &gaps);
    read_again(bench);
    collars::plan(bench);
    chocks::plan(bench);
    predicted::restate(bench, before);
    predicted::record_bends(bench);
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
    let handles = match bench.seats_words(bench.beds_moved.iter().copied()) {
        beds if beds.is_empty() => String::new(),
        beds => format!(
            " At {beds}, where the bed went in or out with the pin, read the spread and the handle again too, before any collar is slid."
        ),
    };
    bench.step(Step {
        work: Work::ReadAgain,
        seat: None,
        oar: None,
        deed: format!(
            "At {seats}, read the pitch and the gap again, and lift the oar out by hand square off, at the catch, at the finish and lying along the boat.{handles} Write down what you read, and each bend."
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

/// Returns what the work for a finding is done to, where this work is for it.
fn worked_on(finding: &Finding) -> Option<&'static str> {
    WORKED_ON.iter().find(|(rule, _)| *rule == finding.rule.id).map(|(_, what)| *what)
}

/// Whether a finding is too close to call, two readings contradict each other, or readings are out
/// of date.
fn is_in_doubt(bench: &Bench, finding: &Finding) -> bool {
    let unsure = finding.level == Level::Unsure || is_not_shown(finding);
    let rule = finding.rule.id;
    (worked_on(finding).is_some() && unsure)
        || rule == CONTRADICTS
        || OUT_OF_DATE.contains(&rule)
        || (rule == BLADE_AGAINST_BOB && its_pin_is_moved(bench, finding))
}

fn its_pin_is_moved(bench: &Bench, finding: &Finding) -> bool {
    let moves = |step: &&Step| matches!(step.work, Work::PackPin | Work::BendPin);
    let record = bench.boat().record();
    let here = |step: &Step| {
        let seat = step.seat.map(|number| record.at(format_args!("seat-{number}")));
        seat.is_some_and(|seat| finding.name.is_within(seat.as_str()))
    };
    bench.steps.iter().filter(moves).any(here)
}
