//! A worked-out value together with every reading it rests on. Knows no limit and no verdict.

use crate::metrology::half_width;

/// How many standard uncertainties the expanded uncertainty is.
///
/// # Source
///
/// JCGM 100:2008 (GUM), 6.3.3 (clause number from memory): k = 2 for a level of confidence near
/// 95 %.
pub const COVERAGE: f64 = 2.0;

/// The step of a central difference, as a part of the number stepped.
///
/// # Accuracy
///
/// Near the cube root of the rounding of a double (6e-6), where what the step leaves out and
/// what rounding adds are about equal: sensitivities are good to some 1e-9 of themselves.
const STEP: f64 = 1e-5;

/// One reading's part in a worked-out value. `K` identifies the reading: equal keys are one and
/// the same reading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Part<K> {
    /// Which reading.
    pub input: K,
    /// How far the reading may be out either way.
    pub half_width: f64,
    /// How far the worked-out value moves when the reading moves by one.
    pub sensitivity: f64,
}

impl<K> Part<K> {
    /// Returns the standard uncertainty this reading alone gives the value, with its sign.
    fn contribution(&self) -> f64 {
        self.sensitivity * half_width::standard_uncertainty(self.half_width)
    }

    fn variance(&self) -> f64 {
        self.contribution().powi(2)
    }
}

/// A value with the part that each reading has in its uncertainty.
///
/// A reading used twice is one input: its sensitivities are summed before they are squared, so
/// that what two values share counts once in their sum and cancels in their difference.
///
/// # Formula
///
/// With `a` the half-width and `c` the sensitivity of each reading,
///
/// ```text
/// u^2 = sum of (c * a / sqrt(3))^2        U = 2 u
/// ```
///
/// # Source
///
/// JCGM 100:2008 (GUM): 5.1.2, equation (10); 5.1.3, NOTE 2; 4.3.7; shared inputs 5.2 and F.1.2.3
/// (clause numbers from memory).
///
/// # Example
///
/// ```
/// use tholebook::metrology::Budget;
///
/// let gap = Budget::reading(58.2, 0.2, "gap");
/// let shaft = Budget::reading(53.2, 0.2, "shaft");
/// let clearance = gap.minus(&shaft);
/// assert_eq!(format!("{:.1} ± {:.2}", clearance.value(), clearance.expanded()), "5.0 ± 0.33");
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Budget<K> {
    value: f64,
    parts: Vec<Part<K>>,
}

impl<K: Copy + PartialEq> Budget<K> {
    /// Returns a value that rests on no reading.
    #[must_use]
    pub fn exact(value: f64) -> Self {
        Self { value, parts: Vec::new() }
    }

    /// Returns one reading as it was taken, good to ± `half_width`.
    #[must_use]
    pub fn reading(value: f64, half_width: f64, input: K) -> Self {
        Self::exact(value).with_input(half_width, 1.0, input)
    }

    /// Adds a reading's part by hand. The value stays; a reading already there has its
    /// sensitivity added to, and the wider half-width counts.
    #[must_use]
    pub fn with_input(mut self, half_width: f64, sensitivity: f64, input: K) -> Self {
        self.add(Part { input, half_width, sensitivity });
        self
    }

    /// Works out `f` of other budgets, or gives `None` when `f` does, at the values or at a point
    /// beside them, or when anything comes out that is not finite.
    ///
    /// # Formula
    ///
    /// `c = (f(x + h) - f(x - h)) / 2h`, `h` a hundred-thousandth of `x` or of its expanded
    /// uncertainty, whichever is greater. Each value is stepped alone; an exact one is not.
    ///
    /// # Accuracy
    ///
    /// Sensitivities to about 1e-8 of themselves where `f` is smooth. First order: where `f` bends
    /// within the uncertainty of a value, that is not seen. At a kink (`abs`, `max`) the mean of
    /// both sides counts.
    ///
    /// # Source
    ///
    /// JCGM 100:2008 (GUM), 5.1.3, NOTE 2, with a small step in place of the uncertainty itself.
    #[must_use]
    pub fn through<const N: usize>(
        inputs: [&Self; N],
        f: impl Fn([f64; N]) -> Option<f64>,
    ) -> Option<Self> {
        let values = inputs.map(Self::value);
        let mut result = Self::exact(f(values)?);
        for (place, input) in inputs.into_iter().enumerate() {
            if !input.parts.is_empty() {
                let sensitivity = slope_along(&f, values, place, input.step())?;
                result.add_all(&input.parts, sensitivity);
            }
        }
        let finite = values.iter().all(|value| value.is_finite()) && result.is_finite();
        finite.then_some(result)
    }

    /// Returns a value found by other means, such as a solver, whose sensitivity to each of
    /// `inputs` is known.
    #[must_use]
    pub fn linear<const N: usize>(value: f64, inputs: [(&Self, f64); N]) -> Self {
        let mut result = Self::exact(value);
        for (input, sensitivity) in inputs {
            result.add_all(&input.parts, sensitivity);
        }
        result
    }

    /// Returns the sum of two values.
    #[must_use]
    pub fn plus(&self, other: &Self) -> Self {
        Self::linear(self.value + other.value, [(self, 1.0), (other, 1.0)])
    }

    /// Returns this value less the other.
    #[must_use]
    pub fn minus(&self, other: &Self) -> Self {
        Self::linear(self.value - other.value, [(self, 1.0), (other, -1.0)])
    }

    /// Returns the value times a number that is exact.
    #[must_use]
    pub fn scaled(&self, by: f64) -> Self {
        Self::linear(self.value * by, [(self, by)])
    }

    /// Returns the mean of several values, or `None` when there are none.
    #[must_use]
    pub fn mean<'a>(of: impl IntoIterator<Item = &'a Self>) -> Option<Self>
    where
        K: 'a,
    {
        let (sum, count) = of
            .into_iter()
            .fold((Self::exact(0.0), 0_u32), |(sum, count), one| (sum.plus(one), count + 1));
        (count > 0).then(|| {
            let count = f64::from(count);
            Self { value: sum.value / count, ..sum.scaled(1.0 / count) }
        })
    }

    /// Returns the value.
    #[must_use]
    pub fn value(&self) -> f64 {
        self.value
    }

    /// Returns the combined standard uncertainty.
    #[must_use]
    pub fn standard_uncertainty(&self) -> f64 {
        self.variance().sqrt()
    }

    /// Returns the expanded uncertainty `U`, which is [`COVERAGE`] standard uncertainties.
    #[must_use]
    pub fn expanded(&self) -> f64 {
        COVERAGE * self.standard_uncertainty()
    }

    /// Returns the readings the value rests on, each once, in order of first use.
    #[must_use]
    pub fn parts(&self) -> &[Part<K>] {
        &self.parts
    }

    /// Returns each reading's share of the variance, largest first. The shares sum to 1; there
    /// are none when nothing is uncertain.
    #[must_use]
    pub fn shares(&self) -> Vec<(K, f64)> {
        let variance = self.variance();
        if variance <= 0.0 {
            return Vec::new();
        }
        let mut shares: Vec<_> =
            self.parts.iter().map(|part| (part.input, part.variance() / variance)).collect();
        shares.sort_by(|(_, one), (_, other)| other.total_cmp(one));
        shares
    }

    /// Returns the same budget with one reading taken to ± `half_width` instead. Nothing changes
    /// when the value does not rest on that reading.
    #[must_use]
    pub fn read_again_with(&self, input: K, half_width: f64) -> Self {
        let mut result = self.clone();
        for part in result.parts.iter_mut().filter(|part| part.input == input) {
            part.half_width = half_width;
        }
        result
    }

    /// Returns the half-width to which one reading would have to be taken for `U` to come to
    /// `expanded`, all other readings staying as they are; any finer one gives less. `None` when
    /// the others alone give as much, or when the value does not rest on that reading.
    #[must_use]
    pub fn half_width_for(&self, input: K, expanded: f64) -> Option<f64> {
        let part = self.parts.iter().find(|part| part.input == input)?;
        let others: f64 =
            self.parts.iter().filter(|part| part.input != input).map(Part::variance).sum();
        let room = (expanded / COVERAGE).powi(2) - others;
        let half_width = half_width::of_standard_uncertainty(room.sqrt()) / part.sensitivity.abs();
        (room > 0.0 && half_width.is_finite()).then_some(half_width)
    }

    fn add_all(&mut self, parts: &[Part<K>], sensitivity: f64) {
        for part in parts {
            self.add(Part { sensitivity: part.sensitivity * sensitivity, ..*part });
        }
    }

    fn add(&mut self, part: Part<K>) {
        match self.parts.iter_mut().find(|held| held.input == part.input) {
            Some(held) => {
                held.sensitivity += part.sensitivity;
                held.half_width = wider(held.half_width, part.half_width);
            }
            None => self.parts.push(part),
        }
    }

    fn variance(&self) -> f64 {
        self.parts.iter().map(Part::variance).sum()
    }

    fn is_finite(&self) -> bool {
        self.value.is_finite() && self.variance().is_finite()
    }

    fn step(&self) -> f64 {
        let scale = self.value.abs().max(self.expanded());
        if scale > 0.0 { STEP * scale } else { STEP }
    }
}

/// Returns how fast `f` changes with the value at `place`.
fn slope_along<const N: usize>(
    f: &impl Fn([f64; N]) -> Option<f64>,
    values: [f64; N],
    place: usize,
    step: f64,
) -> Option<f64> {
    let (mut below, mut above) = (values, values);
    below[place] -= step;
    above[place] += step;
    // The step that was really made, after rounding.
    let made = above[place] - below[place];
    Some((f(above)? - f(below)?) / made)
}

/// Returns the greater of two half-widths; one that is no number wins.
fn wider(one: f64, other: f64) -> f64 {
    if one.is_nan() || one > other { one } else { other }
}
