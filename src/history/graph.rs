//! How states of one thing follow from one another; knows neither what they are nor any git.
//!
//! ```text
//!   0 ── 1 ── 3 ── 4      a number for each commit, none before its parents
//!     \─ 2 ──/
//! ```

/// What one state says of one value.
#[derive(Clone, Copy, Debug, Eq, PartialEq)]
pub enum Cell {
    /// The value does not stand there.
    Absent,
    /// Nobody can tell: what should say it can't be read.
    Unclear,
    /// It stands there. Equal numbers are the same value.
    Value(usize),
}

/// One commit that may matter: its state differs from that of a parent, or its parents differ.
#[derive(Clone, Debug, Eq, PartialEq)]
pub struct Node {
    /// The nodes that stand for its parents, in their order; each comes before this one.
    pub parents: Vec<usize>,
    /// The commit, by its number in the whole history.
    pub commit: usize,
    /// The state there.
    pub state: usize,
}

/// The commits that may matter, none before its parents.
#[derive(Clone, Debug, Default)]
pub struct Graph {
    /// The nodes.
    pub nodes: Vec<Node>,
    /// Which node stands for each commit.
    of_commit: Vec<usize>,
}

/// What holds of a value at a node, and which node made it so.
#[derive(Clone, Copy, Debug, Eq, PartialEq)]
pub struct Traced {
    /// What holds; where the node itself can't tell, what held before.
    pub cell: Cell,
    /// The node that set it.
    pub origin: usize,
}

impl Graph {
    /// Adds a commit with its state; its parents must have been added before. Returns its node,
    /// which is its parent's where nothing changed.
    pub fn add(&mut self, parents: &[usize], state: usize) -> usize {
        let commit = self.of_commit.len();
        let parents: Vec<usize> = parents.iter().map(|parent| self.of_commit[*parent]).collect();
        let node = match parents.split_first() {
            Some((first, others))
                if self.nodes[*first].state == state && others.iter().all(|own| own == first) =>
            {
                *first
            }
            _ => {
                self.nodes.push(Node { parents, commit, state });
                self.nodes.len() - 1
            }
        };
        self.of_commit.push(node);
        node
    }

    /// Returns the node that stands for a commit.
    #[must_use]
    pub fn of_commit(&self, commit: usize) -> usize {
        self.of_commit[commit]
    }

    /// Returns the node that stands for the last commit.
    #[must_use]
    pub fn last(&self) -> Option<usize> {
        self.of_commit.last().copied()
    }

    /// Returns what holds of a value at every node, and which node set it: a value that any parent
    /// has, too, is that parent's; of several parents the first.
    ///
    /// What can't be told is walked over: the first parent that can tell is believed.
    pub fn trace(&self, cell: impl Fn(usize) -> Cell) -> Vec<Traced> {
        let mut traced: Vec<Traced> = Vec::with_capacity(self.nodes.len());
        for (number, node) in self.nodes.iter().enumerate() {
            let own = cell(node.state);
            let held = node.parents.iter().map(|parent| traced[*parent]);
            let from = match own {
                Cell::Unclear => held.clone().find(|before| before.cell != Cell::Unclear),
                _ => held.clone().find(|before| before.cell == own),
            };
            traced.push(from.unwrap_or(Traced { cell: own, origin: number }));
        }
        traced
    }

    /// Returns whether a node is another or one that it follows from.
    #[must_use]
    pub fn follows_from(&self, node: usize, other: usize) -> bool {
        let mut seen = std::collections::HashSet::from([node]);
        let mut open = vec![node];
        while let Some(next) = open.pop() {
            if next == other {
                return true;
            }
            let parents = self.nodes[next].parents.iter().copied();
            open.extend(parents.filter(|parent| *parent >= other && seen.insert(*parent)));
        }
        false
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const SAME: fn(usize) -> Cell = Cell::Value;

    fn graph(commits: &[(&[usize], usize)]) -> Graph {
        let mut graph = Graph::default();
        for (parents, state) in commits {
            graph.add(parents, *state);
        }
        graph
    }

    #[test]
    fn a_commit_that_leaves_the_state_is_no_node() {
        let graph = graph(&[(&[], 7), (&[0], 7), (&[1], 8), (&[0], 7), (&[2, 3], 8)]);
        let commits: Vec<usize> = graph.nodes.iter().map(|node| node.commit).collect();
        assert_eq!(commits, [0, 2, 4]);
        assert_eq!(graph.of_commit(3), 0);
    }

    #[test]
    fn a_value_is_passed_to_any_parent_that_has_it() {
        let graph = graph(&[(&[], 1), (&[0], 2), (&[0], 3), (&[1, 2], 3)]);
        let origins: Vec<usize> = graph.trace(SAME).iter().map(|traced| traced.origin).collect();
        assert_eq!(origins, [0, 1, 2, 2]);
    }

    #[test]
    fn of_two_parents_with_one_value_the_first_has_it() {
        let graph = graph(&[(&[], 1), (&[0], 2), (&[0], 2), (&[2, 1], 2)]);
        assert_eq!(graph.trace(SAME)[3].origin, 2);
    }

    #[test]
    fn what_cannot_be_told_is_walked_over() {
        let graph = graph(&[(&[], 1), (&[0], 0), (&[1], 1), (&[2], 2)]);
        let cell = |state| if state == 0 { Cell::Unclear } else { Cell::Value(state) };
        let origins: Vec<usize> = graph.trace(cell).iter().map(|traced| traced.origin).collect();
        assert_eq!(origins, [0, 0, 0, 3]);
    }

    #[test]
    fn a_node_follows_from_all_that_came_before_it_on_either_side() {
        let graph = graph(&[(&[], 1), (&[0], 2), (&[0], 3), (&[1, 2], 4)]);
        assert!(graph.follows_from(3, 1) && graph.follows_from(3, 0) && graph.follows_from(3, 3));
        assert!(!graph.follows_from(2, 1) && !graph.follows_from(0, 3));
    }
}
