//! Small damage to a text: what a hand, a merge or a disk does to it.

/// Characters and scraps that make trouble in YAML, in numbers or in places.
const TROUBLE: [&str; 44] = [
    ":",
    ": ",
    " #",
    "-",
    "- ",
    "?",
    ",",
    "[",
    "]",
    "{",
    "}",
    "&a ",
    "*a",
    "!",
    "!!int ",
    "|",
    ">",
    "'",
    "\"",
    "%",
    "@",
    "`",
    "~",
    "<<: ",
    "---\n",
    "...\n",
    "\t",
    "\r",
    "\r\n",
    "\n",
    "\0",
    "\u{feff}",
    "\u{85}",
    "\u{2028}",
    "é",
    "👣",
    "1,5",
    "1e9",
    ".nan",
    "0x1f",
    "boat: ",
    "seat: ",
    "not measured",
    "<<<<<<< ",
];

/// Deals out damage from a number; the same number, the same damage.
pub(crate) struct Damage(u64);

impl From<u64> for Damage {
    fn from(number: u64) -> Self {
        Self(number)
    }
}

impl Damage {
    /// The next number.
    ///
    /// # Source
    ///
    /// Steele, Lea and Flood, Fast splittable pseudorandom number generators (2014): the mix and
    /// the constants of `SplitMix64`.
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mixed = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        let mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    /// A number below `end`, or 0.
    pub(crate) fn below(&mut self, end: usize) -> usize {
        let end = u64::try_from(end.max(1)).expect("a length fits into 64 bits");
        usize::try_from(self.next() % end).expect("it is below a length")
    }

    /// Damages a text in one to four ways.
    pub(crate) fn done_to(&mut self, text: &str) -> String {
        let mut text = text.to_owned();
        for _ in 0..=self.below(4) {
            text = match self.below(8) {
                0 => self.cut_off(&text),
                1 => self.dropped(&text),
                2 => self.swapped(&text),
                3 => self.line_dropped(&text),
                4 => self.line_doubled(&text),
                5 => self.lines_swapped(&text),
                6 => self.indented(&text),
                _ => self.inserted(&text),
            };
        }
        text
    }

    fn character(&mut self, text: &str) -> usize {
        let at = self.below(text.len() + 1);
        text.floor_char_boundary(at)
    }

    /// The text ends somewhere.
    fn cut_off(&mut self, text: &str) -> String {
        let at = self.character(text);
        text[..at].to_owned()
    }

    /// Some characters are gone.
    fn dropped(&mut self, text: &str) -> String {
        let start = self.character(text);
        let length = self.below(6) + 1;
        let end = text.ceil_char_boundary((start + length).min(text.len()));
        format!("{}{}", &text[..start], &text[end..])
    }

    /// Two pieces change places.
    fn swapped(&mut self, text: &str) -> String {
        let mut cuts = [self.character(text), self.character(text), self.character(text)];
        cuts.sort_unstable();
        let [a, b, c] = cuts;
        format!("{}{}{}{}", &text[..a], &text[b..c], &text[a..b], &text[c..])
    }

    fn line_dropped(&mut self, text: &str) -> String {
        let mut lines: Vec<&str> = text.split_inclusive('\n').collect();
        if !lines.is_empty() {
            lines.remove(self.below(lines.len()));
        }
        lines.concat()
    }

    fn line_doubled(&mut self, text: &str) -> String {
        let mut lines: Vec<&str> = text.split_inclusive('\n').collect();
        if !lines.is_empty() {
            let (from, to) = (self.below(lines.len()), self.below(lines.len()));
            lines.insert(to, lines[from]);
        }
        lines.concat()
    }

    fn lines_swapped(&mut self, text: &str) -> String {
        let mut lines: Vec<&str> = text.split_inclusive('\n').collect();
        if !lines.is_empty() {
            let (one, other) = (self.below(lines.len()), self.below(lines.len()));
            lines.swap(one, other);
        }
        lines.concat()
    }

    /// A line moves in or out.
    fn indented(&mut self, text: &str) -> String {
        let mut lines: Vec<String> = text.split_inclusive('\n').map(str::to_owned).collect();
        if !lines.is_empty() {
            let at = self.below(lines.len());
            lines[at] = match self.below(3) {
                0 => lines[at].trim_start_matches(' ').to_owned(),
                1 => format!(" {}", lines[at]),
                _ => format!("\t{}", lines[at]),
            };
        }
        lines.concat()
    }

    /// Something that makes trouble stands in the text.
    fn inserted(&mut self, text: &str) -> String {
        let at = self.character(text);
        let trouble = TROUBLE[self.below(TROUBLE.len())];
        format!("{}{trouble}{}", &text[..at], &text[at..])
    }
}
