//! What a check comes to, case by case: each record by each rule that looks at it. Nothing that was
//! not looked at passes. Knows no XML.

use std::collections::BTreeMap;
use std::collections::HashMap;

use crate::model::Book;
use crate::model::FileId;
use crate::reports::ended::Ended;
use crate::reports::ended::spot;
use crate::reports::place::Places;
use crate::rules::Finding;
use crate::rules::Looks;
use crate::rules::NotChecked;
use crate::rules::RULES;
use crate::rules::Rule;

/// A record, or the book itself.
#[derive(Clone, Copy, Debug, Eq, Hash, PartialEq)]
pub(super) enum Kind {
    Boat,
    OarSet,
    Crew,
    Book,
}

/// Everything that one record was checked for.
pub(super) struct Suite<'r> {
    pub(super) kind: Kind,
    pub(super) id: &'r str,
    /// None for the book itself.
    pub(super) file: Option<FileId>,
    /// Whether another record of its kind has the same id.
    pub(super) twice: bool,
    /// By the number of the rule in the list.
    pub(super) cases: BTreeMap<usize, Case<'r>>,
}

/// One rule by one record.
#[derive(Default)]
pub(super) struct Case<'r> {
    pub(super) findings: Vec<&'r Finding>,
    pub(super) not_checked: Vec<&'r NotChecked>,
}

impl Kind {
    /// Returns the word for it.
    pub(super) const fn word(self) -> &'static str {
        match self {
            Self::Boat => "boat",
            Self::OarSet => "oar set",
            Self::Crew => "crew",
            Self::Book => "book",
        }
    }

    /// Returns whether a rule always looks at such a record. What looks at earlier states or at
    /// waivers may not have been asked to: it is told only where it has something to say.
    fn is_looked_at_by(self, rule: &Rule) -> bool {
        match rule.looks {
            Looks::AtEachSeat(_) | Looks::AtEachBoat(_) => self == Self::Boat,
            Looks::WhileReading => true,
            Looks::WhileWaiving | Looks::BesideEarlier => false,
            Looks::AtTheBook(_) => match rule.id {
                "oar-twice" => self == Self::Boat,
                "oars-unlike" => self == Self::OarSet,
                "defect-open" => matches!(self, Self::Boat | Self::OarSet),
                "no-such-record" | "record-twice" => true,
                _ => self != Self::Book,
            },
        }
    }
}

/// Returns every suite: the boats, the oar sets, the crews, the book itself; none of a book that
/// could not be had.
pub(super) fn suites<'r>(ended: &'r Ended) -> Vec<Suite<'r>> {
    let (book, checked) = (ended.report.book, ended.report.checked);
    if book.files.is_empty() {
        return Vec::new();
    }
    let mut suites = empty(book);
    let index = Index::of(&suites);
    let places = Places::new(book);
    for finding in &checked.findings {
        let file = spot(book, &places, finding).file;
        let at = index.position(finding.name.as_str(), Some(file));
        case(&mut suites[at], finding.rule.id).findings.push(finding);
    }
    for missing in &checked.not_checked {
        let at = index.position(missing.name.as_str(), None);
        case(&mut suites[at], missing.rule).not_checked.push(missing);
    }
    suites.retain(|suite| is_asked_for(ended, suite));
    suites
}

/// Where the suite of each record stands.
struct Index<'r> {
    by_id: HashMap<&'r str, Vec<(usize, Option<FileId>)>>,
    by_file: HashMap<FileId, usize>,
    of_book: usize,
}

impl<'r> Index<'r> {
    fn of(suites: &[Suite<'r>]) -> Self {
        let mut index =
            Self { by_id: HashMap::new(), by_file: HashMap::new(), of_book: suites.len() - 1 };
        for (at, suite) in suites.iter().enumerate().filter(|(_, one)| one.kind != Kind::Book) {
            index.by_id.entry(suite.id).or_default().push((at, suite.file));
            index.by_file.extend(suite.file.map(|file| (file, at)));
        }
        index
    }

    /// Returns the suite of the record that a name begins with, of several the one whose file it
    /// is; else that of the file; else the book's.
    fn position(&self, name: &str, file: Option<FileId>) -> usize {
        let id = name.split('/').next().unwrap_or_default();
        let named = self.by_id.get(id).map(Vec::as_slice).unwrap_or_default();
        let own = named.iter().find(|(_, own)| file.is_some() && *own == file);
        let named = own.or(named.first()).map(|(at, _)| *at);
        let of_file = || self.by_file.get(&file?).copied();
        named.or_else(of_file).unwrap_or(self.of_book)
    }
}

fn empty(book: &Book) -> Vec<Suite<'_>> {
    let boats = book.boats.iter().map(|boat| (Kind::Boat, &*boat.id.value, Some(boat.file)));
    let sets = book.oar_sets.iter().map(|set| (Kind::OarSet, &*set.id.value, Some(set.file)));
    let crews = book.crews.iter().map(|crew| (Kind::Crew, &*crew.id.value, Some(crew.file)));
    let whole = std::iter::once((Kind::Book, &*book.name, None));
    let mut seen: HashMap<_, usize> = HashMap::new();
    let all: Vec<_> = boats.chain(sets).chain(crews).chain(whole).collect();
    all.iter().for_each(|(kind, id, _)| *seen.entry((*kind, *id)).or_default() += 1);
    let suite = |(kind, id, file): (Kind, _, _)| {
        let rules = RULES.iter().enumerate().filter(|(_, rule)| kind.is_looked_at_by(rule));
        let cases = rules.map(|(number, _)| (number, Case::default())).collect();
        Suite { kind, id, file, twice: seen[&(kind, id)] > 1, cases }
    };
    all.into_iter().map(suite).collect()
}

fn case<'s, 'r>(suite: &'s mut Suite<'r>, rule: &str) -> &'s mut Case<'r> {
    let number = RULES.iter().position(|own| own.id == rule).unwrap_or(RULES.len());
    suite.cases.entry(number).or_default()
}

/// Returns whether anything of a record is told, where only some names are.
fn is_asked_for(ended: &Ended, suite: &Suite) -> bool {
    let only = ended.report.only;
    let begins = |whole: &String| {
        let id = whole.split('/').next().unwrap_or_default();
        id == "*" || id == suite.id
    };
    let has_something = || suite.cases.values().any(|case| !case.findings.is_empty());
    only.is_empty() || (suite.kind != Kind::Book && only.iter().any(begins)) || has_something()
}

impl Suite<'_> {
    /// Returns why a rule that found nothing was not made for the whole record, if it was not.
    pub(super) fn unseen(&self, ended: &Ended) -> Option<String> {
        let only = ended.report.only;
        if !only.is_empty() && !only.iter().any(|whole| whole == self.id) {
            return Some(format!("only {} was asked for", only.join(", ")));
        }
        let file = self.file.and_then(|file| ended.report.book.files.get(file.0))?;
        (!file.whole).then(|| "the file could not be read to its end".to_owned())
    }
}
