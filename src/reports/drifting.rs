//! How a value drifts, in words and as JSON: a line through its readings since the last break, and
//! when it would reach a limit. Judges nothing.

use serde::Serialize;

use super::figures_text::rounded;
use crate::history::Break;
use crate::metrology::drift::AHEAD;
use crate::metrology::drift::Drift;
use crate::metrology::drift::LEAST_READINGS;
use crate::metrology::drift::NoDrift;
use crate::metrology::drift::NotForetold;
use crate::metrology::half_width::standard_uncertainty;
use crate::units::Date;

/// A month, as drifts are told.
const MONTH: f64 = 30.0;

/// The readings of a value, and what is known of it besides.
#[derive(Clone, Debug, Default)]
pub struct Drifting {
    /// The number on each day it was read, in the order of the days.
    pub readings: Vec<(Date, f64)>,
    /// The days on which it started anew, in order.
    pub breaks: Vec<(Date, Break)>,
    /// How finely it is read; nought where nobody says.
    pub half_width: f64,
    /// Where rules would object, if all else stays as it is.
    pub objections: Vec<Objection>,
}

/// Where a rule would object.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Objection {
    /// The rule.
    pub rule: &'static str,
    /// The number of the reading.
    pub at: f64,
    /// Whether it objects above that; else below.
    pub is_above: bool,
}

/// The readings from one break to the next.
pub(super) struct Stretch<'r> {
    began: Option<(Date, Break)>,
    readings: &'r [(Date, f64)],
    drift: Result<Drift, NoDrift>,
}

/// The day on which a rule would object, and the interval it lies in.
pub(super) struct Foretold {
    objection: Objection,
    early: Date,
    at: Date,
    late: Option<Date>,
}

/// The trend as programs read it: of the last stretch, then each stretch.
#[derive(Serialize)]
pub(super) struct TrendJson {
    slope_per_30_days: Option<f64>,
    uncertainty: Option<f64>,
    beyond_chance: Option<bool>,
    unit: &'static str,
    refused: Option<String>,
    crossing: Option<CrossingJson>,
    stretches: Vec<StretchJson>,
}

#[derive(Serialize)]
struct CrossingJson {
    rule: &'static str,
    limit: f64,
    on: String,
    not_before: String,
    not_after: Option<String>,
}

#[derive(Serialize)]
struct StretchJson {
    from: Option<String>,
    to: Option<String>,
    began_with: Option<&'static str>,
    readings: usize,
    slope_per_30_days: Option<f64>,
    uncertainty: Option<f64>,
}

impl Drifting {
    /// Returns every stretch, the oldest first. What was read on the day of a break was read after
    /// it.
    pub(super) fn stretches(&self) -> Vec<Stretch<'_>> {
        let mut all = Vec::new();
        let (mut rest, mut began) = (self.readings.as_slice(), None);
        for own in &self.breaks {
            let (before, after) = rest.split_at(rest.partition_point(|(day, _)| day < &own.0));
            if !before.is_empty() {
                all.push(self.stretch(began, before));
            }
            (rest, began) = (after, Some(*own));
        }
        all.push(self.stretch(began, rest));
        all
    }

    fn stretch<'r>(
        &self,
        began: Option<(Date, Break)>,
        readings: &'r [(Date, f64)],
    ) -> Stretch<'r> {
        let days = |(day, number): &(Date, f64)| (since(readings, *day), *number);
        let points: Vec<(f64, f64)> = readings.iter().map(days).collect();
        let drift = Drift::of(&points, standard_uncertainty(self.half_width));
        Stretch { began, readings, drift }
    }

    /// Returns the day on which a rule would first object, or why none is told.
    fn foretold(&self, stretch: &Stretch) -> Result<Foretold, Option<NotForetold>> {
        let drift = stretch.drift.as_ref().map_err(|_| None)?;
        if !drift.is_beyond_chance() {
            return Err(Some(NotForetold::Chance));
        }
        let (mut first, mut why): (Option<Foretold>, Option<NotForetold>) = (None, None);
        // What lies the other way is where a rule would leave off, not begin.
        let rises = drift.slope() > 0.0;
        for objection in self.objections.iter().filter(|own| own.is_above == rises) {
            match drift.reaches(objection.at) {
                Ok(reached) => {
                    let day = |x: f64| day_at(stretch.readings, x);
                    let (Some(early), Some(at)) = (day(reached.early.floor()), day(reached.at))
                    else {
                        continue;
                    };
                    let late = reached.late.and_then(|late| day(late.ceil()));
                    let own = Foretold { objection: *objection, early, at, late };
                    if first.as_ref().is_none_or(|first| own.at < first.at) {
                        first = Some(own);
                    }
                }
                Err(NotForetold::Away) => {}
                Err(other) if why.is_none() || other == NotForetold::Reached => why = Some(other),
                Err(_) => {}
            }
        }
        // What a rule objects to already comes before all that it may object to later.
        match (first, why) {
            (_, Some(NotForetold::Reached)) => Err(Some(NotForetold::Reached)),
            (Some(first), _) => Ok(first),
            (None, why) => Err(why),
        }
    }

    /// Returns the drift in sentences: the stretches before, the last one, and what it leads to.
    pub(super) fn words(&self, unit: &str) -> Vec<String> {
        let stretches = self.stretches();
        let Some((last, before)) = stretches.split_last() else { return Vec::new() };
        let mut lines: Vec<String> =
            before.iter().map(|one| format!("Before: {}.", one.words(unit))).collect();
        lines.push(format!("Trend: {}.", last.words(unit)));
        if last.drift.is_ok() {
            lines.push(self.ahead(last, unit));
        }
        lines
    }

    fn ahead(&self, last: &Stretch, unit: &str) -> String {
        match self.foretold(last) {
            Ok(told) => {
                let Foretold { objection: Objection { rule, at: limit, .. }, early, at, late } =
                    told;
                let late = late.map_or_else(
                    || "; how late it may be lies too far ahead to be told".to_owned(),
                    |late| format!(" and not after {late}"),
                );
                let limit = rounded(limit, 1);
                format!(
                    "It would come to {limit} {unit}, where {rule} objects, about {at}: not before {early}{late}, if it goes on like this and all else stays as it is."
                )
            }
            Err(why) => not_foretold(why),
        }
    }

    /// Returns the drift for programs.
    pub(super) fn json(&self, unit: &'static str) -> TrendJson {
        let stretches = self.stretches();
        let last = stretches.last();
        let drift = last.and_then(|last| last.drift.as_ref().ok());
        let foretold = last.map(|last| (self.foretold(last), last.refused()));
        let (crossing, refused) = match foretold {
            Some((Ok(told), _)) => (Some(crossing(&told)), None),
            Some((Err(why), refused)) => (None, refused.or_else(|| Some(not_foretold(why)))),
            None => (None, None),
        };
        TrendJson {
            slope_per_30_days: drift.map(|drift| drift.slope() * MONTH),
            uncertainty: drift.map(|drift| drift.expanded() * MONTH),
            beyond_chance: drift.map(Drift::is_beyond_chance),
            unit,
            refused,
            crossing,
            stretches: stretches.iter().map(Stretch::json).collect(),
        }
    }
}

fn crossing(told: &Foretold) -> CrossingJson {
    CrossingJson {
        rule: told.objection.rule,
        limit: told.objection.at,
        on: told.at.to_string(),
        not_before: told.early.to_string(),
        not_after: told.late.map(|late| late.to_string()),
    }
}

fn not_foretold(why: Option<NotForetold>) -> String {
    match why {
        None => "No limit lies the way it drifts.".to_owned(),
        Some(NotForetold::Chance | NotForetold::Away) => {
            "So no day is foretold on which it would reach a limit.".to_owned()
        }
        Some(NotForetold::Reached) => {
            "By this line it is where a rule objects already: see tholebook lint.".to_owned()
        }
        Some(NotForetold::TooFar) => format!(
            "No limit is reached within {AHEAD} times as long as these readings span; further ahead nobody can tell."
        ),
    }
}

impl Stretch<'_> {
    fn words(&self, unit: &str) -> String {
        let count = self.readings.len();
        let things = if count == 1 { "reading" } else { "readings" };
        let days = match self.readings {
            [] => String::new(),
            [(only, _)] => format!(" of {only}"),
            [(first, _), .., (last, _)] => format!(" from {first} to {last}"),
        };
        let began = self.began.map(|(day, own)| format!(", anew since {} {day}", own.words()));
        let begin = format!("{count} {things}{days}{}", began.unwrap_or_default());
        match &self.drift {
            Err(_) => format!("{begin}: {}", self.refused().unwrap_or_default()),
            Ok(drift) => {
                let (slope, good) = (drift.slope() * MONTH, drift.expanded() * MONTH);
                let beyond = if drift.is_beyond_chance() { "more than" } else { "no more than" };
                let sign = if slope > 0.0 { "+" } else { "" };
                let slope = rounded(slope, 2);
                let sign = if slope.starts_with("0.00") { "" } else { sign };
                format!(
                    "{begin}: {sign}{slope} {unit} in 30 days, good to ± {good:.2} {unit}; {beyond} chance would bring"
                )
            }
        }
    }

    fn refused(&self) -> Option<String> {
        match self.drift.as_ref().err()? {
            NoDrift::TooFew(_) => {
                Some(format!("no trend is told of fewer than {LEAST_READINGS} on different days"))
            }
            NoDrift::AtOnePlace => Some("no trend is told of one day".to_owned()),
        }
    }

    fn json(&self) -> StretchJson {
        let drift = self.drift.as_ref().ok();
        let day = |reading: Option<&(Date, f64)>| reading.map(|(day, _)| day.to_string());
        StretchJson {
            from: day(self.readings.first()),
            to: day(self.readings.last()),
            began_with: self.began.map(|(_, own)| own.word()),
            readings: self.readings.len(),
            slope_per_30_days: drift.map(|drift| drift.slope() * MONTH),
            uncertainty: drift.map(|drift| drift.expanded() * MONTH),
        }
    }
}

/// Days since the first reading.
fn since(readings: &[(Date, f64)], day: Date) -> f64 {
    readings.first().map_or(0.0, |(first, _)| day.days_after(*first) as f64)
}

fn day_at(readings: &[(Date, f64)], days: f64) -> Option<Date> {
    readings.first()?.0.days_later(days.round() as i64)
}
