//! Every value at its exact bytes.

use crate::outline::sound;

#[test]
fn keys_and_values_are_found_at_their_bytes() {
    assert_eq!(sound("boat: tern\n"), "{boat@0-4=tern@6-10}@0-10");
    assert_eq!(sound("boat: tern"), "{boat@0-4=tern@6-10}@0-10");
    assert_eq!(
        sound("pin:\n  spread: 792\n  along: 2140   # to the bed\n"),
        "{pin@0-3={spread@7-13=792@15-18 along@21-26=2140@28-32}@7-32}@0-32",
    );
    assert_eq!(sound("just a text\n"), "just a text@0-11");
}

#[test]
fn the_place_of_a_quoted_value_holds_its_quotes() {
    assert_eq!(sound("a: \"60 cm\"\nb: '5''7'\n"), "{a@0-1='60 cm@3-10 b@11-12='5'7@14-20}@0-20");
    assert_eq!(sound("\"a b\": 1\n'c': 2\n"), "{a b@0-5=1@7-8 c@9-12=2@14-15}@0-15");
}

#[test]
fn inline_maps_and_lists_reach_to_their_closing_bracket() {
    assert_eq!(
        sound("pitch: {catch: 11, square: [11, 12] }\n"),
        "{pitch@0-5={catch@8-13=11@15-17 square@19-25=[11@28-30 12@32-34]@27-35}@7-37}@0-37",
    );
    assert_eq!(sound("defects: []\nx: {}\n"), "{defects@0-7=[]@9-11 x@12-13={}@15-17}@0-17");
    assert_eq!(sound("- {a: 1,\n   b: 2\n  }\n"), "[{a@3-4=1@6-7 b@12-13=2@15-16}@2-20]@0-20");
}

#[test]
fn a_decimal_comma_in_an_inline_map_gives_a_key_with_nothing_after_it() {
    assert_eq!(
        sound("{catch: 1,5, square: 11}"),
        "{catch@1-6=1@8-9 5@10-11=~@11-11 square@13-19=11@21-23}@0-24",
    );
    assert_eq!(sound("{a, b: , c:}"), "{a@1-2=~@2-2 b@4-5=~@6-6 c@9-10=~@11-11}@0-12");
}

#[test]
fn a_list_begins_at_its_first_dash_wherever_that_stands() {
    assert_eq!(sound("- 1\n- 2\n"), "[1@2-3 2@6-7]@0-7");
    assert_eq!(
        sound("a:\n  - 1\n  - 2\nb: 3\n"),
        "{a@0-1=[1@7-8 2@13-14]@5-14 b@15-16=3@18-19}@0-19"
    );
    assert_eq!(sound("a:\n- 1\n- 2\nb: 3\n"), "{a@0-1=[1@5-6 2@9-10]@3-10 b@11-12=3@14-15}@0-15");
    assert_eq!(sound("a: # - no\n- - 1\n  - 2\n"), "{a@0-1=[[1@14-15 2@20-21]@12-21]@10-21}@0-21");
    assert_eq!(sound("a:\n-\n  b: 1\n"), "{a@0-1=[{b@7-8=1@10-11}@7-11]@3-11}@0-11");
}

#[test]
fn a_value_left_out_has_an_empty_place_after_its_colon_or_dash() {
    assert_eq!(sound("a:\nb: \nc:   # later\n"), "{a@0-1=~@2-2 b@3-4=~@5-5 c@7-8=~@9-9}@0-9");
    assert_eq!(sound("a: ~\nb: null\n"), "{a@0-1=~@3-4 b@5-6=~@8-12}@0-12");
    assert_eq!(sound("[Null, NULL, nULL]"), "[~@1-5 ~@7-11 nULL@13-17]@0-18");
    assert_eq!(sound("- # none\n-\n- a\n"), "[~@1-1 ~@10-10 a@13-14]@0-14");
    assert_eq!(sound("a:\n-\n- b\n"), "{a@0-1=[~@4-4 b@7-8]@3-8}@0-8");
    assert_eq!(sound("? a # no colon\n"), "{a@2-3=~@3-3}@0-3");
    assert_eq!(sound("a: 'null'\n"), "{a@0-1='null@3-9}@0-9");
}

#[test]
fn a_block_begins_at_its_sign_and_ends_with_its_last_line() {
    assert_eq!(sound("a: |\n  x\n  y  \n\nb: 1\n"), "{a@0-1=|x/y  /@3-14 b@16-17=1@19-20}@0-20");
    assert_eq!(sound("a: >-  # c | d\n\n  z\n"), "{a@0-1=|/z@3-19}@0-19");
    assert_eq!(sound("a:\n  - |2+\n     x\n"), "{a@0-1=[| x/@7-17]@5-17}@0-17");
    assert_eq!(sound("a: | # none\nb: |-"), "{a@0-1=|@3-4 b@12-13=|@15-17}@0-17");
    assert_eq!(sound("--- |\n x\n...\n"), "|x/@4-8");
    assert_eq!(sound("|\nx\n"), "|x/@0-3");
    assert_eq!(sound("\u{feff}...\n|\nx\n"), "|x/@7-10");
}

#[test]
fn a_text_over_several_lines_is_one_place() {
    assert_eq!(sound("a: horn\n  bent\nb: 1\n"), "{a@0-1=horn bent@3-14 b@15-16=1@18-19}@0-19");
    assert_eq!(sound("a: \"horn\n  bent\"\n"), "{a@0-1='horn bent@3-16}@0-16");
}

#[test]
fn the_line_ends_of_other_systems_count_as_they_are_written() {
    assert_eq!(sound("a: 1\r\nb:\r\n- 2\r\n"), "{a@0-1=1@3-4 b@6-7=[2@12-13]@10-13}@0-13");
    assert_eq!(sound("a: |\r\n  x\r\n  y\r\nb:\r\n"), "{a@0-1=|x/y/@3-14 b@16-17=~@18-18}@0-18");
    assert_eq!(sound("a: 1\rb: 2 # c\r"), "{a@0-1=1@3-4 b@5-6=2@8-9#10-13}@0-9");
    assert_eq!(sound("a: 1 # c\r\nb: 2\r\n"), "{a@0-1=1@3-4#5-8 b@10-11=2@13-14}@0-14");
}

#[test]
fn a_byte_order_mark_counts_three_bytes() {
    assert_eq!(sound("\u{feff}a: 1\n"), "{a@3-4=1@6-7}@3-7");
    assert_eq!(sound("\u{feff}---\n- 1\n"), "[1@9-10]@7-10");
    assert_eq!(sound("\u{feff}\u{feff}|\nx\n"), "|x/@6-9");
    assert_eq!(sound("# c\n\u{feff}|\nx\n"), "|x/@7-10");
    assert_eq!(sound("\u{feff}# tern\r\na:\r\n- 1\r\n"), "{a@11-12=[1@17-18]@15-18}@11-18");
}

#[test]
fn letters_of_several_bytes_count_each_byte() {
    assert_eq!(sound("bå: ør\nc: 1\n"), "{bå@0-3=ør@5-8 c@9-10=1@12-13}@0-13");
    assert_eq!(sound("{漢: 字, \"é\": ü}"), "{漢@1-4=字@6-9 é@11-15=ü@17-19}@0-20");
    assert_eq!(sound("a: ü #é\nb: |\n  é\n"), "{a@0-1=ü@3-5#6-9 b@10-11=|é/@13-19}@0-19");
}

#[test]
fn a_plain_value_tells_what_may_have_been_cut_from_it() {
    assert_eq!(sound("a: pin #3 bent\n"), "{a@0-1=pin@3-6#7-14}@0-6");
    assert_eq!(sound("a: pin\t#3\n"), "{a@0-1=pin@3-6#7-9}@0-6");
    assert_eq!(sound("- pin #3 bent"), "[pin@2-5#6-13]@0-5");
    assert_eq!(sound("{a: pin #3 bent\n}"), "{a@1-2=pin@4-7#8-15}@0-17");
    for uncut in ["a: pin  #3\n", "a: 'pin' #3\n", "a: pin#3\n", "a: pin\n #3\n", "a: p\n  q #3\n"]
    {
        let outline = sound(uncut);
        assert!(!outline.contains("#0") && !outline.contains("#1"), "{uncut:?}: {outline}");
        assert!(outline.find('#').is_none_or(|at| outline[..at].ends_with("pin")), "{outline}");
    }
}

#[test]
fn one_mark_before_and_one_after_the_record_are_fine() {
    assert_eq!(sound("---\na: 1\n...\n"), "{a@4-5=1@7-8}@4-8");
    assert_eq!(sound("%YAML 1.2 # plain\n---\na: 1\n"), "{a@22-23=1@25-26}@22-26");
    assert_eq!(sound("--- {a: 1}"), "{a@5-6=1@8-9}@4-10");
}

#[test]
fn keys_may_be_written_in_any_style() {
    assert_eq!(sound("? a\n: - 1\n"), "{a@2-3=[1@8-9]@6-9}@0-9");
    assert_eq!(
        sound("1: a\ntrue: b\n~: c\n"),
        "{1@0-1=a@3-4 true@5-9=b@11-12 ~@13-14=c@16-17}@0-17"
    );
    assert_eq!(sound("'<<': a\n"), "{<<@0-4=a@6-7}@0-7");
    assert_eq!(sound("[a: 1, ? b]"), "[{a@1-2=1@4-5}@1-5 {b@9-10=~@10-10}@7-10]@0-11");
}

#[test]
fn any_number_of_comment_lines_may_stand_between() {
    let comments = "  # c\n".repeat(500);
    let text = format!("a:\n{comments}  - 1\n{comments}  - 2\n");
    assert_eq!(sound(&text), "{a@0-1=[1@3007-3008 2@6013-6014]@3005-6014}@0-6014");
}
