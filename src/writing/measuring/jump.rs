//! Whether a value moved by more than such a value usually does between two measurings.

use crate::model::Name;
use crate::model::Said;
use crate::reading;
use crate::store::Named;
use crate::units::Slope;

/// So many times as finely as its tool reads, a value may move unasked. Pins and horns creep by less,
/// a slip of the pen or of the rule is more. Common practice, no source.
const USUAL: f64 = 10.0;

/// Returns the figure of a value in a record's text: the mean of its readings, and its unit. None
/// where it has none, or where its readings have two.
pub(super) fn figure(record: &str, name: &Name) -> Option<(f64, &'static str)> {
    let (book, _) = reading::read_alone(Named::text("record.yaml", record));
    let said = book.written().filter(|own| own.name == *name).map(|own| &own.said);
    let figures = said.map(of).collect::<Option<Vec<_>>>()?;
    let unit = figures.first()?.1;
    let sum: f64 = figures.iter().map(|(value, _)| value).sum();
    let is_one = figures.iter().all(|(_, own)| *own == unit);
    is_one.then(|| (sum / figures.len() as f64, unit))
}

fn of(said: &Said) -> Option<(f64, &'static str)> {
    match said {
        Said::Figure { value, of } => Some((*value, of.unit())),
        Said::Slope(Slope::Offset(offset)) => Some((offset.as_mm(), "mm")),
        Said::Slope(Slope::Angle(angle)) => Some((angle.as_deg(), "deg")),
        // What it was taken over may be another length each time.
        Said::Slope(Slope::Over { .. }) | Said::Unread | Said::Text(_) => None,
    }
}

/// Returns how far a value moved, in words, where that is more than usual; `fine` is how finely its
/// tool reads, in the value's own unit.
pub(super) fn jump(
    before: Option<(f64, &'static str)>,
    now: Option<(f64, &'static str)>,
    fine: f64,
) -> Option<String> {
    let ((before, unit), (now, own)) = (before?, now?);
    let moved = now - before;
    let is_jump = unit == own && !unit.is_empty() && moved.abs() > USUAL * fine;
    let more = if moved > 0.0 { "more" } else { "less" };
    is_jump.then(|| format!("{:.1} {unit} {more} than last time", moved.abs()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ten_times_the_tool_is_usual_and_a_hair_more_is_a_jump_both_ways() {
        let mm = |value| Some((value, "mm"));
        assert_eq!(jump(mm(60.0), mm(62.0), 0.2), None);
        assert_eq!(jump(mm(60.0), mm(58.0), 0.2), None);
        let told = |now| jump(mm(60.0), mm(now), 0.2);
        assert_eq!(told(62.1).as_deref(), Some("2.1 mm more than last time"));
        assert_eq!(told(57.9).as_deref(), Some("2.1 mm less than last time"));
    }

    #[test]
    fn what_has_another_unit_or_no_figure_before_is_no_jump() {
        assert_eq!(jump(Some((60.0, "mm")), Some((3.0, "deg")), 0.2), None);
        assert_eq!(jump(None, Some((60.0, "mm")), 0.2), None);
    }

    #[test]
    fn readings_are_taken_by_their_mean_in_one_unit() {
        let record = "boat: a\nseats:\n  - {seat: 1, rowlock: {gap: [58, 6 cm], horn: 46}}\n";
        let name = Name::record("a").seat(1);
        assert_eq!(figure(record, &name.at("rowlock/gap")), Some((59.0, "mm")));
        assert_eq!(figure(record, &name.at("rowlock/long")), None);
    }
}
