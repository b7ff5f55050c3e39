//! The texts of a book as they should read after the work of a worklist: comments and layout stay.
//! Touches no disk, and never a book that is there: nobody measured what it says.

use super::editing::Address;
use super::editing::Deed;
use super::editing::Meaning;
use super::editing::Refused;
use super::editing::Wording;
use super::editing::edited;
use crate::model::Book;
use crate::model::FileId;
use crate::planning::worklist::At;
use crate::planning::worklist::Change;
use crate::planning::worklist::ChangeTo;
use crate::planning::worklist::Worklist;

/// Returns the path and text of every file that differs after the work, the boat's first.
///
/// # Errors
///
/// [`Refused`]: a text that can't be changed without touching what stands around the value.
pub fn texts(book: &Book, list: &Worklist) -> Result<Vec<(String, String)>, Refused> {
    let mut texts: Vec<(FileId, String)> = Vec::new();
    for change in &list.changes {
        let known = texts.iter().position(|(file, _)| *file == change.file);
        let index = known.unwrap_or_else(|| {
            texts.push((change.file, book.file(change.file).text.clone()));
            texts.len() - 1
        });
        texts[index].1 = changed(&texts[index].1, change)?;
    }
    let path = |(file, text)| (book.file(file).path.clone(), text);
    Ok(texts.into_iter().map(path).collect())
}

fn changed(text: &str, change: &Change) -> Result<String, Refused> {
    let at = change.at.iter().fold(Address::root(), |at, step| match step {
        At::Key(key) => at.key(key),
        At::Part(key, is) => at.part(key, is),
        At::Number(number) => at.number(*number),
    });
    let word = |text: &String| Meaning::Word(text.clone());
    match &change.deed {
        // Numbers and the word true are no texts: they stand without quotes.
        ChangeTo::Set { says, to: None } => {
            edited(text, &at, &Deed::Set(&Wording::as_written(word(says), says.clone())))
        }
        ChangeTo::Set { says, to: Some(to) } => {
            let both = [("read", says), ("to", to)];
            let both = both.map(|(key, says)| (key.to_owned(), word(says)));
            edited(text, &at, &Deed::Set(&Wording::of(Meaning::Map(both.to_vec()))))
        }
        ChangeTo::Append(keys) => {
            let keys = keys.iter().map(|(key, says)| ((*key).to_owned(), word(says)));
            edited(text, &at, &Deed::Append(&Wording::of(Meaning::Map(keys.collect()))))
        }
        ChangeTo::Removed => edited(text, &at, &Deed::Remove),
    }
}
