//! What may stand on the command line of the commands that propose something.

use std::path::PathBuf;

use clap::Args;
use clap::ValueEnum;

use super::LookOptions;

pub(super) const FIT_EXITS: &str = "\
Exit codes:
  0  nothing better: leave feet, chocks and seats as they are
  1  something to change, or not known of one rower
  2  wrong usage: no such crew; or a club.yaml that can't be used
  3  could not be worked out: no boat, or nothing known of any rower
  4  a fault of the program";

#[derive(Args, Debug)]
pub(in crate::cli) struct Fit {
    /// The crew, by its id; it is seated in the boat that its file names
    #[arg(value_name = "CREW")]
    pub(in crate::cli) crew: String,

    /// The book's folder [default: the book around the current folder]
    #[arg(long, value_name = "DIR")]
    pub(in crate::cli) book: Option<PathBuf>,

    /// text is a table with what follows from it; json is for programs, with every digit
    #[arg(long, value_enum, default_value = "text")]
    pub(in crate::cli) format: FitFormat,

    #[command(flatten)]
    pub(in crate::cli) look: LookOptions,
}

#[derive(Clone, Copy, Debug, ValueEnum)]
pub(in crate::cli) enum FitFormat {
    Text,
    Json,
}
