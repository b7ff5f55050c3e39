//! The program as it is run: exit codes, formats, standard input, colours, a closed pipe.

#[path = "cli/asking.rs"]
mod asking;
#[path = "cli/exits.rs"]
mod exits;
#[path = "cli/formats.rs"]
mod formats;
#[path = "cli/run.rs"]
mod run;
#[path = "cli/standard_input.rs"]
mod standard_input;
#[path = "cli/surroundings.rs"]
mod surroundings;
