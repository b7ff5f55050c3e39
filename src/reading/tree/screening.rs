//! What can be told from the bare text before it is read as YAML. Knows no values.

use super::BYTES;
use super::Limit;
use super::TreeFault;
use super::TreeFaultKind;
use super::marks;
use crate::model::Span;

/// Returns what makes the file as a whole unfit to be read.
pub(super) fn whole_file(text: &str) -> Option<TreeFault> {
    if text.len() > BYTES {
        let at = marks::character(text, BYTES);
        return Some(TreeFault::new(TreeFaultKind::TooLarge { limit: Limit::Bytes }, at));
    }
    let start = first_byte(text);
    let line = &text[start..marks::line_end(text, start)];
    let stand_in = line.starts_with("version http")
        && (line.contains("git-lfs") || text.lines().any(|line| line.starts_with("oid sha256:")));
    let at = Span { start, end: start + line.len() };
    stand_in.then(|| TreeFault::new(TreeFaultKind::LfsPointer, at))
}

/// Returns where the text begins after its byte-order mark.
pub(super) fn first_byte(text: &str) -> usize {
    text.len() - text.trim_start_matches(marks::BYTE_ORDER_MARK).len()
}

/// Returns the first thing that ends all reading, in the order of the text.
pub(super) fn first_stop(text: &str) -> Option<TreeFault> {
    [forbidden_character(text), unmerged(text)].into_iter().flatten().min_by_key(|stop| stop.at)
}

/// Returns the lines with a `%` before the record, but for those that change nothing.
pub(super) fn directives(text: &str) -> Vec<TreeFault> {
    lines(text)
        .map(|at| Span { start: at.start + first_byte(&text[at.start..at.end]), ..at })
        .map(|at| (at, text[at.start..at.end].trim_end()))
        .filter(|(_, line)| !line.is_empty() && !line.trim_start().starts_with('#'))
        .take_while(|(_, line)| line.starts_with('%'))
        .filter(|(_, line)| !changes_nothing(line))
        .map(|(at, line)| {
            let text = shortened(line);
            let at = Span { end: at.start + line.len(), ..at };
            TreeFault::new(TreeFaultKind::Directive { text }, at)
        })
        .collect()
}

/// Returns `text` short enough to stand in a message.
pub(super) fn shortened(text: &str) -> String {
    const MOST: usize = 60;
    match text.char_indices().nth(MOST) {
        Some((end, _)) => format!("{}…", &text[..end]),
        None => text.to_owned(),
    }
}

fn changes_nothing(directive: &str) -> bool {
    let mut words = directive.split_whitespace().take_while(|word| !word.starts_with('#'));
    (words.next(), words.next(), words.next()) == (Some("%YAML"), Some("1.2"), None)
}

/// Characters that YAML 1.2.2, production 1 (c-printable), leaves out.
fn forbidden_character(text: &str) -> Option<TreeFault> {
    let (start, found) = text.char_indices().find(|(_, character)| is_forbidden(*character))?;
    let what = match found {
        '\0' => "a zero byte".to_owned(),
        _ => format!("an invisible character (U+{:04X})", u32::from(found)),
    };
    let message = format!("{what} stands here: take it out");
    let at = Span { start, end: start + found.len_utf8() };
    Some(TreeFault::new(TreeFaultKind::NotYaml { message }, at))
}

fn is_forbidden(character: char) -> bool {
    match character {
        ' '..='~' | '\t' | '\n' | '\r' | '\u{85}' => false,
        _ => character.is_control() || matches!(character, '\u{fffe}' | '\u{ffff}'),
    }
}

fn unmerged(text: &str) -> Option<TreeFault> {
    const OURS: &str = "<<<<<<< ";
    // The lines are gone through only if it may be worth while.
    if !text.contains(OURS) {
        return None;
    }
    let mut rest = lines(text);
    let mut find = |wanted: fn(&str) -> bool| rest.find(|at| wanted(&text[at.start..at.end]));
    let ours = find(|line| line.starts_with(OURS))?;
    find(|line| line.starts_with(">>>>>>> "))?;
    Some(TreeFault::new(TreeFaultKind::Unmerged, ours))
}

fn lines(text: &str) -> impl Iterator<Item = Span> {
    let mut next = first_byte(text);
    text[next..].split_inclusive(['\n', '\r']).map(move |line| {
        let start = next;
        next += line.len();
        Span { start, end: start + line.trim_end_matches(['\n', '\r']).len() }
    })
}
