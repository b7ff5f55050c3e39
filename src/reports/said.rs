//! Values and limits in the few words that a drawing or a sheet has room for.

use super::figures_text::rounded;
use crate::model::LimitKey;
use crate::model::Part;
use crate::working::SeatSight;
use crate::working::Worked;

/// Returns how long ago a day was, in words.
pub(super) fn ago(days: i64) -> String {
    match days {
        0 => "today".to_owned(),
        1 => "1 day ago".to_owned(),
        2.. => format!("{days} days ago"),
        _ => "a day yet to come".to_owned(),
    }
}

/// Returns a value, how good it is, and its unit; "not measured" where it is not.
pub(super) fn value(worked: &Worked, places: usize, unit: &str) -> String {
    match worked {
        Ok(budget) => {
            let number = rounded(budget.value(), places);
            format!("{number} ± {:.places$} {unit}", budget.expanded()).trim_end().to_owned()
        }
        Err(crate::working::Lack::NotMeasured(_)) => "not measured".to_owned(),
        Err(lack) => lack.to_string(),
    }
}

/// Returns the limits in force for a seat, the least and the most.
pub(super) fn range(seat: &SeatSight, key: LimitKey) -> [Option<f64>; 2] {
    [Part::Least, Part::Most].map(|part| seat.at.in_force.limit(key, part).map(|limit| limit.value))
}

/// Returns limits in words: "3 to 7", "at least 5", "at most 15".
pub(super) fn limits(range: [Option<f64>; 2]) -> Option<String> {
    let said =
        |number: f64| rounded(number, 2).trim_end_matches('0').trim_end_matches('.').to_owned();
    match range {
        [Some(least), Some(most)] => Some(format!("{} to {}", said(least), said(most))),
        [Some(least), None] => Some(format!("at least {}", said(least))),
        [None, Some(most)] => Some(format!("at most {}", said(most))),
        [None, None] => None,
    }
}

/// Returns one limit in force for a seat, in words with its unit; nothing where none is.
pub(super) fn limit(seat: &SeatSight, key: LimitKey) -> Option<String> {
    let part = |part| seat.at.in_force.limit(key, part).map(|limit| limit.value);
    let range = match (part(Part::Aim), part(Part::Within)) {
        (Some(aim), Some(within)) => [Some(aim - within), Some(aim + within)],
        _ => [part(Part::Least), part(Part::Most)],
    };
    let quantity = key.parts().first().map_or("", |(_, quantity)| quantity.unit());
    limits(range).map(|said| format!("{said} {quantity}").trim_end().to_owned())
}
