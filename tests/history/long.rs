//! A long history: right, and no text read twice or for nothing.

use std::collections::HashMap;

use git2::Oid;

use crate::club::BOAT;
use crate::club::Club;
use crate::club::Files;
use crate::club::person;
use crate::club::sound;
use tholebook::history;
use tholebook::history::Asked;
use tholebook::history::Walked;
use tholebook::store::Repository;

const COMMITS: usize = 5000;

const OTHER: &str = "boats/fulmar.yaml";

/// Every hundredth commit changes the boat, all others another: what commit `number` holds.
fn files(gap: usize, spread: usize) -> Files {
    let mut files = sound();
    let other = files[BOAT].replace("kittiwake", "fulmar").replace("Kittiwake", "Fulmar");
    let text = files[BOAT].replacen("gap: 60", &format!("gap: 6{gap}"), 1);
    files.insert(BOAT.to_owned(), text);
    let spread = format!("spread: {}", 700 + spread);
    files.insert(OTHER.to_owned(), other.replacen("spread: 792", &spread, 1));
    files
}

#[test]
fn five_thousand_commits_have_the_true_changes_and_two_texts_of_the_boat() {
    let club = Club::new();
    let mut trees: HashMap<(usize, usize), Oid> = HashMap::new();
    let mut ids: Vec<Oid> = Vec::new();
    for number in 0..COMMITS {
        let (gap, spread) = (number / 100 % 2, number % 90);
        let tree = trees.entry((gap, spread)).or_insert_with(|| club.tree(&files(gap, spread)));
        let who = person("Ines Marlow", i64::try_from(number).expect("a day"));
        let parents: Vec<Oid> = ids.last().copied().into_iter().collect();
        ids.push(club.commit_tree(&who, &who, &parents, *tree));
    }
    let repository = Repository::around(club.path()).expect("a repository");
    let from = repository.commit(&ids[COMMITS - 1].to_string()).expect("a commit");
    let walked = Walked::back_from(&repository, Some(from), None, Some("kittiwake"));
    let walked = walked.expect("a history");
    assert_eq!(walked.steps.len(), COMMITS);
    // Two of the boat, and the crew, which names her.
    assert_eq!(walked.read, 3);
    let key = walked.keys().into_iter().next().expect("the boat");
    let past = walked.past(&key);
    let asked = Asked { whole: "kittiwake/seat-1/rowlock/gap", all_touches: true };
    let rows = history::timeline(&past, asked, &|_| false);
    let commits: Vec<usize> = rows.iter().map(|row| past.graph.nodes[row.node].commit).collect();
    assert_eq!(commits, (0..COMMITS).step_by(100).collect::<Vec<_>>());
}
