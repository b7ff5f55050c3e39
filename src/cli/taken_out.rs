//! What stood against a record that is no longer in the book. A danger is not cured by taking its
//! record away: it stands until the record is back, or was out of use before it went.

use super::parting::EarlierBook;
use crate::model::Book;
use crate::model::FileId;
use crate::model::Place;
use crate::model::Span;
use crate::reports::shown;
use crate::rules::Checked;
use crate::rules::Finding;
use crate::rules::Label;
use crate::rules::Level;
use crate::rules::Standing;

const REMEDY: &str = "Put the record back, then put her right or write that she is out of use \
    (out-of-use: since, by, because). What has left the club is taken out in a later change.";

/// Takes what is not cured out of `cured`: its record is gone. Dangers stand on; of the rest it is
/// told which records went. Texts that can't be had here are not gone.
pub(super) fn stand_on(
    cured: &mut Vec<Finding>,
    checked: &mut Checked,
    now: &Book,
    earlier: &EarlierBook,
) -> Vec<String> {
    let gone: Vec<&str> = ids(&earlier.book)
        .filter(|(id, path)| {
            !ids(now).any(|(own, _)| own == *id) && !now.unread.iter().any(|unread| unread == path)
        })
        .map(|(id, _)| id)
        .collect();
    let is_gone = |finding: &Finding| gone.iter().any(|id| finding.name.is_within(id));
    let (went, stayed): (Vec<Finding>, Vec<Finding>) =
        std::mem::take(cured).into_iter().partition(is_gone);
    *cured = stayed;
    let stands = |finding: &&Finding| {
        finding.level == Level::Danger && !finding.shown_only && finding.waived.is_none()
    };
    let dangers = went.iter().filter(stands).map(|finding| still_standing(finding, now));
    checked.also(dangers.collect());
    let told = |id: &&str| shown::line(&format!("{id} is no longer in the book."));
    gone.iter().map(told).collect()
}

/// Returns every boat, oar set and crew with the path of its text.
fn ids(book: &Book) -> impl Iterator<Item = (&str, &str)> {
    let boats = book.boats.iter().map(|boat| &boat.id);
    let sets = book.oar_sets.iter().map(|set| &set.id);
    let crews = book.crews.iter().map(|crew| &crew.id);
    let all = boats.chain(sets).chain(crews);
    all.map(|id| (id.value.as_str(), book.file(id.place.file).path.as_str()))
}

fn still_standing(finding: &Finding, now: &Book) -> Finding {
    let file = now.club.file.unwrap_or(FileId(0));
    let place = Place { file, span: Span { start: 0, end: 0 } };
    Finding {
        message: format!("not in the book any more, and not put right: {}", finding.message),
        remedy: REMEDY.to_owned(),
        labels: vec![Label { place, text: "the record is no longer in this book".to_owned() }],
        standing: Some(Standing::Known),
        ..finding.clone()
    }
}
