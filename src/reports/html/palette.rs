//! The colours of pages and drawings, on white and on black.

/// Ink on paper, blue for what was read, orange for what is outside; light, and dark on a screen.
pub(in crate::reports) const PALETTE: &str = include_str!("palette.css");

#[cfg(test)]
mod tests {
    use super::*;

    /// The colour of a name, in the light half of the palette or in the dark one.
    fn colour(name: &str, dark: bool) -> [f64; 3] {
        let (light, darker) = PALETTE.split_once("@media").expect("two halves");
        let half = if dark { darker } else { light };
        let (_, rest) = half.split_once(&format!("--{name}:#")).expect(name);
        [0, 2, 4].map(|at| {
            let part = u8::from_str_radix(&rest[at..at + 2], 16).expect("two digits");
            f64::from(part) / 255.0
        })
    }

    /// Source: W3C Web Content Accessibility Guidelines 2.2, "relative luminance".
    fn luminance(colour: [f64; 3]) -> f64 {
        let [r, g, b] = colour.map(|part| match part {
            part if part <= 0.04045 => part / 12.92,
            part => ((part + 0.055) / 1.055).powf(2.4),
        });
        0.2126 * r + 0.7152 * g + 0.0722 * b
    }

    /// Source: the same, "contrast ratio"; 4.5 is 1.4.3, level AA.
    fn contrast(one: [f64; 3], other: [f64; 3]) -> f64 {
        let (one, other) = (luminance(one), luminance(other));
        (one.max(other) + 0.05) / (one.min(other) + 0.05)
    }

    #[test]
    fn every_colour_of_words_stands_out_from_every_ground() {
        assert!((contrast([0.0; 3], [1.0; 3]) - 21.0).abs() < 1e-9);
        for dark in [false, true] {
            for ground in ["paper", "tint"] {
                for ink in ["ink", "quiet", "blue", "orange"] {
                    let ratio = contrast(colour(ink, dark), colour(ground, dark));
                    assert!(ratio >= 4.5, "{ink} on {ground}, dark {dark}: {ratio:.2}");
                }
            }
        }
    }
}
