//! Figures in the words of the beach. A figure is never shown without its unit, nor a measured
//! one without how good it is.

use super::finding::Figure;
use crate::metrology::decision::Bounds;
use crate::metrology::decision::GRAIN;
use crate::working::Budget;
use crate::working::Unit;

/// Returns how many decimals a unit is shown with.
pub(super) fn places(unit: &str) -> usize {
    match unit {
        "mm" | "%" => 1,
        "deg" => 2,
        "times" | "days" => 0,
        _ => 3,
    }
}

/// Returns a number with its unit.
#[must_use]
pub fn number(value: f64, unit: &str) -> String {
    let places = places(unit);
    let value = if format!("{value:.places$}").trim_start_matches(['-', '0', '.']).is_empty() {
        0.0
    } else {
        value
    };
    let text = format!("{value:.places$}");
    match unit {
        "" => text,
        "times" | "days" if text == "1" => format!("1 {}", unit.trim_end_matches('s')),
        _ => format!("{text} {unit}"),
    }
}

/// Returns a measured value with how good it is.
#[must_use]
pub fn measured(budget: &Budget, unit: Unit) -> String {
    let value = number(budget.value(), unit.word());
    format!("{value}, good to ± {}", number(budget.expanded(), unit.word()))
}

/// Returns a value as a figure; what was counted, not measured, is exact.
pub(super) fn figure(budget: &Budget, unit: Unit) -> Figure {
    let measured = !budget.parts().is_empty();
    let uncertainty = measured.then(|| budget.expanded());
    Figure { number: budget.value(), uncertainty, unit: unit.word() }
}

/// Returns a limit's figure as it was set: no more decimals than it has.
#[must_use]
pub fn limit(value: f64, unit: &str) -> String {
    if unit.is_empty() { value.to_string() } else { format!("{value} {unit}") }
}

/// Returns the figures of a limit as people say them: "at least 5 mm", "3 to 7 deg", "at most 1 deg
/// either way".
#[must_use]
pub fn limits(bounds: Bounds, unit: &str) -> String {
    let Bounds { least, most } = bounds;
    match (least, most) {
        (Some(least), Some(most)) if (least + most).abs() < GRAIN => {
            format!("at most {} either way", limit(most, unit))
        }
        (Some(least), Some(most)) => format!("{least} to {}", limit(most, unit)),
        (Some(least), None) => format!("at least {}", limit(least, unit)),
        (None, most) => format!("at most {}", limit(most.unwrap_or_default(), unit)),
    }
}

/// Returns how an oar lies, from the key of a trial: "at the catch".
pub(super) fn lying(attitude: &str) -> &str {
    match attitude {
        "square" => "square off",
        "catch" => "at the catch",
        "finish" => "at the finish",
        "along" => "lying along the boat",
        other => other,
    }
}
