//! What is said of a seated crew, sentence by sentence. Chooses nothing.

use super::shown;
use crate::metrology::decision;
use crate::planning::fitting::Arc;
use crate::planning::fitting::Assumed;
use crate::planning::fitting::Doubt;
use crate::planning::fitting::Fit;
use crate::planning::fitting::Seated;
use crate::planning::fitting::WORTH_MOVING;
use crate::planning::fitting::Worth;
use crate::rules::Level;

/// A sentence, in the colour of a level where it asks for something.
type Sentence = (Option<Level>, String);

/// The words for one seated crew.
pub(super) struct Words<'f, 'b> {
    pub(super) fit: &'f Fit<'b>,
}

/// What would help, said as sure as it is; nothing where it is not worth it.
fn asked(worth: Worth, text: &str, so: &str) -> Option<Sentence> {
    match worth {
        Worth::Sure => Some((Some(Level::Fault), format!("{text}: {so}."))),
        Worth::Perhaps => Some((Some(Level::Note), format!("{text}: too close to call."))),
        Worth::No => None,
    }
}

fn degrees(doubt: &Doubt) -> String {
    format!("{:.1} deg, good to ± {:.1} deg", doubt.value(), doubt.expanded())
}

impl Words<'_, '_> {
    /// Returns every sentence, what is to be done first.
    pub(super) fn sentences(&self) -> Vec<Sentence> {
        let mut all: Vec<Sentence> = Vec::new();
        all.extend(self.chocks());
        all.extend(self.holes());
        all.extend(self.together());
        all.extend(self.remains());
        all.extend(self.swap());
        all.extend(self.calibrations());
        all.extend(self.lacking());
        all
    }

    fn holes(&self) -> Option<Sentence> {
        if let Err(lack) = &self.fit.holes {
            let why = shown::line(&lack.to_string());
            let text = format!(
                "No foot hole can be chosen: {why}. The chock is taken to stop everyone; measure \
                 the holes to know."
            );
            return Some((Some(Level::Unsure), text));
        }
        let moves = self.moves(|arc| arc.hole);
        if !moves.is_empty() {
            let chocks = self.fit.remains.as_ref().map(|remains| remains.chocks_alike.worth);
            let first = match chocks {
                Some(Worth::Sure) => ", with the chocks as they are",
                _ => "",
            };
            // Feet that are moved though no other choice is surely better straighten the legs.
            let why = match self.fit.worth {
                Some(Worth::Perhaps | Worth::No) => {
                    "; so that the legs come nearer straight: it moves no finish"
                }
                _ => "",
            };
            let text = format!("Foot holes{first}: {}{why}.", moves.join("; "));
            return Some((Some(Level::Fault), text));
        }
        let any = self.fit.rowers.iter().any(|seated| seated.arc.is_ok());
        any.then(|| (None, "Foot holes: leave them as they are.".to_owned()))
    }

    /// Every rower whose foot hole is not the one used now, and how to move.
    fn moves(&self, to: impl Fn(&Arc) -> Option<u32>) -> Vec<String> {
        let moved = |seated: &Seated| {
            let arc = seated.arc.as_ref().ok()?;
            let (hole, count) = (to(arc)?, *self.fit.holes.as_ref().ok()?);
            let seat = called(seated);
            match arc.now {
                Some(now) if now == hole => None,
                Some(now) if now == 0 || now as usize > count => {
                    Some(format!("{seat} to hole {hole}, for there is no hole {now}"))
                }
                Some(now) => Some(format!("{seat} from hole {now} to hole {hole}")),
                None => Some(format!("{seat} to hole {hole}; the one used now is not written")),
            }
        };
        self.fit.rowers.iter().filter_map(moved).collect()
    }

    fn together(&self) -> Option<Sentence> {
        let spread = self.fit.spread.as_ref()?;
        let within = |spread: &Doubt| format!("within {}", degrees(spread));
        let known = self.fit.spread_now.as_ref().zip(self.fit.gain.as_ref()).zip(self.fit.worth);
        let Some(((now, gain), worth)) = known else {
            let how = if self.fit.holes.is_ok() { "With these holes" } else { "Against the chock" };
            return Some((None, format!("{how} all finish {}.", within(spread))));
        };
        let now = format!("As they sit now all finish {}.", within(now));
        let text = match worth {
            Worth::Sure => {
                format!("{now} With these holes, {}: a gain of {}.", within(spread), degrees(gain))
            }
            Worth::Perhaps => format!(
                "{now} On paper other holes bring them {:.1} deg nearer, but that is good to ± \
                 {:.1} deg, too close to call: {}. Measure the inside legs and the arcs to know.",
                gain.value(),
                gain.expanded(),
                self.moves(|arc| arc.best_hole).join("; "),
            ),
            Worth::No if gain.value() < 0.05 => format!("{now} No other holes bring them nearer."),
            Worth::No => format!(
                "{now} Other holes would bring them {:.1} deg nearer; below {WORTH_MOVING} deg no \
                 foot need move.",
                gain.value()
            ),
        };
        Some((None, text))
    }

    fn remains(&self) -> Option<Sentence> {
        let remains = self.fit.remains.as_ref()?;
        let seat = |at: usize| called(&self.fit.rowers[at]);
        let parts = [
            (remains.by_chocks, "by their chocks"),
            (remains.by_levers, "by the levers of their oars"),
            (remains.by_legs, "by legs that stop short of the chock"),
            (remains.by_bodies, "by their bodies"),
        ];
        let told = |less: bool| {
            let parts = parts.iter().filter(|(by, _)| by.abs() >= 0.05 && (*by < 0.0) == less);
            let parts = parts.map(|(by, why)| format!("{:.1} deg {why}", by.abs()));
            parts.collect::<Vec<_>>().join(", ")
        };
        let (more, less) = (told(false), told(true));
        let why = if more.is_empty() { String::new() } else { format!(": {more}") };
        let less = if less.is_empty() { String::new() } else { format!("; less {less}") };
        let hole = remains.one_hole.map_or(String::new(), |hole| {
            format!(
                " One foot hole moves a finish by {hole:.1} deg where the legs stop a rower, and \
                 not at all where the chock does."
            )
        });
        let text = format!(
            "What remains: {} finishes {:.1} deg shorter than {}{why}{less}.{hole}",
            seat(remains.shortest),
            remains.whole,
            seat(remains.longest),
        );
        Some((None, text))
    }

    fn chocks(&self) -> Option<Sentence> {
        let alike = &self.fit.remains.as_ref()?.chocks_alike;
        let text = format!(
            "With every chock {:.0} mm from the pin all would finish against them within {:.1} deg, \
             {:.1} deg nearer than against the chocks as they are, good to ± {:.1} deg",
            alike.chock,
            alike.spread.value(),
            alike.gain.value(),
            alike.gain.expanded(),
        );
        asked(alike.worth, &text, "set them so")
    }

    fn swap(&self) -> Option<Sentence> {
        let swap = self.fit.swap.as_ref()?;
        let [one, other] = swap.rowers.map(|at| &self.fit.rowers[at]);
        let side = |seated: &Seated| seated.seat.and_then(|seat| seat.seat.side);
        let across = match (side(one), side(other)) {
            (Some(one), Some(other)) if one.value != other.value => {
                ", each on the other side than before"
            }
            _ => "",
        };
        let chocks = self.fit.remains.as_ref().map(|remains| remains.chocks_alike.worth);
        let instead = match chocks {
            Some(Worth::Sure | Worth::Perhaps) => "Instead of moving chocks: if",
            _ => "If",
        };
        let text = format!(
            "{instead} {} and {} change seats{across}, all would finish against the chocks within \
             {:.1} deg, {:.1} deg nearer than against them as they sit, good to ± {:.1} deg",
            called(one),
            called(other),
            swap.spread.value(),
            swap.gain.value(),
            swap.gain.expanded(),
        );
        asked(swap.worth, &text, "let them")
    }

    fn calibrations(&self) -> Vec<Sentence> {
        let known = self.fit.rowers.iter().filter(|seated| seated.arc.is_ok()).count();
        let both = [(&self.fit.finishes, -1.0, "finish"), (&self.fit.catches, 1.0, "catch")];
        let told: Vec<(bool, String)> = both.into_iter().filter_map(|(of, sign, what)| {
            let moved = of.moved.as_ref()?.scaled(sign);
            let way = if moved.value() < 0.0 { "less" } else { "more" };
            let text = format!(
                "the {what} of {} of {known} rowers, {:.1} deg {way} than worked out, good to ± \
                 {:.1} deg",
                of.measured,
                moved.value().abs(),
                moved.expanded(),
            );
            Some((decision::disagrees(moved.value(), moved.expanded()), text))
        }).collect();
        if told.is_empty() {
            return Vec::new();
        }
        let too_far = told.iter().any(|(far, _)| *far);
        let told: Vec<String> = told.into_iter().map(|(_, text)| text).collect();
        let mut text = format!("Measured: {}.", told.join("; "));
        if self.fit.finishes.measured.max(self.fit.catches.measured) < known {
            text.push_str(" The angles of the others are moved by as much.");
        }
        if too_far {
            text.push_str(
                " More than is assumed can be out by: measure chock and arc again, and look \
                 whether the back comes to the chock.",
            );
        }
        vec![(too_far.then_some(Level::Unsure), text)]
    }

    fn lacking(&self) -> Vec<Sentence> {
        let mut all = Vec::new();
        for seated in &self.fit.rowers {
            let seat = called(seated);
            match &seated.arc {
                Err(why) => {
                    let why = shown::line(&why.to_string());
                    all.push((Some(Level::Unsure), format!("Unknown: {seat}: {why}.")));
                }
                Ok(arc) => {
                    if let Err(why) = &arc.catch {
                        let why = shown::line(&why.to_string());
                        all.push((Some(Level::Unsure), format!("Catch unknown: {seat}: {why}.")));
                    }
                    if arc.arc_unused {
                        let text = format!(
                            "Not used: the arc measured of {seat}: the foot hole it was rowed from \
                             is not known."
                        );
                        all.push((Some(Level::Unsure), text));
                    }
                }
            }
        }
        all
    }

    /// Returns what the figures rest on, paragraph by paragraph.
    pub(super) fn assumptions(&self) -> Vec<String> {
        let each: Vec<String> = self.fit.assumed.iter().map(|what| assumed(*what)).collect();
        vec![
            "Figures of two rowers beside each other are better than the angles themselves: what is \
             assumed of all cancels. Equal angles are equal time only at equal oar speed. Measure \
             the arcs."
                .to_owned(),
            format!(
                "Assumed of every rower, ± of all alike, and of one beside the others: {}. Parts \
                 of the body: Drillis and Contini 1966, second-hand; the leg of one rower: ANSUR \
                 II; all else ours, no source. One straight reach from shoulder to grip; the heels \
                 at the foot brace.",
                each.join("; ")
            ),
        ]
    }
}

fn assumed(what: Assumed) -> String {
    let [all, one] = what.half_widths();
    let (words, value, unit) = (what.words(), what.value(), what.unit());
    if unit.is_empty() {
        return format!("{words} {value:.3} of the stature ± {all} ± {one}");
    }
    format!("{words} {value} {unit} ± {all} ± {one}")
}

fn called(seated: &Seated) -> String {
    seated
        .rower
        .seat
        .map_or_else(|| "a rower without a seat".to_owned(), |s| format!("seat {}", s.value))
}
