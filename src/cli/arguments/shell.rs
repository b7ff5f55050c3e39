//! What a shell and its manual ask for.

use std::path::PathBuf;

use clap::Args;
use clap_complete::Shell;

#[derive(Args, Debug)]
pub(in crate::cli) struct Completions {
    /// The shell
    #[arg(value_name = "SHELL", value_enum)]
    pub(in crate::cli) shell: Shell,
}

#[derive(Args, Debug)]
pub(in crate::cli) struct Man {
    /// Write every page into this folder [default: the first page to standard output]
    #[arg(long, value_name = "DIR")]
    pub(in crate::cli) out: Option<PathBuf>,
}
