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
use crate::working::Unit;
use crate::working::Worked;

/// The least and the most in force, with who set each.
pub(super) struct Range<'b> {
    in_force: InForce<'b>,
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
        let most = in_force.limit(key, Part::Most);
        (least.is_some() || most.is_some()).then_some(Self { in_force, least, most, unit })
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

    /// Returns one figure as people say it: "at least 5 mm".
    pub(super) fn words(&self, bound: Bound) -> String {
        let value = self.figure(bound).map_or(0.0, |limit| limit.value);
        let side = match bound {
            Bound::Least => "at least",
            Bound::Most => "at most",
        };
        format!("{side} {}", words::limit(value, self.unit.word()))
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
        let measure_again = measure_again(value, self.in_force, by);
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
        let measure_again = measure_again(value, self.in_force, by.abs());
        Some(Judged { by, bound, proven, measure_again })
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

/// Returns what to read again, and with what, so that `room` is decided.
fn measure_again(value: &Budget, in_force: InForce, room: f64) -> String {
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
    let all = if group.len() > 1 { "each " } else { "the " };
    let decides = |tool: &&Tool| {
        input.unit == Unit::Mm
            && in_force.half_width(**tool) < in_force.half_width(input.tool)
            && read_to(in_force.half_width(**tool)) < room
    };
    if let Some(tool) = LENGTH_TOOLS.iter().find(decides) {
        return format!("Measure again: read {all}{what} with {}.", tool.words());
    }
    let fine = |half_width: &f64| read_to(*half_width) < room;
    match FINE.iter().find(|half_width| fine(half_width)) {
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
