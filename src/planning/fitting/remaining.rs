//! What still parts the finishes of a crew when the holes are chosen, and by which cause.

use super::Doubt;
use super::Known;
use super::Work;
use super::Worth;
use super::seating::Seating;

/// What still parts the rower who finishes shortest from the one who finishes longest, in degrees.
/// The causes add up to the whole.
#[derive(Clone, Debug, PartialEq)]
pub struct Remains {
    /// Who finishes shortest: the place in the crew.
    pub shortest: usize,
    /// Who finishes longest.
    pub longest: usize,
    /// The whole.
    pub whole: f64,
    /// Because their chocks are not alike.
    pub by_chocks: f64,
    /// Because their oars are held at unlike levers.
    pub by_levers: f64,
    /// Because straight legs stop one short of the chock.
    pub by_legs: f64,
    /// Because of their bodies, or what was measured of them.
    pub by_bodies: f64,
    /// What one foot hole moves a finish where the legs stop a rower; nothing without holes.
    pub one_hole: Option<f64>,
    /// With all chocks at their mean.
    pub chocks_alike: ChocksAlike,
}

/// What chocks that are alike would come to, everyone against the chock.
#[derive(Clone, Debug, PartialEq)]
pub struct ChocksAlike {
    /// The mean of the chocks, in millimetres.
    pub chock: f64,
    /// Highest less lowest finish then, in degrees.
    pub spread: Doubt,
    /// What is gained, in degrees.
    pub gain: Doubt,
    /// Whether that is worth moving chocks for.
    pub worth: Worth,
}

/// Returns what remains; nothing with fewer than two rowers.
pub(super) fn remains(work: &Work) -> Option<Remains> {
    let (shortest, longest) = work.chosen.outermost().filter(|_| work.known.len() > 1)?;
    let whole = work.chosen.spread();
    let of = |rower: usize| Parted::of(work, rower, [shortest, longest]);
    let (short, long) = (of(shortest)?, of(longest)?);
    let [by_chocks, by_levers, by_legs] =
        [short.chock - long.chock, short.lever - long.lever, short.legs - long.legs];
    Some(Remains {
        shortest: work.known[shortest].at,
        longest: work.known[longest].at,
        whole,
        by_chocks,
        by_levers,
        by_legs,
        by_bodies: whole - by_chocks - by_levers - by_legs,
        one_hole: one_hole(work),
        chocks_alike: chocks_alike(work)?,
    })
}

/// What each cause does to one finish.
struct Parted {
    chock: f64,
    lever: f64,
    legs: f64,
}

impl Parted {
    fn of(work: &Work, rower: usize, both: [usize; 2]) -> Option<Self> {
        let mean = |figure: fn(&Known) -> f64| {
            f64::midpoint(figure(&work.known[both[0]]), figure(&work.known[both[1]]))
        };
        let own = &work.known[rower];
        let (chock, lever) = (own.seat.chock.value(), own.seat.lever.value());
        let at = |chock, lever| own.seating.finish_with(None, chock, lever).ok();
        let here = at(chock, lever)?;
        let chocks_alike = at(mean(|one| one.seat.chock.value()), lever)?;
        let both_alike =
            at(mean(|one| one.seat.chock.value()), mean(|one| one.seat.lever.value()))?;
        let brace = work.brace(&work.chosen, rower);
        let with_legs = own.seating.finish_value(brace).ok()?;
        Some(Self {
            chock: here - chocks_alike,
            lever: chocks_alike - both_alike,
            legs: with_legs - here,
        })
    }
}

fn one_hole(work: &Work) -> Option<f64> {
    let [(_, one), .., (_, last)] = work.holes else { return None };
    let apart = (last.value() - one.value()) / (work.holes.len() as f64 - 1.0);
    let lever = work.known.first()?.seat.lever.value();
    Some((apart / lever).atan().to_degrees())
}

fn chocks_alike(work: &Work) -> Option<ChocksAlike> {
    let chocks = work.known.iter().map(|one| one.seat.chock.value());
    let chock = chocks.sum::<f64>() / work.known.len() as f64;
    let seating = |one: &Known| Seating::new(&one.body, &one.seat.with_chock(chock)).ok();
    let seatings: Vec<Seating> = work.known.iter().map(seating).collect::<Option<_>>()?;
    let (spread, gain) = work.seated_as(&seatings)?;
    let worth = Worth::of(&gain);
    Some(ChocksAlike { chock, spread, gain, worth })
}
