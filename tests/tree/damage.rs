//! Files that were cut, overwritten, or never records at all.

use proptest::prelude::any;
use proptest::proptest;
use tholebook::model::Span;
use tholebook::reading::tree;
use tholebook::reading::tree::LEVELS;
use tholebook::reading::tree::Node;
use tholebook::reading::tree::Scalar;
use tholebook::reading::tree::Shape;
use tholebook::reading::tree::Style;

use crate::RECORDS;

/// How many damaged records are read.
const DAMAGED: usize = 100_000;

/// Pieces that YAML, or a careless reader of it, trips over.
const PIECES: &[&str] = &[
    "\t",
    "\n",
    "\r",
    "\r\n",
    " ",
    "  ",
    "    ",
    ":",
    ": ",
    "-",
    "- ",
    "?",
    "? ",
    "#",
    " #",
    ",",
    "[",
    "]",
    "{",
    "}",
    "&a",
    "*a",
    "!",
    "!!str ",
    "|",
    "|\n",
    ">-\n",
    "'",
    "\"",
    "\\",
    "%",
    "@",
    "`",
    "~",
    "<<: ",
    "---\n",
    "...\n",
    "\0",
    "\u{1b}",
    "\u{feff}",
    "é",
    "漢",
    "\u{1f6a3}",
    "\u{85}",
    "\u{2028}",
    "null",
    "1,5",
    "a: 1\n",
    "%YAML 1.1\n",
    "<<<<<<< a\n",
    "=======\n",
    ">>>>>>> b\n",
];

/// Reads `text` and asserts all that must hold for any text at all.
pub(crate) fn looked_over(text: &str) {
    let tree = tree::read(text);
    let place = |span: Span| {
        let inside = text.get(span.start..span.end).is_some();
        assert!(inside, "{span:?} is no place in {:?}", &text[..text.floor_char_boundary(999)]);
    };
    for fault in &tree.faults {
        place(fault.at);
        fault.also.into_iter().for_each(place);
    }
    assert!(tree.faults.is_sorted_by_key(|fault| fault.at.start));
    assert!(tree.complete || !tree.faults.is_empty(), "unread and untold: {text:?}");
    assert!(tree.root.is_some() || !tree.faults.is_empty(), "nothing and untold: {text:?}");
    if let Some(root) = &tree.root {
        node(text, root, LEVELS);
    }
}

fn node(text: &str, node: &Node, levels: usize) {
    let written = text.get(node.span.start..node.span.end);
    let written = written.unwrap_or_else(|| panic!("{:?} is no place", node.span));
    match &node.shape {
        Shape::Scalar(scalar) => self::scalar(text, node.span, scalar),
        Shape::Empty => assert!(matches!(written, "" | "~" | "null" | "Null" | "NULL")),
        Shape::Refused => {}
        Shape::List(list) => children(text, node.span, list.iter(), levels),
        Shape::Map(entries) => {
            for entry in entries {
                let key = text.get(entry.key_span.start..entry.key_span.end);
                assert!(key.is_some_and(|key| !key.is_empty()), "{:?}", entry.key_span);
                assert!(entry.key_span.start >= node.span.start);
                assert!(entry.key_span.end <= entry.value.span.start, "{entry:?} in {text:?}");
            }
            children(text, node.span, entries.iter().map(|entry| &entry.value), levels);
        }
    }
}

fn scalar(text: &str, span: Span, scalar: &Scalar) {
    let written = &text[span.start..span.end];
    let ends: &[char] = match scalar.style {
        Style::Plain => &[],
        Style::Quoted => &['"', '\''],
        Style::Block => &['|', '>'],
    };
    assert!(
        !written.is_empty() && written.trim_matches([' ', '\t', '\n', '\r']) == written
            || scalar.style == Style::Block,
        "{written:?}"
    );
    assert!(ends.is_empty() || written.starts_with(ends), "{written:?} in {text:?}");
    assert!(scalar.style != Style::Quoted || written.ends_with(ends), "{written:?}");
    if let Some(cut) = scalar.cut_by {
        assert_eq!(cut.start, span.end + 1);
        assert!(text[cut.start..cut.end].starts_with('#'));
    }
}

fn children<'n>(text: &str, parent: Span, nodes: impl Iterator<Item = &'n Node>, levels: usize) {
    assert!(levels > 0, "too deep");
    let mut reached = parent.start;
    for child in nodes {
        assert!(reached <= child.span.start, "out of order: {child:?} in {text:?}");
        reached = child.span.end;
        node(text, child, levels - 1);
    }
    assert!(reached <= parent.end, "{parent:?} does not hold {reached} in {text:?}");
}

/// Numbers that look random and are the same on every run: xorshift64, Marsaglia 2003, "Xorshift
/// RNGs", Journal of Statistical Software 8(14).
struct Dice(u64);

impl Dice {
    fn below(&mut self, most: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        usize::try_from(self.0 % (most.max(1) as u64)).expect("less than a usize")
    }

    fn place(&mut self, text: &str) -> usize {
        let byte = self.below(text.len() + 1);
        text.floor_char_boundary(byte)
    }

    fn span(&mut self, text: &str, most: usize) -> (usize, usize) {
        let start = self.place(text);
        let end = text.floor_char_boundary((start + self.below(most)).min(text.len()));
        (start, end.max(start))
    }
}

fn damaged(text: &str, dice: &mut Dice) -> String {
    let mut text = text.to_owned();
    match dice.below(7) {
        0 => text.truncate(dice.place(&text)),
        1 => {
            let (start, end) = dice.span(&text, 20);
            text.replace_range(start..end, "");
        }
        2 => {
            let (start, end) = dice.span(&text, 200);
            let again = text[start..end].to_owned();
            text.insert_str(dice.place(&text), &again);
        }
        3 => {
            let (start, end) = dice.span(&text, 4);
            text.replace_range(start..end, PIECES[dice.below(PIECES.len())]);
        }
        4 if dice.below(8) == 0 => text = text.replace('\n', ["\r\n", "\r"][dice.below(2)]),
        5 if dice.below(8) == 0 => text.insert(0, '\u{feff}'),
        _ => text.insert_str(dice.place(&text), PIECES[dice.below(PIECES.len())]),
    }
    text
}

#[test]
fn a_damaged_record_is_never_fatal_and_every_place_lies_inside_it() {
    let mut dice = Dice(0x7461_7272_6f77);
    for turn in 0..DAMAGED {
        let mut text = RECORDS[turn % RECORDS.len()].to_owned();
        for _ in 0..=dice.below(3) {
            text = damaged(&text, &mut dice);
        }
        looked_over(&text);
    }
}

#[test]
fn a_record_cut_anywhere_is_never_fatal() {
    for record in RECORDS {
        for (cut, _) in record.char_indices() {
            looked_over(&record[..cut]);
        }
    }
}

#[test]
fn a_record_says_the_same_whatever_ends_its_lines() {
    for record in RECORDS {
        let plain = values(record);
        assert_eq!(plain, values(&record.replace('\n', "\r\n")));
        assert_eq!(plain, values(&record.replace('\n', "\r")));
        assert_eq!(plain, values(&format!("\u{feff}{record}")));
    }
}

/// Returns the outline of a sound record without its places.
fn values(text: &str) -> String {
    let outline = crate::outline::sound(text);
    let mut kept = String::new();
    for part in outline.split(['@', '#']) {
        kept.push_str(part.trim_start_matches(|c: char| c.is_ascii_digit() || c == '-'));
    }
    kept
}

proptest! {
    #[test]
    fn random_bytes_are_never_fatal(bytes in proptest::collection::vec(any::<u8>(), 0..400)) {
        looked_over(&String::from_utf8_lossy(&bytes));
    }

    #[test]
    fn random_text_is_never_fatal(text in any::<String>()) {
        looked_over(&text);
    }

    #[test]
    fn random_pieces_of_yaml_are_never_fatal(
        pieces in proptest::collection::vec(proptest::sample::select(PIECES), 0..60),
    ) {
        looked_over(&pieces.concat());
    }
}
