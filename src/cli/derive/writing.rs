//! `derive --write`: the worked-out values, written beside the readings that give them.

use std::collections::BTreeSet;
use std::collections::HashSet;

use crate::cli::book::OpenBook;
use crate::cli::exit::Exit;
use crate::cli::output::Done;
use crate::cli::saving;
use crate::metrology::decision;
use crate::model::FileId;
use crate::model::SourceFile;
use crate::reports::shown;
use crate::working::BoatSight;
use crate::working::SeatSight;
use crate::working::Sum;
use crate::working::Unit;
use crate::writing::worked_out::WorkedOut;
use crate::writing::worked_out::with_worked_out;

/// What came of the boats so far.
struct Progress<'o> {
    open: &'o OpenBook,
    exit: Exit,
    result: String,
    told: Vec<String>,
}

/// Writes the worked-out values of these boats, each file by itself. Where all boats are meant, a
/// file that can't be read as any record may be one of them.
pub(super) fn write(open: &OpenBook, boats: &[BoatSight], all: bool) -> Done {
    let exit = if open.settings_are_bad() { Exit::Usage } else { Exit::Clear };
    let mut progress = Progress { open, exit, result: String::new(), told: open.told.clone() };
    for boat in boats {
        progress.boat(boat);
    }
    if all {
        for path in of_no_record(open) {
            let why = format!("{path} is as it was: it can't be read; see tholebook lint");
            progress.leave(Exit::Findings, why);
        }
    }
    progress.told.extend(open.unread());
    let Progress { exit, result, told, .. } = progress;
    Done { exit, result, told }
}

/// Returns the files with faults that no record was read from.
fn of_no_record(open: &OpenBook) -> BTreeSet<&str> {
    let book = &open.book;
    let mut known: HashSet<FileId> = book.boats.iter().map(|boat| boat.file).collect();
    known.extend(book.oar_sets.iter().map(|set| set.file));
    known.extend(book.crews.iter().map(|crew| crew.file));
    known.extend(book.classes.iter().map(|class| class.file));
    known.extend(book.club.file);
    known.extend(book.waivers.iter().map(|waiver| waiver.place.file));
    let faulty = open.faults.iter().map(|fault| fault.place.file);
    faulty.filter(|file| !known.contains(file)).map(|file| &*book.file(file).path).collect()
}

impl Progress<'_> {
    fn boat(&mut self, boat: &BoatSight) {
        let file = self.open.book.file(boat.boat.file);
        let faults = self.open.faults.iter().filter(|fault| fault.place.file == boat.boat.file);
        let faults = faults.count();
        if faults > 0 {
            let things = if faults == 1 { "thing" } else { "things" };
            let why = format!("{faults} {things} in it can't be read; see tholebook lint");
            self.leave(Exit::Findings, format!("{} is as it was: {why}", file.path));
            return;
        }
        let changes: Vec<Change> = (1..)
            .zip(boat.seats())
            .flat_map(|(part, seat)| self.changes(file, part, &seat))
            .collect();
        if changes.is_empty() {
            self.say(&format!("{}: nothing to write", file.path));
            return;
        }
        let values: Vec<WorkedOut> = changes.iter().map(|change| change.value.clone()).collect();
        match with_worked_out(&file.text, &values) {
            Err(refused) => {
                let why = format!("{} is as it was: {refused}; {}", file.path, refused.help());
                self.leave(Exit::NotChecked, why);
            }
            Ok(text) => match saving::save(self.open, file, &text) {
                Err(why) => self.leave(Exit::NotChecked, why),
                Ok(()) => self.tell(file, &changes),
            },
        }
    }

    /// Returns what is to be written at a seat. A value that is written and can't be worked out now
    /// stays, and that is told.
    fn changes(&mut self, file: &SourceFile, part: usize, seat: &SeatSight) -> Vec<Change> {
        let mut changes = Vec::new();
        for sum in seat.sums() {
            let name = seat.name().at("worked-out").at(sum.key).to_string();
            let old = sum
                .stated
                .map(|stated| file.text[stated.place.span.start..stated.place.span.end].to_owned());
            match (&sum.worked, &old) {
                (Ok(worked), _) if !is_right(&sum, worked.value()) => {
                    let text = written(worked.value(), sum.unit);
                    let value = WorkedOut { part, key: sum.key, text };
                    changes.push(Change { name, old, value });
                }
                (Err(lack), Some(old)) => self.told.push(shown::line(&format!(
                    "{name} stays as it is written, {old}: it can't be worked out ({lack})"
                ))),
                _ => {}
            }
        }
        changes
    }

    fn tell(&mut self, file: &SourceFile, changes: &[Change]) {
        let values = if changes.len() == 1 { "value" } else { "values" };
        self.say(&format!("{}: {} {values} written", file.path, changes.len()));
        for Change { name, old, value } in changes {
            let old = old.as_ref().map(|old| format!("{old} -> ")).unwrap_or_default();
            self.say(&format!("  {name}: {old}{}", value.text));
        }
    }

    fn say(&mut self, line: &str) {
        self.result.push_str(&shown::line(line));
        self.result.push('\n');
    }

    fn leave(&mut self, exit: Exit, why: String) {
        self.exit = self.exit.max(exit);
        self.told.push(shown::line(&why));
    }
}

/// A value that is to be written, and what stands there now.
struct Change {
    name: String,
    old: Option<String>,
    value: WorkedOut,
}

/// Returns whether what is written is what the readings give, rounded as it is written.
fn is_right(sum: &Sum, worked: f64) -> bool {
    sum.stated.is_some_and(|stated| {
        let stated = stated.value;
        !decision::disagrees(stated.value - worked, stated.half_digit)
    })
}

/// Returns a value as it is written: angles with two decimals, lengths with one, ratios with three.
fn written(value: f64, unit: Unit) -> String {
    let (places, word) = match unit {
        Unit::Deg => (2, " deg"),
        Unit::Mm => (1, ""),
        _ => (3, ""),
    };
    let text = format!("{value:.places$}");
    let is_nothing = text.trim_start_matches(['-', '0', '.']).is_empty();
    let text = if is_nothing { format!("{:.places$}", 0.0) } else { text };
    format!("{text}{word}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_value_has_the_decimals_of_its_kind_and_nothing_has_no_sign() {
        assert_eq!(written(3.5835, Unit::Deg), "3.58 deg");
        assert_eq!(written(-0.0004, Unit::Deg), "0.00 deg");
        assert_eq!(written(320.46, Unit::Mm), "320.5");
        assert_eq!(written(-0.04, Unit::Mm), "0.0");
        assert_eq!(written(2.356_52, Unit::None), "2.357");
    }
}
