//! The words of what was decided of an oar in a rowlock. Judges nothing.

use super::shown;
use crate::metrology::decision::Bounds;
use crate::metrology::decision::Verdict;
use crate::planning::matching::Decided;
use crate::planning::matching::Figure;
use crate::planning::matching::Handle;
use crate::planning::matching::Match;
use crate::planning::matching::NotFound;
use crate::planning::matching::SeatMatch;
use crate::planning::matching::Suits;
use crate::planning::matching::Tried;
use crate::planning::matching::Wanted;
use crate::planning::matching::Whose;
use crate::planning::matching::is_unfit;
use crate::rules::Level;
use crate::working::Worked;

/// Returns the verdict; with a mark where it is too close to call.
pub(super) fn verdict(suits: Suits, proven: bool) -> String {
    format!("{}{}", suits.word(), if proven { "" } else { "?" })
}

/// Returns the colour of a verdict; none where it clears.
pub(super) const fn level(suits: Suits) -> Option<Level> {
    match suits {
        Suits::Clears => None,
        Suits::Loose => Some(Level::Fault),
        Suits::Unknown => Some(Level::Unsure),
        Suits::Tight => Some(Level::Danger),
    }
}

/// Returns a figure with how good it is.
pub(super) fn good(worked: &Worked, places: usize, unit: &str) -> String {
    let Ok(budget) = worked else { return "unknown".to_owned() };
    let plain = |value: f64| {
        let shown = format!("{value:.places$}");
        let bare = shown.trim_start_matches('-');
        if bare.trim_start_matches(['0', '.']).is_empty() { bare.to_owned() } else { shown }
    };
    format!("{} ± {}{unit}", plain(budget.value()), plain(budget.expanded()))
}

/// Returns a limit as it was set.
fn mm(limit: f64) -> String {
    let text = format!("{limit:.3}");
    format!("{} mm", text.trim_end_matches('0').trim_end_matches('.'))
}

/// Returns the figure that decided, or why it is unknown, in words.
pub(super) fn decided(tried: &Tried) -> String {
    let Decided { suits, proven, by, beyond, why } = &tried.decided;
    if let Some(why) = why {
        let dry = if tried.oar.shaft.is_dry() { ": it was dry, and is thicker wet" } else { "" };
        return format!("{}{dry}", shown::line(&why.to_string()));
    }
    let Some((figure, limit)) = by else { return "unknown".to_owned() };
    let (called, worked, least) = match figure {
        Figure::Clearance => ("clearance", &tried.clearance, "at least"),
        Figure::Looseness => ("looseness", &tried.looseness, "at most"),
    };
    let figure = format!("{called} {}", good(worked, 1, " mm"));
    let limit = mm(limit.value);
    match (suits, proven) {
        (Suits::Clears, _) => format!("{figure} ({least} {limit})"),
        (Suits::Tight, true) => format!("{figure}, {beyond:.1} mm short of {limit}"),
        (_, true) => format!("{figure}, {beyond:.1} mm over {limit}"),
        (_, false) => format!("{figure}, too close to call ({least} {limit})"),
    }
}

/// Returns how far a handle would pass the mark, and whether that is allowed.
pub(super) fn handle(handle: &Handle) -> String {
    let figure = good(&handle.past_mark, 1, " mm");
    let outside = match handle.verdict {
        None | Some(Verdict::Within) => return figure,
        Some(Verdict::Beyond { .. }) => "outside",
        Some(Verdict::Undecided { .. }) => "perhaps outside",
    };
    let allowed = match handle.allowed {
        Bounds { least: Some(least), most: Some(most) } => {
            format!("{} to {}", mm(least).trim_end_matches(" mm"), mm(most))
        }
        Bounds { least: Some(least), .. } => format!("at least {}", mm(least)),
        Bounds { most, .. } => format!("at most {}", mm(most.unwrap_or(f64::NAN))),
    };
    format!("{figure}, {outside} {allowed}")
}

/// Returns the number of a seat, as people say it.
pub(super) fn seat_number(seat: &SeatMatch) -> String {
    seat.seat.seat.number.map_or("?".to_owned(), |number| number.value.to_string())
}

/// Returns seats as people say them: "seat 1", "seats 1, 2, 4".
pub(super) fn seats(seats: &[String]) -> String {
    match seats {
        [one] => format!("seat {one}"),
        all => format!("seats {}", all.join(", ")),
    }
}

/// Returns what a boat is called, with her id and the day her gaps are from.
pub(super) fn called(of: &Match) -> String {
    let boat = of.boat.boat;
    let (name, id) = (shown::line(boat.called()), shown::line(&boat.id.value));
    let out = if boat.is_out_of_use() { ", out of use" } else { "" };
    let date = boat.rigged.date.map(|date| format!(", rigged {}", date.value));
    let date = date.unwrap_or_default();
    if name == id { format!("{name}{date}{out}") } else { format!("{name} ({id}){date}{out}") }
}

/// Returns a set's id; with a word, where the boat carries it, and with her spares.
pub(super) fn set_called(of: &Match) -> String {
    let id = shown::line(&of.set.id.value);
    if !of.is_carried() {
        return id;
    }
    let spares = of.boat.boat.spares.iter().map(|spare| shown::line(&spare.value));
    match spares.collect::<Vec<_>>().as_slice() {
        [] => format!("{id} (hers)"),
        spares => format!("{id} (hers; spare {})", spares.join(", ")),
    }
}

/// Returns what there is to be said of a set in a boat of which nothing was tried.
pub(super) fn nothing_tried(of: &Match) -> &'static str {
    if of.set.oars.is_empty() { "the set has no oar" } else { "she has no seat" }
}

/// Returns how many oars in how many rowlocks came to each verdict, the best first.
pub(super) fn counts(matches: &[Match]) -> [usize; 4] {
    let all = || matches.iter().flat_map(Match::all).map(|(_, tried)| tried.decided.suits);
    Suits::ALL.map(|suits| all().filter(|one| *one == suits).count())
}

/// Returns what is said of every match besides the sums: what could not be tried, what was not
/// looked at, and what is not to be used whatever it clears.
pub(super) fn asides(matches: &[Match], not_found: &[NotFound]) -> Vec<String> {
    let unfit = matches.iter().flat_map(|of| {
        let unfit = of.set.oars.iter().filter(|oar| is_unfit(oar));
        unfit.map(|oar| {
            let (set, oar) = (shown::line(&of.set.id.value), shown::line(oar.called()));
            format!("{oar} of {set} is unfit: not to be used, whatever it clears.")
        })
    });
    let unseen = matches.iter().filter_map(unseen);
    let mut all: Vec<String> = Vec::new();
    for line in not_found.iter().map(not_there).chain(unfit).chain(unseen) {
        if !all.contains(&line) {
            all.push(line);
        }
    }
    all
}

fn not_there(lacks: &NotFound) -> String {
    let boat = shown::line(lacks.boat.called());
    match lacks.wanted {
        Wanted::Set(set) => {
            let set = shown::line(set);
            format!("Unknown: {boat} carries {set}, and no such set can be read: not tried.")
        }
        Wanted::Oar(oar, whose) => {
            let oar = shown::line(oar);
            let whose = if whose == Whose::Spare { "spare" } else { "oar" };
            let set = lacks.set.map_or("the set".to_owned(), shown::line);
            format!("Unknown: {oar}, {whose} of {boat}, does not stand in {set}: not tried.")
        }
    }
}

/// Of a rowlock of which these are not written, the sums hold only if it is as it should be.
fn unseen(of: &Match) -> Option<String> {
    let missing = |field: &'static str, seat: &SeatMatch| {
        let rowlock = &seat.seat.seat.rowlock;
        match field {
            "turns" => rowlock.turns.is_none(),
            _ => rowlock.after_tip.is_none(),
        }
    };
    let told = ["turns", "after-tip"].into_iter().filter_map(|field| {
        let without = of.seats.iter().filter(|seat| missing(field, seat)).map(seat_number);
        let without: Vec<String> = without.collect();
        (!without.is_empty()).then(|| format!("rowlock/{field} of {}", seats(&without)))
    });
    let told: Vec<String> = told.collect();
    let boat = shown::line(of.boat.boat.called());
    let how = "the sums are for a rowlock that turns freely, no horn hooked over";
    (!told.is_empty()).then(|| format!("Not measured in {boat}: {}; {how}.", told.join(", ")))
}
