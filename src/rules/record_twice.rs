//! Two records of one kind with one id.

use std::collections::HashMap;

use super::finding::Finding;
use super::finding::Outcome;
use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;
use crate::model::Book;
use crate::model::Name;
use crate::model::Place;
use crate::model::Placed;
use crate::units::Date;

pub(super) static RULE: Rule = Rule {
    id: "record-twice",
    level: Level::Fault,
    checks: "Two boats, two oar sets, two crews or two classes have one id, or two oars of a set have.",
    reason: "Everything that names the id could mean either. A gap would be checked against the \
             wrong oar, and nobody would see it.",
    remedy: "Give one of the two an id of its own, or take out the copy.",
    formula: "an id is that of one record of its kind; the program's own classes count too",
    default: "-",
    sources: &[sources::FORMAT.at("ids")],
    example: Example {
        wrong: &[
            (
                "boats/petrel.yaml",
                "",
                "",
                "class: surfboat\nboat: kittiwake  # <--\noars: long-ash\nrigged: {date: 2026-10-18, by: Ines Marlow}\n",
            ),
            ("oars/old-ash.yaml", "", "", "oar-set: long-ash  # <--\noars: [{oar: A1}]\n"),
            ("oars/long-ash.yaml", "", "oar: A4", "oar: A3  # <--"),
            ("crews/veterans.yaml", "", "", "crew: masters-a  # <--\n"),
            ("classes/own.yaml", "", "", "class: surfboat  # <--\nseats: 4\n"),
        ],
        right: &[
            ("crews/veterans.yaml", "", "", "crew: kittiwake\nboat: kittiwake\n"),
            ("classes/own.yaml", "", "", "class: sandboat\nseats: 4\n"),
        ],
    },
    looks: Looks::AtTheBook(check),
};

fn check(book: &Book, _: Date) -> Vec<Outcome> {
    let own = |id: &Placed<String>| Name::record(&id.value);
    let kinds = [
        twice(book, "boats", book.boats.iter().map(|boat| &boat.id), own),
        twice(book, "oar sets", book.oar_sets.iter().map(|set| &set.id), own),
        twice(book, "crews", book.crews.iter().map(|crew| &crew.id), own),
        twice(book, "classes", book.classes.iter().map(|class| &class.id), own),
    ];
    let oars = book.oar_sets.iter().flat_map(|set| {
        let below = |id: &Placed<String>| Name::record(&set.id.value).at(&id.value);
        let kind = format!("oars of {}", set.id.value);
        twice(book, &kind, set.oars.iter().filter_map(|oar| oar.id.as_ref()), below)
    });
    kinds.into_iter().flatten().chain(oars).collect()
}

fn twice<'b>(
    book: &Book,
    kind: &str,
    ids: impl Iterator<Item = &'b Placed<String>>,
    name: impl Fn(&Placed<String>) -> Name,
) -> Vec<Outcome> {
    let mut first: HashMap<&str, Place> = HashMap::new();
    let mut findings = Vec::new();
    for id in ids {
        match first.get(id.value.as_str()) {
            Some(before) => findings.push(again(book, kind, name(id), id, *before).found()),
            None => drop(first.insert(&id.value, id.place)),
        }
    }
    findings
}

fn again(book: &Book, kind: &str, name: Name, id: &Placed<String>, first: Place) -> Finding {
    let file = book.file(first.file);
    let finding = Finding::new(&RULE, name, id.place, "and here").also(first, "first here");
    if file.built_in {
        return finding.saying(format!("`{}` is a class of the program's own", id.value)).remedy(
            "Give the club's class an id of its own. To change limits only, set them in club.yaml.",
        );
    }
    finding.saying(format!("two {kind} are called `{}`; the first is in {}", id.value, file.path))
}
