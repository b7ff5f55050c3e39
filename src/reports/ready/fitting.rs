//! Keeps a page to one sheet: which lines of its sections have room. Knows no boats.

use super::sections::Section;

/// How many lines of text a sheet of A4 holds, at six lines to the inch.
pub(super) const SHEET: usize = 66;

/// A section whose lines are broken as they will be printed.
pub(super) struct Block {
    pub(super) section: Section,
    /// Each line of the section, broken.
    pub(super) broken: Vec<String>,
    /// How many of them have room.
    pub(super) shown: usize,
}

impl Block {
    /// Returns how many are left out.
    pub(super) fn left_out(&self) -> usize {
        self.broken.len() - self.shown
    }

    /// A blank line, the heading, what is shown, and the line that says how many more there are.
    fn height(&self) -> usize {
        let shown: usize = self.broken[..self.shown].iter().map(|one| one.lines().count()).sum();
        2 + shown + usize::from(self.left_out() > 0)
    }
}

/// Gives each section as many lines as there is room for: in the order of their ranks, after every
/// section has its heading.
pub(super) fn fit(blocks: &mut [Block], room: usize) {
    for block in blocks.iter_mut() {
        block.shown = 0;
    }
    let mut order: Vec<usize> = (0..blocks.len()).collect();
    order.sort_by_key(|at| blocks[*at].section.rank);
    for at in order {
        while blocks[at].left_out() > 0 {
            blocks[at].shown += 1;
            if blocks.iter().map(Block::height).sum::<usize>() > room {
                blocks[at].shown -= 1;
                break;
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn block(rank: usize, lines: usize) -> Block {
        let lines = vec!["a line".to_owned(); lines];
        let section =
            Section { called: "Work".to_owned(), lines: lines.clone(), rank, to_do: false };
        Block { section, broken: lines, shown: 0 }
    }

    #[test]
    fn where_all_has_room_all_is_shown() {
        let mut blocks = [block(1, 3), block(0, 2)];
        fit(&mut blocks, 9);
        assert_eq!(blocks.map(|one| one.shown), [3, 2]);
    }

    #[test]
    fn where_not_all_has_room_the_first_rank_is_whole_and_the_last_is_cut() {
        let mut blocks = [block(1, 30), block(0, 5)];
        fit(&mut blocks, 20);
        assert_eq!(blocks[1].shown, 5);
        assert_eq!(blocks[0].shown, 10);
        assert_eq!(blocks.iter().map(Block::height).sum::<usize>(), 20);
    }
}
