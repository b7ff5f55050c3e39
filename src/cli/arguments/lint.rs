//! What may stand on the command line of `lint`.

use std::path::PathBuf;

use clap::Args;
use clap::ValueEnum;

use super::LookOptions;
use super::day;
use super::formats::Also;
use super::formats::Format;
use super::formats::also;
use crate::units::Date;

pub(super) const EXITS: &str = "\
Exit codes:
  0  checked, nothing at or above the failing level
  1  findings at or above it; danger on a boat in use always counts
  2  wrong usage, or a club.yaml that can't be used
  3  could not check: nothing to check, something that can't be read, a commit
     that is not there
  4  a fault of the program";

#[derive(Args, Debug)]
pub(in crate::cli) struct Lint {
    /// The book's folder [default: the book around the current folder]
    #[arg(value_name = "BOOK")]
    pub(in crate::cli) book: Option<PathBuf>,

    /// With --name: that file's text comes from standard input
    #[arg(value_name = "-")]
    pub(in crate::cli) dash: Option<PathBuf>,

    /// Check the book as of this commit, tag or branch; nothing is checked out
    #[arg(long, value_name = "REV", conflicts_with_all = ["staged", "name"])]
    pub(in crate::cli) at: Option<String>,

    /// Check what is about to be committed
    #[arg(long, conflicts_with_all = ["merge_with", "name"])]
    pub(in crate::cli) staged: bool,

    /// Check what merging this commit into HEAD, or into --at, would give; nothing is merged
    #[arg(long, value_name = "REV", conflicts_with = "name")]
    pub(in crate::cli) merge_with: Option<String>,

    /// Mark each finding new, worse, known or cured since the history parted from this commit's;
    /// only new, worse and danger count for the exit code
    #[arg(long, value_name = "REV")]
    pub(in crate::cli) since: Option<String>,

    /// Take limits and waivers from this commit, and tell every limit that the book loosens
    #[arg(long, value_name = "REV")]
    pub(in crate::cli) rules_from: Option<String>,

    /// The day to take for today, such as 2026-10-17 [default: today; with --at, the commit's]
    #[arg(long, value_name = "DATE", value_parser = day)]
    pub(in crate::cli) as_of: Option<Date>,

    /// From which level on the exit code is 1; danger counts always, even with never
    #[arg(long, value_name = "LEVEL", value_enum, default_value = "fault")]
    pub(in crate::cli) fail_on: FailOn,

    /// How the report is written
    #[arg(long, value_enum, default_value = "text")]
    pub(in crate::cli) format: Format,

    /// One plain sentence a finding, units spelled out, no drawing: for screen readers
    #[arg(long, conflicts_with = "format")]
    pub(in crate::cli) spoken: bool,

    /// Also write the report in this format to this file, such as sarif=report.sarif; may be
    /// repeated
    #[arg(long, value_name = "FORMAT=FILE", value_parser = also)]
    pub(in crate::cli) also: Vec<Also>,

    /// Only findings of this name or below it, such as kittiwake/seat-2; may be repeated
    #[arg(long, value_name = "NAME")]
    pub(in crate::cli) only: Vec<String>,

    /// Take the text of this file from standard input, the rest from the book; end with -
    #[arg(long, value_name = "PATH")]
    pub(in crate::cli) name: Option<PathBuf>,

    /// Show every finding as if no waiver were granted
    #[arg(long)]
    pub(in crate::cli) no_waivers: bool,

    /// In sarif and github, tell waived findings too, marked as such; elsewhere they always are
    #[arg(long)]
    pub(in crate::cli) show_waived: bool,

    /// A book without any boat, oar set or crew is in order
    #[arg(long)]
    pub(in crate::cli) allow_empty: bool,

    #[command(flatten)]
    pub(in crate::cli) look: LookOptions,
}

#[derive(Clone, Copy, Debug, ValueEnum)]
pub(in crate::cli) enum FailOn {
    Danger,
    Fault,
    Unsure,
    Note,
    Never,
}
