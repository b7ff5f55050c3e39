//! What is said of an oar in a seat, and what lint says when it is put there.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use proptest::prelude::*;
use tholebook::planning::matching::Match;
use tholebook::planning::matching::Suits;
use tholebook::rules;
use tholebook::rules::Check;
use tholebook::rules::Finding;
use tholebook::rules::Level;
use tholebook::store::Named;
use tholebook::units::Date;

use crate::tries::BOAT;
use crate::tries::OARS;
use crate::tries::changed;
use crate::tries::matches;
use crate::tries::tried;

/// Rules that say of a seat that its oar may not come out of the gap.
const OF_THE_GAP: [&str; 2] = ["gap-too-tight", "gap-not-measured"];

/// Rules that say of a seat's rowlock that it keeps any oar in.
const OF_THE_ROWLOCK: [&str; 2] = ["horn-hooks", "rowlock-not-free"];

fn has(findings: &[Finding], rules: &[&str], seat: &str) -> bool {
    let of_seat = |finding: &&Finding| {
        let name = finding.name.to_string();
        name.starts_with(seat) && !name.contains("/spare/")
    };
    findings.iter().filter(of_seat).any(|finding| rules.contains(&finding.rule.id))
}

/// A section or a gap in tenths of a millimetre.
fn mm(tenths: u32) -> String {
    format!("{}.{}", tenths / 10, tenths % 10)
}

#[derive(Clone, Debug)]
struct Drawn {
    gap: Option<u32>,
    good_to: u32,
    widest: Option<u32>,
    narrower: Option<u32>,
    leather: &'static str,
    after_tip: i32,
    turns: &'static str,
    lift: &'static str,
}

fn drawn() -> impl Strategy<Value = Drawn> {
    let some = |of: std::ops::Range<u32>| prop_oneof![1 => Just(None), 12 => of.prop_map(Some)];
    let rare = |usual, other| prop_oneof![9 => Just(usual), 1 => Just(other)];
    (
        some(540..700),
        1_u32..12,
        some(500..560),
        some(0..90),
        rare("wet", "dry"),
        -1..6,
        prop_oneof![8 => Just("free"), 1 => Just("stiff"), 1 => Just("seized")],
        rare("freely", "jams"),
    )
        .prop_map(|(gap, good_to, widest, narrower, leather, after_tip, turns, lift)| Drawn {
            gap,
            good_to,
            widest,
            narrower,
            leather,
            after_tip,
            turns,
            lift,
        })
}

/// Where the oar stands, and the book with it there.
fn put(drawn: &Drawn) -> [String; 5] {
    let gap = drawn.gap.map_or("gap: not measured".to_owned(), |gap| {
        format!("gap: {{read: {}, to: {}}}", mm(gap), mm(drawn.good_to))
    });
    let widest = drawn.widest.map_or(String::new(), |widest| format!("widest: {}, ", mm(widest)));
    let narrowest = drawn.widest.zip(drawn.narrower);
    let narrowest = narrowest
        .map_or(String::new(), |(widest, less)| format!("narrowest: {}, ", mm(widest - less)));
    [
        gap,
        format!("{{{widest}{narrowest}bears: flat, leather: {}", drawn.leather),
        format!("after-tip: {}", drawn.after_tip),
        format!("turns: {}", drawn.turns),
        format!("along: {}", drawn.lift),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn an_oar_that_clears_has_no_danger_there_and_one_that_is_tight_has(drawn in drawn()) {
        let [gap, shaft, after_tip, turns, lift] = put(&drawn);
        let edits = [
            (OARS, "oar: A2", "{widest: 52, narrowest: 46, bears: flat, leather: wet", &*shaft),
            (BOAT, "seat: 2", "gap: 60", &gap),
            (BOAT, "seat: 2", "after-tip: 3", &after_tip),
            (BOAT, "seat: 2", "turns: free", &turns),
            (BOAT, "seat: 2", "along: freely", &lift),
        ];
        let suits = tried(&edits, 2, "A2", |tried| tried.decided.suits);
        let (_, checked) = changed(&edits).check();
        let seat = "kittiwake/seat-2/";
        let tight = has(&checked.findings, &["gap-too-tight"], seat);
        let unmeasured = has(&checked.findings, &["gap-not-measured"], seat);
        let rowlock = has(&checked.findings, &OF_THE_ROWLOCK, seat);
        let jammed = has(&checked.findings, &["oar-did-not-lift-out"], seat);
        let loose = has(&checked.findings, &["gap-too-loose"], seat);
        prop_assert_eq!(suits == Suits::Tight, tight, "{:?}", suits);
        match suits {
            Suits::Clears => prop_assert!(!unmeasured && !rowlock && !jammed && !loose),
            Suits::Loose => prop_assert!(loose && !unmeasured && !rowlock && !jammed),
            Suits::Unknown => {
                let narrowest = drawn.narrower.is_none();
                prop_assert!(unmeasured || rowlock || jammed || narrowest);
            }
            Suits::Tight => prop_assert!(!unmeasured),
        }
    }
}

/// Every text of the example book.
fn example() -> BTreeMap<String, String> {
    let mut texts = BTreeMap::new();
    texts.insert("club.yaml".to_owned(), String::new());
    for folder in ["boats", "oars", "crews", "classes"] {
        for entry in fs::read_dir(Path::new("example-club").join(folder)).expect("a folder") {
            let name = entry.expect("a file").file_name();
            texts.insert(format!("{folder}/{}", name.to_str().expect("a name")), String::new());
        }
    }
    for (path, text) in &mut texts {
        *text = fs::read_to_string(Path::new("example-club").join(path)).expect("a text");
    }
    texts
}

fn named(texts: &BTreeMap<String, String>) -> Vec<Named> {
    texts.iter().map(|(path, text)| Named::text(path, text)).collect()
}

/// Every boat's text with other oars at her seats, one after the other.
fn with_oars(text: &str, set: &str, oars: &mut dyn Iterator<Item = String>) -> String {
    let line = |line: &str| {
        if line.starts_with("oars: ") {
            return format!("oars: {set}\n");
        }
        if line.starts_with("spares: ") {
            return String::new();
        }
        match line.strip_prefix("    oar: ") {
            Some(_) => format!("    oar: {}\n", oars.next().expect("an oar")),
            None => format!("{line}\n"),
        }
    };
    text.lines().map(line).collect()
}

#[test]
fn every_oar_of_the_example_put_into_every_seat_is_judged_as_it_was_matched() {
    let texts = example();
    let (book, _) = tholebook::reading::read("example-club", named(&texts));
    let matches = matches(&book);
    let mut seen = BTreeMap::new();
    for set in &book.oar_sets {
        for first in 0..set.oars.len() {
            let mut put = texts.clone();
            for (path, text) in &mut put {
                if path.starts_with("boats/") {
                    let ids = set.oars.iter().map(|oar| oar.called().to_owned());
                    let mut ids = ids.collect::<Vec<_>>().into_iter().cycle().skip(first);
                    *text = with_oars(text, &set.id.value, &mut ids);
                }
            }
            let (there, faults) = tholebook::reading::read("example-club", named(&put));
            let as_of = Date::read("2026-11-25").expect("a day");
            let checked = rules::check(&there, &faults, Check { as_of });
            let of_set = matches.iter().filter(|of| of.set.id.value == set.id.value);
            for of in of_set {
                count(of, first, &checked.findings, &mut seen);
            }
        }
    }
    assert_eq!(seen.values().sum::<usize>(), 400, "{seen:?}");
    assert!([Suits::Clears, Suits::Tight, Suits::Unknown].iter().all(|s| seen.contains_key(s)));
}

fn count(of: &Match, first: usize, findings: &[Finding], seen: &mut BTreeMap<Suits, usize>) {
    for (at, seat) in of.seats.iter().enumerate() {
        let tried = &seat.oars[(first + at) % seat.oars.len()];
        let name = format!("{}/", seat.seat.name());
        let told = format!("{} at {name}: {:?}", tried.oar.called(), tried.decided);
        let in_use = !of.boat.boat.is_out_of_use();
        let gap = has(findings, &OF_THE_GAP, &name);
        let danger = |finding: &&Finding| {
            let name_of = finding.name.to_string();
            let own = finding.rule.id != "oar-did-not-lift-out" && finding.rule.id != "oar-unfit";
            finding.level == Level::Danger && own && name_of.starts_with(&name)
        };
        match tried.decided.suits {
            Suits::Clears => {
                let found = findings.iter().find(danger);
                assert!(found.is_none(), "{told}: {}", found.expect("one").message);
            }
            Suits::Tight => assert!(has(findings, &["gap-too-tight"], &name), "{told}"),
            Suits::Loose => assert!(has(findings, &["gap-too-loose"], &name), "{told}"),
            Suits::Unknown => {
                assert!(gap || !in_use || has(findings, &OF_THE_ROWLOCK, &name), "{told}");
            }
        }
        *seen.entry(tried.decided.suits).or_default() += 1;
    }
}
