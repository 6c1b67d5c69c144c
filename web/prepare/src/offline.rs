//! What the service worker is told: the build's own name, and which files it keeps, each with its hash, so that it
//! never keeps a file of another build.

use std::fmt::Write as _;

use sha2::{Digest, Sha256};

use crate::assemble::File;
use crate::site;

/// `web/sw.js` with the files of this build in it.
pub(crate) fn worker(template: &str, files: &[File]) -> String {
    let mut kept: Vec<&File> = files.iter().filter(|file| is_kept(&file.path)).collect();
    kept.sort_by(|a, b| a.path.cmp(&b.path));
    let list = kept.iter().fold(String::new(), |mut list, file| {
        // Writing to a string cannot fail.
        let _ = writeln!(list, "  '{}': '{}',", file.path, sha256(&file.bytes));
        list
    });
    let build = sha256(list.as_bytes());
    template
        .replace("{{build}}", build.get(..16).unwrap_or_default())
        .replace("  // {{files}}\n", &list)
}

/// Whether a reader without a signal may ask for it: all but what is there for other pages, which are not to be had
/// then either.
fn is_kept(path: &str) -> bool {
    !path.starts_with(site::API) && !path.starts_with(site::EMBED) && path != "embed.html"
}

/// SHA-256 in hexadecimal digits.
pub(crate) fn sha256(content: &[u8]) -> String {
    Sha256::digest(content)
        .iter()
        .map(|byte| format!("{byte:02x}"))
        .collect()
}
