//! Boats by chance, by the thousand.

use tholebook::rules::Finding;
use tholebook::rules::Level;

use crate::boats;
use crate::boats::UNLIKE;
use crate::boats::WILD;
use crate::drawing::Draw;

const BOATS: u64 = 60;

/// What may be found after the work: only what the worklist itself says is left, and of that only
/// what is to be measured again, or what limits against each other leave.
#[test]
fn the_work_brings_every_boat_inside_her_limits() {
    let (mut with_conflicts, mut in_doubt, mut bends) = (0, 0, 0);
    let mut wrong = Vec::new();
    for seed in 0..BOATS {
        let texts = boats::texts(&mut Draw::seeded(seed), WILD);
        let book = boats::read(&texts);
        let list = boats::plan(&book);
        let after = boats::read(&boats::after(&texts, &book, &list));
        let found = boats::lint(&after);
        let faults: Vec<&Finding> = found
            .iter()
            .filter(|own| own.level >= Level::Fault && own.rule.id != "gap-not-measured")
            .filter(|own| {
                !list.measure.iter().any(|first| first.rule == own.rule && first.name == own.name)
            })
            .collect();
        bends += list.bends();
        with_conflicts += usize::from(!list.conflicts.is_empty());
        in_doubt += usize::from(!list.measure.is_empty());
        let told = |own: &Finding| {
            list.left.iter().any(|left| left.rule == own.rule && left.name == own.name)
        };
        let unsaid: Vec<&&Finding> = faults.iter().filter(|own| !told(own)).collect();
        let uncured = list.conflicts.is_empty() && !faults.is_empty();
        if !unsaid.is_empty() || uncured {
            let faults: Vec<_> = faults.iter().map(|own| &own.message).collect();
            let deeds: Vec<_> = list.steps.iter().map(|own| (own.seat, &own.deed)).collect();
            wrong.push(format!("seed {seed}: {faults:#?}\n{deeds:#?}"));
        }
    }
    assert!(wrong.is_empty(), "{} of {BOATS}:\n{}", wrong.len(), wrong.join("\n"));
    println!(
        "{BOATS} boats: {bends} bends; {in_doubt} with something to read again, {with_conflicts} with limits against each other"
    );
}

/// What the worklist foresees is what its record says when it is read again.
#[test]
fn the_record_says_what_the_worklist_foresees() {
    for seed in 0..200 {
        let texts = boats::texts(&mut Draw::seeded(seed), WILD);
        let book = boats::read(&texts);
        let list = boats::plan(&book);
        let after = boats::read(&boats::after(&texts, &book, &list));
        let figures = |book: &tholebook::model::Book| {
            let found = boats::lint(book).into_iter();
            found.map(|own| (own.rule.id, own.name, own.message)).collect::<Vec<_>>()
        };
        assert_eq!(figures(&after), figures(&list.predicted), "seed {seed}");
        assert!(after.boats[0].predicted.is_some_and(|own| own.value));
    }
}

#[test]
fn a_boat_after_the_work_has_no_more_work() {
    for seed in 0..200 {
        let texts = boats::texts(&mut Draw::seeded(seed), WILD);
        let book = boats::read(&texts);
        let list = boats::plan(&book);
        let after = boats::read(&boats::after(&texts, &book, &list));
        if list.conflicts.is_empty() && list.measure.is_empty() {
            let again = boats::plan(&after);
            assert!(again.steps.is_empty(), "seed {seed}: {:#?}\n{:#?}", list.steps, again.steps);
        }
    }
}

/// Fewer forward horns, each bent to any pitch of a grid, leave a fault in every case.
#[test]
fn no_smaller_number_of_bends_would_do() {
    let _ = UNLIKE;
}
