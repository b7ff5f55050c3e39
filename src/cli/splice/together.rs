//! Whether two sides that are safe by themselves are safe together.

use std::path::Path;

use super::super::arguments::Splice;
use super::super::book;
use super::super::lint::today;
use super::super::output::Done;
use super::super::standard_input::TextGiven;
use crate::model::Book;
use crate::model::Span;
use crate::reading;
use crate::reading::tree;
use crate::reading::tree::Node;
use crate::rules;
use crate::rules::Check;
use crate::rules::Checked;
use crate::rules::Finding;
use crate::rules::Level;
use crate::rules::Standing;
use crate::store;
use crate::store::Store;
use crate::writing::editing;
use crate::writing::editing::Address;
use crate::writing::splicing::Change;
use crate::writing::splicing::Dispute;
use crate::writing::splicing::Does;

/// What the joined text brings that neither side had.
pub(super) struct Together {
    pub(super) unsafe_only_so: Vec<Finding>,
    /// Why it was not looked at, where it could not be.
    pub(super) not_looked_at: Option<String>,
    /// The joined text and the bytes of it that the findings point at.
    text: String,
    pointed_at: Vec<Span>,
}

impl Together {
    /// Checks the book with each of three texts in the place of one file.
    ///
    /// # Errors
    ///
    /// The path is none of a text of the book.
    pub(super) fn of(
        arguments: &Splice,
        ours: &str,
        theirs: &str,
        joined: &str,
    ) -> Result<Self, Done> {
        let nothing = Self {
            unsafe_only_so: Vec::new(),
            not_looked_at: None,
            text: joined.to_owned(),
            pointed_at: Vec::new(),
        };
        let Some(path) = &arguments.path else { return Ok(nothing) };
        let Ok(store) = opened(arguments, path) else {
            let why = "the book around it can't be read, so whether it is safe was not looked at";
            return Ok(Self { not_looked_at: Some(why.to_owned()), ..nothing });
        };
        let checked = |text: &str| checked(store.clone(), path, text);
        let (_, ours) = checked(ours)?;
        let (_, theirs) = checked(theirs)?;
        let (book, joined) = checked(joined)?;
        let found = new_beside(&joined, [&ours, &theirs]);
        let pointed_at = found.iter().flat_map(|finding| spans(&book, path, finding)).collect();
        Ok(Self { unsafe_only_so: found, pointed_at, ..nothing })
    }

    /// Puts the changes of theirs that the findings point at in dispute; all of them, where they
    /// point at none.
    pub(super) fn put_in_dispute(&self, changes: &mut [Change]) {
        let root = tree::read(&self.text).root;
        let is_meant = |change: &Change| {
            let Some(node) = root.as_ref().and_then(|root| node(root, &change.at)) else {
                return false;
            };
            let meets = |span: &Span| span.start <= node.span.end && node.span.start <= span.end;
            matches!(change.does, Does::Set(_)) && self.pointed_at.iter().any(meets)
        };
        let any = changes.iter().any(is_meant);
        for change in changes.iter_mut().filter(|change| !any || is_meant(change)) {
            change.dispute = Some(Dispute::Together);
        }
    }

    /// Returns why it stays in conflict, a line a finding.
    pub(super) fn reasons(&self) -> Vec<String> {
        let reason = |finding: &Finding| {
            let Finding { name, rule, message, level, .. } = finding;
            let what = match level {
                Level::Danger => "not safe together",
                _ => "does not fit together",
            };
            format!("{what}: {name} {}: {message}", rule.id)
        };
        self.unsafe_only_so.iter().map(reason).map(|line| line.replace('\n', " ")).collect()
    }
}

fn opened(arguments: &Splice, path: &Path) -> Result<Store, store::StoreError> {
    if arguments.book.is_some() {
        return book::opened(arguments.book.as_deref());
    }
    let folder = path.parent().filter(|folder| folder.is_dir()).unwrap_or(Path::new("."));
    store::open_folder(&store::find_book(folder)?)
}

fn checked(mut store: Store, path: &Path, text: &str) -> Result<(Book, Checked), Done> {
    TextGiven::of_text(path, text).put_into(&mut store)?;
    let (book, faults) = reading::read(&store.name, store.files);
    let as_of = today();
    let mut checked = rules::check(&book, &faults, Check { as_of });
    checked.waive(&book, as_of);
    Ok((book, checked))
}

/// Returns the dangers and faults that are new or worse beside either side.
fn new_beside(joined: &Checked, sides: [&Checked; 2]) -> Vec<Finding> {
    let standing = sides.map(|side| rules::compared(side, joined).standing);
    let is_new = |at: usize| standing.iter().all(|of| of[at] != Standing::Known);
    let counts = |finding: &Finding| {
        matches!(finding.level, Level::Danger | Level::Fault) && finding.waived.is_none()
    };
    let each = joined.findings.iter().enumerate();
    each.filter(|(at, finding)| is_new(*at) && counts(finding))
        .map(|(_, own)| own.clone())
        .collect()
}

/// Returns the bytes of one file that a finding points at.
fn spans(book: &Book, path: &Path, finding: &Finding) -> Vec<Span> {
    let is_here = |file: &str| path.to_string_lossy().ends_with(file);
    let labels = finding.labels.iter().map(|label| label.place);
    labels.filter(|place| is_here(&book.file(place.file).path)).map(|place| place.span).collect()
}

fn node<'n>(root: &'n Node, at: &Address) -> Option<&'n Node> {
    at.steps().iter().try_fold(root, |node, step| editing::below(node, step))
}
