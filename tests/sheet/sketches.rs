//! Every value that is measured has a sketch with its own arrow lit.

use std::collections::BTreeMap;

use tholebook::reading;
use tholebook::reading::Described;
use tholebook::reading::Kind;
use tholebook::reading::RecordKind;
use tholebook::reports;

use super::page::numbers;

/// The names of all readings below a part of a record.
fn readings(at: &str, form: &[Described], found: &mut Vec<String>) {
    for described in form {
        let name = format!("{at}/{}", described.field.key);
        of_kind(&name, &described.kind, found);
    }
}

fn of_kind(name: &str, kind: &Kind, found: &mut Vec<String>) {
    match kind {
        Kind::Reading(_) => found.push(name.to_owned()),
        Kind::Section(form) => readings(name, form, found),
        Kind::List(part, _) => of_kind(name, part, found),
        Kind::Value(_) | Kind::Free(_) => {}
    }
}

fn sketches() -> BTreeMap<String, String> {
    let all = reports::sketches();
    let many = all.len();
    let by_name: BTreeMap<String, String> =
        all.into_iter().map(|called| (called.id, called.drawing.svg())).collect();
    assert_eq!(by_name.len(), many, "one sketch a field");
    by_name
}

#[test]
fn every_reading_of_every_record_has_a_sketch() {
    let mut found = Vec::new();
    readings("boat", &reading::form(RecordKind::Boat), &mut found);
    readings("oar-set", &reading::form(RecordKind::OarSet), &mut found);
    readings("crew", &reading::form(RecordKind::Crew), &mut found);
    assert!(found.len() > 30, "{found:?}");
    let sketches = sketches();
    let bare: Vec<&String> = found.iter().filter(|name| !sketches.contains_key(*name)).collect();
    assert!(bare.is_empty(), "without a sketch: {bare:?}");
}

#[test]
fn every_sketch_is_of_a_field_and_says_its_sentence() {
    for (field, svg) in sketches() {
        let sentence = reports::sentence(&field);
        assert!(!sentence.is_empty(), "no such field: {field}");
        let shown = sentence.replace('&', "&amp;").replace('<', "&lt;");
        assert!(svg.contains(&shown), "{field} does not say {sentence:?}");
    }
}

#[test]
fn one_arrow_alone_is_lit_and_named_in_words() {
    for (field, svg) in sketches() {
        assert_eq!(svg.matches("<g class=\"lit\"").count(), 1, "{field}");
        let (_, lit) = svg.split_once("<g class=\"lit\"").expect("lit");
        let lit = lit.split("</g>").next().expect("an end");
        assert!(lit.split('"').any(|part| part.split(' ').any(|name| name == field)), "{field}");
        let (_, words) = lit.split_once("<text").expect("words");
        let words = words.split(['>', '<']).nth(1).expect("words");
        assert!(words.chars().any(char::is_alphabetic), "{field}: {words:?}");
    }
}

#[test]
fn nothing_is_drawn_outside_of_the_paper() {
    for (field, svg) in sketches() {
        let lines = svg.split("<line ").skip(1);
        let lines = lines.map(|line| format!("<line {}", line.split('>').next().unwrap_or("")));
        for line in lines {
            let (class, _) = line[13..].split_once('"').expect("a class");
            let at = numbers(&line, class, &["x1", "y1", "x2", "y2"]);
            let [x1, y1, x2, y2] = at[0][..] else { panic!("four numbers") };
            for (x, y) in [(x1, y1), (x2, y2)] {
                assert!((0.0..=46.0).contains(&x) && (0.0..=32.0).contains(&y), "{field}: {x} {y}");
            }
        }
    }
}
