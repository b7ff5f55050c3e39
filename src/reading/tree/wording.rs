//! The parser's complaints in plain words, at the place where they are mended.

use granit_parser::ErrorKind;
use granit_parser::ScanError;

use super::Limit;
use super::TreeFault;
use super::TreeFaultKind;
use super::marks;
use super::screening;
use crate::model::Span;

/// What is said of a tab where the line begins, whoever finds it.
pub(super) const TAB: &str = "a tab stands where only blanks may: put blanks in its place";

/// What the builder knew when the parser gave up.
pub(super) struct Known<'t> {
    /// The text that was read.
    pub(super) text: &'t str,
    /// The end of the last value found.
    pub(super) last: usize,
    /// The innermost bracket that is still open.
    pub(super) bracket: Option<usize>,
}

/// Returns whether the parser only says that the text ended too soon.
pub(super) fn ended_too_soon(error: &ScanError) -> bool {
    matches!(
        error.kind(),
        ErrorKind::UnexpectedEof
            | ErrorKind::UnexpectedEofFlowSequence
            | ErrorKind::UnexpectedEofFlowMapping
            | ErrorKind::UnexpectedEofImplicitFlowMapping
            | ErrorKind::UnexpectedEofBlockSequence
            | ErrorKind::UnexpectedEofBlockMapping
            | ErrorKind::UnclosedFlowCollection { .. }
            | ErrorKind::UnclosedQuotedScalar
            | ErrorKind::UnclosedVerbatimTag
    )
}

/// Returns the byte where the parser gave up.
pub(super) fn place(error: &ScanError, text: &str) -> usize {
    text.floor_char_boundary(error.marker().byte_offset().unwrap_or(text.len()))
}

/// Returns the fault that the parser's complaint stands for.
pub(super) fn fault(error: &ScanError, known: &Known<'_>) -> TreeFault {
    let at = marks::character(known.text, mended_at(error, known));
    match error.kind() {
        ErrorKind::RecursionLimitExceeded => {
            TreeFault::new(TreeFaultKind::TooLarge { limit: Limit::Levels }, at)
        }
        ErrorKind::UndeclaredTagHandle => tag(known.text, at.start),
        kind => TreeFault::new(TreeFaultKind::NotYaml { message: message(kind, known) }, at),
    }
}

fn tag(text: &str, start: usize) -> TreeFault {
    let rest = &text[start..];
    let length = rest.find(char::is_whitespace).unwrap_or(rest.len());
    let tag = screening::shortened(&rest[..length]);
    TreeFault::new(TreeFaultKind::Tag { tag }, Span { start, end: start + length })
}

fn mended_at(error: &ScanError, known: &Known<'_>) -> usize {
    let found = place(error, known.text);
    match error.kind() {
        ErrorKind::TabInPlainScalar
        | ErrorKind::TabInBlockIndentation
        | ErrorKind::TabInIndentation
        | ErrorKind::TabNotAllowed
        | ErrorKind::TabAtBlockScalarStart => marks::leading_tab(known.text, found),
        ErrorKind::InvalidBlockEntryWhitespace | ErrorKind::InvalidMappingValueWhitespace => {
            marks::tab_before(known.text, found)
        }
        ErrorKind::InvalidQuotedScalarIndent | ErrorKind::DocumentIndicatorInQuotedScalar => {
            marks::first(known.text, known.last, b"\"'")
        }
        ErrorKind::InvalidIndentation => known.bracket,
        _ => None,
    }
    .unwrap_or(found)
}

fn message(kind: &ErrorKind, known: &Known<'_>) -> String {
    if let ErrorKind::MismatchedFlowCollectionEnd { open, close } = kind {
        return format!("this {open} is closed by a {close}: put the bracket that belongs to it");
    }
    if let ErrorKind::UnexpectedCharacter { character } = kind {
        return format!("a text that begins with {character} needs quotes");
    }
    if matches!(kind, ErrorKind::InvalidIndentation) && known.bracket.is_some() {
        return "this bracket is not closed: close it, or indent the lines inside it".to_owned();
    }
    columns(kind)
        .or_else(|| quotes(kind))
        .or_else(|| brackets(kind))
        .or_else(|| signs(kind))
        .map_or_else(|| format!("this can't be read: {kind}"), str::to_owned)
}

fn columns(kind: &ErrorKind) -> Option<&'static str> {
    Some(match kind {
        ErrorKind::TabInPlainScalar
        | ErrorKind::TabInBlockIndentation
        | ErrorKind::TabInIndentation
        | ErrorKind::TabNotAllowed
        | ErrorKind::TabAtBlockScalarStart
        | ErrorKind::InvalidBlockEntryWhitespace
        | ErrorKind::InvalidMappingValueWhitespace => TAB,
        ErrorKind::ExpectedBlockMappingKey => {
            "this line does not stand under the keys above it: begin it in the same column"
        }
        ErrorKind::ExpectedBlockSequenceEntry => {
            "this line does not belong to the list above it: begin it with a dash in the same \
             column, or take the list in further"
        }
        ErrorKind::InvalidIndentation
        | ErrorKind::InvalidBlockScalarIndent
        | ErrorKind::InvalidFlowScalarIndent => {
            "this line begins in the wrong column: indent it as far as the lines it belongs to"
        }
        ErrorKind::ExpectedDocumentStart => {
            "this does not belong to what stands above it: begin it in the same column as the \
             first line, and write nothing after a closing bracket or quote"
        }
        ErrorKind::SimpleKeyExpected => "this line has no colon: write `key: value`",
        ErrorKind::BlockSequenceEntryNotAllowed | ErrorKind::BlockEntryInFlowCollection => {
            "a dash can't begin a list here: put the list on lines of its own, or quotes round \
             the text"
        }
        _ => return None,
    })
}

fn quotes(kind: &ErrorKind) -> Option<&'static str> {
    Some(match kind {
        ErrorKind::UnclosedQuotedScalar
        | ErrorKind::InvalidQuotedScalarIndent
        | ErrorKind::DocumentIndicatorInQuotedScalar => {
            "this quote is not closed: put the same quote at the end of the text"
        }
        ErrorKind::InvalidTrailingSingleQuotedScalar => {
            "more text stands after the closing quote: put double quotes round the whole text"
        }
        ErrorKind::InvalidTrailingDoubleQuotedScalar => {
            "more text stands after the closing quote: put single quotes round the whole text"
        }
        ErrorKind::UnknownQuotedScalarEscape
        | ErrorKind::InvalidQuotedScalarHexEscape
        | ErrorKind::InvalidUnicodeEscape
        | ErrorKind::InvalidLowSurrogateHexEscape
        | ErrorKind::InvalidLowSurrogate
        | ErrorKind::MissingLowSurrogate
        | ErrorKind::UnpairedLowSurrogate => {
            "a backslash in double quotes has a meaning of its own: put single quotes"
        }
        ErrorKind::MappingValueNotAllowed => {
            "a second colon on this line, or a line indented further than its key: put quotes \
             round a text that holds a colon, or begin the line in the column of its key"
        }
        _ => return None,
    })
}

fn brackets(kind: &ErrorKind) -> Option<&'static str> {
    Some(match kind {
        ErrorKind::UnclosedFlowCollection { .. }
        | ErrorKind::UnexpectedEofFlowSequence
        | ErrorKind::UnexpectedEofFlowMapping
        | ErrorKind::UnexpectedEofImplicitFlowMapping => {
            "this bracket is not closed: put the closing one after the last value"
        }
        ErrorKind::MisplacedFlowCollectionEnd => {
            "this bracket closes nothing: take it out, or put quotes round the text"
        }
        ErrorKind::ExpectedFlowMappingSeparator => {
            "a comma or the closing } is missing before this"
        }
        ErrorKind::ExpectedFlowSequenceSeparator => {
            "a comma or the closing ] is missing before this"
        }
        ErrorKind::PlainScalarStartsWithDashFlowIndicator => {
            "a dash alone is no value here: put quotes round it, or a number after it"
        }
        _ => return None,
    })
}

fn signs(kind: &ErrorKind) -> Option<&'static str> {
    Some(match kind {
        ErrorKind::MissingAnchorOrAliasName => "a text that begins with & or * needs quotes",
        ErrorKind::UnclosedVerbatimTag
        | ErrorKind::InvalidTagTerminator
        | ErrorKind::MissingTagUri
        | ErrorKind::InvalidTagEscape
        | ErrorKind::InvalidGlobalTagCharacter => "a text that begins with ! needs quotes",
        ErrorKind::InvalidBlockScalarHeader => {
            "a text that begins with > or | needs quotes, or goes on the lines below"
        }
        ErrorKind::CommentInterceptedScalar => {
            "this comment stands in the middle of a text: take it out, or put quotes round the text"
        }
        ErrorKind::CommentNotSeparated => "put a blank before the #",
        ErrorKind::BomInsideDocument => "an invisible mark (U+FEFF) stands here: take it out",
        ErrorKind::InvalidDocumentEnd => "nothing may stand after the ... on its line",
        ErrorKind::UnexpectedEof
        | ErrorKind::UnexpectedEofBlockMapping
        | ErrorKind::UnexpectedEofBlockSequence => "the file breaks off in the middle of this",
        ErrorKind::MappingKeyNotAllowed => "a text that begins with ? needs quotes",
        ErrorKind::FlowMappingValueAdjacentCollection => "put a blank after the colon",
        ErrorKind::MissingDirectiveName
        | ErrorKind::InvalidDirectiveName
        | ErrorKind::InvalidDirectiveTerminator
        | ErrorKind::MissingDocumentEndBeforeDirective => "a line can't begin with % here",
        ErrorKind::InvalidSimpleKey | ErrorKind::InvalidColonPlacement => {
            "a key must end with its colon on the same line"
        }
        _ => return None,
    })
}
