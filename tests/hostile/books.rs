//! Folders with texts that mean harm.

use std::fs;
use std::os::unix::ffi::OsStrExt;
use std::path::Path;
use std::process::Command;

use git2::Repository;
use git2::Signature;
use tempfile::TempDir;

use crate::commands;

pub(crate) const BOAT: &str = "boats/kittiwake.yaml";

/// As it stands between the quotes of a YAML text.
const HARM: &str = r"\x1b[2J\u202e\n::error file=x::owned\r\n##[error]y ##vso[task.complete]z\u0085::warning::\u2028::notice::q\0 ]]> <script>alert(1)</script> | ` ${{x}} {0} %s";

/// The same where no escape is read: what a file's name or an author can hold.
pub(crate) const IN_A_NAME: &str =
    "\u{1b}[2J\n::error::owned ##[error]y ##vso[z]w ]]> <b>| ` \u{202e} %0A";

/// A copy of the sound book that is committed twice, the gap narrower in the second.
pub(crate) fn committed() -> TempDir {
    let folder = tempfile::tempdir().expect("a folder");
    for path in ["club.yaml", BOAT, "oars/long-ash.yaml", "crews/masters-a.yaml"] {
        let text = fs::read(Path::new("tests/data/sound-book").join(path)).expect("a text");
        put(folder.path(), path, text);
    }
    let repository = Repository::init(folder.path()).expect("a repository");
    commit(&repository);
    edit(folder.path(), BOAT, &|text| text.replace("gap: 60", "gap: 59"));
    commit(&repository);
    folder
}

/// Commits all that lies in the folder, by an author of an odd name.
pub(crate) fn commit(repository: &Repository) {
    let mut index = repository.index().expect("an index");
    index.add_all(["*"], git2::IndexAddOption::DEFAULT, None).expect("all is added");
    index.write().expect("the index is written");
    let tree = index.write_tree().expect("a tree");
    let tree = repository.find_tree(tree).expect("a tree");
    let odd: String = IN_A_NAME.chars().filter(|c| !"<>\n".contains(*c)).collect();
    let by = Signature::now(&odd, "a@example.org").expect("an author");
    let parents = repository.head().ok().map(|head| head.peel_to_commit().expect("a commit"));
    let parents: Vec<_> = parents.iter().collect();
    let told = format!("rigged\n\n{IN_A_NAME}");
    repository.commit(Some("HEAD"), &by, &by, &told, &tree, &parents).expect("a commit");
}

pub(crate) fn put(folder: &Path, path: impl AsRef<Path>, text: impl AsRef<[u8]>) {
    let path = folder.join(path);
    fs::create_dir_all(path.parent().expect("a folder")).expect("a folder");
    fs::write(path, text).expect("a file");
}

fn edit(folder: &Path, path: &str, change: &dyn Fn(String) -> String) {
    let text = fs::read_to_string(folder.join(path)).expect("a text");
    fs::write(folder.join(path), change(text)).expect("a file");
}

/// Puts harm in the place of every word that is nobody's but the club's.
fn with_harm(text: String) -> String {
    let words =
        ["Kittiwake", "Ines Marlow", "Tomas Reyne", "trailer", "light", "after edge", "I.M."];
    words.iter().fold(text, |text, word| {
        let bare = text.replace(&format!(": {word}"), &format!(": \"{HARM}\""));
        bare.replace(&format!("by: {word}"), &format!("by: \"{HARM}\""))
    })
}

#[test]
fn words_that_mean_harm_stand_in_every_place() {
    let folder = committed();
    for path in ["club.yaml", BOAT, "oars/long-ash.yaml", "crews/masters-a.yaml"] {
        edit(folder.path(), path, &with_harm);
    }
    let log = format!(
        "defects:\n  - {{found: 2026-10-03, what: \"{HARM}\", state: unfit}}\n\
         knocks:\n  - {{date: 2026-10-30, what: \"{HARM}\", where: [seat-3, \"{HARM}\"]}}\n\
         bends:\n  - {{date: 2026-10-30, by: \"{HARM}\", seat: 2, part: \"{HARM}\", deg: 2}}\n\
         read-again:\n  - {{date: 2026-10-31, by: \"{HARM}\", values: [\"{HARM}\", seat-1]}}\n\
         \"{HARM}\": 1\n? [{HARM:.3}]\n: x\n# ::error::x ##[error]y\n"
    );
    edit(folder.path(), BOAT, &|text| text.replace("gap: 59", "gap: 55") + &log);
    let waivers = format!(
        "- {{finding: \"{HARM}\", rule: overdue, because: \"{HARM}\", by: \"{HARM}\", until: 2026-11-20}}\n\
         - {{finding: kittiwake/rigged/date, rule: \"{HARM}\", because: \"{HARM}\", by: \"{HARM}\", until: \"{HARM}\", at: 60}}\n"
    );
    put(folder.path(), "waivers.yaml", waivers);
    put(
        folder.path(),
        "classes/odd.yaml",
        format!("class: \"{HARM}\"\nlimits: {{pin-out: {{most: \"{HARM}\"}}}}\n"),
    );
    commit(&Repository::open(folder.path()).expect("a repository"));
    commands::try_all(folder.path());
}

#[test]
fn files_have_names_that_mean_harm() {
    let folder = committed();
    let sound = fs::read_to_string(folder.path().join(BOAT)).expect("a text");
    for (number, name) in IN_A_NAME.split("::error::").enumerate() {
        let name = name.replace('/', "");
        put(folder.path(), format!("boats/{name}{number}.yaml"), &sound);
        put(folder.path(), format!("oars/{name}{number}.yml"), "oar-set: [\n");
        put(folder.path(), format!("{name}{number}.yaml"), "boat: x\n");
    }
    let not_text = std::ffi::OsStr::from_bytes(b"boats/\xff\xfe.yaml");
    put(folder.path(), not_text, &sound);
    commands::try_all(folder.path());
}

#[test]
fn one_word_stands_for_a_thousand_million() {
    let folder = committed();
    let mut bomb = "boat: bomb\na0: &a0 [x, x, x, x, x, x, x, x, x, x]\n".to_owned();
    for level in 1..12 {
        let ten = vec![format!("*a{}", level - 1); 10].join(", ");
        bomb += &format!("a{level}: &a{level} [{ten}]\n");
    }
    put(folder.path(), "boats/bomb.yaml", &bomb);
    edit(folder.path(), BOAT, &|text| format!("{text}all: &all\n  me: *all\n<<: *all\n"));
    edit(folder.path(), "club.yaml", &|text| format!("{text}limits: &l\n  surfboat: *l\n"));
    commands::try_all(folder.path());
}

#[test]
fn lists_lie_in_lists_without_end() {
    let folder = committed();
    let deep = [
        "[".repeat(100_000),
        "{a: ".repeat(50_000),
        "- ".repeat(100_000),
        (0..600).map(|depth| format!("{}a:\n", " ".repeat(depth))).collect(),
        "? ".repeat(50_000),
        format!("boat: x\nseats: {}{}\n", "[".repeat(31), "]".repeat(31)),
    ];
    for (number, text) in deep.iter().enumerate() {
        put(folder.path(), format!("boats/deep-{number}.yaml"), text);
    }
    edit(folder.path(), BOAT, &|text| format!("{text}x: {}\n", "[".repeat(10_000)));
    commands::try_all(folder.path());
}

#[test]
fn numbers_are_larger_than_any_boat() {
    let long = "9".repeat(400);
    let numbers = [
        "1e999",
        "-1e999",
        ".inf",
        "-.inf",
        ".nan",
        "0x7fffffffffffffff",
        "1e-400",
        "-0",
        "18446744073709551616",
        "9007199254740993",
        "1_000",
        "0.0000001",
        "100000",
        "-5",
        &long,
        "1e5 in",
        "23 7/0 in",
        "[60, 1e308, -1e308]",
        "{read: 60, to: 0}",
        "{read: 60, to: 1e300}",
        "11 over 0",
        "90 deg",
        "89.9999 deg",
        "[]",
        "[[60]]",
        "99999999 over 1",
    ];
    let fields = [
        "gap: 59",
        "spread: 792",
        "widest: 52",
        "length: 3860",
        "seat: 2",
        "first: 820",
        "lean: {aft: 0.5",
        "trim: 0.0",
        "catch: 50",
        "stature: 1810",
        "pitch: {catch: 11",
    ];
    let folder = committed();
    let files = [BOAT, "oars/long-ash.yaml", "crews/masters-a.yaml"];
    let sound = files.map(|path| fs::read_to_string(folder.path().join(path)).expect("a text"));
    for (round, number) in numbers.iter().enumerate() {
        for (path, text) in files.iter().zip(&sound) {
            let mut text = text.clone();
            for field in fields.iter().skip(round % 3).step_by(3) {
                let (key, _) = field.rsplit_once(' ').expect("a key and a number");
                text = text.replacen(field, &format!("{key} {number}"), 1 + round % 2);
            }
            put(folder.path(), path, text);
        }
        commands::ask_figures(folder.path());
    }
}

#[test]
fn days_are_no_days() {
    let days = [
        "9999-12-31",
        "0000-00-00",
        "2026-02-30",
        "-2026-10-17",
        "99999-01-01",
        "0001-01-01",
        "\"\"",
        "~",
    ];
    let folder = committed();
    let sound = fs::read_to_string(folder.path().join(BOAT)).expect("a text");
    for day in days {
        let text = sound.replace("2026-10-17", day).replace("2026-09-05", day);
        let log = format!(
            "knocks:\n  - {{date: {day}, what: hit, where: [seat-3]}}\n\
             bends:\n  - {{date: {day}, by: Ines, seat: 2, part: pin, deg: 1e9}}\n\
             read-again:\n  - {{date: {day}, by: Ines, values: [seat-1]}}\n\
             out-of-use: {{since: {day}, by: Ines, because: sand}}\n"
        );
        put(folder.path(), BOAT, text + &log);
        put(
            folder.path(),
            "waivers.yaml",
            format!("- {{finding: kittiwake, rule: overdue, until: {day}}}\n"),
        );
        commands::ask_figures(folder.path());
    }
}

#[test]
#[ignore = "takes a minute; run by name before a change lands"]
fn lines_are_a_mebibyte_long() {
    let folder = committed();
    let long = "x".repeat(1024 * 1024 - 4096);
    edit(folder.path(), BOAT, &|text| text.replace("name: Kittiwake", &format!("name: {long}")));
    put(folder.path(), "boats/comment.yaml", format!("# {long}\nboat: comment\n"));
    put(folder.path(), "boats/key.yaml", format!("boat: key\n{long}: 1\n"));
    put(folder.path(), "boats/more.yaml", format!("boat: more\nname: {long}{long}\n"));
    put(folder.path(), "boats/keys.yaml", "a: 1\n".repeat(100_000));
    commands::ask_figures(folder.path());
}

#[test]
fn files_are_no_files_of_the_book() {
    let folder = committed();
    let link = |to: &str, path: &str| {
        std::os::unix::fs::symlink(to, folder.path().join(path)).expect("a link");
    };
    link("/etc/passwd", "boats/passwd.yaml");
    link("/", "boats/root");
    link("loop.yaml", "boats/loop.yaml");
    link("../..", "boats/up");
    link("/dev/zero", "boats/zero.yaml");
    link("nowhere", "oars/nowhere.yaml");
    link("/dev/zero", "waivers.yaml");
    let made = Command::new("mkfifo").arg(folder.path().join("boats/pipe.yaml")).status();
    assert!(made.expect("mkfifo").success());
    put(folder.path(), "boats/folder.yaml/x.yaml", "boat: x\n");
    commands::try_all(folder.path());
}

#[test]
fn bytes_are_no_text() {
    let folder = committed();
    let all: Vec<u8> = (0..=255).collect();
    let utf_16: Vec<u8> = "\u{feff}boat: x\n".encode_utf16().flat_map(u16::to_le_bytes).collect();
    let pointer = "version https://git-lfs.example/spec/v1\noid sha256:00\nsize 12\n";
    let bytes: [&[u8]; 8] = [
        &all,
        b"\0\0\0",
        b"",
        b"\xef\xbb\xbf",
        &utf_16,
        b"boat: \xff\n",
        b"\xef\xbb\xbfboat: y\r\n",
        pointer.as_bytes(),
    ];
    for (number, bytes) in bytes.iter().enumerate() {
        for kind in ["boats", "oars", "crews", "classes"] {
            put(folder.path(), format!("{kind}/odd-{number}.yaml"), bytes);
        }
        put(folder.path(), "club.yaml", bytes);
        put(folder.path(), "waivers.yaml", bytes);
        commands::ask_figures(folder.path());
    }
    commands::try_all(folder.path());
}

#[test]
fn tiny_files_lie_about_by_the_hundred() {
    let folder = committed();
    for number in 0..200 {
        put(folder.path(), format!("boats/b{number}.yaml"), format!("boat: b{number}\n"));
    }
    commands::ask_all(folder.path());
}
