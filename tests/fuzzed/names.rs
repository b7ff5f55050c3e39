//! Any name that is asked for, and any name of a file.

use std::ffi::OsStr;
use std::os::unix::ffi::OsStrExt;
use std::path::Path;

use tholebook::reading;
use tholebook::reading::RecordKind;
use tholebook::reading::tree;
use tholebook::reports;
use tholebook::reports::Glyphs;
use tholebook::reports::Look;
use tholebook::reports::Report;
use tholebook::rules;
use tholebook::rules::Check;
use tholebook::store;
use tholebook::store::Named;
use tholebook::units::Date;
use tholebook::writing::addressing::address;
use tholebook::writing::editing::Deed;
use tholebook::writing::editing::Meaning;
use tholebook::writing::editing::Wording;
use tholebook::writing::editing::edited;

const LOOK: Look = Look { width: 80, glyphs: Glyphs::Ascii, colour: false };

const RECORDS: [(RecordKind, &str); 4] = [
    (RecordKind::Boat, include_str!("../../example-club/boats/kittiwake.yaml")),
    (RecordKind::OarSet, include_str!("../../example-club/oars/long-ash.yaml")),
    (RecordKind::Crew, include_str!("../../example-club/crews/masters-a.yaml")),
    (RecordKind::Club, include_str!("../../example-club/club.yaml")),
];

/// Follows the bytes as a name in a record of each kind, and shows them as a file's name.
pub(crate) fn tried(bytes: &[u8]) {
    let name = String::from_utf8_lossy(bytes);
    for (kind, text) in RECORDS {
        let Some(at) = address(kind, &name) else { continue };
        if let Ok(without) = edited(text, &at, &Deed::Remove) {
            assert_ne!(without, text, "{at}");
            let again = edited(&without, &at, &Deed::Remove);
            assert!(again.is_err(), "taken out twice: {at}\n{without}");
        }
        let seven = Wording::word("7");
        if let Ok(set) = edited(text, &at, &Deed::Set(&seven)) {
            // A part of a list that was given another name is found no more.
            let root = tree::read(&set).root.expect("a record");
            if Meaning::of(&root).get(&at).is_some() {
                assert_eq!(edited(&set, &at, &Deed::Set(&seven)).as_ref(), Ok(&set), "{at}");
            }
        }
    }
    told(Path::new(OsStr::from_bytes(bytes)));
}

/// A book that holds a file of this name tells it on lines of printed signs.
fn told(path: &Path) {
    let texts = vec![Named::text(&store::shown(path), "boat: \n")];
    let (book, faults) = reading::read("book", texts);
    let as_of = Date::read("2026-11-01").expect("a day");
    let checked = rules::check(&book, &faults, Check { as_of });
    let report = Report { book: &book, checked: &checked, as_of, only: &[], earlier: None };
    let told = reports::text(&report, LOOK) + &reports::json(&report);
    assert!(!told.chars().any(|sign| sign.is_control() && sign != '\n'), "{told:?}");
}
