//! By chance: any one number that is changed changes exactly one name, however much is rewritten.

use proptest::prelude::*;
use tholebook::history;
use tholebook::history::Change;
use tholebook::history::ChangeKind;
use tholebook::model::Book;
use tholebook::model::Said;
use tholebook::reading;
use tholebook::store;
use tholebook::store::Content;

const BOOKS: [&str; 2] = ["example-club", "tests/data/sound-book"];

/// A figure that stands in a book: its file, its bytes and its name.
struct Figure {
    file: usize,
    span: std::ops::Range<usize>,
    name: String,
}

fn texts(book: &str) -> store::Store {
    store::open_folder(std::path::Path::new(book)).expect("a book")
}

fn read(store: store::Store) -> Book {
    reading::read("book", store.files).0
}

/// Every figure that is a value of its own, and whose text is a plain number.
fn figures(book: &Book) -> Vec<Figure> {
    let mut all = Vec::new();
    for written in book.written() {
        let source = book.file(written.place.file);
        let span = written.place.span.start..written.place.span.end;
        let plain = source.text[span.clone()].parse::<f64>().is_ok();
        let name = written.name.as_str();
        let is_figure = matches!(written.said, Said::Figure { .. } | Said::Slope(_));
        let names_seat = name.ends_with("/seat") && !name.contains("/bends/");
        let left_out = name.contains("worked-out") || names_seat || name.ends_with("/logbook");
        if is_figure && plain && !source.built_in && !left_out {
            all.push(Figure { file: written.place.file.0, span, name: name.to_owned() });
        }
    }
    all
}

/// Returns the book with the bytes of a figure replaced and every file turned into new lines.
fn rewritten(book: &str, own: &Book, figure: &Figure, number: &str) -> Book {
    let path = own.files[figure.file].path.clone();
    let mut store = texts(book);
    for named in &mut store.files {
        let Content::Text(text) = &mut named.content else { continue };
        if named.path == path {
            text.replace_range(figure.span.clone(), number);
        }
        *text = format!("# rewritten\n\n{}\n# end\n", text.replace('\n', "   \n"));
    }
    read(store)
}

fn true_changes(changes: &[Change]) -> Vec<String> {
    let counts = |change: &&Change| change.kind != ChangeKind::ReMeasured;
    changes.iter().filter(counts).map(|change| change.name.to_string()).collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn one_number_changes_one_name(which in 0_usize..10_000, which_book in 0_usize..2, number in 1_u32..90) {
        let folder = BOOKS[which_book];
        let book = read(texts(folder));
        let all = figures(&book);
        let figure = &all[which % all.len()];
        let old: f64 = book.files[figure.file].text[figure.span.clone()].parse().expect("a number");
        prop_assume!((old - f64::from(number)).abs() > 0.0);
        let new = rewritten(folder, &book, figure, &number.to_string());
        let changes = history::changes(&book, &new);
        prop_assert_eq!(true_changes(&changes), vec![figure.name.clone()]);
        let back = history::changes(&new, &book);
        prop_assert_eq!(true_changes(&back), vec![figure.name.clone()]);
        prop_assert_eq!(back[0].delta, changes[0].delta.map(|delta| -delta));
    }
}
