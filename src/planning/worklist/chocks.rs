//! Back chocks are moved until they are alike and suit the crews; foot holes follow.

use super::alike;
use super::alike::Choice;
use super::alike::Item;
use super::alike::Room;
use super::bench::Bench;
use super::bench::is_proven;
use super::bench::set_length;
use super::step::Step;
use super::step::Work;
use crate::model::Boat;
use crate::model::Crew;
use crate::model::LimitKey;
use crate::model::Part;
use crate::model::Reading;
use crate::rules;
use crate::rules::Finding;
use crate::rules::words;

/// Plans the chocks of every seat together.
pub(super) fn plan(bench: &mut Bench) {
    let found: Vec<Finding> =
        [bench.at_boat("chock-distance"), bench.at_boat("chocks-unlike")].concat();
    for at in bench.seats() {
        let seat = bench.seat(at);
        if let Err(lack) = seat.chock_to_pin() {
            let (name, missing) = (seat.name(), lack.to_string());
            bench.not_planned(name, "the chock", missing);
        }
    }
    if !found.iter().any(is_proven) {
        return;
    }
    let suits = rules::chock_that_suits(&bench.sight());
    let (seats, items) = items(bench, suits, &found);
    let alike = bench.limit(LimitKey::Chocks, Part::Most).unwrap_or(f64::INFINITY);
    let chosen =
        alike::choose(&items, alike, |_| Room::ALL, |moved, to| holds(bench, &seats, moved, to));
    match chosen {
        Some(choice) => move_all(bench, &seats, &items, &choice, &found),
        None => tell_conflict(bench),
    }
}

fn items(bench: &Bench, suits: Option<(f64, f64)>, found: &[Finding]) -> (Vec<usize>, Vec<Item>) {
    let room =
        suits.map_or(Room::ALL, |(aim, within)| Room { least: aim - within, most: aim + within });
    let known = bench.seats().filter_map(|at| {
        let seat = bench.seat(at);
        let value = seat.chock_to_pin().ok()?.value();
        let name = seat.name().at("chock-to-pin");
        let may_stay = !found.iter().any(|finding| finding.name == name && is_proven(finding));
        let wish = suits.map_or(value, |(aim, _)| aim);
        Some((at, Item { value, may_stay, room: Some(room), wish }))
    });
    known.unzip()
}

fn holds(bench: &mut Bench, seats: &[usize], moved: &[bool], to: f64) -> bool {
    let before: Vec<_> =
        seats.iter().map(|at| bench.boat().seats[*at].chock_to_pin.clone()).collect();
    for (at, _) in seats.iter().zip(moved).filter(|(_, moved)| **moved) {
        set_length(&mut bench.seat_mut(*at).chock_to_pin, to);
    }
    let holds = !bench.is_proven("chocks-unlike");
    for (at, before) in seats.iter().zip(before) {
        bench.seat_mut(*at).chock_to_pin = before;
    }
    holds
}

fn move_all(
    bench: &mut Bench,
    seats: &[usize],
    items: &[Item],
    choice: &Choice,
    found: &[Finding],
) {
    let moved = choice.moved.iter().filter(|moved| **moved).count();
    let why = format!(
        "The fewest chocks that make all alike: {moved} of {}, to the common place nearest to what suits her crews.",
        choice.moved.len()
    );
    for (index, at) in seats.iter().enumerate() {
        if !choice.moved[index] {
            continue;
        }
        let name = bench.seat(*at).name().at("chock-to-pin");
        let own = found.iter().find(|finding| finding.name == name);
        let because = own.or(found.first()).map_or("", |finding| &finding.message);
        move_one(bench, *at, choice.to - items[index].value, &format!("{because}. {why}"));
    }
}

fn move_one(bench: &mut Bench, at: usize, by: f64, because: &str) {
    let own = &mut bench.seat_mut(at).chock_to_pin;
    let to = own.as_ref().map_or(0.0, Reading::mean) + by;
    set_length(own, to);
    let way = if by > 0.0 { "to the bow" } else { "to the stern" };
    let deed = format!(
        "Move the back chock {way} by {}, to {} from the pin.",
        words::number(by.abs(), "mm"),
        words::number(to, "mm")
    );
    let seat = bench.number(at);
    bench.step(Step {
        work: Work::MoveChock,
        seat,
        oar: None,
        deed,
        because: because.to_owned(),
        amounts: vec![("move_mm", by), ("chock_mm", to)],
    });
    foot_holes(bench, at, by);
}

/// A chock moved to the bow is further from the same hole: the feet come nearer by as much.
fn foot_holes(bench: &mut Bench, at: usize, by: f64) {
    let Some(apart) = bench.boat().foot_holes.apart.as_ref().map(Reading::mean) else { return };
    let holes = (-by / apart).round();
    let Some(seat) = bench.number(at).filter(|_| apart > 0.0 && holes.abs() >= 1.0) else { return };
    let way = if holes > 0.0 { "further from" } else { "nearer to" };
    let many = if holes.abs() > 1.0 { "holes" } else { "hole" };
    let crews: Vec<String> = bench
        .book
        .crews_of(bench.boat())
        .filter_map(|crew| of_crew(bench.boat(), crew, seat, holes))
        .collect();
    let crews = if crews.is_empty() { String::new() } else { format!(": {}", crews.join("; ")) };
    let deed = format!("Feet {:.0} {many} {way} the seat{crews}.", holes.abs());
    let apart = words::limit(apart, "mm");
    bench.step(Step {
        work: Work::MoveFootHole,
        seat: Some(seat),
        oar: None,
        deed,
        because: format!(
            "The chock moved; the holes are {apart} apart, and the legs stay as long."
        ),
        amounts: vec![("holes", holes)],
    });
}

fn of_crew(boat: &Boat, crew: &Crew, seat: u32, by: f64) -> Option<String> {
    let at_seat = |own: &&crate::model::Rower| own.seat.is_some_and(|own| own.value == seat);
    let hole = crew.rowers.iter().find(at_seat)?.foot_hole?.value;
    let to = f64::from(hole) + by;
    let count = boat.foot_holes.count.map_or(f64::INFINITY, |count| f64::from(count.value));
    let none = if (1.0..=count).contains(&to) { "" } else { ", which she doesn't have" };
    Some(format!("crew {}, hole {to:.0} in place of {hole}{none}", crew.id.value))
}

fn tell_conflict(bench: &mut Bench) {
    let name = bench.boat().record();
    let limits = [
        bench.limit_words(LimitKey::Chock, Part::Within, "mm"),
        bench.limit_words(LimitKey::Chocks, Part::Most, "mm"),
    ];
    let says =
        format!("no common place of the back chocks keeps both limits: {}", limits.join("; "));
    bench.conflict(name, says);
}
