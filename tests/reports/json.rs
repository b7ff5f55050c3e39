//! Findings as JSON.

use serde_json::Value;
use tholebook::reports;

use crate::sound_book::SoundBook;
use crate::telling::BOAT;
use crate::telling::PLAIN;
use crate::telling::TIGHT;
use crate::telling::json;
use crate::telling::ordered;
use crate::telling::told;

#[test]
fn json_has_these_keys_in_this_order() {
    let (book, checked) = SoundBook::with(
        &[TIGHT, (BOAT, "seat: 2", "level: {trim: 0.0, roll: 0.1}", "level: {trim: 0.0}")]
            .map(|edit| if edit.1 == "seat: 2" { (edit.0, "", edit.2, edit.3) } else { edit }),
    )
    .check();
    let out = told(&book, &checked, reports::json);
    assert_eq!(
        ordered(&out, ""),
        [
            "format_version",
            "tool",
            "book",
            "as_of",
            "checked",
            "findings",
            "not_checked",
            "summary"
        ]
    );
    assert_eq!(ordered(&out, "\"tool\":"), ["name", "version"]);
    assert_eq!(ordered(&out, "\"checked\":"), ["boats", "oar_sets", "crews", "readings"]);
    assert_eq!(
        ordered(&out, "\"findings\":["),
        [
            "rule", "level", "state", "name", "message", "remedy", "value", "limit", "spans",
            "waived"
        ]
    );
    assert_eq!(ordered(&out, "\"value\":"), ["number", "uncertainty", "unit"]);
    assert_eq!(ordered(&out, "\"limit\":"), ["least", "unit", "from", "source"]);
    assert_eq!(ordered(&out, "\"spans\":["), ["path", "start", "end", "label"]);
    assert_eq!(ordered(&out, "\"start\":"), ["line", "column", "byte"]);
    assert_eq!(ordered(&out, "\"not_checked\":["), ["rule", "name", "missing"]);
    assert_eq!(ordered(&out, "\"summary\":"), ["danger", "fault", "unsure", "note"]);
    assert!(out.ends_with("}\n") && out.matches('\n').count() == 1);
}

#[test]
fn json_says_what_was_found_and_where() {
    let report = json(&[TIGHT]);
    let finding = &report["findings"][0];
    assert_eq!(report["format_version"], 1);
    assert_eq!(report["book"], "sound-book");
    assert_eq!(report["as_of"], "2026-11-01");
    assert_eq!(report["checked"]["readings"].as_u64(), Some(144));
    assert_eq!(finding["rule"], "gap-too-tight");
    assert_eq!(finding["level"], "danger");
    assert_eq!(finding["state"], Value::Null);
    assert_eq!(finding["waived"], Value::Null);
    assert_eq!(finding["value"]["number"], 3.0);
    assert_eq!(finding["limit"]["least"], 5.0);
    assert_eq!(finding["limit"]["from"], "class surfboat");
    let span = &finding["spans"][0];
    let text = std::fs::read_to_string("tests/data/sound-book/boats/kittiwake.yaml")
        .expect("the sound book");
    let byte = text.find("gap: 60").expect("a gap") + 5;
    let line = text[..byte].matches('\n').count() + 1;
    assert_eq!(span["path"], BOAT);
    assert_eq!(span["start"]["byte"], byte);
    assert_eq!(span["start"]["line"], line);
    assert_eq!(span["start"]["column"], 12);
    assert_eq!(span["end"]["byte"], byte + 2);
    assert_eq!(finding["spans"][1]["path"], "oars/long-ash.yaml");
    assert_eq!(report["summary"]["danger"], 2);
}

#[test]
fn a_finding_without_value_and_limit_has_null_for_both() {
    let report = json(&[(BOAT, "", "wind: light", "wund: light")]);
    let findings = report["findings"].as_array().expect("findings");
    let finding = findings.iter().find(|finding| finding["rule"] == "unknown-key");
    let finding = finding.expect("the unknown key");
    assert_eq!((&finding["value"], &finding["limit"]), (&Value::Null, &Value::Null));
}

#[test]
fn what_stands_in_the_programs_own_class_is_told_in_words_and_has_no_span() {
    let (book, mut checked) = SoundBook::with(&[TIGHT]).check();
    let class = book.class("surfboat").expect("the program's own class");
    checked.findings[0].labels[1].place = class.id.place;
    checked.findings[0].labels[1].text = "5 mm is set here".to_owned();
    let drawn = told(&book, &checked, |report| reports::text(report, PLAIN));
    assert!(drawn.contains("also: 5 mm is set here (in the program's own class)"), "{drawn}");
    assert!(!drawn.contains("built-in/"), "{drawn}");
    let out = told(&book, &checked, reports::json);
    let report: Value = serde_json::from_str(&out).expect("JSON");
    assert_eq!(report["findings"][0]["spans"].as_array().expect("spans").len(), 1);
}
