//! The list of questions for a record: its form, in the order of the work.

use super::order;
use super::question::Last;
use super::question::Question;
use super::question::Screen;
use crate::reading;
use crate::reading::Described;
use crate::reading::Field;
use crate::reading::Kind;
use crate::reading::RecordKind;
use crate::writing::editing::Address;
use crate::writing::editing::Meaning;
use crate::writing::editing::Wording;

/// What the questions hang on besides the record's form.
#[derive(Clone, Debug, Default)]
pub struct About {
    /// The seats of a boat, in the order they are measured.
    pub seats: Vec<SeatAbout>,
    /// What is looked at on the walk round.
    pub walk_round: Vec<String>,
    /// The oars of a set.
    pub oars: Vec<String>,
}

/// A seat that is to be measured.
#[derive(Clone, Copy, Debug)]
pub struct SeatAbout {
    /// Its number.
    pub number: u32,
    /// Whether its oar has a round shaft that beds in the rowlock.
    pub is_round: bool,
}

/// Returns the questions for a record of a kind that says `record` so far.
#[must_use]
pub fn questions(kind: RecordKind, record: &Meaning, about: &About) -> Vec<Question> {
    let form = reading::form(kind);
    let asked = Asked { form: &form, record };
    match kind {
        RecordKind::OarSet => asked.of_set(&about.oars),
        _ => asked.of_boat(about),
    }
}

fn is_at_end(name: &str, field: &str) -> bool {
    name == field || name.split_once('/').is_some_and(|(_, rest)| rest == field)
}

struct Asked<'f> {
    form: &'f [Described],
    record: &'f Meaning,
}

impl Asked<'_> {
    fn of_boat(&self, about: &About) -> Vec<Question> {
        let root = Address::root();
        let mut all = self.those(order::DAY, self.form, &root, "", &Screen::Day);
        all.extend(self.those(order::LEVEL, self.form, &root, "", &Screen::Level));
        let seat = part(self.form, "seats");
        for own in &about.seats {
            let at = root.key("seats").part("seat", &own.number.to_string());
            let screen = Screen::Seat(own.number);
            let before = format!("seat-{}/", own.number);
            let mut those = self.those(order::SEAT, seat, &at, &before, &screen);
            those.retain(|question| own.is_round || question.short() != "oar-bed");
            all.extend(those);
        }
        all.extend(self.those(order::WHOLE, self.form, &root, "", &Screen::Whole));
        all.extend(self.walk_round(&about.walk_round));
        all
    }

    fn of_set(&self, oars: &[String]) -> Vec<Question> {
        let root = Address::root();
        let mut all = self.those(order::SET, self.form, &root, "", &Screen::Day);
        let oar = part(self.form, "oars");
        for id in oars {
            let at = root.key("oars").part("oar", id);
            let screen = Screen::Oar(id.clone());
            all.extend(self.those(order::OAR, oar, &at, &format!("{id}/"), &screen));
        }
        all
    }

    /// The questions of some fields, below one place.
    fn those(
        &self,
        fields: &[&str],
        form: &[Described],
        at: &Address,
        before: &str,
        screen: &Screen,
    ) -> Vec<Question> {
        let one = |name: &&str| {
            let described = find(form, name)?;
            let at = name.split('/').fold(at.clone(), |at, key| at.key(key));
            let kind = described.kind.clone();
            Some(self.question(&format!("{before}{name}"), at, described.field, kind, screen))
        };
        fields.iter().filter_map(one).collect()
    }

    /// A question for each item that is looked at on the walk round.
    fn walk_round(&self, items: &[String]) -> Vec<Question> {
        let Some(Described { field, kind: Kind::Free(inner), .. }) =
            find(self.form, "rigged/walk-round")
        else {
            return Vec::new();
        };
        let at = Address::root().key("rigged").key("walk-round");
        let one = |item: &String| {
            let name = format!("rigged/walk-round/{item}");
            self.question(&name, at.key(item), *field, (**inner).clone(), &Screen::Whole)
        };
        items.iter().map(one).collect()
    }

    fn question(
        &self,
        name: &str,
        at: Address,
        field: Field,
        kind: Kind,
        screen: &Screen,
    ) -> Question {
        let text = self.record.get(&at).and_then(written);
        let undated = order::UNDATED.iter().any(|own| is_at_end(name, own));
        let once = order::ONLY_IF_MISSING.iter().any(|own| is_at_end(name, own));
        let measured = match screen {
            Screen::Day => name == "pitch-mark",
            Screen::Level => name.starts_with("rigged/level/"),
            _ => !undated,
        };
        Question {
            name: name.to_owned(),
            at,
            about: field.about,
            kind,
            tool: field.tool,
            screen: screen.clone(),
            is_dated: measured,
            settled: once && text.is_some(),
            last: text.map(|text| Last { text, on: None, by: None }),
            fine: None,
        }
    }
}

/// Returns a value as it is written, unless it says that it was not measured.
pub(super) fn written(meaning: &Meaning) -> Option<String> {
    match meaning {
        Meaning::Empty => None,
        Meaning::Word(text) if text == reading::NOT_MEASURED => None,
        Meaning::Word(text) => Some(text.clone()),
        other => Some(Wording::of(other.clone()).on_one_line()),
    }
}

/// Returns the fields of a part of the list under a key.
fn part<'f>(form: &'f [Described], key: &str) -> &'f [Described] {
    match form.iter().find(|own| own.field.key == key).map(|own| &own.kind) {
        Some(Kind::List(inner, _)) => match &**inner {
            Kind::Section(fields) => fields,
            _ => &[],
        },
        _ => &[],
    }
}

/// Returns the field of a name below a form.
fn find<'f>(form: &'f [Described], name: &str) -> Option<&'f Described> {
    let (key, rest) = name.split_once('/').map_or((name, None), |(key, rest)| (key, Some(rest)));
    let described = form.iter().find(|own| own.field.key == key)?;
    match (rest, &described.kind) {
        (None, _) => Some(described),
        (Some(rest), Kind::Section(fields)) => find(fields, rest),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn names(form: &[Described], before: &str) -> Vec<String> {
        let of = |own: &Described| match &own.kind {
            Kind::Section(fields) => names(fields, &format!("{before}{}/", own.field.key)),
            _ => vec![format!("{before}{}", own.field.key)],
        };
        form.iter().flat_map(of).collect()
    }

    fn all_are_asked(list: &str, kind: RecordKind, asked: &[&str], not_asked: &[&str]) {
        let form = reading::form(kind);
        let known = names(part(&form, list), "");
        let forgotten: Vec<&String> = known
            .iter()
            .filter(|name| !asked.contains(&name.as_str()) && !not_asked.contains(&name.as_str()))
            .collect();
        assert!(forgotten.is_empty(), "neither asked nor left out: {forgotten:?}");
        let unknown =
            asked.iter().chain(not_asked).filter(|name| !known.contains(&(**name).into()));
        assert_eq!(unknown.collect::<Vec<_>>(), Vec::<&&str>::new(), "no field of the form");
    }

    #[test]
    fn every_field_of_a_seat_and_of_an_oar_has_its_place_in_the_order_of_the_work() {
        let (seat, oar) = (order::NOT_ASKED_OF_A_SEAT, order::NOT_ASKED_OF_AN_OAR);
        all_are_asked("seats", RecordKind::Boat, order::SEAT, seat);
        all_are_asked("oars", RecordKind::OarSet, order::OAR, oar);
    }

    #[test]
    fn every_field_asked_of_the_whole_is_in_the_form() {
        let boat = reading::form(RecordKind::Boat);
        for name in [order::DAY, order::LEVEL, order::WHOLE].concat() {
            assert!(find(&boat, name).is_some(), "{name}");
        }
        let set = reading::form(RecordKind::OarSet);
        for name in order::SET {
            assert!(find(&set, name).is_some(), "{name}");
        }
    }
}
