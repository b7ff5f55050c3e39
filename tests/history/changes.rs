//! What makes a row and what makes none.

use crate::club::BOAT;
use crate::club::Club;
use crate::club::GAP;
use crate::club::edit;
use crate::club::person;
use crate::club::set_gap;
use crate::club::sound;
use crate::club::with_gap;
use crate::run::NONE;
use crate::run::json;
use crate::run::names_by;
use crate::run::row;
use crate::run::rows;
use crate::run::run;

/// The boat's record by another hand: every key in another order, other blanks, a comment.
fn reordered(text: &str) -> String {
    let (head, seats) = text.split_once("seats:\n").expect("seats");
    let indented: String = seats.lines().map(|line| format!("    {line}\n")).collect();
    format!("# from the notebook\nseats:\n{indented}{head}")
}

#[test]
fn reordering_renaming_and_more_decimals_give_no_row() {
    let club = Club::new();
    let first = with_gap("60");
    let mut layout = first.clone();
    let text = reordered(&layout[BOAT]);
    layout.insert(BOAT.to_owned(), text);
    let mut moved = layout.clone();
    let text = moved.remove(BOAT).expect("the boat");
    moved.insert("boats/old/kw.yml".to_owned(), text);
    let mut decimals = moved.clone();
    edit(&mut decimals, "boats/old/kw.yml", "seat: 2", "gap: 60", "gap: 60.0");
    let mut unit = decimals.clone();
    edit(&mut unit, "boats/old/kw.yml", "seat: 2", "gap: 60.0", "gap: 6 cm");
    let mut changed = unit.clone();
    edit(&mut changed, "boats/old/kw.yml", "seat: 2", "gap: 6 cm", "gap: 58.5");
    let ids = club.line(&[first, layout, moved, decimals, unit, changed]);
    let true_rows = [row("first-recorded", NONE, 60.0, ids[0]), row("changed", 60.0, 58.5, ids[5])];
    assert_eq!(rows(&club, &["history", GAP]), true_rows);
    assert_eq!(json(&club, &["history", GAP])["rows"][1]["delta"], -1.5);
    let all = rows(&club, &["history", GAP, "--all-touches"]);
    let kinds: Vec<&str> = all.iter().map(|row| &*row.0).collect();
    assert_eq!(
        kinds,
        ["first-recorded", "untouched", "moved", "precision-only", "unit-only", "changed"]
    );
}

#[test]
fn the_whole_boat_has_a_row_for_every_value_and_only_true_changes() {
    let club = Club::new();
    let mut second = with_gap("59");
    edit(&mut second, BOAT, "seat: 3", "seat-mark: 61", "seat-mark: 62");
    let ids = club.line(&[sound(), second]);
    let all = json(&club, &["history", "kittiwake"]);
    assert_eq!(names_by(&all, ids[1]), [GAP, "kittiwake/seat-3/seat-mark"]);
    let starred = rows(&club, &["history", "*/*/seat-mark"]);
    assert_eq!(starred.len(), 5);
}

#[test]
fn a_value_that_is_worked_out_is_no_change() {
    let club = Club::new();
    let mut second = sound();
    edit(&mut second, BOAT, "seat: 2", "pitch: 3.58 deg", "pitch: 3.60 deg");
    let ids = club.line(&[sound(), second]);
    let all = json(&club, &["history", "kittiwake"]);
    let rows = all["rows"].as_array().expect("rows");
    assert!(rows.iter().all(|row| row["commit"] == ids[0].to_string()));
    let names = |row: &serde_json::Value| row["name"].as_str().expect("a name").to_owned();
    assert!(rows.iter().map(names).all(|name| !name.contains("worked-out")));
}

#[test]
fn a_value_taken_away_and_one_that_comes_back_are_told() {
    let club = Club::new();
    let none = with_gap("not measured");
    let mut gone = sound();
    gone.remove(BOAT);
    let states = [sound(), none, with_gap("58"), gone, with_gap("58")];
    let ids = club.line(&states);
    let expected = [
        row("first-recorded", NONE, 60.0, ids[0]),
        row("not-measured", 60.0, NONE, ids[1]),
        row("recorded-again", NONE, 58.0, ids[2]),
        row("taken-out", 58.0, NONE, ids[3]),
        row("recorded-again", NONE, 58.0, ids[4]),
    ];
    assert_eq!(rows(&club, &["history", GAP]), expected);
}

#[test]
fn the_author_wrote_it_and_the_committer_dates_it() {
    let club = Club::new();
    let first = club.commit_by(&person("Ines Marlow", 3), &person("Tomas Reyne", 9), &[], &sound());
    club.check_out(first, &sound());
    let told = json(&club, &["history", GAP]);
    let row = &told["rows"][0];
    assert_eq!(row["author"], "Ines Marlow");
    assert_eq!(row["committed_on"], "2026-01-10");
    assert_eq!(row["measured_on"], "2026-10-17");
    assert_eq!(row["measured_by"], "Ines Marlow");
}

#[test]
fn a_value_read_again_was_measured_then_and_by_the_one_who_read_it() {
    let club = Club::new();
    let mut again = with_gap("58");
    let read = "read-again:\n  - {date: 2026-10-24, by: Tomas Reyne, values: [seat-2/rowlock]}\n";
    again.get_mut(BOAT).expect("the boat").push_str(read);
    club.line(&[sound(), again]);
    let told = json(&club, &["history", GAP]);
    assert_eq!(told["rows"][1]["measured_on"], "2026-10-24");
    assert_eq!(told["rows"][1]["measured_by"], "Tomas Reyne");
    let blame = json(&club, &["blame", "kittiwake", "--as-of", "2026-11-01"]);
    let values = blame["values"].as_array().expect("values");
    let age = |name: &str| {
        let own = values.iter().find(|value| value["name"] == name).expect("a value");
        own["age_days"].as_i64().expect("an age")
    };
    assert_eq!((age(GAP), age("kittiwake/seat-1/rowlock/gap")), (8, 15));
}

#[test]
fn what_is_not_committed_is_the_last_row_unless_a_commit_is_asked_for() {
    let club = Club::new();
    let ids = club.line(&[sound()]);
    club.lay_out(&with_gap("57"));
    let told = json(&club, &["history", GAP]);
    assert_eq!(told["rows"][1]["commit"], NONE);
    assert_eq!(told["rows"][1]["new"], 57.0);
    assert_eq!(rows(&club, &["history", GAP, "--at", "HEAD"]).len(), 1);
    let text = run(&club, &["history", GAP]).out;
    assert!(text.contains("not committed yet"), "{text}");
    assert!(text.contains(&ids[0].to_string()[..8]), "{text}");
}

#[test]
fn an_unknown_name_is_refused_with_the_nearest() {
    let club = Club::new();
    club.line(&[sound()]);
    let wrong = run(&club, &["history", "kittiwake/seat-2/rowlock/gaps"]);
    assert_eq!(wrong.code, Some(2));
    assert!(wrong.err.contains(&format!("Did you mean {GAP}?")), "{}", wrong.err);
    let wrong = run(&club, &["blame", "kitiwake"]);
    assert_eq!(wrong.code, Some(2));
    assert!(wrong.err.contains("Did you mean kittiwake?"), "{}", wrong.err);
    let wrong = run(&club, &["history", GAP, "--when", "gap-to-tight"]);
    assert_eq!(wrong.code, Some(2));
    assert!(wrong.err.contains("Did you mean gap-too-tight?"), "{}", wrong.err);
    assert_eq!(run(&club, &["history", GAP, "--at", "v9"]).code, Some(2));
}

#[test]
fn text_fits_its_width_and_draws_a_number() {
    let club = Club::new();
    let states: Vec<_> = ["60", "59", "58", "57.5"].map(with_gap).into();
    club.line(&states);
    for arguments in [vec!["history", GAP, "--trend"], vec!["blame", "kittiwake"]] {
        let text = run(&club, &arguments).out;
        let wide = text.lines().find(|line| line.chars().count() > 80);
        assert_eq!(wide, None);
    }
    let text = run(&club, &["history", GAP, "--trend", "--glyphs", "ascii"]).out;
    assert!(text.contains("60 mm -> 59 mm (-1 mm)"), "{text}");
    assert!(text.contains("60.0 mm |") && text.contains("57.5 mm |"), "{text}");
    assert!(text.contains("Trend:") && !text.contains("k = 2"), "{text}");
    assert!(text.is_ascii(), "{text}");
}

/// The commits are of 2026-01-01 and the days after; the boat says 2026-10-17 in each.
#[test]
fn values_that_were_all_measured_on_one_day_stand_at_the_days_they_were_committed() {
    let club = Club::new();
    let states: Vec<_> = ["60", "59", "58", "57"].map(with_gap).into();
    club.line(&states);
    let chart = run(&club, &["history", GAP, "--trend", "--glyphs", "ascii"]).out;
    let days = chart.lines().find(|line| line.trim_start().starts_with("2026-01-01  "));
    assert!(days.is_some_and(|line| line.ends_with("2026-01-04")), "{chart}");
    let trend = &json(&club, &["history", GAP, "--trend"])["trend"];
    let slope = trend["slope_per_30_days"].as_f64().expect("a slope");
    assert!((slope + 30.0).abs() < 1e-9, "1 mm a day: {trend}");
}

#[test]
fn a_trend_is_that_of_the_values_measured() {
    let club = Club::new();
    let mut states = Vec::new();
    for (day, gap) in ["60", "59.5", "59", "58.5"].iter().enumerate() {
        let mut files = sound();
        set_gap(&mut files, gap);
        let date = format!("date: 2026-10-{:02}", 1 + day * 5);
        edit(&mut files, BOAT, "rigged:", "date: 2026-10-17", &date);
        states.push(files);
    }
    club.line(&states);
    let trend = &json(&club, &["history", GAP, "--trend"])["trend"];
    let slope = trend["slope_per_30_days"].as_f64().expect("a slope");
    assert!((slope + 3.0).abs() < 1e-9, "{trend}");
    assert_eq!(trend["unit"], "mm");
}
