//! One change of one text: part of a block replaced, a block put elsewhere, deeper indents. Every
//! change is proven: what it speaks of stands there, once.

use std::ops::Range;

/// Replaces the one `from` in a block of the text. No anchor means the whole text.
pub(super) fn replace(text: &str, anchor: &str, from: &str, to: &str) -> Result<String, String> {
    let block = block(text, anchor)?;
    match text[block.clone()].matches(from).count() {
        1 => {
            let changed = text[block.clone()].replacen(from, to, 1);
            Ok(format!("{}{changed}{}", &text[..block.start], &text[block.end..]))
        }
        count => Err(format!("{from:?} stands {count} times under {anchor:?}")),
    }
}

/// Puts a block of the text in front of another one.
pub(super) fn put_before(text: &str, moved: &str, before: &str) -> Result<String, String> {
    let block = block(text, moved)?;
    let rest = format!("{}{}", &text[..block.start], &text[block.end..]);
    let at = self::block(&rest, before)?.start;
    Ok(format!("{}{}{}", &rest[..at], &text[block], &rest[at..]))
}

/// Sets every indented line two columns deeper.
pub(super) fn indent_more(text: &str) -> String {
    let indented =
        |line: &str| if indent(line) > 0 { format!("  {line}") } else { line.to_owned() };
    text.split_inclusive('\n').map(indented).collect()
}

/// Returns the one line that begins with the anchor and all lines below that are deeper.
fn block(text: &str, anchor: &str) -> Result<Range<usize>, String> {
    if anchor.is_empty() {
        return Ok(0..text.len());
    }
    let lines = lines(text);
    let begins = |(_, line): &(usize, &str)| line.trim_start().starts_with(anchor);
    let found: Vec<usize> = (0..lines.len()).filter(|at| begins(&lines[*at])).collect();
    let [first] = found[..] else {
        return Err(format!("{} lines begin with {anchor:?}", found.len()));
    };
    let (start, line) = lines[first];
    let depth = indent(line);
    let next = lines[first + 1..].iter().find(|(_, line)| indent(line) <= depth);
    Ok(start..next.map_or(text.len(), |(at, _)| *at))
}

fn lines(text: &str) -> Vec<(usize, &str)> {
    let mut at = 0;
    let mut lines = Vec::new();
    for line in text.split_inclusive('\n') {
        lines.push((at, line));
        at += line.len();
    }
    lines
}

fn indent(line: &str) -> usize {
    line.len() - line.trim_start_matches(' ').len()
}

#[cfg(test)]
mod tests {
    use super::*;

    const BOAT: &str =
        "boat: petrel\nseats:\n  - seat: 1\n    gap: 60\n  - seat: 2\n    gap: 60\nknocks: []\n";

    #[test]
    fn a_value_is_replaced_at_its_own_seat_only() {
        let changed = replace(BOAT, "- seat: 2", "gap: 60", "gap: 59").expect("it stands there");
        assert_eq!(changed, BOAT.replace("gap: 60\nknocks", "gap: 59\nknocks"));
    }

    #[test]
    fn what_stands_twice_or_nowhere_is_refused() {
        replace(BOAT, "", "gap: 60", "gap: 59").expect_err("it stands twice");
        replace(BOAT, "- seat: 1", "gap: 61", "gap: 59").expect_err("it stands nowhere");
        replace(BOAT, "- seat: 3", "gap: 60", "gap: 59").expect_err("there is no such block");
    }

    #[test]
    fn a_block_goes_with_all_that_is_deeper() {
        let moved = put_before(BOAT, "knocks:", "seats:").expect("both stand there");
        assert!(moved.starts_with("boat: petrel\nknocks: []\nseats:\n"), "{moved}");
        assert!(moved.ends_with("gap: 60\n"), "{moved}");
    }

    #[test]
    fn deeper_indents_keep_every_line() {
        let deeper = indent_more(BOAT);
        assert!(deeper.contains("\n    - seat: 1\n      gap: 60\n"), "{deeper}");
    }
}
