//! A worked-out value against a limit in force: what may be said, and which tool would decide.

use super::finding::Finding;
use super::finding::LimitShown;
use super::finding::NotChecked;
use super::finding::Outcome;
use super::level::Level;
use super::measuring_again::measure_again;
use super::rule::Rule;
use super::sum::Against;
use super::sum::LimitFigure;
use super::sum::Sum;
use super::words;
use crate::metrology::decision;
use crate::metrology::decision::Bound;
use crate::metrology::decision::Bounds;
use crate::metrology::decision::DangerVerdict;
use crate::metrology::decision::Verdict;
use crate::model::LimitKey;
use crate::model::Name;
use crate::model::Part;
use crate::working::Budget;
use crate::working::InForce;
use crate::working::Lack;
use crate::working::LimitInForce;
use crate::working::Tools;
use crate::working::Unit;
use crate::working::Worked;

/// The least and the most in force, with who set each.
pub(super) struct Range<'b> {
    tools: Tools<'b>,
    least: Option<LimitFigure>,
    most: Option<LimitFigure>,
    unit: Unit,
}

/// What may be said of a value that is not simply in order.
pub(super) struct Judged {
    /// How far beyond the limit, always positive; of a danger not shown to clear, how far inside,
    /// negative when beyond.
    pub(super) by: f64,
    /// The limit passed.
    pub(super) bound: Bound,
    /// Whether it is proven.
    pub(super) proven: bool,
    /// What would decide, where it is not proven.
    measure_again: String,
}

impl<'b> Range<'b> {
    /// Returns the figures in force of a limit; none where it is switched off or set nowhere.
    pub(super) fn in_force(in_force: InForce<'b>, key: LimitKey, unit: Unit) -> Option<Self> {
        let least = in_force.limit(key, Part::Least);
        Self::of_figures(in_force.tools(), least, in_force.limit(key, Part::Most), unit)
    }

    /// Returns a range of two figures, for values read with these tools; none without a figure.
    pub(super) fn of_figures(
        tools: Tools<'b>,
        least: Option<LimitInForce>,
        most: Option<LimitInForce>,
        unit: Unit,
    ) -> Option<Self> {
        let (least, most) = (least.map(LimitFigure::from), most.map(LimitFigure::from));
        (least.is_some() || most.is_some()).then_some(Self { tools, least, most, unit })
    }

    /// Returns the limit 0, which nobody sets: it is a place, such as where a shaft begins to rub.
    pub(super) fn at_least_nought(in_force: InForce<'b>, unit: Unit, source: &str) -> Self {
        let from = "the rule itself".to_owned();
        let least = Some(LimitFigure { value: 0.0, from, source: source.to_owned() });
        Self { tools: in_force.tools(), least, most: None, unit }
    }

    /// Returns what two limits leave between them: the most of one less the least of the other.
    pub(super) fn between(
        in_force: InForce<'b>,
        least: LimitKey,
        most: LimitKey,
        unit: Unit,
    ) -> Option<Self> {
        let lower = in_force.limit(least, Part::Least)?;
        let upper = in_force.limit(most, Part::Most)?;
        let both =
            |lower: &str, upper: &str| format!("{}: {lower}; {}: {upper}", least.key(), most.key());
        let most = LimitFigure {
            value: upper.value - lower.value,
            from: both(&lower.from, &upper.from),
            source: both(&lower.source, &upper.source),
        };
        Some(Self { tools: in_force.tools(), least: None, most: Some(most), unit })
    }

    fn bounds(&self) -> Bounds {
        let value = |limit: &Option<LimitFigure>| limit.as_ref().map(|limit| limit.value);
        Bounds { least: value(&self.least), most: value(&self.most) }
    }

    fn figure(&self, bound: Bound) -> Option<&LimitFigure> {
        match bound {
            Bound::Least => self.least.as_ref(),
            Bound::Most => self.most.as_ref(),
        }
    }

    /// Returns the limit as people say it: "at least 5 mm", "3 to 7 deg", "at most 1 deg either
    /// way".
    pub(super) fn words(&self) -> String {
        words::limits(self.bounds(), self.unit.word())
    }

    /// Returns the middle of a range with two ends, else its only end.
    pub(super) fn aim(&self) -> Option<f64> {
        let Bounds { least, most } = self.bounds();
        match (least, most) {
            (Some(least), Some(most)) => Some(f64::midpoint(least, most)),
            (least, most) => least.or(most),
        }
    }

    /// Returns how far a value is outside, and of what: "over by 0.4 deg (at most 1 deg)".
    pub(super) fn beyond(&self, judged: &Judged) -> String {
        let way = match (judged.bound, self.bounds()) {
            (Bound::Least, Bounds { least: Some(least), .. }) if least >= 0.0 => "short",
            _ => "over",
        };
        let by = words::number(judged.by, self.unit.word());
        format!("{way} by {by} ({})", self.words())
    }

    /// Returns the limit as it is shown beside a finding.
    fn shown(&self, bound: Bound) -> LimitShown {
        let Bounds { least, most } = self.bounds();
        let figure = self.figure(bound);
        let text =
            |pick: fn(&LimitFigure) -> &String| figure.map(pick).cloned().unwrap_or_default();
        LimitShown {
            least,
            most,
            unit: self.unit.word(),
            from: text(|limit| &limit.from),
            source: text(|limit| &limit.source),
        }
    }

    /// Judges a value against an ordinary limit: a fault must be proven.
    fn judge(&self, value: &Budget, wider: f64) -> Option<Judged> {
        let (by, bound, proven) =
            match decision::ordinary(value.value(), wider * value.expanded(), self.bounds()) {
                Verdict::Within => return None,
                Verdict::Beyond { by, bound } => (by, bound, true),
                Verdict::Undecided { by, bound } => (by, bound, false),
            };
        let measure_again = measure_again(value, self.tools, |good_to| wider * good_to < by);
        Some(Judged { by, bound, proven, measure_again })
    }

    /// Judges a value against a danger limit: being clear must be proven.
    fn judge_danger(&self, value: &Budget) -> Option<Judged> {
        let (by, bound, proven) =
            match decision::danger(value.value(), value.expanded(), self.bounds()) {
                DangerVerdict::Clear { .. } => return None,
                DangerVerdict::Short { by, bound } => (by, bound, true),
                DangerVerdict::NotShown { margin, bound } => (margin, bound, false),
            };
        let measure_again = measure_again(value, self.tools, |good_to| good_to < by.abs());
        Some(Judged { by, bound, proven, measure_again })
    }

    /// Returns one figure.
    pub(super) fn value(&self, bound: Bound) -> Option<f64> {
        self.figure(bound).map(|limit| limit.value)
    }

    /// Returns what to read again, and with what, where a value is too coarse for this limit
    /// whatever is read.
    pub(super) fn too_coarse(&self, value: &Budget) -> Option<String> {
        let coarse = |good_to: f64| decision::tool_too_coarse(good_to, self.bounds());
        let finer = || measure_again(value, self.tools, |good_to| !coarse(good_to));
        coarse(value.expanded()).then(finer)
    }

    /// Returns the limit as it is shown beside a finding that no one figure is the cause of.
    pub(super) fn shown_whole(&self) -> LimitShown {
        self.shown(if self.most.is_some() { Bound::Most } else { Bound::Least })
    }

    /// Judges a value against a danger limit and makes a finding where it is not shown to clear.
    pub(super) fn danger(
        &self,
        rule: &'static Rule,
        name: &Name,
        value: &Worked,
        say: impl FnOnce(&Budget, &Judged) -> Finding,
    ) -> Vec<Outcome> {
        let value = match value {
            Ok(value) => value,
            Err(lack) => return vec![not_checked(rule, name, lack)],
        };
        let sum = self.sum(rule, name, value, true);
        let Some(judged) = self.judge_danger(value) else { return vec![sum] };
        let finding = say(value, &judged)
            .judged(words::figure(value, self.unit), Some(self.shown(judged.bound)));
        vec![judged.stop(finding).found(), sum]
    }

    /// Judges a value against an ordinary limit and makes a finding where it is not in order.
    pub(super) fn finding(
        this: Option<&Self>,
        rule: &'static Rule,
        name: &Name,
        value: &Worked,
        say: impl FnOnce(&Budget, &Judged, &Self) -> Finding,
    ) -> Vec<Outcome> {
        Self::finding_beyond(this, rule, name, value, 1.0, say)
    }

    /// As [`finding`](Self::finding), but proven only when beyond by so many times U.
    pub(super) fn finding_beyond(
        this: Option<&Self>,
        rule: &'static Rule,
        name: &Name,
        value: &Worked,
        wider: f64,
        say: impl FnOnce(&Budget, &Judged, &Self) -> Finding,
    ) -> Vec<Outcome> {
        let Some(range) = this else { return Vec::new() };
        let value = match value {
            Ok(value) => value,
            Err(lack) => return vec![not_checked(rule, name, lack)],
        };
        let sum = range.sum(rule, name, value, false);
        let Some(judged) = range.judge(value, wider) else { return vec![sum] };
        let finding = say(value, &judged, range)
            .judged(words::figure(value, range.unit), Some(range.shown(judged.bound)));
        vec![judged.decide(finding).found(), sum]
    }

    /// Tells what was judged, whatever comes of it.
    fn sum(&self, rule: &'static Rule, name: &Name, value: &Budget, danger: bool) -> Outcome {
        let (least, most) = (self.least.clone(), self.most.clone());
        judged_sum(rule, name, value, self.unit, Against::Limit { least, most, danger })
    }

    /// Tells that a value was found too coarse for this limit.
    pub(super) fn coarse_sum(&self, rule: &'static Rule, name: &Name, value: &Budget) -> Outcome {
        judged_sum(rule, name, value, self.unit, Against::Fineness { bounds: self.bounds() })
    }
}

impl Judged {
    /// An ordinary finding that is not proven is `unsure` and asks for a finer reading; a note
    /// stays a note.
    fn decide(&self, finding: Finding) -> Finding {
        if self.proven {
            return finding;
        }
        let level = finding.level.min(Level::Unsure);
        finding.level(level).remedy(format!("Too close to call. {}", self.measure_again))
    }

    /// A danger that is not proven stays one, asks for a finer reading, and leaves metal alone.
    fn stop(&self, finding: Finding) -> Finding {
        if self.proven {
            return finding;
        }
        let again = &self.measure_again;
        finding.remedy(format!(
            "Not shown to clear. {again} Leave the metal as it is until it is proven short."
        ))
    }

    /// Tells the two dangers apart: proven short, or not shown to clear.
    pub(super) fn danger_words(&self, unit: Unit) -> String {
        let by = words::number(self.by.abs(), unit.word());
        if by == words::number(0.0, unit.word()) {
            return "just at the limit, too close to call".to_owned();
        }
        match (self.proven, self.by < 0.0) {
            (true, _) => format!("{by} short"),
            (false, true) => format!("{by} short, too close to call"),
            (false, false) => format!("only {by} over the limit, too close to call"),
        }
    }
}

/// Tells what was judged and what it was held against.
pub(super) fn judged_sum(
    rule: &'static Rule,
    name: &Name,
    value: &Budget,
    unit: Unit,
    against: Against,
) -> Outcome {
    let (name, value) = (name.clone(), value.clone());
    Outcome::Judged(Box::new(Sum { rule, name, value, unit, against }))
}

/// Says that a check could not be made, and what is missing for it.
pub(super) fn not_checked(rule: &'static Rule, name: &Name, lack: &Lack) -> Outcome {
    let mut missing = match lack {
        Lack::NotMeasured(fields) => fields.clone(),
        Lack::Impossible(why) => vec![(*why).to_owned()],
    };
    missing.sort();
    missing.dedup();
    Outcome::NotChecked(NotChecked { rule: rule.id, name: name.clone(), missing })
}
