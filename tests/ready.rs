//! The page before a race: how she stands, what stands on it, one sheet, hostile text, the command.

mod sound_book;

use std::process::Command;
use std::process::Output;

use serde_json::Value;
use sound_book::SoundBook;
use tholebook::reports;
use tholebook::reports::Glyphs;
use tholebook::reports::Look;
use tholebook::reports::Ready;
use tholebook::reports::Report;
use tholebook::reports::WHERE_THE_SUMS_STOP;
use tholebook::reports::shown::is_hidden;
use tholebook::rules::Edit;
use tholebook::rules::Level;
use tholebook::units::Date;

const PLAIN: Look = Look { width: 80, glyphs: Glyphs::Unicode, colour: false };
const BOAT: &str = "boats/kittiwake.yaml";
const OARS: &str = "oars/long-ash.yaml";
const TIGHT: Edit = (BOAT, "seat: 1", "gap: 60", "gap: 55");
const LEANING: Edit = (BOAT, "seat: 2", "lean: {aft: 0.5", "lean: {aft: 6");
const NO_CHOCK: Edit = (BOAT, "seat: 2", "    chock-to-pin: 600\n", "");
const OUT: Edit = (
    BOAT,
    "",
    "seats:\n  - seat: 1",
    "out-of-use: {since: 2026-10-20, by: Ines Marlow, because: cracked pin}\nseats:\n  - seat: 1",
);

/// Makes something of a book with edits, as of 1 November 2026.
fn told<T>(edits: &[Edit], tell: impl Fn(&Ready) -> T) -> T {
    let (book, mut checked) = SoundBook::with(edits).check();
    let as_of = Date::read("2026-11-01").expect("a day");
    checked.waive(&book, as_of);
    let report = Report { book: &book, checked: &checked, as_of, only: &[], earlier: None };
    let boats: Vec<_> = book.boats.iter().collect();
    tell(&Ready { report, boats: &boats, before: None, gate: Level::Fault })
}

fn page(edits: &[Edit]) -> String {
    told(edits, |ready| reports::ready_text(ready, PLAIN))
}

fn json(edits: &[Edit]) -> Value {
    let text = told(edits, reports::ready_json);
    serde_json::from_str(&text).expect("JSON")
}

fn verdict(edits: &[Edit]) -> String {
    json(edits)["boats"][0]["verdict"].as_str().expect("a verdict").to_owned()
}

#[track_caller]
fn holds(text: &str, part: &str) {
    let flat = text.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(flat.contains(part), "no {part:?} in:\n{text}");
}

/// The row of a seat.
#[track_caller]
fn row(page: &str, seat: usize) -> Vec<&str> {
    let sides = ["stbd", "port"];
    let is_row =
        |line: &&str| sides.iter().any(|side| line.starts_with(&format!("{seat}    {side}")));
    let row = page.lines().find(is_row);
    row.unwrap_or_else(|| panic!("no seat {seat} in:\n{page}")).split_whitespace().collect()
}

/// By hand: the gap of 60 mm leaves 8 mm beside a shaft of 52 mm; 11 mm over a blade of 176 mm are
/// 3.58 deg, and the boat rolled by 0.1 deg shows 0.08 deg of it at the catch, 0.06 at the finish.
#[test]
fn a_sound_boat_has_nothing_found_and_a_row_for_each_seat() {
    let page = page(&[]);
    assert!(page.starts_with("Kittiwake (kittiwake)  "), "{page}");
    assert!(page.lines().next().is_some_and(|line| line.ends_with("on 2026-11-01")), "{page}");
    holds(&page, "Rigged 2026-10-17 (15 days before) by Ines Marlow, passed by Tomas Reyne.");
    holds(&page, "\nNothing found.\n".trim());
    let first =
        ["1", "stbd", "A1", "A5", "8.0", "freely", "3.66", "3.58", "3.53", "320.5", "600", "4"];
    assert_eq!(row(&page, 1), first);
    holds(&page, "at least 5 mm. Good to: to spare ± 0.3 mm, pitch ± 0.30 deg");
    for absent in ["NOT", "Dangers", "Work left", "Waivers", "Not checked"] {
        assert!(!page.contains(absent), "{absent} in:\n{page}");
    }
}

#[test]
fn a_danger_and_a_fault_say_that_she_may_not_go_afloat() {
    let danger = page(&[TIGHT]);
    holds(&danger, "MAY NOT GO AFLOAT: 2 dangers");
    holds(
        &danger,
        "Dangers seat 1: the gap clears oar A1 by 3.0 mm, good to ± 0.3 mm: 2.0 mm short",
    );
    assert_eq!(row(&danger, 1)[3..6], ["none", "3.0", "D"]);
    assert_eq!(row(&danger, 2)[3..5], ["A5", "8.0"]);
    let fault = page(&[LEANING]);
    holds(&fault, "MAY NOT GO AFLOAT: 2 faults");
    assert!(!fault.contains("Dangers"), "{fault}");
}

#[test]
fn a_boat_out_of_use_is_not_to_go_afloat_whatever_else_is_found() {
    for edits in [&[OUT][..], &[OUT, TIGHT]] {
        let page = page(edits);
        holds(
            &page,
            "NOT TO GO AFLOAT: out of use since 2026-10-20, by Ines Marlow, because: cracked pin",
        );
        assert!(!page.contains("Nothing found"), "{page}");
        assert_eq!(verdict(edits), "not-to-go-afloat");
    }
}

#[test]
fn what_was_not_measured_is_never_called_nothing_found() {
    let page = page(&[NO_CHOCK]);
    assert!(!page.contains("Nothing found"), "{page}");
    holds(&page, "NOT ALL IS KNOWN OF HER:");
    holds(&page, "checks not made: not measured");
    holds(&page, "Not checked, for want of seat 2: chock to pin");
    assert_eq!(row(&page, 2)[10], "-");
    assert_eq!(verdict(&[NO_CHOCK]), "not-all-known");
}

#[test]
fn an_unfit_spare_is_named_at_no_seat_though_it_fits() {
    let unfit: Edit = (OARS, "oar: A5", "state: sound", "state: unfit");
    let page = page(&[unfit]);
    assert!((1..=4).all(|seat| row(&page, seat)[3] == "none"), "{page}");
    let spare = &json(&[unfit])["boats"][0]["seats"][0]["spares"][0];
    assert_eq!((&spare["clears"], &spare["unfit"]), (&Value::Bool(true), &Value::Bool(true)));
}

#[test]
fn the_work_left_stands_in_the_order_in_which_it_is_done() {
    let pitched: Edit = (
        BOAT,
        "seat: 3",
        "pitch: {catch: 11, square: 11, finish: 11}",
        "pitch: {catch: 15, square: 15, finish: 15}",
    );
    let past: Edit = (BOAT, "seat: 4", "handle-past-mark: 321", "handle-past-mark: 280");
    let rolled: Edit = (BOAT, "", "roll: 0.1", "roll: 2");
    let edits = [past, TIGHT, pitched, LEANING, rolled];
    let found = json(&edits);
    let jobs = found["boats"][0]["work_left"].as_array().expect("work").clone();
    let mut steps: Vec<&str> = jobs.iter().filter_map(|job| job["step"].as_str()).collect();
    steps.dedup();
    let order = ["level", "pins", "pitch", "gap", "collars"];
    let known: Vec<&str> = steps.iter().copied().filter(|step| order.contains(step)).collect();
    assert_eq!(known, order, "{steps:?}");
}

#[test]
fn what_asks_for_the_same_thing_is_one_line_of_the_work() {
    let page = page(&[TIGHT]);
    let work = page.split("Work left, in this order\n").nth(1).expect("work");
    assert_eq!(work.matches("gap-too-tight").count(), 1, "of the oar and of the spare:\n{page}");
    holds(work, "[ ] D seat 1, gap-too-tight: Open the gap by at least");
}

#[test]
fn knocks_bends_and_readings_since_the_rigging_day_are_told_by_day() {
    let happened: Edit = (
        BOAT,
        "",
        "seats:\n  - seat: 1",
        "knocks:\n  - {date: 2026-10-20, what: rolled in the surf, where: [seat-3]}\n  \
         - {date: 2026-09-01, what: long ago}\n\
         bends:\n  - {date: 2026-10-18, by: Ines Marlow, seat: 2, part: after-horn, deg: 2}\n\
         seats:\n  - seat: 1",
    );
    let page = page(&[happened]);
    holds(
        &page,
        "since 2026-10-17 2026-10-18: seat 2, after horn bent by 2 deg, by Ines Marlow \
         2026-10-20: knock: rolled in the surf (seat-3)",
    );
    assert!(!page.contains("long ago"), "{page}");
}

#[test]
fn waivers_that_lapsed_by_the_day_and_those_that_count_are_told() {
    let past: Edit = (BOAT, "seat: 4", "handle-past-mark: 321", "handle-past-mark: 296");
    let waiver = |until: &str| {
        format!(
            "- finding: kittiwake/seat-4/handle-past-mark\n  rule: handle-past-mark-wrong\n  \
             because: a short rower\n  by: Tomas Reyne\n  until: {until}\n  at: 296\n"
        )
    };
    let with = |until: &str| {
        let waiver = waiver(until);
        page(&[past, ("waivers.yaml", "", "", &*waiver.leak())])
    };
    let counting = with("2026-11-20");
    holds(&counting, "waived by Tomas Reyne until 2026-11-20 (a short rower): seat 4: the handle");
    assert_eq!(row(&counting, 4)[10], "F", "another rule objects, and that is not waived");
    let lapsed = with("2026-10-31");
    holds(&lapsed, "Waivers on the day");
    holds(&lapsed, "has lapsed: its last day was 2026-10-31");
    holds(&lapsed, "MAY NOT GO AFLOAT");
}

#[test]
fn the_page_says_where_its_sums_stop_and_never_that_she_may_go() {
    for edits in [&[][..], &[TIGHT], &[LEANING], &[OUT], &[NO_CHOCK]] {
        for page in [page(edits), told(edits, reports::ready_markdown)] {
            holds(&page, WHERE_THE_SUMS_STOP);
            let lower = page.to_lowercase();
            for word in ["safe", "fit to go", "may go", "ready"] {
                assert!(!lower.contains(word), "{word} in:\n{page}");
            }
        }
        let initials = page(edits).lines().last().map(str::to_owned);
        assert!(initials.is_some_and(|last| last.starts_with("Initials:")));
    }
}

/// Every seat with everything wrong and a long name: more than a sheet could hold.
#[test]
fn every_page_is_one_sheet_of_80_columns_and_says_what_it_left_out() {
    let long = "a very long name ".repeat(60);
    let name = format!("name: {long}");
    let mut edits: Vec<Edit> = vec![(BOAT, "", "name: Kittiwake", name.leak())];
    for seat in ["seat: 1", "seat: 2", "seat: 3", "seat: 4"] {
        edits.push((BOAT, seat, "gap: 60", "gap: 54"));
        edits.push((BOAT, seat, "after-tip: 3", "after-tip: -2"));
        edits.push((BOAT, seat, "lean: {aft: 0.5, out: -0.5}", "lean: {aft: 9, out: 8}"));
        edits.push((BOAT, seat, "handle-past-mark: 321", "handle-past-mark: 200"));
        edits.push((BOAT, seat, "catch: freely", "catch: jams"));
    }
    for glyphs in [Glyphs::Unicode, Glyphs::Ascii] {
        let look = Look { glyphs, ..PLAIN };
        let page = told(&edits, |ready| reports::ready_text(ready, look));
        let height = page.lines().count();
        assert!(height <= 66, "{height} lines:\n{page}");
        let widest = page.lines().map(|line| line.chars().count()).max();
        assert!(widest <= Some(80), "{widest:?}:\n{page}");
        holds(&page, "more: tholebook lint --only kittiwake");
        assert!(page.contains("Initials:"), "{page}");
    }
}

#[test]
fn hostile_text_cannot_steer_the_terminal_nor_make_a_heading() {
    let edits: [Edit; 3] = [
        (BOAT, "", "name: Kittiwake", "name: \"K\\e[31m\\u202Eitti\\n# x\""),
        (BOAT, "", "by: Ines Marlow", "by: \"I\\e[2J\""),
        (
            BOAT,
            "",
            "seats:\n  - seat: 1",
            "knocks:\n  - {date: 2026-10-20, what: \"\\e]0;x\\a\\n# y\"}\nseats:\n  - seat: 1",
        ),
    ];
    for page in
        [page(&edits), told(&edits, reports::ready_markdown), told(&edits, reports::ready_json)]
    {
        assert!(!page.replace('\n', "").contains(is_hidden), "{page}");
        assert!(!page.contains("\n# "), "{page}");
    }
}

fn run(arguments: &[&str]) -> (Option<i32>, String, String) {
    let mut command = Command::new(env!("CARGO_BIN_EXE_tholebook"));
    let done: Output = command.args(arguments).env("NO_COLOR", "1").output().expect("a run");
    let text = |bytes| String::from_utf8(bytes).expect("UTF-8");
    (done.status.code(), text(done.stdout), text(done.stderr))
}

const ON: [&str; 4] = ["--book", "example-club", "--on", "2026-11-28"];

/// The exit code is that of `lint` on the same day.
#[test]
fn it_ends_as_lint_does() {
    let ends = |more: &[&str]| run(&[&["ready"][..], more, &ON].concat()).0;
    assert_eq!(ends(&[]), Some(1));
    assert_eq!(ends(&["fulmar"]), Some(0), "nothing was found of her");
    assert_eq!(ends(&["kittiwake"]), Some(1), "faults");
    assert_eq!(ends(&["kittiwake", "--fail-on", "danger"]), Some(0));
    assert_eq!(ends(&["gannet", "--fail-on", "never"]), Some(1), "danger always counts");
    let only = ["--only", "turnstone", "--only", "old-ash"];
    let lint = run(&[&["lint", "example-club", "--as-of", "2026-11-28"][..], &only].concat());
    assert_eq!(ends(&["turnstone"]), lint.0);
    let lint = run(&["lint", "example-club", "--as-of", "2026-11-28"]).0;
    assert_eq!(ends(&[]), lint);
}

#[test]
fn the_day_is_the_one_that_is_asked_for() {
    let ready = |day: &str| run(&["ready", "fulmar", "--book", "example-club", "--on", day]);
    assert!(ready("2026-11-28").1.contains("Nothing found."));
    let (code, page, _) = ready("2026-11-29");
    assert_eq!(code, Some(1), "43 days are over the limit of 42");
    holds(&page, "F boat, overdue");
}

#[test]
fn several_boats_have_a_sheet_each_in_the_order_asked_for() {
    let (_, out, _) = run(&[&["ready", "kittiwake", "fulmar", "kittiwake"][..], &ON].concat());
    let sheets: Vec<&str> = out.split('\u{c}').collect();
    assert_eq!(sheets.len(), 2, "{out}");
    assert!(sheets[0].starts_with("Kittiwake") && sheets[1].starts_with("Fulmar"), "{out}");
}

#[test]
fn an_unknown_boat_and_a_range_of_commits_are_wrong_usage() {
    let (code, _, err) = run(&[&["ready", "kitiwake"][..], &ON].concat());
    assert_eq!(code, Some(2));
    holds(&err, "There is no boat called kitiwake. Did you mean kittiwake?");
    let (code, _, err) = run(&[&["ready", "--since", "a..b"][..], &ON].concat());
    assert_eq!(code, Some(2));
    holds(&err, "--since takes one tag, commit or branch");
}

#[test]
fn what_changed_since_a_tag_is_told_with_who_measured_it() {
    let folder = tempfile::tempdir().expect("a folder");
    let book = folder.path().join("book");
    let book = book.to_str().expect("UTF-8");
    assert_eq!(run(&["sample", book]).0, Some(0));
    let asked = ["ready", "fulmar", "--book", book, "--on", "2026-10-24"];
    let (code, page, err) = run(&[&asked[..], &["--since", "autumn-head-2026"]].concat());
    assert_eq!(code, Some(0), "{page}{err}");
    holds(&page, "Changed since autumn-head-2026 (commit");
    holds(&page, "fulmar, seat 2: gap 59.8 → 59.6 mm (0.2 mm narrower)");
    assert!(!page.contains("gannet"), "of other boats nothing is told:\n{page}");
    assert!(!run(&asked).1.contains("Changed since"));
    let (code, _, err) = run(&[&asked[..], &["--since", "no-such-tag"]].concat());
    assert_eq!(code, Some(2), "{err}");
}
