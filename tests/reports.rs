//! Findings as drawings, lines and JSON; hostile text; rules and worked-out values in words.

mod sound_book;

use serde_json::Value;
use sound_book::SoundBook;
use tholebook::model::Book;
use tholebook::reports;
use tholebook::reports::Glyphs;
use tholebook::reports::Look;
use tholebook::reports::Report;
use tholebook::reports::shown::is_hidden;
use tholebook::rules;
use tholebook::rules::Checked;
use tholebook::rules::Edit;
use tholebook::rules::Level;
use tholebook::rules::RULES;
use tholebook::units::Date;
use tholebook::working::BoatSight;

const PLAIN: Look = Look { width: 80, glyphs: Glyphs::Unicode, colour: false };
const BOAT: &str = "boats/kittiwake.yaml";
const TIGHT: Edit = (BOAT, "seat: 1", "gap: 60", "gap: 55");

fn told(book: &Book, checked: &Checked, tell: impl Fn(&Report) -> String) -> String {
    let as_of = Date::read("2026-11-01").expect("a day");
    tell(&Report { book, checked, as_of, only: &[], earlier: None })
}

fn text_of(book: &SoundBook, look: Look) -> String {
    let (book, checked) = book.check();
    told(&book, &checked, |report| reports::text(report, look))
}

fn text(edits: &[Edit]) -> String {
    text_of(&SoundBook::with(edits), PLAIN)
}

fn json(edits: &[Edit]) -> Value {
    let (book, checked) = SoundBook::with(edits).check();
    serde_json::from_str(&told(&book, &checked, reports::json)).expect("JSON")
}

fn keys(value: &Value) -> Vec<&str> {
    value.as_object().expect("an object").keys().map(String::as_str).collect()
}

/// Returns the keys of the first object in `text` after `start`, in the order they are written.
fn ordered(text: &str, start: &str) -> Vec<String> {
    let from = text.find(start).unwrap_or_else(|| panic!("{start} in {text}")) + start.len();
    let (mut depth, mut keys, mut quoted) = (0_i32, Vec::new(), None);
    let bytes = text.as_bytes();
    for at in from..bytes.len() {
        match (bytes[at], quoted) {
            (b'"', None) => quoted = Some(at + 1),
            (b'"', Some(begun)) if bytes[at - 1] != b'\\' => {
                if depth == 1 && bytes[at + 1] == b':' {
                    keys.push(text[begun..at].to_owned());
                }
                quoted = None;
            }
            (b'{' | b'[', None) => depth += 1,
            (b'}' | b']', None) => {
                depth -= 1;
                if depth == 0 {
                    break;
                }
            }
            _ => {}
        }
    }
    keys
}

#[test]
fn a_finding_is_drawn_under_every_line_that_takes_part_in_both_files() {
    let drawn = text(&[TIGHT]);
    let expected = "\
gap-too-tight  kittiwake/seat-1/rowlock/gap

  D danger: Kittiwake, seat 1: the gap clears oar A1 by 3.0 mm, good to
  │ ± 0.3 mm: 2.0 mm short (at least 5 mm)
    ╭─[boats/kittiwake.yaml:43:12]
 42 │     rowlock:
 43 │       gap: 55
    ·            ─┬
    ·             ╰── this gap
 44 │       after-tip: 3
    ╰────
    ╭─[oars/long-ash.yaml:10:21]
 10 │     shaft: {widest: 52, narrowest: 46, bears: flat, leather: wet}
    ·                     ─┬
    ·                      ╰── the widest part of A1
    ╰────
  help: ";
    assert!(drawn.contains(expected), "{drawn}");
    assert!(drawn.contains("        limit: at least 5 mm, from class surfboat (no published"));
}

#[test]
fn no_line_is_wider_than_asked_for() {
    for width in [60, 80, 100] {
        for glyphs in [Glyphs::Unicode, Glyphs::Ascii] {
            let look = Look { width, glyphs, colour: false };
            let pitch: Edit =
                (BOAT, "", "lean-out: -0.09 deg}", "lean-out: -0.09 deg, lean-oot: 1}");
            let drawn = text_of(&SoundBook::with(&[TIGHT, pitch]), look);
            let wide: Vec<&str> = drawn
                .lines()
                .filter(|line| line.chars().count() > width && !line.starts_with("checked "))
                .collect();
            assert!(wide.is_empty(), "{width}: {wide:#?}");
        }
    }
}

#[test]
fn plain_glyphs_are_ascii_all_through() {
    let look = Look { glyphs: Glyphs::Ascii, ..PLAIN };
    let drawn = text_of(&SoundBook::with(&[TIGHT]), look);
    assert!(drawn.is_ascii(), "{drawn}");
    assert!(drawn.contains("    ,-[boats/kittiwake.yaml:43:12]"), "{drawn}");
}

#[test]
fn colours_change_nothing_but_colours() {
    let coloured = text_of(&SoundBook::with(&[TIGHT]), Look { colour: true, ..PLAIN });
    let mut stripped = String::new();
    let mut rest = coloured.as_str();
    while let Some(at) = rest.find("\u{1b}[") {
        stripped.push_str(&rest[..at]);
        rest = &rest[at + rest[at..].find('m').expect("the end of a colour") + 1..];
    }
    stripped.push_str(rest);
    assert!(coloured.len() > stripped.len());
    assert_eq!(stripped, text(&[TIGHT]));
    assert!(coloured.contains("38;2;192;88;0"), "orange");
}

#[test]
fn the_level_is_told_by_letter_and_word() {
    let drawn = text(&[TIGHT, (BOAT, "", "wind: light", "wund: light")]);
    assert!(drawn.contains("  D danger: "), "{drawn}");
    assert!(drawn.contains("  F fault: "), "{drawn}");
}

#[test]
fn a_place_at_the_very_end_of_a_file_is_still_drawn() {
    let (book, mut checked) = SoundBook::with(&[TIGHT]).check();
    let end = book.file(checked.findings[0].labels[0].place.file).text.len();
    let span = &mut checked.findings[0].labels[0].place.span;
    (span.start, span.end) = (end, end);
    let drawn = told(&book, &checked, |report| reports::text(report, PLAIN));
    let lines = SoundBook::with(&[TIGHT]).lines().filter(|(path, ..)| path == BOAT).count();
    let after = lines + 1;
    assert!(drawn.contains(&format!("[{BOAT}:{after}:1]")), "{drawn}");
    assert!(drawn.contains("╰── this gap"), "{drawn}");
}

#[test]
fn a_mark_of_several_lines_is_drawn_on_its_first() {
    let (book, mut checked) = SoundBook::with(&[TIGHT]).check();
    checked.findings[0].labels[0].place.span.end += 100;
    let drawn = told(&book, &checked, |report| reports::text(report, PLAIN));
    assert!(drawn.contains("43 │       gap: 55\n    ·            ─┬\n"), "{drawn}");
}

#[test]
fn a_very_long_line_is_cut_around_what_is_pointed_at() {
    let club = |n: usize| format!("x-{n}: 1, ");
    let many: String = (0..100).map(club).collect();
    let mut book = SoundBook::new();
    book.edit(BOAT, "", "foot-holes: {", &format!("foot-holes: {{{many}furst: 1, "));
    let drawn = text_of(&book, PLAIN);
    let line = drawn.lines().find(|line| line.contains("│ …")).unwrap_or_else(|| panic!("{drawn}"));
    assert!(line.chars().count() <= 80 && line.ends_with('…'), "{line}");
    let mark = drawn.lines().skip_while(|other| *other != line).nth(1).expect("the marks");
    let under: String =
        line.chars().zip(mark.chars()).filter(|(_, m)| "─┬".contains(*m)).map(|(c, _)| c).collect();
    assert_eq!(under, "furst");
}

/// Source: the terminal sequences are those of ECMA-48 (CSI 2 J clears, OSC 0 retitles) and the
/// bidirectional override of Unicode Standard Annex 9.
#[test]
fn no_text_of_the_book_can_steer_the_terminal() {
    let hostile =
        "note: \"a\\u001B[2J\\u009B2J \u{202e}evil\u{200b}\"\n    wund\u{202e}: 1\n    gap";
    let edit: Edit = (BOAT, "seat: 1", "gap", hostile);
    let name: Edit = (BOAT, "", "name: Kittiwake", "name: \"Kitti\\u001B]0;x\\u0007\\nwake\"");
    let raw: Edit = (BOAT, "", "wind: light", "wind: light # \u{1b}[31m\u{9b}\u{202e}\r");
    for edits in [vec![edit, TIGHT], vec![name, TIGHT], vec![raw, TIGHT]] {
        let (book, checked) = SoundBook::with(&edits).check();
        assert!(!checked.findings.is_empty() || edits.len() == 2, "{edits:?}");
        for out in [
            told(&book, &checked, |report| reports::text(report, PLAIN)),
            told(&book, &checked, |report| reports::brief(report, PLAIN)),
            told(&book, &checked, reports::json),
        ] {
            let hidden = out.chars().find(|c| *c != '\n' && is_hidden(*c));
            assert_eq!(hidden, None, "{out}");
        }
    }
    let drawn = text(&[name, TIGHT]);
    assert!(drawn.contains("Kitti\\u{1b}]0;x\\u{7}\\u{a}wake"), "{drawn}");
}

#[test]
fn json_carries_the_true_text() {
    let (name, true_name) = ("name: \"Kitti\\u001Bwake\u{202e}\"", "Kitti\u{1b}wake\u{202e}");
    let report = json(&[(BOAT, "", "name: Kittiwake", name), TIGHT]);
    let message = report["findings"][0]["message"].as_str().expect("a message");
    assert!(message.starts_with(true_name), "{message:?}");
}

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

/// Makes notes of one rule by hand, at as many lines of the boat.
fn notes(count: usize, level: Level) -> (Book, Checked) {
    let (book, mut checked) = SoundBook::with(&[TIGHT]).check();
    let mut one = checked.findings[0].clone();
    one.level = level;
    checked.findings = vec![one; count];
    (book, checked)
}

#[test]
fn more_than_five_alike_notes_become_one_with_a_count() {
    let (book, checked) = notes(6, Level::Note);
    let drawn = told(&book, &checked, |report| reports::text(report, PLAIN));
    assert_eq!(drawn.matches("  N note: ").count(), 1, "{drawn}");
    assert!(drawn.contains("and 5 more like it: "), "{drawn}");
    assert!(drawn.contains("--format json"), "{drawn}");
    assert!(drawn.contains(":\n  0 dangers, 0 faults, 0 unsure, 6 notes\n"), "{drawn}");
    let brief = told(&book, &checked, |report| reports::brief(report, PLAIN));
    assert_eq!(brief.matches(": note gap-too-tight ").count(), 6, "{brief}");
}

#[test]
fn five_notes_and_any_number_of_faults_are_drawn_one_by_one() {
    for (count, level, letter) in [(5, Level::Note, "N note"), (9, Level::Fault, "F fault")] {
        let (book, checked) = notes(count, level);
        let drawn = told(&book, &checked, |report| reports::text(report, PLAIN));
        assert_eq!(drawn.matches(letter).count(), count, "{drawn}");
    }
}

#[test]
fn after_a_hundred_drawings_of_one_file_the_rest_are_told_on_a_line_each() {
    let (book, checked) = notes(130, Level::Fault);
    let drawn = told(&book, &checked, |report| reports::text(report, PLAIN));
    assert_eq!(drawn.matches("  F fault: ").count(), 100);
    assert_eq!(drawn.matches("boats/kittiwake.yaml:43:12: fault gap-too-tight ").count(), 30);
}

#[test]
fn brief_is_one_line_a_finding() {
    let (book, checked) = SoundBook::with(&[TIGHT]).check();
    let brief = told(&book, &checked, |report| reports::brief(report, PLAIN));
    let expected = "boats/kittiwake.yaml:43:12: danger gap-too-tight \
                    kittiwake/seat-1/rowlock/gap: Kittiwake, seat 1: the gap clears";
    assert!(brief.starts_with(expected), "{brief}");
    assert_eq!(brief.lines().count(), checked.findings.len() + 1);
}

#[test]
fn a_boat_out_of_use_is_told_as_such() {
    let out: Edit = (
        BOAT,
        "",
        "class: surfboat",
        "class: surfboat\nout-of-use: {since: 2026-10-20, by: Ines Marlow, because: sprung plank}",
    );
    let drawn = text(&[TIGHT, out]);
    assert!(drawn.contains("danger (boat out of use: shown only): Kittiwake"), "{drawn}");
    assert!(drawn.contains(" of them on boats out of use\n"), "{drawn}");
}

/// The readings of the sound book, counted by hand: 2 of the level, 2 of the foot holes, 18 at each
/// of 4 seats, 1 of the pitch mark, 12 of each of 5 oars, 7 of the crew.
#[test]
fn the_last_line_counts_in_plain_words() {
    let sound = text(&[]);
    let expected = "checked 1 boat, 1 oar set, 1 crew, 144 readings:\n  0 dangers, 0 faults, \
                    0 unsure, 0 notes\n";
    assert!(sound.starts_with(expected), "{sound}");
    assert!(sound.contains("A clean report is no permission to launch"), "{sound}");
    let lacking = text(&[(BOAT, "seat: 1", "      gap: 60\n", "")]);
    assert!(lacking.contains(" checks not made: not measured\n"), "{lacking}");
}

#[test]
fn where_nothing_was_read_nothing_is_cautioned() {
    let (book, faults) = tholebook::reading::read("new", Vec::new());
    let as_of = Date::read("2026-11-01").expect("a day");
    let checked = rules::check(&book, &faults, rules::Check { as_of });
    let drawn = told(&book, &checked, |report| reports::text(report, PLAIN));
    let expected = "checked 0 boats, 0 oar sets, 0 crews, 0 readings:\n  0 dangers, 0 faults, \
                    0 unsure, 0 notes\n";
    assert_eq!(drawn, expected);
}

#[test]
fn what_was_checked_is_broken_where_it_is_too_wide_and_else_is_one_line() {
    let lacking = SoundBook::with(&[TIGHT, (BOAT, "seat: 1", "      horn: 46\n", "")]);
    let counted = |width: usize| {
        let whole = text_of(&lacking, Look { width, ..PLAIN });
        let from = whole.find("checked 1 boat").expect("what was checked");
        let to = whole.find("A clean report").expect("the caution");
        whole[from..to].to_owned()
    };
    let one_line = counted(300);
    assert_eq!(one_line.lines().count(), 1, "{one_line}");
    assert!(one_line.contains("notes; ") && one_line.ends_with("not measured\n"), "{one_line}");
    for width in [80, 60, 40, 24] {
        let lines = counted(width);
        assert!(lines.lines().all(|line| line.chars().count() <= width), "{width}: {lines}");
        let words = |text: &str| text.split_whitespace().map(str::to_owned).collect::<Vec<_>>();
        assert_eq!(words(&lines), words(&one_line));
    }
    let first = counted(80);
    assert!(first.starts_with("checked 1 boat, 1 oar set, 1 crew, 143 readings:\n"), "{first}");
    assert!(first.lines().skip(1).all(|line| line.starts_with("  ")), "{first}");
}

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

fn sights<R>(edits: &[Edit], tell: impl Fn(&[BoatSight]) -> R) -> R {
    let (book, _) = SoundBook::with(edits).check();
    let sights: Vec<BoatSight> =
        book.boats.iter().map(|boat| BoatSight::new(&book, boat)).collect();
    tell(&sights)
}

/// Source of the keys: the format of `derive --format json`. The values are those of the record's
/// own `worked-out`, worked out by hand for the sound book.
#[test]
fn worked_out_values_have_these_keys_in_this_order() {
    let out = sights(&[], reports::figures_json);
    assert_eq!(ordered(&out, ""), ["format_version", "boats"]);
    let boat = ordered(&out, "\"boats\":[");
    assert_eq!(boat, ["boat", "seats", "side_difference_deg", "tip_index_m"]);
    assert_eq!(ordered(&out, "\"seats\":["), ["seat", "worked_out", "not_worked_out"]);
    assert_eq!(
        ordered(&out, "\"worked_out\":"),
        [
            "pitch_deg",
            "pitch_catch_deg",
            "pitch_finish_deg",
            "lean_aft_deg",
            "lean_out_deg",
            "arc_lean_aft_deg",
            "arc_lean_out_deg",
            "rig_pitch_deg",
            "handle_past_mark_mm",
            "handle_past_mark_computed_mm",
            "overlap_mm",
            "gearing",
            "gearing_levers",
            "clearance_mm",
            "clearance_in_roll_mm",
            "looseness_mm",
        ]
    );
    assert_eq!(ordered(&out, "\"pitch_deg\":"), ["number", "uncertainty"]);
    let report: Value = serde_json::from_str(&out).expect("JSON");
    let seat = &report["boats"][0]["seats"][0];
    assert_eq!(seat["not_worked_out"]["bed_fraction"], "oar-bed not measured");
    let number = |key: &str| seat["worked_out"][key]["number"].as_f64().expect("a number");
    for (key, stated, half_digit) in [
        ("pitch_deg", 3.58, 0.005),
        ("handle_past_mark_computed_mm", 320.5, 0.05),
        ("gearing", 2.357, 0.0005),
        ("clearance_mm", 8.0, 0.05),
        ("lean_aft_deg", 0.19, 0.005),
        ("lean_out_deg", -0.09, 0.005),
    ] {
        assert!((number(key) - stated).abs() <= half_digit + 1e-9, "{key}: {}", number(key));
    }
}

#[test]
fn every_key_is_worked_out_or_has_a_reason() {
    let bed: Edit = (BOAT, "seat: 1", "chock-to-pin: 600", "chock-to-pin: 600\n    oar-bed: 40");
    let no_spread: Edit = (BOAT, "seat: 1", "      spread: 792\n", "");
    let out = sights(&[bed, no_spread], reports::figures_json);
    let report: Value = serde_json::from_str(&out).expect("JSON");
    for seat in report["boats"][0]["seats"].as_array().expect("seats") {
        let all = keys(&seat["worked_out"]).len() + keys(&seat["not_worked_out"]).len();
        assert_eq!(all, 17, "{seat}");
    }
    let first = &report["boats"][0]["seats"][0];
    assert!(first["worked_out"]["bed_fraction"]["number"].is_f64());
    assert_eq!(first["not_worked_out"]["overlap"], "pin/spread not measured");
    assert_eq!(
        report["boats"][0]["not_worked_out"]["tip_index"], "pin/spread not measured",
        "{report}"
    );
}

#[test]
fn the_table_of_worked_out_values_fits_and_says_what_is_lacking() {
    let no_spread: Edit = (BOAT, "seat: 2", "      spread: 792\n", "");
    let out = sights(&[no_spread], |boats| reports::figures_text(boats, PLAIN));
    assert!(out.lines().all(|line| line.chars().count() <= 80), "{out}");
    let row = |name: &str| out.lines().find(|line| line.starts_with(name)).expect("a row");
    assert_eq!(row("clearance  ").matches("8.0 ± 0.3").count(), 4);
    assert!(row("clearance  ").contains(" mm "));
    assert_eq!(row("past the centreline").matches(" - ").count(), 1, "{out}");
    assert!(out.contains("seats 1, 2, 3, 4, depth in the bed: oar-bed not measured"), "{out}");
    assert!(out.contains("pin/spread not measured"), "{out}");
    let ascii = Look { glyphs: Glyphs::Ascii, ..PLAIN };
    let out = sights(&[], |boats| reports::figures_text(boats, ascii));
    assert!(out.is_ascii() && out.lines().all(|line| line.len() <= 80), "{out}");
}
