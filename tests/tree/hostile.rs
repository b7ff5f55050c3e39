//! Texts made to hurt: told quickly, at a place, with nothing blown.

use std::time::Duration;
use std::time::Instant;

use tholebook::reading::tree;
use tholebook::reading::tree::BYTES;
use tholebook::reading::tree::LEVELS;
use tholebook::reading::tree::Limit;
use tholebook::reading::tree::NODES;
use tholebook::reading::tree::TreeFaultKind;

use crate::looking_over::looked_over;
use crate::outline::at;

/// Returns the limit that stopped the reading of `text`, and where.
fn limit(text: &str) -> (Limit, usize) {
    looked_over(text);
    let tree = tree::read(text);
    assert!(!tree.complete);
    let too_large = |fault: &tree::TreeFault| match fault.what {
        TreeFaultKind::TooLarge { limit } => Some((limit, fault.at.start)),
        _ => None,
    };
    let found: Vec<_> = tree.faults.iter().filter_map(too_large).collect();
    let [found] = found[..] else { panic!("{:?}", &tree.faults[..tree.faults.len().min(9)]) };
    found
}

#[test]
fn a_file_of_one_mebibyte_is_read_and_one_byte_more_is_not() {
    let full = format!("a: {}\n", "x".repeat(BYTES - 4));
    assert_eq!(full.len(), BYTES);
    assert!(tree::read(&full).faults.is_empty());
    assert_eq!(limit(&format!("{full}\n")), (Limit::Bytes, BYTES));
    let across = format!("{}é", "x".repeat(BYTES - 1));
    assert_eq!(limit(&across), (Limit::Bytes, BYTES - 1));
}

#[test]
fn thirty_two_levels_are_read_and_one_more_is_told_where_it_opens() {
    for (open, close) in [("[", "]"), ("{a: ", "}"), ("- ", ""), ("[{a: ", "}]")] {
        let levels = LEVELS / open.matches(['[', '{', '-']).count();
        let fits = format!("{}1{}", open.repeat(levels), close.repeat(levels));
        assert!(tree::read(&fits).faults.is_empty(), "{fits}");
        let deep = format!("{}1{}", open.repeat(levels + 1), close.repeat(levels + 1));
        assert_eq!(limit(&deep), (Limit::Levels, open.len() * levels), "{deep}");
    }
    let steps = |levels: usize| {
        (0..levels).map(|level| format!("{}a:\n", " ".repeat(level))).collect::<String>()
    };
    assert!(tree::read(&steps(LEVELS)).faults.is_empty());
    assert_eq!(limit(&steps(LEVELS + 1)).1, steps(LEVELS).len() + LEVELS);
}

#[test]
fn block_and_inline_levels_count_together() {
    let mixed = format!("{}{}1{}", "- ".repeat(20), "[".repeat(20), "]".repeat(20));
    assert_eq!(limit(&mixed), (Limit::Levels, 40 + 12));
}

#[test]
fn endless_nesting_is_told_as_too_deep() {
    for text in [
        "[".repeat(100_000),
        "{".repeat(100_000),
        "{a: ".repeat(100_000),
        "- ".repeat(50_000),
        "? ".repeat(50_000),
        "[{a: ".repeat(50_000),
        (0..1_400).map(|level| format!("{}a:\n", " ".repeat(level))).collect(),
    ] {
        assert_eq!(limit(&text).0, Limit::Levels, "{}", &text[..20]);
    }
}

#[test]
fn more_values_than_a_record_can_need_are_told_at_the_first_too_many() {
    // The list itself is one.
    let fits = "- 1\n".repeat(NODES - 1);
    assert!(tree::read(&fits).faults.is_empty());
    assert_eq!(limit(&format!("{fits}- 1\n")), (Limit::Nodes, fits.len() + 2));
}

#[test]
fn a_bomb_of_aliases_is_told_alias_by_alias_and_never_unfolded() {
    let mut text = "a0: &a0 x\n".to_owned();
    for level in 1..10 {
        let uses = vec![format!("*a{}", level - 1); 10].join(", ");
        text += &format!("a{level}: &a{level} [{uses}]\n");
    }
    let tree = tree::read(&text);
    assert_eq!(tree.faults.len(), 10 + 90);
    assert!(tree.faults.iter().all(|fault| at(&text, fault.at).starts_with(['&', '*'])));
    assert!(tree.complete);
}

#[test]
fn a_tag_that_would_run_a_program_is_only_told() {
    let text = "a: !!python/object/apply:os.system [rm]\n";
    let tree = tree::read(text);
    assert_eq!(tree.faults.len(), 1);
    assert_eq!(at(text, tree.faults[0].at), "!!python/object/apply:os.system");
}

#[test]
fn long_names_are_shortened_in_the_message_but_not_in_the_place() {
    let name = "é".repeat(5_000);
    let text = format!("a: &{name} 1\nb: *{name}\nc: !{} 1\n", "t".repeat(5_000));
    let tree = tree::read(&text);
    assert_eq!(tree.faults.len(), 3, "{}", tree.faults.len());
    for fault in tree.faults {
        assert!(fault.at.end - fault.at.start > 5_000);
        assert!(fault.to_string().len() < 250, "{fault}");
    }
}

/// The time is for the slowest build on a busy machine; it is there to catch time that grows with
/// the square of the length.
#[test]
fn a_mebibyte_of_anything_is_read_in_seconds() {
    for piece in [
        "a",
        " ",
        "\n",
        "\t",
        "#",
        "# c\n",
        "- ",
        "- 1\n",
        "-\n",
        "a: ",
        "a: 1\n",
        "?\n",
        ":\n",
        "\"",
        "'",
        "\\",
        "|\n",
        "a: |\n x\n",
        ">",
        "[",
        "[]",
        "[],",
        "{",
        "{},",
        "}",
        "]",
        ",",
        "&",
        "&a ",
        "*a ",
        "*",
        "!",
        "!a ",
        "%",
        "%A\n",
        "---\n",
        "--- ",
        "...\n",
        "é",
        "\u{feff}",
        "\r",
        "\r\n",
        "\0",
        "<<: 1\n",
        "<<<<<<< \n",
        "=======\n",
        "@",
        "a\n",
        "a b ",
        "? a\n",
        "- - ",
        " \n#\n",
        "\"\":\n",
        "\"\n",
        "x:\n- ",
        "a #\n",
    ] {
        for text in [
            piece.repeat(BYTES / piece.len()),
            format!("a: [{}", piece.repeat(BYTES / piece.len() - 9)),
        ] {
            let begun = Instant::now();
            looked_over(&text);
            let took = begun.elapsed();
            assert!(took < Duration::from_secs(20), "{piece:?}: {took:?}");
        }
    }
}

#[test]
fn many_different_keys_and_many_equal_ones_take_no_longer_than_others() {
    let different: String = (0..24_999).map(|key| format!("k{key}: 1\n")).collect();
    assert!(tree::read(&different).faults.is_empty());
    let equal = "k: 1\n".repeat(24_999);
    assert_eq!(tree::read(&equal).faults.len(), 24_998);
}
