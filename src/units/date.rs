//! A day of the calendar.

use thiserror::Error;

/// A day of the calendar, written `2026-10-17` (ISO 8601).
#[derive(Clone, Copy, Debug, Eq, Hash, Ord, PartialEq, PartialOrd)]
pub struct Date(jiff::civil::Date);

/// A text that is no day.
#[derive(Clone, Copy, Debug, Eq, PartialEq, Error)]
#[error("that is no day of the calendar")]
pub struct NotADate;

impl Date {
    /// Reads `YYYY-MM-DD` and nothing else.
    ///
    /// # Errors
    ///
    /// [`NotADate`]: another form, or a day that no month has.
    pub fn read(text: &str) -> Result<Self, NotADate> {
        let digits =
            |part: &str, len| part.len() == len && part.bytes().all(|b| b.is_ascii_digit());
        let parts: Vec<&str> = text.trim().split('-').collect();
        match parts[..] {
            [year, month, day] if digits(year, 4) && digits(month, 2) && digits(day, 2) => {
                text.trim().parse().map(Self).map_err(|_| NotADate)
            }
            _ => Err(NotADate),
        }
    }

    /// Wraps a day that the caller's clock shows.
    #[must_use]
    pub const fn from_civil(day: jiff::civil::Date) -> Self {
        Self(day)
    }

    /// Returns the day that a clock showed which was so many minutes ahead of UTC, so many seconds
    /// after 1970-01-01 00:00 UTC; none where the calendar ends.
    #[must_use]
    pub fn on_clock(seconds: i64, minutes_ahead: i32) -> Option<Self> {
        let days = seconds.checked_add(i64::from(minutes_ahead) * 60)?.div_euclid(86_400);
        let begin = jiff::civil::date(1970, 1, 1);
        begin.checked_add(jiff::Span::new().try_days(days).ok()?).ok().map(Self)
    }

    /// Returns the day so many days later; none beyond the calendar.
    #[must_use]
    pub fn days_later(self, days: i64) -> Option<Self> {
        let span = jiff::Span::new().try_days(days).ok()?;
        self.0.checked_add(span).ok().map(Self)
    }

    /// Returns how many days this is after `earlier`; negative when it is before.
    #[must_use]
    pub fn days_after(self, earlier: Self) -> i64 {
        let span = self.0.duration_since(earlier.0);
        span.as_hours() / 24
    }
}

impl std::fmt::Display for Date {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{}", self.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn day(text: &str) -> Date {
        Date::read(text).expect("a day")
    }

    #[test]
    fn days_are_counted_over_a_leap_day() {
        assert_eq!(day("2028-03-01").days_after(day("2028-02-28")), 2);
        assert_eq!(day("2026-03-01").days_after(day("2026-03-02")), -1);
        assert_eq!(day("2028-02-28").days_later(2), Some(day("2028-03-01")));
        assert_eq!(day("2028-02-28").days_later(i64::MAX), None);
    }

    #[test]
    fn a_clock_shows_its_own_day() {
        assert_eq!(Date::on_clock(1_767_225_599, 0), Some(day("2025-12-31")));
        assert_eq!(Date::on_clock(1_767_225_599, 1), Some(day("2026-01-01")));
        assert_eq!(Date::on_clock(1_767_225_600, -150), Some(day("2025-12-31")));
        assert_eq!(Date::on_clock(-1, 0), Some(day("1969-12-31")));
        assert_eq!(Date::on_clock(i64::MAX, 60), None);
        assert_eq!(Date::on_clock(i64::MAX - 1_000_000, 0), None);
    }

    #[test]
    fn only_iso_days_are_read() {
        for wrong in ["17.10.2026", "2026-10", "2026-02-30", "2026-1-1", "20261017", "soon", ""] {
            assert_eq!(Date::read(wrong), Err(NotADate), "{wrong}");
        }
    }
}
