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
use crate::model::Word;
use crate::reading::RecordKind;
use crate::reports::card_readings::good_to;
use crate::reports::card_readings::offset;
use crate::reports::card_readings::read;
use crate::reports::html::words;
use crate::reports::said::value;
use crate::working::OarSight;
use crate::working::Tools;

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
            (frame::wide("The oars", &table(site, set))) } }
        (rowlocks::of_set(site, set))
        (super::changes::last_days(site, RecordKind::OarSet, id))
        (values::section(site, RecordKind::OarSet, id, set.file))
    };
    let last = super::changes::last(site, RecordKind::OarSet, id);
    let below = format!("oar set, {} oars · {last}", set.oars.len());
    Frame { heading: id.clone(), below, body, of_rig: true }
}

fn table(site: &Site, set: &OarSet) -> Markup {
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
            caption { "As read, ± how good it is" }
            thead { tr { @for head in heads { th scope="col" { (head) } } } }
            tbody { @for oar in &set.oars { (line(site, oar)) } }
        }
    }
}

fn line(site: &Site, oar: &Oar) -> Markup {
    let sight = OarSight { tools: Tools::of_club(site.pages.report.book), oar };
    let cells = [
        good_to(read(oar.length.as_ref()), &sight.length(), 1),
        good_to(read(oar.inboard.as_ref()), &sight.inboard(), 1),
        good_to(read(oar.shaft.widest()), &sight.widest(), 1),
        good_to(read(oar.shaft.narrowest()), &sight.narrowest(), 1),
        own_pitch(&sight),
        oar.state.map_or("not said", |state| state.value.word()).to_owned(),
        defects(oar),
    ];
    html! {
        tr { th scope="row" { (words(oar.called())) } @for cell in cells { td { (words(&cell)) } } }
    }
}

/// An offset is good to what the angle worked out from it is: both are told.
fn own_pitch(sight: &OarSight) -> String {
    let read = offset(sight.oar.pitch.as_ref());
    match read.as_deref() {
        Some(own) if !own.ends_with("deg") => {
            format!("{own} mm: {}", value(&sight.own_pitch(), 2, "deg"))
        }
        _ => good_to(read, &sight.own_pitch(), 2),
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
