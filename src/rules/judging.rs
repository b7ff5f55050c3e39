//! A worked-out value against a limit in force: what may be said, and which tool would decide.

use super::finding::Finding;
use super::finding::LimitShown;
use super::finding::NotChecked;
use super::finding::Outcome;
use super::level::Level;
use super::rule::Rule;
use super::words;
use crate::metrology::decision;
use crate::metrology::decision::Bound;
use crate::metrology::decision::Bounds;
use crate::metrology::decision::DangerVerdict;
use crate::metrology::decision::Verdict;
use crate::model::LimitKey;
use crate::model::Name;
use crate::model::Part;
use crate::model::Tool;
use crate::working::Budget;
use crate::working::InForce;
use crate::working::Input;
use crate::working::Lack;
use crate::working::LimitInForce;
use crate::working::Tools;
use crate::working::Unit;
use crate::working::Worked;

/// The least and the most in force, with who set each.
pub(super) struct Range<'b> {
    tools: Tools<'b>,
    least: Option<LimitInForce>,
    most: Option<LimitInForce>,
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
    pub(super) measure_again: String,
}

impl<'b> Range<'b> {
    /// Returns the figures in force of a limit; none where it is switched off or set nowhere.
    pub(super) fn in_force(in_force: InForce<'b>, key: LimitKey, unit: Unit) -> Option<Self> {
        let least = in_force.limit(key, Part::Least);
        Self::between(in_force.tools(), least, in_force.limit(key, Part::Most), unit)
    }

    /// Returns a range of two figures, for values read with these tools; none without a figure.
    pub(super) fn between(
        tools: Tools<'b>,
        least: Option<LimitInForce>,
        most: Option<LimitInForce>,
        unit: Unit,
    ) -> Option<Self> {
        (least.is_some() || most.is_some()).then_some(Self { tools, least, most, unit })
    }

    fn bounds(&self) -> Bounds {
        let value = |limit: &Option<LimitInForce>| limit.as_ref().map(|limit| limit.value);
        Bounds { least: value(&self.least), most: value(&self.most) }
    }

    fn figure(&self, bound: Bound) -> Option<&LimitInForce> {
        match bound {
            Bound::Least => self.least.as_ref(),
            Bound::Most => self.most.as_ref(),
        }
    }

    /// Returns one figure.
    pub(super) fn value(&self, bound: Bound) -> Option<f64> {
        self.figure(bound).map(|limit| limit.value)
    }

    /// Returns one figure as people say it: "at least 5 mm".
    pub(super) fn words(&self, bound: Bound) -> String {
        let value = self.figure(bound).map_or(0.0, |limit| limit.value);
        let side = match bound {
            Bound::Least => "at least",
            Bound::Most => "at most",
        };
        format!("{side} {}", words::limit(value, self.unit.word()))
    }

    /// Returns every figure as people say it: "at least 305 mm, at most 335 mm".
    pub(super) fn both(&self) -> String {
        let set =
            [Bound::Least, Bound::Most].into_iter().filter(|bound| self.value(*bound).is_some());
        set.map(|bound| self.words(bound)).collect::<Vec<_>>().join(", ")
    }

    /// Returns the limit as it is shown beside a finding that no one figure is the cause of.
    pub(super) fn shown_both(&self) -> LimitShown {
        self.shown(if self.most.is_some() { Bound::Most } else { Bound::Least })
    }

    /// Returns the limit as it is shown beside a finding.
    pub(super) fn shown(&self, bound: Bound) -> LimitShown {
        let Bounds { least, most } = self.bounds();
        let figure = self.figure(bound);
        let text =
            |pick: fn(&LimitInForce) -> &String| figure.map(pick).cloned().unwrap_or_default();
        LimitShown {
            least,
            most,
            unit: self.unit.word(),
            from: text(|limit| &limit.from),
            source: text(|limit| &limit.source),
        }
    }

    /// Judges a value against an ordinary limit: a fault must be proven.
    pub(super) fn judge(&self, value: &Budget) -> Option<Judged> {
        let (by, bound, proven) =
            match decision::ordinary(value.value(), value.expanded(), self.bounds()) {
                Verdict::Within => return None,
                Verdict::Beyond { by, bound } => (by, bound, true),
                Verdict::Undecided { by, bound } => (by, bound, false),
            };
        let measure_again = measure_again(value, self.tools, |good_to| good_to < by);
        Some(Judged { by, bound, proven, measure_again })
    }

    /// Judges a value against a danger limit: being clear must be proven.
    pub(super) fn judge_danger(&self, value: &Budget) -> Option<Judged> {
        let (by, bound, proven) =
            match decision::danger(value.value(), value.expanded(), self.bounds()) {
                DangerVerdict::Clear { .. } => return None,
                DangerVerdict::Short { by, bound } => (by, bound, true),
                DangerVerdict::NotShown { margin, bound } => (margin, bound, false),
            };
        let measure_again = measure_again(value, self.tools, |good_to| good_to < by.abs());
        Some(Judged { by, bound, proven, measure_again })
    }

    /// Returns what to read again, and with what, where a value is too coarse for this limit
    /// whatever is read.
    pub(super) fn too_coarse(&self, value: &Budget) -> Option<String> {
        let coarse = |good_to: f64| decision::tool_too_coarse(good_to, self.bounds());
        let finer = || measure_again(value, self.tools, |good_to| !coarse(good_to));
        coarse(value.expanded()).then(finer)
    }

    /// Judges a value against an ordinary limit and makes a finding where it is not in order.
    pub(super) fn finding(
        this: Option<&Self>,
        rule: &'static Rule,
        name: &Name,
        value: &Worked,
        say: impl FnOnce(&Budget, &Judged, &Self) -> Finding,
    ) -> Vec<Outcome> {
        let Some(range) = this else { return Vec::new() };
        let value = match value {
            Ok(value) => value,
            Err(lack) => return vec![not_checked(rule, name, lack)],
        };
        let Some(judged) = range.judge(value) else { return Vec::new() };
        let finding = say(value, &judged, range)
            .judged(words::figure(value, range.unit), Some(range.shown(judged.bound)));
        vec![judged.decide(finding).found()]
    }
}

impl Judged {
    /// An ordinary finding that is not proven is `unsure` and asks for a finer reading; a note
    /// stays a note.
    pub(super) fn decide(&self, finding: Finding) -> Finding {
        if self.proven {
            return finding;
        }
        let level = finding.level.min(Level::Unsure);
        finding.level(level).remedy(format!("Too close to call. {}", self.measure_again))
    }
}

/// Says that a check could not be made, and what is missing for it.
pub(super) fn not_checked(rule: &'static Rule, name: &Name, lack: &Lack) -> Outcome {
    let missing = match lack {
        Lack::NotMeasured(fields) => fields.clone(),
        Lack::Impossible(why) => vec![(*why).to_owned()],
    };
    Outcome::NotChecked(NotChecked { rule: rule.id, name: name.clone(), missing })
}

/// Tools that measure lengths, the coarsest first.
const LENGTH_TOOLS: [Tool; 4] = [Tool::Tape, Tool::Bob, Tool::Rule, Tool::Callipers];

/// Returns what to read again, and with what, so that the value is good enough.
fn measure_again(value: &Budget, tools: Tools, enough: impl Fn(f64) -> bool) -> String {
    let Some((input, _)) = value.shares().first().copied() else {
        return "Look at the readings again.".to_owned();
    };
    let what = input.what;
    let group: Vec<Input> =
        value.parts().iter().map(|part| part.input).filter(|part| alike(part, &input)).collect();
    let read_to = |half_width: f64| {
        let finer = |value: Budget, input: &Input| value.read_again_with(*input, half_width);
        group.iter().fold(value.clone(), finer).expanded()
    };
    let own = value.parts().iter().find(|part| part.input == input);
    let read_so_far = own.map_or(0.0, |part| part.half_width);
    let all = if group.len() > 1 { "each " } else { "the " };
    let decides = |tool: &&Tool| {
        input.unit == Unit::Mm
            && tools.half_width(**tool) <= tools.half_width(input.tool)
            && tools.half_width(**tool) < read_so_far
            && enough(read_to(tools.half_width(**tool)))
    };
    if let Some(tool) = LENGTH_TOOLS.iter().find(decides) {
        return format!("Measure again: read {all}{what} with {}.", tool.words());
    }
    match FINE.iter().find(|half_width| enough(read_to(**half_width))) {
        Some(half_width) => {
            format!("Measure again: read {all}{what} to ± {half_width} {}.", input.unit.word())
        }
        None => {
            format!("Measure again, {all}{what} first, several times and as finely as you can.")
        }
    }
}

/// How finely one can hope to read on a beach, in millimetres or degrees.
const FINE: [f64; 4] = [0.5, 0.2, 0.1, 0.05];

fn alike(one: &Input, other: &Input) -> bool {
    one.what == other.what || (one.tool == other.tool && one.unit == other.unit)
}
