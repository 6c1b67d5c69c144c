//! Where links between the pages lead. The text points to places by their ids, as on one page; which page holds an
//! id is known here, and a place that no page has is a fault.

use std::collections::BTreeMap;

use crate::page::{FRONT, Page};
use crate::problem::Problem;
use crate::site::EMBEDDED;

/// The page that joints are opened on.
pub const JOINT: &str = "joint.html";

/// Which page holds an id. Where the front page shows something of another page, the other one has it.
pub struct Places {
    pages: BTreeMap<String, String>,
    /// Ids of the sections that are a whole page: a link to one needs no place on it.
    whole: BTreeMap<String, String>,
}

impl Places {
    /// The places of all pages. A figure alone is no place to send a reader of these pages to.
    #[must_use]
    pub fn of(pages: &[Page]) -> Self {
        let mut places = Self {
            pages: BTreeMap::new(),
            whole: BTreeMap::new(),
        };
        let (front, others): (Vec<&Page>, Vec<&Page>) = pages
            .iter()
            .filter(|page| page.kind != EMBEDDED)
            .partition(|page| page.path == FRONT);
        for page in front.into_iter().chain(others) {
            for id in ids(&page.main) {
                places.pages.insert(id.into(), page.path.clone());
            }
            if let Some(id) = ids(&page.main).next().filter(|_| page.path != FRONT) {
                places.whole.insert(id.into(), page.path.clone());
            }
        }
        places
    }

    /// The page that holds an id.
    #[must_use]
    pub fn page_of(&self, id: &str) -> Option<&str> {
        self.pages.get(id).map(String::as_str)
    }

    /// A page with every link in it leading somewhere.
    ///
    /// # Errors
    /// A link to a place that no page has.
    pub fn resolve(&self, page: &Page) -> Result<String, Vec<Problem>> {
        const LINK: &str = " href=\"#";
        let mut problems = Vec::new();
        let mut parts = page.main.split(LINK);
        let mut html = String::from(parts.next().unwrap_or_default());
        for part in parts {
            let (target, rest) = part.split_once('"').unwrap_or((part, ""));
            let way = self.way(page, target).unwrap_or_else(|| {
                let what = format!("no page has the place `#{target}`");
                problems.push(Problem::new(&page.path, 1, what));
                String::new()
            });
            html.push_str(&format!(" href=\"{way}\"{rest}"));
        }
        if problems.is_empty() {
            Ok(html)
        } else {
            Err(problems)
        }
    }

    fn way(&self, page: &Page, target: &str) -> Option<String> {
        let root = page.root();
        if target.contains('/') {
            return Some(format!("{root}{JOINT}#{target}"));
        }
        let there = self.page_of(target)?;
        Some(if there == page.path {
            format!("#{target}")
        } else if self.whole.get(target).is_some_and(|whole| whole == there) {
            format!("{root}{there}")
        } else {
            format!("{root}{there}#{target}")
        })
    }
}

/// Ids in a piece of HTML, in order.
fn ids(html: &str) -> impl Iterator<Item = &str> {
    html.split(" id=\"")
        .skip(1)
        .filter_map(|part| part.split('"').next())
}
