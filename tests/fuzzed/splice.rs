//! Any three texts of a record, joined.

use tholebook::reading::tree;
use tholebook::writing::editing::Meaning;
use tholebook::writing::splicing::Labels;
use tholebook::writing::splicing::Sides;
use tholebook::writing::splicing::changes;
use tholebook::writing::splicing::joined;

const LABELS: Labels<'static> = Labels { ours: "ours", theirs: "theirs", size: 7 };

/// Takes the bytes for three texts with a zero byte between, and joins them; then with one side as
/// the base.
pub(crate) fn tried(bytes: &[u8]) {
    let text = String::from_utf8_lossy(bytes);
    let mut texts = text.splitn(3, '\0');
    let mut next = || texts.next().unwrap_or_default();
    let (base, ours, theirs) = (next(), next(), next());
    let _ = splice(&Sides { base, ours, theirs });
    if let Some((text, clean)) = splice(&Sides { base, ours, theirs: base }) {
        assert!(clean && text == ours, "only ours changed: {base:?} {ours:?} {text:?}");
    }
    if let Some((text, clean)) = splice(&Sides { base, ours: base, theirs }) {
        assert!(clean && says(&text) == says(theirs), "only theirs: {base:?} {theirs:?} {text:?}");
    }
}

/// Returns the joined text and whether nothing was disputed; nothing where it is refused. What is
/// not disputed reads without fault.
fn splice(sides: &Sides<'_>) -> Option<(String, bool)> {
    let changes = changes(sides).ok()?;
    let clean = changes.each.iter().all(|change| change.dispute.is_none());
    let text = joined(sides, &changes, &LABELS, &[]).ok()?;
    assert!(!clean || tree::read(&text).faults.is_empty(), "{sides:?}: {text:?}");
    Some((text, clean))
}

fn says(text: &str) -> Option<Meaning> {
    tree::read(text).root.map(|root| pruned(Meaning::of(&root)).settled())
}

/// Leaves out the keys that say nothing, and the order of sections.
fn pruned(meaning: Meaning) -> Meaning {
    match meaning {
        Meaning::Map(map) => {
            let pruned = map.into_iter().map(|(key, value)| (key, pruned(value)));
            Meaning::Map(pruned.filter(|(_, value)| *value != Meaning::Empty).collect())
        }
        Meaning::List(list) => {
            let mut list: Vec<Meaning> = list.into_iter().map(pruned).collect();
            if list.iter().all(|part| matches!(part, Meaning::Map(_))) {
                list.sort_by_key(|part| format!("{:?}", part.clone().settled()));
            }
            Meaning::List(list)
        }
        Meaning::Empty | Meaning::Word(_) => meaning,
    }
}
