//! Rules in words.

use tholebook::reports;
use tholebook::rules;
use tholebook::rules::RULES;

use crate::telling::PLAIN;

#[test]
fn every_rule_is_explained_within_the_width() {
    for rule in RULES {
        let explained = reports::explain(rule, PLAIN);
        let flowed = explained.split_whitespace().collect::<Vec<_>>().join(" ");
        for part in [rule.checks, rule.reason, rule.remedy, rule.formula] {
            let part = part.split_whitespace().collect::<Vec<_>>().join(" ");
            assert!(flowed.contains(&part), "{}: {part}", rule.id);
        }
        for line in explained.lines().filter(|line| line.contains(' ')) {
            assert!(line.chars().count() <= 80, "{}: {line}", rule.id);
        }
    }
}

#[test]
fn a_rule_about_the_rowlock_says_where_the_sums_stop() {
    let explain = |id| {
        let out = reports::explain(rules::find(id).expect("a rule"), PLAIN);
        out.split_whitespace().collect::<Vec<_>>().join(" ")
    };
    let stop = "Clears means the shaft fits through a still rowlock. It doesn't mean the oar \
                will come out in surf: load, friction, sand, a blocked rowlock and bent metal \
                aren't in the sum. Lift every oar out by hand before going afloat.";
    let bending = "Cold-bending weakens metal and can crack it";
    assert!(explain("gap-too-tight").contains(stop));
    assert!(explain("gap-too-tight").contains(bending));
    assert!(explain("pin-not-vertical").contains(bending));
    assert!(!explain("pin-not-vertical").contains(stop));
    assert!(!explain("unknown-key").contains(bending));
}

#[test]
fn every_rule_is_listed_with_its_level() {
    let listed = reports::rules(PLAIN);
    for rule in RULES {
        let row = listed.lines().find(|line| line.starts_with(&format!("{} ", rule.id)));
        let row = row.unwrap_or_else(|| panic!("{} in {listed}", rule.id));
        assert!(row.contains(rule.level.word()), "{row}");
    }
    assert!(listed.lines().all(|line| line.chars().count() <= 80), "{listed}");
}
