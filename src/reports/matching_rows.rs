//! Oars tried in rowlocks as rows of words, alike ones folded into one. Judges nothing.

use std::cmp::Reverse;

use super::matching_words::decided;
use super::matching_words::good;
use super::matching_words::handle;
use super::matching_words::seat_number;
use super::matching_words::seats;
use super::matching_words::verdict;
use super::shown;
use crate::planning::matching::Figure;
use crate::planning::matching::Match;
use crate::planning::matching::SeatMatch;
use crate::planning::matching::Suits;
use crate::planning::matching::Tried;
use crate::planning::matching::is_unfit;
use crate::planning::matching::worst;

type Try<'m, 'b> = (&'m SeatMatch<'b>, &'m Tried<'b>);

/// Oars and seats of whom the same is told.
pub(super) struct Row<T> {
    /// Which oars in which seats.
    pub(super) whereabouts: String,
    pub(super) told: T,
    rank: (Suits, bool, f64),
}

/// Whether an oar suits, with the figure that decides and those beside it.
#[derive(PartialEq)]
pub(super) struct Fits {
    pub(super) suits: Suits,
    proven: bool,
    /// The oar is not to be used.
    pub(super) unfit: bool,
    /// The figure that decides, with its limit; or why it is unknown.
    pub(super) decided: String,
    /// The figures that do not decide.
    pub(super) beside: String,
}

impl Fits {
    fn of(tried: &Tried) -> Self {
        let by = tried.decided.by.as_ref().map(|(figure, _)| *figure);
        let mut beside = format!("in a roll {}", good(&tried.in_roll, 1, " mm"));
        for (figure, called, worked) in [
            (Figure::Clearance, "clearance", &tried.clearance),
            (Figure::Looseness, "looseness", &tried.looseness),
        ] {
            if by != Some(figure) {
                beside.push_str(&format!("; {called} {}", good(worked, 1, " mm")));
            }
        }
        if let Some(bed) = &tried.bed {
            beside.push_str(&format!("; in the bed {}", good(bed, 2, " of the diameter")));
        }
        Self {
            suits: tried.decided.suits,
            proven: tried.decided.proven,
            unfit: tried.is_unfit(),
            decided: decided(tried),
            beside,
        }
    }

    /// Returns the verdict; with a mark where it is too close to call, and where the oar is unfit.
    pub(super) fn verdict(&self) -> String {
        let unfit = match (self.unfit, self.suits) {
            (false, _) => "",
            (true, Suits::Clears) => " but unfit",
            (true, _) => " and unfit",
        };
        format!("{}{unfit}", verdict(self.suits, self.proven))
    }
}

/// Returns how a handle would stand, and the gearing.
fn rigged(tried: &Tried) -> String {
    let gearing = good(&tried.gearing, 3, "");
    format!("gearing {gearing}; handle past mark {}", handle(&tried.handle))
}

/// Returns whether each oar of a set suits each seat of a boat, the worst first.
pub(super) fn fits(of: &Match) -> Vec<Row<Fits>> {
    worst_first(rows(of, Fits::of))
}

/// Returns the gearing and the handle of each oar of a set in each seat of a boat.
pub(super) fn rigs(of: &Match) -> Vec<Row<String>> {
    rows(of, rigged)
}

/// Returns whether each oar suits each seat, with gearing and handle, the worst first.
pub(super) fn whole(of: &Match) -> Vec<Row<(Fits, String)>> {
    worst_first(rows(of, |tried| (Fits::of(tried), rigged(tried))))
}

fn worst_first<T>(mut rows: Vec<Row<T>>) -> Vec<Row<T>> {
    rows.sort_by(|one, other| {
        let ((suits, proven, beyond), (suits2, proven2, beyond2)) = (one.rank, other.rank);
        (suits2, proven2).cmp(&(suits, proven)).then(beyond2.total_cmp(&beyond))
    });
    rows
}

fn rows<T: PartialEq>(of: &Match, tell: impl Fn(&Tried) -> T) -> Vec<Row<T>> {
    let row = |(told, tries): (T, Vec<Try>)| {
        let (_, tried) = worst(tries.iter().copied())?;
        let decided = &tried.decided;
        let rank = (decided.suits, decided.proven, decided.beyond);
        Some(Row { whereabouts: whereabouts(of, &tries), told, rank })
    };
    grouped(of, |tried| Some(tell(tried))).into_iter().filter_map(row).collect()
}

/// Returns the tries together of which the same is told, as they first come.
fn grouped<'m, 'b, T: PartialEq>(
    of: &'m Match<'b>,
    tell: impl Fn(&Tried) -> Option<T>,
) -> Vec<(T, Vec<Try<'m, 'b>>)> {
    let mut groups: Vec<(T, Vec<Try>)> = Vec::new();
    for (seat, tried) in of.all() {
        let Some(told) = tell(tried) else { continue };
        match groups.iter_mut().find(|(known, _)| *known == told) {
            Some((_, tries)) => tries.push((seat, tried)),
            None => groups.push((told, vec![(seat, tried)])),
        }
    }
    groups
}

/// Oars and seats of one verdict, in short.
pub(super) struct Short {
    pub(super) suits: Suits,
    pub(super) text: String,
}

/// Returns a set in a boat in short, verdict by verdict, the worst first: which oars in which
/// seats, and the figure that decides of the worst of them. Unfit oars are not said to clear.
pub(super) fn in_short(of: &Match) -> Vec<Short> {
    let mut groups = grouped(of, |tried| {
        let suits = tried.decided.suits;
        let told = (suits, tried.decided.why.is_some().then(|| decided(tried)));
        (suits != Suits::Clears || !tried.is_unfit()).then_some(told)
    });
    groups.sort_by_key(|((suits, _), _)| Reverse(*suits));
    let short = |((suits, why), tries): ((Suits, Option<String>), Vec<Try>)| {
        Some(Short { suits, text: short_text(of, why, &tries)? })
    };
    groups.into_iter().filter_map(short).collect()
}

fn short_text(of: &Match, why: Option<String>, tries: &[Try]) -> Option<String> {
    let (seat, worst) = worst(tries.iter().copied())?;
    let word = verdict(worst.decided.suits, worst.decided.proven);
    let figure = why.unwrap_or_else(|| match (worst.decided.suits, tries) {
        (_, [_]) => decided(worst),
        (Suits::Clears, _) => format!("the least {}", decided(worst)),
        _ => {
            let oar = shown::line(worst.oar.called());
            format!("at worst (seat {}, {oar}) {}", seat_number(seat), decided(worst))
        }
    });
    Some(format!("{word}, {}: {figure}", whereabouts(of, tries)))
}

/// Returns which oars in which seats: "every oar in every seat", "A5 in seats 1, 2".
fn whereabouts(of: &Match, tries: &[Try]) -> String {
    let mut folded: Vec<(String, Vec<String>)> = Vec::new();
    for seat in &of.seats {
        let here = tries.iter().filter(|(at, _)| std::ptr::eq(*at, seat));
        let here: Vec<&Tried> = here.map(|(_, tried)| *tried).collect();
        if here.is_empty() {
            continue;
        }
        let oars = oars(of, &here);
        match folded.iter_mut().find(|(known, _)| *known == oars) {
            Some((_, numbers)) => numbers.push(seat_number(seat)),
            None => folded.push((oars, vec![seat_number(seat)])),
        }
    }
    let part = |(oars, numbers): (String, Vec<String>)| {
        let every = numbers.len() == of.seats.len();
        let at = if every { "every seat".to_owned() } else { seats(&numbers) };
        format!("{oars} in {at}")
    };
    folded.into_iter().map(part).collect::<Vec<_>>().join(", ")
}

fn oars(of: &Match, tries: &[&Tried]) -> String {
    let fit = of.set.oars.iter().filter(|oar| !is_unfit(oar)).count();
    if tries.len() == of.set.oars.len() {
        return "every oar".to_owned();
    }
    if tries.len() == fit && tries.iter().all(|tried| !tried.is_unfit()) {
        return "every fit oar".to_owned();
    }
    let called: Vec<String> = tries.iter().map(|tried| shown::line(tried.oar.called())).collect();
    called.join(", ")
}
