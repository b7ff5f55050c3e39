//! Tells the story: goes through its commits in order and keeps, for each branch, the files as
//! they stand.

use std::collections::BTreeMap;
use std::collections::BTreeSet;

use super::RECORDS;
use super::StoryFault;
use super::edit;
use super::line::Deed;
use super::line::Heading;
use super::story::Chapter;
use super::story::chapters;
use crate::store::founding::Founding;
use crate::store::founding::MAIN;
use crate::store::founding::Planned;
use crate::store::founding::Tag;

type Files = BTreeMap<String, String>;

/// Where a branch stands.
#[derive(Clone, Default)]
struct Tip {
    /// The last commit, none yet at the very beginning.
    label: Option<String>,
    files: Files,
    /// The files as they were where the branch left `main`.
    left: Files,
}

/// A commit while its lines are read.
struct Draft {
    parents: Vec<String>,
    files: Files,
    body: Vec<String>,
    /// Files that were changed by hand, and those that a merge asks to.
    by_hand: BTreeSet<String>,
    asked: BTreeSet<String>,
}

#[derive(Default)]
struct Telling {
    plan: Founding,
    tips: BTreeMap<String, Tip>,
}

/// Returns what the seasons' texts tell.
pub(super) fn tell(seasons: &[&str]) -> Result<Founding, StoryFault> {
    let mut telling = Telling::default();
    for (season, text) in (1..).zip(seasons) {
        for chapter in chapters(text) {
            telling.chapter(&chapter).map_err(|(line, what)| StoryFault { season, line, what })?;
        }
    }
    let labels = telling.tips.into_iter();
    telling.plan.branches =
        labels.filter_map(|(branch, tip)| tip.label.map(|label| (branch, label))).collect();
    Ok(telling.plan)
}

impl Telling {
    fn chapter(&mut self, chapter: &Chapter) -> Result<(), (usize, String)> {
        let (number, line) = chapter[0];
        let heading = Heading::read(line).map_err(|what| (number, what))?;
        let tip = self.tip(heading.branch);
        let mut draft = Draft::on(&tip);
        for (number, line) in &chapter[1..] {
            let deed = Deed::read(line).map_err(|what| (*number, what))?;
            self.deed(&heading, &mut draft, deed).map_err(|what| (*number, what))?;
        }
        self.close(heading, tip, draft).map_err(|what| (number, what))
    }

    /// Returns where a branch stands; a new one stands where `main` does.
    fn tip(&self, branch: &str) -> Tip {
        self.tips.get(branch).cloned().unwrap_or_else(|| {
            let main = self.tips.get(MAIN).cloned().unwrap_or_default();
            Tip { left: main.files.clone(), ..main }
        })
    }

    /// The label of the commit that comes next.
    fn next(&self) -> String {
        (self.plan.commits.len() + 1).to_string()
    }

    fn deed(&mut self, heading: &Heading, draft: &mut Draft, deed: Deed) -> Result<(), String> {
        match deed {
            Deed::Merge(branch) => {
                let tip = self.tips.get(branch).ok_or("there is no such branch")?;
                draft.merge(tip)
            }
            Deed::Tag(name, message) => {
                let at = self.next();
                let (name, message) = (name.to_owned(), format!("{message}\n"));
                self.plan.tags.push(Tag { name, at, message, by: heading.by.clone() });
                Ok(())
            }
            other => draft.deed(other),
        }
    }

    fn close(&mut self, heading: Heading, tip: Tip, draft: Draft) -> Result<(), String> {
        if let Some(path) = draft.asked.difference(&draft.by_hand).next() {
            return Err(format!("both sides changed {path}: edit it in the merge"));
        }
        let label = self.next();
        let mut message = format!("{}\n", heading.subject);
        if !draft.body.is_empty() {
            message.push_str(&format!("\n{}\n", draft.body.join("\n")));
        }
        if draft.files == tip.files && draft.parents.len() < 2 {
            return Err("nothing changes in this commit".into());
        }
        let files = draft.files.clone();
        let parents = draft.parents;
        self.plan.commits.push(Planned {
            label: label.clone(),
            parents,
            by: heading.by,
            message,
            files: draft.files,
        });
        let tip = Tip { label: Some(label), files, ..tip };
        self.tips.insert(heading.branch.to_owned(), tip);
        Ok(())
    }
}

impl Draft {
    fn on(tip: &Tip) -> Self {
        Self {
            parents: tip.label.iter().cloned().collect(),
            files: tip.files.clone(),
            body: Vec::new(),
            by_hand: BTreeSet::new(),
            asked: BTreeSet::new(),
        }
    }

    /// Takes what the branch changed and this line didn't; what both changed is asked for.
    fn merge(&mut self, tip: &Tip) -> Result<(), String> {
        self.parents.extend(tip.label.clone());
        for path in tip.files.keys().chain(tip.left.keys()) {
            let (theirs, left) = (tip.files.get(path), tip.left.get(path));
            let ours = self.files.get(path);
            if theirs == left || theirs == ours {
                continue;
            }
            match (ours == left, theirs) {
                (false, _) => {
                    self.asked.insert(path.clone());
                }
                (true, Some(text)) => {
                    self.files.insert(path.clone(), text.clone());
                }
                (true, None) => {
                    self.files.remove(path);
                }
            }
        }
        Ok(())
    }

    fn deed(&mut self, deed: Deed) -> Result<(), String> {
        match deed {
            Deed::Add(path) => {
                let record = RECORDS.iter().find(|(of, _)| *of == path);
                let (_, text) = record.ok_or("the sample has no such record")?;
                self.bring(path, (*text).to_owned())
            }
            Deed::New(path, text) => self.bring(path, text),
            Deed::Edit(path, anchor, from, to) => {
                self.change(path, |text| edit::replace(text, anchor, &from, &to))
            }
            Deed::Reorder(path, block, before) => {
                self.change(path, |text| edit::put_before(text, block, before))
            }
            Deed::Indent(path) => self.change(path, |text| Ok(edit::indent_more(text))),
            Deed::Rename(from, to) => {
                let text = self.take(from)?;
                self.bring(to, text)
            }
            Deed::Remove(path) => self.take(path).map(|_| ()),
            Deed::Say(line) => {
                self.body.push(line.to_owned());
                Ok(())
            }
            Deed::Merge(_) | Deed::Tag(..) => Err("this is no change of a file".into()),
        }
    }

    fn bring(&mut self, path: &str, text: String) -> Result<(), String> {
        match self.files.insert(path.to_owned(), text) {
            None => Ok(()),
            Some(_) => Err(format!("{path} is there already")),
        }
    }

    fn take(&mut self, path: &str) -> Result<String, String> {
        self.files.remove(path).ok_or_else(|| format!("there is no {path}"))
    }

    fn change(
        &mut self,
        path: &str,
        change: impl FnOnce(&str) -> Result<String, String>,
    ) -> Result<(), String> {
        let text = change(self.files.get(path).ok_or_else(|| format!("there is no {path}"))?)?;
        if self.files.insert(path.to_owned(), text.clone()) == Some(text) {
            return Err(format!("nothing changes in {path}"));
        }
        self.by_hand.insert(path.to_owned());
        Ok(())
    }
}
