//! How commits follow from one another; reads headers only.

use std::cell::RefCell;
use std::collections::BTreeSet;
use std::collections::BinaryHeap;
use std::collections::HashMap;
use std::sync::Arc;

use git2::Oid;

use crate::store::repository::commit;
use crate::store::repository::commit::Header;
use crate::store::repository::error::RepositoryError;
use crate::store::repository::objects::Missed;
use crate::store::repository::objects::Objects;

/// The headers of commits, each read once, and where the history is cut short.
pub(super) struct Lineage {
    edge: BTreeSet<Oid>,
    headers: RefCell<HashMap<Oid, Arc<Header>>>,
}

impl Lineage {
    pub(super) fn new(edge: BTreeSet<Oid>) -> Self {
        Self { edge, headers: RefCell::default() }
    }

    /// Returns whether the history is cut short anywhere.
    pub(super) fn is_cut(&self) -> bool {
        !self.edge.is_empty()
    }

    /// Returns whether the parents of a commit were left behind.
    pub(super) fn is_edge(&self, id: Oid) -> bool {
        self.edge.contains(&id)
    }

    /// Returns the header of a commit, without the parents that were left behind.
    pub(super) fn header(
        &self,
        objects: &Objects<'_>,
        id: Oid,
    ) -> Result<Arc<Header>, RepositoryError> {
        if let Some(header) = self.headers.borrow().get(&id) {
            return Ok(Arc::clone(header));
        }
        let bytes = objects.commit(id)?;
        let Some(mut header) = commit::header(&bytes) else {
            let missed = Missed::Damaged("its header can't be read".into());
            return Err(objects.error(&format!("commit {id}"), missed));
        };
        if self.is_edge(id) {
            header.parents.clear();
        }
        let header = Arc::new(header);
        self.headers.borrow_mut().insert(id, Arc::clone(&header));
        Ok(header)
    }

    /// Returns every commit that one follows from, itself first: none before all its children, else
    /// the younger first.
    pub(super) fn walk(
        &self,
        objects: &Objects<'_>,
        from: Oid,
    ) -> Result<Vec<Oid>, RepositoryError> {
        let mut children = self.children(objects, from)?;
        let mut ready = BinaryHeap::from([(self.header(objects, from)?.seconds, from)]);
        let mut walked = Vec::with_capacity(children.len());
        while let Some((_, id)) = ready.pop() {
            walked.push(id);
            for parent in &self.header(objects, id)?.parents {
                let Some(left) = children.get_mut(parent) else { continue };
                *left -= 1;
                if *left == 0 {
                    ready.push((self.header(objects, *parent)?.seconds, *parent));
                }
            }
        }
        Ok(walked)
    }

    /// Returns how many children each reachable commit has.
    fn children(
        &self,
        objects: &Objects<'_>,
        from: Oid,
    ) -> Result<HashMap<Oid, usize>, RepositoryError> {
        let mut children = HashMap::from([(from, 0)]);
        let mut open = vec![from];
        while let Some(id) = open.pop() {
            for parent in &self.header(objects, id)?.parents {
                let count = children.entry(*parent).or_insert(0);
                if *count == 0 {
                    open.push(*parent);
                }
                *count += 1;
            }
        }
        Ok(children)
    }
}
