//! The README's table of rules is the list of rules. `TABLE=write cargo test --test readme` writes
//! it anew.

use tholebook::rules::RULES;
use tholebook::rules::Rule;

const BEGIN: &str = "<!-- rules: written by tests/readme.rs -->\n";
const END: &str = "<!-- end of rules -->\n";

fn row(rule: &&Rule) -> String {
    let checks = rule.checks.trim_end_matches('.').replace('|', "\\|");
    format!("| `{}` | {} | {checks} |\n", rule.id, rule.level.word())
}

fn table() -> String {
    let rows: String = RULES.iter().map(row).collect();
    format!("| rule | at worst | what it checks |\n|---|---|---|\n{rows}")
}

#[test]
fn the_readme_lists_every_rule_as_it_is() {
    let readme = std::fs::read_to_string("README.md").expect("README.md");
    let (before, rest) = readme.split_once(BEGIN).expect("the mark before the table");
    let (old, after) = rest.split_once(END).expect("the mark after the table");
    let new = table();
    if std::env::var_os("TABLE").is_some_and(|word| word == "write") {
        let text = format!("{before}{BEGIN}{new}{END}{after}");
        std::fs::write("README.md", text).expect("README.md can be written");
        return;
    }
    assert_eq!(old, new, "TABLE=write cargo test --test readme writes the table anew");
}

#[test]
fn the_readme_stays_short() {
    let readme = std::fs::read_to_string("README.md").expect("README.md");
    assert!(readme.lines().count() < 250, "{} lines", readme.lines().count());
}
