//! What git must be told so that it compares and merges records by value; touches no disk.
//!
//! The attributes come with the files; the settings are made in each clone. Where the program is
//! missing, git shows and merges lines as it does with any text.

use super::guard::quoted;
use crate::store::CLUB_FILE;
use crate::store::WAIVERS_FILE;

/// The file with the attributes, in the book's folder.
pub const ATTRIBUTES: &str = ".gitattributes";

const BEGIN: &str = "# Begin: git compares and merges records by value (tholebook wire)";
const END: &str = "# End (taken away by tholebook unwire)";

/// The files of a book.
const FILES: [&str; 10] = [
    CLUB_FILE,
    WAIVERS_FILE,
    "boats/**/*.yaml",
    "boats/**/*.yml",
    "oars/**/*.yaml",
    "oars/**/*.yml",
    "crews/**/*.yaml",
    "crews/**/*.yml",
    "classes/**/*.yaml",
    "classes/**/*.yml",
];

/// The driver's name for `git diff`; what follows is for `git merge`.
const LINES: &str = "diff=tholebook merge=tholebook";

/// A setting of a clone.
#[derive(Clone, Debug, Eq, PartialEq)]
pub struct Setting {
    /// Its name.
    pub name: &'static str,
    /// What it is to be.
    pub value: String,
}

/// Returns the settings that call a program by its whole path.
///
/// # Example
///
/// ```
/// let settings = tholebook::writing::wiring::settings("/usr/bin/tholebook");
/// assert_eq!(settings[0].name, "diff.tholebook.textconv");
/// assert!(settings[0].value.contains("'/usr/bin/tholebook' view \"$1\" || cat \"$1\""));
/// ```
#[must_use]
pub fn settings(program: &str) -> [Setting; 4] {
    let quoted = quoted(program);
    let view = format!(
        "f() {{ if [ -x {quoted} ]; then {quoted} view \"$1\" || cat \"$1\"; else cat \"$1\"; fi; }}; f"
    );
    // In the setting of a merge `%` begins a place that git fills in.
    let splice = format!(
        "f() {{ if [ -x {0} ]; then {0} splice \"$1\" \"$2\" \"$3\" --marks=\"$4\" --path=\"$5\"; \
         else git merge-file --marker-size=\"$4\" -L ours -L base -L theirs \"$2\" \"$1\" \"$3\"; fi; }}",
        quoted.replace('%', "%%")
    );
    [
        Setting { name: "diff.tholebook.textconv", value: view },
        Setting { name: "merge.tholebook.name", value: "records, value by value".to_owned() },
        Setting { name: "merge.tholebook.driver", value: format!("{splice}; f %O %A %B %L %P") },
        Setting { name: "merge.tholebook.recursive", value: "text".to_owned() },
    ]
}

/// Returns the lines of attributes that belong to a book, the marks around them left out.
#[must_use]
pub fn attributes() -> Vec<String> {
    FILES.iter().map(|files| format!("{files} {LINES}")).collect()
}

/// Returns a text of attributes with ours in it: where they stood, or at the end, for there they
/// count.
#[must_use]
pub fn with_attributes(text: &str) -> String {
    let ending = if text.contains("\r\n") { "\r\n" } else { "\n" };
    let lines = attributes();
    let lines = [BEGIN].into_iter().chain(lines.iter().map(String::as_str)).chain([END]);
    let own: String = lines.map(|line| format!("{line}{ending}")).collect();
    if let Some((before, after)) = around(text) {
        return format!("{before}{own}{after}");
    }
    let gap = if text.is_empty() || text.ends_with('\n') { "" } else { ending };
    format!("{text}{gap}{own}")
}

/// Returns a text of attributes without ours.
#[must_use]
pub fn without_attributes(text: &str) -> String {
    around(text).map_or_else(|| text.to_owned(), |(before, after)| format!("{before}{after}"))
}

/// Returns what stands before and after our attributes; nothing where they don't stand there whole.
fn around(text: &str) -> Option<(&str, &str)> {
    let start = text.find(BEGIN).filter(|at| *at == 0 || text[..*at].ends_with('\n'))?;
    let end = start + text[start..].find(END)? + END.len();
    let end = text[end..].find('\n').map_or(text.len(), |more| end + more + 1);
    Some((&text[..start], &text[end..]))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn attributes_come_once_and_go_without_a_trace() {
        for text in ["", "*.png binary\n", "*.png binary", "*.png binary\r\n"] {
            let with = with_attributes(text);
            assert!(with.contains("boats/**/*.yaml diff=tholebook merge=tholebook"), "{with}");
            assert_eq!(with_attributes(&with), with);
            assert_eq!(without_attributes(&with).trim_end(), text.trim_end());
        }
        assert_eq!(without_attributes("*.png binary\n"), "*.png binary\n");
    }

    #[test]
    fn attributes_in_the_middle_stay_there() {
        let with = format!("{}*.png binary\n", with_attributes("*.pdf binary\n"));
        assert_eq!(with_attributes(&with), with);
        assert_eq!(without_attributes(&with), "*.pdf binary\n*.png binary\n");
    }

    #[test]
    fn the_path_of_the_program_may_hold_anything() {
        let [view, _, splice, _] = settings("/a b/it's 5%/tholebook");
        assert!(view.value.contains("'/a b/it'\\''s 5%/tholebook' view"), "{}", view.value);
        assert!(splice.value.contains("'/a b/it'\\''s 5%%/tholebook' splice"), "{}", splice.value);
    }
}
