//! Boats by chance, by the thousand.

use tholebook::planning::worklist::Work;
use tholebook::rules::Finding;
use tholebook::rules::Level;
use tholebook::store::Content;
use tholebook::store::Named;
use tholebook::working::Attitude;
use tholebook::working::BoatSight;

use crate::boats;
use crate::boats::UNLIKE;
use crate::boats::WILD;
use crate::drawing::Draw;

const BOATS: u64 = 800;

/// What may be found after the work: only what is to be read again first, or, where limits are
/// against each other, what the worklist says is left.
#[test]
fn the_work_brings_every_boat_inside_her_limits() {
    let (mut with_conflicts, mut in_doubt, mut bends, mut contradicted) = (0, 0, 0, 0);
    for seed in 0..BOATS {
        let texts = boats::texts(&mut Draw::seeded(seed), WILD);
        let list = boats::plan(&boats::read(&texts));
        let again = |own: &Finding| {
            let contradicted = |first: &Finding| first.rule.id == "handle-past-mark-disagrees";
            let same = |first: &&Finding| first.rule == own.rule || contradicted(first);
            list.measure.iter().filter(same).any(|first| first.name == own.name)
        };
        let left = |own: &Finding| {
            list.left.iter().any(|left| left.rule == own.rule && left.name == own.name)
        };
        let found = boats::lint(&list.predicted).into_iter();
        let mut faults: Vec<Finding> =
            found.filter(|own| own.level >= Level::Fault && !again(own)).collect();
        // Two readings that only just didn't contradict each other before a collar slid.
        let before = faults.len();
        faults.retain(|own| own.rule.id != "handle-past-mark-disagrees" || !left(own));
        contradicted += before - faults.len();
        let said = !list.conflicts.is_empty() && faults.iter().all(left);
        let deeds: Vec<&str> = list.steps.iter().map(|step| step.deed.as_str()).collect();
        assert!(faults.is_empty() || said, "seed {seed}: {faults:#?}\n{deeds:#?}");
        bends += list.bends();
        with_conflicts += usize::from(!list.conflicts.is_empty());
        in_doubt += usize::from(!list.measure.is_empty());
    }
    // A loophole that every boat slips through would make the test worthless.
    assert!(
        with_conflicts < BOATS as usize / 10 && contradicted < 10,
        "{with_conflicts} {contradicted}"
    );
    // Neither would boats that need no work, or none that any doubt is about.
    assert!(bends > BOATS as usize && in_doubt > BOATS as usize / 10, "{bends} {in_doubt}");
}

/// What the worklist foresees is what its record says when it is read again.
#[test]
fn the_record_says_what_the_worklist_foresees() {
    for seed in 0..100 {
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
        if list.conflicts.is_empty() && list.measure.is_empty() {
            let again = boats::plan(&after);
            assert!(again.steps.is_empty(), "seed {seed}: {:#?}\n{:#?}", list.steps, again.steps);
        }
    }
}

/// Fewer forward horns, each bent to any pitch of a grid, not only to a common one, leave a blade
/// proven wrong or a bent one outside the limits in every case.
#[test]
fn no_smaller_number_of_bends_would_do() {
    let mut tried = [0; 5];
    for seed in 0..400 {
        let texts = boats::texts(&mut Draw::seeded(seed), UNLIKE);
        let book = boats::read(&texts);
        let steps = boats::plan(&book).steps;
        let bends = steps.iter().filter(|step| step.work == Work::BendForwardHorn).count();
        let pitches: Vec<f64> = BoatSight::new(&book, &book.boats[0])
            .seats()
            .map(|seat| seat.pitch(Attitude::Square).expect("measured").value())
            .collect();
        // Every pair of a fine grid would take minutes: of three bends, a few boats are enough.
        if !(1..=3).contains(&bends) || tried[bends] >= [0, 40, 25, 2, 0][bends] {
            continue;
        }
        tried[bends] += 1;
        let step = [0.0, 0.0, 0.02, 0.1][bends];
        each_set_of(bends - 1, |seats| {
            each_pitch(seats, step, &mut Vec::new(), &mut |bent| {
                let wrong = outside(&pitches, bent) || blades_at_fault(&texts, bent);
                assert!(wrong, "seed {seed}: {bent:?} would do, {bends} were planned");
            });
        });
    }
    assert!(tried[1] > 20 && tried[2] > 10 && tried[3] > 0, "{tried:?}");
}

fn each_set_of(count: usize, mut see: impl FnMut(&[usize])) {
    for bits in (0..16_u32).filter(|bits| bits.count_ones() as usize == count) {
        see(&(0..4).filter(|at| bits >> at & 1 == 1).collect::<Vec<_>>());
    }
}

fn each_pitch(
    seats: &[usize],
    step: f64,
    bent: &mut Vec<(usize, f64)>,
    see: &mut impl FnMut(&[(usize, f64)]),
) {
    let Some((seat, others)) = seats.split_first() else { return see(bent) };
    let mut pitch = 3.0;
    while pitch <= 7.0 {
        bent.push((*seat, pitch));
        each_pitch(others, step, bent, see);
        bent.pop();
        pitch += step;
    }
}

/// Whether a bent blade is too far from any other; the limits are 0.6 deg and the band of the grid.
fn outside(pitches: &[f64], bent: &[(usize, f64)]) -> bool {
    let pitch = |at: usize| {
        let own = bent.iter().find(|(seat, _)| *seat == at);
        own.map_or(pitches[at], |(_, pitch)| *pitch)
    };
    let far = |own: f64| (0..pitches.len()).any(|at| (own - pitch(at)).abs() > 0.6);
    bent.iter().any(|(_, own)| far(*own))
}

/// Bends horns by writing other pitches, and asks whether anything is proven against the blades.
fn blades_at_fault(texts: &[Named], bent: &[(usize, f64)]) -> bool {
    let changed = |named: &Named| match &named.content {
        Content::Text(text) if named.path.starts_with("boats/") => {
            let lines = text.lines().scan(0, |seat, line| {
                *seat += usize::from(line.starts_with("  - seat:"));
                let own = bent.iter().find(|(at, _)| at + 1 == *seat);
                Some(match own {
                    Some((_, pitch)) if line.starts_with("    pitch:") => format!(
                        "    pitch: {{catch: {pitch} deg, square: {pitch} deg, finish: {pitch} deg}}"
                    ),
                    _ => line.to_owned(),
                })
            });
            let text = lines.collect::<Vec<_>>().join("\n");
            Named::text(&named.path, &format!("{text}\n"))
        }
        _ => named.clone(),
    };
    let book = boats::read(&texts.iter().map(changed).collect::<Vec<_>>());
    let blades = ["pitch-mismatch", "sides-unequal", "pitch-out-of-range"];
    let found = boats::lint(&book);
    found.iter().any(|own| own.level >= Level::Fault && blades.contains(&own.rule.id))
}
