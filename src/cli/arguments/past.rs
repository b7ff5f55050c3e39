//! What may stand on the command line of the commands that tell of the past.

use std::path::PathBuf;

use clap::Args;
use clap::ValueEnum;

use super::LookOptions;
use super::day;
use crate::units::Date;

pub(super) const EXITS: &str = "\
Exit codes:
  0  told
  2  wrong usage: no such name, commit or rule
  3  could not be told: no repository, or something of it that can't be read";

#[derive(Args, Debug)]
pub(in crate::cli) struct History {
    /// The value, such as kittiwake/seat-2/rowlock/gap, or a seat or record with all its values;
    /// * stands for any one part
    #[arg(value_name = "NAME")]
    pub(in crate::cli) name: String,

    /// The book's folder [default: the book around the current folder]
    #[arg(long, value_name = "DIR")]
    pub(in crate::cli) book: Option<PathBuf>,

    /// Only what this commit, branch or tag follows from [default: HEAD, then the folder]
    #[arg(long, value_name = "REV")]
    pub(in crate::cli) at: Option<String>,

    /// Tell instead which commit first had this rule's finding there, and where it was cured
    #[arg(long, value_name = "RULE", conflicts_with_all = ["trend", "all_touches"])]
    pub(in crate::cli) when: Option<String>,

    /// Of a number: how it drifts since the last bend, knock or mending, how sure that is, and when
    /// it would reach a limit
    #[arg(long)]
    pub(in crate::cli) trend: bool,

    /// Tell also what left the value as it was: units, decimals, files moved or written anew
    #[arg(long)]
    pub(in crate::cli) all_touches: bool,

    /// A clone without its whole history can't answer: exit with 3
    #[arg(long)]
    pub(in crate::cli) require_full_history: bool,

    /// text is for people; json is for programs; markdown is for a web page
    #[arg(long, value_enum, default_value = "text")]
    pub(in crate::cli) format: PastFormat,

    /// One plain sentence a row, units spelled out, no table: for screen readers
    #[arg(long, conflicts_with = "format")]
    pub(in crate::cli) spoken: bool,

    #[command(flatten)]
    pub(in crate::cli) look: LookOptions,
}

#[derive(Args, Debug)]
pub(in crate::cli) struct Blame {
    /// The boat, oar set or crew, by its id
    #[arg(value_name = "BOAT")]
    pub(in crate::cli) boat: String,

    /// The book's folder [default: the book around the current folder]
    #[arg(long, value_name = "DIR")]
    pub(in crate::cli) book: Option<PathBuf>,

    /// As of this commit, branch or tag [default: what lies in the folder]
    #[arg(long, value_name = "REV")]
    pub(in crate::cli) at: Option<String>,

    /// Only values measured more than so many days ago
    #[arg(long, value_name = "DAYS", value_parser = clap::value_parser!(i64).range(0..))]
    pub(in crate::cli) older_than: Option<i64>,

    /// The day that ages are counted to [default: today; with --at, the commit's]
    #[arg(long, value_name = "DATE", value_parser = day)]
    pub(in crate::cli) as_of: Option<Date>,

    /// A clone without its whole history can't answer: exit with 3
    #[arg(long)]
    pub(in crate::cli) require_full_history: bool,

    /// text is a table; json is for programs; markdown is for a web page
    #[arg(long, value_enum, default_value = "text")]
    pub(in crate::cli) format: PastFormat,

    /// One plain sentence a row, units spelled out, no table: for screen readers
    #[arg(long, conflicts_with = "format")]
    pub(in crate::cli) spoken: bool,

    #[command(flatten)]
    pub(in crate::cli) look: LookOptions,
}

#[derive(Clone, Copy, Debug, ValueEnum)]
pub(in crate::cli) enum PastFormat {
    Text,
    Json,
    Markdown,
}
