//! The whole of it on a real pseudo-terminal: what is shown, what is typed, a crash in the middle.

use std::process::Command;

use rexpect::process::Signal;
use rexpect::process::WaitStatus;
use rexpect::reader::Options;
use rexpect::session::PtySession;
use rexpect::session::spawn_with_options;

use crate::book::BOAT;
use crate::book::Book;
use crate::book::LATER;

/// A slow machine that does much else.
const PATIENCE_MS: u64 = 120_000;

/// Whoever measures at the terminal.
struct Hand(PtySession);

impl Hand {
    fn measures(book: &Book, words: &[&str]) -> Self {
        let mut command = Command::new(env!("CARGO_BIN_EXE_tholebook"));
        command.args(["measure", "kittiwake", "--as-of", LATER]).args(words);
        command.current_dir(book.folder.path()).env("TERM", "xterm").env("NO_COLOR", "1");
        let options =
            Options::default().timeout_ms(Some(PATIENCE_MS)).strip_ansi_escape_codes(true);
        Self(spawn_with_options(command, options).expect("a terminal"))
    }

    /// Waits until it is shown; returns what was shown before.
    #[track_caller]
    fn sees(&mut self, text: &str) -> String {
        match self.0.exp_string(text) {
            Ok(before) => before,
            Err(error) => panic!("not shown: {text}\n{error}"),
        }
    }

    /// Types a line once it is asked for.
    #[track_caller]
    fn answers(&mut self, prompt: &str, line: &str) -> String {
        let before = self.sees(prompt);
        self.0.send_line(line).expect("typed");
        before
    }

    /// Waits for the end; returns the exit code and what was shown last.
    fn ends(mut self) -> (i32, String) {
        let last = self.0.exp_eof().expect("the end");
        match self.0.process().wait().expect("it ends") {
            WaitStatus::Exited(_, code) => (code, last),
            other => panic!("{other:?}"),
        }
    }
}

/// Up to the first seat: who measures, and the level, which is not true at first.
fn to_the_first_seat(hand: &mut Hand) {
    hand.sees("Measuring Kittiwake on 2026-10-31.");
    hand.answers("by [Ines Marlow]:", "");
    hand.answers("checked-by", "Tomas Reyne");
    hand.answers("where", "");
    hand.answers("wind", "");
    hand.sees("Kittiwake: level first");
    hand.answers("level/trim, deg [0.0, 2026-10-17]:", "0.1");
    hand.answers("level/roll, deg [0.1, 2026-10-17]:", "2.5");
    hand.sees("Not level: ");
    hand.answers("reason:", "b");
    hand.answers("level/trim, deg [today 0.1]:", "0.0");
    hand.answers("level/roll, deg [today 2.5]:", "0.1");
    hand.sees("Kittiwake: seat 1 of 4, starboard, oar A1");
}

#[test]
fn the_whole_way_with_a_crash_and_a_second_reading_to_a_commit() {
    let book = Book::sound();
    let before = book.text(BOAT);
    let mut hand = Hand::measures(&book, &[]);
    to_the_first_seat(&mut hand);
    hand.answers("pin/spread, mm [792, 2026-10-17]:", "?");
    hand.sees("seen from above");
    hand.answers("pin/spread, mm [792, 2026-10-17]:", "79.2 cm");
    hand.answers("pin/along", "g seat-2/rowlock/gap");
    hand.sees("Kittiwake: seat 2 of 4, port, oar A2");
    hand.answers("rowlock/gap, mm [60, 2026-10-17]:", "50");
    hand.sees("gap-too-tight");
    hand.sees("A danger: read it a second time.");
    hand.sees("rowlock/gap, second reading (first 50):");
    hand.0.process_mut().kill(Signal::SIGKILL).expect("killed");
    assert_eq!(book.text(BOAT), before, "nothing was written");

    let mut hand = Hand::measures(&book, &[]);
    hand.sees("A measuring of 2026-10-31 was broken off after ");
    hand.answers("Go on with it?", "yes");
    hand.answers("rowlock/gap, second reading (first 50):", "b");
    hand.answers("rowlock/gap, mm [60, 2026-10-17]:", "60,2");
    hand.sees("decimal comma");
    hand.answers("rowlock/gap, mm [60, 2026-10-17]:", "60.2");
    hand.sees("clear: ");
    hand.answers("rowlock/after-tip", "e");
    hand.answers("g seat-2: go there:", "");
    let shown = hand.answers("Write this to boats/kittiwake.yaml? (yes or no)", "yes");
    assert!(shown.contains("Read again on 2026-10-31: seat-1/pin/spread, seat-2/rowlock/gap."));
    assert!(shown.contains("60.2 mm (0.2 mm wider)"), "{shown}");
    assert!(shown.contains("0 dangers, 0 faults"), "{shown}");
    hand.answers("Commit it? It is not pushed. (yes or no)", "yes");
    let (code, last) = hand.ends();
    assert!(last.contains("Committed as ") && last.contains("Nothing was pushed."), "{last}");
    assert_eq!(code, 0, "{last}");

    let text = book.text(BOAT);
    assert!(text.contains("spread: 79.2 cm") && text.contains("gap: 60.2"), "{text}");
    assert!(text.contains("date: 2026-10-31, by: Ines Marlow, checked-by: Tomas Reyne"), "{text}");
    assert_eq!(book.commits(), 2);
    let status = book.git().status_file(BOAT.as_ref()).expect("a status");
    assert_eq!(status, git2::Status::CURRENT);
    let mut hand = Hand::measures(&book, &[]);
    let shown = hand.answers("by [Ines Marlow]:", "q");
    assert!(!shown.contains("broken off"), "the draft is gone: {shown}");
}

#[test]
fn whoever_stops_or_says_no_leaves_the_record_as_it_is_and_keeps_the_draft() {
    let book = Book::sound();
    let before = book.text(BOAT);
    let mut hand = Hand::measures(&book, &[]);
    hand.answers("by [Ines Marlow]:", "");
    hand.answers("checked-by", "q");
    let (code, last) = hand.ends();
    assert_eq!(code, 0, "{last}");
    assert!(last.contains("Nothing was written; the draft is kept."), "{last}");

    let mut hand = Hand::measures(&book, &[]);
    hand.answers("Go on with it?", "yes");
    hand.sees("checked-by");
    hand.0.send_control('c').expect("Ctrl-C");
    let (code, last) = hand.ends();
    assert_eq!(code, 3, "{last}");

    let mut hand = Hand::measures(&book, &[]);
    hand.answers("Go on with it?", "yes");
    hand.answers("checked-by", "g foot-holes/first");
    hand.answers("reason:", "callipers only");
    hand.answers("foot-holes/first, mm [820, 2026-10-17]:", "821");
    hand.answers("foot-holes/apart", "e");
    hand.answers("g seat-2: go there:", "b");
    hand.answers("[kept]:", "e");
    hand.answers("g seat-2: go there:", "");
    hand.answers("Write this to boats/kittiwake.yaml? (yes or no)", "no");
    let (code, last) = hand.ends();
    assert!(code < 2 && last.contains("Nothing was written. The draft is kept."), "{last}");
    assert_eq!(book.text(BOAT), before);
    assert_eq!(book.commits(), 1);

    let mut hand = Hand::measures(&book, &[]);
    hand.answers("Go on with it?", "no");
    hand.answers("Throw it away and begin anew?", "yes");
    hand.answers("by [Ines Marlow]:", "q");
    hand.ends();
}

#[test]
fn a_second_person_sees_nothing_of_what_the_first_one_read() {
    let book = Book::sound();
    let mut hand = Hand::measures(&book, &["--second"]);
    hand.answers("by:", "Tomas Reyne");
    hand.answers("checked-by", "g seat-1");
    let mut shown = hand.answers("pin/spread, mm:", "780");
    shown += &hand.answers("pin/along, mm:", "g seat-1/rowlock");
    shown += &hand.answers("rowlock/turns", "g seat-1/rowlock/gap");
    shown += &hand.answers("rowlock/gap, mm:", "50");
    shown += &hand.answers("rowlock/after-tip, mm:", "e");
    assert!(!shown.contains("792") && !shown.contains("2026-10-17"), "{shown}");
    assert!(!shown.contains("gap-too-tight"), "no verdict sways the second reading: {shown}");
    hand.answers("g seat-2: go there:", "");
    let (code, last) = hand.ends();
    assert!(last.contains("2 values read by two people; they disagree on 2."), "{last}");
    assert!(last.contains("seat-1/pin/spread: first 792, second 780"), "{last}");
    assert_eq!(code, 1, "{last}");
}

/// From the beginning to one seat mark and the question whether it is to be written.
fn one_seat_mark(hand: &mut Hand) {
    hand.answers("by [Ines Marlow]:", "g seat-1/seat-mark");
    hand.answers("reason:", "rule only");
    hand.answers("seat-mark, mm [61, 2026-10-17]:", "62");
    hand.answers("handle-past-mark, mm", "e");
    hand.answers("g seat-2: go there:", "");
}

#[test]
fn a_record_that_somebody_else_changed_meanwhile_is_not_written_over() {
    let book = Book::sound();
    let mut hand = Hand::measures(&book, &[]);
    one_seat_mark(&mut hand);
    let theirs = book.text(BOAT).replacen("wind: light", "wind: none", 1);
    hand.sees("Write this to boats/kittiwake.yaml? (yes or no)");
    book.write(BOAT, &theirs);
    hand.0.send_line("yes").expect("typed");
    let (code, last) = hand.ends();
    assert_eq!(code, 3, "{last}");
    assert!(last.contains("it changed while this ran"), "{last}");
    assert_eq!(book.text(BOAT), theirs);

    let mut hand = Hand::measures(&book, &["--write", "--commit"]);
    hand.answers("Go on with it?", "yes");
    hand.answers("g seat-2: go there:", "");
    let (code, last) = hand.ends();
    assert_eq!(code, 0, "{last}");
    assert!(last.contains("had other changes that were not committed; they go along."), "{last}");
    let text = book.text(BOAT);
    assert!(text.contains("wind: none") && text.contains("seat-mark: 62"), "{text}");
}

#[test]
fn a_draft_that_can_not_be_read_is_not_written_over() {
    let book = Book::sound();
    book.write(".git/tholebook/measure-kittiwake.txt", "no answer\n");
    let (code, last) = Hand::measures(&book, &[]).ends();
    assert_eq!(code, 3, "{last}");
    assert!(last.contains("The draft can't be read. Mend it or take it away: "), "{last}");
    assert_eq!(book.text(".git/tholebook/measure-kittiwake.txt"), "no answer\n");
}
