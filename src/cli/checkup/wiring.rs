//! What git is told to do with the book's files when it compares and merges them.

use super::mend;
use super::well;
use crate::cli::program;
use crate::cli::wire;
use crate::reports::LookedAt;
use crate::reports::shown;
use crate::store::Repository;
use crate::store::Store;
use crate::writing::wiring;

/// The text that stands for all where no book can be had.
const USUAL: &str = "boats/boat.yaml";

const WIRE: &str = "tholebook wire";

/// Looks at the wiring: attributes come with the files, settings have to be made in each clone.
pub(super) fn look(repository: &Repository, store: Option<&Store>) -> Vec<LookedAt> {
    let texts: Vec<String> = match store {
        Some(store) => store.files.iter().map(|named| named.path.clone()).collect(),
        None => vec![USUAL.to_owned()],
    };
    let is_union = |path: &&String| repository.attribute(path, "merge").as_deref() == Some("union");
    if let Some(path) = texts.iter().find(is_union) {
        return vec![mend(
            "merging",
            format!(
                "merge=union holds for {}: a merge keeps both lines, and so doubles keys",
                shown::line(path)
            ),
            "take merge=union out of .gitattributes and .git/info/attributes",
        )];
    }
    vec![wired(repository, &texts)]
}

fn wired(repository: &Repository, texts: &[String]) -> LookedAt {
    let program = program::own_path(repository, true, "").unwrap_or_default();
    let settings = wiring::settings(&program);
    let said: Vec<&str> = settings
        .iter()
        .map(|setting| wire::of_setting(repository, setting).unwrap_or("can't be read"))
        .collect();
    let is_given = texts.iter().any(|path| {
        ["merge", "diff"]
            .iter()
            .any(|name| repository.attribute(path, name).as_deref() == Some(wire::OURS))
    });
    let is_set = said.iter().any(|said| *said != "not set");
    match (wire::overruled(repository, texts), said.iter().find(|said| **said != wire::WELL)) {
        _ if !is_given && !is_set => well("wiring", "none: git works by line, as with any text"),
        (Some((path, name)), _) => mend(
            "wiring",
            format!("{name} of {} is not that of tholebook", shown::line(path)),
            "tholebook wire --check",
        ),
        (None, Some(said)) => {
            mend("wiring", format!("the attributes are there; in this clone: {said}"), WIRE)
        }
        (None, None) => well("wiring", "by value: git asks tholebook"),
    }
}
