//! The pages before a race as Markdown. Whatever stands in a file, it makes no heading and no link.

use super::super::cautions::COLD_BENDING;
use super::super::cautions::NO_PERMISSION;
use super::super::cautions::WHERE_THE_SUMS_STOP;
use super::super::cautions::bends_metal;
use super::super::cell::cell;
use super::Ready;
use super::cells;
use super::page;
use super::page::Page;
use super::sections;
use super::sections::Section;

/// Returns a part for each boat.
#[must_use]
pub fn ready_markdown(ready: &Ready) -> String {
    page::pages(ready).iter().map(part).collect::<Vec<_>>().join("\n")
}

fn part(page: &Page) -> String {
    let boat = page.boat.boat;
    let on = page.ready.report.as_of;
    let mut out = format!("## {} on {on}\n\n", cell(boat.called()));
    let (first, rest) = page.stands_words();
    out.push_str(&format!("**{first}**{}\n\n", cell(&rest)));
    let said = |text: Option<&str>| cell(text.unwrap_or("nobody says"));
    let rigged = &boat.rigged;
    let day = rigged.date.map_or("on no day".to_owned(), |day| day.value.to_string());
    out.push_str(&format!(
        "Rigged {day} by {}, passed by {}.\n",
        said(rigged.by.as_ref().map(|by| &*by.value)),
        said(rigged.checked_by.as_ref().map(|by| &*by.value))
    ));
    sections::above(page).iter().for_each(|own| section(&mut out, own));
    table(&mut out, page);
    sections::below(page).iter().for_each(|own| section(&mut out, own));
    if let Some(notes) = sections::notes(page) {
        out.push_str(&format!("\n{}\n", cell(&notes)));
    }
    out.push_str(&format!("\nWhere the sums stop. {WHERE_THE_SUMS_STOP}\n"));
    if page.findings.iter().any(|finding| bends_metal(finding.rule)) {
        out.push_str(&format!("\n{COLD_BENDING}\n"));
    }
    out.push_str(&format!("\n{NO_PERMISSION}\n"));
    out.push_str(
        "\n| measured | checked | sweep | time |\n| --- | --- | --- | --- |\n|  |  |  |  |\n",
    );
    out
}

fn section(out: &mut String, section: &Section) {
    out.push_str(&format!("\n### {}\n\n", cell(&section.called)));
    let mark = if section.to_do { "- [ ] " } else { "- " };
    for line in &section.lines {
        out.push_str(&format!("{mark}{}\n", cell(line)));
    }
}

fn table(out: &mut String, page: &Page) {
    let heads = cells::HEADS.map(|(head, below)| format!("{head} {below}").trim().to_owned());
    out.push_str(&format!("\n| {} |\n|{}\n", heads.join(" | "), " --- |".repeat(heads.len())));
    for row in &page.seats {
        let cells = cells::cells(row).map(|text| cell(&text));
        out.push_str(&format!("| {} |\n", cells.join(" | ")));
    }
    out.push_str(&format!("\n{}\n", cell(&cells::good_to(page))));
}
