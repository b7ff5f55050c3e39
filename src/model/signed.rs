//! Every day and every signature that a book holds, wherever it stands.

use super::boat::Boat;
use super::book::Book;
use super::name::Name;
use super::oars::Measured;
use super::place::{Place, Placed};
use super::upkeep::Defect;
use super::words::May;
use crate::units::Date;

/// A name put to something, and what the one who puts it there must be allowed to do.
#[derive(Clone, Copy, Debug)]
pub struct Signature<'b> {
    /// The name.
    pub who: &'b Placed<String>,
    /// What it needs.
    pub needs: May,
}

impl Book {
    /// Returns the name of the value that was written at a place.
    #[must_use]
    pub fn name_at(&self, place: Place) -> Option<&Name> {
        let own = self.written_in(place.file);
        own.iter().find(|own| own.place == place).map(|own| &own.name)
    }

    /// Returns every day on which something is said to have been done. The last day of a waiver
    /// is none of them.
    #[must_use]
    pub fn days(&self) -> Vec<Placed<Date>> {
        let boats = self.boats.iter().flat_map(days_of);
        let measured = self.measured().filter_map(|measured| measured.date);
        let oars = self.oar_defects().flat_map(days_of_defect);
        boats.chain(measured).chain(oars).collect()
    }

    /// Returns every signature but those of waivers, which are judged as a whole.
    #[must_use]
    pub fn signatures(&self) -> Vec<Signature<'_>> {
        let boats = self.boats.iter().flat_map(signatures_of);
        let measured = self.measured();
        let measured = measured.flat_map(|own| signed(own.by.as_ref(), own.checked_by.as_ref()));
        let oars = self.oar_defects().flat_map(signatures_of_defect);
        boats.chain(measured).chain(oars).collect()
    }

    fn measured(&self) -> impl Iterator<Item = &Measured> {
        let sets = self.oar_sets.iter().map(|set| &set.measured);
        sets.chain(self.crews.iter().map(|crew| &crew.measured))
    }

    fn oar_defects(&self) -> impl Iterator<Item = &Defect> {
        self.oar_sets.iter().flat_map(|set| &set.oars).flat_map(|oar| &oar.defects)
    }
}

fn days_of(boat: &Boat) -> Vec<Placed<Date>> {
    let mut days: Vec<Placed<Date>> = boat.level_mark.found_afloat.into_iter().collect();
    days.extend(boat.rigged.date);
    days.extend(boat.read_again.iter().filter_map(|again| again.date));
    days.extend(boat.knocks.iter().filter_map(|knock| knock.date));
    days.extend(boat.bends.iter().filter_map(|bend| bend.date));
    days.extend(boat.defects.iter().flat_map(days_of_defect));
    days.extend(boat.out_of_use.as_ref().and_then(|out| out.since));
    days
}

fn days_of_defect(defect: &Defect) -> impl Iterator<Item = Placed<Date>> + use<> {
    let right = defect.put_right.as_ref().and_then(|right| right.date);
    defect.found.into_iter().chain(right)
}

fn signatures_of(boat: &Boat) -> Vec<Signature<'_>> {
    let rigged = &boat.rigged;
    let mut all: Vec<Signature> = signed(rigged.by.as_ref(), rigged.checked_by.as_ref()).collect();
    let again = boat.read_again.iter();
    all.extend(again.flat_map(|again| signed(again.by.as_ref(), again.checked_by.as_ref())));
    all.extend(boat.bends.iter().flat_map(|bend| signed(bend.by.as_ref(), None)));
    all.extend(boat.defects.iter().flat_map(signatures_of_defect));
    all.extend(boat.out_of_use.iter().flat_map(|out| signed(out.by.as_ref(), None)));
    all
}

fn signatures_of_defect(defect: &Defect) -> impl Iterator<Item = Signature<'_>> {
    let right = defect.put_right.iter();
    right.flat_map(|right| signed(right.by.as_ref(), right.passed_by.as_ref()))
}

fn signed<'b>(
    by: Option<&'b Placed<String>>,
    passed_by: Option<&'b Placed<String>>,
) -> impl Iterator<Item = Signature<'b>> {
    let by = by.map(|who| Signature { who, needs: May::Measure });
    by.into_iter().chain(passed_by.map(|who| Signature { who, needs: May::Pass }))
}
