//! Every waiver: for what, why, by whom, until when, and whether it counts; those that lapse first
//! stand first.

use maud::Markup;
use maud::html;

use super::Site;
use super::frame;
use super::frame::Frame;
use crate::model::Name;
use crate::model::Placed;
use crate::reports::WaiverRow;
use crate::reports::html::words;

pub(super) fn page(site: &Site) -> Frame {
    let mut rows: Vec<&WaiverRow> = site.pages.waivers.iter().collect();
    rows.sort_by_key(|row| (row.against.is_some(), row.waiver.until.map(|until| until.value)));
    let body = html! {
        @if rows.is_empty() { p { "No waivers: the club lives with nothing that was found." } } @else {
            (frame::wide("Waivers", &table(site, &rows)))
        }
    };
    let below = "What the club lives with for a while. A danger can't be waived.".to_owned();
    Frame { heading: "Waivers".to_owned(), below, body, of_rig: false }
}

fn table(site: &Site, rows: &[&WaiverRow]) -> Markup {
    let heads = ["finding", "rule", "because", "by", "until", "granted at", "counts"];
    html! {
        table class="waivers" {
            caption { "Waivers, the next to lapse first" }
            thead { tr { @for head in heads { th scope="col" { (head) } } } }
            tbody { @for row in rows { (line(site, row)) } }
        }
    }
}

fn line(site: &Site, row: &WaiverRow) -> Markup {
    let waiver = row.waiver;
    let until = waiver.until.map_or("no day that can be read".to_owned(), |until| {
        match until.value.days_after(site.pages.report.as_of) {
            0 => format!("{}, its last day", until.value),
            1 => format!("{}, 1 day left", until.value),
            days if days > 1 => format!("{}, {days} days left", until.value),
            _ => format!("{}, past", until.value),
        }
    });
    let is_kept = waiver.finding.as_ref().is_some_and(|own| site.keeps(&Name::record(&own.value)));
    let at = waiver.at.filter(|_| !is_kept);
    let at = at.map_or("-".to_owned(), |at| format!("{} {}", at.value, unit(site, row)));
    let cells = [
        said(waiver.rule.as_ref()).to_owned(),
        said(waiver.because.as_ref()).to_owned(),
        said(waiver.by.as_ref()).to_owned(),
        until,
        at,
        row.against.map_or("yes".to_owned(), |why| format!("no: {}", site.said(why))),
    ];
    html! {
        tr { th scope="row" { (words(said(waiver.finding.as_ref()))) } @for cell in &cells { td { (words(cell)) } } }
    }
}

/// Returns the unit of the value that a waiver was granted at; nothing where it is found no more.
fn unit(site: &Site, row: &WaiverRow) -> &'static str {
    let (rule, name) = (said(row.waiver.rule.as_ref()), said(row.waiver.finding.as_ref()));
    let mut all = site.pages.report.checked.findings.iter();
    let own = all.find(|own| own.rule.id == rule && own.name.as_str() == name);
    own.and_then(|own| own.value).map_or("", |value| value.unit)
}

fn said(text: Option<&Placed<String>>) -> &str {
    text.map_or("not written", |text| text.value.trim())
}
