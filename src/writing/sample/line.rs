//! A line of the story, read: who, when and why, or what was done to which file.

use super::story::Person;
use super::story::person;
use crate::store::founding::Signed;
use crate::units::Date;

/// The beginning of a commit: `2025-04-05 18:10 Ines on main: kittiwake: rigged`.
#[derive(Clone, Debug)]
pub(super) struct Heading<'s> {
    pub(super) by: Signed,
    pub(super) branch: &'s str,
    pub(super) subject: &'s str,
}

/// What a line below a heading does.
#[derive(Clone, Debug)]
pub(super) enum Deed<'s> {
    /// `add PATH`: a record of the sample comes into the book.
    Add(&'s str),
    /// `new PATH | TEXT`: a file of this text.
    New(&'s str, String),
    /// `edit PATH | ANCHOR | FROM | TO`, `\n` for a line's end.
    Edit(&'s str, &'s str, String, String),
    /// `reorder PATH | BLOCK | BEFORE`.
    Reorder(&'s str, &'s str, &'s str),
    /// `indent PATH`.
    Indent(&'s str),
    /// `rename PATH | PATH`.
    Rename(&'s str, &'s str),
    /// `remove PATH`.
    Remove(&'s str),
    /// `merge BRANCH`: its second parent.
    Merge(&'s str),
    /// `tag NAME | MESSAGE`.
    Tag(&'s str, &'s str),
    /// `say TEXT`: a line of the message's body.
    Say(&'s str),
}

impl<'s> Heading<'s> {
    pub(super) fn read(line: &'s str) -> Result<Self, String> {
        let (before, subject) = line.split_once(": ").ok_or("a heading has a subject")?;
        let words: Vec<&str> = before.split(' ').collect();
        let [day, time, name, "on", branch] = words[..] else {
            return Err("a heading is: DAY TIME NAME on BRANCH: SUBJECT".into());
        };
        let person = person(name).ok_or_else(|| format!("nobody is called {name}"))?;
        Ok(Self { by: signed(person, day, time)?, branch, subject })
    }
}

impl<'s> Deed<'s> {
    pub(super) fn read(line: &'s str) -> Result<Self, String> {
        let (verb, rest) = line.split_once(' ').ok_or("a deed has an object")?;
        let parts: Vec<&str> = rest.split('|').map(str::trim).collect();
        match (verb, &parts[..]) {
            ("say", _) => Ok(Self::Say(rest)),
            ("add", [path]) => Ok(Self::Add(path)),
            ("new", [path, text]) => Ok(Self::New(path, unfolded(text))),
            ("edit", [path, anchor, from, to]) => {
                Ok(Self::Edit(path, anchor, unfolded(from), unfolded(to)))
            }
            ("reorder", [path, block, before]) => Ok(Self::Reorder(path, block, before)),
            ("indent", [path]) => Ok(Self::Indent(path)),
            ("rename", [from, to]) => Ok(Self::Rename(from, to)),
            ("remove", [path]) => Ok(Self::Remove(path)),
            ("merge", [branch]) => Ok(Self::Merge(branch)),
            ("tag", [name, message]) => Ok(Self::Tag(name, message)),
            _ => Err(format!("no deed is written like this: {line}")),
        }
    }
}

fn unfolded(text: &str) -> String {
    text.replace("\\n", "\n")
}

/// Returns the person at a time of the club's own clock: an hour ahead of UTC from April to
/// October.
fn signed(person: &Person, day: &str, time: &str) -> Result<Signed, String> {
    let date = |text| Date::read(text).map_err(|error| error.to_string());
    let days = date(day)?.days_after(date("1970-01-01")?);
    let number = |text: &str| text.parse::<i64>().map_err(|error| error.to_string());
    let (hours, minutes) = time.split_once(':').ok_or("a time is HH:MM")?;
    let is_summer = ("04".."11").contains(&&day[5..7]);
    let ahead = if is_summer { 60 } else { 0 };
    Ok(Signed {
        name: person.name.to_owned(),
        email: person.email.to_owned(),
        seconds: days * 86_400
            + number(hours)? * 3_600
            + (number(minutes)? - i64::from(ahead)) * 60,
        ahead,
    })
}
