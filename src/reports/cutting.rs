//! A line that is too long to be shown, cut around what is pointed at; knows only text.

use std::ops::Range;

use super::shown;

/// How wide a tab is drawn, at most.
const TAB: usize = 4;

/// The least that is shown on either side of what is pointed at.
const BESIDE: usize = 8;

/// A line ready to be drawn, and where on it each mark now stands.
#[derive(Debug, PartialEq)]
pub(super) struct CutLine {
    pub(super) text: String,
    pub(super) marks: Vec<Range<usize>>,
}

/// Cuts a line down to `room` columns around its marks; `cut` stands where something is left out.
///
/// The marks are byte ranges of the line, sorted, each at least one character long.
pub(super) fn cut_line(line: &str, marks: &[Range<usize>], room: usize, cut: &str) -> CutLine {
    let kept = if forth(line, 0, room) == line.len() {
        one(0..line.len())
    } else {
        pieces(line, marks, room.saturating_sub(2 * cut.chars().count()))
    };
    let mut text = String::new();
    let mut moved = vec![0..0; marks.len()];
    let mut told = 0;
    for piece in kept {
        if piece.start > told {
            text.push_str(cut);
        }
        for (mark, moved) in marks.iter().zip(&mut moved).filter(|(m, _)| piece.contains(&m.start))
        {
            let now = |byte: usize| byte.min(piece.end) - piece.start + text.len();
            *moved = now(mark.start)..now(mark.end);
        }
        text.push_str(&shown::source(&line[piece.clone()]));
        told = piece.end;
    }
    if told < line.len() {
        text.push_str(cut);
    }
    CutLine { text, marks: moved }
}

/// Returns the parts of a line that are kept: one, if all marks fit into it, else one around each.
fn pieces(line: &str, marks: &[Range<usize>], room: usize) -> Vec<Range<usize>> {
    let (Some(first), Some(last)) = (marks.first(), marks.last()) else {
        return one(0..forth(line, 0, room));
    };
    let fits = forth(line, first.start, room) >= last.end;
    if fits {
        let taken = width(&line[first.start..last.end]);
        let start = back(line, first.start, (room - taken) / 2);
        let end = forth(line, start, room);
        let start = if end == line.len() { back(line, end, room) } else { start };
        return one(start..end);
    }
    let each = (room / marks.len()).max(3 * BESIDE);
    let around = |mark: &Range<usize>| {
        let end = mark.end.min(forth(line, mark.start, each - 2 * BESIDE));
        back(line, mark.start, BESIDE)..forth(line, end, BESIDE)
    };
    joined(marks.iter().map(around))
}

fn one(piece: Range<usize>) -> Vec<Range<usize>> {
    std::iter::once(piece).collect()
}

fn joined(pieces: impl Iterator<Item = Range<usize>>) -> Vec<Range<usize>> {
    let mut joined: Vec<Range<usize>> = Vec::new();
    for piece in pieces {
        match joined.last_mut() {
            Some(last) if piece.start <= last.end => last.end = last.end.max(piece.end),
            _ => joined.push(piece),
        }
    }
    joined
}

/// Returns the byte that is `room` columns after another, or the end.
fn forth(line: &str, from: usize, room: usize) -> usize {
    let mut taken = 0;
    for (at, c) in line[from..].char_indices() {
        taken += columns(c);
        if taken > room {
            return from + at;
        }
    }
    line.len()
}

/// Returns the byte that is `room` columns before another, or the start.
fn back(line: &str, from: usize, room: usize) -> usize {
    let mut taken = 0;
    for (at, c) in line[..from].char_indices().rev() {
        taken += columns(c);
        if taken > room {
            return at + c.len_utf8();
        }
    }
    0
}

fn width(text: &str) -> usize {
    text.chars().map(columns).sum()
}

/// No character takes more columns than this.
fn columns(c: char) -> usize {
    match c {
        '\t' => TAB,
        _ if shown::is_hidden(c) => c.len_utf8(),
        _ if c.is_ascii() => 1,
        _ => 2,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn a_line_that_fits_is_left_as_it_is() {
        let line = "gap: 58";
        let cut = cut_line(line, &one(5..7), 20, "…");
        assert_eq!(cut, CutLine { text: line.to_owned(), marks: one(5..7) });
    }

    #[test]
    fn a_long_line_is_cut_around_its_mark() {
        let line = format!("{}gap: 58{}", "a".repeat(300), "b".repeat(300));
        let cut = cut_line(&line, &one(305..307), 40, "…");
        assert!(cut.text.starts_with('…') && cut.text.ends_with('…'), "{}", cut.text);
        assert_eq!(cut.text.chars().count(), 40);
        assert_eq!(&cut.text[cut.marks[0].clone()], "58");
    }

    #[test]
    fn marks_far_apart_are_all_kept() {
        let line = format!("58{}57{}56", "-".repeat(300), "-".repeat(300));
        let marks = [0..2, 302..304, 604..606];
        let cut = cut_line(&line, &marks, 60, "...");
        let seen: Vec<&str> = cut.marks.iter().map(|mark| &cut.text[mark.clone()]).collect();
        assert_eq!(seen, ["58", "57", "56"]);
        assert_eq!(cut.text.matches("...").count(), 2);
    }

    #[test]
    fn a_line_without_marks_keeps_its_beginning() {
        let cut = cut_line(&"a".repeat(300), &[], 10, "…");
        assert_eq!(cut.text, "aaaaaaaa…");
    }

    proptest! {
        #[test]
        fn a_mark_still_shows_what_it_showed(
            before in "[a-z é漢\u{202e}]{0,300}", word in "[A-Z]{1,9}", after in "[a-z é\t]{0,300}",
            room in 40_usize..200,
        ) {
            let line = format!("{before}{word}{after}");
            let cut = cut_line(&line, &one(before.len()..before.len() + word.len()), room, "…");
            prop_assert_eq!(&cut.text[cut.marks[0].clone()], &word[..]);
            let cut_width: usize = cut.text.chars().map(columns).sum();
            prop_assert!(cut_width <= room + 2, "{} columns in {}", cut_width, room);
        }
    }
}
