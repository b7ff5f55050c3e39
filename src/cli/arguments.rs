//! What may stand on the command line.

mod formats;
mod guard;
mod merging;
mod past;
mod sheet;

use std::path::PathBuf;

use clap::Args;
use clap::Parser;
use clap::Subcommand;
use clap::ValueEnum;

use crate::units::Date;
use crate::units::NotADate;

use formats::also;
pub(super) use guard::{Books, Checkup, CheckupFormat, Guard, GuardWhat, Install, Push, Receive};
pub(super) use merging::{Splice, Unwire, View, Wire};

pub(super) use formats::{Also, Format};
pub(super) use past::{Blame, History, PastFormat};
pub(super) use sheet::Sheet;

/// Checks a rowing club's boat logbook: what is unsafe, out of tolerance, undecided or wrongly
/// written.
#[derive(Debug, Parser)]
#[command(name = "tholebook", version, disable_help_subcommand = true, max_term_width = 80)]
pub(super) struct Arguments {
    #[command(subcommand)]
    pub(super) command: Command,
}

#[derive(Debug, Subcommand)]
pub(super) enum Command {
    /// Check a book; every finding at its place
    #[command(after_help = LINT_EXITS)]
    Lint(Lint),
    /// A rule in full, or a reading's own sums step by step
    Why(Why),
    /// Every rule, with its level and what it checks
    Rules(Rules),
    /// What changed in the rig, what follows from it, and which findings are new, worse or cured
    #[command(after_help = DIFF_HELP)]
    Diff(Diff),
    /// Every worked-out value, with how good it is and its unit
    Derive(Derive),
    /// An invented club's book with two seasons of commits, to try everything on
    Sample(Sample),
    /// What may stand in a record, as JSON Schema, for editors
    Schema(Schema),
    /// Every limit in force, for which boat, and where it is set
    Settings(Settings),
    /// A boat's rig card: every value, what follows from it, and its verdict
    Card(Card),
    /// One page of a boat to print: her rig card with drawings, or a blank one to write on
    #[command(after_help = sheet::SHEET_HELP)]
    Sheet(Sheet),
    /// Each change of a value: when measured, when committed, by whom, old and new, verdict then
    #[command(after_help = past::EXITS)]
    History(History),
    /// Every value of a record with who last set it, when, and its age
    #[command(after_help = past::EXITS)]
    Blame(Blame),
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
}

const LINT_EXITS: &str = "\
Exit codes:
  0  checked, nothing at or above the failing level
  1  findings at or above it; danger on a boat in use always counts
  2  wrong usage, or a club.yaml that can't be used
  3  could not check: nothing to check, or something that can't be read
  4  a fault of the program";

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
pub(super) struct Lint {
    /// The book's folder [default: the book around the current folder]
    #[arg(value_name = "BOOK")]
    pub(super) book: Option<PathBuf>,

    /// With --name: that file's text comes from standard input
    #[arg(value_name = "-")]
    pub(super) dash: Option<PathBuf>,

    /// Check the book as of this commit, tag or branch; nothing is checked out
    #[arg(long, value_name = "REV", conflicts_with_all = ["staged", "name"])]
    pub(super) at: Option<String>,

    /// Check what is about to be committed
    #[arg(long, conflicts_with_all = ["merge_with", "name"])]
    pub(super) staged: bool,

    /// Check what merging this commit into HEAD, or into --at, would give; nothing is merged
    #[arg(long, value_name = "REV", conflicts_with = "name")]
    pub(super) merge_with: Option<String>,

    /// Mark each finding new, worse, known or cured since the history parted from this commit's;
    /// only new, worse and danger count for the exit code
    #[arg(long, value_name = "REV")]
    pub(super) since: Option<String>,

    /// Take limits and waivers from this commit, and tell every limit that the book loosens
    #[arg(long, value_name = "REV")]
    pub(super) rules_from: Option<String>,

    /// The day to take for today, such as 2026-10-17 [default: today; with --at, the commit's]
    #[arg(long, value_name = "DATE", value_parser = day)]
    pub(super) as_of: Option<Date>,

    /// From which level on the exit code is 1; danger counts always, even with never
    #[arg(long, value_name = "LEVEL", value_enum, default_value = "fault")]
    pub(super) fail_on: FailOn,

    /// How the report is written
    #[arg(long, value_enum, default_value = "text")]
    pub(super) format: Format,

    /// One plain sentence a finding, units spelled out, no drawing: for screen readers
    #[arg(long, conflicts_with = "format")]
    pub(super) spoken: bool,

    /// Also write the report in this format to this file, such as sarif=report.sarif; may be
    /// repeated
    #[arg(long, value_name = "FORMAT=FILE", value_parser = also)]
    pub(super) also: Vec<Also>,

    /// Only findings of this name or below it, such as kittiwake/seat-2; may be repeated
    #[arg(long, value_name = "NAME")]
    pub(super) only: Vec<String>,

    /// Take the text of this file from standard input, the rest from the book; end with -
    #[arg(long, value_name = "PATH")]
    pub(super) name: Option<PathBuf>,

    /// Show every finding as if no waiver were granted
    #[arg(long)]
    pub(super) no_waivers: bool,

    /// In sarif and github, tell waived findings too, marked as such; elsewhere they always are
    #[arg(long)]
    pub(super) show_waived: bool,

    /// A book without any boat, oar set or crew is in order
    #[arg(long)]
    pub(super) allow_empty: bool,

    #[command(flatten)]
    pub(super) look: LookOptions,
}

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
pub(super) enum FailOn {
    Danger,
    Fault,
    Unsure,
    Note,
    Never,
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
