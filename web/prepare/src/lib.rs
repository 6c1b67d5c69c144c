//! Writes index.html from content/ before the page is built.
