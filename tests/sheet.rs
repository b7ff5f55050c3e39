//! Pages to print and their drawings: on the scale they state, harmless, and whole without a network.

mod sheet {
    mod blank;
    mod command;
    mod drawn;
    mod hostile;
    pub(crate) mod page;
    mod sketches;
}
mod sound_book;
