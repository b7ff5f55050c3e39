//! A new boat: her seats from her class, her oars from their set.

use super::New;
use super::USUAL_CLASS;
use super::none_such;
use super::refused;
use crate::cli::arguments::AddBoat;
use crate::cli::arguments::FirstSide;
use crate::cli::lint::today;
use crate::cli::output::Done;
use crate::geometry::Side;
use crate::model::Boat;
use crate::model::Book;
use crate::model::Class;
use crate::model::OarSet;
use crate::model::Word as _;
use crate::reading::RecordKind;
use crate::writing::blank::Blank;
use crate::writing::editing::word;

/// What the book has for the new boat.
struct Known<'b> {
    class: &'b Class,
    like: Option<&'b Boat>,
    oars: Option<&'b OarSet>,
}

/// Returns the boat that is asked for.
///
/// # Errors
///
/// What the command comes to instead: something she is made of is not in the book.
pub(super) fn new(book: &Book, asked: &AddBoat) -> Result<New, Done> {
    let known = known(book, asked)?;
    let seats = known.class.seats.map(|seats| seats.value).ok_or_else(|| {
        let id = &known.class.id.value;
        refused(vec![format!("The class {id} does not say how many seats it has: write `seats:`")])
    })?;
    let parts = (1..=seats).map(|number| number.to_string()).collect();
    let mut blank = Blank { parts, ..Blank::default() };
    let items = known.class.walk_round.iter().map(|item| item.value.clone());
    blank.known.push(("walk-round", items.collect()));
    say_head(&mut blank, asked, &known);
    for number in 1..=seats {
        say_seat(&mut blank, asked, &known, number);
    }
    let said = said(asked, &known, seats);
    Ok(New { kind: RecordKind::Boat, shelf: "boats", id: asked.id.clone(), blank, said })
}

fn known<'b>(book: &'b Book, asked: &AddBoat) -> Result<Known<'b>, Done> {
    let like = match &asked.seats_from {
        Some(id) => Some(book.boat(id).ok_or_else(|| {
            none_such("boat", id, &ids(book.boats.iter().map(|boat| &*boat.id.value)))
        })?),
        None => None,
    };
    let of_like = || like?.oars.as_ref().map(|id| id.value.clone());
    let oars = match asked.oars.clone().or_else(of_like) {
        Some(id) => Some(book.oar_set(&id).ok_or_else(|| {
            none_such("oar set", &id, &ids(book.oar_sets.iter().map(|set| &*set.id.value)))
        })?),
        None => Some(&book.oar_sets).filter(|sets| sets.len() == 1).and_then(|sets| sets.first()),
    };
    if let Some(set) = oars {
        let own: Vec<&str> = set.oars.iter().map(|oar| oar.called()).collect();
        if let Some(spare) = asked.spare.iter().find(|spare| !own.contains(&spare.as_str())) {
            return Err(none_such("oar", spare, &own));
        }
    }
    Ok(Known { class: class(book, asked, like)?, like, oars })
}

fn class<'b>(book: &'b Book, asked: &AddBoat, like: Option<&Boat>) -> Result<&'b Class, Done> {
    let of_like = || like?.class.as_ref().map(|id| id.value.clone());
    let id = asked.class.clone().or_else(of_like).unwrap_or_else(|| match &*book.classes {
        [only] => only.id.value.clone(),
        _ => USUAL_CLASS.to_owned(),
    });
    let known = || ids(book.classes.iter().map(|class| &*class.id.value));
    book.class(&id).ok_or_else(|| none_such("class", &id, &known()))
}

fn ids<'b>(ids: impl Iterator<Item = &'b str>) -> Vec<&'b str> {
    ids.collect()
}

fn say_head(blank: &mut Blank, asked: &AddBoat, known: &Known) {
    let today = asked.at.as_of.unwrap_or_else(today);
    blank.say("boat", &*asked.id);
    if let Some(name) = &asked.name {
        blank.say("name", word(name));
    }
    blank.say("class", &*known.class.id.value);
    if let Some(set) = known.oars {
        blank.say("oars", &*set.id.value);
    }
    if !asked.spare.is_empty() {
        let spares: Vec<String> = asked.spare.iter().map(|oar| word(oar)).collect();
        blank.say("spares", format!("[{}]", spares.join(", ")));
    }
    if let Some(day) = asked.rigged {
        blank.say("rigged/date", day.to_string());
        blank.say("rigged/by", word(&asked.by));
    }
    blank.say("out-of-use/since", today.to_string());
    blank.say("out-of-use/by", word(&asked.by));
    blank.say("out-of-use/because", "not measured yet");
}

fn say_seat(blank: &mut Blank, asked: &AddBoat, known: &Known, number: u32) {
    if let Some(side) = side(asked, known, number) {
        blank.say(format!("seat-{number}/side"), side.word());
    }
    if let Some(oar) = oar(known, number) {
        blank.say(format!("seat-{number}/oar"), oar);
    }
}

fn side(asked: &AddBoat, known: &Known, number: u32) -> Option<Side> {
    if let Some(like) = known.like {
        return seat_of(like, number)?.side.map(|side| side.value);
    }
    let alternating = known.class.alternating.is_some_and(|alternating| alternating.value);
    let first = asked.first_side.filter(|_| alternating || number == 1)?;
    let is_as_first = number % 2 == 1;
    Some(match (first, is_as_first) {
        (FirstSide::Port, true) | (FirstSide::Starboard, false) => Side::Port,
        (FirstSide::Starboard, true) | (FirstSide::Port, false) => Side::Starboard,
    })
}

/// Returns the oar of a seat: that of the boat she is like, if she carries the same set; else the
/// set's own order.
fn oar(known: &Known, number: u32) -> Option<String> {
    let set = known.oars?;
    let same = |like: &&Boat| like.oars.as_ref().is_some_and(|own| own.value == set.id.value);
    if let Some(like) = known.like.filter(same) {
        return seat_of(like, number)?.oar.as_ref().map(|oar| oar.value.clone());
    }
    let at = usize::try_from(number).ok()?.checked_sub(1)?;
    set.oars.get(at)?.id.as_ref().map(|id| id.value.clone())
}

fn seat_of(boat: &Boat, number: u32) -> Option<&crate::model::Seat> {
    boat.seats.iter().find(|seat| seat.number.is_some_and(|own| own.value == number))
}

fn said(asked: &AddBoat, known: &Known, seats: u32) -> Vec<String> {
    let id = &asked.id;
    let class = &known.class.id.value;
    let mut said = vec![format!("{id}: class {class}, {seats} seats, out of use until measured")];
    let like = known.like.map(|like| format!("sides as in {}", like.id.value));
    let order = known.oars.map(|set| format!("oars of {} seat by seat", set.id.value));
    let taken: Vec<String> = like.into_iter().chain(order).collect();
    if !taken.is_empty() {
        said.push(format!("Taken over: {}. Look whether that is so.", taken.join(", ")));
    }
    said.push(format!("Next: tholebook measure {id}"));
    said
}
