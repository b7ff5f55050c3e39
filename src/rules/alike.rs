//! Values that should be alike: who takes part, and the finding at the odd one out.

use super::finding::Finding;
use super::finding::Outcome;
use super::judging::not_checked;
use super::rule::Rule;
use super::words;
use crate::model::Name;
use crate::model::Place;
use crate::working::Apart;
use crate::working::Member;
use crate::working::Unit;
use crate::working::Worked;

/// One that should be like the others, if its value is there.
pub(super) struct Candidate {
    pub(super) name: Name,
    pub(super) called: String,
    pub(super) place: Place,
    pub(super) value: Worked,
}

/// Returns those whose value is there; of each other, that it could not be looked at.
pub(super) fn gather(
    rule: &'static Rule,
    candidates: impl Iterator<Item = Candidate>,
) -> (Vec<Member>, Vec<Outcome>) {
    let (mut members, mut missing) = (Vec::new(), Vec::new());
    for Candidate { name, called, place, value } in candidates {
        match value {
            Ok(value) => members.push(Member { name, called, place, value }),
            Err(lack) => missing.push(not_checked(rule, &name, &lack)),
        }
    }
    (members, missing)
}

/// Begins a finding at the odd one out, every other one labelled with its value.
pub(super) fn finding(
    rule: &'static Rule,
    name: Name,
    members: &[Member],
    apart: &Apart,
    unit: Unit,
) -> Finding {
    let label = |member: &Member| {
        format!("{}: {}", member.called, words::number(member.value.value(), unit.word()))
    };
    let others = members.iter().filter(|member| !std::ptr::eq(*member, apart.odd));
    let first = Finding::new(rule, name, apart.odd.place, label(apart.odd));
    others.fold(first, |finding, member| finding.also(member.place, label(member)))
}
