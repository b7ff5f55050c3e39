//! The formats of a check's report, and files they are written to.

use std::path::PathBuf;

use clap::ValueEnum;

/// A report in another format, written to a file.
#[derive(Clone, Debug)]
pub(in crate::cli) struct Also {
    pub(in crate::cli) format: Format,
    pub(in crate::cli) file: PathBuf,
}

#[derive(Clone, Copy, Debug, ValueEnum)]
pub(in crate::cli) enum Format {
    /// Each finding drawn under its lines; many alike notes are folded
    Text,
    /// One line a finding
    Brief,
    /// For programs; described by schema/lint-report.json
    Json,
    /// SARIF 2.1.0, for forges and editors
    Sarif,
    #[value(help = "JUnit XML, for build servers")]
    Junit,
    /// For the page of a job
    Markdown,
    /// Annotations of GitHub Actions, the ten worst
    Github,
}

pub(super) fn also(text: &str) -> Result<Also, String> {
    let (format, file) = text.split_once('=').ok_or("write it as FORMAT=FILE")?;
    let format = Format::from_str(format, false).map_err(|_| {
        "the format is text, brief, json, sarif, junit, markdown or github".to_owned()
    })?;
    if file.is_empty() {
        return Err("name the file after the =".to_owned());
    }
    Ok(Also { format, file: file.into() })
}
