//! The fields of the format, as names below the record's own.

use crate::model::Boat;
use crate::reading::Described;
use crate::reading::Kind;
use crate::reading::RecordKind;
use crate::reading::form;

/// Returns every field and section of a seat, below the seat's name.
pub(super) fn of_a_seat() -> Vec<String> {
    of_parts(&form(RecordKind::Boat), "seats")
}

/// Returns every field and section of a boat with the seats she has, below her name.
pub(super) fn of_a_boat(boat: &Boat) -> Vec<String> {
    let form = form(RecordKind::Boat);
    let seat = of_parts(&form, "seats");
    let numbers = boat.seats.iter().filter_map(|seat| Some(seat.number?.value));
    let seats = numbers.flat_map(|number| {
        let whole = format!("seat-{number}");
        let below: Vec<String> = seat.iter().map(|field| format!("{whole}/{field}")).collect();
        std::iter::once(whole).chain(below)
    });
    below("", &form).into_iter().chain(seats).collect()
}

fn of_parts(form: &[Described], list: &str) -> Vec<String> {
    let field = form.iter().find(|described| described.field.key == list);
    match field.map(|described| &described.kind) {
        Some(Kind::List(part, _)) => match &**part {
            Kind::Section(form) => below("", form),
            _ => Vec::new(),
        },
        _ => Vec::new(),
    }
}

fn below(whole: &str, form: &[Described]) -> Vec<String> {
    let fields = form.iter().flat_map(|described| {
        let key = described.field.key;
        let name = if whole.is_empty() { key.to_owned() } else { format!("{whole}/{key}") };
        let inside = match &described.kind {
            Kind::Section(form) => below(&name, form),
            _ => Vec::new(),
        };
        std::iter::once(name).chain(inside)
    });
    fields.collect()
}
