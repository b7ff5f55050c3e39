//! Boats by chance, out of order in every way: true rigs read with the club's tools, and written as
//! a club writes them.

use tholebook::model::Book;
use tholebook::planning::worklist::Worklist;
use tholebook::planning::worklist::worklist;
use tholebook::reading;
use tholebook::rules;
use tholebook::rules::Check;
use tholebook::rules::Finding;
use tholebook::store::Named;
use tholebook::units::Date;
use tholebook::writing::predicting;

use crate::drawing::Draw;
use crate::record::CLUB;
use crate::rig::Boat;

pub(crate) const TODAY: &str = "2026-11-01";

/// How far a boat is out of order.
#[derive(Clone, Copy)]
pub(crate) struct Disorder {
    pub(crate) lean: f64,
    pub(crate) pitch: [f64; 2],
    pub(crate) gap: [f64; 2],
    pub(crate) tip: [f64; 2],
    pub(crate) handle: f64,
    pub(crate) chock: f64,
}

pub(crate) const WILD: Disorder = Disorder {
    lean: 3.0,
    pitch: [2.0, 8.5],
    gap: [-2.0, 20.0],
    tip: [-3.0, 6.0],
    handle: 28.0,
    chock: 30.0,
};

/// Only the blades are out of order.
pub(crate) const UNLIKE: Disorder = Disorder {
    lean: 0.0,
    pitch: [2.6, 7.4],
    gap: [8.0, 8.0],
    tip: [4.0, 4.0],
    handle: 0.0,
    chock: 0.0,
};

/// Returns a boat's texts: every seat out of order as it may come.
pub(crate) fn texts(draw: &mut Draw, by: Disorder) -> Vec<Named> {
    let mut boat = Boat::in_order(draw);
    if by.lean <= 0.0 {
        (boat.trim, boat.roll) = (0.0, 0.0);
    }
    let (inboard, widest) = (draw.between(1130.0, 1170.0), draw.between(48.0, 54.0));
    for seat in &mut boat.seats {
        // Oars of a set: alike but for their collars, and those only where they slipped.
        seat.inboard = inboard;
        (seat.widest, seat.narrowest) = (widest, widest - 4.0);
        seat.put_handle(320.0, boat.dip);
        let mut some =
            |range: f64| if draw.sign() > 0.0 { draw.between(-range, range) } else { 0.0 };
        (seat.aft, seat.out) = (some(by.lean), some(by.lean));
        let slid = some(by.handle);
        seat.inboard += slid;
        seat.chock += some(by.chock);
        seat.gap = seat.widest + draw.between(by.gap[0], by.gap[1]);
        seat.tip = draw.between(by.tip[0], by.tip[1]);
        let pitch = draw.between(by.pitch[0], by.pitch[1]);
        seat.set_pitch(pitch, boat.dip);
    }
    let [boat, oars] = boat.read(draw).texts(0);
    vec![Named::text("club.yaml", CLUB), with_plates(&text(&boat), draw), oars]
}

fn text(named: &Named) -> String {
    match &named.content {
        tholebook::store::Content::Text(text) => text.clone(),
        _ => panic!("a text"),
    }
}

/// Some plates were never measured.
fn with_plates(boat: &str, draw: &mut Draw) -> Named {
    let mut lines = Vec::new();
    for line in boat.lines() {
        let plate = draw.sign() > 0.0;
        let line = match plate {
            true => line.replace("pin: {", "pin: {plate: {along: 100, across: 80}, "),
            false => line.to_owned(),
        };
        lines.push(line.replace("rowlock: {", "rowlock: {horn: 46, turns: free, "));
    }
    Named::text("boats/0.yaml", &format!("{}\n", lines.join("\n")))
}

pub(crate) fn day() -> Date {
    Date::read(TODAY).expect("a day")
}

pub(crate) fn read(texts: &[Named]) -> Book {
    let (book, faults) = reading::read("by chance", texts.to_vec());
    assert!(faults.is_empty(), "{faults:#?}");
    book
}

pub(crate) fn plan(book: &Book) -> Worklist {
    worklist(book, &[], &book.boats[0], day())
}

/// Returns the texts after the work.
pub(crate) fn after(texts: &[Named], book: &Book, list: &Worklist) -> Vec<Named> {
    let changed = predicting::texts(book, list).expect("every change can be written");
    let one = |named: &Named| {
        let changed = changed.iter().find(|(path, _)| *path == named.path);
        changed.map_or(named.clone(), |(path, text)| Named::text(path, text))
    };
    texts.iter().map(one).collect()
}

/// Returns everything found of a book but that the record is predicted.
pub(crate) fn lint(book: &Book) -> Vec<Finding> {
    let checked = rules::check(book, &[], Check { as_of: day() });
    checked.findings.into_iter().filter(|own| own.rule.id != "predicted-not-measured").collect()
}
