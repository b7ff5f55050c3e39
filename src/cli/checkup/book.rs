//! Whether the book can be read, in which form it is written, and whether the clock can be right.

use std::path::Path;

use super::mend;
use super::unseen;
use super::well;
use crate::cli::book;
use crate::cli::lint::today;
use crate::cli::states::day_of;
use crate::model::Book;
use crate::reading;
use crate::reports::LookedAt;
use crate::store::CLUB_FILE;
use crate::store::Moment;
use crate::store::Repository;
use crate::store::Store;
use crate::store::StoreError;
use crate::units::Date;

const CURE: &str = "set the clock of this machine: every age and every last day hangs on it";

/// How far two clocks may be apart.
const SLACK_SECONDS: i64 = 300;

/// Opens the book and looks at its form.
pub(super) fn opened(given: Option<&Path>, all: &mut Vec<LookedAt>) -> Option<Store> {
    let store = match texts(given) {
        Ok(store) => store,
        Err(error) => {
            all.push(unseen("book", &error));
            return None;
        }
    };
    all.push(if store.absent.is_empty() {
        well("book", "all its files are in the folder")
    } else {
        let said = format!("not in the folder: {}", store.absent.join(", "));
        mend("book", said, "git sparse-checkout disable")
    });
    let club = store.files.iter().filter(|named| named.path == CLUB_FILE).cloned().collect();
    let (club, _) = reading::read(&store.name, club);
    all.push(match club.club.format {
        Some(format) => well("format", &format!("{}, which this program reads", format.value)),
        None => mend(
            "format",
            "club.yaml does not say a format that this program reads",
            "tholebook lint says what is wrong; a newer book needs a newer tholebook",
        ),
    });
    Some(store)
}

/// A repository that is only pushed to has no folder of the book: its own branch stands for it.
fn texts(given: Option<&Path>) -> Result<Store, StoreError> {
    let in_folder = book::opened(given);
    let opened = || match given {
        Some(given) => Repository::around(given).ok(),
        None => Repository::from_environment(None).ok(),
    };
    match in_folder.is_err().then(opened).flatten().filter(Repository::is_bare) {
        Some(bare) => match bare.head()? {
            Some(head) => bare.at(head),
            None => in_folder,
        },
        None => in_folder,
    }
}

/// Looks whether anything was done later than now.
pub(super) fn clock(
    store: Option<Store>,
    repository: Option<&Repository>,
    all: &mut Vec<LookedAt>,
) {
    let newest = match repository.map(Repository::newest).transpose() {
        Ok(newest) => newest.flatten(),
        Err(error) => {
            all.push(unseen("clock", &error));
            return;
        }
    };
    let rigged = store.and_then(|store| {
        let (book, _) = reading::read(&store.name, store.files);
        last_rigged(&book)
    });
    let now = jiff::Timestamp::now().as_second();
    all.push(held(now, today(), newest, rigged));
}

/// Two clocks that are both right agree in a few minutes, and a day begins a day earlier elsewhere.
fn held(now: i64, today: Date, committed: Option<Moment>, rigged: Option<Date>) -> LookedAt {
    let later = committed.filter(|moment| moment.seconds > now + SLACK_SECONDS);
    if let Some(moment) = later {
        let day = day_of(moment).map_or(String::new(), |day| format!(", of {day}"));
        let said = format!("today is {today} here, and there is a commit later than now{day}");
        return mend("clock", said, CURE);
    }
    match rigged.filter(|day| day.days_after(today) > 1) {
        Some(day) => {
            mend("clock", format!("today is {today} here, and a boat was rigged on {day}"), CURE)
        }
        None => well("clock", &format!("today is {today}, and nothing is later")),
    }
}

fn last_rigged(book: &Book) -> Option<Date> {
    book.boats.iter().filter_map(|boat| boat.rigged.date.map(|date| date.value)).max()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::reports::Standing;

    fn day(text: &str) -> Date {
        Date::read(text).expect("a day")
    }

    #[test]
    fn a_clock_before_the_newest_commit_or_the_last_rigging_day_is_wrong() {
        let now = 1_793_491_200;
        let today = day("2026-11-01");
        let commit = |seconds| Some(Moment { seconds, offset_minutes: 0 });
        let held = |committed, rigged| held(now, today, committed, rigged).standing;
        assert_eq!(held(None, None), Standing::Well);
        assert_eq!(held(commit(now + 300), Some(day("2026-11-02"))), Standing::Well);
        assert_eq!(held(commit(now + 301), None), Standing::Mend);
        assert_eq!(held(commit(now - 9), Some(day("2026-11-03"))), Standing::Mend);
    }
}
