//! What may be said to the commands that begin a book or a record.

use std::path::PathBuf;

use clap::Args;
use clap::Subcommand;
use clap::ValueEnum;

use super::day;
use crate::units::Date;

pub(super) const START_HELP: &str = "\
What is not given is asked for, on a terminal only. Nothing that is there is
ever written over.

Exit codes:
  0  the book is begun
  2  wrong usage: there is a book already, or something needed is not said
  3  something could not be written; what was begun is taken away again
  4  a fault of the program";

pub(super) const ADD_EXITS: &str = "\
Exit codes:
  0  the record is written; what a person has yet to write in it is named
  2  wrong usage: the id is taken, or a class, set or boat is not in the book
  3  it could not be written; nothing is there
  4  a fault of the program";

#[derive(Args, Debug)]
pub(in crate::cli) struct Start {
    /// The folder of the book; made if it is not there
    #[arg(value_name = "DIR")]
    pub(in crate::cli) folder: PathBuf,

    /// The club's name
    #[arg(long, value_name = "NAME")]
    pub(in crate::cli) club: Option<String>,

    /// How finely a tool reads, either way, such as callipers=0.2 or level='0.2 deg'; may be
    /// repeated [tools: callipers, rule, bob, tape, level, oar-angle, dip]
    #[arg(long, value_name = "TOOL=FINENESS")]
    pub(in crate::cli) tool: Vec<String>,

    /// For which server a recipe is written that checks the book there
    #[arg(long, value_enum)]
    pub(in crate::cli) ci: Option<Ci>,
}

#[derive(Clone, Copy, Debug, Eq, PartialEq, ValueEnum)]
pub(in crate::cli) enum Ci {
    Github,
    Gitlab,
    None,
}

#[derive(Args, Debug)]
pub(in crate::cli) struct Add {
    #[command(subcommand)]
    pub(in crate::cli) what: AddWhat,
}

#[derive(Debug, Subcommand)]
pub(in crate::cli) enum AddWhat {
    /// A boat, out of use until she is measured
    Boat(AddBoat),
    /// An oar set
    Oars(AddOars),
    /// A crew
    Crew(AddCrew),
}

#[derive(Args, Debug)]
pub(in crate::cli) struct AddBoat {
    /// The boat's id, such as kittiwake
    #[arg(value_name = "ID")]
    pub(in crate::cli) id: String,

    /// Who adds her, and signs that she is not measured yet
    #[arg(long, value_name = "PERSON")]
    pub(in crate::cli) by: String,

    /// The name on the bow
    #[arg(long, value_name = "NAME")]
    pub(in crate::cli) name: Option<String>,

    /// Her class [default: the only one of the book, else surfboat]
    #[arg(long, value_name = "CLASS")]
    pub(in crate::cli) class: Option<String>,

    /// The oar set she carries; its oars go to the seats in their order [default: the only set]
    #[arg(long, value_name = "SET")]
    pub(in crate::cli) oars: Option<String>,

    /// A spare oar; may be repeated
    #[arg(long, value_name = "OAR")]
    pub(in crate::cli) spare: Vec<String>,

    /// The side of seat 1, the one nearest the bow
    #[arg(long, value_enum, conflicts_with = "seats_from")]
    pub(in crate::cli) first_side: Option<FirstSide>,

    /// Take sides and oars, and the set if none is given, from this boat
    #[arg(long, value_name = "BOAT")]
    pub(in crate::cli) seats_from: Option<String>,

    /// The rigging day, if there was one; by the person who adds her
    #[arg(long, value_name = "DATE", value_parser = day)]
    pub(in crate::cli) rigged: Option<Date>,

    #[command(flatten)]
    pub(in crate::cli) at: AddAt,
}

#[derive(Clone, Copy, Debug, Eq, PartialEq, ValueEnum)]
pub(in crate::cli) enum FirstSide {
    Port,
    Starboard,
}

#[derive(Args, Debug)]
pub(in crate::cli) struct AddOars {
    /// The set's id, such as long-ash
    #[arg(value_name = "ID")]
    pub(in crate::cli) id: String,

    /// An oar's id; may be repeated [default: four and a spare, by the first letter of the set's id]
    #[arg(long, value_name = "OAR")]
    pub(in crate::cli) oar: Vec<String>,

    #[command(flatten)]
    pub(in crate::cli) at: AddAt,
}

#[derive(Args, Debug)]
pub(in crate::cli) struct AddCrew {
    /// The crew's id, such as masters-a
    #[arg(value_name = "ID")]
    pub(in crate::cli) id: String,

    /// The boat it rows
    #[arg(long, value_name = "BOAT")]
    pub(in crate::cli) boat: String,

    #[command(flatten)]
    pub(in crate::cli) at: AddAt,
}

#[derive(Args, Debug)]
pub(in crate::cli) struct AddAt {
    /// The book's folder [default: the book around the current folder]
    #[arg(long, value_name = "DIR")]
    pub(in crate::cli) book: Option<PathBuf>,

    /// The day to take for today, such as 2026-10-17 [default: today]
    #[arg(long, value_name = "DATE", value_parser = day)]
    pub(in crate::cli) as_of: Option<Date>,
}
