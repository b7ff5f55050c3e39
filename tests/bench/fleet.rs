//! A fleet of any size on disk, made from the sound book: each boat with an oar set of her own.

use std::fs;
use std::io;
use std::path::Path;

const BOAT: &str = include_str!("../data/sound-book/boats/kittiwake.yaml");
const OARS: &str = include_str!("../data/sound-book/oars/long-ash.yaml");
const CLUB: &str = include_str!("../data/sound-book/club.yaml");

/// Every so many boats one has a rowlock that is too tight.
const TIGHT: usize = 10;

/// Writes a book of `boats` boats below `root`; returns how many bytes its records hold.
pub(crate) fn write(root: &Path, boats: usize) -> io::Result<usize> {
    fs::create_dir_all(root.join("boats"))?;
    fs::create_dir_all(root.join("oars"))?;
    fs::write(root.join("club.yaml"), CLUB)?;
    let mut bytes = 0;
    for number in 0..boats {
        let (boat, oars) = (boat(number), oars(number));
        bytes += boat.len() + oars.len();
        fs::write(root.join(format!("boats/b{number}.yaml")), boat)?;
        fs::write(root.join(format!("oars/o{number}.yaml")), oars)?;
    }
    Ok(bytes)
}

fn boat(number: usize) -> String {
    let boat = BOAT
        .replace("boat: kittiwake", &format!("boat: b{number}"))
        .replace("oars: long-ash", &format!("oars: o{number}"));
    if number.is_multiple_of(TIGHT) { boat.replacen("gap: 60", "gap: 54", 1) } else { boat }
}

fn oars(number: usize) -> String {
    OARS.replace("oar-set: long-ash", &format!("oar-set: o{number}"))
}
