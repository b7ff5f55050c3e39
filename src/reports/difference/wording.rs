//! How a text changed, word by word.

use similar::ChangeTag;
use similar::TextDiff;

/// The longest texts that are compared word by word; longer ones are shown one after the other.
const LONGEST: usize = 4000;

/// Returns both texts in one: `[-what is gone-]` and `{+what came+}` among what stayed.
pub(super) fn in_words(old: &str, new: &str) -> String {
    if old.len() + new.len() > LONGEST {
        return format!("[-{old}-] {{+{new}+}}");
    }
    let difference = TextDiff::from_words(old, new);
    let mut out = String::new();
    let mut last = ChangeTag::Equal;
    for change in difference.iter_all_changes() {
        if change.tag() != last {
            out.push_str(end(last));
            out.push_str(begin(change.tag()));
            last = change.tag();
        }
        out.push_str(change.value());
    }
    out.push_str(end(last));
    out
}

const fn begin(tag: ChangeTag) -> &'static str {
    match tag {
        ChangeTag::Equal => "",
        ChangeTag::Delete => "[-",
        ChangeTag::Insert => "{+",
    }
}

const fn end(tag: ChangeTag) -> &'static str {
    match tag {
        ChangeTag::Equal => "",
        ChangeTag::Delete => "-]",
        ChangeTag::Insert => "+}",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_the_word_that_changed_is_marked() {
        assert_eq!(in_words("horn bent 3 mm", "horn bent 4 mm"), "horn bent [-3-]{+4+} mm");
    }

    #[test]
    fn a_text_that_is_too_long_is_shown_whole() {
        let long = "a ".repeat(3000);
        assert_eq!(in_words(&long, "b"), format!("[-{long}-] {{+b+}}"));
    }
}
