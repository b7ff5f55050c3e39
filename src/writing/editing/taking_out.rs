//! Takes a value out, with its key or its dash. A comment beside it stays.

use std::ops::Range;

use super::Patch;
use super::Refused;
use super::address::Address;
use super::address::Step;
use super::finding;
use super::lines;
use super::putting_in::is_flow;
use crate::model::Span;
use crate::reading::tree::Node;
use crate::reading::tree::Shape;

/// Returns what takes out the value at a place.
pub(super) fn removed(text: &str, root: &Node, at: &Address) -> Result<Patch, Refused> {
    let nowhere = || Refused::NoSuchPlace { at: at.clone() };
    let (last, before) = at.steps().split_last().ok_or_else(nowhere)?;
    let mut parent = root;
    for step in before {
        parent = finding::below(parent, step).ok_or_else(nowhere)?;
    }
    if let (Some(Step::Part { key, .. }), Step::Key(own)) = (before.last(), last)
        && key == own
    {
        return Err(Refused::NamesItsPart { at: at.clone() });
    }
    let parts = parts(parent);
    let index = index(parent, last).ok_or_else(nowhere)?;
    let bytes = if is_flow(text, parent) {
        between(text, &parts, index)
    } else if is_beside_its_dash(text, parent, parts[index]) {
        return beside_a_dash(text, &parts, index).ok_or_else(|| unproven(at));
    } else {
        return Ok(whole_lines(text, parts[index]));
    };
    Ok(Patch { bytes, new: String::new() })
}

fn unproven(at: &Address) -> Refused {
    Refused::Unproven { at: at.clone() }
}

/// Returns the bytes of every part of a section or list, keys included.
fn parts(parent: &Node) -> Vec<Span> {
    match &parent.shape {
        Shape::Map(entries) => entries
            .iter()
            .map(|entry| Span { start: entry.key_span.start, end: entry.value.span.end })
            .collect(),
        Shape::List(items) => items.iter().map(|item| item.span).collect(),
        _ => Vec::new(),
    }
}

fn index(parent: &Node, step: &Step) -> Option<usize> {
    match (&parent.shape, step) {
        (Shape::Map(entries), Step::Key(key)) => entries.iter().position(|entry| entry.key == *key),
        (Shape::List(items), step) => finding::index(items, step),
        _ => None,
    }
}

/// Returns a part between brackets, with the comma that parts it from its neighbour.
fn between(text: &str, parts: &[Span], index: usize) -> Range<usize> {
    let own = parts[index];
    if index > 0 {
        return parts[index - 1].end..own.end;
    }
    match parts.get(1) {
        Some(next) if !text[own.end..next.start].contains('#') => own.start..next.start,
        _ => own.start..own.end,
    }
}

/// Returns whether a part of a block section stands on the line of a dash, and so holds its list
/// together.
fn is_beside_its_dash(text: &str, parent: &Node, part: Span) -> bool {
    let before = &text[lines::start(text, part.start)..part.start];
    matches!(parent.shape, Shape::Map(_)) && before.trim_start().starts_with('-')
}

/// Moves the next part of the section up to the dash.
fn beside_a_dash(text: &str, parts: &[Span], index: usize) -> Option<Patch> {
    let (own, next) = (parts.get(index)?, parts.get(index + 1)?);
    let between = &text[own.end..next.start];
    (!between.contains('#')).then(|| Patch { bytes: own.start..next.start, new: String::new() })
}

/// Returns the lines of a part of a block; a comment at the end of the last one stays.
fn whole_lines(text: &str, part: Span) -> Patch {
    let start = lines::start(text, part.start);
    let end = lines::after(text, part.end);
    let ended = part.start + text[part.start..part.end].trim_end().len();
    let rest = text.get(ended..end).unwrap_or_default();
    if let Some(comment) = rest.find('#') {
        let indent: String = text[start..].chars().take_while(|letter| *letter == ' ').collect();
        return Patch { bytes: start..ended + comment, new: indent };
    }
    // The last line of a file without an end takes the end of the line before it along.
    let is_last = end == text.len() && !text.ends_with('\n');
    let start = if is_last { text[..start].trim_end_matches(['\n', '\r']).len() } else { start };
    Patch { bytes: start..end, new: String::new() }
}
