//! Which reading to take again, and with what, so that a value is decided. Knows no limits.

use crate::metrology::Part;
use crate::model::Place;
use crate::model::Tool;
use crate::working::Budget;
use crate::working::Input;
use crate::working::Tools;
use crate::working::Unit;

/// Tools that measure lengths, the coarsest first.
const LENGTH_TOOLS: [Tool; 4] = [Tool::Tape, Tool::Bob, Tool::Rule, Tool::Callipers];

/// How finely one can hope to read on a beach, in millimetres or degrees.
const FINE: [f64; 4] = [0.5, 0.2, 0.1, 0.05];

/// How far callipers and a rule reach, in millimetres. Common practice, no source.
const CALLIPERS_REACH: f64 = 150.0;
const RULE_REACH: f64 = 1000.0;

/// More readings than this are not named one by one.
const NAMED: usize = 3;

/// Returns what to read again, and with what, so that the value is good `enough`.
///
/// The reading with the greatest share is read finer, and with it all that are read alike.
pub(super) fn measure_again(value: &Budget, tools: Tools, enough: impl Fn(f64) -> bool) -> String {
    let Some((worst, _)) = value.shares().first().copied() else {
        return "Look at the readings again.".to_owned();
    };
    let parts = value.parts().iter().copied();
    let group: Vec<Part<Input>> = parts.filter(|part| alike(&part.input, &worst)).collect();
    let now = group.iter().map(|part| part.half_width).fold(0.0, f64::max);
    let decides = |to: f64| to < now && enough(read_to(value, &group, to));
    let tool = |tool: &&Tool| {
        let half_width = tools.half_width(**tool);
        worst.unit == Unit::Mm && suits(tools, &worst, **tool) && decides(half_width)
    };
    if let Some(tool) = LENGTH_TOOLS.iter().find(tool) {
        let what = called(&group, tools.half_width(*tool));
        return format!("Measure again: read {what} with {}.", tool.words());
    }
    match FINE.into_iter().find(|to| decides(*to)) {
        Some(to) => {
            let what = called(&group, to);
            format!("Measure again: read {what} to ± {to} {}.", worst.unit.word())
        }
        None => {
            let what = called(&group, 0.0);
            format!("Measure again: {what} first, several times and as finely as you can.")
        }
    }
}

/// One measurement that would make a value better known.
#[derive(Clone, Debug, PartialEq)]
pub struct Sharper {
    /// What to read again.
    pub what: String,
    /// Where it was written.
    pub place: Place,
    /// With what, or how finely: "with callipers, to ± 0.2 mm", "to ± 0.1 deg".
    pub with: String,
    /// What the value would then be good to.
    pub good_to: f64,
}

/// Returns the one reading that would sharpen a value most, taken with the finest tool that suits
/// it; nothing where that is no better than what is there.
pub(super) fn sharpest(value: &Budget, tools: Tools) -> Option<Sharper> {
    let (worst, _) = value.shares().first().copied()?;
    let part = value.parts().iter().find(|part| part.input == worst)?;
    let unit = worst.unit.word();
    let with_tool = |tool: Tool| {
        let half_width = tools.half_width(tool);
        (half_width, format!("with {}, to ± {half_width} {unit}", tool.words()))
    };
    let to = |to: f64| (to, format!("to ± {to} {unit}").trim_end().to_owned());
    let length = worst.unit == Unit::Mm;
    let suiting = LENGTH_TOOLS.into_iter().filter(|tool| length && suits(tools, &worst, *tool));
    let finest = suiting.map(with_tool).min_by(|one, other| one.0.total_cmp(&other.0));
    let finer = finest.filter(|(half_width, _)| *half_width < part.half_width);
    let finer = finer.or_else(|| FINE.into_iter().find(|to| *to < part.half_width).map(to));
    let (half_width, with) = finer?;
    let good_to = value.read_again_with(worst, half_width).expanded();
    Some(Sharper { what: worst.what.to_owned(), place: worst.place, with, good_to })
}

/// Whether a tool can take the place of the one a length was read with.
///
/// Nobody lays callipers or a rule over more than they reach. A width can be read with anything
/// else. Elsewhere a tape can't stand in for a bob, nor a bob for a
/// rule, so that only tools at least as fine as the reading's own will do.
fn suits(tools: Tools, reading: &Input, tool: Tool) -> bool {
    let reach = match tool {
        Tool::Callipers => CALLIPERS_REACH,
        Tool::Rule => RULE_REACH,
        _ => f64::INFINITY,
    };
    let reaches = tool == reading.tool || reading.value.abs() <= reach;
    let fine =
        reading.tool == Tool::Callipers || tools.half_width(tool) <= tools.half_width(reading.tool);
    reaches && fine
}

/// How good the value is once everything coarser in the group is read to ± `to`.
fn read_to(value: &Budget, group: &[Part<Input>], to: f64) -> f64 {
    let coarser = group.iter().filter(|part| part.half_width > to);
    coarser.fold(value.clone(), |value, part| value.read_again_with(part.input, to)).expanded()
}

/// The readings that are coarser than `to`, as one would call them.
fn called(group: &[Part<Input>], to: f64) -> String {
    let mut names: Vec<(&str, usize)> = Vec::new();
    for part in group.iter().filter(|part| part.half_width > to) {
        match names.iter_mut().find(|(name, _)| *name == part.input.what) {
            Some((_, count)) => *count += 1,
            None => names.push((part.input.what, 1)),
        }
    }
    let each = |(name, count): &(&str, usize)| {
        if *count > 1 { format!("each {name}") } else { format!("the {name}") }
    };
    match names.as_slice() {
        [] => "the readings".to_owned(),
        [one] => each(one),
        [most @ .., last] if names.len() <= NAMED => {
            let most: Vec<String> = most.iter().map(each).collect();
            format!("{} and {}", most.join(", "), each(last))
        }
        _ => format!("all that was read with {}", group[0].input.tool.words()),
    }
}

fn alike(one: &Input, other: &Input) -> bool {
    one.what == other.what || (one.tool == other.tool && one.unit == other.unit)
}
