//! Puts the site together: the pages, one style sheet, the programs that were built, and the small scripts.
//!
//! A name that carries the hash of its content may be cached for good; the pages and the scripts that name those
//! files keep their names and are asked for again.

use std::collections::hash_map::DefaultHasher;
use std::hash::{Hash, Hasher};
use std::path::Path;
use std::{fs, io};

use crate::page::{Assets, Program};
use crate::problem::Problem;
use crate::site;

/// Scripts that every build names alike.
const SCRIPTS: [&str; 3] = ["boot.js", "page.js", "old.js"];

/// The programs, as `scripts/lib.sh` has them built.
const PROGRAMS: [&str; 3] = ["front", "lesson", "joint"];

/// Writes the site into a folder, in place of what was there. `programs` holds a folder for each program as trunk
/// leaves it.
///
/// # Errors
/// What is wrong with the content, a program that was not built, a folder that cannot be written.
pub fn assemble(root: &Path, programs: &Path, site: &Path) -> Result<(), Vec<Problem>> {
    let failed = |what: &Path, error: io::Error| {
        vec![Problem::new(what.to_string_lossy(), 1, error.to_string())]
    };
    let style: String = site::names(root, "web/style", "css")
        .iter()
        .map(|name| site::read(root, &format!("web/style/{name}")))
        .collect::<Result<Vec<_>, _>>()?
        .join("\n");
    let icon = site::read(root, "web/icon.svg")?;
    let mut built = Vec::new();
    let mut copies = Vec::new();
    for name in PROGRAMS {
        let folder = programs.join(name);
        let entries = fs::read_dir(&folder).map_err(|error| failed(&folder, error))?;
        let names: Vec<String> = entries
            .filter_map(|entry| entry.ok()?.file_name().into_string().ok())
            .filter(|file| file.starts_with(&format!("{name}-")))
            .collect();
        let with = |ending: &str| {
            names
                .iter()
                .find(|file| file.ends_with(ending))
                .cloned()
                .ok_or_else(|| {
                    vec![Problem::new(
                        folder.to_string_lossy(),
                        1,
                        format!("no file {name}-…{ending}"),
                    )]
                })
        };
        built.push(Program {
            name: name.into(),
            js: with(".js")?,
            wasm: with("_bg.wasm")?,
        });
        copies.extend(names.iter().map(|file| folder.join(file)));
    }
    let assets = Assets {
        style: format!("style-{}.css", hash(&style)),
        icon: format!("icon-{}.svg", hash(&icon)),
        programs: built,
    };
    let mut files = site::files(root, &assets)?;
    files.push((assets.style.clone(), style));
    files.push((assets.icon.clone(), icon));
    for name in SCRIPTS {
        files.push((name.into(), site::read(root, &format!("web/{name}"))?));
    }
    if site.exists() {
        fs::remove_dir_all(site).map_err(|error| failed(site, error))?;
    }
    for (name, text) in files {
        let target = site.join(name);
        let folder = target.parent().unwrap_or(site);
        fs::create_dir_all(folder)
            .and_then(|()| fs::write(&target, text))
            .map_err(|error| failed(&target, error))?;
    }
    for file in copies {
        let target = site.join(file.file_name().unwrap_or_default());
        fs::copy(&file, &target).map_err(|error| failed(&target, error))?;
    }
    Ok(())
}

fn hash(text: &str) -> String {
    let mut hasher = DefaultHasher::new();
    text.hash(&mut hasher);
    format!("{:016x}", hasher.finish())
}
