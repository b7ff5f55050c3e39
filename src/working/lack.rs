//! A worked-out value, or what it lacks.

use super::Budget;

/// A worked-out value, or why it could not be worked out.
pub type Worked = Result<Budget, Lack>;

/// Why a value could not be worked out.
#[derive(Clone, Debug, Eq, PartialEq)]
pub enum Lack {
    /// Readings that were not taken, as names below the seat's, the set's or the boat's own.
    NotMeasured(Vec<String>),
    /// The readings are there but make no sense together.
    Impossible(&'static str),
}

impl Lack {
    /// One reading that was not taken.
    pub(super) fn of(field: impl Into<String>) -> Self {
        Self::NotMeasured(vec![field.into()])
    }

    /// Returns the names of what is missing; none where nothing is.
    #[must_use]
    pub fn missing(&self) -> &[String] {
        match self {
            Self::NotMeasured(fields) => fields,
            Self::Impossible(_) => &[],
        }
    }
}

impl std::fmt::Display for Lack {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::NotMeasured(fields) => write!(f, "{} not measured", fields.join(", ")),
            Self::Impossible(why) => f.write_str(why),
        }
    }
}

/// Works a value out from others, if all of them are there.
pub(super) fn work<const N: usize>(
    inputs: [&Worked; N],
    formula: impl Fn([f64; N]) -> Option<f64>,
) -> Worked {
    let budgets = together(inputs)?;
    Budget::through(budgets, formula).ok_or(Lack::Impossible("these readings can't all be right"))
}

/// Returns all of the values, or everything that is missing for them.
pub(super) fn together<const N: usize>(inputs: [&Worked; N]) -> Result<[&Budget; N], Lack> {
    let mut missing: Vec<String> = Vec::new();
    for lack in inputs.iter().filter_map(|input| input.as_ref().err()) {
        match lack {
            Lack::Impossible(_) => return Err(lack.clone()),
            Lack::NotMeasured(fields) => {
                for field in fields {
                    if !missing.contains(field) {
                        missing.push(field.clone());
                    }
                }
            }
        }
    }
    let budgets: Vec<&Budget> = inputs.iter().filter_map(|input| input.as_ref().ok()).collect();
    <[&Budget; N]>::try_from(budgets).map_err(|_| Lack::NotMeasured(missing))
}
