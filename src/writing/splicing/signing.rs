//! Who did something, and on which day, is one thing: it is taken from one side or the other, never
//! put together from both.

use super::Change;
use super::Dispute;
use super::differing::Three;
use super::differing::same;
use super::differing::value_of;
use crate::writing::editing::Address;

/// The keys that make a signature, where one of them is `by`.
const SIGNATURE: [&str; 5] = ["date", "since", "by", "checked-by", "because"];

/// Disputes what theirs changes in the signature of a section, where ours changed it too.
pub(super) fn dispute(three: Three<'_>, at: &Address, found: &mut [Change]) {
    let Three { base, ours, .. } = three;
    let changed = |key: &str| !same(value_of(ours, key), value_of(base, key));
    if !SIGNATURE.into_iter().any(changed) {
        return;
    }
    for key in SIGNATURE {
        let place = at.key(key);
        for change in found.iter_mut().filter(|change| change.at == place) {
            change.dispute.get_or_insert(Dispute::Signature);
        }
    }
}
