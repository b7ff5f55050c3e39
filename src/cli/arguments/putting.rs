//! What may be said to the commands that write records.

pub(super) const DERIVE_EXITS: &str = "\
Exit codes, with --write:
  0  every value is written, or was right
  1  a file holds what can't be read and was left as it was
  2  wrong usage, or a club.yaml that can't be used
  3  a file could not be written; it is as it was
  4  a fault of the program";
