//! A boat seen from above, the bow to the left: string line, pins, seat marks, back chocks, oars at
//! the catch, square off and at the finish with the arcs of handle and blade.

use maud::Markup;
use maud::html;

use super::marks::mark;
use super::paper::*;
use crate::reports::card::Subject;
use crate::working::Attitude;
use crate::working::OarSeen;
use crate::working::SeatSight;
use crate::working::Seen;

/// The scales a plan may be drawn to.
const SCALES: [f64; 9] = [25.0, 50.0, 75.0, 100.0, 125.0, 150.0, 200.0, 250.0, 500.0];

/// The room for the drawing itself on paper, and the room around it.
const ROOM: At = (58.0, 57.0);
const MARGIN: At = (6.0, 2.5);

/// The width of the legend beside it, and the least height it needs.
const LEGEND: At = (34.0, 56.0);

/// From pin to pin where nobody measured it, in millimetres: something must be drawn, and it is
/// said that it is not to scale along the boat.
const EVEN: f64 = 950.0;

/// How many straight pieces an arc is drawn in.
const PIECES: u32 = 24;

/// A seat with its place along the boat.
struct Placed<'b> {
    seat: SeatSight<'b>,
    along: f64,
    measured: bool,
}

/// The way from the boat to the paper.
struct Scale {
    one_to: f64,
    /// What of the boat stands at the top left of the room.
    corner: Seen,
    /// Where on the paper that is.
    at: At,
}

impl Scale {
    /// Bow to the left, port below: as seen from above.
    fn on_paper(&self, (along, across): Seen) -> At {
        let (x, y) = (self.corner.0 - along, across - self.corner.1);
        (self.at.0 + x / self.one_to, self.at.1 + y / self.one_to)
    }
}

/// Returns the plan of a boat.
pub(in crate::reports) fn plan(subject: &Subject) -> Drawing {
    let seats = placed(&subject.seats());
    let reach = extent(&seats);
    let scale = scale(reach);
    let height = MARGIN.1 * 2.0 + (reach.1.1 - reach.0.1) / scale.one_to;
    let width = ROOM.0 + MARGIN.0 * 2.0 + LEGEND.0;
    let body = html! {
        (string_line(reach, &scale))
        @for seat in &seats { (oar(seat, &scale)) }
        @for seat in &seats { (place(seat, &scale)) }
        @for seat in &seats { (told(subject, seat, &scale)) }
        (legend(&seats, &scale))
    };
    let boat = subject.boat.boat.called();
    Drawing {
        title: format!("Plan of {}", cut(boat, 40)),
        about: about(&seats),
        size: (width, height.max(LEGEND.1)),
        one_to: Some(scale.one_to),
        body,
    }
}

/// Gives every seat a place along the boat: as measured, else evenly beside those that were.
fn placed<'b>(seats: &[SeatSight<'b>]) -> Vec<Placed<'b>> {
    let read: Vec<Option<f64>> =
        seats.iter().map(|seat| seat.along().ok().map(|along| along.value())).collect();
    let even = |at: usize| {
        let known = read.iter().enumerate().filter_map(|(own, along)| Some((own, (*along)?)));
        let near = known.min_by_key(|(own, _)| own.abs_diff(at));
        let (own, along) = near.unwrap_or((seats.len() - 1, EVEN * 2.0));
        along + (own as f64 - at as f64) * EVEN
    };
    let place = |(at, seat): (usize, &SeatSight<'b>)| Placed {
        seat: *seat,
        along: read[at].unwrap_or_else(|| even(at)),
        measured: read[at].is_some(),
    };
    seats.iter().enumerate().map(place).collect()
}

impl Placed<'_> {
    fn oar_at(&self, attitude: Attitude) -> Option<OarSeen> {
        let theta = self.seat.laid_at(attitude).ok()?;
        self.seat.oar_seen(self.along, theta).ok()
    }

    fn pin(&self) -> Option<Seen> {
        self.seat.beside_string(self.along, self.seat.spread().ok()?.value()).ok()
    }

    /// The line square to the string on which the seat mark stands: positive on the far side.
    fn mark(&self) -> Option<Seen> {
        self.seat.beside_string(self.along, -self.seat.seat_mark().ok()?.value()).ok()
    }

    fn chock(&self) -> Option<f64> {
        Some(self.along + self.seat.chock_to_pin().ok()?.value())
    }
}

/// The least and the most along and across of all that is drawn.
fn extent(seats: &[Placed]) -> (Seen, Seen) {
    let ends = |seat: &Placed| {
        let oars = Attitude::ALL.map(|attitude| seat.oar_at(attitude));
        let oars = oars.into_iter().flatten().flat_map(|oar| [oar.handle, oar.tip]);
        let own: Vec<Seen> = oars
            .chain(seat.pin())
            .chain([(seat.along - 700.0, 0.0), (seat.along + 900.0, 0.0)])
            .collect();
        own
    };
    let all = seats.iter().flat_map(ends).filter(|(x, y)| x.abs() < 1e6 && y.abs() < 1e6);
    let start = ((0.0, -1200.0), (2000.0, 1200.0));
    let start = if seats.is_empty() { start } else { ((f64::MAX, -1200.0), (f64::MIN, 1200.0)) };
    all.fold(start, |(least, most), (x, y)| {
        ((least.0.min(x), least.1.min(y)), (most.0.max(x), most.1.max(y)))
    })
}

fn scale((least, most): (Seen, Seen)) -> Scale {
    let fits = |one_to: &&f64| {
        (most.0 - least.0) / **one_to <= ROOM.0 && (most.1 - least.1) / **one_to <= ROOM.1
    };
    let one_to = *SCALES.iter().find(fits).unwrap_or(&SCALES[SCALES.len() - 1]);
    let spare = (ROOM.0 - (most.0 - least.0) / one_to) / 2.0;
    Scale { one_to, corner: (most.0, least.1), at: (MARGIN.0 + spare, MARGIN.1) }
}

fn string_line((least, most): (Seen, Seen), scale: &Scale) -> Markup {
    let (bow, stern) = (scale.on_paper((most.0, 0.0)), scale.on_paper((least.0, 0.0)));
    let (left, right) = ((3.5, bow.1), (ROOM.0 + MARGIN.0 * 2.0 - 3.5, stern.1));
    let low = scale.on_paper((least.0, most.1)).1 + MARGIN.1 - 1.0;
    html! {
        line class="string thin" x1=(n(left.0 + 6.0)) y1=(n(bow.1)) x2=(n(right.0 - 7.5)) y2=(n(bow.1)) {}
        (text("t2", (left.0 - 1.5, left.1 + 1.0), Stand::Start, "bow"))
        (text("t2", (right.0 + 1.5, right.1 + 1.0), Stand::End, "stern"))
        (text("t2", (left.0 - 1.5, 3.6), Stand::Start, "starboard"))
        (text("t2", (left.0 - 1.5, low), Stand::Start, "port"))
    }
}

/// The oar in its three attitudes, and the arcs of handle and blade.
fn oar(seat: &Placed, scale: &Scale) -> Markup {
    let [catch, square, finish] = Attitude::ALL.map(|attitude| seat.oar_at(attitude));
    let drawn = |oar: Option<OarSeen>, class: &str, kind: &str| {
        oar.map(|oar| shaft(&oar, scale, class, &format!("oar-{kind}"))).unwrap_or_default()
    };
    let number = seat.seat.seat.number.map(|number| number.value);
    html! {
        g class="oar" data-seat=[number] {
            (arcs(seat, scale))
            (drawn(catch, "thin dash", "catch"))
            (drawn(finish, "thin dash", "finish"))
            (drawn(square, "", "square"))
        }
    }
}

fn shaft(oar: &OarSeen, scale: &Scale, class: &str, kind: &str) -> Markup {
    let [handle, tip] = [oar.handle, oar.tip].map(|point| scale.on_paper(point));
    let blade = if class.is_empty() { "heavy" } else { "wide" };
    html! {
        (line(&format!("{kind} {class}"), handle, tip))
        @if let Some(neck) = oar.neck { (line(blade, scale.on_paper(neck), tip)) }
    }
}

fn arcs(seat: &Placed, scale: &Scale) -> Markup {
    let ends = [Attitude::Catch, Attitude::Finish].map(|attitude| seat.seat.laid_at(attitude));
    let [Ok(catch), Ok(finish)] = ends else { return html! {} };
    let thetas =
        (0..=PIECES).map(|piece| finish + (catch - finish) * f64::from(piece) / f64::from(PIECES));
    let all: Vec<OarSeen> =
        thetas.filter_map(|theta| seat.seat.oar_seen(seat.along, theta).ok()).collect();
    let arc = |pick: fn(&OarSeen) -> Seen| {
        let points: Vec<At> = all.iter().map(|oar| scale.on_paper(pick(oar))).collect();
        through("arc hair", &points)
    };
    html! { (arc(|oar| oar.tip)) (arc(|oar| oar.handle)) }
}

/// The pin, the seat mark, the back chock, and the seat's number.
fn place(seat: &Placed, scale: &Scale) -> Markup {
    let number = seat.seat.seat.number;
    let said = number.map_or("?".to_owned(), |number| number.value.to_string());
    let mark = seat.mark().map(|at| scale.on_paper(at));
    let chock = seat.chock().map(|along| scale.on_paper((along, 0.0)));
    let sits = mark.unwrap_or_else(|| scale.on_paper((seat.along, 0.0)));
    let seat_at =
        chock.map_or((sits.0 - 4.0, sits.1), |chock| (f64::midpoint(chock.0, sits.0), sits.1));
    html! {
        g class="place" data-seat=[number.map(|number| number.value)] {
            @if let Some(pin) = seat.pin() { (circle("pin blue paper wide", scale.on_paper(pin), 0.9)) }
            @if let Some(at) = mark {
                (line("seat-mark blue wide", (at.0, at.1 - 1.3), (at.0, at.1 + 1.3)))
                (line("thin blue", (at.0 - 0.6, at.1), (at.0 + 0.6, at.1)))
            }
            @if let Some(chock) = chock {
                (line("chock wide", (chock.0, sits.1 - 2.2), (chock.0, sits.1 + 2.2)))
            }
            (circle("paper thin", seat_at, 1.45))
            (text("strong", (seat_at.0, seat_at.1 + 0.85), Stand::Middle, &said))
        }
    }
}

/// Oar and marks at the blade's tip; what could not be drawn beside the string.
fn told(subject: &Subject, seat: &Placed, scale: &Scale) -> Markup {
    let own = mark(&subject.findings, &seat.seat.name());
    let oar = seat.seat.seat.oar.as_ref().map_or("no oar", |oar| &oar.value);
    let lacking = lacking(seat);
    let outside = seat.pin().map_or(-1.0, |pin| pin.1.signum());
    let pin = scale.on_paper(seat.pin().unwrap_or((seat.along, outside * 700.0)));
    // Beside the shaft, on the after side, where the oar's own lines leave room.
    let (x, y) = (pin.0 + 1.6, pin.1 + outside * 8.0);
    html! {
        g class="told" data-seat=[seat.seat.seat.number.map(|number| number.value)] {
            (text_within("halo", (x, y), Stand::Start, oar, 12))
            @if let Some(own) = &own { (own.drawn_short((x, y + outside * 3.0), EVEN * 2.0 / scale.one_to)) }
            @if let Some(lacking) = &lacking {
                (text_within("inquiet halo", (x, y - outside * 3.0), Stand::Start, lacking, 44))
            }
        }
    }
}

/// What of a seat could not be drawn, and why.
fn lacking(seat: &Placed) -> Option<String> {
    let why = seat.pin().map(|_| ()).ok_or_else(|| {
        seat.seat.spread().err().map_or("side not known".to_owned(), |lack| lack.to_string())
    });
    let oar = || seat.seat.oar_seen(seat.along, 0.0).err().map(|lack| lack.to_string());
    let whole = why.err().or_else(oar)?;
    Some(format!("not drawn: {whole}"))
}

/// What each line and mark is, beside the boat.
fn legend(seats: &[Placed], scale: &Scale) -> Markup {
    let left = MARGIN.0 * 2.0 + ROOM.0 + 1.0;
    let row = |at: u8| MARGIN.1 + 4.0 + 4.0 * f64::from(at);
    let said = |at: u8, words: &str| text("", (left + 6.0, row(at) + 0.8), Stand::Start, words);
    let across = |at: u8, class: &str| line(class, (left, row(at)), (left + 4.5, row(at)));
    let (pin, mark, chock) = ((left + 2.2, row(0)), (left + 2.2, row(1)), (left + 2.2, row(2)));
    let metre = 1000.0 / scale.one_to;
    html! {
        (circle("blue paper wide", pin, 0.9)) (said(0, "pin"))
        (line("blue wide", (mark.0, mark.1 - 1.3), (mark.0, mark.1 + 1.3)))
        (line("thin blue", (mark.0 - 0.6, mark.1), (mark.0 + 0.6, mark.1))) (said(1, "seat mark"))
        (line("wide", (chock.0, chock.1 - 1.3), (chock.0, chock.1 + 1.3))) (said(2, "back chock"))
        (across(3, "")) (said(3, "oar square off"))
        (across(4, "thin dash")) (said(4, &format!("at the catch {}", laid(seats, Attitude::Catch))))
        (said(5, &format!("at the finish {},", laid(seats, Attitude::Finish))))
        (said(6, "as laid for the pitch"))
        (across(7, "hair")) (said(7, "arc of the handle")) (said(8, "and of the blade"))
        (text("inquiet", (left, row(9) + 2.0), Stand::Start, not_to_scale(seats)[0]))
        (text("inquiet", (left, row(9) + 5.2), Stand::Start, not_to_scale(seats)[1]))
        (measure("", (left, row(12)), (left + metre, row(12))))
        (text("", (left + metre + 2.0, row(12) + 0.8), Stand::Start, &format!("1 m, 1 : {}", n(scale.one_to))))
    }
}

fn laid(seats: &[Placed], attitude: Attitude) -> String {
    let first = seats.first().and_then(|seat| seat.seat.laid_at(attitude).ok());
    first.map_or("not known".to_owned(), |theta| format!("{} deg", n(theta.abs())))
}

fn not_to_scale(seats: &[Placed]) -> [&'static str; 2] {
    match seats.iter().filter(|seat| !seat.measured).count() {
        0 => ["to scale; hull not drawn:", "nobody measures it"],
        _ => ["not all measured along the", "boat: seats spaced evenly"],
    }
}

fn about(seats: &[Placed]) -> String {
    let each: Vec<String> = seats.iter().map(|seat| super::called(&seat.seat)).collect();
    format!("Seen from above, bow to the left, seats from the bow: {}.", each.join("; "))
}
