//! Any text where a length, an angle, a slope, a weight or a day belongs.

use tholebook::units::Angle;
use tholebook::units::Date;
use tholebook::units::Figure;
use tholebook::units::FigureFault;
use tholebook::units::Length;
use tholebook::units::Slope;
use tholebook::units::Weight;

/// Reads the bytes as each kind of value; what is shown of it is read as the same again.
pub(crate) fn tried(bytes: &[u8]) {
    let text = String::from_utf8_lossy(bytes);
    [Length::figure(&text), Angle::figure(&text), Weight::figure(&text)]
        .into_iter()
        .for_each(figure);
    let blanks = format!(" {text} ");
    assert_eq!(Length::read(&text), Length::read(&blanks), "{text:?}");
    match Slope::read(&text) {
        Ok(slope) => assert!(!slope.to_string().is_empty()),
        Err(fault) => told(&fault),
    }
    if let Ok(day) = Date::read(&text) {
        assert_eq!(Date::read(&day.to_string()), Ok(day));
        assert_eq!(day.days_after(day), 0);
    }
}

fn figure(read: Result<Figure, FigureFault>) {
    match read {
        Ok(figure) => assert!(figure.value.is_finite(), "{figure:?}"),
        Err(fault) => told(&fault),
    }
}

/// A fault says what is wrong and what to do.
fn told(fault: &FigureFault) {
    assert!(!fault.to_string().is_empty() && !fault.help().is_empty(), "{fault:?}");
}
