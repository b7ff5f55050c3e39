//! Any word set in a whole record, and any text with its values taken out.

use tholebook::reading::tree;
use tholebook::writing::editing::Address;
use tholebook::writing::editing::Deed;
use tholebook::writing::editing::Wording;
use tholebook::writing::editing::edited;

use crate::checking::RECORDS;
use crate::checking::check;
use crate::checking::places_of;

/// How many values of a text are taken out one by one.
const TRIED: usize = 40;

/// Takes the first bytes for the place of an edit in a record, the rest for the word; then all for a
/// text that is edited itself.
pub(crate) fn tried(bytes: &[u8]) {
    if let [record, first, second, deed, word @ ..] = bytes {
        let text = RECORDS[usize::from(*record) % RECORDS.len()];
        let places = places_of(text);
        let place = usize::from(*first) * 256 + usize::from(*second);
        let word = String::from_utf8_lossy(word);
        check(text, &places[place % places.len()], &word, usize::from(*deed) % 4);
    }
    edited_itself(&String::from_utf8_lossy(bytes));
}

fn edited_itself(text: &str) {
    let read = tree::read(text);
    if !read.faults.is_empty() || read.root.is_none() {
        let set = edited(text, &Address::root().key("x"), &Deed::Set(&Wording::word("7")));
        assert!(set.is_err(), "a text with faults was edited: {text:?}");
        return;
    }
    for at in places_of(text).iter().take(TRIED) {
        for deed in [Deed::Remove, Deed::Set(&Wording::word("7"))] {
            let Ok(after) = edited(text, at, &deed) else { continue };
            let faults = tree::read(&after).faults;
            assert!(faults.is_empty(), "{at} of {text:?}: {after:?} {faults:?}");
        }
    }
}
