//! The order of the work: each adjustment disturbs the next, so what disturbs most is read first.
//! Holds names of fields and nothing else.

/// Asked before anything is measured on a boat.
pub(super) const DAY: &[&str] = &["rigged/by", "rigged/checked-by", "rigged/where", "rigged/wind"];

/// The level, before all that is plumbed.
pub(super) const LEVEL: &[&str] = &[
    "level-mark/where",
    "level-mark/found-afloat",
    "rigged/level/trim",
    "rigged/level/roll",
    "rigged/pin-gauge",
];

/// A seat: the pin, the bed, the blade, the gap, the handle, the chock.
pub(super) const SEAT: &[&str] = &[
    "side",
    "oar",
    "pin/spread",
    "pin/along",
    "pin/lean/aft",
    "pin/lean/out",
    "pin/thick",
    "pin/plate/along",
    "pin/plate/across",
    "oar-bed",
    "rowlock/turns",
    "pitch/square",
    "pitch/catch",
    "pitch/finish",
    "rowlock/gap",
    "rowlock/after-tip",
    "rowlock/horn",
    "rowlock/long",
    "rowlock/above-seat",
    "lifts-out/square",
    "lifts-out/catch",
    "lifts-out/finish",
    "lifts-out/along",
    "seat-mark",
    "handle-past-mark",
    "chock-to-pin",
    "note",
];

/// Last, the whole boat.
pub(super) const WHOLE: &[&str] = &["foot-holes/first", "foot-holes/apart", "foot-holes/count"];

/// Asked before anything is measured on a set of oars.
pub(super) const SET: &[&str] = &["measured/by", "measured/checked-by", "pitch-mark"];

/// An oar.
pub(super) const OAR: &[&str] = &[
    "length",
    "inboard",
    "grip",
    "blade/length",
    "blade/width",
    "blade/at-mark",
    "shaft/bears",
    "shaft/leather",
    "shaft/widest",
    "shaft/narrowest",
    "shaft/round",
    "pitch",
    "flex/drop",
    "flex/load-kg",
    "flex/at",
    "state",
];

/// Fields of a seat that are set by hand in the file, not measured at the boat. A test sees to it
/// that each field is either here or above.
#[cfg(test)]
pub(super) const NOT_ASKED_OF_A_SEAT: &[&str] = &[
    "seat",
    "collar-to-pin",
    "worked-out/pitch",
    "worked-out/handle-past-mark",
    "worked-out/gearing",
    "worked-out/clearance",
    "worked-out/lean-aft",
    "worked-out/lean-out",
];

/// The same of an oar.
#[cfg(test)]
pub(super) const NOT_ASKED_OF_AN_OAR: &[&str] = &["oar", "defects"];

/// Fields that are asked for only as long as they are not written: they say where a value belongs,
/// or what the others mean, and are not measured again.
pub(super) const ONLY_IF_MISSING: &[&str] =
    &["side", "oar", "level-mark/where", "level-mark/found-afloat", "rigged/pin-gauge"];

/// Fields that no day belongs to.
pub(super) const UNDATED: &[&str] = &["side", "oar", "note", "state"];
