//! One case of the table: its inputs, and its outputs held against what was found.

use std::collections::BTreeMap;

use serde_json::Value;
use tholebook::geometry::arc::Lean;
use tholebook::units::Angle;
use tholebook::units::Length;

use crate::Found;

pub(super) struct Case {
    pub(super) id: String,
    pub(super) topic: String,
    tolerance: f64,
    pub(super) inputs: Value,
    outputs: BTreeMap<String, f64>,
}

impl Case {
    pub(super) fn read(case: &Value) -> Self {
        let text = |key: &str| case[key].as_str().expect("every case has an id and a topic");
        let outputs = case["outputs"].as_object().expect("every case has outputs");
        let number = |(name, value): (&String, &Value)| {
            (name.clone(), value.as_f64().expect("an output is a number"))
        };
        Self {
            id: text("id").to_owned(),
            topic: text("topic").to_owned(),
            tolerance: case["tolerance"].as_f64().expect("every case has a tolerance"),
            inputs: case["inputs"].clone(),
            outputs: outputs.iter().map(number).collect(),
        }
    }

    pub(super) fn number(&self, name: &str) -> f64 {
        self.inputs[name].as_f64().unwrap_or_else(|| panic!("{}: no input {name}", self.id))
    }

    pub(super) fn deg(&self, name: &str) -> Angle {
        Angle::deg(self.number(name))
    }

    pub(super) fn mm(&self, name: &str) -> Length {
        Length::mm(self.number(name))
    }

    pub(super) fn text(&self, name: &str) -> &str {
        self.inputs[name].as_str().unwrap_or_else(|| panic!("{}: no input {name}", self.id))
    }

    pub(super) fn lean(&self) -> Lean {
        Lean { aft: self.deg("stern_lean_deg"), out: self.deg("outboard_lean_deg") }
    }

    /// Compares every output of the case with what was found; none may be left over on either side.
    pub(super) fn check(&self, found: Found) {
        let mut left: BTreeMap<&str, f64> =
            self.outputs.iter().map(|(name, value)| (name.as_str(), *value)).collect();
        for (name, value) in found {
            let expected = left.remove(name);
            let expected = expected.unwrap_or_else(|| panic!("{}: no output {name}", self.id));
            let off = (value - expected).abs();
            let within = self.tolerance.max(half_the_last_digit(expected));
            assert!(off <= within, "{} {name}: {value} against {expected}", self.id);
        }
        assert!(left.is_empty(), "{}: not checked: {left:?}", self.id);
    }
}

/// Returns half of the tenth digit: the table writes no more of a number than ten.
fn half_the_last_digit(written: f64) -> f64 {
    if written.abs() < 1e-9 {
        return 0.0;
    }
    0.5 * 10_f64.powf(written.abs().log10().floor() - 9.0)
}
