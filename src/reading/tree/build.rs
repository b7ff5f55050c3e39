//! The parser's events into a tree. Keeps its own stack, so no text can drive it deep.

use granit_parser::Event;
use granit_parser::Options;
use granit_parser::Parser;
use granit_parser::ScalarStyle;
use granit_parser::ScanError;
use granit_parser::StructureStyle;

use super::LEVELS;
use super::Limit;
use super::NODES;
use super::Node;
use super::Shape;
use super::Tree;
use super::TreeFault;
use super::TreeFaultKind;
use super::marks;
use super::opened::Opened;
use super::screening;
use super::values;
use super::wording;
use crate::model::Span;

/// Returns the tree of `text`, as far as it can be read.
pub(super) fn tree(text: &str) -> Tree {
    let stop = screening::first_stop(text);
    let readable = stop.as_ref().map_or(text, |stop| &text[..stop.at.start]);
    let mut builder = Builder::new(readable, stop);
    let to_the_end = builder.read_on();
    builder.finished(to_the_end)
}

struct Builder<'t> {
    text: &'t str,
    /// What ends the readable text before the file ends.
    stop: Option<TreeFault>,
    faults: Vec<TreeFault>,
    root: Option<Node>,
    documents: usize,
    opened: Vec<Opened>,
    nodes: usize,
    /// The end of the last value, key, closing bracket or `---`.
    last: usize,
}

impl<'t> Builder<'t> {
    fn new(text: &'t str, stop: Option<TreeFault>) -> Self {
        Self {
            text,
            stop,
            faults: screening::directives(text),
            root: None,
            documents: 0,
            opened: Vec::new(),
            nodes: 0,
            last: screening::first_byte(text),
        }
    }

    /// Returns whether the text was read to its end.
    fn read_on(&mut self) -> bool {
        for next in Parser::new_from_str_with_options(self.text, options()) {
            let stopped_by = match next {
                Ok((event, span)) => self.event(event, &span).err(),
                Err(error) => {
                    self.faults.extend(self.complaint(&error));
                    return false;
                }
            };
            if let Some(fault) = stopped_by {
                self.faults.push(fault);
                return false;
            }
        }
        true
    }

    fn finished(mut self, to_the_end: bool) -> Tree {
        while let Some(opened) = self.opened.pop() {
            self.place(opened.closed());
        }
        let complete = to_the_end && self.stop.is_none() && self.documents <= 1;
        self.faults.extend(self.stop.take());
        let at = screening::first_byte(self.text);
        let at = self.root.as_ref().map_or(Span { start: at, end: at }, |root| root.span);
        let root = self.root.filter(|root| root.shape != Shape::Empty);
        if root.is_none() && self.faults.is_empty() {
            self.faults.push(TreeFault::new(TreeFaultKind::Empty, at));
        }
        Tree { root, faults: self.faults, complete }
    }

    /// Returns what the parser complains of, unless another fault has already told it.
    fn complaint(&self, error: &ScanError) -> Option<TreeFault> {
        let place = wording::place(error, self.text);
        let torn_off = self.stop.is_some()
            && (wording::ended_too_soon(error)
                || place >= marks::line_start(self.text, self.text.len()));
        let told = |fault: &TreeFault| {
            matches!(fault.what, TreeFaultKind::Directive { .. })
                && (fault.at.start..=marks::line_end(self.text, fault.at.end)).contains(&place)
        };
        let bracket = self.opened.iter().rfind(|opened| opened.bracket);
        let bracket = bracket.map(|opened| opened.span.start);
        let known = wording::Known { text: self.text, last: self.last, bracket };
        (!torn_off && !self.faults.iter().any(told)).then(|| wording::fault(error, &known))
    }

    /// Takes one event; an error ends the reading.
    fn event(&mut self, event: Event<'_>, span: &granit_parser::Span) -> Result<(), TreeFault> {
        let at = self.bytes(span);
        match event {
            Event::DocumentStart(explicit, _) => self.document(explicit, at),
            Event::DocumentEnd => self.last = self.last.max(at.end),
            Event::Scalar(text, style, ..) => {
                self.count(at)?;
                self.tag(span);
                self.scalar(&text, style, at);
            }
            Event::SequenceStart(style, ..) => {
                self.count(at)?;
                self.tag(span);
                let (start, bracket) = self.begin(style, self.list_start(style, at))?;
                self.opened.push(Opened::list(start, bracket));
            }
            Event::MappingStart(style, ..) => {
                self.count(at)?;
                self.tag(span);
                let (start, bracket) = self.begin(style, at.start)?;
                self.opened.push(Opened::map(start, bracket));
            }
            Event::SequenceEnd | Event::MappingEnd => self.close(at),
            Event::Anchor(_, name) => {
                let name = screening::shortened(&name);
                self.faults.push(TreeFault::new(TreeFaultKind::Anchor { name }, at));
            }
            Event::Alias(_) | Event::UnresolvedAlias(_) => {
                self.count(at)?;
                self.alias(at);
            }
            _ => {}
        }
        Ok(())
    }

    fn document(&mut self, explicit: bool, at: Span) {
        self.documents += 1;
        // One without a mark begins with its first value, of which a text block gives only the lines.
        if explicit {
            self.last = at.end;
        }
        if self.documents > 1 {
            let at = if explicit { at } else { marks::character(self.text, at.start) };
            self.faults.push(TreeFault::new(TreeFaultKind::TwoDocuments, at));
        }
    }

    fn count(&mut self, at: Span) -> Result<(), TreeFault> {
        self.nodes += 1;
        if self.nodes <= NODES {
            return Ok(());
        }
        let too_many = TreeFaultKind::TooLarge { limit: Limit::Nodes };
        Err(TreeFault::new(too_many, marks::character(self.text, at.start)))
    }

    fn tag(&mut self, span: &granit_parser::Span) {
        let Some(tag) = span.tag_span() else { return };
        let at = self.bytes(&tag);
        let tag = screening::shortened(&self.text[at.start..at.end]);
        self.faults.push(TreeFault::new(TreeFaultKind::Tag { tag }, at));
    }

    fn alias(&mut self, at: Span) {
        let name = self.text[at.start..at.end].trim_start_matches('*');
        let name = screening::shortened(name);
        self.faults.push(TreeFault::new(TreeFaultKind::Alias { name }, at));
        self.last = at.end;
        self.place(Node { span: at, shape: Shape::Refused });
    }

    fn scalar(&mut self, text: &str, style: ScalarStyle, at: Span) {
        if self.opened.last().is_some_and(Opened::awaits_key) {
            return self.key(text, style, at);
        }
        let node = values::value(self.text, self.last, text, style, at);
        self.last = node.span.end;
        self.place(if self.is_torn(node.span) { refused(node.span) } else { node });
    }

    fn key(&mut self, text: &str, style: ScalarStyle, at: Span) {
        self.last = at.end;
        let Some(map) = self.opened.last_mut() else { return };
        let nothing = at.start == at.end || text.is_empty();
        let fault = if nothing {
            map.refuse_key(at);
            let at = if at.start == at.end { marks::character(self.text, at.start) } else { at };
            Some(TreeFault::new(TreeFaultKind::KeyNotText, at))
        } else if text == "<<" && style == ScalarStyle::Plain {
            map.refuse_key(at);
            Some(TreeFault::new(TreeFaultKind::MergeKey, at))
        } else {
            map.take_key(text.to_owned(), at)
        };
        self.faults.extend(fault);
    }

    /// Returns whether the readable text breaks off so near that a value may be only half there.
    fn is_torn(&self, value: Span) -> bool {
        let within_a_line = |stop: &TreeFault| matches!(stop.what, TreeFaultKind::NotYaml { .. });
        self.stop.as_ref().is_some_and(within_a_line)
            && self.text[value.end..].trim_start().is_empty()
    }

    /// Returns the first byte of a list. Under a key the parser may give that of its first item.
    fn list_start(&self, style: StructureStyle, at: Span) -> usize {
        let under_a_key =
            self.opened.last().is_some_and(|map| map.awaits_key() || map.awaits_value());
        match style {
            StructureStyle::Block if under_a_key => {
                marks::first(self.text, self.last, b"-").unwrap_or(at.start)
            }
            _ => at.start,
        }
    }

    /// Returns where a map or list begins, and whether with a bracket.
    fn begin(&mut self, style: StructureStyle, start: usize) -> Result<(usize, bool), TreeFault> {
        if self.opened.len() >= LEVELS {
            let too_deep = TreeFaultKind::TooLarge { limit: Limit::Levels };
            return Err(TreeFault::new(too_deep, marks::character(self.text, start)));
        }
        if style == StructureStyle::Block {
            let tab = marks::tab_before(self.text, start);
            self.faults.extend(tab.map(|tab| {
                let what = TreeFaultKind::NotYaml { message: wording::TAB.to_owned() };
                TreeFault::new(what, marks::character(self.text, tab))
            }));
        }
        let first = self.text.as_bytes().get(start);
        Ok((start, style == StructureStyle::Flow && matches!(first, Some(b'[' | b'{'))))
    }

    fn close(&mut self, at: Span) {
        let Some(mut opened) = self.opened.pop() else { return };
        if opened.bracket {
            opened.span.end = at.end;
            self.last = at.end;
        }
        self.place(opened.closed());
    }

    fn place(&mut self, node: Node) {
        match self.opened.last_mut() {
            Some(map) if map.awaits_key() => {
                map.refuse_key(node.span);
                if node.shape != Shape::Refused {
                    self.faults.push(TreeFault::new(TreeFaultKind::KeyNotText, node.span));
                }
            }
            Some(opened) => opened.take_value(node),
            None if self.documents <= 1 => self.root = Some(node),
            None => {}
        }
    }

    fn bytes(&self, span: &granit_parser::Span) -> Span {
        let byte = |at: Option<usize>| self.text.floor_char_boundary(at.unwrap_or(self.text.len()));
        let start = byte(span.start.byte_offset());
        Span { start, end: byte(span.end.byte_offset()).max(start) }
    }
}

fn options() -> Options {
    granit_parser::options! {
        strict_indentation: true,
        emit_unresolved_aliases: true,
        emit_anchor_events: true,
        emit_comments: false,
        flow_nesting_limit: LEVELS,
        block_nesting_limit: LEVELS,
    }
}

fn refused(span: Span) -> Node {
    Node { span, shape: Shape::Refused }
}
