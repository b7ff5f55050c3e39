//! XML 1.0, written so that whatever a text holds it stays well formed. Knows no report.

use crate::reports::shown;

/// An XML document that is being written.
pub(super) struct Xml {
    out: String,
    open: Vec<&'static str>,
}

/// The attributes of an element, in order.
pub(super) type Attributes<'a> = &'a [(&'static str, &'a str)];

impl Xml {
    /// Begins a document.
    pub(super) fn new() -> Self {
        Self { out: "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n".to_owned(), open: Vec::new() }
    }

    /// Begins an element that holds others.
    pub(super) fn begin(&mut self, tag: &'static str, attributes: Attributes) {
        self.tag(tag, attributes);
        self.out.push_str(">\n");
        self.open.push(tag);
    }

    /// Ends the element begun last.
    pub(super) fn end(&mut self) {
        if let Some(tag) = self.open.pop() {
            self.indent();
            self.out.push_str(&format!("</{tag}>\n"));
        }
    }

    /// Writes an element with a text, or with nothing in it.
    pub(super) fn leaf(&mut self, tag: &'static str, attributes: Attributes, text: &str) {
        self.tag(tag, attributes);
        if text.is_empty() {
            self.out.push_str("/>\n");
        } else {
            self.out.push_str(&format!(">{}</{tag}>\n", escaped(text)));
        }
    }

    /// Returns the document, every element ended.
    pub(super) fn finish(mut self) -> String {
        while !self.open.is_empty() {
            self.end();
        }
        self.out
    }

    fn tag(&mut self, tag: &str, attributes: Attributes) {
        self.indent();
        self.out.push_str(&format!("<{tag}"));
        for (key, value) in attributes {
            self.out.push_str(&format!(" {key}=\"{}\"", escaped(&shown::line(value))));
        }
    }

    fn indent(&mut self) {
        self.out.push_str(&"  ".repeat(self.open.len()));
    }
}

/// Returns a text that is XML's own nowhere. Characters that XML can't hold, not even escaped, are
/// written out.
///
/// # Source
///
/// XML 1.0, fifth edition, 2.2 (the characters there are) and 2.4 (`]]>` must not stand in a text).
fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in shown::lines(text).chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\u{fffe}' | '\u{ffff}' => out.extend(c.escape_unicode()),
            _ => out.push(c),
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn an_element_is_ended_where_it_must_be() {
        let mut xml = Xml::new();
        xml.begin("a", &[("b", "1 < 2 \"")]);
        xml.leaf("c", &[], "]]>");
        xml.leaf("d", &[("e", "")], "");
        assert_eq!(
            xml.finish(),
            "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<a b=\"1 &lt; 2 &quot;\">\n  \
             <c>]]&gt;</c>\n  <d e=\"\"/>\n</a>\n"
        );
    }

    proptest! {
        /// The reader is one that knows nothing of this writer.
        #[test]
        fn any_text_comes_back_as_it_is_shown(
            text in proptest::collection::vec(
                prop_oneof![any::<char>(), proptest::char::range('\0', '\u{a0}'), Just('\u{ffff}')],
                1..40,
            )
        ) {
            let text: String = text.into_iter().collect();
            let mut xml = Xml::new();
            xml.leaf("a", &[("b", &text)], &text);
            let written = xml.finish();
            let read = roxmltree::Document::parse(&written).expect("XML");
            let shown = |text: &str| {
                let shown = shown::lines(text);
                shown.replace('\u{ffff}', "\\u{ffff}").replace('\u{fffe}', "\\u{fffe}")
            };
            let root = read.root_element();
            prop_assert_eq!(root.text().unwrap_or_default(), shown(&text));
            prop_assert_eq!(root.attribute("b"), Some(&*shown(&shown::line(&text))));
        }
    }
}
