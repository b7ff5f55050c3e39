//! Sound files read by a second reader, made by other hands: `serde_yaml` 0.9, on the libyaml
//! parser. Both must find the same values.

use proptest::prelude::*;
use serde_yaml::Value;
use tholebook::reading::tree;
use tholebook::reading::tree::Node;
use tholebook::reading::tree::Scalar;
use tholebook::reading::tree::Shape;
use tholebook::reading::tree::Style;

use crate::RECORDS;

const SOUND: &[&str] = &[
    "a: 1\nb: 2.5\nc: -3\nd: +4\ne: 1e3\nf: 0x1f\ng: .5\n",
    "a: true\nb: True\nc: FALSE\nd: yes\ne: off\nf: 'true'\n",
    "a: ~\nb: null\nc:\nd: 'null'\ne: ''\n",
    "a: 2026-10-17\nb: 12:30\nc: 11 over 176\nd: 23 5/8 in\ne: 5.7°\nf: 1_000\ng: 007\n",
    "- a\n-\n- - b\n  - c\n- d: 1\n  e: 2\n",
    "a:\n- 1\n- 2\nb:\n  - 3\n",
    "a: |\n  x\n   y\n\nb: >-\n  p\n  q\n\n  r\nc: |+\n  z\n\n",
    "a: \"x\\ty\\u00e9\\\n  z\"\nb: 'it''s'\nc: plain\n  on two lines\n",
    "{catch: 1,5, square: 11}",
    "{a: [1, {b: c}], 'd': \"e\", f}",
    "[a: 1, b]",
    "---\na: 1 # c\n...\n",
    "%YAML 1.2\n---\na: é 漢\n",
    "\u{feff}a: 1\r\nb: x\r\n  y\r\n",
    "? a\n: b\n? c\n",
];

/// Asserts that both readers find the same in `text`.
fn agreed(text: &str) {
    let tree = tree::read(text);
    assert!(tree.faults.is_empty(), "{text:?}: {:?}", tree.faults);
    // The second reader takes a byte-order mark for a record of its own.
    let other = serde_yaml::from_str(text.trim_start_matches('\u{feff}'))
        .unwrap_or_else(|error| panic!("{error} in {text:?}"));
    let root = tree.root.expect("a sound file has a root");
    assert!(same(&root, &other), "{text:?}\n{root:?}\n{other:?}");
}

fn same(ours: &Node, other: &Value) -> bool {
    match (&ours.shape, other) {
        (Shape::Empty, Value::Null) => true,
        (Shape::Scalar(scalar), _) => same_scalar(scalar, other),
        (Shape::List(list), Value::Sequence(others)) => {
            list.len() == others.len() && list.iter().zip(others).all(|(one, two)| same(one, two))
        }
        (Shape::Map(entries), Value::Mapping(others)) => {
            entries.len() == others.len()
                && entries.iter().zip(others).all(|(entry, (key, value))| {
                    same_text(&entry.key, key) && same(&entry.value, value)
                })
        }
        _ => false,
    }
}

fn same_scalar(ours: &Scalar, other: &Value) -> bool {
    match ours.style {
        Style::Plain => same_text(&ours.text, other),
        Style::Quoted | Style::Block => other.as_str() == Some(&ours.text),
    }
}

/// Compares by meaning; ours keeps the text of a number as it was written.
fn same_text(ours: &str, other: &Value) -> bool {
    match other {
        Value::String(text) => text == ours,
        Value::Bool(truth) => ours.eq_ignore_ascii_case(if *truth { "true" } else { "false" }),
        Value::Null => matches!(ours, "~" | "null" | "Null" | "NULL"),
        Value::Number(number) => number_in(ours) == number.as_f64().map(bits),
        _ => false,
    }
}

fn number_in(text: &str) -> Option<u64> {
    let hex = text.strip_prefix("0x").and_then(|hex| u32::from_str_radix(hex, 16).ok());
    hex.map(f64::from).or_else(|| text.parse().ok()).map(bits)
}

/// Returns the bits of a number; those of 0 for -0, which is written but not meant.
fn bits(number: f64) -> u64 {
    (number + 0.0).to_bits()
}

#[test]
fn a_second_reader_finds_the_same_values_in_every_record() {
    RECORDS.iter().for_each(|text| agreed(text));
}

#[test]
fn a_second_reader_finds_the_same_values_in_every_sound_file() {
    SOUND.iter().for_each(|text| agreed(text));
}

/// Returns a value as someone may write it on one line, inside brackets or out of them.
fn inline() -> impl Strategy<Value = String> {
    let leaf = prop_oneof![
        "[a-z][a-z0-9-]{0,6}",
        "[+-]?[0-9]{1,4}(\\.[0-9]{1,3})?",
        "[0-9]{1,3} (cm|mm|over 176|5/8 in)",
        "'[a-zé #:,]{0,8}'",
        "\"[a-zé #:,]{0,8}\"",
        Just("~".to_owned()),
        Just("true".to_owned()),
    ];
    leaf.prop_recursive(3, 12, 4, |inner| {
        let list = proptest::collection::vec(inner.clone(), 0..4);
        let map = proptest::collection::btree_map("k[a-z]{1,4}", inner, 0..4);
        let entry = |(key, value): (String, String)| format!("{key}: {value}");
        prop_oneof![
            list.prop_map(|list| format!("[{}]", list.join(", "))),
            map.prop_map(move |map| {
                format!("{{{}}}", map.into_iter().map(entry).collect::<Vec<_>>().join(", "))
            }),
        ]
    })
}

/// Returns lines of a record: keys with values, lists and maps below them, texts and comments.
fn record() -> impl Strategy<Value = String> {
    let below = |inner: BoxedStrategy<String>| {
        let lists = proptest::collection::vec(inner.clone(), 1..4)
            .prop_map(|items| items.iter().map(|item| format!("\n  - {item}")).collect());
        let maps = proptest::collection::btree_map("m[a-z]{1,4}", inner.clone(), 1..4)
            .prop_map(|map| map.iter().map(|(key, value)| format!("\n  {key}: {value}")).collect());
        prop_oneof![
            3 => inner.prop_map(|value| format!(" {value}")),
            1 => lists,
            1 => maps,
            1 => "( [|>][+-]?(\n  [a-z][a-z :#]{0,9}){1,3}|  # [a-z]{0,5}|)",
        ]
    };
    proptest::collection::btree_map("[a-z]{2,6}", below(inline().boxed()), 1..6).prop_map(|map| {
        map.iter()
            .filter(|(key, _)| !matches!(key.as_str(), "true" | "false" | "null"))
            .map(|(key, value)| format!("{key}:{value}\n"))
            .chain(["last: 1\n".to_owned()])
            .collect()
    })
}

proptest! {
    #[test]
    fn a_second_reader_finds_the_same_values_in_random_records(text in record()) {
        // `last` may come by chance and is then a key given twice.
        prop_assume!(!text.trim_end_matches("last: 1\n").contains("last:"));
        crate::looking_over::looked_over(&text);
        agreed(&text);
    }
}
