//! What somebody reads at the sound boat and at her oars, as lines of answers.

use std::fmt::Write as _;

use crate::book::BOAT;

const SOUND: &str = "tests/data/sound-book";

/// Fields that are set in the record by hand.
const BY_HAND: [&str; 4] = ["seat", "side", "oar", "worked-out"];

/// The values of the sound boat, as an independent reader reads them.
pub(crate) fn of_the_boat() -> String {
    let boat = read(BOAT);
    let mut lines = String::new();
    for part in ["level-mark", "foot-holes", "rigged"] {
        below(&boat[part], part, &mut lines);
    }
    for seat in boat["seats"].as_sequence().expect("seats") {
        let number = seat["seat"].as_u64().expect("a number");
        part(seat, &format!("seat-{number}"), &mut lines);
    }
    let is_asked = |line: &&str| !line.starts_with("rigged/pitch-angles");
    lines.lines().filter(is_asked).map(|line| format!("{line}\n")).collect()
}

/// The values of her oars.
pub(crate) fn of_the_oars() -> String {
    let set = read("oars/long-ash.yaml");
    let mut lines = "pitch-mark: 100\n".to_owned();
    below(&set["measured"], "measured", &mut lines);
    for oar in set["oars"].as_sequence().expect("oars") {
        part(oar, oar["oar"].as_str().expect("an id"), &mut lines);
    }
    lines
}

fn read(path: &str) -> serde_yaml::Value {
    let text = std::fs::read_to_string(format!("{SOUND}/{path}")).expect("a text");
    serde_yaml::from_str(&text).expect("YAML")
}

fn part(own: &serde_yaml::Value, name: &str, lines: &mut String) {
    for (key, value) in own.as_mapping().expect("a group") {
        let key = key.as_str().expect("a key");
        if !BY_HAND.contains(&key) {
            below(value, &format!("{name}/{key}"), lines);
        }
    }
}

fn below(value: &serde_yaml::Value, name: &str, lines: &mut String) {
    match value {
        serde_yaml::Value::Mapping(map) => {
            for (key, value) in map {
                below(value, &format!("{name}/{}", key.as_str().expect("a key")), lines);
            }
        }
        serde_yaml::Value::String(text) => writeln!(lines, "{name}: {text}").expect("a text"),
        serde_yaml::Value::Number(number) => writeln!(lines, "{name}: {number}").expect("a text"),
        other => panic!("{name}: {other:?}"),
    }
}
