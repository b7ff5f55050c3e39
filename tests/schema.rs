//! The schemas in `schema/` are those of the program, and judge a record as the reader does.
//! `SCHEMA=write cargo test --test schema` writes them anew.
//!
//! The schemas are judged by the crate `jsonschema`, the records read by `serde_yaml`: neither
//! knows our reader.

mod schema_records;

use std::path::Path;
use std::sync::LazyLock;

use jsonschema::Validator;
use proptest::prelude::*;
use schema_records::BROKEN;
use schema_records::ONLY_THE_READER_REFUSES;
use schema_records::SOUND;
use schema_records::Written;
use schema_records::boat;
use schema_records::seat;
use serde_json::Value;
use tholebook::reading;
use tholebook::reading::RecordKind;
use tholebook::reports::schema;
use tholebook::reports::schema_file;
use tholebook::store::Named;

fn json(kind: RecordKind) -> Value {
    serde_json::from_str(&schema(kind)).expect("the schema is JSON")
}

/// Returns what judges by the schema of a kind, made once for all tests.
fn validator(kind: RecordKind) -> &'static Validator {
    static ALL: LazyLock<Vec<(RecordKind, Validator)>> = LazyLock::new(|| {
        let options = jsonschema::options().should_validate_formats(true);
        let made = |kind| options.build(&json(kind)).expect("the schema is a schema");
        RecordKind::ALL.map(|(kind, _)| (kind, made(kind))).into()
    });
    let found = ALL.iter().find(|(own, _)| *own == kind);
    &found.expect("every kind is in the list").1
}

fn yaml(text: &str) -> Value {
    serde_yaml::from_str(text).unwrap_or_else(|fault| panic!("{fault}:\n{text}"))
}

/// Returns what the schema objects to.
fn objections(validator: &Validator, text: &str) -> Vec<String> {
    let record = yaml(text);
    let told = validator.iter_errors(&record);
    told.map(|error| format!("{}: {error}", error.instance_path())).collect()
}

/// Returns what the reader objects to.
fn faults(kind: RecordKind, text: &str) -> Vec<String> {
    let path = match kind {
        RecordKind::Club => "club.yaml",
        RecordKind::Waiver => "waivers.yaml",
        _ => "a-record.yaml",
    };
    let (_, faults) = reading::read("a-book", vec![Named::text(path, text)]);
    faults.into_iter().map(|fault| format!("{}: {}", fault.name, fault.what)).collect()
}

#[test]
fn the_schemas_in_the_folder_are_those_of_the_program() {
    for (kind, _) in RecordKind::ALL {
        let path = format!("schema/{}", schema_file(kind));
        let new = schema(kind);
        if std::env::var_os("SCHEMA").is_some_and(|word| word == "write") {
            std::fs::write(&path, &new).expect("the schema can be written");
        }
        let old = std::fs::read_to_string(&path).unwrap_or_default();
        assert!(old == new, "SCHEMA=write cargo test --test schema writes {path} anew");
    }
}

#[test]
fn each_schema_is_one_of_draft_2020_12_and_says_yaml_1_2() {
    for (kind, word) in RecordKind::ALL {
        let schema = json(kind);
        assert_eq!(schema["$schema"], "https://json-schema.org/draft/2020-12/schema");
        assert_eq!(schema["$id"], format!("{word}.schema.json"));
        if let Err(error) = jsonschema::draft202012::meta::validate(&schema) {
            panic!("{word}: {}: {error}", error.instance_path());
        }
        let description = schema["description"].as_str().expect("a description");
        assert!(description.contains("YAML 1.2"), "{word}: {description}");
    }
}

#[test]
fn a_schema_that_is_none_is_seen() {
    let mut schema = json(RecordKind::Boat);
    schema["properties"] = Value::from("fields");
    assert!(!jsonschema::draft202012::meta::is_valid(&schema));
}

#[test]
fn a_field_says_how_it_is_measured_in_what_unit_and_within_what() {
    let boat = json(RecordKind::Boat);
    let fields = &boat["properties"]["seats"]["items"]["properties"];
    let said = |field: &Value| field["description"].as_str().expect("a description").to_owned();
    let gap = said(&fields["rowlock"]["properties"]["gap"]);
    assert!(gap.starts_with("smallest clear width between the horns anywhere"), "{gap}");
    assert!(gap.ends_with("square to them; mm, or with its unit, 0.1 to 100000"), "{gap}");
    let trim = said(&boat["properties"]["rigged"]["properties"]["level"]["properties"]["trim"]);
    assert_eq!(trim, "along the boat; bow up is positive; deg, -45 to 45");
    assert_eq!(
        boat["properties"]["seats"]["items"]["required"],
        serde_json::json!(["seat", "side", "oar"])
    );
}

/// Returns the kind of record that a file of a book holds, by its folder.
fn kind_of(path: &Path) -> RecordKind {
    let name = |path: &Path| path.file_name().expect("a name").to_string_lossy().into_owned();
    match (&*name(path), &*name(path.parent().expect("a folder"))) {
        ("club.yaml", _) => RecordKind::Club,
        ("waivers.yaml", _) => RecordKind::Waiver,
        (_, "boats") => RecordKind::Boat,
        (_, "oars") => RecordKind::OarSet,
        (_, "crews") => RecordKind::Crew,
        (_, "classes") => RecordKind::Class,
        _ => panic!("{}: what is this?", path.display()),
    }
}

#[test]
fn every_file_of_the_sound_book_and_of_the_example_club_is_valid() {
    let mut seen = Vec::new();
    for book in ["example-club", "tests/data/sound-book", "src/reading/classes"] {
        let entries = walkdir::WalkDir::new(book).into_iter();
        let entries = entries.map(|entry| entry.expect("an entry").into_path());
        for path in entries.filter(|path| path.extension().is_some_and(|end| end == "yaml")) {
            let text = std::fs::read_to_string(&path).expect("a text");
            let kind = kind_of(&path);
            let told = objections(validator(kind), &text);
            assert!(told.is_empty(), "{}: {told:#?}", path.display());
            seen.push(kind);
        }
    }
    for (kind, word) in RecordKind::ALL {
        assert!(seen.contains(&kind), "no file of {word} was looked at");
    }
}

#[test]
fn what_is_broken_is_refused_by_schema_and_reader_alike() {
    assert!(BROKEN.len() >= 30);
    for (what, record) in BROKEN {
        let Written { kind, text } = record.written();
        let told = objections(validator(kind), &text);
        assert!(!told.is_empty(), "the schema takes {what}:\n{text}");
        let told = faults(kind, &text);
        assert!(!told.is_empty(), "the reader takes {what}:\n{text}");
    }
}

#[test]
fn what_is_sound_is_taken_by_schema_and_reader_alike() {
    for record in SOUND {
        let Written { kind, text } = record.written();
        let told = objections(validator(kind), &text);
        assert!(told.is_empty(), "the schema refuses:\n{text}{told:#?}");
        let told = faults(kind, &text);
        assert!(told.is_empty(), "the reader refuses:\n{text}{told:#?}");
    }
}

/// A schema sees what YAML has made of the text, one file at a time and one value at a time.
#[test]
fn what_a_schema_cannot_see_is_known_and_refused_by_the_reader() {
    for (what, record) in ONLY_THE_READER_REFUSES {
        let Written { kind, text } = record.written();
        let told = objections(validator(kind), &text);
        assert!(told.is_empty(), "the schema sees {what} now: move it to the broken ones:\n{text}");
        let told = faults(kind, &text);
        assert!(!told.is_empty(), "the reader takes {what}:\n{text}");
    }
}

/// Asks schema and reader about a value in quotes, and fails where they differ.
fn agree(text: &str) -> Result<(), TestCaseError> {
    let told = objections(validator(RecordKind::Boat), text);
    let faults = faults(RecordKind::Boat, text);
    prop_assert_eq!(told.is_empty(), faults.is_empty(), "{}{:?}\n{:?}", text, told, faults);
    Ok(())
}

// Figures stay small: a bound in another unit is the reader's alone.
proptest! {
    #![proptest_config(ProptestConfig { cases: 100, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn schema_and_reader_agree_on_any_length(
        value in "[+−-]?[0-9]{0,2}([.,/ ][0-9]{0,2})?( ?(mm|cm|m|in|ft|deg|MM))?"
    ) {
        agree(&seat(&format!("seat-mark: \"{}\"", value.trim())))?;
    }

    #[test]
    fn schema_and_reader_agree_on_any_fraction_of_an_inch(
        value in "[+-]?([0-9]{0,2} )?[0-9]{0,2}/[0-9]{0,2} ?(in|mm)?"
    ) {
        prop_assume!(!value.contains("/0"));
        agree(&seat(&format!("seat-mark: \"{}\"", value.trim())))?;
    }

    #[test]
    fn schema_and_reader_agree_on_any_length_above_nothing(
        value in "[+-]?[1-9][0-9]?[.]?[0-9]{0,2}( ?(mm|cm))?"
    ) {
        agree(&seat(&format!("rowlock: {{gap: \"{value}\"}}")))?;
    }

    #[test]
    fn schema_and_reader_agree_on_any_slope(
        value in "[+-]?[1-8]?[0-9]([.][0-9]?)?( ?(mm|deg|°))?( over [+-]?[0-9]{1,2}( ?(mm|deg))?)?"
    ) {
        agree(&seat(&format!("pin: {{lean: {{aft: \"{value}\"}}}}")))?;
    }

    #[test]
    fn schema_and_reader_agree_on_any_count(value in "[+-]?[0-9]{0,2}[.]?[0-9]?%?") {
        agree(&boat(&format!("foot-holes: {{count: \"{value}\"}}")))?;
    }

    #[test]
    fn schema_and_reader_agree_on_any_id(
        value in "[A-Za-z0-9-]{1,3}|[yY][eE][sS]|nul+|[a-z_.é][a-z_. é]?[a-z]"
    ) {
        agree(&seat(&format!("oar: \"{value}\"")))?;
    }

    #[test]
    fn schema_and_reader_agree_on_any_day(
        value in "[0-9]{4}-[01][0-9]-[0-3][0-9]|[0-9]{2}(00|[0-9]{2})-02-29|[0-9]{1,4}-?[0-9]{1,2}"
    ) {
        agree(&boat(&format!("level-mark: {{found-afloat: \"{value}\"}}")))?;
    }
}
