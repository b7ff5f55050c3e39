//! The paper a drawing is made on: its size, its title, lines and words in their places, in
//! millimetres of paper from the top left. Knows no boat.

use maud::Markup;
use maud::PreEscaped;
use maud::html;

use crate::reports::html::PALETTE;
use crate::reports::html::words;

/// The styles that every drawing needs besides the palette.
pub(in crate::reports) const STYLE: &str = include_str!("drawing.css");

/// A point on the paper.
pub(super) type At = (f64, f64);

/// The most characters of one run of words; what a club made longer is cut.
const LONGEST: usize = 60;

/// A drawing.
pub struct Drawing {
    /// What it shows, in a few words.
    pub(super) title: String,
    /// What is to be seen in it, for those who can't see it.
    pub(super) about: String,
    /// Width and height in millimetres of paper.
    pub(super) size: (f64, f64),
    /// How many millimetres of the boat one of the paper stands for, where it is to scale.
    pub(super) one_to: Option<f64>,
    pub(super) body: Markup,
}

impl Drawing {
    /// Returns the drawing as a file of its own.
    #[must_use]
    pub fn svg(&self) -> String {
        let style = html! { style { (PreEscaped(PALETTE)) (PreEscaped(STYLE)) } };
        let drawn = self.element("drawing", &html! { (style) }, true).into_string();
        format!("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n{drawn}\n")
    }

    /// Returns the drawing as a part of a page that has the styles; `id` is its own on the page.
    pub(in crate::reports) fn inline(&self, id: &str) -> Markup {
        self.element(id, &html! {}, false)
    }

    fn element(&self, id: &str, style: &Markup, alone: bool) -> Markup {
        let (width, height) = self.size;
        let mm = |length: f64| alone.then(|| format!("{}mm", n(length)));
        html! {
            svg class="dr" xmlns="http://www.w3.org/2000/svg" role="img"
                aria-labelledby={ (id) "-title " (id) "-about" }
                viewBox={ "0 0 " (n(width)) " " (n(height)) }
                width=[mm(width)] height=[mm(height)]
                data-one-to=[self.one_to.map(n)] {
                title id={ (id) "-title" } { (words(&self.title)) }
                desc id={ (id) "-about" } { (words(&self.about)) }
                (style)
                @if alone { rect class="ground" width="100%" height="100%" {} }
                (self.body)
            }
        }
    }
}

/// Returns a number as it stands in a drawing: thousandths of a millimetre at most.
pub(super) fn n(number: f64) -> String {
    let text = format!("{number:.3}");
    let short = text.trim_end_matches('0').trim_end_matches('.');
    if short == "-0" { "0".to_owned() } else { short.to_owned() }
}

/// Returns a straight line.
pub(super) fn line(class: &str, from: At, to: At) -> Markup {
    html! { line class=(class) x1=(n(from.0)) y1=(n(from.1)) x2=(n(to.0)) y2=(n(to.1)) {} }
}

/// Returns a line through points.
pub(super) fn through(class: &str, points: &[At]) -> Markup {
    html! { polyline class=(class) points=(listed(points)) {} }
}

/// Returns an area.
pub(super) fn area(class: &str, points: &[At]) -> Markup {
    html! { polygon class=(class) points=(listed(points)) {} }
}

/// Returns a circle.
pub(super) fn circle(class: &str, at: At, radius: f64) -> Markup {
    html! { circle class=(class) cx=(n(at.0)) cy=(n(at.1)) r=(n(radius)) {} }
}

/// Returns a rectangle by its top left corner.
pub(super) fn rect(class: &str, at: At, size: At) -> Markup {
    html! {
        rect class=(class) x=(n(at.0)) y=(n(at.1)) width=(n(size.0)) height=(n(size.1)) {}
    }
}

fn listed(points: &[At]) -> String {
    let each: Vec<String> = points.iter().map(|(x, y)| format!("{},{}", n(*x), n(*y))).collect();
    each.join(" ")
}

/// Where words stand to their point.
#[derive(Clone, Copy)]
pub(super) enum Stand {
    Start,
    Middle,
    End,
}

/// Returns words; long ones are cut.
pub(super) fn text(class: &str, at: At, stand: Stand, said: &str) -> Markup {
    text_within(class, at, stand, said, LONGEST)
}

/// Returns words, cut to so many characters.
pub(super) fn text_within(class: &str, at: At, stand: Stand, said: &str, most: usize) -> Markup {
    let anchor = match stand {
        Stand::Start => "start",
        Stand::Middle => "middle",
        Stand::End => "end",
    };
    html! {
        text class=(class) x=(n(at.0)) y=(n(at.1)) text-anchor=(anchor) { (cut(&words(said), most)) }
    }
}

/// Returns words cut to so many characters.
pub(in crate::reports) fn cut(said: &str, most: usize) -> String {
    if said.chars().count() <= most {
        return said.to_owned();
    }
    let kept: String = said.chars().take(most.saturating_sub(1)).collect();
    format!("{}…", kept.trim_end())
}

/// Returns a measure between two points: a line with a stroke across each end.
pub(super) fn measure(class: &str, from: At, to: At) -> Markup {
    let (x, y) = (to.0 - from.0, to.1 - from.1);
    let long = x.hypot(y).max(f64::MIN_POSITIVE);
    let (x, y) = (-y / long * 0.8, x / long * 0.8);
    let end = |at: At| line(class, (at.0 - x, at.1 - y), (at.0 + x, at.1 + y));
    html! { (line(class, from, to)) (end(from)) (end(to)) }
}
