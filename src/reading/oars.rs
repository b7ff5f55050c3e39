//! An oar set: format 1, field by field.

use super::fault::What;
use super::field::Field;
use super::field::field;
use super::form::Naming;
use super::section::Section;
use crate::model::Blade;
use crate::model::Defect;
use crate::model::Flex;
use crate::model::Measured;
use crate::model::Oar;
use crate::model::OarSet;
use crate::model::PutRight;
use crate::model::Shaft;
use crate::model::Tool;

/// Reads an oar set. Without an id that can be read it goes by the name of its record.
pub(super) fn oar_set(at: &mut Section) -> Option<OarSet> {
    let file = at.place().file;
    let id = at.id(field("oar-set", "the set's id").must());
    let pitch_mark = at.reading(field(
        "pitch-mark",
        "where pitch is read: in from the blade's tip, the same on every oar",
    ));
    let oars = at.list(field("oars", "the oars"), Naming::Id("oar"), oar);
    let measured = at.section(field("measured", MEASURED), measured);
    let id = id.unwrap_or_else(|| at.named());
    Some(OarSet { file, id, pitch_mark, oars, measured })
}

pub(super) const MEASURED: &str = "when it was measured, and by whom";

/// Reads when a record was measured, and by whom.
pub(super) fn measured(at: &mut Section) -> Measured {
    Measured {
        date: at.get(field("date", "the day")),
        by: at.text(field("by", "who measured")),
        checked_by: at.text(field("checked-by", "who checked: a second person")),
    }
}

fn positive(key: &'static str, about: &'static str) -> Field {
    field(key, about).from(0.1)
}

fn oar(at: &mut Section) -> Oar {
    Oar {
        place: at.place(),
        id: at.id(field("oar", "the oar's id").must()),
        length: at.reading(positive("length", "handle end to the blade's tip on its centreline")),
        inboard: at.reading(positive(
            "inboard",
            "handle end to the collar's outboard face (the one that bears on the rowlock), along the shaft",
        )),
        grip: at.reading(positive("grip", "handle end to the middle of the hands")),
        blade: at.section(field("blade", "the blade"), |at| Blade {
            length: at.reading(positive("length", "its length")),
            width: at.reading(positive("width", "its greatest width, edge to edge")),
            at_mark: at.reading(positive("at-mark", "edge to edge at the pitch mark")),
        }),
        shaft: at.section(
            field("shaft", "leather wet, thickest place from the collar's face to 150 mm outboard; calliper turned once round, largest and smallest reading"),
            shaft,
        ),
        pitch: at.reading(field("pitch", "the oar's own, blade against its flat").by(Tool::Rule)),
        flex: at.section(
            field("flex", "handle and collar face held, weight at `at` from the collar face, drop there"),
            |at| Flex {
                drop: at.reading(field("drop", "how far it drops there")),
                load: at.reading(field("load-kg", "the weight").by(Tool::Scales)),
                at: at.reading(positive("at", "collar face to the weight")),
            },
        ),
        state: at.get(field("state", "the state it is in")),
        defects: at.list(field("defects", "defects found"), Naming::By("found"), defect),
    }
}

fn shaft(at: &mut Section) -> Shaft {
    let section = |key, about| positive(key, about).by(Tool::Callipers);
    let shaft = Shaft {
        place: at.written_place(),
        widest: at.reading(section("widest", "largest reading of the calliper turned once round")),
        narrowest: at.reading(section("narrowest", "smallest reading")),
        round: at.reading(section("round", "the diameter of a round shaft")),
        bears: at.get(field("bears", "how it bears in the rowlock: on a flat, or round")),
        leather: at
            .get(field("leather", "how the leather was when it was measured; dry does not count")),
    };
    if let Some((place, why)) = shaft.contradiction() {
        at.tell(What::Contradiction { why }, "narrowest", place);
    }
    shaft
}

/// Reads a defect of a boat or an oar.
pub(super) fn defect(at: &mut Section) -> Defect {
    Defect {
        found: at.get(field("found", "the day it was found").must()),
        what: at.text(field("what", "what it is").must().long()),
        state: at.get(field("state", "unfit: not to be used; watch: usable").must()),
        put_right: at.if_written(field("put-right", "how it was put right"), |at| PutRight {
            date: at.get(field("date", "the day")),
            by: at.text(field("by", "who did it")),
            how: at.text(field("how", "how").long()),
            passed_by: at.text(field("passed-by", "who passed it: a second person")),
        }),
    }
}
