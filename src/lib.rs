//! Reads a rowing club's boat logbook and says what is unsafe, out of tolerance, undecidable or
//! wrongly written.
//!
//! The crate is built in floors. A room uses only rooms below it; `tests/floors.rs` holds the
//! code to this list.
//!
//! | floor | room          | knows                                                        |
//! |-------|---------------|--------------------------------------------------------------|
//! | 6     | [`cli`]       | arguments, exit codes, which room to call                    |
//! | 5     | [`reports`]   | findings, rules and values as text and JSON; no judgement    |
//! | 4     | [`rules`]     | what is wrong, why it matters, what to do at the boat        |
//! | 4     | [`writing`]   | what records and git's hooks are to say                      |
//! | 4     | [`planning`]  | what to do at the boat: work, seats, which oars suit          |
//! | 4     | [`history`]   | what a book says by record and name, and how it came to that |
//! | 3     | [`reading`]   | text into a model, every error with its place                |
//! | 3     | [`working`]   | what follows from the readings, each value with its budget   |
//! | 2     | [`model`]     | boats, oars, crews, classes, limits; where each was written  |
//! | 1     | [`geometry`]  | plane and solid geometry of a rigged boat                    |
//! | 1     | [`metrology`] | how good a value is, and what may be concluded from it       |
//! | 1     | [`store`]     | named texts from a folder; knows no boats                    |
//! | 0     | [`units`]     | lengths, angles, slopes, weights, dates                      |

pub mod cli;
pub mod geometry;
pub mod history;
pub mod metrology;
pub mod model;
pub mod planning;
pub mod reading;
pub mod reports;
pub mod rules;
pub mod store;
pub mod units;
pub mod working;
pub mod writing;
