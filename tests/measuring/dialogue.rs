//! The dialogue itself, without a terminal: lines are typed, verdicts are given, a record comes out.

use tholebook::reading::RecordKind;
use tholebook::units::Date;
use tholebook::writing::editing;
use tholebook::writing::measuring::About;
use tholebook::writing::measuring::Ask;
use tholebook::writing::measuring::Days;
use tholebook::writing::measuring::Dialogue;
use tholebook::writing::measuring::Heard;
use tholebook::writing::measuring::Lines;
use tholebook::writing::measuring::Question;
use tholebook::writing::measuring::SeatAbout;
use tholebook::writing::measuring::Why;
use tholebook::writing::measuring::questions;

use crate::answers;
use crate::book::BOAT;
use crate::book::LATER;
use crate::book::RIGGED;

const TRIM: &str = "rigged/level/trim";
const GAP: &str = "seat-2/rowlock/gap";

fn sound() -> String {
    std::fs::read_to_string(format!("tests/data/sound-book/{BOAT}")).expect("a text")
}

fn day(text: &str) -> Date {
    Date::read(text).expect("a day")
}

/// The sound boat, measured again on the later day.
fn again() -> Dialogue {
    of(&sound())
}

fn of(record: &str) -> Dialogue {
    let says = editing::read(record).expect("a record");
    let seat = |number| SeatAbout { number, is_round: false };
    let items = ["bung", "hull"].map(str::to_owned).to_vec();
    let about = About { seats: (1..=4).map(seat).collect(), walk_round: items, oars: Vec::new() };
    let mut all = questions(RecordKind::Boat, &says, &about);
    for question in &mut all {
        question.fine = question.is_reading().then_some(0.5);
        if let Some(last) = question.last.as_mut().filter(|_| question.is_dated) {
            last.on = Some(day(RIGGED));
        }
    }
    Dialogue::new((RecordKind::Boat, "kittiwake"), record, all, day(LATER))
}

/// Answers a question, gives the verdicts that follow from nothing, and stands at the next question.
fn say(dialogue: &mut Dialogue, line: &str) -> Heard {
    let heard = dialogue.hear(line);
    no_danger(dialogue);
    heard
}

fn no_danger(dialogue: &mut Dialogue) {
    loop {
        match dialogue.ask() {
            Ask::Verdict(_) => drop(dialogue.judged(false)),
            Ask::Level => dialogue.levelled(None),
            _ => return,
        }
    }
}

/// The name of the question that is asked now; nothing at the end.
fn name(dialogue: &Dialogue) -> String {
    match dialogue.ask() {
        Ask::Value(question, _) | Ask::Again { question, .. } => question.name.clone(),
        _ => String::new(),
    }
}

fn level(dialogue: &mut Dialogue) {
    say(dialogue, &format!("g {TRIM}"));
    say(dialogue, "0.0");
    say(dialogue, "0.1");
}

fn text(dialogue: &Dialogue) -> String {
    dialogue.recorded().expect("a record").text
}

#[test]
fn the_level_is_read_first_then_seat_by_seat_pin_before_pitch_before_gap_before_handle() {
    let mut dialogue = again();
    let mut asked = Vec::new();
    while dialogue.ask() != Ask::End {
        asked.push(name(&dialogue));
        say(&mut dialogue, "");
        if let Ask::Reason(_) = dialogue.ask() {
            say(&mut dialogue, "looked over only");
        }
    }
    let at = |name: &str| asked.iter().position(|own| own == name).expect("asked");
    let order = [
        "rigged/by",
        TRIM,
        "rigged/level/roll",
        "seat-1/pin/spread",
        "seat-1/pitch/square",
        "seat-1/rowlock/gap",
        "seat-1/handle-past-mark",
        "seat-2/pin/spread",
        "seat-4/handle-past-mark",
        "foot-holes/first",
        "rigged/walk-round/hull",
    ];
    assert!(order.windows(2).all(|pair| at(pair[0]) < at(pair[1])), "{asked:?}");
    assert!(!asked.contains(&"seat-1/side".to_owned()), "what is set is not measured");
}

#[test]
fn enter_alone_changes_nothing() {
    let mut dialogue = again();
    say(&mut dialogue, "e");
    assert_eq!(dialogue.ask(), Ask::End);
    let recorded = dialogue.recorded().expect("a record");
    assert_eq!(recorded.days, Days::Nothing);
    assert_eq!(recorded.text, sound());
}

#[test]
fn typed_again_it_is_read_again_though_it_is_the_same() {
    let mut dialogue = again();
    level(&mut dialogue);
    say(&mut dialogue, &format!("g {GAP}"));
    assert_eq!(say(&mut dialogue, "60"), Heard::Taken);
    let recorded = dialogue.recorded().expect("a record");
    assert_eq!(recorded.days, Days::Some(vec![GAP.to_owned()]));
    let entry = format!("- {{date: {LATER}, by: Ines Marlow, values: [{GAP}]}}");
    assert!(recorded.text.contains(&entry), "{}", recorded.text);
    assert!(recorded.text.contains(&format!("date: {RIGGED}")), "the rigging day stays");
}

/// Answers whatever is asked as the sound boat was read, from now on for so many questions.
fn go_on(dialogue: &mut Dialogue, answers: &Lines, count: usize) {
    for _ in 0..count {
        let line = answers.get(&name(dialogue)).unwrap_or_default().to_owned();
        say(dialogue, &line);
    }
}

#[test]
fn broken_off_after_any_answer_it_goes_on_there_and_ends_the_same() {
    let answers = Lines::read(&answers::of_the_boat()).expect("lines");
    let mut whole = again();
    go_on(&mut whole, &answers, 200);
    assert_eq!(whole.ask(), Ask::End);
    let read_whole = text(&whole);
    for count in [1, 2, 3, 5, 17, 40, 77, 110] {
        let mut first = again();
        go_on(&mut first, &answers, count);
        let draft = first.draft().to_string();
        let mut second = again();
        second.take_all(&Lines::read(&draft).expect("a draft")).expect("its answers");
        no_danger(&mut second);
        assert_eq!(name(&second), name(&first), "after {count}");
        go_on(&mut second, &answers, 200);
        assert_eq!(second.ask(), Ask::End);
        assert_eq!(text(&second), read_whole, "after {count}");
    }
}

#[test]
fn where_all_was_read_it_is_a_new_rigging_day_and_older_days_go() {
    let again_before = "read-again:\n  - {date: 2026-10-20, by: Tomas Reyne, values: [seat-1]}\n";
    let mut dialogue = of(&format!("{}{again_before}", sound()));
    let answers = Lines::read(&answers::of_the_boat()).expect("lines");
    go_on(&mut dialogue, &answers, 200);
    let recorded = dialogue.recorded().expect("a record");
    assert_eq!(recorded.days, Days::All);
    assert!(recorded.text.contains(&format!("  date: {LATER}\n")), "{}", recorded.text);
    assert!(!recorded.text.contains("read-again"), "{}", recorded.text);
}

#[test]
fn a_danger_is_read_twice_and_both_readings_are_kept() {
    let mut dialogue = again();
    level(&mut dialogue);
    say(&mut dialogue, &format!("g {GAP}"));
    dialogue.hear("56");
    assert!(matches!(dialogue.ask(), Ask::Verdict(question) if question.name == GAP));
    assert_eq!(dialogue.judged(true), Some(Why::Danger));
    let asked_again = |dialogue: &Dialogue| matches!(dialogue.ask(), Ask::Again { .. });
    assert!(asked_again(&dialogue));
    assert!(dialogue.draft().to_string().contains("second-reading: seat-2/rowlock/gap danger"));

    let mut resumed = again();
    resumed.take_all(&dialogue.draft()).expect("a draft");
    assert!(asked_again(&resumed), "the second reading is still to come");
    for mut own in [dialogue, resumed] {
        own.hear("55.5");
        assert_eq!(own.judged(true), None, "no third reading");
        assert!(text(&own).contains("gap: [56, 55.5]"), "{}", text(&own));
    }
}

#[test]
fn a_second_reading_can_be_left_out_or_the_first_taken_back() {
    let mut dialogue = again();
    level(&mut dialogue);
    say(&mut dialogue, &format!("g {GAP}"));
    dialogue.hear("56");
    dialogue.judged(true);
    let mut kept = dialogue.clone();
    assert_eq!(kept.hear(""), Heard::Kept);
    assert!(text(&kept).contains("gap: 56"), "a danger is not lost");
    assert_eq!(dialogue.hear("b"), Heard::Back);
    assert_eq!(name(&dialogue), GAP);
    say(&mut dialogue, "");
    assert!(!text(&dialogue).contains("gap: 56"));
}

#[test]
fn a_jump_is_read_twice_and_a_usual_change_once() {
    let mut dialogue = again();
    level(&mut dialogue);
    say(&mut dialogue, "g seat-1/seat-mark");
    dialogue.hear("65");
    assert_eq!(dialogue.judged(false), None, "4 mm are usual with a rule good to 0.5");
    dialogue.hear("b");
    dialogue.hear("67");
    let how = "6.0 mm more than last time".to_owned();
    assert_eq!(dialogue.judged(false), Some(Why::Jump(how)));
}

#[test]
fn out_of_level_she_is_refused_until_she_is_chocked_or_a_reason_is_given() {
    let mut dialogue = again();
    say(&mut dialogue, &format!("g {TRIM}"));
    say(&mut dialogue, "0");
    dialogue.hear("2.5");
    dialogue.judged(false);
    assert_eq!(dialogue.ask(), Ask::Level);
    dialogue.levelled(Some("roll 2.5 deg".to_owned()));
    assert_eq!(dialogue.ask(), Ask::Reason("roll 2.5 deg"));
    for line in ["", "n", "?", "g seat-1", "e"] {
        assert_eq!(dialogue.hear(line), Heard::NeedsReason, "{line}");
    }
    let mut chocked = dialogue.clone();
    assert_eq!(chocked.hear("b"), Heard::Back);
    assert_eq!(name(&chocked), TRIM);
    say(&mut chocked, "");
    say(&mut chocked, "0.1");
    assert_eq!(name(&chocked), "seat-1/pin/spread");
    assert!(!text(&chocked).contains("accepted"));

    assert_eq!(dialogue.hear("the trailer stands on sand"), Heard::Accepted);
    assert_eq!(name(&dialogue), "seat-1/pin/spread");
    assert_eq!(dialogue.accepted(), Some("the trailer stands on sand"));
    say(&mut dialogue, &format!("g {TRIM}"));
    say(&mut dialogue, "0.1");
    assert_eq!(dialogue.accepted(), None, "a reason is for the level it was given for");
}

#[test]
fn nobody_gets_past_the_level_by_going_elsewhere() {
    let mut dialogue = again();
    assert_eq!(dialogue.hear("g seat-3"), Heard::Gone);
    assert_eq!(dialogue.ask(), Ask::Level);
    dialogue.levelled(None);
    assert!(matches!(dialogue.ask(), Ask::Reason(why) if why.contains("not read today")));
    dialogue.hear("callipers only");
    assert_eq!(name(&dialogue), "seat-3/pin/spread");
    let Heard::Unreadable(why) = dialogue.hear("g seat-3/rowlok/gap") else {
        panic!("nothing has that name")
    };
    assert_eq!(why, "nothing is called seat-3/rowlok/gap here; did you mean seat-3/rowlock/gap?");
}

#[test]
fn from_the_end_there_is_a_way_back() {
    let mut dialogue = again();
    level(&mut dialogue);
    say(&mut dialogue, "e");
    assert_eq!(dialogue.ask(), Ask::End);
    let mut resumed = again();
    resumed.take_all(&dialogue.draft()).expect("a draft that ends here fits the record");
    no_danger(&mut resumed);
    assert_eq!(resumed.ask(), Ask::End);
    assert_eq!(dialogue.hear("b"), Heard::Back);
    assert_eq!(name(&dialogue), "rigged/walk-round/hull");
    say(&mut dialogue, "");
    assert_eq!(say(&mut dialogue, "g seat-1/note"), Heard::Gone);
    assert_eq!(name(&dialogue), "seat-1/note");
}

#[test]
fn what_can_not_be_read_is_asked_again_in_the_words_of_lint() {
    let mut dialogue = again();
    level(&mut dialogue);
    say(&mut dialogue, &format!("g {GAP}"));
    for (line, told) in [
        ("58,5", "decimal comma"),
        ("58 furlongs", "furlongs"),
        ("[58, 59", "bracket is not closed"),
        ("wide", "wide"),
    ] {
        let Heard::Unreadable(why) = dialogue.hear(line) else { panic!("{line} was taken") };
        assert!(why.contains(told), "{line}: {why}");
        assert_eq!(name(&dialogue), GAP);
    }
    assert_eq!(dialogue.hear("?"), Heard::How);
    assert_eq!(say(&mut dialogue, "6 cm"), Heard::Taken);
}

#[test]
fn back_and_taken_back_leave_the_record_as_it_was() {
    let mut dialogue = again();
    assert_eq!(dialogue.hear("b"), Heard::AtTheBeginning);
    level(&mut dialogue);
    say(&mut dialogue, &format!("g {GAP}"));
    say(&mut dialogue, "60.3");
    assert_eq!(dialogue.hear("b"), Heard::Back);
    assert_eq!(dialogue.hear("x"), Heard::Forgotten);
    let asked: Option<(&Question, _)> = dialogue.answered().find(|(own, _)| own.name == GAP);
    assert!(asked.expect("the gap").1.read().is_none());
    assert!(!text(&dialogue).contains("60.3"));
}

#[test]
fn a_second_person_is_asked_no_second_reading() {
    let mut dialogue = again().blind();
    say(&mut dialogue, &format!("g {GAP}"));
    dialogue.hear("50");
    assert_eq!(dialogue.judged(true), None);
}
