//! A reference that leads nowhere.

mod fields;
mod of_boat;

use super::finding::Finding;
use super::finding::NotChecked;
use super::finding::Outcome;
use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;
use super::unread::Unread;
use crate::model::Book;
use crate::model::Class;
use crate::model::Crew;
use crate::model::FileId;
use crate::model::Name;
use crate::model::Place;
use crate::model::Placed;
use crate::reading::nearest;
use crate::units::Date;

pub(super) static RULE: Rule = Rule {
    id: "no-such-record",
    level: Level::Fault,
    checks: "A record names a class, an oar set, an oar, a boat, a seat or a field that is not in the book.",
    reason: "What leads nowhere is checked against nothing: the gap of a seat whose oar is not \
             found is compared with no oar.",
    remedy: "Write the id as its own record has it, or add the record.",
    formula: "every id and every name of a field is that of a record or field of the book",
    default: "-",
    sources: &[sources::FORMAT.at("ids and names of places")],
    example: Example {
        wrong: WRONG,
        right: &[
            (
                "boats/kittiwake.yaml",
                "",
                "seats:\n",
                "knocks:
  - {date: 2026-10-10, what: dropped off the trailer, where: [seat-3]}
bends:
  - {date: 2026-10-10, by: Ines Marlow, seat: 2, part: after-horn, deg: 2}
read-again:
  - {date: 2026-10-24, by: Tomas Reyne, checked-by: Ines Marlow, values: [seat-2/rowlock/gap, '*/lifts-out', rigged/level]}
seats:\n",
            ),
            ("classes/sandboat.yaml", "", "", "class: sandboat\nmust-measure: [pin/spread]\n"),
        ],
    },
    looks: Looks::AtTheBook(check),
};

const WRONG: &[super::rule::Edit] = &[
    ("boats/kittiwake.yaml", "", "spares: [A5]", "spares: [A9]  # <--"),
    ("boats/kittiwake.yaml", "seat: 2", "oar: A2", "oar: A22  # <--"),
    (
        "boats/kittiwake.yaml",
        "",
        "seats:\n",
        "knocks:
  - date: 2026-10-18
    what: rolled in the shore break
    where: [seat-7]  # <--
bends:
  - {date: 2026-10-17, by: Ines Marlow, seat: 6, part: pin, deg: 2}  # <--
read-again:
  - date: 2026-10-24
    by: Tomas Reyne
    values:
      - seat-2/rowlock/gap
      - seat-2/rowlock/gapp  # <--
      - '*/pin/spraed'  # <--
seats:\n",
    ),
    (
        "boats/petrel.yaml",
        "",
        "",
        "boat: petrel\nclass: surfbot  # <--\noars: long-oak  # <--\nrigged: {date: 2026-10-18, by: Ines Marlow}\n",
    ),
    ("crews/masters-a.yaml", "", "boat: kittiwake", "boat: kitiwake  # <--"),
    (
        "crews/veterans.yaml",
        "",
        "",
        "crew: veterans\nboat: kittiwake\nrowers:\n  - {seat: 9, who: I.M.}  # <--\n",
    ),
    ("club.yaml", "", "people:", "limits:\n  surfbot: {clearance: {least: 6}}  # <--\npeople:"),
    ("classes/sandboat.yaml", "", "", "class: sandboat\nmust-measure:\n  - pin/spred  # <--\n"),
];

fn check(book: &Book, _: Date) -> Vec<Outcome> {
    let seek = Seek::new(book);
    let boats = book.boats.iter().flat_map(|boat| of_boat::check(&seek, boat));
    let crews = book.crews.iter().flat_map(|crew| of_crew(&seek, crew));
    let club = book.club.limits.iter().filter_map(|limits| {
        let name = Name::record("club").at("limits").at(&limits.class.value);
        seek.record(&name, &limits.class, &CLASSES)
    });
    let classes = book.classes.iter().flat_map(of_class);
    boats.chain(crews).chain(club).chain(classes).collect()
}

/// A kind of record that others name.
struct Kind {
    called: &'static str,
    has: fn(&Book, &str) -> bool,
    /// The first ids of the kind, one more than are compared.
    ids: fn(&Book) -> Vec<&str>,
}

static CLASSES: Kind = Kind {
    called: "class",
    has: |book, id| book.class(id).is_some(),
    ids: |book| first(book.classes.iter().map(|class| &class.id)),
};

static SETS: Kind = Kind {
    called: "oar set",
    has: |book, id| book.oar_set(id).is_some(),
    ids: |book| first(book.oar_sets.iter().map(|set| &set.id)),
};

static BOATS: Kind = Kind {
    called: "boat",
    has: |book, id| book.boat(id).is_some(),
    ids: |book| first(book.boats.iter().map(|boat| &boat.id)),
};

/// With more ids than this, far more than any club's, none is offered: in a book of any size a slip
/// is told as fast.
const COMPARED: usize = 500;

fn first<'b>(ids: impl Iterator<Item = &'b Placed<String>>) -> Vec<&'b str> {
    ids.take(COMPARED + 1).map(|id| &*id.value).collect()
}

/// A book in which ids are looked for.
struct Seek<'b> {
    book: &'b Book,
    /// Where what is not found may stand.
    unread: Option<Unread<'b>>,
}

impl<'b> Seek<'b> {
    fn new(book: &'b Book) -> Self {
        Self { book, unread: Unread::of(book) }
    }

    /// Looks for a record of the book.
    fn record(&self, name: &Name, id: &Placed<String>, kind: &Kind) -> Option<Outcome> {
        if (kind.has)(self.book, &id.value) {
            return None;
        }
        if let Some(unread) = self.unread {
            return Some(not_checked(name, unread));
        }
        let what = format!("there is no {} `{}` in the book", kind.called, id.value);
        Some(lost(name, id.place, &id.value, &what, &(kind.ids)(self.book)))
    }

    /// Returns the file of a record, if the file could not be read to its end.
    fn torn(&self, file: FileId) -> Option<Unread<'b>> {
        let file = self.book.file(file);
        (!file.whole).then_some(Unread::Broken(&file.path))
    }
}

fn not_checked(name: &Name, unread: Unread) -> Outcome {
    let missing = vec![unread.what()];
    Outcome::NotChecked(NotChecked { rule: RULE.id, name: name.clone(), missing })
}

/// How many known ids are told where none looks like the one written.
const SHOWN: usize = 12;

fn lost(name: &Name, place: Place, written: &str, what: &str, known: &[&str]) -> Outcome {
    let compared = if known.len() > COMPARED { &[] } else { known };
    let remedy = match nearest(written, compared) {
        Some(nearest) => format!("Did you mean `{nearest}`?"),
        None if known.is_empty() => "Add its record, or take this out.".to_owned(),
        None => {
            let more = if known.len() > SHOWN { ", …" } else { "" };
            let shown = known[..known.len().min(SHOWN)].join(", ");
            format!("Write one that there is: {shown}{more}. Or add the one that is missing.")
        }
    };
    leads_nowhere(name, place, what, remedy)
}

fn leads_nowhere(name: &Name, place: Place, what: &str, remedy: String) -> Outcome {
    Finding::new(&RULE, name.clone(), place, "leads nowhere").saying(what).remedy(remedy).found()
}

fn of_crew(seek: &Seek, crew: &Crew) -> Vec<Outcome> {
    let Some(id) = &crew.boat else { return Vec::new() };
    let record = Name::record(&crew.id.value);
    let Some(boat) = seek.book.boat(&id.value) else {
        return seek.record(&record.at("boat"), id, &BOATS).into_iter().collect();
    };
    let rowers = crew.rowers.iter().filter_map(|rower| {
        let seat = rower.seat?;
        of_boat::seat(seek, boat, &record.seat(seat.value).at("seat"), seat)
    });
    rowers.collect()
}

fn of_class(class: &Class) -> Vec<Outcome> {
    let record = Name::record(&class.id.value);
    let known = fields::of_a_seat();
    let known: Vec<&str> = known.iter().map(String::as_str).collect();
    let lost_field = |field: &Placed<String>| {
        let what = format!("no seat has a field `{}`", field.value);
        let name = record.at("must-measure");
        (!known.contains(&&*field.value))
            .then(|| lost(&name, field.place, &field.value, &what, &known))
    };
    class.must_measure.iter().filter_map(lost_field).collect()
}
