//! What git is told to do with the book's files when it compares and merges them.

use super::mend;
use super::well;
use crate::reports::LookedAt;
use crate::store::Repository;
use crate::store::Store;

/// What the attributes and the settings of this program are called.
const OURS: &str = "tholebook";

/// The text that stands for all where no book can be had.
const USUAL: &str = "boats/boat.yaml";

/// Looks at the wiring: attributes come with the files, settings have to be made in each clone.
pub(super) fn look(repository: &Repository, store: Option<&Store>) -> Vec<LookedAt> {
    let texts: Vec<&str> = match store {
        Some(store) => store.files.iter().map(|named| named.path.as_str()).collect(),
        None => vec![USUAL],
    };
    let has = |name: &str, value: &str| {
        let is = |path: &&&str| repository.attribute(path, name).as_deref() == Some(value);
        texts.iter().find(is).copied()
    };
    let merging = match has("merge", "union") {
        Some(path) => mend(
            "merging",
            format!("merge=union holds for {path}: a merge keeps both lines, and so doubles keys"),
            "take merge=union out of .gitattributes and .git/info/attributes",
        ),
        None => wired(repository, "merging", "driver", has("merge", OURS).is_some()),
    };
    let comparing = wired(repository, "comparing", "textconv", has("diff", OURS).is_some());
    vec![merging, comparing]
}

fn wired(repository: &Repository, what: &'static str, setting: &str, is_given: bool) -> LookedAt {
    let kind = if what == "merging" { "merge" } else { "diff" };
    let settings = [setting, "command"].map(|last| format!("{kind}.{OURS}.{last}"));
    let is_set = settings.iter().any(|name| repository.is_set(name));
    match (is_given, is_set) {
        (true, true) => well(what, "by value: git asks tholebook"),
        (true, false) => mend(
            what,
            format!(
                "by line: {kind}={OURS} is an attribute of the files, and not set in this clone"
            ),
            "tholebook wire",
        ),
        (false, true) => mend(
            what,
            format!("by line: {kind}.{OURS} is set, and no file has the attribute"),
            "tholebook wire",
        ),
        (false, false) => well(what, "by line, as git does with any text"),
    }
}
