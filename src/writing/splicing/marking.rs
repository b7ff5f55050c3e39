//! The marks that git puts around what two sides wrote differently.

use similar::DiffOp;
use similar::TextDiff;

/// What the marks of a conflict say.
#[derive(Clone, Copy, Debug)]
pub struct Labels<'l> {
    /// What our side is called.
    pub ours: &'l str,
    /// What their side is called.
    pub theirs: &'l str,
    /// How many signs a mark has: 7 unless git says otherwise.
    pub size: usize,
}

/// Returns the lines that both texts have, and those they differ in between the marks of a
/// conflict, the reasons before ours.
pub(super) fn marked(ours: &str, theirs: &str, labels: &Labels<'_>, reasons: &[String]) -> String {
    let lines = TextDiff::from_lines(ours, theirs);
    let ending = if ours.contains("\r\n") { "\r\n" } else { "\n" };
    let mut text = String::new();
    for op in lines.ops() {
        let old: String = op.old_range().filter_map(|at| lines.old_slice(at)).collect();
        if matches!(op, DiffOp::Equal { .. }) {
            text.push_str(&old);
            continue;
        }
        let new: String = op.new_range().filter_map(|at| lines.new_slice(at)).collect();
        let mark = |sign: &str, label: &str| {
            let space = if label.is_empty() { "" } else { " " };
            format!("{}{space}{label}{ending}", sign.repeat(labels.size))
        };
        close_line(&mut text, ending);
        text.push_str(&mark("<", labels.ours));
        for reason in reasons {
            text.push_str(&format!("# {reason}{ending}"));
        }
        text.push_str(&old);
        close_line(&mut text, ending);
        text.push_str(&mark("=", ""));
        text.push_str(&new);
        close_line(&mut text, ending);
        text.push_str(&mark(">", labels.theirs));
    }
    text
}

/// Ends a last line that has no end.
fn close_line(text: &mut String, ending: &str) {
    if !text.is_empty() && !text.ends_with('\n') {
        text.push_str(ending);
    }
}
