//! Sets a value, or puts one in that was not written before.

use super::Patch;
use super::Refused;
use super::address::Address;
use super::address::Step;
use super::finding;
use super::lines;
use super::meaning::Meaning;
use super::order;
use super::order::Spot;
use super::wording::Wording;
use super::wording::word;
use crate::reading::Described;
use crate::reading::NOT_MEASURED;
use crate::reading::tree::Node;
use crate::reading::tree::Shape;

/// Returns what makes `value` stand at a place.
pub(super) fn set(
    text: &str,
    root: &Node,
    at: &Address,
    value: &Wording,
    form: &[Described],
) -> Result<Patch, Refused> {
    let reached = finding::reached(root, at);
    let wording = below(reached.left, value);
    match (&reached.node.shape, reached.left.first()) {
        (_, None) => Ok(in_place_of(text, reached.node, value)),
        (Shape::Map(entries), Some(Step::Key(key))) => {
            let wording = below(&reached.left[1..], value);
            let section = &at.steps()[..reached.taken];
            let spot = order::spot(entries, key, form, section);
            Ok(entry(text, reached.node, spot, key, &wording))
        }
        (Shape::List(items), Some(step)) if !matches!(step, Step::Key(_)) => {
            let part = of_list(&wording);
            Ok(last_part(text, reached.node, items, &part))
        }
        (shape, Some(_)) if says_nothing(shape) => Ok(in_place_of(text, reached.node, &wording)),
        _ => Err(Refused::NoSuchPlace { at: at.clone() }),
    }
}

/// Returns what makes `value` stand as the last part of the list at a place.
pub(super) fn append(
    text: &str,
    root: &Node,
    at: &Address,
    value: &Wording,
    form: &[Described],
) -> Result<Patch, Refused> {
    let reached = finding::reached(root, at);
    match &reached.node.shape {
        Shape::List(items) if reached.left.is_empty() => {
            Ok(last_part(text, reached.node, items, value))
        }
        shape if !reached.left.is_empty() || says_nothing(shape) => {
            let list = Wording::of(Meaning::List(vec![value.meaning().clone()]));
            set(text, root, at, &list, form)
        }
        _ => Err(Refused::NoSuchPlace { at: at.clone() }),
    }
}

/// Returns whether a value may give way to a section.
fn says_nothing(shape: &Shape) -> bool {
    matches!(shape, Shape::Empty)
        || matches!(shape, Shape::Scalar(scalar) if scalar.text == NOT_MEASURED)
}

/// Returns the value with the sections and list parts that lead to it.
fn below(steps: &[Step], value: &Wording) -> Wording {
    if steps.is_empty() {
        return value.clone();
    }
    let mut meaning = Meaning::Empty;
    meaning.set(steps, value.meaning().clone());
    Wording::of(meaning)
}

/// Returns the only part of a list.
fn of_list(wording: &Wording) -> Wording {
    match wording.meaning() {
        Meaning::List(parts) if parts.len() == 1 => Wording::of(parts[0].clone()),
        _ => wording.clone(),
    }
}

fn in_place_of(text: &str, node: &Node, value: &Wording) -> Patch {
    let (start, end) = (node.span.start, node.span.end);
    let end = start + text[start..end].trim_end_matches(['\n', '\r']).len();
    let before = text[..start].trim_end();
    if start == end {
        let space =
            if before.len() == start && text[..start].ends_with([':', '-']) { " " } else { ": " };
        return Patch { bytes: start..end, new: format!("{space}{}", value.on_one_line()) };
    }
    // A value that began on the line below its key moves up beside it.
    let is_below = before.ends_with(':') && text[before.len()..start].contains('\n');
    if is_below {
        let new = format!(" {}", value.on_one_line());
        return Patch { bytes: before.len()..end, new };
    }
    Patch { bytes: start..end, new: value.on_one_line() }
}

/// Returns what puts a key and its value into a section.
fn entry(text: &str, map: &Node, spot: Spot<'_>, key: &str, value: &Wording) -> Patch {
    let in_flow = || format!("{}: {}", word(key), value.on_one_line());
    let at = |at: usize, new: String| Patch { bytes: at..at, new };
    let ending = lines::ending(text);
    match spot {
        Spot::Alone => at(map.span.start + 1, in_flow()),
        Spot::Behind(entry) if is_flow(text, map) => {
            at(entry.value.span.end, format!(", {}", in_flow()))
        }
        Spot::Before(entry) if is_flow(text, map) => {
            at(entry.key_span.start, format!("{}, ", in_flow()))
        }
        Spot::Behind(entry) => {
            let column = lines::column(text, entry.key_span.start);
            let lines = entry_lines(key, value, column, ending);
            new_line(text, entry.value.span.end, &lines, column)
        }
        Spot::Before(entry) => {
            let column = lines::column(text, entry.key_span.start);
            let lines = entry_lines(key, value, column, ending);
            at(entry.key_span.start, format!("{lines}{ending}{}", " ".repeat(column)))
        }
    }
}

/// Returns a key with its value as lines, the first without its indent.
fn entry_lines(key: &str, value: &Wording, column: usize, ending: &str) -> String {
    let inner = column + 2;
    let indent = " ".repeat(inner);
    let key = word(key);
    match (value.lines(), value.meaning()) {
        (Some(lines), _) if lines.starts_with(['|', '>']) => {
            format!("{key}: {}", lines::deeper(lines, inner, ending))
        }
        (Some(lines), _) => {
            let lines = lines::deeper(lines, inner, ending);
            format!("{key}:{ending}{indent}{lines}")
        }
        (None, Meaning::List(parts))
            if parts.iter().any(|part| matches!(part, Meaning::Map(_))) =>
        {
            let parts: String = parts
                .iter()
                .map(|part| {
                    format!("{ending}{indent}- {}", Wording::of(part.clone()).on_one_line())
                })
                .collect();
            format!("{key}:{parts}")
        }
        (None, _) => format!("{key}: {}", value.on_one_line()),
    }
}

/// Returns what adds a part at the end of a list.
fn last_part(text: &str, list: &Node, items: &[Node], value: &Wording) -> Patch {
    let Some(last) = items.last() else {
        let at = list.span.start + 1;
        return Patch { bytes: at..at, new: value.on_one_line() };
    };
    if is_flow(text, list) {
        let at = last.span.end;
        return Patch { bytes: at..at, new: format!(", {}", value.on_one_line()) };
    }
    let column = lines::column(text, list.span.start);
    let ending = lines::ending(text);
    let part = match value.lines() {
        Some(lines) => lines::deeper(lines, column + 2, ending),
        None => value.on_one_line(),
    };
    new_line(text, last.span.end, &format!("- {part}"), column)
}

/// Returns what puts lines below the line that a value ends on.
fn new_line(text: &str, end: usize, lines: &str, column: usize) -> Patch {
    let ending = lines::ending(text);
    let at = lines::after(text, end);
    let indent = " ".repeat(column);
    let new = if text[..at].ends_with('\n') {
        format!("{indent}{lines}{ending}")
    } else {
        format!("{ending}{indent}{lines}")
    };
    Patch { bytes: at..at, new }
}

/// Returns whether a section or list stands in brackets.
pub(super) fn is_flow(text: &str, node: &Node) -> bool {
    text[node.span.start..].starts_with(['{', '['])
}
