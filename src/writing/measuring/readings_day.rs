//! Which day the values of a record get: a new rigging day when all were read, else `read-again`.

use std::collections::BTreeMap;

use super::answer::Answer;
use super::dialogue::Dialogue;
use super::question::Question;

/// What becomes of the days.
#[derive(Clone, Debug, Eq, PartialEq)]
pub enum Days {
    /// Nothing that has a day was read.
    Nothing,
    /// All that stands was read: it is the record's day.
    All,
    /// Only these were read, as short as they can be named.
    Some(Vec<String>),
}

impl Dialogue {
    /// Returns what becomes of the days. `left_out` are values whose answers are not written.
    pub(super) fn days(&self, left_out: impl Fn(&Question) -> bool) -> Days {
        let dated: Vec<(&str, bool)> = self
            .answered()
            .filter(|(question, _)| question.is_dated)
            .filter_map(|(question, answer)| {
                let read = answer.read().is_some() && !left_out(question);
                stands(question, answer).then_some((&*question.name, read))
            })
            .collect();
        match dated.iter().filter(|(_, read)| *read).count() {
            0 => Days::Nothing,
            read if read == dated.len() => Days::All,
            _ => Days::Some(shortest(&dated, 1)),
        }
    }
}

/// Returns whether a value stands in the record afterwards.
fn stands(question: &Question, answer: &Answer) -> bool {
    match answer {
        Answer::Read(_) => true,
        Answer::NotMeasured => false,
        Answer::Open | Answer::Kept => question.last.is_some(),
    }
}

/// Returns the names of what was read; of a whole of which all was read, its name alone. `depth` is
/// how many parts the names of the wholes have.
fn shortest(dated: &[(&str, bool)], depth: usize) -> Vec<String> {
    let mut wholes: BTreeMap<(usize, &str), Vec<(&str, bool)>> = BTreeMap::new();
    let mut order: Vec<&str> = Vec::new();
    for own in dated {
        let whole = first_parts(own.0, depth);
        let at = order.iter().position(|before| *before == whole).unwrap_or_else(|| {
            order.push(whole);
            order.len() - 1
        });
        wholes.entry((at, whole)).or_default().push(*own);
    }
    let names = wholes.into_iter().flat_map(|((_, whole), those)| {
        let is_name = those.iter().any(|(name, _)| *name == whole);
        // What holds for the whole boat is named part by part: `rigged` is more than was read.
        let may_be_whole = whole != "rigged";
        if those.iter().all(|(_, read)| *read) && (may_be_whole || is_name) {
            vec![whole.to_owned()]
        } else if is_name || !those.iter().any(|(_, read)| *read) {
            those.iter().filter(|(_, read)| *read).map(|(name, _)| (*name).to_owned()).collect()
        } else {
            shortest(&those, depth + 1)
        }
    });
    names.collect()
}

fn first_parts(name: &str, depth: usize) -> &str {
    let end = name.match_indices('/').nth(depth - 1).map_or(name.len(), |(at, _)| at);
    &name[..end]
}

#[cfg(test)]
mod tests {
    use super::*;

    fn short(dated: &[(&str, bool)]) -> Vec<String> {
        shortest(dated, 1)
    }

    #[test]
    fn what_was_read_whole_is_named_whole() {
        let read = [
            ("rigged/level/trim", true),
            ("rigged/level/roll", true),
            ("seat-1/pin/spread", false),
            ("seat-1/rowlock/gap", true),
            ("seat-1/lifts-out/square", true),
            ("seat-1/lifts-out/catch", true),
            ("seat-2/pin/spread", true),
            ("seat-2/seat-mark", true),
            ("rigged/walk-round/bung", false),
        ];
        let names =
            ["rigged/level", "seat-1/rowlock", "seat-1/lifts-out", "seat-2"].map(str::to_owned);
        assert_eq!(short(&read), names);
    }

    #[test]
    fn of_a_whole_read_in_part_only_the_parts_are_named() {
        let read = [("seat-1/pitch/square", true), ("seat-1/pitch/catch", false)];
        assert_eq!(short(&read), ["seat-1/pitch/square"]);
        assert_eq!(short(&[("seat-1/pitch/square", false)]), Vec::<String>::new());
    }
}
