//! Findings as drawings, lines and JSON; hostile text; rules and worked-out values in words.

#[path = "reports/counting.rs"]
mod counting;
#[path = "reports/drawing.rs"]
mod drawing;
#[path = "reports/explaining.rs"]
mod explaining;
#[path = "reports/figures.rs"]
mod figures;
#[path = "reports/hostile.rs"]
mod hostile;
#[path = "reports/json.rs"]
mod json;
mod sound_book;
#[path = "reports/telling.rs"]
mod telling;
