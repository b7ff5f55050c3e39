//! A seat of a boat, with its pin, rowlock and oar: format 1, field by field.

use super::field::Field;
use super::field::field;
use super::section::Section;
use super::value::Value;
use super::value::ValueKind;
use crate::model::Lean;
use crate::model::LiftsOut;
use crate::model::Pin;
use crate::model::Pitch;
use crate::model::Placed;
use crate::model::Plate;
use crate::model::Rowlock;
use crate::model::Seat;
use crate::model::Stated;
use crate::model::Tool;
use crate::model::WorkedOut;
use crate::units::Angle;
use crate::units::Figure;
use crate::units::FigureFault;
use crate::units::Length;
use crate::units::Ratio;

use super::fault::What;

/// How a handle end is touched by the bob, in one sentence.
const HANDLE: &str = "the handle end is the middle of its end face; a bob line touches it; mark to line, across the boat only";

/// Reads a seat.
pub(super) fn seat(at: &mut Section) -> Seat {
    Seat {
        place: at.place(),
        number: at.get(field("seat", "1 nearest the bow").must().within(1.0, 20.0)),
        side: at.get(field("side", "the side the oar is on").must()),
        oar: at.id(field("oar", "the oar's id in its set").must()),
        pin: at.section(field("pin", "the pin"), pin),
        rowlock: at.section(field("rowlock", "the rowlock"), rowlock),
        lifts_out: at.section(field("lifts-out", LIFTS_OUT), lifts_out),
        seat_mark: at.reading(
            field("seat-mark", "middle of the place the rower sits, side to side, on the seat's after edge; string to mark; on the far side of the centreline from the rowlock positive")
                .by(Tool::Bob),
        ),
        handle_past_mark: at.reading(field("handle-past-mark", HANDLE).by(Tool::Bob)),
        chock_to_pin: at.reading(field(
            "chock-to-pin",
            "after face of the back chock (which stops the rower at the finish) to the middle of the pin, along the string, not slantwise",
        )),
        pitch: at.section(field("pitch", PITCH), pitch),
        oar_bed: at.reading(
            positive("oar-bed", "round shafts only: chalk the bed, drop the shaft in square, lift; straight width between the edges of the mark; the depth is worked out from it")
                .by(Tool::Callipers),
        ),
        collar_to_pin: at.get(field(
            "collar-to-pin",
            "collar's bearing face to the pin's axis, where it differs from the class",
        )),
        worked_out: at.section(
            field("worked-out", "what the readings give; written by `derive --write`"),
            worked_out,
        ),
        note: at.text(field("note", "anything else").long()),
    }
}

const LIFTS_OUT: &str = "that seat's own oar, lifted by hand, at every turn of the shaft, square off, at the catch, at the finish and lying along the boat";

const PITCH: &str = "bob hung over the blade's top edge, driving side, at the pitch mark; horizontal from the lower edge to the line, positive when the line hangs clear on the driving side; edges, never the curve or the rib";

fn positive(key: &'static str, about: &'static str) -> Field {
    field(key, about).from(0.1)
}

fn pin(at: &mut Section) -> Pin {
    Pin {
        spread: at.reading(
            positive("spread", "middle of the pin to the string, level and square to it, at the height of the rowlock's bed")
                .by(Tool::Bob),
        ),
        along: at.reading(field("along", "stern mark to the middle of the pin, along the string")),
        lean: at.section(
            field("lean", "rowlock off, a straight tube on the pin, bob beside it; offset low less offset high over the pin gauge, once seen from the end, once from the side"),
            |at| Lean {
                aft: at.reading(field("aft", "to the stern is positive").by(Tool::Rule)),
                out: at.reading(
                    field("out", "away from the centreline is positive").by(Tool::Rule),
                ),
            },
        ),
        thick: at.reading(positive("thick", "diameter of the pin").by(Tool::Callipers)),
        plate: at.section(field("plate", "the plate under the pin, bolt to bolt"), |at| Plate {
            along: at.reading(positive("along", "along the boat").by(Tool::Rule)),
            across: at.reading(positive("across", "across the boat").by(Tool::Rule)),
        }),
    }
}

fn rowlock(at: &mut Section) -> Rowlock {
    Rowlock {
        place: at.written_place(),
        gap: at.reading(
            positive("gap", "smallest clear width between the horns anywhere from the shaft's middle height up to the tips, along the whole length of the horns, square to them")
                .by(Tool::Callipers),
        ),
        after_tip: at.reading(
            field("after-tip", "how far the after horn's tip stands to the stern of the same horn at the shaft's middle height; negative: it hooks over the oar")
                .by(Tool::Rule),
        ),
        horn: at.reading(
            positive("horn", "bed to the tip of the lower horn").by(Tool::Callipers),
        ),
        long: at.reading(
            positive("long", "length of a horn along the shaft").by(Tool::Callipers),
        ),
        turns: at.get(field("turns", "how it turns on the pin, by hand")),
        above_seat: at.reading(field(
            "above-seat",
            "lowest point of the bed down to a straightedge across the seat's top at the seat mark",
        )),
    }
}

fn lifts_out(at: &mut Section) -> LiftsOut {
    LiftsOut {
        place: at.written_place(),
        square: at.get(field("square", "square off")),
        catch: at.get(field("catch", "at the catch")),
        finish: at.get(field("finish", "at the finish")),
        along: at.get(field("along", "lying along the boat")),
    }
}

fn pitch(at: &mut Section) -> Pitch {
    let reading = |key, about| field(key, about).by(Tool::Rule);
    Pitch {
        place: at.written_place(),
        catch: at.reading(reading("catch", "at the catch")),
        square: at.reading(reading("square", "square off")),
        finish: at.reading(reading("finish", "at the finish")),
    }
}

fn worked_out(at: &mut Section) -> WorkedOut {
    let angle = |at: &mut Section, key, about| at.get::<StatedAngle>(field(key, about)).map(plain);
    let length =
        |at: &mut Section, key, about| at.get::<StatedLength>(field(key, about)).map(plain);
    WorkedOut {
        pitch: angle(at, "pitch", "pitch square off, corrected for level"),
        handle_past_mark: length(at, "handle-past-mark", "from inboard, spread, seat mark, dip"),
        gearing: at.get::<StatedRatio>(field("gearing", "outboard over inboard")).map(plain),
        clearance: length(at, "clearance", "gap less the widest section of the oar"),
        lean_aft: angle(at, "lean-aft", "lean to the stern, corrected for level"),
        lean_out: angle(at, "lean-out", "lean away from the centreline, corrected for level"),
    }
}

struct StatedAngle(Stated);
struct StatedLength(Stated);
struct StatedRatio(Stated);

fn plain<T: Into<Stated>>(stated: Placed<T>) -> Placed<Stated> {
    Placed { value: stated.value.into(), place: stated.place }
}

/// Half of the last digit written, in the unit of a bare number.
fn stated(text: &str, read: Result<Figure, FigureFault>) -> Result<Stated, What> {
    let figure = read.map_err(|fault| What::figure(text, fault))?;
    let last = 10_f64.powi(-i32::try_from(figure.places).unwrap_or(i32::MAX));
    Ok(Stated { value: figure.value, half_digit: last * figure.unit.size() / 2.0 })
}

macro_rules! stated {
    ($name:ident, $quantity:ident, $kind:ident) => {
        impl From<$name> for Stated {
            fn from(stated: $name) -> Self {
                stated.0
            }
        }

        impl Value for $name {
            fn kind() -> ValueKind {
                ValueKind::$kind
            }

            fn read(text: &str) -> Result<Self, What> {
                stated(text, $quantity::figure(text)).map(Self)
            }

            fn figure(&self) -> Option<f64> {
                Some(self.0.value)
            }
        }
    };
}

stated!(StatedAngle, Angle, Angle);
stated!(StatedLength, Length, Length);
stated!(StatedRatio, Ratio, Ratio);
