//! The frame of every page: what a browser may load (nothing), light and dark, print. Knows no boat.

mod palette;

pub(super) use palette::PALETTE;

use maud::DOCTYPE;
use maud::Markup;
use maud::PreEscaped;
use maud::html;

use super::shown;

const PAGE: &str = include_str!("page.css");

/// What a browser may do with a page: show it with the styles that stand in it. No script, no
/// picture from elsewhere, no font, no form, no frame, no other place to start links from.
///
/// # Source
///
/// W3C Content Security Policy Level 3.
const POLICY: &str =
    "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'";

/// A page.
pub(super) struct Page<'p> {
    /// What stands in the browser's title bar.
    pub(super) title: &'p str,
    /// Styles of its own, each a text of the program.
    pub(super) styles: &'p [&'static str],
    /// What it holds.
    pub(super) body: Markup,
}

/// Returns a page as a whole text that needs nothing from outside.
pub(super) fn page(page: &Page) -> String {
    let styles = [PALETTE, PAGE].into_iter().chain(page.styles.iter().copied());
    let markup = html! {
        (DOCTYPE)
        html lang="en" {
            head {
                meta charset="utf-8";
                meta http-equiv="Content-Security-Policy" content=(POLICY);
                meta name="referrer" content="no-referrer";
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta name="color-scheme" content="light dark";
                title { (words(page.title)) }
                // Styles are texts of the program: nothing from a book is among them.
                style { @for style in styles { (PreEscaped(style)) } }
            }
            body { (page.body) }
        }
    };
    let mut text = markup.into_string();
    text.push('\n');
    text
}

/// Returns words from anywhere, ready to be put into markup, which escapes them once more: hidden
/// characters written out, and so are the two that XML can't hold.
///
/// # Source
///
/// XML 1.0, 2.2: `Char` leaves out U+FFFE and U+FFFF.
pub(super) fn words(text: &str) -> String {
    let shown = shown::line(text);
    shown.replace('\u{fffe}', "\\u{fffe}").replace('\u{ffff}', "\\u{ffff}")
}
