//! How a value is measured: its sentence, the tool, and a drawing where one helps.

use super::look::Look;
use super::shown;
use crate::model::Tool;

/// Beginnings of names below a seat, an oar or a boat, and the drawing that shows them.
const DRAWINGS: [(&str, &str); 15] = [
    ("level/", include_str!("how_to_measure/level.txt")),
    ("pin/spread", include_str!("how_to_measure/spread.txt")),
    ("pin/along", include_str!("how_to_measure/spread.txt")),
    ("pin/lean/", include_str!("how_to_measure/lean.txt")),
    ("rowlock/above-seat", include_str!("how_to_measure/above-seat.txt")),
    ("rowlock/", include_str!("how_to_measure/rowlock.txt")),
    ("oar-bed", include_str!("how_to_measure/bed.txt")),
    ("pitch/", include_str!("how_to_measure/pitch.txt")),
    ("seat-mark", include_str!("how_to_measure/handle.txt")),
    ("handle-past-mark", include_str!("how_to_measure/handle.txt")),
    ("chock-to-pin", include_str!("how_to_measure/chock.txt")),
    ("foot-holes/", include_str!("how_to_measure/chock.txt")),
    ("shaft/", include_str!("how_to_measure/oar.txt")),
    ("length", include_str!("how_to_measure/oar.txt")),
    ("inboard", include_str!("how_to_measure/oar.txt")),
];

/// What holds for every reading at a seat.
pub(super) const UNLESS_SAID: &str = "Unless said otherwise: boat level, shaft square to the string line, blade \
    held at rowing height, shaft pressed on the forward horn.";

/// Returns how a value is measured, by its name below a seat, an oar or the boat.
#[must_use]
pub fn how_to_measure(short: &str, about: &str, tool: Option<Tool>, look: Look) -> String {
    let with = tool.map(|tool| format!(" Read with {}.", tool.words())).unwrap_or_default();
    let sentence = shown::line(&format!("{short}: {about}.{with}"));
    let drawing = DRAWINGS.iter().find(|(begin, _)| short.starts_with(begin));
    let drawing = drawing.map_or("", |(_, drawing)| drawing);
    let general = drawing.is_empty() || short.starts_with("level/");
    let unless = if general { String::new() } else { look.hanging(UNLESS_SAID, "    ", "    ") };
    let unless = if unless.is_empty() { unless } else { format!("{unless}\n") };
    let sentence = look.hanging(&sentence, "    ", "    ");
    format!("{sentence}\n{drawing}{unless}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_drawing_fits_a_narrow_terminal_and_any_font() {
        for (name, drawing) in DRAWINGS {
            assert!(drawing.is_ascii() && drawing.ends_with('\n'), "{name}");
            assert!(drawing.lines().all(|line| line.len() <= 72), "{name}");
        }
    }
}
