//! An oar set's page: its oars, which boats carry it, what was found, how it suits every boat.

use maud::Markup;
use maud::html;

use super::Site;
use super::findings;
use super::frame;
use super::frame::Frame;
use super::rowlocks;
use super::values;
use crate::model::Oar;
use crate::model::OarSet;
use crate::model::Reading;
use crate::model::Word;
use crate::reading::RecordKind;
use crate::reports::card_readings::offset;
use crate::reports::card_readings::read;
use crate::reports::html::words;
use crate::units::Length;

pub(super) fn page(site: &Site, set: &OarSet) -> Frame {
    let book = site.pages.report.book;
    let id = &set.id.value;
    let (found, missing) = (site.found.of_record(id), site.found.not_checked_of(id));
    let boats = book.boats.iter().zip(&site.names.boats);
    let carried = boats.filter(|(boat, _)| boat.oars.as_ref().is_some_and(|own| own.value == *id));
    let carried: Vec<_> = carried.collect();
    let body = html! {
        section {
            p { @if carried.is_empty() { "No boat carries this set." } @else { "Carried by "
                @for (at, (boat, page)) in carried.iter().enumerate() {
                    @if at > 0 { ", " } a href=(page) { (words(boat.called())) }
                } "." } }
        }
        section { h2 { "What was found" }
            @if found.is_empty() { p { "Nothing." } }
            (findings::list(site, &found))
            @if !missing.is_empty() { h3 { "Not checked, for want of a reading" } (findings::not_checked(&missing)) }
        }
        section { h2 { "The oars" } @if set.oars.is_empty() { p { "No oar is written." } } @else {
            (frame::wide("The oars", &table(set))) } }
        (rowlocks::of_set(site, set))
        (super::changes::last_days(site, RecordKind::OarSet, id))
        (values::section(site, RecordKind::OarSet, id, set.file))
    };
    let below = format!("oar set, {} oars", set.oars.len());
    Frame { heading: id.clone(), below, body, of_rig: true }
}

fn table(set: &OarSet) -> Markup {
    let heads = [
        "oar",
        "length, mm",
        "inboard, mm",
        "widest, mm",
        "narrowest, mm",
        "own pitch",
        "state",
        "defects",
    ];
    html! {
        table class="oars" {
            caption { "Lengths in mm, as read" }
            thead { tr { @for head in heads { th scope="col" { (head) } } } }
            tbody { @for oar in &set.oars { (line(oar)) } }
        }
    }
}

fn line(oar: &Oar) -> Markup {
    let length = |reading: Option<&Reading<Length>>| {
        read(reading).unwrap_or_else(|| "not measured".to_owned())
    };
    let cells = [
        length(oar.length.as_ref()),
        length(oar.inboard.as_ref()),
        length(oar.shaft.widest()),
        length(oar.shaft.narrowest()),
        offset(oar.pitch.as_ref()).unwrap_or_else(|| "not measured".to_owned()),
        oar.state.map_or("not said", |state| state.value.word()).to_owned(),
        defects(oar),
    ];
    html! {
        tr { th scope="row" { (words(oar.called())) } @for cell in cells { td { (words(&cell)) } } }
    }
}

fn defects(oar: &Oar) -> String {
    let each = oar.defects.iter().map(|defect| {
        let what = defect.what.as_ref().map_or("not said", |what| &what.value);
        let right = defect.put_right.as_ref().is_some_and(|right| right.missing().is_empty());
        format!("{what}, {}", if right { "put right" } else { "open" })
    });
    let each: Vec<String> = each.collect();
    if each.is_empty() { "none written".to_owned() } else { each.join("; ") }
}
