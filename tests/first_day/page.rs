//! A page with screens: a command after `$`, and below it what was shown.

const OPENS: &str = "```console\n$ tholebook ";
const CLOSES: &str = "```\n";
const TYPED: &str = "<!-- typed: ";

/// A page, taken apart.
pub(crate) struct Page<'p> {
    parts: Vec<Part<'p>>,
}

enum Part<'p> {
    Words(&'p str),
    Screen(Screen<'p>),
}

/// A command and what it shows.
pub(crate) struct Screen<'p> {
    /// The words after the program's name.
    pub(crate) command: &'p str,
    /// The file of what is typed at the prompts.
    pub(crate) typed: Option<&'p str>,
    /// What the page shows.
    pub(crate) shown: &'p str,
}

impl<'p> Page<'p> {
    pub(crate) fn of(text: &'p str) -> Self {
        let mut blocks = text.split(OPENS);
        let mut before = blocks.next().expect("a text");
        let mut parts = vec![Part::Words(before)];
        for block in blocks {
            let (command, rest) = block.split_once('\n').expect("a line");
            let (shown, after) = rest.split_once(CLOSES).expect("a block has an end");
            let typed = before.lines().last().and_then(|line| line.strip_prefix(TYPED));
            let typed = typed.map(|file| file.trim_end_matches(" -->"));
            parts.extend([Part::Screen(Screen { command, typed, shown }), Part::Words(after)]);
            before = after;
        }
        Self { parts }
    }

    pub(crate) fn screens(&self) -> impl Iterator<Item = &Screen<'p>> {
        self.parts.iter().filter_map(|part| match part {
            Part::Screen(screen) => Some(screen),
            Part::Words(_) => None,
        })
    }

    /// Returns the page with what is said now in every screen.
    pub(crate) fn with_screens(&self, said: impl Fn(&Screen) -> String) -> String {
        let written = |part: &Part| match part {
            Part::Words(words) => (*words).to_owned(),
            Part::Screen(screen) => {
                format!("{OPENS}{}\n{}{CLOSES}", screen.command, said(screen))
            }
        };
        self.parts.iter().map(written).collect()
    }
}
