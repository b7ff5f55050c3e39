//! Every value of a record as it is written, with its place, who set it last, when it was measured
//! and by whom.

use maud::Markup;
use maud::html;

use super::RecordPast;
use super::SetBy;
use super::Site;
use super::frame;
use crate::history::Key;
use crate::model::FileId;
use crate::model::Written;
use crate::reading::RecordKind;
use crate::reports::html::words;
use crate::reports::place::Places;
use crate::reports::through_time::committed;

/// A part of a record with its values.
struct Part<'p> {
    called: String,
    values: Vec<&'p Written>,
}

pub(super) fn section(site: &Site, kind: RecordKind, id: &str, file: FileId) -> Markup {
    let parts = parts(site, id, file);
    let past = site.past(&Key { kind, id: id.to_owned() });
    let places = Places::new(site.pages.report.book);
    html! {
        section class="every" {
            h2 id="values" { "Every value, where it stands and who set it" }
            p class="quiet" { (words(&whence(site, past))) }
            @for part in &parts {
                (frame::wide(&part.called, &table(site, part, past, &places)))
            }
        }
    }
}

fn whence(site: &Site, past: Option<&RecordPast>) -> String {
    match (&site.pages.past, past) {
        (Err(why), _) => format!("Who set a value is not known: {why}"),
        (Ok(_), None) => {
            "Who set a value is not known: the record is in no commit that can be read.".to_owned()
        }
        (Ok(past), Some(_)) => past.cut.clone().unwrap_or_default(),
    }
}

/// Returns the values of a record by its parts: the record itself, then seat by seat or oar by oar.
fn parts<'p>(site: &Site<'p>, id: &str, file: FileId) -> Vec<Part<'p>> {
    let mut parts: Vec<Part> = Vec::new();
    for written in site.pages.report.book.written_in(file) {
        let name = written.name.as_str();
        if !written.name.is_within(id) || site.keeps(&written.name) {
            continue;
        }
        let below = name.strip_prefix(id).unwrap_or(name).trim_start_matches('/');
        let called = match below.split_once('/') {
            Some((part, _)) => part.replace('-', " "),
            None => "the record itself".to_owned(),
        };
        match parts.iter_mut().find(|part| part.called == called) {
            Some(part) => part.values.push(written),
            None => parts.push(Part { called, values: vec![written] }),
        }
    }
    parts
}

fn table(site: &Site, part: &Part, past: Option<&RecordPast>, places: &Places) -> Markup {
    html! {
        table class="values" {
            caption { (words(&part.called)) }
            thead { tr {
                th scope="col" { "value" } th scope="col" { "as written" }
                th scope="col" { "place" } th scope="col" { "set by" }
                th scope="col" { "measured" }
            } }
            tbody { @for written in &part.values { (line(site, written, past, places)) } }
        }
    }
}

fn line(site: &Site, written: &Written, past: Option<&RecordPast>, places: &Places) -> Markup {
    let name = written.name.as_str();
    let mut below = name.splitn(3, '/').skip(1);
    let called = match (below.next(), below.next()) {
        (Some(_), Some(rest)) => rest,
        (Some(own), None) => own,
        _ => name,
    };
    let file = site.pages.report.book.file(written.place.file);
    let span = &written.place.span;
    let text = file.text.get(span.start..span.end).unwrap_or_default();
    let set = past.and_then(|past| past.set.get(&written.name));
    html! {
        tr {
            th scope="row" { (words(called)) }
            td { (words(text)) }
            td { (words(&places.shown(written.place))) }
            td { (words(&set_by(set))) }
            td { (words(&measured(set))) }
        }
    }
}

/// Ids, and sums that follow from others, are set by nobody that the history tells.
fn set_by(set: Option<&SetBy>) -> String {
    match set.map(|set| &set.made) {
        None => "-".to_owned(),
        Some(None) => "not committed yet".to_owned(),
        Some(Some(made)) => format!("{}, {}, {}", made.author, committed(made), made.short),
    }
}

fn measured(set: Option<&SetBy>) -> String {
    let Some(own) = set.and_then(|set| set.measured.as_ref()) else { return "-".to_owned() };
    let by = own.by.as_ref().map_or(String::new(), |by| format!(" by {by}"));
    format!("{}{by}", own.on)
}
