//! A crew: format 1, field by field.

use super::field::field;
use super::form::Naming;
use super::oars::MEASURED;
use super::oars::measured;
use super::section::Section;
use crate::model::Arc;
use crate::model::Crew;
use crate::model::Rower;
use crate::model::Sweep;
use crate::model::Tool;

/// Reads a crew. Without an id there is no crew.
pub(super) fn crew(at: &mut Section) -> Option<Crew> {
    let file = at.place().file;
    let id = at.id(field("crew", "the crew's id").must());
    let boat = at.id(field("boat", "the boat it rows"));
    let sweep = at.section(field("sweep", "the person who steers"), |at| Sweep {
        who: at.text(field("who", "who")),
        weight: at.reading(field("weight", "the weight").by(Tool::Scales)),
    });
    let rowers = at.list(field("rowers", "the rowers, seat by seat"), Naming::Seat, rower);
    let measured = at.section(field("measured", MEASURED), measured);
    Some(Crew { file, id: id?, boat, sweep, rowers, measured })
}

fn rower(at: &mut Section) -> Rower {
    Rower {
        place: at.place(),
        seat: at.get(field("seat", "1 nearest the bow").must().within(1.0, 20.0)),
        who: at.text(field("who", "who")),
        stature: at.reading(field("stature", "standing height, barefoot").within(500.0, 2500.0)),
        leg: at.reading(field("leg", "inside leg: floor to crotch, standing barefoot").from(1.0)),
        weight: at.reading(field("weight", "the weight").by(Tool::Scales)),
        foot_hole: at.get(field("foot-hole", "the foot hole used").from(1.0)),
        arc: at.section(field("arc", "the arc rowed, as measured"), |at| {
            let angle = |key, about| field(key, about).by(Tool::OarAngle).within(0.0, 90.0);
            Arc {
                catch: at.reading(angle("catch", "blade forward of square")),
                finish: at.reading(angle("finish", "blade abaft square")),
            }
        }),
    }
}
