//! The gap is set on the after horn, after the pitch; a horn that hooks is brought abaft its shank.

use super::bench::Bench;
use super::bench::is_not_shown;
use super::bench::is_proven;
use super::bench::set_length;
use super::step::Step;
use super::step::Work;
use crate::model::BentPart;
use crate::model::LimitKey;
use crate::model::Part;
use crate::model::Reading;
use crate::rules::Finding;
use crate::rules::words;
use crate::working::SeatSight;

/// Tenths of a millimetre: what callipers are read to and amounts are told in.
const TENTHS: f64 = 10.0;

/// Takes up the rounding of binary numbers when an amount is rounded to tenths.
const GRAIN: f64 = 1e-6;

/// The gap of a seat before its forward horn is bent.
#[derive(Clone, Copy)]
pub(super) struct Before {
    gap: Option<f64>,
    /// Whether it was proven too tight.
    short: bool,
}

/// Returns the gaps as they are before the forward horns are bent.
pub(super) fn before(bench: &Bench) -> Vec<Before> {
    let of = |at: usize| Before {
        gap: bench.boat().seats[at].rowlock.gap.as_ref().map(Reading::mean),
        short: bench.proven_at("gap-too-tight", at).is_some(),
    };
    bench.seats().map(of).collect()
}

/// Plans the gap of every seat, and after it the tips of the after horns.
pub(super) fn plan(bench: &mut Bench, before: &[Before]) {
    for at in bench.seats() {
        replace_bent_often(bench, at);
        let seat = bench.seat(at);
        if let Err(lack) = seat.clearance() {
            let (name, missing) = (seat.name(), lack.to_string());
            bench.not_planned(name, "the gap", missing);
            continue;
        }
        let tip = bench.boat().seats[at].rowlock.after_tip.clone();
        set_gap(bench, at, before[at]);
        let moved = bench.boat().seats[at].rowlock.after_tip != tip;
        unhook(bench, at, moved);
    }
}

/// A horn that was bent too often: the rowlock is replaced, the new one as the old one should be.
fn replace_bent_often(bench: &mut Bench, at: usize) {
    let name = bench.seat(at).name().at("rowlock");
    let found = bench.at_boat("bent-often").into_iter().find(|finding| finding.name == name);
    let (Some(found), Some(seat)) = (found, bench.number(at)) else { return };
    if bench.replaced.contains(&(seat, BentPart::AfterHorn)) {
        return;
    }
    bench.replace(seat, BentPart::AfterHorn);
    bench.step(Step {
        work: Work::ReplaceRowlock,
        seat: Some(seat),
        oar: None,
        deed: "Replace the rowlock, and read pitch, gap and horns of the new one.".to_owned(),
        because: format!("{}. Metal bent often is not bent again.", found.message),
        amounts: Vec::new(),
    });
}

/// The least gap that surely clears the seat's oar and every spare, up to a tenth.
fn least(bench: &Bench, seat: &SeatSight) -> Option<f64> {
    let least = bench.limit(LimitKey::Clearance, Part::Least)?;
    let gap = seat.gap().ok()?.value();
    let spares = seat.at.boat.spares.iter().filter_map(|spare| bench.book.oar(bench.boat(), spare));
    let clearances = spares.map(|oar| seat.clearance_of(oar)).chain([seat.clearance()]);
    let needs = clearances.filter_map(Result::ok);
    let needs = needs.map(|clears| gap - clears.value() + least + clears.expanded());
    let most = needs.reduce(f64::max)?;
    Some((most * TENTHS - GRAIN).ceil() / TENTHS)
}

/// The most a gap may be and still hold the oar, down to a tenth.
fn most(bench: &Bench, seat: &SeatSight) -> Option<f64> {
    let most = bench.limit(LimitKey::Loose, Part::Most)?;
    let narrowest = seat.gap().ok()?.value() - seat.looseness().ok()?.value();
    Some(((narrowest + most) * TENTHS + GRAIN).floor() / TENTHS)
}

fn set_gap(bench: &mut Bench, at: usize, was: Before) {
    let seat = bench.seat(at);
    let (least, most) = (least(bench, &seat), most(bench, &seat));
    let Ok(gap) = seat.gap().map(|gap| gap.value()) else { return };
    let tight = bench.at_seat("gap-too-tight", at);
    let closed = was.gap.is_some_and(|was| gap < was - GRAIN);
    // A gap that was surely too tight is not left in doubt because the forward horn opened it a little.
    let opens = tight.iter().any(|found| !is_not_shown(found) || closed || was.short);
    let loose = bench.proven_at("gap-too-loose", at);
    let closing = loose.is_some();
    let (to, found) = match (opens, closing, least, most) {
        (true, _, Some(least), _) => (least, tight.into_iter().next()),
        (false, true, _, Some(most)) => (most, loose),
        _ => return,
    };
    if let (Some(least), Some(most)) = (least, most)
        && least > most
    {
        tell_conflict(bench, at, least, most);
        if !opens {
            return;
        }
    }
    let because = found.map_or_else(String::new, |found| {
        let by = if closed && opens { "After the forward horn: " } else { "" };
        format!("{by}{}. ", found.message)
    });
    bend(bench, at, gap, to, because);
}

fn tell_conflict(bench: &mut Bench, at: usize, least: f64, most: f64) {
    let seat = bench.seat(at);
    let (name, called) = (seat.name(), seat.called());
    let clears = bench.limit_words(LimitKey::Clearance, Part::Least, "mm");
    let holds = bench.limit_words(LimitKey::Loose, Part::Most, "mm");
    let says = format!(
        "{called}: no gap both clears and holds: to clear her oar and every spare it must be at least {}, to hold the oar at most {} ({clears}; {holds}). To clear comes first; give the oar another leather, or the seat another oar or spare",
        words::number(least, "mm"),
        words::number(most, "mm"),
    );
    bench.conflict(name, says);
}

fn bend(bench: &mut Bench, at: usize, gap: f64, to: f64, because: String) {
    let (change, number) = (to - gap, bench.number(at));
    let horn = bench.boat().seats[at].rowlock.horn.as_ref().map(Reading::mean);
    let degrees = horn.map(|horn| (change.abs() / horn).atan().to_degrees());
    let (work, often) = bench.bend(at, BentPart::AfterHorn, degrees.unwrap_or_default());
    let (verb, way) = if change > 0.0 { ("Open", "to the stern") } else { ("Close", "to the bow") };
    let by = words::number(change.abs(), "mm");
    let degrees_words =
        degrees.map_or(String::new(), |degrees| format!(", {}", words::number(degrees, "deg")));
    let or = if change > 0.0 { "or a little more" } else { "or a little less" };
    let deed = format!(
        "{verb} the gap by {by}, until it reads {} {or}: bend the after horn, its top {way} ({by} at its tip{degrees_words}).",
        words::number(to, "mm")
    );
    set_length(&mut bench.seat_mut(at).rowlock.gap, to);
    let carried = tip_moved(bench, at, change);
    let mut amounts = vec![("gap_mm", to), ("tip_mm", change)];
    amounts.extend(degrees.map(|degrees| ("bend_deg", degrees.copysign(change))));
    bench.step(Step {
        work,
        seat: number,
        oar: None,
        deed,
        because: format!("{often}{because}The least bend that is enough.{carried}"),
        amounts,
    });
}

/// The after horn's tip moves further than the same horn at the shaft's middle height.
fn tip_moved(bench: &mut Bench, at: usize, change: f64) -> String {
    let seat = bench.seat(at);
    let horn = seat.seat.rowlock.horn.as_ref().map(Reading::mean);
    let widest = seat.widest().ok().map(|widest| widest.value());
    let tip = seat.after_tip().ok().map(|tip| tip.value());
    let (Some(horn), Some(widest), Some(tip)) = (horn, widest, tip) else {
        return " Read the horn's tip again.".to_owned();
    };
    let to = tip + change * ((horn - widest / 2.0) / horn).max(0.0);
    set_length(&mut bench.seat_mut(at).rowlock.after_tip, to);
    let (from, to) = (words::number(tip, "mm"), words::number(to, "mm"));
    format!(" Its tip goes with it, from {from} abaft its shank to {to}.")
}

/// A tip that is not shown to be clear is read again, unless the work itself brought it there.
fn unhook(bench: &mut Bench, at: usize, moved: bool) {
    let found = bench.at_seat("horn-hooks", at);
    let wrong = |finding: &&Finding| moved || is_proven(finding);
    let Some(found) = found.iter().find(wrong) else { return };
    let seat = bench.seat(at);
    let Ok(tip) = seat.after_tip() else { return };
    let to = (tip.expanded() * TENTHS - GRAIN).ceil() / TENTHS;
    let (by, number) = (to - tip.value(), bench.number(at));
    let horn = seat.seat.rowlock.horn.as_ref().map(Reading::mean);
    let degrees = horn.map(|horn| (by / horn).atan().to_degrees());
    let after = if moved { "After that: " } else { "" };
    let because = format!("{after}{}. ", found.message);
    let (work, often) = bench.bend(at, BentPart::AfterHorn, degrees.unwrap_or_default());
    set_length(&mut bench.seat_mut(at).rowlock.after_tip, to);
    let mut amounts = vec![("tip_mm", by), ("after_tip_mm", to)];
    amounts.extend(degrees.map(|degrees| ("bend_deg", degrees)));
    bench.step(Step {
        work,
        seat: number,
        oar: None,
        deed: format!(
            "Bend the tip of the after horn to the stern by {}, until it stands {} abaft its shank or a little more; then read the gap again.",
            words::number(by, "mm"),
            words::number(to, "mm")
        ),
        because: format!("{often}{because}In a crab the oar lies under a hook."),
        amounts,
    });
}
