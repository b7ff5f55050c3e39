//! Findings drawn under the lines they point at. The only file that names `miette`.

use std::fmt;
use std::fmt::Write as _;

use miette::Diagnostic;
use miette::GraphicalReportHandler;
use miette::GraphicalTheme;
use miette::LabeledSpan;
use miette::MietteError;
use miette::MietteSpanContents;
use miette::Severity;
use miette::SourceCode;
use miette::SourceSpan;
use miette::SpanContents;
use miette::ThemeCharacters;
use miette::ThemeStyles;

use super::aside::aside;
use super::excerpt::Excerpt;
use super::look::Glyphs;
use super::look::Look;
use super::look::tied;
use super::look::untied;
use super::place::Places;
use super::shown;
use crate::rules::Finding;
use crate::rules::Label;
use crate::rules::Level;

/// A finding made ready: only clean words and clean lines.
#[derive(Debug)]
struct Drawing {
    header: String,
    message: String,
    help: String,
    excerpt: Excerpt,
}

/// Draws a finding: its rule and name, what is wrong, every line that takes part, what to do.
///
/// `after` are words that follow the help, each on its own line.
pub(super) fn drawing(places: &Places, finding: &Finding, after: &[String], look: Look) -> String {
    let (told, drawn): (Vec<&Label>, Vec<&Label>) =
        finding.labels.iter().partition(|label| places.file(label.place).built_in);
    let drawing = Drawing {
        header: format!("{}  {}", finding.rule.id, shown::line(finding.name.as_str())),
        message: tied(&look.words(&message(finding))),
        help: tied(&look.words(&help(finding, &told, after))),
        excerpt: Excerpt::of(places, &drawn, look),
    };
    let mut out = String::new();
    let handler = handler(finding.level, look);
    if handler.render_report(&mut out, &drawing).is_err() {
        // Memory can't refuse to be written to; words without a drawing are better than none.
        let _ = writeln!(out, "{}: {}", drawing.header, drawing.message);
    }
    untied(&out)
}

fn message(finding: &Finding) -> String {
    let level = finding.level.word();
    let aside = aside(finding);
    format!("{level}{aside}: {}", shown::line(&finding.message))
}

fn help(finding: &Finding, told: &[&Label], after: &[String]) -> String {
    let mut help = vec![shown::line(&finding.remedy)];
    help.extend(finding.limit.as_ref().map(super::limit::words));
    let in_class =
        |label: &&Label| format!("also: {} (in the program's own class)", shown::line(&label.text));
    help.extend(told.iter().map(in_class));
    help.extend_from_slice(after);
    help.join("\n")
}

fn handler(level: Level, look: Look) -> GraphicalReportHandler {
    let characters = match look.glyphs {
        Glyphs::Unicode => ThemeCharacters::unicode(),
        Glyphs::Ascii => ThemeCharacters::ascii(),
    };
    let letter = level.word()[..1].to_uppercase();
    let characters = ThemeCharacters {
        error: letter.clone(),
        warning: letter.clone(),
        advice: letter,
        ..characters
    };
    let style = look.of_level(level);
    let styles = ThemeStyles {
        error: style,
        warning: style,
        advice: style,
        help: look.heading(),
        link: look.heading(),
        highlights: vec![style, look.beside(level)],
        ..ThemeStyles::none()
    };
    GraphicalReportHandler::new_themed(GraphicalTheme { characters, styles })
        .with_width(look.width)
        .with_links(false)
        .without_primary_span_start()
        .without_syntax_highlighting()
        .with_word_separator(textwrap::WordSeparator::AsciiSpace)
        .with_word_splitter(textwrap::WordSplitter::NoHyphenation)
}

impl fmt::Display for Drawing {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.message)
    }
}

impl std::error::Error for Drawing {}

impl Diagnostic for Drawing {
    fn code<'a>(&'a self) -> Option<Box<dyn fmt::Display + 'a>> {
        Some(Box::new(&self.header))
    }

    fn severity(&self) -> Option<Severity> {
        Some(Severity::Error)
    }

    fn help<'a>(&'a self) -> Option<Box<dyn fmt::Display + 'a>> {
        Some(Box::new(&self.help))
    }

    fn labels(&self) -> Option<Box<dyn Iterator<Item = LabeledSpan> + '_>> {
        let labels = self.excerpt.marks.iter().map(|mark| {
            let text = (!mark.text.is_empty()).then(|| mark.text.clone());
            LabeledSpan::new(text, mark.bytes.start, mark.bytes.len())
        });
        Some(Box::new(labels))
    }

    fn source_code(&self) -> Option<&dyn SourceCode> {
        Some(&self.excerpt)
    }
}

impl SourceCode for Excerpt {
    /// A sheet is always shown whole; nothing is shown across two sheets.
    fn read_span<'a>(
        &'a self,
        span: &SourceSpan,
        _lines_before: usize,
        _lines_after: usize,
    ) -> Result<Box<dyn SpanContents<'a> + 'a>, MietteError> {
        let holds = |sheet: &&super::excerpt::Sheet| {
            sheet.bytes.contains(&span.offset()) && span.offset() + span.len() <= sheet.bytes.end
        };
        let sheet = self.sheets.iter().find(holds).ok_or(MietteError::OutOfBounds)?;
        Ok(Box::new(MietteSpanContents::new_named(
            sheet.heading.clone(),
            &self.text.as_bytes()[sheet.bytes.clone()],
            SourceSpan::new(sheet.bytes.start.into(), sheet.bytes.len()),
            sheet.first_line - 1,
            0,
            sheet.lines,
        )))
    }
}
