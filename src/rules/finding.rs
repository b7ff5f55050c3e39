//! What a rule found, or could not look at.

use super::level::Level;
use super::rule::Rule;
use super::since::Standing;
use super::sum::Sum;
use crate::model::Name;
use crate::model::Place;
use crate::units::Date;

/// What came of looking at one place with one rule. Where nothing is found and nothing was left
/// unchecked, it is in order.
#[derive(Clone, Debug)]
pub enum Outcome {
    /// Something is wrong.
    Found(Box<Finding>),
    /// It could not be looked at.
    NotChecked(NotChecked),
    /// A worked-out value was judged, whatever came of it.
    Judged(Box<Sum>),
}

impl Outcome {
    /// Returns whether something is wrong.
    pub(super) const fn is_finding(&self) -> bool {
        matches!(self, Self::Found(_))
    }
}

/// One thing that is wrong.
#[derive(Clone, Debug)]
pub struct Finding {
    /// The rule that found it.
    pub rule: &'static Rule,
    /// How much it matters here.
    pub level: Level,
    /// The name of the value or record.
    pub name: Name,
    /// What is wrong, with the figures.
    pub message: String,
    /// What to do, with amounts.
    pub remedy: String,
    /// The value judged.
    pub value: Option<Figure>,
    /// The limit it was judged by.
    pub limit: Option<LimitShown>,
    /// Every value that takes part, the one to jump to first; at least one.
    pub labels: Vec<Label>,
    /// Whether it is shown only: the boat is out of use.
    pub shown_only: bool,
    /// The waiver that counts for it, if one does.
    pub waived: Option<Granted>,
    /// How it stands to an earlier check, where there was one.
    pub standing: Option<Standing>,
}

/// A waiver that counts.
#[derive(Clone, Debug, PartialEq)]
pub struct Granted {
    /// Who granted it.
    pub by: String,
    /// Why.
    pub because: String,
    /// The last day it counts.
    pub until: Date,
    /// The value it was granted for, where the finding has one.
    pub at: Option<f64>,
}

/// A number with how good it is and its unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Figure {
    /// The number.
    pub number: f64,
    /// How good it is, either way, where it was measured.
    pub uncertainty: Option<f64>,
    /// Its unit.
    pub unit: &'static str,
}

/// A limit as it is shown beside a finding.
#[derive(Clone, Debug, PartialEq)]
pub struct LimitShown {
    /// The least allowed.
    pub least: Option<f64>,
    /// The most allowed.
    pub most: Option<f64>,
    /// The unit of both.
    pub unit: &'static str,
    /// Who set it.
    pub from: String,
    /// Where the figure comes from.
    pub source: String,
}

/// A place that takes part in a finding, and what is there.
#[derive(Clone, Debug, PartialEq)]
pub struct Label {
    /// The place.
    pub place: Place,
    /// What is there, in a few words.
    pub text: String,
}

/// A check that could not be made.
#[derive(Clone, Debug, Eq, Ord, PartialEq, PartialOrd)]
pub struct NotChecked {
    /// The rule.
    pub rule: &'static str,
    /// The name of the seat or record.
    pub name: Name,
    /// What is missing.
    pub missing: Vec<String>,
}

impl Finding {
    /// Returns whether it stands against the book: what is waived or shown only doesn't, nor does
    /// what stood before and is no danger.
    #[must_use]
    pub fn stands(&self) -> bool {
        let old = self.standing == Some(Standing::Known) && self.level < Level::Danger;
        !self.shown_only && self.waived.is_none() && !old
    }

    /// Begins a finding at a place.
    pub(super) fn new(
        rule: &'static Rule,
        name: Name,
        place: Place,
        label: impl Into<String>,
    ) -> Self {
        Self {
            rule,
            level: rule.level,
            name,
            message: String::new(),
            remedy: rule.remedy.to_owned(),
            value: None,
            limit: None,
            labels: vec![Label { place, text: label.into() }],
            shown_only: false,
            waived: None,
            standing: None,
        }
    }

    /// Says what is wrong.
    pub(super) fn saying(mut self, message: impl Into<String>) -> Self {
        self.message = message.into();
        self
    }

    /// Says what to do.
    pub(super) fn remedy(mut self, remedy: impl Into<String>) -> Self {
        self.remedy = remedy.into();
        self
    }

    /// Gives it another level than the rule's worst.
    pub(super) fn level(mut self, level: Level) -> Self {
        self.level = level;
        self
    }

    /// Adds a place that takes part.
    pub(super) fn also(mut self, place: Place, text: impl Into<String>) -> Self {
        self.labels.push(Label { place, text: text.into() });
        self
    }

    /// Adds the value judged and the limit it was judged by.
    pub(super) fn judged(mut self, value: Figure, limit: Option<LimitShown>) -> Self {
        self.value = Some(value);
        self.limit = limit;
        self
    }

    /// Makes an outcome of it.
    pub(super) fn found(self) -> Outcome {
        Outcome::Found(Box::new(self))
    }
}
