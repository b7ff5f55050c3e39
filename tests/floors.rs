//! The floors drawn in `src/lib.rs`, as a list the code must obey, and a few habits of the house.

use std::fs;
use std::path::Path;

/// Each room, from the ground up, with the rooms it may use.
const MAY_USE: &[(&str, &[&str])] = &[
    ("units", &[]),
    ("geometry", &["units"]),
    ("metrology", &[]),
    ("store", &[]),
    ("model", &["units", "geometry"]),
    ("reading", &["units", "model", "store", "geometry"]),
    ("working", &["units", "geometry", "metrology", "model"]),
    ("rules", &["units", "geometry", "metrology", "model", "reading", "working"]),
    ("planning", &["units", "geometry", "metrology", "model", "reading", "working", "rules"]),
    ("writing", &["units", "store", "model", "reading", "planning"]),
    ("history", &["units", "store", "model", "reading", "working"]),
    (
        "reports",
        &["units", "model", "reading", "rules", "planning", "history", "working", "metrology"],
    ),
    (
        "cli",
        &[
            "units",
            "geometry",
            "metrology",
            "store",
            "model",
            "reading",
            "working",
            "rules",
            "planning",
            "writing",
            "history",
            "reports",
        ],
    ),
];

/// Crates that are named in few places, so that they can be changed there.
const WRAPPED: &[(&str, &[&str])] = &[
    ("granit_parser", &["src/reading/tree/"]),
    ("git2", &["src/store/"]),
    ("flate2", &["src/store/repository/loose.rs"]),
    ("walkdir", &["src/store/"]),
    (
        "similar",
        &[
            "src/reading/nearest.rs",
            "src/reports/changed_lines.rs",
            "src/reports/difference/wording.rs",
            "src/store/repository/revision.rs",
            "src/writing/splicing/marking.rs",
        ],
    ),
    ("jiff", &["src/units/date.rs", "src/cli/"]),
    ("miette", &["src/reports/text.rs"]),
    ("owo_colors", &["src/reports/look.rs"]),
    ("textwrap", &["src/reports/look.rs", "src/reports/text.rs"]),
    ("maud", &["src/reports/"]),
    ("serde_json", &["src/reports/"]),
    ("clap", &["src/cli/"]),
    ("rustyline", &["src/cli/measure/terminal.rs"]),
    ("clap_complete", &["src/cli/"]),
    ("clap_mangen", &["src/cli/"]),
];

/// What only the command line does: to print, to end the program, to read clock and environment.
const ONLY_IN_CLI: &[&str] = &[
    "print!",
    "println!",
    "eprint!",
    "eprintln!",
    "dbg!",
    "stdout()",
    "stderr()",
    "stdin()",
    "std::env",
    "process::exit",
    "SystemTime",
    "Instant::now",
    "Zoned::now",
    "ZonedDateTime::now",
    "Timestamp::now",
];

/// The start of the program, and what cargo runs before it is built.
const NOT_OF_THE_LIBRARY: [&str; 2] = ["src/main.rs", "src/build.rs"];

const LONGEST_FUNCTION: usize = 60;
const LONGEST_FILE: usize = 400;

#[test]
fn the_list_has_no_way_up() {
    for (height, (room, uses)) in MAY_USE.iter().enumerate() {
        for used in *uses {
            let below = MAY_USE[..height].iter().any(|(name, _)| name == used);
            assert!(below, "{room} may use {used}, which is not below it");
        }
    }
}

#[test]
fn every_room_is_in_the_list() {
    let text = fs::read_to_string("src/lib.rs").expect("src/lib.rs");
    let rooms = text.lines().filter_map(|line| line.strip_prefix("pub mod ")?.strip_suffix(';'));
    let unlisted: Vec<&str> =
        rooms.filter(|room| !MAY_USE.iter().any(|(name, _)| name == room)).collect();
    assert!(unlisted.is_empty(), "{unlisted:?}");
}

#[test]
fn a_room_uses_only_what_the_list_allows() {
    let mut wrong = Vec::new();
    for (room, uses) in MAY_USE {
        for (file, text) in sources(&Path::new("src").join(room)) {
            for (number, line) in numbered(&text) {
                for used in rooms_named(line) {
                    if used != *room && !uses.contains(&used) {
                        wrong.push(format!("{file}:{number}: {room} may not use {used:?}"));
                    }
                }
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn a_wrapped_crate_is_named_only_where_it_is_wrapped() {
    let mut wrong = Vec::new();
    for (name, homes) in WRAPPED {
        let mut named = 0;
        for (file, text) in sources(Path::new("src")) {
            for (number, _) in numbered(&text).filter(|(_, line)| names_crate(line, name)) {
                named += 1;
                if !homes.iter().any(|home| file.starts_with(home)) {
                    wrong.push(format!("{file}:{number} names {name}; only {homes:?} may"));
                }
            }
        }
        assert!(named > 0, "{name} is named nowhere: the list is out of date");
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn only_the_command_line_prints_and_reads_clock_and_environment() {
    let mut wrong = Vec::new();
    for (file, text) in sources(Path::new("src")) {
        if file.starts_with("src/cli/") || NOT_OF_THE_LIBRARY.contains(&file.as_str()) {
            continue;
        }
        for (number, line) in numbered(&text) {
            let code = code(line);
            if ONLY_IN_CLI.iter().any(|word| code.contains(word)) {
                wrong.push(format!("{file}:{number}: {}", code.trim()));
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn no_function_and_no_file_is_a_heap() {
    let mut wrong = Vec::new();
    for (file, text) in sources(Path::new("src")) {
        let lines = text.lines().count();
        if lines > LONGEST_FILE {
            wrong.push(format!("{file} has {lines} lines; {LONGEST_FILE} are the most"));
        }
        for (number, length) in functions(&text).filter(|(_, length)| *length > LONGEST_FUNCTION) {
            wrong.push(format!(
                "{file}:{number}: a function of {length} lines; {LONGEST_FUNCTION} are the most"
            ));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// The tests above find what they look for, or they would be no tests.
#[test]
fn the_eyes_of_these_tests_are_open() {
    assert_eq!(rooms_named("use crate::units::Length;").collect::<Vec<_>>(), ["units"]);
    assert_eq!(rooms_named("use crate::{units, model};").collect::<Vec<_>>(), [""]);
    assert_eq!(rooms_named("// crate::units").count(), 0);
    assert!(names_crate("use miette::Report;", "miette"));
    assert!(names_crate("    use miette;", "miette"));
    assert!(!names_crate("let x = crate::mymiette::y;", "miette"));
    let text = "fn one() {\n    1\n}\n\nimpl A {\n    pub(crate) fn two() {\n        fn_three();\n        2\n    }\n    fn four(&self) {}\n}\n";
    assert_eq!(functions(text).collect::<Vec<_>>(), [(1, 3), (6, 4), (10, 1)]);
}

/// Returns the rooms that a line names after `crate::`. A group, `crate::{`, gives an empty name,
/// which no list allows: one module a line.
fn rooms_named(line: &str) -> impl Iterator<Item = &str> {
    code(line)
        .split("crate::")
        .skip(1)
        .map(|rest| rest.split(|c: char| !c.is_alphanumeric() && c != '_').next().unwrap_or(""))
}

fn names_crate(line: &str, name: &str) -> bool {
    let code = code(line);
    let whole = |at: usize| !code[..at].ends_with(|c: char| c.is_alphanumeric() || c == '_');
    let path = format!("{name}::");
    let used = code.match_indices(&path).any(|(at, _)| whole(at) && !code[..at].ends_with("::"));
    used || code.trim() == format!("use {name};")
}

/// Returns each function's first line, from 1, and how many lines it has, signature to brace.
fn functions(text: &str) -> impl Iterator<Item = (usize, usize)> {
    let lines: Vec<&str> = text.lines().collect();
    let begins = |line: &str| {
        let words: Vec<&str> = code(line).split_whitespace().collect();
        let qualified = |word: &&str| word.starts_with("pub") || ["const", "async"].contains(word);
        words.iter().find(|word| !qualified(word)) == Some(&"fn")
    };
    let starts: Vec<usize> = (0..lines.len()).filter(|at| begins(lines[*at])).collect();
    let length = move |start: usize| {
        let indent = lines[start].len() - lines[start].trim_start().len();
        let close = format!("{}}}", &lines[start][..indent]);
        let ended = |line: &str| line == close || line.ends_with(';') || line.ends_with("{}");
        let head = lines[start..]
            .iter()
            .take_while(|line| !line.ends_with('{'))
            .position(|line| ended(line));
        let body = lines[start..].iter().position(|line| *line == close);
        head.or(body).map_or(lines.len() - start, |last| last + 1)
    };
    starts.into_iter().map(move |start| (start + 1, length(start)))
}

fn numbered(text: &str) -> impl Iterator<Item = (usize, &str)> {
    (1..).zip(text.lines())
}

/// Returns a line without its comment.
fn code(line: &str) -> &str {
    line.split("//").next().unwrap_or_default()
}

/// Returns every Rust file of `path`, a folder or the stem of a file.
fn sources(path: &Path) -> Vec<(String, String)> {
    if path.is_dir() {
        let entries = fs::read_dir(path).expect("a folder").map(|entry| entry.expect("an entry"));
        return entries.flat_map(|entry| sources(&entry.path())).collect();
    }
    if path.extension().is_some_and(|end| end != "rs") {
        return Vec::new();
    }
    let file = path.with_extension("rs");
    let text = fs::read_to_string(&file).unwrap_or_else(|error| panic!("{file:?}: {error}"));
    vec![(file.display().to_string().replace('\\', "/"), text)]
}
