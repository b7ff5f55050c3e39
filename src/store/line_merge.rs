//! Three versions of a file merged line by line, as git does where nobody knows better.

use git2::Buf;
use git2::MergeFileInput;
use git2::MergeFileOptions;

/// What a merge by lines came to.
#[derive(Clone, Debug, Eq, PartialEq)]
pub struct LineMerge {
    /// The text, with the marks of a conflict where both sides changed the same lines.
    pub text: Vec<u8>,
    /// Whether nothing is in conflict.
    pub clean: bool,
}

/// The names of the sides, and how many signs a mark has.
#[derive(Clone, Copy, Debug)]
pub struct Marks<'m> {
    /// What ours is called.
    pub ours: &'m str,
    /// What theirs is called.
    pub theirs: &'m str,
    /// How many signs a mark has.
    pub size: u16,
}

/// Merges line by line what two sides made of one file.
///
/// # Errors
///
/// What libgit2 says where it can't: bytes that are no lines.
pub fn by_lines(
    base: &[u8],
    ours: &[u8],
    theirs: &[u8],
    marks: Marks<'_>,
) -> Result<LineMerge, String> {
    // `merge_file` alone does not make libgit2 ready; making a buffer does.
    drop(Buf::new());
    let mut options = MergeFileOptions::new();
    options.our_label(marks.ours).their_label(marks.theirs).marker_size(marks.size);
    let [base, ours, theirs] = [base, ours, theirs].map(|bytes| {
        let mut input = MergeFileInput::new();
        input.content(bytes);
        input
    });
    let merged = git2::merge_file(&base, &ours, &theirs, Some(&mut options))
        .map_err(|error| error.message().to_owned())?;
    Ok(LineMerge { text: merged.content().to_vec(), clean: merged.is_automergeable() })
}

#[cfg(test)]
mod tests {
    use super::*;

    const MARKS: Marks<'static> = Marks { ours: "ours", theirs: "theirs", size: 7 };

    #[test]
    fn lines_apart_are_joined_and_one_line_is_in_conflict() {
        let joined = by_lines(b"a\nb\nc\nd\n", b"x\nb\nc\nd\n", b"a\nb\nc\ny\n", MARKS);
        let expected = LineMerge { text: b"x\nb\nc\ny\n".to_vec(), clean: true };
        assert_eq!(joined, Ok(expected));
        let torn = by_lines(b"a\n", b"x\n", b"y\n", MARKS).expect("lines");
        assert!(!torn.clean);
        assert_eq!(torn.text, b"<<<<<<< ours\nx\n=======\ny\n>>>>>>> theirs\n");
    }
}
