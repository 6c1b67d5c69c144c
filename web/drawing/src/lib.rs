//! Working drawings and plots from reports: pure, for the page and for the static pictures.
