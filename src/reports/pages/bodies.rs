//! What the club keeps to itself of its rowers: stature, leg and weight.

use super::Site;
use crate::model::Name;
use crate::rules::Finding;

/// The last parts of the names of such values.
const OF_A_BODY: [&str; 3] = ["stature", "leg", "weight"];

/// What stands in front of a stature in a sentence, and what ends it.
const MEAN: (&str, &str) = ("for the mean stature of ", " mm");

impl Site<'_> {
    /// Returns whether bodies may be told.
    pub(super) fn publishes_bodies(&self) -> bool {
        let publish = self.pages.report.book.club.publish_crew;
        publish.is_some_and(|publish| publish.value)
    }

    /// Returns whether a value is of a body, and is not to be told.
    pub(super) fn keeps(&self, name: &Name) -> bool {
        if self.publishes_bodies() {
            return false;
        }
        let mut parts = name.as_str().split('/');
        let id = parts.next().unwrap_or_default();
        let of_body = parts.any(|part| OF_A_BODY.contains(&part));
        let book = self.pages.report.book;
        // What is no boat's and no oar's may be of a crew that is gone.
        of_body && book.boat(id).is_none() && book.oar_set(id).is_none()
    }

    /// Returns what is said of a finding, without what is not to be told.
    pub(super) fn message(&self, finding: &Finding) -> String {
        if self.keeps(&finding.name) {
            return "something is wrong with a measure of a body, which is left out here"
                .to_owned();
        }
        self.said(&finding.message)
    }

    /// Returns what is to be done about a finding, without what is not to be told.
    pub(super) fn remedy(&self, finding: &Finding) -> String {
        if self.keeps(&finding.name) {
            return "To be told of it: tholebook lint".to_owned();
        }
        self.said(&finding.remedy)
    }

    /// Returns a text without a stature.
    pub(super) fn said(&self, text: &str) -> String {
        let Some((before, rest)) = text.split_once(MEAN.0) else { return text.to_owned() };
        if self.publishes_bodies() {
            return text.to_owned();
        }
        let after = rest.split_once(MEAN.1).map_or("", |(_, after)| after);
        format!("{before}for the mean stature of her crews{}", self.said(after))
    }
}
