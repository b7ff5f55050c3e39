//! A number through time: readings as points, limits as broken lines, bends and knocks on their days.

use maud::Markup;
use maud::html;

use super::paper::*;
use crate::reports::figures_text::rounded;
use crate::units::Date;

const SIZE: At = (60.0, 36.0);
const LEFT: f64 = 9.0;
const RIGHT: f64 = 58.0;
const TOP: f64 = 9.5;
const LOW: f64 = 29.0;

/// How near two days may be drawn before their letters would meet.
const NEAR: f64 = 2.6;

/// How many readings the words tell.
const TOLD: usize = 12;

/// A number through time.
pub(in crate::reports) struct Course {
    pub(in crate::reports) called: String,
    pub(in crate::reports) unit: &'static str,
    /// The readings, by day.
    pub(in crate::reports) points: Vec<(Date, f64)>,
    /// Where a rule objects.
    pub(in crate::reports) limits: Vec<f64>,
    /// What was done to what is measured, and when.
    pub(in crate::reports) events: Vec<(Date, Event)>,
}

/// What may happen to a part between two readings.
pub(in crate::reports) enum Event {
    /// It was bent: which part.
    Bend(String),
    /// The boat was knocked.
    Knock,
}

impl Event {
    const fn letter(&self) -> &'static str {
        match self {
            Self::Bend(_) => "B",
            Self::Knock => "K",
        }
    }
}

/// The way from day and number to the paper.
struct Scale {
    first: Date,
    last: Date,
    least: f64,
    most: f64,
}

impl Scale {
    fn of(course: &Course) -> Option<Self> {
        let days = course.points.iter().map(|(day, _)| *day);
        let (first, last) = (days.clone().min()?, days.max()?);
        let read = course.points.iter().map(|(_, number)| *number);
        let (low, high) = ends(read);
        // A limit far away would press the readings flat.
        let room = (high - low).max(1.0) * 2.0;
        let near = course.limits.iter().copied().filter(|at| *at > low - room && *at < high + room);
        let (low, high) = ends(near.chain([low, high]));
        let aside = (high - low).max(0.5) * 0.08;
        Some(Self { first, last, least: low - aside, most: high + aside })
    }

    fn x(&self, day: Date) -> f64 {
        let whole = self.last.days_after(self.first).max(1) as f64;
        let part = day.days_after(self.first) as f64 / whole;
        LEFT + 2.0 + part.clamp(0.0, 1.0) * (RIGHT - LEFT - 4.0)
    }

    fn y(&self, number: f64) -> f64 {
        LOW - (number - self.least) / (self.most - self.least) * (LOW - TOP)
    }

    fn has(&self, number: f64) -> bool {
        number >= self.least && number <= self.most
    }

    fn is_in(&self, day: Date) -> bool {
        day >= self.first && day <= self.last
    }
}

fn ends(all: impl Iterator<Item = f64>) -> (f64, f64) {
    all.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), own| (low.min(own), high.max(own)))
}

/// Returns the drawing.
pub(in crate::reports) fn course(course: &Course) -> Drawing {
    let body = Scale::of(course).map(|scale| drawn(course, &scale)).unwrap_or_default();
    Drawing {
        title: format!("{} through time", course.called),
        about: about(course),
        size: SIZE,
        one_to: None,
        body,
    }
}

fn drawn(course: &Course, scale: &Scale) -> Markup {
    let at: Vec<At> =
        course.points.iter().map(|(day, number)| (scale.x(*day), scale.y(*number))).collect();
    let last = course.points.last().map(|(_, number)| figure(*number, course.unit));
    let days = [(scale.first, LEFT + 2.0, Stand::Start), (scale.last, RIGHT, Stand::End)];
    html! {
        (text_within("t2", (1.0, 3.6), Stand::Start, &course.called, 30))
        @if let Some(last) = last { (text("inblue", (RIGHT, 3.6), Stand::End, &format!("now {last}"))) }
        (through("thin", &[(LEFT, TOP), (LEFT, LOW), (RIGHT, LOW)]))
        (ticks(course, scale))
        (events(course, scale))
        (through("blue thin", &at))
        @for point in &at { (circle("reading fullblue", *point, 0.85)) }
        @for (day, x, stand) in days {
            (text("inquiet", (x, LOW + 3.4), stand, &day.to_string()))
        }
    }
}

/// The limits, and the numbers at the side: those of the limits, then of the ends that have room.
fn ticks(course: &Course, scale: &Scale) -> Markup {
    let limits: Vec<f64> = course.limits.iter().copied().filter(|at| scale.has(*at)).collect();
    let (low, high) = ends(course.points.iter().map(|(_, number)| *number));
    let mut told: Vec<f64> = Vec::new();
    for number in limits.iter().copied().chain([low, high]) {
        if told.iter().all(|own| (scale.y(*own) - scale.y(number)).abs() > NEAR) {
            told.push(number);
        }
    }
    html! {
        @for limit in &limits { (line("limit orange thin dash", (LEFT, scale.y(*limit)), (RIGHT, scale.y(*limit)))) }
        @for number in told {
            (text("inquiet", (LEFT - 0.8, scale.y(number) + 0.85), Stand::End, &short(number)))
        }
        (text("inquiet", (1.0, TOP - 2.2), Stand::Start, course.unit))
    }
}

/// A line for each day, its letters above; days that would meet share theirs.
fn events(course: &Course, scale: &Scale) -> Markup {
    let mut all: Vec<(f64, String)> = Vec::new();
    let mut own: Vec<&(Date, Event)> =
        course.events.iter().filter(|(day, _)| scale.is_in(*day)).collect();
    own.sort_by_key(|(day, _)| *day);
    for (day, event) in own {
        let x = scale.x(*day);
        match all.last_mut().filter(|(other, _)| x - *other < NEAR) {
            Some((_, letters)) if letters.contains(event.letter()) => {}
            Some((_, letters)) => letters.push_str(event.letter()),
            None => all.push((x, event.letter().to_owned())),
        }
    }
    html! {
        @for (x, letters) in &all {
            (line("event thin dot", (*x, TOP - 0.6), (*x, LOW)))
            (text("event", (*x, TOP - 1.2), Stand::Middle, letters))
        }
    }
}

fn about(course: &Course) -> String {
    let reading = |(day, number): &(Date, f64)| format!("{day} {}", figure(*number, course.unit));
    let left_out = course.points.len().saturating_sub(TOLD);
    let mut words: Vec<String> = course.points.iter().skip(left_out).map(reading).collect();
    if left_out > 0 {
        words.insert(0, format!("{left_out} earlier readings"));
    }
    let limits: Vec<String> = course.limits.iter().map(|at| figure(*at, course.unit)).collect();
    if !limits.is_empty() {
        words.push(format!("a rule objects beyond {}", limits.join(" and ")));
    }
    words.extend(course.events.iter().map(|(day, event)| match event {
        Event::Bend(part) => format!("{part} bent {day}"),
        Event::Knock => format!("knocked {day}"),
    }));
    format!("{}.", words.join("; "))
}

fn short(number: f64) -> String {
    let text = rounded(number, 1);
    text.strip_suffix(".0").map_or(text.clone(), str::to_owned)
}

fn figure(number: f64, unit: &str) -> String {
    format!("{} {unit}", short(number)).trim_end().to_owned()
}
