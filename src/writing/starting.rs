//! The texts that a new book begins with: the club's settings and what a server runs to check it.

use super::editing::word;
use crate::model::Tool;

/// The line that tells an editor which schema a record keeps to; `schema` as seen from the record.
#[must_use]
pub fn editor_line(schema: &str) -> String {
    format!("# yaml-language-server: $schema={schema}\n")
}

/// Returns the text of `club.yaml`; `readings` is how finely each tool reads, as it is written.
#[must_use]
pub fn club(name: &str, readings: &[(Tool, String)], schema: &str) -> String {
    let finely: String = Tool::STATED
        .iter()
        .filter_map(|(tool, key)| {
            let (_, said) = readings.iter().find(|(own, _)| own == tool)?;
            Some(format!("  {key}: {said}\n"))
        })
        .collect();
    format!(
        "{}logbook: 1\nclub: {}\nreadings:                       # half-widths: how finely the \
         club reads with each tool\n{finely}{REST}",
        editor_line(schema),
        word(name),
    )
}

/// What a club may say besides, written so that it says nothing yet.
const REST: &str = "\
# limits:                       # by class; what is left out keeps the class's own
#   surfboat:
#     clearance: {least: 5, source: who decided it, and when}
# people:                       # if present, only these may sign
#   - {name: WHO, may: [measure, pass, waive]}
# protect: {longest-waiver-days: 60}
";

/// A kind of server that runs a recipe.
#[derive(Clone, Copy, Debug, Eq, PartialEq)]
pub enum Server {
    /// One that looks for recipes below `.github`.
    Github,
    /// One that looks for `.gitlab-ci.yml`.
    Gitlab,
}

impl Server {
    /// Returns where the recipe stands, below the top of the repository.
    #[must_use]
    pub const fn file(self) -> &'static str {
        match self {
            Self::Github => ".github/workflows/book.yml",
            Self::Gitlab => ".gitlab-ci.yml",
        }
    }

    /// Returns the recipe for a book in the folder `below` the top of its repository; the top itself
    /// where it is empty. None for a folder whose name can't stand in a recipe as it is.
    #[must_use]
    pub fn recipe(self, below: &str) -> Option<String> {
        let text = match self {
            Self::Github => include_str!("../../example-club/.github/workflows/book.yml"),
            Self::Gitlab => include_str!("../../example-club/.gitlab-ci.yml"),
        };
        if below.is_empty() {
            return Some(text.to_owned());
        }
        let is_plain = below.chars().all(|c| c.is_ascii_alphanumeric() || "/._-".contains(c));
        is_plain.then(|| {
            text.replace("tholebook lint \"$@\"", &format!("tholebook lint {below} \"$@\""))
                .replace(
                    "tholebook diff \"$base...HEAD\"",
                    &format!("tholebook diff \"$base...HEAD\" --book {below}"),
                )
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::reading::read_alone;
    use crate::store::Named;

    #[test]
    fn the_settings_read_back_as_they_were_said() {
        let readings = [(Tool::Level, "0.2 deg".to_owned()), (Tool::Callipers, "0.1".to_owned())];
        let text = club("Tarrow Head: Boat Club #2", &readings, "schema/club.schema.json");
        let (book, faults) = read_alone(Named::text("club.yaml", &text));
        assert!(faults.is_empty(), "{faults:?}\n{text}");
        let name = book.club.name.map(|name| name.value);
        assert_eq!(name.as_deref(), Some("Tarrow Head: Boat Club #2"));
        let callipers = book.club.half_widths.of(Tool::Callipers).map(|said| said.value);
        assert_eq!(callipers, Some(0.1));
    }

    #[test]
    fn a_recipe_names_the_folder_of_the_book_wherever_it_calls_the_program() {
        for server in [Server::Github, Server::Gitlab] {
            let top = server.recipe("").expect("a recipe");
            let below = server.recipe("clubs/tarrow-head").expect("a recipe");
            assert!(
                below.contains("tholebook lint clubs/tarrow-head \"$@\" || code=$?"),
                "{below}"
            );
            assert!(below.contains("...HEAD\" --book clubs/tarrow-head --format"), "{below}");
            let calls = |text: &str| {
                text.matches("  tholebook ").count() + text.matches("|| tholebook ").count()
            };
            assert_eq!((calls(&top), below.matches("clubs/tarrow-head").count()), (2, 2));
            assert_eq!(server.recipe("a b"), None);
            assert_eq!(server.recipe("${{ x }}"), None);
        }
    }
}
