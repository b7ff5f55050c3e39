//! What may stand on the command line.

mod beginning;
mod fitting;
mod formats;
mod guard;
mod lint;
mod matching;
mod measuring;
mod merging;
mod pages;
mod past;
mod planning;
mod putting;
mod ready;
mod sheet;
mod shell;

use std::path::PathBuf;

use clap::Args;
use clap::Parser;
use clap::Subcommand;
use clap::ValueEnum;

use crate::units::Date;
use crate::units::NotADate;

pub(super) use beginning::{Add, AddAt, AddBoat, AddCrew, AddOars, AddWhat, Ci, FirstSide, Start};
pub(super) use guard::{Books, Checkup, CheckupFormat, Guard, GuardWhat, Install, Push, Receive};
pub(super) use matching::{Match, MatchFormat};
pub(super) use measuring::Measure;
pub(super) use merging::{Splice, Unwire, View, Wire};

pub(super) use fitting::{Fit, FitFormat};
pub(super) use formats::{Also, Format};
pub(super) use lint::{FailOn, Lint};
pub(super) use pages::Pages;
pub(super) use past::{Blame, History, PastFormat};
pub(super) use planning::{Worklist, WorklistFormat};
pub(super) use putting::{Mend, Waive, Waivers};
pub(super) use ready::{Ready, ReadyFormat};
pub(super) use sheet::Sheet;
pub(super) use shell::{Completions, Man};

/// The version, and the commit it was built from where that is known.
const VERSION: &str = env!("THOLEBOOK_VERSION");

/// Checks a rowing club's boat logbook: what is unsafe, out of tolerance, undecided or wrongly
/// written.
#[derive(Debug, Parser)]
#[command(name = "tholebook", version = VERSION, disable_help_subcommand = true, max_term_width = 80)]
pub(super) struct Arguments {
    #[command(subcommand)]
    pub(super) command: Command,
}

#[derive(Debug, Subcommand)]
pub(super) enum Command {
    /// Check a book; every finding at its place
    #[command(after_help = lint::EXITS)]
    Lint(Lint),
    /// A rule in full, or a reading's own sums step by step
    Why(Why),
    /// Every rule, with its level and what it checks
    Rules(Rules),
    /// What changed in the rig, what follows from it, and which findings are new, worse or cured
    #[command(after_help = DIFF_HELP)]
    Diff(Diff),
    /// Every worked-out value, with how good it is and its unit
    #[command(after_help = putting::DERIVE_EXITS)]
    Derive(Derive),
    /// Corrections of spelling that lint's findings offer, shown as a diff
    #[command(after_help = putting::MEND_EXITS)]
    Mend(Mend),
    /// Write a waiver: a finding that the club lives with for a while, for the value it has now
    #[command(after_help = putting::WAIVE_EXITS)]
    Waive(Waive),
    /// Every waiver, whether it counts, and the next to lapse
    Waivers(Waivers),
    /// A new book: settings, folders, schemas for editors, what a server runs to check it
    #[command(after_help = beginning::START_HELP)]
    Start(Start),
    /// A new record of a boat, an oar set or a crew, every field of it explained
    #[command(after_help = beginning::ADD_EXITS)]
    Add(Add),
    /// An invented club's book with two seasons of commits, to try everything on
    Sample(Sample),
    /// What may stand in a record, as JSON Schema, for editors
    Schema(Schema),
    /// Every limit in force, for which boat, and where it is set
    Settings(Settings),
    /// A boat's rig card: every value, what follows from it, and its verdict
    Card(Card),
    /// Guided entry at the boat, in the order of the work, with the verdict at once
    #[command(after_help = measuring::HELP)]
    Measure(Box<Measure>),
    /// One page of a boat to print: her rig card with drawings, or a blank one to write on
    #[command(after_help = sheet::SHEET_HELP)]
    Sheet(Sheet),
    /// The whole book as pages for a browser, into a folder: no script, no network
    #[command(after_help = pages::PAGES_HELP)]
    Pages(Pages),
    /// A foot hole for each of a crew, so that all finish together, and what then remains
    #[command(after_help = fitting::FIT_EXITS)]
    Fit(Fit),
    /// Every oar set against every boat: clears, tight, loose or unknown, with what decides
    #[command(after_help = matching::EXITS)]
    Match(Match),
    /// Before a race, a page a boat: what stands against her on the day, what changed, work left
    #[command(after_help = ready::EXITS)]
    Ready(Ready),
    /// Each change of a value: when measured, when committed, by whom, old and new, verdict then
    #[command(after_help = past::EXITS)]
    History(History),
    /// Every value of a record with who last set it, when, and its age
    #[command(after_help = past::EXITS)]
    Blame(Blame),
    /// What to bend, pack, slide and move, how much and in which order, with the fewest bends
    #[command(after_help = planning::WORKLIST_EXITS)]
    Worklist(Worklist),
    /// Have git compare and merge records by value in this clone
    #[command(after_help = merging::WIRE_EXITS)]
    Wire(Wire),
    /// Undo what wire did
    Unwire(Unwire),
    /// A record as plain lines, one value each, for git to compare
    View(View),
    /// Joins two changed texts of a record field by field, as git asks for it
    #[command(after_help = merging::EXITS)]
    Splice(Splice),
    /// Git hooks that check a book before a commit, a merge, a push; and the server's gate
    Guard(Guard),
    /// Is this clone fit to be trusted: whole, guarded, in time
    #[command(after_help = guard::CHECKUP_EXITS)]
    Checkup(Checkup),
    /// What a shell needs to complete commands and options
    Completions(Completions),
    /// The manual as man pages
    Man(Man),
}

const DIFF_HELP: &str = "\
What may stand for A and B:
  a folder with a book, a branch, a tag, a commit
  A..B    the same as A B
  A...B   what B changed since it parted from A
Without B, A is compared with the files as they lie in the folder; without both,
the last commit is.

Exit codes:
  0  compared
  1  with --exit-code: something changed, or can't be read
  2  wrong usage, or a club.yaml that can't be used
  3  could not compare: something that can't be had
  4  a fault of the program";

const COLOUR_HELP: &str =
    "When to colour; auto heeds NO_COLOR, then CLICOLOR_FORCE, then the terminal";

#[derive(Args, Debug)]
pub(super) struct Why {
    /// A rule, such as gap-too-tight; or a name: that of a reading, such as
    /// kittiwake/seat-2/rowlock/gap, or a boat's id
    #[arg(value_name = "RULE|NAME")]
    pub(super) what: String,

    /// After a name: only what this rule works out there
    #[arg(value_name = "RULE")]
    pub(super) rule: Option<String>,

    /// The book's folder [default: the book around the current folder]
    #[arg(long, value_name = "DIR")]
    pub(super) book: Option<PathBuf>,

    /// The day to take for today, such as 2026-10-17 [default: today]
    #[arg(long, value_name = "DATE", value_parser = day)]
    pub(super) as_of: Option<Date>,

    /// Of a name: add the metrologist's words
    #[arg(long)]
    pub(super) full: bool,

    #[command(flatten)]
    pub(super) look: LookOptions,
}

#[derive(Args, Debug)]
pub(super) struct Rules {
    #[command(flatten)]
    pub(super) look: LookOptions,
}

#[derive(Args, Debug)]
pub(super) struct Derive {
    /// The boat, by her id [default: every boat]
    #[arg(value_name = "NAME")]
    pub(super) name: Option<String>,

    /// The book's folder [default: the book around the current folder]
    #[arg(long, value_name = "DIR")]
    pub(super) book: Option<PathBuf>,

    /// text is a table for each boat; json is for programs, with every digit
    #[arg(long, value_enum, default_value = "text")]
    pub(super) format: DeriveFormat,

    /// Write the values into the boats' files, under worked-out; what is right as written stays
    #[arg(long, conflicts_with = "format")]
    pub(super) write: bool,

    #[command(flatten)]
    pub(super) look: LookOptions,
}

#[derive(Args, Debug)]
pub(super) struct Sample {
    /// The folder to write it into: a new one, or an empty one
    #[arg(value_name = "DIR")]
    pub(super) folder: PathBuf,
}

#[derive(Args, Debug)]
pub(super) struct Diff {
    /// The state before [default: the last commit]
    #[arg(value_name = "A")]
    pub(super) from: Option<String>,

    /// The state after [default: the files as they lie in the folder]
    #[arg(value_name = "B")]
    pub(super) to: Option<String>,

    /// Compare with what is about to be committed
    #[arg(long, conflicts_with = "to")]
    pub(super) staged: bool,

    /// The book's folder [default: the book around the current folder]
    #[arg(long, value_name = "DIR")]
    pub(super) book: Option<PathBuf>,

    /// Only what has this name or is below it, such as kittiwake/seat-2; may be repeated
    #[arg(long, value_name = "NAME")]
    pub(super) only: Vec<String>,

    /// text is for a terminal; json is for programs; markdown is for a merge request
    #[arg(long, value_enum, default_value = "text")]
    pub(super) format: DiffFormat,

    /// The day to take for today on both sides [default: the day of B's commit, else today]
    #[arg(long, value_name = "DATE", value_parser = day)]
    pub(super) as_of: Option<Date>,

    /// End with 1 when something changed
    #[arg(long)]
    pub(super) exit_code: bool,

    #[command(flatten)]
    pub(super) look: LookOptions,
}

#[derive(Args, Debug)]
pub(super) struct Schema {
    /// The kind of record, such as boat [default: list the kinds]
    #[arg(value_name = "KIND")]
    pub(super) kind: Option<String>,

    /// Write every schema into this folder
    #[arg(long, value_name = "DIR")]
    pub(super) out: Option<PathBuf>,
}

#[derive(Args, Debug)]
pub(super) struct Settings {
    /// The book's folder [default: the book around the current folder]
    #[arg(long, value_name = "DIR")]
    pub(super) book: Option<PathBuf>,

    #[command(flatten)]
    pub(super) look: LookOptions,
}

#[derive(Args, Debug)]
pub(super) struct Card {
    /// The boat, by her id
    #[arg(value_name = "BOAT")]
    pub(super) boat: String,

    /// The book's folder [default: the book around the current folder]
    #[arg(long, value_name = "DIR")]
    pub(super) book: Option<PathBuf>,

    /// The day to take for today, such as 2026-10-17 [default: today]
    #[arg(long, value_name = "DATE", value_parser = day)]
    pub(super) as_of: Option<Date>,

    #[command(flatten)]
    pub(super) look: LookOptions,
}

#[derive(Args, Debug)]
pub(super) struct LookOptions {
    #[arg(long, value_enum, default_value = "auto", help = COLOUR_HELP)]
    pub(super) color: Colour,

    /// How many columns a line may take [default: COLUMNS, else 80]
    #[arg(long, value_name = "N", value_parser = clap::value_parser!(u16).range(20..=1000))]
    pub(super) width: Option<u16>,

    /// What drawings are made of
    #[arg(long, value_enum, default_value = "unicode")]
    pub(super) glyphs: GlyphsOption,
}

#[derive(Clone, Copy, Debug, ValueEnum)]
pub(super) enum DiffFormat {
    Text,
    Json,
    Markdown,
}

#[derive(Clone, Copy, Debug, ValueEnum)]
pub(super) enum DeriveFormat {
    Text,
    Json,
}

#[derive(Clone, Copy, Debug, ValueEnum)]
pub(super) enum Colour {
    Auto,
    Always,
    Never,
}

#[derive(Clone, Copy, Debug, ValueEnum)]
pub(super) enum GlyphsOption {
    Unicode,
    Ascii,
}

fn day(text: &str) -> Result<Date, String> {
    Date::read(text).map_err(|NotADate| format!("{NotADate}; write year, month, day: 2026-10-17"))
}
