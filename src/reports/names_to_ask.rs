//! What one can ask about a boat: her own findings and sums, and every name below hers.

use super::look::Look;
use super::shown;
use crate::rules::Finding;
use crate::rules::Sum;

/// Returns a boat's own findings and sums in short, and the names that can be asked for.
#[must_use]
pub fn names_to_ask(boat: &str, findings: &[&Finding], sums: &[&Sum], look: Look) -> String {
    let heading = |text: &str| format!("{}\n", look.heading().style(text));
    let line = |text: &str| format!("{}\n", look.hanging(text, "  ", "    "));
    let mut out = heading(&look.wrapped(&format!("{boat}, the boat as a whole"), ""));
    let own = sums.iter().filter(|sum| sum.name.as_str() == boat);
    for sum in own {
        let (rule, result, verdict) = (sum.rule.id, sum.result(), sum.verdict());
        out.push_str(&line(&format!("{rule}: {result}. {verdict}")));
    }
    let summed =
        |rule: &str| sums.iter().any(|sum| sum.name.as_str() == boat && sum.rule.id == rule);
    let own = |finding: &&&Finding| finding.name.as_str() == boat && !summed(finding.rule.id);
    for finding in findings.iter().filter(own) {
        let (rule, level) = (finding.rule.id, finding.level.word());
        out.push_str(&line(&format!("{rule}, {level}: {}", shown::line(&finding.message))));
    }
    out.push_str(&format!("\n{}", heading("What you can ask, with the rules that judge it")));
    for Asked { name, seats, rules } in asked(sums) {
        let seats = match seats.contains(',') {
            _ if seats.is_empty() => seats,
            true => format!(" (seats {seats})"),
            false => format!(" (seat {seats})"),
        };
        let name = shown::line(&name);
        out.push_str(&line(&format!("{name}{seats}: {}", rules.join(", "))));
    }
    out.push('\n');
    out.push_str(&look.wrapped(
        "Ask: tholebook why NAME, or tholebook why NAME RULE, with the seat's number for N.",
        "",
    ));
    out.push('\n');
    out
}

/// A name, alike at several seats where it holds `seat-N`, and the rules that judge it.
struct Asked {
    name: String,
    seats: String,
    rules: Vec<&'static str>,
}

/// Returns every name once, in the order of the rules.
fn asked(sums: &[&Sum]) -> Vec<Asked> {
    let mut all: Vec<Asked> = Vec::new();
    for sum in sums {
        let (name, seat) = at_any_seat(sum.name.as_str());
        let place = all.iter().position(|asked| asked.name == name);
        let place = place.unwrap_or_else(|| {
            all.push(Asked { name, seats: String::new(), rules: Vec::new() });
            all.len() - 1
        });
        let Asked { seats, rules, .. } = &mut all[place];
        if !rules.contains(&sum.rule.id) {
            rules.push(sum.rule.id);
        }
        if let Some(seat) = seat.filter(|seat| !seats.split(", ").any(|own| own == seat)) {
            let comma = if seats.is_empty() { "" } else { ", " };
            seats.push_str(&format!("{comma}{seat}"));
        }
    }
    all
}

/// Returns a name with `seat-N` in place of the seat, and the seat's number.
fn at_any_seat(name: &str) -> (String, Option<String>) {
    let mut number = None;
    let part = |part: &str| match part.strip_prefix("seat-") {
        Some(seat) => {
            number = Some(seat.to_owned());
            "seat-N".to_owned()
        }
        None => part.to_owned(),
    };
    let parts: Vec<String> = name.split('/').map(part).collect();
    (parts.join("/"), number)
}
