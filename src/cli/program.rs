//! Where this program lies, for what git is told to call.

use std::fs;

use super::exit::Exit;
use super::output::Done;
use crate::reports::shown;
use crate::store;
use crate::store::Repository;

/// Returns this program's own path, unless a commit could change what lies there.
///
/// # Errors
///
/// What the command comes to instead; `allow` is how it is allowed.
pub(super) fn own_path(
    repository: &Repository,
    among_files: bool,
    allow: &str,
) -> Result<String, Done> {
    let own = std::env::current_exe().and_then(fs::canonicalize).map_err(|error| {
        let told = format!("Where this program lies can't be found out: {error}");
        Done::refused(Exit::NotChecked, vec![shown::line(&told)])
    })?;
    if !among_files && repository.work_trees().iter().any(|top| own.starts_with(top)) {
        let told = format!(
            "This program lies among the repository's own files, {}: what a commit can change must \
             not judge that commit.",
            store::shown(&own)
        );
        let help = format!(
            "Install it elsewhere (cargo install --path .) and call that one, or allow it: {allow}"
        );
        return Err(Done::refused(Exit::Usage, vec![shown::line(&told), help]));
    }
    let text = own.to_str().filter(|text| !text.contains(char::is_control));
    text.map(ToOwned::to_owned).ok_or_else(|| {
        let told = "The name of the folder this program lies in can't be given to git. Move it.";
        Done::refused(Exit::Usage, vec![told.to_owned()])
    })
}
