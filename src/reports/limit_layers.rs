//! A limit with everyone who has a say in it, in words; knows nothing of what it is a limit of
//! but its key.

use crate::model::LimitKey;
use crate::model::LimitQuantity;
use crate::model::Part;
use crate::working::InForce;
use crate::working::Layer;
use crate::working::LimitSaid;

/// Figures of one limit that the same layers set, with the same sources.
pub(super) struct Layered {
    /// The figures of each layer: parts and what the layer says of each. Never empty.
    parts: Vec<(Part, LimitQuantity, Vec<LimitSaid>)>,
    guards_life: bool,
}

/// Returns a limit's figures as every layer but those left out sets them: those that the same
/// layers set together, the others by themselves. Nothing, where nobody sets any.
pub(super) fn layered(in_force: InForce, key: LimitKey, heeded: fn(Layer) -> bool) -> Vec<Layered> {
    let mut all: Vec<Layered> = Vec::new();
    for (part, quantity) in key.parts() {
        let said = in_force.said(key, *part).filter(|said| heeded(said.layer));
        let said: Vec<LimitSaid> = said.collect();
        if said.is_empty() {
            continue;
        }
        let alike = all.iter_mut().find(|layered| layered.is_set_as(&said));
        match alike {
            Some(layered) => layered.parts.push((*part, *quantity, said)),
            None => {
                let parts = vec![(*part, *quantity, said)];
                all.push(Layered { parts, guards_life: key.guards_life() });
            }
        }
    }
    all
}

impl Layered {
    fn is_set_as(&self, said: &[LimitSaid]) -> bool {
        let source = |said: &LimitSaid| said.limit.as_ref().map(|limit| limit.source.clone());
        let own = &self.parts[0].2;
        own.len() == said.len()
            && own
                .iter()
                .zip(said)
                .all(|(own, said)| own.layer == said.layer && source(own) == source(said))
    }

    /// The number of the layer that wins; none, where a danger limit is switched off everywhere.
    fn winner(&self) -> usize {
        let wins = |said: &LimitSaid| !said.off || !self.guards_life;
        self.parts[0].2.iter().position(wins).unwrap_or_default()
    }

    /// Returns the figures in force: "at least 5 mm", or "switched off".
    pub(super) fn in_force(&self) -> String {
        self.figures(self.winner())
    }

    /// Returns where the figures are set, their source, and what is set below and above in vain:
    /// "club.yaml:12 (minute), over class surfboat: at least 4 mm".
    pub(super) fn set_by(&self) -> String {
        let winner = self.winner();
        let said = &self.parts[0].2;
        let source = said[winner].limit.as_ref().map(|limit| limit.source.as_str());
        let source = source.filter(|source| !source.is_empty());
        let source = source.map_or_else(String::new, |source| format!(" ({source})"));
        let mut words = format!("{}{source}", said[winner].from);
        for (number, below) in said.iter().enumerate().skip(winner + 1) {
            let (from, figures) = (&below.from, self.figures(number));
            let word = if number == winner + 1 { "over" } else { "and" };
            words.push_str(&format!(", {word} {from}: {figures}"));
        }
        if self.guards_life {
            words.push_str(". A danger limit: it can't be switched off");
            for said in &said[..winner] {
                words.push_str(&format!("; {} says none in vain", said.from));
            }
        }
        words
    }

    fn figures(&self, layer: usize) -> String {
        let figure = |(part, quantity, said): &(Part, LimitQuantity, Vec<LimitSaid>)| {
            Some((*part, *quantity, said[layer].limit.as_ref()?.value))
        };
        let figures: Vec<_> = self.parts.iter().filter_map(figure).collect();
        if figures.is_empty() { "none, switched off".to_owned() } else { words(&figures) }
    }
}

/// Returns figures of a limit as people say them.
fn words(figures: &[(Part, LimitQuantity, f64)]) -> String {
    use Part::{Least, Most};
    if let [(Least, _, least), (Most, quantity, most)] = *figures {
        let most_shown = with_unit(most, quantity);
        return if (least + most).abs() < f64::EPSILON {
            format!("at most {most_shown} either way")
        } else {
            format!("{least} to {most_shown}")
        };
    }
    let each = figures.iter().map(|(part, quantity, value)| {
        let value = with_unit(*value, *quantity);
        match part {
            Part::Least => format!("at least {value}"),
            Part::Most => format!("at most {value}"),
            Part::Aim => format!("aim {value}"),
            Part::AtStature => format!("at a stature of {value}"),
            Part::Per100 => format!("{value} more for each 100 mm of stature"),
            Part::Within => format!("within {value} either way"),
            Part::InAll => format!("at most {value} in all"),
        }
    });
    each.collect::<Vec<_>>().join(", ")
}

/// Returns a figure with its unit: no more decimals than it was set with.
pub(super) fn with_unit(value: f64, quantity: LimitQuantity) -> String {
    match quantity.unit() {
        "" => value.to_string(),
        unit => format!("{value} {unit}"),
    }
}

/// Returns what a limit limits, in a few words.
pub(super) fn about(key: LimitKey) -> &'static str {
    match key {
        LimitKey::Level => "trim and roll on the rigging day",
        LimitKey::PinAft => "lean of a pin, to the stern positive",
        LimitKey::PinOut => "lean of a pin, outboard positive",
        LimitKey::Arc => "pitch of one blade, from catch to finish",
        LimitKey::Pitch => "pitch square off",
        LimitKey::PitchMatch => "pitch square off, highest and lowest blade",
        LimitKey::Sides => "mean pitch, port against starboard",
        LimitKey::Clearance => "gap less the widest part of the shaft",
        LimitKey::Loose => "gap less the narrowest part of the shaft",
        LimitKey::Roll => "the roll in which a straight lift is looked at",
        LimitKey::Bed => "depth of a round shaft in its bed, part of its diameter",
        LimitKey::Handle => "handle past the seat mark",
        LimitKey::Chock => "back chock to pin",
        LimitKey::Chocks => "back chock to pin, from seat to seat",
        LimitKey::OarLength => "length, among the oars of a set",
        LimitKey::OarInboard => "inboard, among the oars of a set",
        LimitKey::OarPitch => "own pitch, among the oars of a set",
        LimitKey::OarShaft => "widest section, among the oars of a set",
        LimitKey::OarFlex => "flex, among the oars of a set",
        LimitKey::Gearing => "gearing, from seat to seat",
        LimitKey::Bends => "bends of one part",
        LimitKey::Age => "age of the readings",
    }
}
