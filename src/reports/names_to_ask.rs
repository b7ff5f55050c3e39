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
    for finding in findings.iter().filter(|finding| finding.name.as_str() == boat) {
        let (rule, level) = (finding.rule.id, finding.level.word());
        out.push_str(&line(&format!("{rule}, {level}: {}", shown::line(&finding.message))));
    }
    out.push_str(&format!("\n{}", heading("What you can ask, with the rules that judge it")));
    let mut asked: Vec<(&str, Vec<&str>)> = Vec::new();
    for sum in sums {
        match asked.iter_mut().find(|(name, _)| *name == sum.name.as_str()) {
            Some((_, rules)) if rules.contains(&sum.rule.id) => {}
            Some((_, rules)) => rules.push(sum.rule.id),
            None => asked.push((sum.name.as_str(), vec![sum.rule.id])),
        }
    }
    asked.sort();
    for (name, rules) in asked {
        out.push_str(&line(&format!("{}: {}", shown::line(name), rules.join(", "))));
    }
    out.push('\n');
    out.push_str(&look.wrapped("Ask: tholebook why NAME, or tholebook why NAME RULE.", ""));
    out.push('\n');
    out
}
