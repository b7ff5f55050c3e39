//! A worked-out value as a rule judged it: the value with all that it rests on, what it was held
//! against, and what came of it in plain words.

use super::measuring_again;
use super::rule::Rule;
use super::words;
use crate::metrology::decision;
use crate::metrology::decision::Bounds;
use crate::metrology::decision::DangerVerdict;
use crate::metrology::decision::Verdict;
use crate::model::Name;
use crate::working::Budget;
use crate::working::LimitInForce;
use crate::working::Tools;
use crate::working::Unit;

pub use super::measuring_again::Sharper;

/// A worked-out value that a rule looked at, whether or not it objected.
#[derive(Clone, Debug)]
pub struct Sum {
    /// The rule that judged it.
    pub rule: &'static Rule,
    /// The name it is judged at.
    pub name: Name,
    /// The value, with every reading it rests on.
    pub value: Budget,
    /// Its unit.
    pub unit: Unit,
    /// What it was held against.
    pub against: Against,
}

/// What a worked-out value was held against.
#[derive(Clone, Debug)]
pub enum Against {
    /// A limit.
    Limit {
        /// The least allowed.
        least: Option<LimitFigure>,
        /// The most allowed.
        most: Option<LimitFigure>,
        /// Whether being clear of it must be proven.
        danger: bool,
    },
    /// A limit that it is too coarse to be judged by.
    Fineness {
        /// The limit's figures.
        bounds: Bounds,
    },
    /// Nothing but how good it is: it is the difference of two values that should be one.
    Agreement,
    /// The same value as somebody wrote it down.
    Written {
        /// What is written.
        value: f64,
        /// Half of the last digit written.
        half_digit: f64,
    },
}

/// One figure of a limit, and who says so.
#[derive(Clone, Debug, PartialEq)]
pub struct LimitFigure {
    /// The figure.
    pub value: f64,
    /// Who set it: a class, or a file and line.
    pub from: String,
    /// Where the figure comes from.
    pub source: String,
}

impl From<LimitInForce> for LimitFigure {
    fn from(limit: LimitInForce) -> Self {
        let LimitInForce { value, from, source, .. } = limit;
        Self { value, from, source }
    }
}

impl Against {
    /// Returns the figures of the limit; none where there is no limit.
    #[must_use]
    pub fn bounds(&self) -> Bounds {
        let value = |limit: &Option<LimitFigure>| limit.as_ref().map(|limit| limit.value);
        match self {
            Self::Limit { least, most, .. } => Bounds { least: value(least), most: value(most) },
            Self::Fineness { bounds } => *bounds,
            Self::Agreement | Self::Written { .. } => Bounds::default(),
        }
    }
}

impl Sum {
    /// Returns the result with how good it is; what was counted, not measured, is exact.
    #[must_use]
    pub fn result(&self) -> String {
        if self.value.parts().is_empty() {
            return self.figure(self.value.value());
        }
        words::measured(&self.value, self.unit)
    }

    /// Returns a number in the sum's unit, with as many decimals as that is shown with.
    #[must_use]
    pub fn figure(&self, value: f64) -> String {
        words::number(value, self.unit.word())
    }

    /// Returns what came of it, in a sentence or two.
    #[must_use]
    pub fn verdict(&self) -> String {
        let good_to = self.figure(self.value.expanded());
        match &self.against {
            Against::Limit { danger: true, .. } => self.danger_verdict(&good_to),
            Against::Limit { danger: false, .. } => self.ordinary_verdict(&good_to),
            Against::Fineness { .. } => format!(
                "Too coarse: good to ± {good_to} only, which is more than the limit has room for. Whatever is read, it can't be judged."
            ),
            Against::Agreement => self.agreement(&good_to),
            Against::Written { value, half_digit } => {
                let written = self.figure(*value);
                if decision::disagrees(value - self.value.value(), *half_digit) {
                    format!("Wrong in the book: {written} is written; the readings don't give it.")
                } else {
                    format!("Clear: {written} is written, and the readings give it.")
                }
            }
        }
    }

    fn ordinary_verdict(&self, good_to: &str) -> String {
        match decision::ordinary(self.value.value(), self.value.expanded(), self.against.bounds()) {
            Verdict::Within => format!("Clear: inside the limit by {}.", self.room()),
            Verdict::Beyond { by, .. } if self.value.parts().is_empty() => {
                format!("Over the limit by {}.", self.figure(by))
            }
            Verdict::Beyond { by, .. } => format!(
                "Outside by {}. That is more than the ± {good_to} it is good to, so it is sure.",
                self.figure(by)
            ),
            Verdict::Undecided { by, .. } => format!(
                "Too close to call: outside by {}, but good to ± {good_to} only.",
                self.figure(by)
            ),
        }
    }

    fn danger_verdict(&self, good_to: &str) -> String {
        match decision::danger(self.value.value(), self.value.expanded(), self.against.bounds()) {
            DangerVerdict::Clear { .. } => format!(
                "Clear: inside the limit by {}. That is at least the ± {good_to} it is good to, so it is sure.",
                self.room()
            ),
            DangerVerdict::Short { by, .. } => format!(
                "Short by {}. That is more than the ± {good_to} it is good to, so it is sure.",
                self.figure(by)
            ),
            DangerVerdict::NotShown { margin, .. } => format!(
                "Not shown to clear, too close to call: {} by {}, but good to ± {good_to} only. Here doubt counts as danger. Measure again; bend no metal for a doubt.",
                if margin < 0.0 { "short" } else { "inside the limit" },
                self.figure(margin.abs())
            ),
        }
    }

    fn agreement(&self, good_to: &str) -> String {
        let apart = self.figure(self.value.value().abs());
        if decision::disagrees(self.value.value(), self.value.expanded()) {
            format!(
                "The two disagree: {apart} apart. That is more than the ± {good_to} the difference is good to, so it is sure."
            )
        } else {
            format!(
                "Clear: {apart} apart, no more than the ± {good_to} the difference is good to. The two agree."
            )
        }
    }

    /// How far inside the nearer limit.
    fn room(&self) -> String {
        let Bounds { least, most } = self.against.bounds();
        let value = self.value.value();
        let ends = [least.map(|least| value - least), most.map(|most| most - value)];
        let nearer = ends.into_iter().flatten().fold(f64::INFINITY, f64::min);
        self.figure(nearer.max(0.0))
    }

    /// Returns the limit as people say it, and who set which figure of it and why; nothing where
    /// there is no limit.
    #[must_use]
    pub fn limit(&self) -> Vec<String> {
        let unit = self.unit.word();
        match &self.against {
            Against::Limit { least, most, .. } => {
                let mut told = vec![self.limit_words(unit)];
                match (least, most) {
                    (Some(least), Some(most)) if alike(least, most) => told.push(set(least, "")),
                    (least, most) => {
                        let both = least.is_some() && most.is_some();
                        let which = |word: &'static str| if both { word } else { "" };
                        told.extend(least.iter().map(|figure| set(figure, which("The least: "))));
                        told.extend(most.iter().map(|figure| set(figure, which("The most: "))));
                    }
                }
                told
            }
            Against::Fineness { .. } => vec![self.limit_words(unit)],
            Against::Agreement => vec!["None is set: the two should be one.".to_owned()],
            Against::Written { .. } => {
                vec!["None is set: what is written must be what the readings give.".to_owned()]
            }
        }
    }

    /// A sentence: "At least 5 mm."
    fn limit_words(&self, unit: &str) -> String {
        let words = words::limits(self.against.bounds(), unit);
        format!("{}{}.", words[..1].to_uppercase(), &words[1..])
    }

    /// Returns the one measurement that would sharpen the value most, with the tools at hand.
    #[must_use]
    pub fn sharper(&self, tools: Tools) -> Option<Sharper> {
        measuring_again::sharpest(&self.value, tools)
    }
}

fn alike(one: &LimitFigure, other: &LimitFigure) -> bool {
    (&one.from, &one.source) == (&other.from, &other.source)
}

fn set(figure: &LimitFigure, which: &str) -> String {
    let LimitFigure { from, source, .. } = figure;
    let by = if which.is_empty() { "Set by" } else { "set by" };
    format!("{which}{by} {from}. Why so much: {source}.")
}
