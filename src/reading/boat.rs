//! A boat: format 1, field by field.

use super::field::field;
use super::form::Naming;
use super::limits::limits;
use super::oars::defect;
use super::seat::seat;
use super::section::Section;
use super::tools::half_widths;
use crate::model::Bend;
use crate::model::Boat;
use crate::model::FootHoles;
use crate::model::Knock;
use crate::model::LevelMark;
use crate::model::OutOfUse;
use crate::model::PitchAngles;
use crate::model::Placed;
use crate::model::ReadAgain;
use crate::model::Rigged;
use crate::model::Tool;
use crate::model::WalkRound;

/// Reads a boat. Without an id that can be read she goes by the name of her record: what is wrong
/// with her must be told all the same.
pub(super) fn boat(at: &mut Section) -> Option<Boat> {
    let id = at.id(field("boat", "the boat's id").must());
    let read = Boat {
        file: at.place().file,
        id: Placed { value: String::new(), place: at.place() },
        name: at.text(field("name", "the name on the bow")),
        class: at.id(field("class", "the class she belongs to").must()),
        oars: at.id(field("oars", "the oar set she carries").must()),
        spares: at.ids(field("spares", "oars of the set carried as spares")),
        level_mark: at.section(field("level-mark", "where the level is laid"), level_mark),
        foot_holes: at
            .section(field("foot-holes", "numbered from the seat, 1 nearest"), foot_holes),
        rigged: at.section(field("rigged", "the rigging day").must(), rigged),
        seats: at.list(field("seats", "the seats, 1 nearest the bow"), Naming::Seat, seat),
        read_again: at.list(
            field("read-again", "values read again since the rigging day"),
            Naming::Numbered,
            read_again,
        ),
        knocks: at.list(field("knocks", "what she was knocked by"), Naming::By("date"), knock),
        bends: at.list(field("bends", "cold bends made"), Naming::Numbered, bend),
        defects: at.list(field("defects", "defects found"), Naming::By("found"), defect),
        out_of_use: at.if_written(field("out-of-use", "why she is not to be used"), out_of_use),
        predicted: at.get(field("predicted", "true: worked out, not measured by anyone")),
        limits: at.section(field("limits", "limits of her own"), limits),
    };
    let id = id.unwrap_or_else(|| at.named());
    Some(Boat { id, ..read })
}

fn level_mark(at: &mut Section) -> LevelMark {
    LevelMark {
        whereabouts: at.text(field(
            "where",
            "the place that read true afloat, crew and sweep aboard as they sit to row, in still water",
        )),
        found_afloat: at.get(field("found-afloat", "when it was found")),
    }
}

fn foot_holes(at: &mut Section) -> FootHoles {
    FootHoles {
        first: at.reading(field(
            "first",
            "after face of the back chock to the foot-brace face in hole 1, along the boat at heel height",
        )),
        apart: at.reading(field("apart", "from hole to hole, along the boat").from(1.0)),
        count: at.get(field("count", "how many holes")),
    }
}

fn rigged(at: &mut Section) -> Rigged {
    let place = at.place();
    let date = at.get(field("date", "the rigging day").must());
    let by = at.text(field("by", "who measured").must());
    let checked_by = at.text(field("checked-by", "who checked: a second person"));
    let whereabouts = at.get(field("where", "where she lay"));
    let wind = at.text(field("wind", "the wind"));
    let (trim, roll) = at.section(
        field(
            "level",
            "laid on the level mark, read, turned end for end, the mean; across the boat the same",
        ),
        |at| {
            let by = |key, about| field(key, about).by(Tool::Level).within(-45.0, 45.0);
            let trim = at.reading(by("trim", "along the boat; bow up is positive"));
            (trim, at.reading(by("roll", "across the boat; port side down is positive")))
        },
    );
    Rigged {
        place,
        date,
        by,
        checked_by,
        whereabouts,
        wind,
        trim,
        roll,
        pin_gauge: at.get(field("pin-gauge", "what a bare lean offset was taken over").from(1.0)),
        pitch_angles: at.section(
            field("pitch-angles", "oar angles at which pitch was read; the class's if absent"),
            pitch_angles,
        ),
        walk_round_at: at.key_place("walk-round"),
        walk_round: at
            .free(field("walk-round", "items looked at, and how each was found"))
            .into_iter()
            .map(|(item, condition)| WalkRound { item, condition })
            .collect(),
        half_widths: at
            .section(field("readings", "how finely the tools of the day read"), half_widths),
    }
}

fn pitch_angles(at: &mut Section) -> PitchAngles {
    let angle = |key, about| field(key, about).within(1.0, 90.0);
    PitchAngles {
        catch: at.get(angle("catch", "blade forward of square")),
        finish: at.get(angle("finish", "blade abaft square")),
    }
}

fn read_again(at: &mut Section) -> ReadAgain {
    ReadAgain {
        date: at.get(field("date", "the day").must()),
        by: at.text(field("by", "who read").must()),
        checked_by: at.text(field("checked-by", "who checked")),
        values: at.texts(field("values", "names of the values, such as seat-2/rowlock/gap").must()),
    }
}

fn knock(at: &mut Section) -> Knock {
    Knock {
        date: at.get(field("date", "the day").must()),
        what: at.text(field("what", "what happened").must().long()),
        seats: at.texts(field("where", "the seats it concerns; all, where none is named")),
    }
}

fn bend(at: &mut Section) -> Bend {
    Bend {
        date: at.get(field("date", "the day").must()),
        by: at.text(field("by", "who bent")),
        seat: at.get(field("seat", "the seat").must().from(1.0)),
        part: at.get(field("part", "the part").must()),
        angle: at.get(field("deg", "how far it was bent")),
    }
}

fn out_of_use(at: &mut Section) -> OutOfUse {
    OutOfUse {
        since: at.get(field("since", "since when").must()),
        by: at.text(field("by", "who said so").must()),
        because: at.text(field("because", "why").must().long()),
    }
}
