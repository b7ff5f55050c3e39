//! The club's settings and waivers: format 1, field by field.

use super::fault::What;
use super::field::field;
use super::form::Bounds;
use super::form::Naming;
use super::limits::limits;
use super::section::Section;
use super::tools::half_widths;
use super::value::Value;
use super::value::ValueKind;
use crate::model::Club;
use crate::model::ClubLimits;
use crate::model::Person;
use crate::model::Placed;
use crate::model::Protect;
use crate::model::Said;
use crate::model::Waiver;
use crate::units::Ratio;

/// The number of the format that this program reads.
struct Format(u32);

impl Value for Format {
    const BOUNDS: Bounds = Bounds { least: Some(1.0), most: Some(1.0) };

    fn kind() -> ValueKind {
        ValueKind::Count
    }

    fn read(text: &str) -> Result<Self, What> {
        match u32::read(text)? {
            1 => Ok(Self(1)),
            found => Err(What::OtherFormat { found }),
        }
    }

    fn said(&self, text: &str) -> Said {
        self.0.said(text)
    }
}

/// Reads the club's settings.
pub(super) fn club(at: &mut Section) -> Club {
    let format = at.get::<Format>(field("logbook", "the number of the format: 1").must());
    Club {
        file: Some(at.place().file),
        format: format.map(|format| Placed { value: format.value.0, place: format.place }),
        name: at.text(field("club", "the club's name")),
        half_widths: at
            .section(field("readings", "how finely the club reads with each tool"), half_widths),
        limits: at
            .free_sections(
                field("limits", "limits by class; what is left out keeps the class's own"),
                limits,
            )
            .into_iter()
            .map(|(class, limits)| ClubLimits { class, limits })
            .collect(),
        people: at.list(
            field("people", "who may sign; anyone, where nobody is listed"),
            Naming::Numbered,
            person,
        ),
        protect: at.section(field("protect", "what the gate protects"), protect),
        publish_crew: at.get(field(
            "publish-crew",
            "false: pages and sheets leave out stature, leg and weight",
        )),
    }
}

fn person(at: &mut Section) -> Person {
    Person {
        name: at.text(field("name", "the name").must()),
        may: at.values(field("may", "what the person may put the name to")),
    }
}

fn protect(at: &mut Section) -> Protect {
    Protect {
        place: at.written_place(),
        longest_waiver_days: at.get(field("longest-waiver-days", "the longest a waiver may last")),
        branches: at.texts(field("branches", "branches the server gate guards; all, if absent")),
    }
}

/// Reads a waiver.
pub(super) fn waiver(at: &mut Section) -> Waiver {
    Waiver {
        place: at.place(),
        finding: at.text(field("finding", "the name of the finding").must()),
        rule: at.text(field("rule", "the rule").must()),
        because: at.text(field("because", "why").must().long()),
        by: at.text(field("by", "who granted it").must()),
        until: at.get(field("until", "the last day it counts").must()),
        at: at
            .get::<Ratio>(field(
                "at",
                "the value it was granted for; it lapses when the reading moves further out",
            ))
            .map(|at| Placed { value: at.value.value(), place: at.place }),
    }
}
