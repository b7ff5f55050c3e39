//! Files that were cut, overwritten, or never records at all.

use proptest::prelude::any;
use proptest::proptest;

use crate::RECORDS;
use crate::chance::Chance;
use crate::looking_over::looked_over;

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

/// Places in a text by chance.
struct Dice(Chance);

impl Dice {
    fn below(&mut self, most: usize) -> usize {
        usize::try_from(self.0.below(most as u64)).expect("less than a usize")
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
    let mut dice = Dice(Chance(0x7461_7272_6f77));
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
