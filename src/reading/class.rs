//! A class: format 1, field by field.

use super::fault::What;
use super::field::field;
use super::limits::limits;
use super::nearest::nearest;
use super::section::Section;
use crate::model::Class;
use crate::model::OarAngle;
use crate::model::Placed;
use crate::model::Plausible;
use crate::model::plausible_fields;

/// Reads a class. Without an id there is no class.
pub(super) fn class(at: &mut Section) -> Option<Class> {
    let file = at.place().file;
    let id = at.id(field("class", "the class's id").must());
    let seats = at.get(field("seats", "how many rowers").within(1.0, 20.0));
    let alternating = at.get(field("alternating", "whether the sides alternate from seat to seat"));
    let collar_to_pin = at.get(field("collar-to-pin", "collar's bearing face to the pin's axis"));
    let oar_angle = at.section(field("oar-angle", "oar angles of the class"), |at| OarAngle {
        catch: at.get(field("catch", "blade forward of square").within(1.0, 89.0)),
        finish: at.get(field("finish", "blade abaft square").within(1.0, 89.0)),
        dip: at.get(field("dip", "blade below the rowlock").within(0.0, 30.0)),
    });
    let walk_round = at.ids(field("walk-round", "what is looked at on the walk round"));
    let must_measure = at.texts(field("must-measure", "fields of a seat that must be measured"));
    let plausible: Vec<Plausible> = at
        .free_sections(
            field("plausible", "what is plausible for a field of a seat, an oar or a rower"),
            |at| {
                let least = at.get(field("least", "the least that was ever seen"));
                (least, at.get(field("most", "the most that was ever seen")))
            },
        )
        .into_iter()
        .map(|(field, (least, most))| Plausible { field, least, most })
        .collect();
    tell_unknown_lengths(at, &plausible);
    let limits = at.section(field("limits", "the limits of the class"), limits);
    Some(Class {
        file,
        id: id?,
        seats,
        alternating,
        collar_to_pin,
        oar_angle,
        walk_round,
        must_measure,
        plausible,
        limits,
    })
}

/// A range for a length that nobody measures would guard nothing.
fn tell_unknown_lengths(at: &Section, plausible: &[Plausible]) {
    let known = plausible_fields();
    let known: Vec<&str> = known.iter().map(String::as_str).collect();
    for range in plausible.iter().filter(|range| !known.contains(&&*range.field.value)) {
        let Placed { value, place } = &range.field;
        let nearest = nearest(value, &known).map(str::to_owned);
        let what = What::UnknownKey { key: value.clone(), nearest };
        at.tell(what, &format!("plausible/{value}"), *place);
    }
}
