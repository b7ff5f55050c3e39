//! What stands against a boat, beside her plan: the worst first, no more than has room.

use maud::Markup;
use maud::html;

use crate::reports::aside::aside;
use crate::reports::card::Subject;
use crate::reports::card_words::NOT_AFLOAT;
use crate::reports::card_words::defects;
use crate::reports::card_words::knocks;
use crate::reports::card_words::walk_round;
use crate::reports::drawings::cut;
use crate::reports::html::words;
use crate::reports::verdict::with_letter;
use crate::rules::Finding;
use crate::rules::Level;

/// How many lines of findings have room beside the plan, how many characters one has, and how many
/// lines of what was seen at the boat there are.
const LINES: usize = 15;
const ACROSS: usize = 74;
const SEEN: usize = 3;

/// How many lines the words of a boat out of use take, and one line of what was seen.
const OUT: usize = 4;
const SEEN_LINES: usize = 2;

/// The most characters of one of them.
const LONGEST: usize = 222;

/// Returns what stands against a boat.
pub(super) fn told(subject: &Subject) -> Markup {
    let standing: Vec<&&Finding> =
        subject.findings.iter().filter(|found| found.waived.is_none()).collect();
    let worst = |level| standing.iter().filter(|found| found.level == level).count();
    let counts: Vec<String> = Level::ALL
        .into_iter()
        .filter(|level| worst(*level) > 0)
        .map(|level| counted(worst(level), level))
        .collect();
    let waived = subject.findings.len() - standing.len();
    let stays = subject.boat.boat.out_of_use.is_some() || worst(Level::Danger) > 0;
    let out = subject.boat.boat.out_of_use.is_some();
    let taken = if out { OUT } else { 0 } + SEEN_LINES * seen_lines(subject).len().min(SEEN);
    let told: Vec<&&Finding> = with_room(&standing, LINES.saturating_sub(taken));
    let more = standing.len() - told.len();
    html! {
        div class="told" {
            @if stays { h2 class="stays" { "▲ " (NOT_AFLOAT) } }
            h2 { @if counts.is_empty() { "Nothing found." } @else { "Found: " (counts.join(", ")) }
                @if waived > 0 { " (" (waived) " waived)" } }
            (out_of_use(subject))
            ul { @for found in told { (one(subject, found)) } }
            @if more > 0 { p class="quiet" { b { "and " (more) " more." } } }
            (seen(subject))
            p class="quiet" { "All of it, and what to do: tholebook lint --only "
                (cut(&words(&subject.boat.boat.id.value), 40)) }
        }
    }
}

/// The first ones, as many as have room; one of them always.
fn with_room<'f>(standing: &[&'f &'f Finding], room: usize) -> Vec<&'f &'f Finding> {
    let mut left = room;
    let mut fits = |found: &&&Finding| {
        let signs = aside(found).chars().count() + found.message.chars().count().min(LONGEST) + 12;
        let lines = signs.div_ceil(ACROSS);
        let fits = lines <= left || left == room;
        left = left.saturating_sub(lines);
        fits
    };
    standing.iter().take_while(|found| fits(found)).copied().collect()
}

fn counted(many: usize, level: Level) -> String {
    let plural = matches!(level, Level::Fault | Level::Danger | Level::Note) && many != 1;
    format!("{many} {}{}", level.word(), if plural { "s" } else { "" })
}

fn one(subject: &Subject, found: &Finding) -> Markup {
    let called = subject.boat.boat.called();
    // The page is hers: her name need not stand before each.
    let own =
        found.message.strip_prefix(called).map(|rest| rest.trim_start_matches([':', ',', ' ']));
    let message = own.filter(|rest| !rest.is_empty()).unwrap_or(&found.message);
    let letter = format!("lv-{}", found.level.word());
    html! {
        li class=(letter) {
            b { (with_letter(found.level)) (words(&aside(found))) } ": "
            (shortened(&words(message)))
        }
    }
}

/// What has no room is left out by whole sentences, where the first of them has.
fn shortened(message: &str) -> String {
    let whole = message.chars().count() <= LONGEST;
    let end = message.char_indices().nth(LONGEST).map_or(message.len(), |(at, _)| at);
    match message[..end].rfind(". ") {
        Some(last) if !whole => message[..=last].to_owned(),
        _ => cut(message, LONGEST),
    }
}

fn out_of_use(subject: &Subject) -> Markup {
    let Some(out) = &subject.boat.boat.out_of_use else { return html! {} };
    let since = out.since.map_or(String::new(), |day| format!(" since {}", day.value));
    let because = out.because.as_ref().map_or("no reason given", |because| &because.value);
    html! { p class="out" { b { "Out of use" (since) ": " } (cut(&words(because), LONGEST)) } }
}

fn seen_lines(subject: &Subject) -> Vec<(&'static str, String)> {
    let all = [
        ("Defect", defects(subject)),
        ("Knock", knocks(subject)),
        ("Walk round", walk_round(subject)),
    ];
    all.into_iter()
        .flat_map(|(kind, lines)| lines.into_iter().map(move |line| (kind, line)))
        .collect()
}

/// Defects, knocks and what the walk round found.
fn seen(subject: &Subject) -> Markup {
    let all = seen_lines(subject);
    let more = all.len().saturating_sub(SEEN);
    html! {
        ul class="seen" {
            @for (kind, line) in all.iter().take(SEEN) {
                li { b { (kind) ": " } (cut(&words(line), LONGEST)) }
            }
            @if more > 0 { li { "and " (more) " more" } }
        }
    }
}
