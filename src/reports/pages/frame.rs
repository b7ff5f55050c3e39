//! What every page has around its own part: the club, the way to the other pages, the day, the
//! cautions.

use maud::Markup;
use maud::html;

use super::Site;
use super::naming;
use crate::reports::cautions::NO_PERMISSION;
use crate::reports::cautions::WHERE_THE_SUMS_STOP;
use crate::reports::drawings::cut;
use crate::reports::html::words;

/// The most characters of a name in a title.
const TITLE: usize = 60;

/// A page's own part.
pub(super) struct Frame {
    /// What it is about.
    pub(super) heading: String,
    /// A line below the heading.
    pub(super) below: String,
    /// The rest.
    pub(super) body: Markup,
    /// Whether it tells of rowlocks or boats: where the sums stop is said.
    pub(super) of_rig: bool,
}

const WAYS: [(&str, &str); 6] = [
    (naming::FLEET, "Fleet"),
    (naming::ROWLOCKS, "Oars and rowlocks"),
    (naming::MEASURING, "How we measure"),
    (naming::LIMITS, "Limits"),
    (naming::WAIVERS, "Waivers"),
    (naming::CHANGES, "Changes"),
];

/// Returns what stands in the browser's title bar.
pub(super) fn title(site: &Site, frame: &Frame) -> String {
    let club = club(site);
    let heading = cut(&words(&frame.heading), TITLE);
    if club.is_empty() { heading } else { format!("{heading} · {}", cut(&words(club), TITLE)) }
}

fn club<'s>(site: &'s Site) -> &'s str {
    site.pages.report.book.club.name.as_ref().map_or("", |name| &name.value)
}

/// Returns the whole body of a page.
pub(super) fn body(site: &Site, name: &str, frame: &Frame) -> Markup {
    let club = club(site);
    html! {
        a class="skip" href="#main" { "To the page itself" }
        header class="site" {
            p class="club" { @if club.is_empty() { "A boat logbook" } @else { (words(club)) } }
            nav aria-label="Pages" { ul {
                @for (to, called) in WAYS {
                    li { a href=(to) aria-current=[(to == name).then_some("page")] { (called) } }
                }
            } }
        }
        main id="main" tabindex="-1" {
            h1 { (words(&frame.heading)) }
            @if !frame.below.is_empty() { p class="quiet below" { (words(&frame.below)) } }
            (frame.body)
        }
        footer class="site" {
            @if frame.of_rig { p { b { "Where the sums stop. " } (WHERE_THE_SUMS_STOP) } }
            p { (NO_PERMISSION) }
            p { "As of " (site.pages.report.as_of.to_string()) ". What was not measured is not checked, and never called clear." }
        }
    }
}

/// Returns a table that may be wider than the page: it is moved with the keyboard, too.
pub(super) fn wide(label: &str, table: &Markup) -> Markup {
    html! { div class="wide" role="region" aria-label=(words(label)) tabindex="0" { (table) } }
}

/// Returns a list of lines under a heading; nothing where there is no line.
pub(super) fn lines(heading: &str, lines: &[String]) -> Markup {
    if lines.is_empty() {
        return html! {};
    }
    html! {
        section { h2 { (heading) } ul { @for line in lines { li { (words(line)) } } } }
    }
}
