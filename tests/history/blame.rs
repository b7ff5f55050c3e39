//! `blame` agrees with a walk that looks at every commit.

use std::collections::HashMap;

use git2::Oid;
use proptest::prelude::*;

use crate::club::BOAT;
use crate::club::Club;
use crate::club::Files;
use crate::club::GAP;
use crate::club::edit;
use crate::club::sound;
use crate::club::with_gap;
use crate::run::json;
use crate::run::run;
use crate::run::set_by;
use tholebook::history;
use tholebook::history::Step;
use tholebook::history::Walked;
use tholebook::model::Name;
use tholebook::store::Repository;

const MARK: &str = "kittiwake/seat-3/seat-mark";

/// What a commit of the model holds: none where the boat is not there.
type Model = Option<(u8, u8)>;

fn files(model: Model, layout: bool) -> Files {
    let mut files = sound();
    let Some((gap, mark)) = model else {
        files.remove(BOAT);
        return files;
    };
    let point = if layout { ".0" } else { "" };
    edit(&mut files, BOAT, "seat: 2", "gap: 60", &format!("gap: {}{point}", 50 + gap));
    edit(&mut files, BOAT, "seat: 3", "seat-mark: 61", &format!("seat-mark: {}", 60 + mark));
    files
}

/// Looks at every commit: a value that a parent has, too, is the first such parent's.
fn naive(commits: &[(Vec<usize>, Model)], at: usize, value: fn((u8, u8)) -> u8) -> usize {
    let of = |commit: usize| commits[commit].1.map(value);
    match commits[at].0.iter().find(|parent| of(**parent) == of(at)) {
        Some(parent) => naive(commits, *parent, value),
        None => at,
    }
}

/// Random small histories: each commit with one or more of those before it as parents.
fn histories() -> impl Strategy<Value = Vec<(Vec<usize>, Model, bool)>> {
    let model = prop_oneof![6 => (0_u8..3, 0_u8..3).prop_map(Some), 1 => Just(None)];
    let one = (proptest::collection::vec(any::<prop::sample::Index>(), 1..4), model, any::<bool>());
    proptest::collection::vec(one, 2..12).prop_map(|commits| {
        let place = |(number, (parents, model, layout)): (usize, (Vec<_>, Model, bool))| {
            let mut own: Vec<usize> = Vec::new();
            for parent in parents {
                let parent = prop::sample::Index::index(&parent, number.max(1));
                if number > 0 && !own.contains(&parent) {
                    own.push(parent);
                }
            }
            (own, model, layout)
        };
        commits.into_iter().enumerate().map(place).collect()
    })
}

/// Returns which commit set each value of the boat, by the program.
fn told(club: &Club, last: Oid) -> HashMap<Name, String> {
    let repository = Repository::around(club.path()).expect("a repository");
    let from = repository.commit(&last.to_string()).expect("a commit");
    let walked = Walked::back_from(&repository, Some(from), None, Some("kittiwake"));
    let walked = walked.expect("a history");
    let Some(key) = walked.keys().into_iter().next() else { return HashMap::new() };
    let past = walked.past(&key);
    let id = |node: usize| match walked.steps[past.graph.nodes[node].commit] {
        Step::Commit(id) => id.to_string(),
        Step::NotCommitted => "the folder".to_owned(),
    };
    history::blame(&past).into_iter().map(|set| (set.name, id(set.node))).collect()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 60, ..ProptestConfig::default() })]

    #[test]
    fn blame_is_that_of_a_walk_over_every_commit(history in histories()) {
        let club = Club::new();
        let mut ids: Vec<Oid> = Vec::new();
        for (day, (parents, model, layout)) in (0..).zip(&history) {
            let parents: Vec<Oid> = parents.iter().map(|parent| ids[*parent]).collect();
            ids.push(club.commit(day, &parents, &files(*model, *layout)));
        }
        let commits: Vec<(Vec<usize>, Model)> =
            history.into_iter().map(|(parents, model, _)| (parents, model)).collect();
        for at in 0..commits.len() {
            let told = told(&club, ids[at]);
            prop_assert_eq!(told.is_empty(), commits[at].1.is_none());
            if commits[at].1.is_some() {
                let gap = naive(&commits, at, |values| values.0);
                let mark = naive(&commits, at, |values| values.1);
                prop_assert_eq!(&told[&Name::record(GAP)], &ids[gap].to_string());
                prop_assert_eq!(&told[&Name::record(MARK)], &ids[mark].to_string());
            }
        }
    }
}

#[test]
fn a_value_of_the_folder_is_not_committed_yet_and_one_at_a_commit_is() {
    let club = Club::new();
    let ids = club.line(&[sound(), with_gap("58")]);
    club.lay_out(&with_gap("57"));
    let folder = json(&club, &["blame", "kittiwake"]);
    assert_eq!(set_by(&folder, GAP), None);
    assert_eq!(set_by(&folder, MARK), Some(ids[0].to_string()));
    let head = json(&club, &["blame", "kittiwake", "--at", "HEAD"]);
    assert_eq!(set_by(&head, GAP), Some(ids[1].to_string()));
    let before = json(&club, &["blame", "kittiwake", "--at", "HEAD~1"]);
    assert_eq!(set_by(&before, GAP), Some(ids[0].to_string()));
}

#[test]
fn an_oar_set_and_a_crew_have_their_values_told_too() {
    let club = Club::new();
    let mut second = sound();
    edit(&mut second, "oars/long-ash.yaml", "oar: A2", "inboard: 1150", "inboard: 1155");
    let ids = club.line(&[sound(), second]);
    let oars = json(&club, &["blame", "long-ash"]);
    assert_eq!(set_by(&oars, "long-ash/A2/inboard"), Some(ids[1].to_string()));
    assert_eq!(set_by(&oars, "long-ash/A1/inboard"), Some(ids[0].to_string()));
    assert!(!json(&club, &["blame", "masters-a"])["values"].as_array().expect("a list").is_empty());
}

#[test]
fn only_values_older_than_asked_for_are_told() {
    let club = Club::new();
    club.line(&[sound()]);
    let count = |days: &str| {
        let asked = ["blame", "kittiwake", "--as-of", "2026-10-27", "--older-than", days];
        json(&club, &asked)["values"].as_array().expect("a list").len()
    };
    assert!(count("9") > 0);
    let measured = |days: &str| {
        let asked = ["blame", "kittiwake", "--as-of", "2026-10-27", "--older-than", days];
        let json = json(&club, &asked);
        let values = json["values"].as_array().expect("a list").clone();
        values.iter().filter(|value| !value["measured_on"].is_null()).count()
    };
    assert!(measured("9") > 0);
    assert_eq!(measured("10"), 0);
}

#[test]
fn a_boat_that_was_taken_out_is_told_as_such() {
    let club = Club::new();
    let mut gone = sound();
    gone.remove(BOAT);
    club.line(&[sound(), gone]);
    let refused = run(&club, &["blame", "kittiwake"]);
    assert_eq!(refused.code, Some(2));
    assert!(refused.err.contains("kittiwake was taken out"), "{}", refused.err);
}
