//! `start` and `add`: a new book and its records, to the first lint.

use std::fs;
use std::path::Path;
use std::process::Command;
use std::process::Stdio;

use tempfile::TempDir;

use tholebook::reading::Described;
use tholebook::reading::Kind;
use tholebook::reading::RecordKind;
use tholebook::reading::form;

use crate::run::Run;

/// An empty folder to begin books in.
struct Ground(TempDir);

impl Ground {
    fn new() -> Self {
        Self(tempfile::tempdir().expect("a folder"))
    }

    fn run(&self, words: &[&str]) -> Run {
        let mut command = Command::new(env!("CARGO_BIN_EXE_tholebook"));
        Run::of(command.args(words).current_dir(self.0.path()).stdin(Stdio::null()))
    }

    fn start(&self, folder: &str) -> Run {
        self.run(&["start", folder, "--club", "Tarrow Head Boat Club", "--tool", "callipers=0.1"])
    }

    fn add(&self, words: &[&str]) -> Run {
        self.run(&[&["add"], words, &["--book", "book", "--as-of", "2026-11-01"]].concat())
    }

    fn boat(&self, words: &[&str]) -> Run {
        self.add(&[&["boat", "kittiwake", "--by", "Ines Marlow"], words].concat())
    }

    fn text(&self, path: &str) -> String {
        fs::read_to_string(self.0.path().join(path)).expect("a text")
    }

    fn write(&self, path: &str, text: &str) {
        let path = self.0.path().join(path);
        fs::create_dir_all(path.parent().expect("a folder")).expect("a folder");
        fs::write(path, text).expect("a written file");
    }

    /// Every file below a folder, sorted.
    fn files(&self, folder: &str) -> Vec<String> {
        let mut files = Vec::new();
        below(&self.0.path().join(folder), self.0.path(), &mut files);
        files.sort();
        files
    }
}

fn below(folder: &Path, top: &Path, files: &mut Vec<String>) {
    for entry in fs::read_dir(folder).into_iter().flatten() {
        let path = entry.expect("an entry").path();
        if path.is_dir() {
            below(&path, top, files);
        } else {
            files.push(path.strip_prefix(top).expect("below").to_string_lossy().into_owned());
        }
    }
}

#[test]
fn a_book_in_the_folder_where_one_stands_is_begun_here() {
    let ground = Ground::new();
    let start = ground.start(".").ends(0);
    assert!(
        start.out.contains("A book for Tarrow Head Boat Club is begun here.\n"),
        "{}",
        start.out
    );
    assert!(start.out.contains("git init .\n"), "{}", start.out);
}

#[test]
fn a_book_is_begun_filled_and_checked() {
    let ground = Ground::new();
    let start = ground.start("book").ends(0);
    assert!(start.out.contains("A book for Tarrow Head Boat Club is begun in book.\n"));
    assert!(start.out.contains("No server checks it"), "{}", start.out);
    assert!(start.out.contains("It lies in no git repository"), "{}", start.out);
    let club = ground.text("book/club.yaml");
    assert!(
        club.starts_with("# yaml-language-server: $schema=schema/club.schema.json\nlogbook: 1\n")
    );
    assert!(club.contains("  callipers: 0.1\n  rule: 0.5\n"), "{club}");
    let schema = ground.text("book/schema/boat.schema.json");
    assert_eq!(schema, fs::read_to_string("schema/boat.schema.json").expect("a schema"));

    ground.run(&["lint", "book"]).ends(3);
    ground
        .add(&[
            "oars", "long-ash", "--oar", "A1", "--oar", "A2", "--oar", "A3", "--oar", "A4",
            "--oar", "A5",
        ])
        .ends(0);
    let boat = ground
        .boat(&["--first-side", "starboard", "--spare", "A5", "--rigged", "2026-10-31"])
        .ends(0);
    assert_eq!(boat.err, "", "all that must be there is there");
    ground.add(&["crew", "masters-a", "--boat", "kittiwake"]).ends(0);

    let lint = ground.run(&["lint", "book", "--as-of", "2026-11-01", "--format", "brief"]).ends(0);
    assert!(lint.out.contains("not-measured"), "{}", lint.out);
    assert!(lint.out.contains("0 dangers, 0 faults"), "{}", lint.out);
    let card =
        ground.run(&["card", "kittiwake", "--book", "book", "--as-of", "2026-11-01"]).ends(0);
    assert!(card.out.contains("NOT TO GO AFLOAT"), "{}", card.out);
}

#[test]
fn what_a_person_must_still_write_is_named() {
    let ground = Ground::new();
    ground.start("book").ends(0);
    let run = ground.boat(&[]).ends(0);
    let told = "Must still be written in it: kittiwake/oars, kittiwake/rigged/date, \
                kittiwake/rigged/by, kittiwake/seat-1/side, kittiwake/seat-1/oar";
    assert!(run.err.starts_with(told), "{}", run.err);
    let lint = ground.run(&["lint", "book", "--format", "brief"]);
    assert!(lint.out.contains("missing-key"), "{}", lint.out);
}

/// Sections in which a new record says nothing.
const SHUT: [&str; 3] = ["limits", "readings", "worked-out"];

/// Returns every field of a form, the parts of lists that a new record opens included.
fn fields<'f>(form: &'f [Described], all: &mut Vec<&'f Described>) {
    for described in form {
        all.push(described);
        match &described.kind {
            Kind::Section(form) if !SHUT.contains(&described.field.key) => fields(form, all),
            Kind::List(part, _) if ["seats", "oars", "rowers"].contains(&described.field.key) => {
                if let Kind::Section(form) = &**part {
                    fields(form, all);
                }
            }
            _ => {}
        }
    }
}

#[test]
fn every_field_is_there_with_the_sentence_that_says_how_it_is_measured() {
    let ground = Ground::new();
    ground.start("book").ends(0);
    ground.add(&["oars", "ash"]).ends(0);
    ground.boat(&[]).ends(0);
    ground.add(&["crew", "masters", "--boat", "kittiwake"]).ends(0);
    let records = [
        (RecordKind::Boat, "book/boats/kittiwake.yaml"),
        (RecordKind::OarSet, "book/oars/ash.yaml"),
        (RecordKind::Crew, "book/crews/masters.yaml"),
    ];
    for (kind, path) in records {
        let text = ground.text(path);
        let comments: Vec<&str> =
            text.lines().filter_map(|line| line.trim_start().strip_prefix('#')).collect();
        let said = comments.join(" ").split_whitespace().collect::<Vec<_>>().join(" ");
        let form = form(kind);
        let mut all = Vec::new();
        fields(&form, &mut all);
        for Described { field, .. } in all.into_iter().filter(|own| own.field.key != "predicted") {
            let sentence = format!("{}: {}", field.key, field.about);
            assert!(said.contains(&sentence), "{path}: {sentence}");
            let is_key = |line: &str| {
                line.trim_start().trim_start_matches("- ").starts_with(&format!("{}:", field.key))
            };
            assert!(text.lines().any(is_key), "{path}: {}", field.key);
        }
    }
}

#[test]
fn a_boat_takes_sides_and_oars_from_another() {
    let ground = Ground::new();
    ground.start("book").ends(0);
    ground.add(&["oars", "ash"]).ends(0);
    ground.boat(&["--first-side", "port"]).ends(0);
    ground.add(&["boat", "fulmar", "--by", "Ines Marlow", "--seats-from", "kittiwake"]).ends(0);
    let seats = |path: &str| {
        let text = ground.text(path);
        let of_seats = |line: &&str| line.contains("side: ") || line.contains(" oar: ");
        text.lines()
            .filter(|line| !line.contains('#'))
            .filter(of_seats)
            .map(str::to_owned)
            .collect::<Vec<_>>()
    };
    assert_eq!(seats("book/boats/kittiwake.yaml").len(), 8);
    assert_eq!(seats("book/boats/fulmar.yaml"), seats("book/boats/kittiwake.yaml"));
}

#[test]
fn what_can_not_be_added_is_refused_and_nothing_is_written() {
    let ground = Ground::new();
    ground.start("book").ends(0);
    ground.add(&["oars", "ash"]).ends(0);
    ground.boat(&[]).ends(0);
    ground.write("book/boats/tern.yaml", "boat: petrel\n");
    let before = ground.files("book");
    let cases: [(&[&str], &str); 8] = [
        (
            &["boat", "kittiwake", "--by", "I"],
            "There is a boat called kittiwake already: boats/kittiwake.yaml",
        ),
        (&["boat", "tern", "--by", "I"], "There is a file already: boats/tern.yaml"),
        (&["boat", "../tern", "--by", "I"], "`../tern` can't be an id"),
        (&["boat", "yes", "--by", "I"], "`yes` can't be an id"),
        (&["boat", "gull", "--by", "I", "--oars", "ashh"], "Did you mean ash?"),
        (&["boat", "gull", "--by", "I", "--class", "skiff"], "There are: surfboat"),
        (&["boat", "gull", "--by", "I", "--spare", "A9"], "There is no oar called A9."),
        (&["crew", "juniors", "--boat", "kitiwake"], "Did you mean kittiwake?"),
    ];
    for (words, told) in cases {
        let run = ground.add(words).ends(2);
        assert!(run.err.contains(told), "{words:?}: {}", run.err);
        assert_eq!(run.out, "");
    }
    assert_eq!(ground.files("book"), before);
    assert_eq!(ground.text("book/boats/tern.yaml"), "boat: petrel\n");
}

#[test]
fn nothing_that_is_there_is_written_over() {
    let ground = Ground::new();
    ground.write("book/.gitattributes", "*.png binary\n");
    ground.write("book/boats/notes.txt", "mine\n");
    let run = ground.start("book").ends(0);
    assert!(
        run.err.contains(".gitattributes was there already and stays as it is."),
        "{}",
        run.err
    );
    assert_eq!(ground.text("book/.gitattributes"), "*.png binary\n");
    assert_eq!(ground.text("book/boats/notes.txt"), "mine\n");
    let before = ground.text("book/club.yaml");
    for folder in ["book", "book/boats", "book/boats/old/1998"] {
        let again = ground.run(&["start", folder, "--club", "Another"]).ends(2);
        assert!(again.err.contains("There is a book already"), "{folder}: {}", again.err);
    }
    assert_eq!(ground.text("book/club.yaml"), before);
    assert!(!ground.0.path().join("book/boats/old").exists());
}

#[test]
fn without_a_terminal_what_is_needed_must_be_said() {
    let ground = Ground::new();
    let run = ground.run(&["start", "book"]).ends(2);
    assert!(run.err.contains("Give --club NAME"), "{}", run.err);
    let cases = [
        ("callipers=0,2", "that is a decimal comma"),
        ("caliper=1", "Did you mean callipers?"),
        ("callipers", "TOOL=FINENESS"),
        ("level=5 mm", "no unit that is read here"),
    ];
    for (tool, told) in cases {
        let run = ground.run(&["start", "book", "--club", "Tarrow Head", "--tool", tool]).ends(2);
        assert!(run.err.contains(told), "{tool}: {}", run.err);
    }
    assert!(!ground.0.path().join("book").exists());
}

#[test]
fn what_could_not_be_begun_whole_is_taken_away_again() {
    let ground = Ground::new();
    ground.write("book/schema", "a file where a folder belongs\n");
    let run = ground.start("book").ends(3);
    assert!(run.err.contains("the folder book/schema can't be made"), "{}", run.err);
    assert_eq!(ground.files("book"), ["book/schema"]);
    assert!(!ground.0.path().join("book/boats").exists());
}

#[test]
fn in_a_repository_the_recipe_stands_at_its_top_and_names_the_folder() {
    let ground = Ground::new();
    git2::Repository::init(ground.0.path()).expect("a repository");
    let words = ["start", "clubs/tarrow-head", "--club", "Tarrow Head", "--ci"];
    let run = ground.run(&[&words[..], &["github"]].concat()).ends(0);
    assert!(!run.out.contains("no git repository"), "{}", run.out);
    let recipe = ground.text(".github/workflows/book.yml");
    assert!(recipe.contains("tholebook lint clubs/tarrow-head \"$@\""), "{recipe}");
    let attributes = ground.text("clubs/tarrow-head/.gitattributes");
    assert!(attributes.contains("boats/**/*.yaml diff=tholebook merge=tholebook"), "{attributes}");
}
