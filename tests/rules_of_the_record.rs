//! What the examples of the rules about the record, the oars and the crew don't show.

#[path = "rules_of_the_record/days_and_people.rs"]
mod days_and_people;
#[path = "rules_of_the_record/figures.rs"]
mod figures;
#[path = "rules_of_the_record/found.rs"]
mod found;
#[path = "rules_of_the_record/oars_and_crews.rs"]
mod oars_and_crews;
mod sound_book;
#[path = "rules_of_the_record/wear.rs"]
mod wear;
