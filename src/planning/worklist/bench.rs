//! The boat on the bench: the book as it stands after the work so far. Each stage asks the rules
//! what is wrong with her now and writes down what its work makes of her readings.

use std::collections::BTreeSet;

use super::step::Conflict;
use super::step::NotPlanned;
use super::step::Step;
use super::step::Work;
use crate::metrology::decision;
use crate::metrology::decision::Bounds;
use crate::metrology::decision::DangerVerdict;
use crate::model::BentPart;
use crate::model::Boat;
use crate::model::Book;
use crate::model::LimitKey;
use crate::model::Name;
use crate::model::Part;
use crate::model::Reading;
use crate::model::Seat;
use crate::rules;
use crate::rules::Finding;
use crate::rules::Level;
use crate::rules::Looks;
use crate::rules::Outcome;
use crate::units::Angle;
use crate::units::Date;
use crate::units::Length;
use crate::units::Slope;
use crate::working::BoatSight;
use crate::working::SeatSight;

/// A cold bend that is planned.
#[derive(Clone, Copy, Debug)]
pub(super) struct PlannedBend {
    pub(super) seat: u32,
    pub(super) part: BentPart,
    pub(super) degrees: f64,
}

/// A boat in work.
pub(super) struct Bench {
    pub(super) book: Book,
    at: usize,
    pub(super) as_of: Date,
    /// Rule and name of what a waiver lets stand.
    waived: BTreeSet<(&'static str, Name)>,
    pub(super) steps: Vec<Step>,
    pub(super) bends: Vec<PlannedBend>,
    pub(super) replaced: Vec<(u32, BentPart)>,
    pub(super) not_planned: Vec<NotPlanned>,
    pub(super) conflicts: Vec<Conflict>,
}

impl Bench {
    pub(super) fn new(book: &Book, at: usize, waived: &[Finding], as_of: Date) -> Self {
        let waived = waived.iter().map(|finding| (finding.rule.id, finding.name.clone()));
        Self {
            book: book.clone(),
            at,
            as_of,
            waived: waived.collect(),
            steps: Vec::new(),
            bends: Vec::new(),
            replaced: Vec::new(),
            not_planned: Vec::new(),
            conflicts: Vec::new(),
        }
    }

    pub(super) fn boat(&self) -> &Boat {
        &self.book.boats[self.at]
    }

    pub(super) fn boat_mut(&mut self) -> &mut Boat {
        &mut self.book.boats[self.at]
    }

    pub(super) fn sight(&self) -> BoatSight<'_> {
        BoatSight::new(&self.book, self.boat())
    }

    /// Returns her seats, counted from 0 as they are written.
    pub(super) fn seats(&self) -> std::ops::Range<usize> {
        0..self.boat().seats.len()
    }

    pub(super) fn seat(&self, at: usize) -> SeatSight<'_> {
        let mut seats = self.sight().seats();
        seats.nth(at).expect("the seat is one of hers")
    }

    pub(super) fn seat_mut(&mut self, at: usize) -> &mut Seat {
        &mut self.boat_mut().seats[at]
    }

    /// Returns how people call several seats: "seats 1, 2 and 4".
    pub(super) fn seats_words(&self, at: impl IntoIterator<Item = usize>) -> String {
        let number =
            |at: usize| self.number(at).map_or("?".to_owned(), |number| number.to_string());
        let all: Vec<String> = at.into_iter().map(number).collect();
        match all.as_slice() {
            [] => String::new(),
            [one] => format!("seat {one}"),
            [first @ .., last] => format!("seats {} and {last}", first.join(", ")),
        }
    }

    pub(super) fn number(&self, at: usize) -> Option<u32> {
        self.boat().seats[at].number.map(|number| number.value)
    }

    /// Returns one figure of a limit in force.
    pub(super) fn limit(&self, key: LimitKey, part: Part) -> Option<f64> {
        self.sight().in_force.limit(key, part).map(|limit| limit.value)
    }

    /// Returns who set a limit, for those that are against each other.
    pub(super) fn limit_words(&self, key: LimitKey, part: Part, unit: &str) -> String {
        let limit = self.sight().in_force.limit(key, part);
        limit.map_or_else(
            || format!("{}: not set", key.key()),
            |limit| {
                let figure = rules::words::limit(limit.value, unit);
                let how = match part {
                    Part::Least => "at least",
                    Part::Most => "at most",
                    other => other.key(),
                };
                format!("{}: {how} {figure}, from {}", key.key(), limit.from)
            },
        )
    }

    /// Returns what one rule finds at a seat now, but for what is waived.
    pub(super) fn at_seat(&self, rule: &str, at: usize) -> Vec<Finding> {
        match rules::find(rule).map(|rule| &rule.looks) {
            Some(Looks::AtEachSeat(look)) => self.counted(look(&self.seat(at))),
            _ => Vec::new(),
        }
    }

    /// Returns what one rule finds at the boat as a whole, or in the book, now.
    pub(super) fn at_boat(&self, rule: &str) -> Vec<Finding> {
        match rules::find(rule).map(|rule| &rule.looks) {
            Some(Looks::AtEachBoat(look)) => self.counted(look(&self.sight())),
            Some(Looks::AtTheBook(look)) => self.counted(look(&self.book, self.as_of)),
            _ => Vec::new(),
        }
    }

    fn counted(&self, outcomes: Vec<Outcome>) -> Vec<Finding> {
        let found = |outcome| match outcome {
            Outcome::Found(finding) => Some(*finding),
            _ => None,
        };
        let counts = |finding: &Finding| !self.is_waived(finding.rule.id, &finding.name);
        outcomes.into_iter().filter_map(found).filter(counts).collect()
    }

    /// Returns whether a waiver lets stand what a rule finds.
    pub(super) fn is_waived(&self, rule: &str, name: &Name) -> bool {
        self.waived.iter().any(|(own, waived)| *own == rule && waived == name)
    }

    /// Returns what one rule finds proven at a seat now.
    pub(super) fn proven_at(&self, rule: &str, at: usize) -> Option<Finding> {
        self.at_seat(rule, at).into_iter().find(is_proven)
    }

    /// Returns whether one rule finds anything proven at the boat as a whole now.
    pub(super) fn is_proven(&self, rule: &str) -> bool {
        self.at_boat(rule).iter().any(is_proven)
    }

    pub(super) fn step(&mut self, step: Step) {
        self.steps.push(step);
    }

    pub(super) fn not_planned(&mut self, name: Name, what: &'static str, missing: String) {
        let new = NotPlanned { name, what, missing };
        if !self.not_planned.contains(&new) {
            self.not_planned.push(new);
        }
    }

    pub(super) fn conflict(&mut self, name: Name, says: String) {
        self.conflicts.push(Conflict { name, says });
    }

    /// Returns whether a part may be bent once more by so many degrees, by its own history and by
    /// what is planned.
    pub(super) fn may_be_bent(&self, seat: u32, part: BentPart, degrees: f64) -> bool {
        if self.replaced.contains(&(seat, part)) {
            return true;
        }
        let (often, far) =
            (self.limit(LimitKey::Bends, Part::Most), self.limit(LimitKey::Bends, Part::InAll));
        let planned = self.bends.iter().filter(|bend| (bend.seat, bend.part) == (seat, part));
        let (mut times, mut in_all) = (1.0, degrees);
        for bend in planned {
            (times, in_all) = (times + 1.0, in_all + bend.degrees);
        }
        for bent in self.sight().bent() {
            if (bent.seat, bent.part) == (seat, part) {
                (times, in_all) = (times + bent.bends.len() as f64, in_all + bent.in_all());
            }
        }
        let within = |value: f64, most: Option<f64>| most.is_none_or(|most| value <= most);
        within(times, often) && within(in_all, far)
    }

    /// Plans a bend, or where the part was bent often to replace what it is part of. Returns the
    /// kind of work and why metal is replaced.
    pub(super) fn bend(&mut self, at: usize, part: BentPart, degrees: f64) -> (Work, &'static str) {
        let (bend, replace) = match part {
            BentPart::Pin => (Work::BendPin, Work::ReplacePin),
            BentPart::ForwardHorn => (Work::BendForwardHorn, Work::ReplaceRowlock),
            BentPart::AfterHorn => (Work::BendAfterHorn, Work::ReplaceRowlock),
        };
        let Some(seat) = self.number(at) else { return (bend, "") };
        let degrees = degrees.abs();
        if self.may_be_bent(seat, part, degrees) {
            if !self.replaced.contains(&(seat, part)) {
                self.bends.push(PlannedBend { seat, part, degrees });
            }
            return (bend, "");
        }
        self.replace(seat, part);
        (replace, "It was bent often: a new one is set to this, not the old one bent again. ")
    }

    /// Notes that a part is replaced; both horns are of one rowlock.
    pub(super) fn replace(&mut self, seat: u32, part: BentPart) {
        let parts: &[BentPart] = match part {
            BentPart::Pin => &[BentPart::Pin],
            _ => &[BentPart::ForwardHorn, BentPart::AfterHorn],
        };
        self.replaced.extend(parts.iter().map(|part| (seat, *part)));
        self.bends.retain(|bend| bend.seat != seat || !parts.contains(&bend.part));
    }
}

/// Returns whether a finding is proven: what is only in doubt is read again, not mended.
pub(super) fn is_proven(finding: &Finding) -> bool {
    match finding.level {
        Level::Danger => !is_not_shown(finding),
        Level::Unsure => false,
        // A note that is not proven stays a note and asks for a finer reading.
        Level::Fault | Level::Note => beyond_doubt(finding),
    }
}

/// Returns whether a danger is only not shown to be clear.
pub(super) fn is_not_shown(finding: &Finding) -> bool {
    let verdict = judged(finding, decision::danger);
    finding.level == Level::Danger && matches!(verdict, Some(DangerVerdict::NotShown { .. }))
}

fn beyond_doubt(finding: &Finding) -> bool {
    let verdict = judged(finding, decision::ordinary);
    !matches!(verdict, Some(decision::Verdict::Undecided { .. }))
}

fn judged<V>(finding: &Finding, judge: fn(f64, f64, Bounds) -> V) -> Option<V> {
    let (value, limit) = (finding.value?, finding.limit.as_ref()?);
    let bounds = Bounds { least: limit.least, most: limit.most };
    Some(judge(value.number, value.uncertainty?, bounds))
}

/// Writes a length as one reading, to a hundredth of a millimetre.
pub(super) fn set_length(reading: &mut Option<Reading<Length>>, millimetres: f64) {
    if let Some(reading) = reading {
        reading.values = vec![Length::mm(rounded(millimetres, 100.0))];
    }
}

/// Writes a slope as one reading in the form it was read in; `bare` gives what an offset alone is
/// at an angle. Nothing changes where that can't be said.
pub(super) fn set_slope(
    reading: &mut Option<Reading<Slope>>,
    degrees: f64,
    bare: impl Fn(Angle) -> Option<f64>,
) {
    let Some(reading) = reading else { return };
    let angle = Angle::deg(degrees);
    let offset = |value: f64| Length::mm(rounded(value, 100.0));
    let slope = match reading.values.first() {
        Some(Slope::Angle(_)) => Slope::Angle(Angle::deg(rounded(degrees, 1000.0))),
        Some(Slope::Over { down, .. }) => {
            Slope::Over { offset: offset(down.as_mm() * angle.tan()), down: *down }
        }
        _ => match bare(angle) {
            Some(value) => Slope::Offset(offset(value)),
            None => return,
        },
    };
    reading.values = vec![slope];
}

/// Returns a number to so many parts of one; never a nought with a sign.
pub(super) fn rounded(value: f64, parts: f64) -> f64 {
    (value * parts).round() / parts + 0.0
}
