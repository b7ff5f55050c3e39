//! Oars tried in rowlocks as rows of words, alike ones folded into one. Judges nothing.

use super::shown;
use crate::planning::matching::Figure;
use crate::planning::matching::Match;
use crate::planning::matching::SeatMatch;
use crate::planning::matching::Suits;
use crate::planning::matching::Tried;
use crate::rules::Level;
use crate::working::Worked;

/// What is told of one oar in one rowlock.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Told {
    pub(super) suits: Suits,
    pub(super) proven: bool,
    /// The figure that decides, with its limit; or what was not measured.
    pub(super) decided: String,
    /// What would follow: each value by its name.
    pub(super) follows: Vec<(&'static str, String)>,
    /// The oar is marked as not to be used.
    pub(super) unfit: bool,
}

/// Oars and seats of whom the same is told.
pub(super) struct Row {
    pub(super) seats: Vec<String>,
    pub(super) oars: Vec<String>,
    pub(super) told: Told,
}

impl Told {
    pub(super) fn of(tried: &Tried) -> Self {
        let mut follows = vec![
            ("in a roll", good(&tried.in_roll, 1, " mm")),
            ("looseness", good(&tried.looseness, 1, " mm")),
        ];
        if let Some(bed) = &tried.bed {
            follows.push(("in the bed", good(bed, 2, " of the diameter")));
        }
        follows.push(("handle past mark", good(&tried.handle, 1, " mm")));
        follows.push(("gearing", good(&tried.gearing, 3, "")));
        Self {
            suits: tried.decided.suits,
            proven: tried.decided.proven,
            decided: decided(tried),
            follows,
            unfit: tried.is_unfit(),
        }
    }

    /// Returns the verdict; with a mark where it is too close to call.
    pub(super) fn verdict(&self) -> String {
        verdict(self.suits, self.proven)
    }
}

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

fn good(worked: &Worked, places: usize, unit: &str) -> String {
    match worked {
        Ok(budget) => {
            format!("{:.places$} ± {:.places$}{unit}", budget.value(), budget.expanded())
        }
        Err(_) => "unknown".to_owned(),
    }
}

/// Returns the figure that decided, in words.
pub(super) fn decided(tried: &Tried) -> String {
    let decided = &tried.decided;
    if let Some(lack) = &decided.lack {
        let dry = if tried.oar.shaft.is_dry() { "; measured dry, it is thicker wet" } else { "" };
        return format!("{}{dry}", shown::line(&lack.to_string()));
    }
    let Some((figure, limit)) = &decided.by else { return "unknown".to_owned() };
    let (called, worked, least) = match figure {
        Figure::Clearance => ("clearance", &tried.clearance, "at least"),
        Figure::Looseness => ("looseness", &tried.looseness, "at most"),
    };
    let figure = format!("{called} {}", good(worked, 1, " mm"));
    let limit = format!("{least} {} mm", limit.value);
    match (decided.suits, decided.proven) {
        (Suits::Clears, _) => format!("{figure}, {limit}"),
        (Suits::Tight, true) => format!("{figure}, {:.1} mm short of {limit}", decided.beyond),
        (_, true) => format!("{figure}, {:.1} mm over {limit}", decided.beyond),
        (_, false) => format!("{figure}, too close to call: {limit}"),
    }
}

/// Returns the rows of one set in one boat: oars alike in one seat are folded, then seats alike.
pub(super) fn rows(of: &Match) -> Vec<Row> {
    let mut folded: Vec<(Vec<String>, Vec<(Told, Vec<String>)>)> = Vec::new();
    for seat in &of.seats {
        let groups = groups(seat);
        let number =
            seat.seat.seat.number.map_or("?".to_owned(), |number| number.value.to_string());
        match folded.iter_mut().find(|(_, known)| *known == groups) {
            Some((seats, _)) => seats.push(number),
            None => folded.push((vec![number], groups)),
        }
    }
    let row = |(seats, groups): (Vec<String>, Vec<(Told, Vec<String>)>)| {
        groups.into_iter().map(move |(told, oars)| Row { seats: seats.clone(), oars, told })
    };
    folded.into_iter().flat_map(row).collect()
}

fn groups(seat: &SeatMatch) -> Vec<(Told, Vec<String>)> {
    let mut groups: Vec<(Told, Vec<String>)> = Vec::new();
    for tried in &seat.oars {
        let (told, oar) = (Told::of(tried), shown::line(tried.oar.called()));
        match groups.iter_mut().find(|(known, _)| *known == told) {
            Some((_, oars)) => oars.push(oar),
            None => groups.push((told, vec![oar])),
        }
    }
    groups
}

/// Returns seats as people say them: "seat 1", "seats 1, 2, 4".
pub(super) fn seats(seats: &[String]) -> String {
    match seats {
        [one] => format!("seat {one}"),
        all => format!("seats {}", all.join(", ")),
    }
}

/// Returns the worst of a set in a boat in words: where, and the figure that decides.
pub(super) fn worst(of: &Match) -> String {
    let Some((seat, tried)) = of.worst() else {
        let missing = if of.set.oars.is_empty() { "the set has no oar" } else { "she has no seat" };
        return missing.to_owned();
    };
    let number = seat.seat.seat.number.map_or("?".to_owned(), |number| number.value.to_string());
    format!("seat {number}, {}: {}", shown::line(tried.oar.called()), decided(tried))
}

/// Returns how many oars in how many rowlocks came to each verdict.
pub(super) fn counts(matches: &[Match]) -> [usize; 4] {
    let all = || {
        let seats = matches.iter().flat_map(|of| &of.seats);
        seats.flat_map(|seat| &seat.oars).map(|tried| tried.decided.suits)
    };
    Suits::ALL.map(|suits| all().filter(|one| *one == suits).count())
}

/// Returns what is said of every match, besides the sums: what is not to be used whatever it
/// clears.
pub(super) fn asides(matches: &[Match]) -> Vec<String> {
    let mut all: Vec<String> = Vec::new();
    let unfit = matches.iter().flat_map(|of| {
        let unfit = of.set.oars.iter().filter(|oar| {
            oar.state.is_some_and(|state| state.value == crate::model::OarState::Unfit)
        });
        unfit.map(|oar| {
            format!(
                "{} is marked unfit: not to be used, whatever it clears.",
                shown::line(oar.called())
            )
        })
    });
    let laid_up = matches
        .iter()
        .filter(|of| of.boat.boat.out_of_use.is_some())
        .map(|of| format!("{} is out of use.", shown::line(of.boat.boat.called())));
    for line in unfit.chain(laid_up) {
        if !all.contains(&line) {
            all.push(line);
        }
    }
    all
}
