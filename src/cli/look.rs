//! What this terminal is to be shown: width and colours, from options, environment, terminal.

use std::io;
use std::io::IsTerminal as _;

use super::arguments::Colour;
use super::arguments::GlyphsOption;
use super::arguments::LookOptions;
use crate::reports::Glyphs;
use crate::reports::Look;

/// How wide a terminal is taken to be where nothing says so.
const USUAL_WIDTH: usize = 80;

/// Widths that can be meant.
const WIDTHS: std::ops::RangeInclusive<usize> = 20..=1000;

/// Returns how reports are to look.
pub(super) fn look(options: &LookOptions) -> Look {
    let variable = |name: &str| std::env::var(name).ok();
    Look {
        width: options.width.map_or_else(|| width(variable), usize::from),
        glyphs: match options.glyphs {
            GlyphsOption::Unicode => Glyphs::Unicode,
            GlyphsOption::Ascii => Glyphs::Ascii,
        },
        colour: colour(options.color, variable, io::stdout().is_terminal()),
    }
}

fn width(variable: impl Fn(&str) -> Option<String>) -> usize {
    let columns = variable("COLUMNS").and_then(|columns| columns.trim().parse().ok());
    columns.filter(|columns| WIDTHS.contains(columns)).unwrap_or(USUAL_WIDTH)
}

/// The order of say: the option, `NO_COLOR`, `CLICOLOR_FORCE`, the terminal. A variable that is
/// set to nothing says nothing.
fn colour(asked: Colour, variable: impl Fn(&str) -> Option<String>, terminal: bool) -> bool {
    let says = |name: &str| variable(name).filter(|value| !value.is_empty());
    match asked {
        Colour::Always => true,
        Colour::Never => false,
        Colour::Auto if says("NO_COLOR").is_some() => false,
        Colour::Auto if says("CLICOLOR_FORCE").is_some_and(|value| value != "0") => true,
        Colour::Auto => terminal && says("TERM").as_deref() != Some("dumb"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn says(set: &[(&str, &str)], asked: Colour, terminal: bool) -> bool {
        let variable = |name: &str| {
            let found = set.iter().find(|(own, _)| *own == name);
            found.map(|(_, value)| (*value).to_owned())
        };
        colour(asked, variable, terminal)
    }

    /// Source: the conventions of `NO_COLOR` and `CLICOLOR_FORCE`: a variable counts when it is
    /// not empty; a force of 0 forces nothing. (From memory.)
    #[test]
    fn the_option_comes_before_the_variables_and_these_before_the_terminal() {
        assert!(says(&[("NO_COLOR", "1")], Colour::Always, false));
        assert!(!says(&[("CLICOLOR_FORCE", "1")], Colour::Never, true));
        assert!(!says(&[("NO_COLOR", "1"), ("CLICOLOR_FORCE", "1")], Colour::Auto, true));
        assert!(says(&[("NO_COLOR", ""), ("CLICOLOR_FORCE", "1")], Colour::Auto, false));
        assert!(!says(&[("CLICOLOR_FORCE", "0")], Colour::Auto, false));
        assert!(says(&[("CLICOLOR_FORCE", "0")], Colour::Auto, true));
        assert!(says(&[], Colour::Auto, true));
        assert!(!says(&[], Colour::Auto, false));
        assert!(!says(&[("TERM", "dumb")], Colour::Auto, true));
    }

    #[test]
    fn a_width_that_makes_no_sense_is_not_used() {
        let of = |columns: &str| width(|_| Some(columns.to_owned()));
        assert_eq!([of("100"), of("0"), of("wide"), of("-1")], [100, 80, 80, 80]);
        assert_eq!(width(|_| None), 80);
    }
}
