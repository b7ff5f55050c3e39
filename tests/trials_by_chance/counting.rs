//! What the program says of boats whose truth is known, counted.

use std::collections::BTreeMap;
use std::collections::HashMap;
use std::collections::HashSet;

use rayon::prelude::*;
use tholebook::reading;
use tholebook::rules;
use tholebook::rules::Check;
use tholebook::rules::Finding;
use tholebook::rules::Level;
use tholebook::store::Named;
use tholebook::units::Date;

use crate::design::DESIGNS;
use crate::design::Design;
use crate::design::Watch;
use crate::drawing::Draw;
use crate::record::CLUB;

/// Where the truth stands, in times what a usual value is good to beyond the limit.
pub(crate) const PLACES: [i32; 4] = [-1, 0, 1, 2];

/// How many boats are read and judged as one book.
const BOOK: usize = 125;

/// How often what was said of one kind of truth.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Counts {
    /// Nothing.
    pub(crate) nothing: usize,
    /// Unsure; of a danger, not shown to clear.
    pub(crate) doubt: usize,
    /// A fault; of a danger, proven short.
    pub(crate) proven: usize,
}

impl Counts {
    pub(crate) fn all(self) -> usize {
        self.nothing + self.doubt + self.proven
    }

    fn plus(self, other: Self) -> Self {
        Self {
            nothing: self.nothing + other.nothing,
            doubt: self.doubt + other.doubt,
            proven: self.proven + other.proven,
        }
    }
}

/// Counts by row of the table and by place of the truth.
pub(crate) type Table = BTreeMap<(&'static str, i32), Counts>;

/// Tries every design at every place.
pub(crate) fn counted() -> Table {
    let mut books = Vec::new();
    for (kind, design) in DESIGNS.iter().enumerate() {
        for place in PLACES {
            let boats = design.boats[usize::from(place != 0)];
            let seed = |book: usize| (kind * 1000 + book) as u64 * 10 + place.unsigned_abs() as u64;
            let sign = u64::from(place < 0) << 40;
            books.extend((0..boats.div_ceil(BOOK)).map(|at| (design, place, seed(at) | sign)));
        }
    }
    let tables = books.into_par_iter().map(|(design, place, seed)| one_book(design, place, seed));
    tables.reduce(Table::new, |mut table, other| {
        for (key, counts) in other {
            let own = table.entry(key).or_default();
            *own = own.plus(counts);
        }
        table
    })
}

fn one_book(design: &Design, place: i32, seed: u64) -> Table {
    let mut draw = Draw::seeded(seed);
    let mut texts = vec![Named::text("club.yaml", CLUB)];
    let mut watched: Vec<(String, Watch)> = Vec::new();
    for number in 0..BOOK {
        let (boat, watches) = (design.make)(&mut draw, f64::from(place));
        texts.extend(boat.read(&mut draw).texts(number));
        watched.extend(watches.into_iter().map(|watch| (full_name(number, &watch.name), watch)));
    }
    said(texts, &watched, place)
}

fn full_name(boat: usize, below: &str) -> String {
    if below.is_empty() { format!("b{boat}") } else { format!("b{boat}/{below}") }
}

/// Reads and checks the texts as a user would, and counts what was said of what is watched.
fn said(texts: Vec<Named>, watched: &[(String, Watch)], place: i32) -> Table {
    let (book, faults) = reading::read("trials", texts);
    assert!(faults.is_empty(), "{faults:#?}");
    let as_of = Date::read("2026-11-01").expect("a day");
    let checked = rules::check(&book, &faults, Check { as_of });
    let key = |finding: &'_ Finding| (finding.rule.id, finding.name.as_str().to_owned());
    let found: HashMap<_, _> = checked.findings.iter().map(|f| (key(f), f)).collect();
    let not_checked: HashSet<_> =
        checked.not_checked.iter().map(|not| (not.rule, not.name.as_str().to_owned())).collect();
    let mut table = Table::new();
    // Readings that agree are never within a limit: there is none.
    let agree = |watch: &Watch| place < 0 && watch.row == "handle-past-mark-disagrees";
    for (name, watch) in watched.iter().filter(|(_, watch)| !agree(watch)) {
        let key = (watch.rule, name.clone());
        assert!(!not_checked.contains(&key), "{key:?} was not checked");
        let counts = table.entry((watch.row, place)).or_default();
        match found.get(&key) {
            None => counts.nothing += 1,
            Some(finding) if proven(finding) => counts.proven += 1,
            Some(_) => counts.doubt += 1,
        }
    }
    table
}

/// Whether a finding is sure: a fault, or a danger that is not merely not shown to clear.
fn proven(finding: &Finding) -> bool {
    match finding.level {
        Level::Danger => !finding.remedy.starts_with("Not shown to clear."),
        level => level == Level::Fault,
    }
}
