//! A repository of many commits: fifty boats, one changed a commit, every twentieth a merge.

use std::error::Error;
use std::fmt::Write as _;
use std::path::Path;

use git2::ObjectType;
use git2::Odb;
use git2::Oid;
use git2::Repository;

const BOATS: usize = 50;

const SOUND: &str = include_str!("../data/sound-book/boats/kittiwake.yaml");

/// Writes the repository and returns how many commits changed boat 7.
pub(crate) fn write(root: &Path, commits: usize) -> Result<usize, Box<dyn Error>> {
    let git = Repository::init(root)?;
    let objects = git.odb()?;
    let club = objects.write(ObjectType::Blob, b"logbook: 1\nclub: Tarrow Head Boat Club\n")?;
    let mut boats: Vec<Oid> = (0..BOATS)
        .map(|number| objects.write(ObjectType::Blob, boat(number, 0).as_bytes()))
        .collect::<Result<_, _>>()?;
    let (mut last, mut before) = (None, None);
    let mut changes = 0;
    for number in 0..commits {
        let own = number % BOATS;
        changes += usize::from(own == 7);
        boats[own] = objects.write(ObjectType::Blob, boat(own, number).as_bytes())?;
        let shelf = tree(&objects, &names(&boats))?;
        let top = [("40000", "boats".to_owned(), shelf), ("100644", "club.yaml".to_owned(), club)];
        let top = tree(&objects, &top)?;
        let merged = before.filter(|_| number % 20 == 19);
        let parents: Vec<Oid> = last.into_iter().chain(merged).collect();
        (before, last) = (last, Some(commit(&objects, top, &parents, number)?));
    }
    git.set_head_detached(last.ok_or("no commit")?)?;
    Ok(changes)
}

fn boat(number: usize, time: usize) -> String {
    let gap = format!("gap: {}", 55 + time / BOATS % 11);
    let text = SOUND.replace("kittiwake", &format!("boat-{number}"));
    let (before, rest) = text.split_at(text.find("seat: 2").unwrap_or(0));
    format!("{before}{}", rest.replacen("gap: 60", &gap, 1))
}

type Entry = (&'static str, String, Oid);

fn names(boats: &[Oid]) -> Vec<Entry> {
    let name = |(number, id): (usize, &Oid)| ("100644", format!("boat-{number}.yaml"), *id);
    let mut entries: Vec<Entry> = boats.iter().enumerate().map(name).collect();
    entries.sort_by(|one, other| one.1.cmp(&other.1));
    entries
}

fn tree(objects: &Odb<'_>, entries: &[Entry]) -> Result<Oid, git2::Error> {
    let mut bytes = Vec::new();
    for (mode, name, id) in entries {
        bytes.extend(format!("{mode} {name}\0").as_bytes());
        bytes.extend(id.as_bytes());
    }
    objects.write(ObjectType::Tree, &bytes)
}

fn commit(
    objects: &Odb<'_>,
    tree: Oid,
    parents: &[Oid],
    number: usize,
) -> Result<Oid, Box<dyn Error>> {
    let mut text = format!("tree {tree}\n");
    for parent in parents {
        writeln!(text, "parent {parent}")?;
    }
    let seconds = 1_600_000_000 + number * 600;
    let who = format!("Ines Marlow <ines@example.org> {seconds} +0000");
    write!(text, "author {who}\ncommitter {who}\n\nreadings\n")?;
    Ok(objects.write(ObjectType::Commit, text.as_bytes())?)
}
