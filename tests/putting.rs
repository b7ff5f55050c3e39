//! The commands that write records, as they are run.

#[path = "putting/beginning.rs"]
mod beginning;
#[cfg(unix)]
mod chance;
#[cfg(unix)]
#[path = "putting/cut_off.rs"]
mod cut_off;
#[path = "putting/deriving.rs"]
mod deriving;
#[path = "putting/mending.rs"]
mod mending;
#[path = "cli/run.rs"]
#[allow(dead_code, reason = "each test program uses its own part of this")]
mod run;
#[path = "putting/waiving.rs"]
mod waiving;
