//! A defect that was found and not put right.

use super::finding::Finding;
use super::finding::Outcome;
use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;
use crate::model::Boat;
use crate::model::Book;
use crate::model::Defect;
use crate::model::DefectState;
use crate::model::Name;
use crate::model::Oar;
use crate::model::OarSet;
use crate::model::Place;
use crate::model::PutRight;
use crate::units::Date;

pub(super) static RULE: Rule = Rule {
    id: "defect-open",
    level: Level::Danger,
    checks: "A defect of a boat or an oar is not put right, or its put-right does not say when, by whom, how, and who passed it.",
    reason: "What one crew found, the next must not find again at sea. A repair that nobody else \
             has looked at is only a hope.",
    remedy: "Put it right, have a second person look at it, and write date, by, how and passed-by under put-right; until then the boat or the oar stays ashore.",
    formula: "put-right has date, by, how and passed-by, and the last two names differ",
    default: "-",
    sources: &[
        sources::PRACTICE.at("work on gear that carries people is passed by a second person")
    ],
    example: Example {
        wrong: &[
            (
                "boats/kittiwake.yaml",
                "",
                "seats:\n",
                "defects:
  - {found: 2026-10-03, what: crack at the foot of the seat 3 pin, state: unfit}  # <--
  - {found: 2026-10-04, what: paint off the bow, state: watch}  # <--
  - found: 2026-10-05
    what: bolt missing at seat 2
    state: unfit  # <--
    put-right: {date: 2026-10-06, by: Ines Marlow}
  - found: 2026-10-06
    what: keeper bent at seat 1
    state: unfit  # <--
    put-right: {date: 2026-10-07, by: Ines Marlow, how: straightened, passed-by: Ines Marlow}
seats:\n",
            ),
            (
                "oars/long-ash.yaml",
                "oar: A2",
                "state: sound",
                "state: sound\n    defects: [{found: 2026-10-03, what: collar split, state: unfit}]  # <--",
            ),
        ],
        right: &[
            (
                "boats/kittiwake.yaml",
                "",
                "seats:\n",
                "defects:
  - found: 2026-10-03
    what: crack at the foot of the seat 3 pin
    state: unfit
    put-right: {date: 2026-10-10, by: Ines Marlow, how: new pin, passed-by: Tomas Reyne}
seats:\n",
            ),
            (
                "oars/long-ash.yaml",
                "oar: A2",
                "state: sound",
                "state: sound
    defects:
      - found: 2026-10-03
        what: collar split
        state: watch
        put-right: {date: 2026-10-10, by: Ines Marlow, how: new collar, passed-by: Tomas Reyne}",
            ),
        ],
    },
    looks: Looks::AtTheBook(check),
};

fn check(book: &Book, _: Date) -> Vec<Outcome> {
    let boats = book
        .boats
        .iter()
        .flat_map(|boat| open(&boat.record(), boat.called(), boat.id.place, &boat.defects));
    let oars = book.oar_sets.iter().flat_map(|set| of_set(book, set));
    boats.chain(oars).map(Finding::found).collect()
}

/// Oars that only boats out of use carry are shown, as those boats are.
fn of_set(book: &Book, set: &OarSet) -> Vec<Finding> {
    let mut carrying = book.boats_with(set).peekable();
    let out_of_use = carrying.peek().is_some() && carrying.all(Boat::is_out_of_use);
    let record = Name::record(&set.id.value);
    let findings = set.oars.iter().flat_map(|oar| of_oar(&record, oar));
    findings.map(|finding| Finding { shown_only: out_of_use, ..finding }).collect()
}

fn of_oar(set: &Name, oar: &Oar) -> Vec<Finding> {
    let Some(id) = &oar.id else {
        return open(set, "an oar without an id", oar.place, &oar.defects);
    };
    open(&set.at(&id.value), &format!("oar {}", id.value), oar.place, &oar.defects)
}

fn open(whose: &Name, called: &str, place: Place, defects: &[Defect]) -> Vec<Finding> {
    let numbered = (1..).zip(defects);
    let find = |(number, defect): (usize, &Defect)| {
        let lack = lack(defect.put_right.as_ref())?;
        let below = whose.at("defects");
        let name = match defect.found {
            Some(found) => below.at(found.value),
            None => below.at(number),
        };
        Some(finding(name, called, place, defect, &lack))
    };
    numbered.filter_map(find).collect()
}

fn finding(name: Name, called: &str, record: Place, defect: &Defect, lack: &str) -> Finding {
    let state = defect.state.map(|state| state.value);
    let (level, word) = match state {
        Some(DefectState::Watch) => (Level::Note, "to be watched"),
        Some(DefectState::Unfit) => (Level::Danger, "unfit"),
        // Nobody has said that it may be used.
        None => (Level::Danger, "whether unfit is not said"),
    };
    let what = defect.what.as_ref();
    let place = [
        defect.state.map(|state| state.place),
        what.map(|what| what.place),
        defect.found.map(|found| found.place),
    ];
    let place = place.into_iter().flatten().next().unwrap_or(record);
    let what = what.map_or("a defect", |what| &what.value);
    Finding::new(&RULE, name, place, word)
        .level(level)
        .saying(format!("{called}: {what} ({word}): {lack}"))
        .remedy(remedy(level, defect.put_right.is_some()))
}

fn remedy(level: Level, begun: bool) -> String {
    let ashore = match level {
        Level::Note => "Until then look at it each time before use",
        _ => "Until then it stays ashore",
    };
    let begin = if begun { "Complete put-right" } else { "Put it right and write put-right" };
    format!("{begin}: date, by, how, and passed-by, a second person. {ashore}.")
}

/// Says what is missing of a put-right; nothing, where it is complete.
fn lack(put_right: Option<&PutRight>) -> Option<String> {
    let Some(put_right) = put_right else { return Some("it is not put right".to_owned()) };
    if put_right.passed_by_the_same() {
        return Some(
            "put right, but passed by the one who did it, not by a second person".to_owned(),
        );
    }
    let missing = put_right.missing();
    (!missing.is_empty()).then(|| format!("put right, but not said: {}", missing.join(", ")))
}
