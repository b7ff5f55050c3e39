//! The stature of those who row a boat.

use super::Budget;
use super::rower::RowerSight;
use super::sight::BoatSight;
use super::tools::Tools;
use crate::model::Crew;

impl BoatSight<'_> {
    /// Returns the mean stature, in millimetres, of every rower that has one in the crews that
    /// name the boat, and those crews; none where nobody's is written.
    #[must_use]
    pub fn mean_stature(&self) -> Option<(Budget, Vec<String>)> {
        let tools = Tools::of_club(self.book);
        let statures = |crew: &Crew| -> Vec<Budget> {
            let rowers = crew.rowers.iter();
            rowers.filter_map(|rower| RowerSight { tools, rower }.stature().ok()).collect()
        };
        let crews: Vec<(&Crew, Vec<Budget>)> = self
            .book
            .crews_of(self.boat)
            .map(|crew| (crew, statures(crew)))
            .filter(|(_, statures)| !statures.is_empty())
            .collect();
        let mean = Budget::mean(crews.iter().flat_map(|(_, statures)| statures))?;
        Some((mean, crews.iter().map(|(crew, _)| crew.id.value.clone()).collect()))
    }
}
