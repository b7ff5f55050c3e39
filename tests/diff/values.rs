//! The values of a book, free of how they are written.

use tholebook::history;
use tholebook::history::Likeness;
use tholebook::history::RecordValues;
use tholebook::history::Value;
use tholebook::model::Book;
use tholebook::model::Name;
use tholebook::reading;
use tholebook::reading::RecordKind;
use tholebook::store::Named;

fn read(text: &str) -> Book {
    reading::read("book", vec![Named::text("boats/tern.yaml", text)]).0
}

fn named(below: &str) -> Name {
    Name::record("tern").at(below)
}

fn likeness(old: &str, new: &str) -> Likeness {
    let gap = |text: &str| read(&format!("boat: tern\nseats:\n- {{seat: 1, {text}}}\n"));
    let (old, new) = (gap(old), gap(new));
    let values = |book| history::of_record(book, RecordKind::Boat, "tern").expect("a boat");
    let (old, new): (RecordValues, RecordValues) = (values(&old), values(&new));
    history::same(&old.values[0], &new.values[0])
}

#[test]
fn a_number_is_compared_by_what_it_says() {
    let gap = |old: &str, new: &str| {
        likeness(&format!("rowlock: {{gap: {old}}}"), &format!("rowlock: {{gap: {new}}}"))
    };
    for (old, new) in [("58", "\"58\""), ("58", "+58"), ("60 mm", "60mm"), ("[58, 59]", "[59, 58]")]
    {
        assert_eq!(gap(old, new), Likeness::Same, "{old} {new}");
    }
    for (old, new) in [("58", "58.0"), ("[58, 59]", "[59.0, 58]")] {
        assert_eq!(gap(old, new), Likeness::PrecisionOnly, "{old} {new}");
    }
    for (old, new) in [("58", "5.8 cm"), ("58", "0.058 m"), ("25.4", "1 in"), ("58", "58 mm")] {
        assert_eq!(gap(old, new), Likeness::UnitOnly, "{old} {new}");
    }
    assert_eq!(gap("58", "[58, 58.0]"), Likeness::ReadOften);
    for (old, new) in
        [("58", "59"), ("58", "58.0000001"), ("58", "[58, 59]"), ("[58, 60]", "[57, 61]")]
    {
        assert_eq!(gap(old, new), Likeness::Changed, "{old} {new}");
    }
    assert_eq!(gap("58", "fifty"), Likeness::Unread);
    assert_eq!(gap("fifty", "fifty"), Likeness::Unread);
}

#[test]
fn a_slope_is_compared_with_what_it_was_taken_over() {
    let lean = |old: &str, new: &str| {
        likeness(
            &format!("pin: {{lean: {{aft: {old}}}}}"),
            &format!("pin: {{lean: {{aft: {new}}}}}"),
        )
    };
    assert_eq!(lean("11 over 176", "11.0 over 176"), Likeness::PrecisionOnly);
    assert_eq!(lean("11 over 176", "1.1 cm over 176"), Likeness::UnitOnly);
    assert_eq!(lean("11 over 176", "11 over 150"), Likeness::Changed);
    assert_eq!(lean("11", "11 deg"), Likeness::Changed);
}

#[test]
fn a_text_is_compared_word_by_word() {
    assert_eq!(likeness("note: a  b", "note: \"a b\""), Likeness::Same);
    assert_eq!(likeness("note: a b", "note: ab"), Likeness::Changed);
}

fn groups(values: &[Value]) -> Vec<String> {
    let mut names = Vec::new();
    for value in values {
        if names.last().is_none_or(|(group, _)| *group != value.group) {
            names.push((value.group.clone(), value.name.to_string()));
        }
    }
    names.into_iter().map(|(_, name)| name).collect()
}

#[test]
fn two_knocks_of_one_day_are_two_and_a_list_is_one_value() {
    let text = "boat: tern\nknocks:\n- {date: 2026-10-18, what: surf, where: [seat-1, seat-3]}\n\
                - {date: 2026-10-18, what: gate}\n- {date: 2026-10-18}\n";
    let book = read(text);
    let record = history::of_record(&book, RecordKind::Boat, "tern").expect("a boat");
    let day = "tern/knocks/2026-10-18/date";
    assert_eq!(groups(&record.values), [day, day, day]);
    let place = record.get(&named("knocks/2026-10-18/where")).expect("where");
    assert_eq!(place.text(), "seat-1, seat-3");
}

#[test]
fn what_follows_and_what_only_names_is_left_out() {
    let text =
        "boat: tern\nclass: surfboat\nseats:\n- {seat: 1, oar: A1, worked-out: {gearing: 2}}\n";
    let book = read(text);
    let record = history::of_record(&book, RecordKind::Boat, "tern").expect("a boat");
    let names: Vec<&str> = record.values.iter().map(|value| value.name.as_str()).collect();
    assert_eq!(names, ["tern/class", "tern/seat-1/oar"]);
}

#[test]
fn a_value_knows_when_it_was_last_measured_and_by_whom() {
    let text = "boat: tern\nrigged: {date: 2026-10-17, by: I.M.}\nseats:\n\
                - {seat: 1, oar: A1, seat-mark: 60, rowlock: {gap: 58}}\n\
                read-again:\n- {date: 2026-10-24, by: T.R., values: [seat-1/rowlock]}\n";
    let book = read(text);
    let record = history::of_record(&book, RecordKind::Boat, "tern").expect("a boat");
    let last = |below: &str| {
        let value = record.get(&named(below)).expect("a value");
        value.measured.as_ref().map(|last| (last.on.to_string(), last.by.clone()))
    };
    let by = |who: &str| Some(who.to_owned());
    assert_eq!(last("seat-1/rowlock/gap"), Some(("2026-10-24".to_owned(), by("T.R."))));
    assert_eq!(last("seat-1/seat-mark"), Some(("2026-10-17".to_owned(), by("I.M."))));
    assert_eq!(last("seat-1/oar"), None);
}

#[test]
fn a_limit_switched_off_is_a_value() {
    let text = "boat: tern\nlimits: {pitch: none}\n";
    let book = read(text);
    let record = history::of_record(&book, RecordKind::Boat, "tern").expect("a boat");
    assert_eq!(record.get(&named("limits/pitch")).expect("a value").text(), "none");
}
