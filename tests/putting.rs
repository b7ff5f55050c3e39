//! The commands that write records, as they are run.

#[path = "putting/deriving.rs"]
mod deriving;
#[path = "cli/run.rs"]
#[allow(dead_code, reason = "each test program uses its own part of this")]
mod run;
