//! The names of the pages' files: small letters, digits and hyphens, no two alike in any letter case.

use std::collections::HashSet;

use crate::model::Book;

pub(super) const FLEET: &str = "index.html";
pub(super) const ROWLOCKS: &str = "rowlocks.html";
pub(super) const MEASURING: &str = "measuring.html";
pub(super) const LIMITS: &str = "limits.html";
pub(super) const WAIVERS: &str = "waivers.html";
pub(super) const CHANGES: &str = "changes.html";

/// The most letters of an id that a name keeps.
const LONGEST: usize = 60;

/// The names of the records' pages, in the order of the book.
pub(super) struct Names {
    pub(super) boats: Vec<String>,
    pub(super) sets: Vec<String>,
    pub(super) crews: Vec<String>,
}

impl Names {
    /// Names every record of a book.
    pub(super) fn of(book: &Book) -> Self {
        let mut taken = HashSet::new();
        let mut name = |kind: &str, id: &str| {
            let own = format!("{kind}-{}", safe(id));
            let more = (2..).map(|number| format!("{own}-{number}"));
            let mut free = std::iter::once(own.clone()).chain(more);
            let name = free.find(|name| taken.insert(name.clone())).unwrap_or(own);
            format!("{name}.html")
        };
        Self {
            boats: book.boats.iter().map(|boat| name("boat", &boat.id.value)).collect(),
            sets: book.oar_sets.iter().map(|set| name("oars", &set.id.value)).collect(),
            crews: book.crews.iter().map(|crew| name("crew", &crew.id.value)).collect(),
        }
    }
}

/// Returns an id as a part of a file's name. What is left out or made small is told apart by a sum
/// over the id, so that the page of a record keeps its name whatever else the book holds.
fn safe(id: &str) -> String {
    let plain = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
    if !id.is_empty() && id.len() <= LONGEST && id.chars().all(plain) {
        return id.to_owned();
    }
    let kept = id.chars().map(|c| c.to_ascii_lowercase()).filter(|c| plain(*c));
    let kept: String = kept.take(LONGEST).collect();
    format!("{kept}-{:016x}", sum(id))
}

/// FNV-1a, 64 bits: the same on every machine.
fn sum(text: &str) -> u64 {
    let add = |sum: u64, byte: u8| (sum ^ u64::from(byte)).wrapping_mul(0x0000_0100_0000_01b3);
    text.bytes().fold(0xcbf2_9ce4_8422_2325, add)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_is_safe_on_every_disk_and_tells_ids_apart() {
        assert_eq!(safe("kittiwake"), "kittiwake");
        assert_ne!(safe("A1"), safe("a1"));
        for id in ["../../etc", "a\u{202e}b", "", "CON", &"x".repeat(300), "<script>"] {
            let name = safe(id);
            let plain = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
            assert!(!name.is_empty() && name.len() < 90 && name.chars().all(plain), "{name}");
        }
    }

    /// Source: the FNV reference, test vectors of FNV-1a 64 for "a" and "foobar".
    #[test]
    fn the_sum_is_the_published_one() {
        assert_eq!(sum("a"), 0xaf63_dc4c_8601_ec8c);
        assert_eq!(sum("foobar"), 0x8594_4171_f739_67e8);
    }
}
