//! What may stand on the command line of `guard` and `checkup`.

use std::path::PathBuf;

use clap::Args;
use clap::Subcommand;
use clap::ValueEnum;

pub(super) const EXITS: &str = "\
A hook in a clone is no gate: cherry-pick, revert, commit --no-verify and the
pages of a forge pass it by. CI, or guard receive on the server, is the gate.

Exit codes:
  0  done; status: all in order; receive: the push may be taken
  1  status: something to mend; receive: refused for what was found
  2  wrong usage, a club.yaml that can't be used, hooks that others may use too
  3  something that can't be read or written; receive: refused, not checked
  4  a fault of the program";

pub(super) const CHECKUP_EXITS: &str = "\
Exit codes:
  0  all well
  1  something to mend
  2  wrong usage
  3  something could not be looked at
  4  a fault of the program";

#[derive(Args, Debug)]
pub(in crate::cli) struct Guard {
    #[command(subcommand)]
    pub(in crate::cli) what: GuardWhat,
}

#[derive(Debug, Subcommand)]
pub(in crate::cli) enum GuardWhat {
    /// Put the hooks in place: before a commit, a merge and a push; in a bare repository, before a
    /// push is taken
    #[command(after_help = EXITS)]
    Install(Install),
    /// Take our hooks away, and put back those that were there before
    #[command(after_help = EXITS)]
    Remove(Books),
    /// What stands in the place of each hook
    #[command(after_help = EXITS)]
    Status(Books),
    /// The server's pre-receive: reads what git says of a push on standard input
    #[command(after_help = EXITS)]
    Receive(Receive),
    /// What pre-commit calls
    #[command(hide = true)]
    Commit(Books),
    /// What pre-merge-commit calls
    #[command(hide = true)]
    Merge(Books),
    /// What pre-push calls
    #[command(hide = true)]
    Push(Push),
}

#[derive(Args, Debug)]
pub(in crate::cli) struct Books {
    /// The book's folder; may be repeated [default: the book around the current folder]
    #[arg(long, value_name = "DIR")]
    pub(in crate::cli) book: Vec<PathBuf>,
}

#[derive(Args, Debug)]
pub(in crate::cli) struct Install {
    #[command(flatten)]
    pub(in crate::cli) books: Books,

    /// Let the hooks call a program that lies among the repository's own files, where a commit can
    /// change it
    #[arg(long)]
    pub(in crate::cli) program_among_files: bool,
}

#[derive(Args, Debug)]
pub(in crate::cli) struct Receive {
    /// The book's folder in the repository's files; may be repeated [default: the top, or the only
    /// book there is]
    #[arg(long, value_name = "DIR")]
    pub(in crate::cli) book: Vec<PathBuf>,

    /// Take limits and waivers from the branch as it was: a push can't loosen its own
    #[arg(long)]
    pub(in crate::cli) hold_limits: bool,
}

#[derive(Args, Debug)]
pub(in crate::cli) struct Push {
    #[command(flatten)]
    pub(in crate::cli) books: Books,

    /// The name git has for the repository that is pushed to
    #[arg(long, value_name = "NAME", default_value = "")]
    pub(in crate::cli) remote: String,
}

#[derive(Args, Debug)]
pub(in crate::cli) struct Checkup {
    /// The book's folder [default: the book around the current folder]
    #[arg(long, value_name = "DIR")]
    pub(in crate::cli) book: Option<PathBuf>,

    /// text is a line for each thing; json is for programs
    #[arg(long, value_enum, default_value = "text")]
    pub(in crate::cli) format: CheckupFormat,
}

#[derive(Clone, Copy, Debug, ValueEnum)]
pub(in crate::cli) enum CheckupFormat {
    Text,
    Json,
}
