//! A name that may not sign.

use super::finding::Finding;
use super::finding::Outcome;
use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;
use crate::model::Book;
use crate::model::May;
use crate::model::Name;
use crate::model::Person;
use crate::model::Signature;
use crate::model::Word;
use crate::reading::nearest;
use crate::units::Date;

pub(super) static RULE: Rule = Rule {
    id: "signer-unknown",
    level: Level::Fault,
    checks: "Where the club lists its people: a name is not in the list, or is not allowed to put itself there.",
    reason: "A signature is worth what stands behind it. A misspelt or unknown name can't be asked what \
             was measured.",
    remedy: "Spell the name as the club's list does; or have somebody sign who may; or add the person to club.yaml.",
    formula: "by needs `measure`, checked-by and passed-by need `pass`, by of a waiver needs `waive`",
    default: "anyone, where nobody is listed",
    sources: &[sources::FORMAT.at("people in club.yaml")],
    example: Example {
        wrong: &[
            ("boats/kittiwake.yaml", "rigged", "by: Ines Marlow", "by: Inez Marlow  # <--"),
            (
                "club.yaml",
                "",
                "Tomas Reyne, may: [measure, pass, waive]",
                "Tomas Reyne, may: [measure, waive]",
            ),
            (
                "boats/kittiwake.yaml",
                "rigged",
                "checked-by: Tomas Reyne",
                "checked-by: Tomas Reyne  # <--",
            ),
            (
                "oars/long-ash.yaml",
                "",
                "checked-by: Tomas Reyne}",
                "checked-by: Tomas Reyne}  # <--",
            ),
        ],
        right: &[(
            "club.yaml",
            "",
            "Ines Marlow, may: [measure, pass]",
            "Ines Marlow, may: [measure]",
        )],
    },
    looks: Looks::AtTheBook(check),
};

fn check(book: &Book, _: Date) -> Vec<Outcome> {
    if book.club.people.is_empty() {
        return Vec::new();
    }
    book.signatures().into_iter().filter_map(|signature| one(book, signature)).collect()
}

fn one(book: &Book, Signature { who, needs }: Signature) -> Option<Outcome> {
    let people = &book.club.people;
    let called = |person: &Person| person.name.as_ref().map(|name| name.value.clone());
    let known: Vec<String> = people.iter().filter_map(called).collect();
    let listed = people.iter().find(|person| called(person).as_ref() == Some(&who.value));
    let may = |person: &Person| person.may.iter().any(|may| may.value == needs);
    let file = || Name::record(&book.file(who.place.file).path);
    let name = book.name_at(who.place).cloned().unwrap_or_else(file);
    let finding = match listed {
        Some(person) if may(person) => return None,
        Some(person) => {
            let finding = Finding::new(&RULE, name.clone(), who.place, "may not sign here");
            let finding = match &person.name {
                Some(listed) => finding.also(listed.place, "listed here"),
                None => finding,
            };
            finding.saying(format!("{name}: {} may not {}", who.value, needed(needs)))
        }
        None => {
            let known: Vec<&str> = known.iter().map(String::as_str).collect();
            let nearest = nearest(&who.value, &known);
            let ask = nearest.map_or(String::new(), |name| format!("; did you mean {name}?"));
            let text = format!("{name}: {} is not among the club's people{ask}", who.value);
            Finding::new(&RULE, name, who.place, "not in the list").saying(text)
        }
    };
    Some(finding.found())
}

fn needed(needs: May) -> String {
    match needs {
        May::Measure => "sign for measuring".to_owned(),
        May::Pass => "pass another's work".to_owned(),
        May::Waive => format!("grant a waiver (`{}`)", needs.word()),
    }
}
