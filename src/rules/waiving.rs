//! Waivers held against the findings: which count, and what is wrong with those that don't.
//!
//! A waiver counts for one finding, by its exact name and rule, until its last day, for no worse a
//! value than it was granted for. A danger can't be waived.

use super::finding::Figure;
use super::finding::Finding;
use super::finding::Granted;
use super::finding::NotChecked;
use super::level::Level;
use super::list::find;
use super::rule::Looks;
use super::rule::Rule;
use super::unread::Unread;
use super::waiver_lapsed;
use super::waiver_not_allowed;
use super::waiver_unused;
use super::words;
use crate::model::Book;
use crate::model::May;
use crate::model::Name;
use crate::model::Placed;
use crate::model::Waiver;
use crate::units::Date;

/// Marks the findings that are waived and adds those about the waivers themselves; `undone` is what
/// was not checked. Returns the waivers of which it can't be told whether there is anything to waive.
pub(super) fn waive(
    book: &Book,
    findings: &mut Vec<Finding>,
    undone: &[NotChecked],
    as_of: Date,
) -> Vec<NotChecked> {
    let (mut about, mut not_checked) = (Vec::new(), Vec::new());
    let unread = Unread::of(book).map(|unread| vec![unread.what()]);
    for waiver in &book.waivers {
        let Some(named) = Named::of(waiver) else { continue };
        let meant: Vec<usize> = named.positions(findings);
        let Some(first) = meant.first() else {
            if let Some(missing) = unread.clone().or_else(|| named.missing(undone)) {
                let (rule, name) = (waiver_unused::RULE.id, named.name());
                not_checked.push(NotChecked { rule, name, missing });
            } else if !named.may_be_needed_yet(as_of) {
                about.push(unused(&named));
            }
            continue;
        };
        match named.refusal(book, &findings[*first], as_of) {
            Some(refusal) => about.push(refusal),
            None => meant.iter().for_each(|at| findings[*at].waived = named.granted()),
        }
    }
    findings.extend(about);
    not_checked
}

/// A waiver that says what it is for.
struct Named<'w> {
    waiver: &'w Waiver,
    finding: &'w Placed<String>,
    rule: &'w Placed<String>,
}

impl<'w> Named<'w> {
    /// A waiver that does not say what it is for has been told while reading.
    fn of(waiver: &'w Waiver) -> Option<Self> {
        let (finding, rule) = (waiver.finding.as_ref()?, waiver.rule.as_ref()?);
        Some(Self { waiver, finding, rule })
    }

    fn name(&self) -> Name {
        Name::record(&self.finding.value)
    }

    fn positions(&self, findings: &[Finding]) -> Vec<usize> {
        let meant = |finding: &Finding| {
            finding.rule.id == self.rule.value && finding.name.as_str() == self.finding.value
        };
        (0..findings.len()).filter(|at| meant(&findings[*at])).collect()
    }

    /// Returns what is missing for the rule to be checked there, where it was not.
    fn missing(&self, undone: &[NotChecked]) -> Option<Vec<String>> {
        let meant = |undone: &&NotChecked| {
            undone.rule == self.rule.value && self.name().is_within(undone.name.as_str())
        };
        undone.iter().find(meant).map(|undone| undone.missing.clone())
    }

    /// Returns whether the book alone can't tell that there is nothing to waive: the rule looks at
    /// an earlier state too, and the last day is not over.
    fn may_be_needed_yet(&self, as_of: Date) -> bool {
        let beside = |rule: &Rule| matches!(rule.looks, Looks::BesideEarlier);
        find(&self.rule.value).is_some_and(beside)
            && self.waiver.until.is_some_and(|until| until.value >= as_of)
    }

    /// Returns the waiver with all that it must say, or nothing where something is missing.
    fn granted(&self) -> Option<Granted> {
        let text = |text: &Option<Placed<String>>| text.as_ref().map(|text| text.value.clone());
        Some(Granted {
            by: text(&self.waiver.by)?,
            because: text(&self.waiver.because)?,
            until: self.waiver.until?.value,
            at: self.waiver.at.map(|at| at.value),
        })
    }

    /// Returns why the waiver doesn't count, if it doesn't.
    fn refusal(&self, book: &Book, finding: &Finding, as_of: Date) -> Option<Finding> {
        self.of_a_danger(finding)
            .or_else(|| self.without_all_words())
            .or_else(|| self.by_someone_who_may_not(book))
            .or_else(|| self.past(as_of))
            .or_else(|| self.too_long(book, as_of))
            .or_else(|| self.without_a_value(finding))
            .or_else(|| self.moved(finding))
    }

    fn not_allowed(&self, why: String, remedy: &str) -> Finding {
        let rule = &waiver_not_allowed::RULE;
        Finding::new(rule, self.name(), self.finding.place, "this waiver")
            .saying(format!("This waiver of {} does not count: {why}", self.rule.value))
            .remedy(remedy)
    }

    fn of_a_danger(&self, finding: &Finding) -> Option<Finding> {
        (finding.level == Level::Danger).then(|| {
            let why = "a danger can't be waived".to_owned();
            self.not_allowed(why, "Put the boat right, or take her out of use.")
        })
    }

    /// What is missing has been told; the waiver still must not count.
    fn without_all_words(&self) -> Option<Finding> {
        let because = self.waiver.because.is_none().then_some("because");
        let missing = because.or(self.waiver.by.is_none().then_some("by"))?;
        Some(self.not_allowed(format!("`{missing}` is missing"), "Say who granted it, and why."))
    }

    fn by_someone_who_may_not(&self, book: &Book) -> Option<Finding> {
        let by = self.waiver.by.as_ref()?;
        let people = &book.club.people;
        let named = |name: &Option<Placed<String>>| {
            name.as_ref().is_some_and(|name| name.value == by.value)
        };
        let may = people.iter().any(|person| {
            named(&person.name) && person.may.iter().any(|may| may.value == May::Waive)
        });
        (!people.is_empty() && !may).then(|| {
            let why = format!("{} may not waive", by.value);
            self.not_allowed(why, "Let someone sign whom club.yaml lists with `waive`.")
        })
    }

    fn lapsed(&self, why: &str) -> Finding {
        let rule = &waiver_lapsed::RULE;
        let place = self.waiver.until.map_or(self.finding.place, |until| until.place);
        Finding::new(rule, self.name(), place, "lapsed")
            .saying(format!("The waiver of {} has lapsed: {why}", self.rule.value))
    }

    /// A last day that is missing, or no day, counts as past.
    fn past(&self, as_of: Date) -> Option<Finding> {
        match self.waiver.until {
            None => Some(self.lapsed("it has no last day that can be read")),
            Some(until) if until.value < as_of => {
                Some(self.lapsed(&format!("its last day was {}", until.value)))
            }
            Some(_) => None,
        }
    }

    fn too_long(&self, book: &Book, as_of: Date) -> Option<Finding> {
        let longest = book.club.protect.longest_waiver_days?.value;
        let days = self.waiver.until?.value.days_after(as_of);
        (days > i64::from(longest)).then(|| {
            let why = format!("it lasts {days} days; the club allows {longest} days");
            self.not_allowed(why, "Give it an earlier last day.")
        })
    }

    fn without_a_value(&self, finding: &Finding) -> Option<Finding> {
        let value = finding.value.filter(|_| self.waiver.at.is_none())?;
        let shown = words::number(value.number, value.unit);
        let why = format!("it doesn't say for what value; now it is {shown}");
        Some(self.not_allowed(why, &format!("Write `at: {}`.", as_granted(value))))
    }

    /// A value that is further out than the waiver was granted for, as both are shown.
    fn moved(&self, finding: &Finding) -> Option<Finding> {
        let (value, at) = (finding.value?, self.waiver.at?);
        let grain = 10_f64.powi(-i32::try_from(words::places(value.unit)).unwrap_or(0)) / 2.0;
        let outward = outward(finding, value.number);
        let further = (value.number - at.value) * outward > grain * (1.0 + 1e-9);
        further.then(|| {
            let now = words::number(value.number, value.unit);
            let then = words::limit(at.value, value.unit);
            let place = at.place;
            let mut lapsed = self.lapsed(&format!("it was granted for {then}; now it is {now}"));
            lapsed.labels[0].place = place;
            lapsed.remedy(format!(
                "Values are those worked out, corrected for level. Put the boat right, or have it \
                 granted anew: `at: {}`.",
                as_granted(value)
            ))
        })
    }
}

/// Returns a value as a waiver for it says it, under `at`.
fn as_granted(value: Figure) -> String {
    let places = words::places(value.unit);
    format!("{:.places$}", value.number)
}

impl Finding {
    /// Returns what a waiver of this says under `at`; nothing where the finding has no value.
    #[must_use]
    pub fn granted_at(&self) -> Option<String> {
        self.value.map(as_granted)
    }
}

/// Returns which way is further out: up where the value is over its limit, down where it is under.
fn outward(finding: &Finding, number: f64) -> f64 {
    let least = finding.limit.as_ref().and_then(|limit| limit.least);
    if least.is_some_and(|least| number < least) { -1.0 } else { 1.0 }
}

fn unused(named: &Named) -> Finding {
    Finding::new(&waiver_unused::RULE, named.name(), named.finding.place, "nothing to waive")
        .saying(format!("This waives {}, but there is no such finding", named.rule.value))
}
