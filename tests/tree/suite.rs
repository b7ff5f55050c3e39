//! The YAML test suite (source: `tests/data/yaml-test-suite.md`): 402 texts, 94 of which are no
//! YAML. A book may hold less than all of YAML; what it can't hold must be refused by its name.

use serde_json::Deserializer;
use serde_json::Value;
use tholebook::reading::tree;
use tholebook::reading::tree::Node;
use tholebook::reading::tree::Shape;
use tholebook::reading::tree::Style;
use tholebook::reading::tree::TreeFaultKind;

const SUITE: &str = include_str!("../data/yaml-test-suite.json");

struct Case {
    id: String,
    text: String,
    fails: bool,
    says: Option<Value>,
}

fn cases() -> Vec<Case> {
    let all: Vec<Value> = serde_json::from_str(SUITE).expect("the suite is JSON");
    let case = |own: &Value| Case {
        id: own["id"].as_str().expect("an id").to_owned(),
        text: own["yaml"].as_str().expect("a text").to_owned(),
        fails: own["fail"] == true,
        says: own["json"].as_str().and_then(first),
    };
    all.iter().map(case).collect()
}

/// Returns the first of several JSON values.
fn first(text: &str) -> Option<Value> {
    Deserializer::from_str(text).into_iter().next()?.ok()
}

/// Returns the ids of the cases for which something holds.
fn of(cases: &[Case], holds: impl Fn(&Case) -> bool) -> Vec<&str> {
    cases.iter().filter(|case| holds(case)).map(|case| case.id.as_str()).collect()
}

fn faults(case: &Case) -> Vec<TreeFaultKind> {
    tree::read(&case.text).faults.into_iter().map(|fault| fault.what).collect()
}

#[test]
fn the_whole_suite_is_here() {
    let cases = cases();
    assert_eq!(cases.len(), 402);
    assert_eq!(of(&cases, |case| case.fails).len(), 94);
}

#[test]
fn what_is_no_yaml_is_refused() {
    let taken = of(&cases(), |case| case.fails && faults(case).is_empty()).join(" ");
    assert_eq!(taken, "");
}

#[test]
fn what_is_yaml_is_refused_only_for_what_a_book_may_not_hold() {
    let called_broken = |case: &Case| {
        let broken = |what: &TreeFaultKind| matches!(what, TreeFaultKind::NotYaml { .. });
        !case.fails && faults(case).iter().any(broken)
    };
    assert_eq!(of(&cases(), called_broken).join(" "), "");
}

#[test]
fn what_is_read_says_what_the_suite_says() {
    let cases = cases();
    let read = |case: &&Case| !case.fails && faults(case).is_empty() && case.says.is_some();
    let compared: Vec<&Case> = cases.iter().filter(read).collect();
    let differs = |case: &&&Case| {
        let root = tree::read(&case.text).root.expect("read without fault");
        !same(&root, case.says.as_ref().expect("picked so"))
    };
    let differing: Vec<&str> = compared.iter().filter(differs).map(|own| own.id.as_str()).collect();
    assert_eq!(differing.join(" "), "");
    assert_eq!(compared.len(), 194, "the others hold several records, anchors, tags or no JSON");
}

fn same(ours: &Node, other: &Value) -> bool {
    match (&ours.shape, other) {
        (Shape::Empty, Value::Null) => true,
        (Shape::Scalar(own), Value::String(text)) => own.text == *text,
        (Shape::Scalar(own), Value::Number(number)) => {
            own.style == Style::Plain && own.text.parse().ok() == number.as_f64()
        }
        (Shape::Scalar(own), Value::Bool(truth)) => own.text == truth.to_string(),
        (Shape::List(list), Value::Array(others)) => {
            list.len() == others.len() && list.iter().zip(others).all(|(one, two)| same(one, two))
        }
        (Shape::Map(entries), Value::Object(others)) => {
            entries.len() == others.len()
                && entries
                    .iter()
                    .all(|own| others.get(&own.key).is_some_and(|it| same(&own.value, it)))
        }
        _ => false,
    }
}
