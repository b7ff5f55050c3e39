//! The first page: every boat with how she stands, her last rigging day, whether she is overdue or
//! out of use; the oar sets and the crews; what was found of the book as a whole.

use maud::Markup;
use maud::html;

use super::Site;
use super::findings;
use super::frame;
use super::frame::Frame;
use super::marks;
use super::standing::Standing;
use super::standing::Stands;
use crate::model::Boat;
use crate::model::OutOfUse;
use crate::model::Placed;
use crate::reports::AtCommit;
use crate::reports::Made;
use crate::reports::html::words;
use crate::reports::said::ago;

/// A boat's row.
struct Row<'p> {
    standing: Standing<'p>,
    page: &'p str,
}

pub(super) fn page(site: &Site) -> Frame {
    let report = &site.pages.report;
    let boats = report.book.boats.iter().zip(&site.names.boats);
    let mut rows: Vec<Row> =
        boats.map(|(boat, page)| Row { standing: Standing::of(site, boat), page }).collect();
    rows.sort_by(|one, other| {
        let key = |row: &Row| {
            (std::cmp::Reverse(row.standing.stands()), row.standing.boat.called().to_owned())
        };
        key(one).cmp(&key(other))
    });
    let below =
        format!("{} as of {}. {}", summary(&rows), report.as_of, committed(&site.pages.commit));
    Frame { heading: "Fleet".to_owned(), below, body: body(site, &rows), of_rig: true }
}

fn summary(rows: &[Row]) -> String {
    let count =
        |asked: fn(&Standing) -> bool| rows.iter().filter(|row| asked(&row.standing)).count();
    let boats = if rows.len() == 1 { "1 boat".to_owned() } else { format!("{} boats", rows.len()) };
    let stays = count(|own| own.stands() >= Stands::Danger);
    let out = count(|own| own.stands() == Stands::OutOfUse);
    let (outside, open) = (
        count(|own| own.stands() == Stands::Fault),
        count(|own| own.stands() == Stands::NotAllKnown),
    );
    let overdue = count(|own| own.is_overdue());
    format!(
        "{boats}: {stays} not to go afloat ({out} out of use), {outside} outside her limits, {open} not all known of, {overdue} overdue,"
    )
}

fn committed(commit: &AtCommit) -> String {
    let made = |made: &Made| {
        let day = made.committed_on.map_or(String::new(), |day| format!(" of {day}"));
        format!("{}{day} by {}", made.short, made.author)
    };
    match commit {
        AtCommit::None => {
            "The book lies in no git repository that can be read: who set what is not known."
                .to_owned()
        }
        AtCommit::NotYet => "Nothing is committed yet.".to_owned(),
        AtCommit::At(at) => format!("Commit {}.", made(at)),
        AtCommit::ChangedSince(last) => {
            format!("NOT COMMITTED: the files differ from the last commit, {}.", made(last))
        }
    }
}

fn body(site: &Site, rows: &[Row]) -> Markup {
    html! {
        (missing(site))
        @if rows.is_empty() { p { b { "No boat in this book can be read." } } } @else {
            (frame::wide("Boats", &table(site, rows)))
        }
        (records(site))
        @let elsewhere = site.found.elsewhere();
        @if !elsewhere.is_empty() {
            section { h2 { "Found in the book as a whole" } (findings::list(site, elsewhere)) }
        }
        section { h2 { "The marks" } (legend()) }
    }
}

/// What could not be had or read leaves everything below it open.
fn missing(site: &Site) -> Markup {
    let pages = site.pages;
    let unread = pages.faults.len();
    html! {
        @if unread > 0 { p class="warning" {
            (marks::shape(crate::rules::Level::Unsure)) " " b { (unread) @if unread == 1 { " thing" } @else { " things" } " in this book can't be read: " }
            "what is told below may not be all. tholebook lint tells each." } }
        @if !pages.missing.is_empty() { p class="warning" {
            b { "Not here, or not merged: " } (words(&pages.missing.join(", "))) } }
    }
}

fn table(site: &Site, rows: &[Row]) -> Markup {
    html! {
        table class="fleet" {
            caption { "Boats, those that are not to go afloat first" }
            thead { tr {
                th scope="col" { "boat" } th scope="col" { "how she stands" }
                th scope="col" { "last rigged" } th scope="col" { "overdue" }
                th scope="col" { "out of use" }
            } }
            tbody { @for row in rows { (line(site, row)) } }
        }
    }
}

fn line(site: &Site, row: &Row) -> Markup {
    let (standing, boat) = (&row.standing, row.standing.boat);
    html! {
        tr {
            th scope="row" { a href=(row.page) { (words(boat.called())) }
                @if boat.called() != boat.id.value { " " span class="quiet" { (words(&boat.id.value)) } } }
            td { (stands(standing.stands())) " " span class="quiet" { (standing.counts()) } }
            td { (rigged(site, boat)) }
            td { (overdue(standing)) }
            td { @match &boat.out_of_use { Some(out) => { (words(&out_of_use(out))) } None => { "no" } } }
        }
    }
}

/// Returns how a boat stands, as mark and words.
pub(super) fn stands(stands: Stands) -> Markup {
    match stands.level() {
        None => html! { b { (stands.words()) } },
        Some(level) => html! {
            b class={ "lv lv-" (level.word()) } {
                span aria-hidden="true" { (marks::shape(level)) } " " (stands.words())
            }
        },
    }
}

/// Overdue can only be told of a boat whose days are known and whose age has a limit.
fn overdue(standing: &Standing) -> Markup {
    let unknown = standing.boat.rigged.date.is_none()
        || standing.not_checked.iter().any(|own| own.rule == "overdue");
    match (standing.is_overdue(), unknown) {
        (true, _) => html! { b { "overdue" } },
        (false, true) => html! { span class="quiet" { "not known" } },
        (false, false) => html! { "no" },
    }
}

fn rigged(site: &Site, boat: &Boat) -> String {
    let Some(day) = boat.rigged.date else { return "not known".to_owned() };
    format!("{} ({})", day.value, ago(site.pages.report.as_of.days_after(day.value)))
}

/// Returns since when, by whom and why a boat is out of use.
pub(super) fn out_of_use(out: &OutOfUse) -> String {
    let said = |text: &Option<Placed<String>>| {
        text.as_ref().map_or("not said".to_owned(), |text| text.value.clone())
    };
    let since = out.since.map_or("not said".to_owned(), |day| day.value.to_string());
    format!("since {since}, by {}: {}", said(&out.by), said(&out.because))
}

fn records(site: &Site) -> Markup {
    let book = site.pages.report.book;
    html! {
        @if !book.oar_sets.is_empty() { section { h2 { "Oar sets" } ul class="links" {
            @for (set, page) in book.oar_sets.iter().zip(&site.names.sets) {
                li { a href=(page) { (words(&set.id.value)) } }
            }
        } } }
        @if !book.crews.is_empty() { section { h2 { "Crews" } ul class="links" {
            @for (crew, page) in book.crews.iter().zip(&site.names.crews) {
                li { a href=(page) { (words(&crew.id.value)) } }
            }
        } } }
    }
}

fn legend() -> Markup {
    use crate::rules::Level;
    let about = |level: Level| match level {
        Level::Danger => "she does not go afloat until it is put right",
        Level::Fault => "outside a limit, and that is sure",
        Level::Unsure => "too close to call, or not known: measure again",
        Level::Note => "worth knowing",
    };
    html! {
        ul { @for level in [Level::Danger, Level::Fault, Level::Unsure, Level::Note] {
            li { (marks::level(level)) ": " (about(level)) }
        } }
    }
}
