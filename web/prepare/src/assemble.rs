//! Puts the site together: the pages, one style sheet, the programs that were built, the scripts, and what keeps it all
//! on a reader's device.
//!
//! A name that carries the hash of its content may be cached for good: a page never gets a script or a style sheet of
//! another build. Only what is named from outside keeps its name: the pages, what other pages load, `sw.js` and the
//! manifest.

use std::path::Path;
use std::{fs, io};

use crate::offline;
use crate::page::{Assets, Program, Script};
use crate::problem::Problem;
use crate::site;
use crate::teach;

/// Scripts of the pages.
const SCRIPTS: [&str; 5] = ["boot", "page", "old", "foot", "embed"];

/// Scripts for a class, with words out of the content: their folders, whose files are put together in order.
const TEACHING: [&str; 3] = ["show", "speaker", "plan"];

/// The programs, as `scripts/lib.sh` has them built, and the folder of the site that each stands in.
const PROGRAMS: [(&str, &str); 6] = [
    ("front", ""),
    ("lesson", ""),
    ("joint", ""),
    ("paper", ""),
    ("handout", ""),
    ("api", site::API),
];

/// What other pages load, in [`site::API`].
const STABLE: [&str; 2] = ["clampwright.js", "figure.js"];

/// The declarations of the calculation, in the order in which they stand in one file.
const DECLARATIONS: [&str; 4] = ["names", "joint", "answer", "functions"];

/// Pictures of the icon, for a home screen.
const ICONS: [&str; 4] = [
    "icon-180.png",
    "icon-192.png",
    "icon-512.png",
    "icon-round-512.png",
];

/// A file of the site, by its path from the folder of the front page.
pub(crate) struct File {
    pub(crate) path: String,
    pub(crate) bytes: Vec<u8>,
}

impl File {
    fn new(path: impl Into<String>, bytes: impl Into<Vec<u8>>) -> Self {
        Self {
            path: path.into(),
            bytes: bytes.into(),
        }
    }
}

fn failed(what: &Path, error: &io::Error) -> Vec<Problem> {
    vec![Problem::new(what.to_string_lossy(), 1, error.to_string())]
}

fn bytes(file: &Path) -> Result<Vec<u8>, Vec<Problem>> {
    fs::read(file).map_err(|error| failed(file, &error))
}

/// Writes the site into a folder, in place of what was there. `programs` holds a folder for each program as trunk
/// leaves it.
///
/// # Errors
/// What is wrong with the content, a program that was not built, a folder that cannot be written.
pub fn assemble(root: &Path, programs: &Path, site: &Path) -> Result<(), Vec<Problem>> {
    let files = all(root, programs)?;
    if site.exists() {
        fs::remove_dir_all(site).map_err(|error| failed(site, &error))?;
    }
    for File { path, bytes } in files {
        let target = site.join(path);
        let folder = target.parent().unwrap_or(site);
        fs::create_dir_all(folder)
            .and_then(|()| fs::write(&target, bytes))
            .map_err(|error| failed(&target, &error))?;
    }
    Ok(())
}

fn all(root: &Path, programs: &Path) -> Result<Vec<File>, Vec<Problem>> {
    let mut files = Vec::new();
    let mut built = Vec::new();
    for (name, folder) in PROGRAMS {
        let (program, mut of_it) = program(programs, name, folder)?;
        built.push(program);
        files.append(&mut of_it);
    }
    let style = joined(root, "web/style", "css")?;
    let icon = site::read(root, "web/icon.svg")?;
    let mut scripts = Vec::new();
    for name in SCRIPTS {
        let mut text = site::read(root, &format!("web/{name}.js"))?;
        if name == "old" {
            // One script less to wait for before the front page is painted.
            text.push_str(&site::read(root, "web/page.js")?);
        }
        let file = format!("{name}-{}.js", hash(text.as_bytes()));
        scripts.push(Script {
            name: name.into(),
            file: file.clone(),
        });
        files.push(File::new(file, text));
    }
    for name in TEACHING {
        let folder = format!("web/{name}");
        let mut text = joined(root, &folder, "js")?;
        let style = joined(root, &folder, "css")?;
        if !style.is_empty() {
            let file = format!("{name}-{}.css", hash(style.as_bytes()));
            text = text.replace("{{style}}", &file);
            files.push(File::new(file, style));
        }
        let text = teach::script(root, name, &text)?;
        let file = format!("{name}-{}.js", hash(text.as_bytes()));
        scripts.push(Script {
            name: name.into(),
            file: file.clone(),
        });
        files.push(File::new(file, text));
    }
    let assets = Assets {
        style: format!("style-{}.css", hash(style.as_bytes())),
        icon: format!("icon-{}.svg", hash(icon.as_bytes())),
        programs: built,
        scripts,
    };
    files.push(File::new(&assets.style, style));
    files.push(File::new(&assets.icon, icon));
    for name in ICONS {
        files.push(File::new(name, bytes(&root.join("web/icons").join(name))?));
    }
    let manifest = site::read(root, "web/app.webmanifest")?;
    files.push(File::new("app.webmanifest", manifest));
    for (path, html) in site::files(root, &assets)? {
        files.push(File::new(path, html));
    }
    for name in STABLE {
        let text = site::read(root, &format!("web/api/{name}"))?;
        let path = format!("{}{name}", site::API);
        files.push(File::new(path, assets.named(&text)));
    }
    let declarations = DECLARATIONS
        .iter()
        .map(|name| site::read(root, &format!("web/src/api/{name}.d.ts")))
        .collect::<Result<Vec<_>, _>>()?
        .join("\n");
    let path = format!("{}clampwright.d.ts", site::API);
    files.push(File::new(path, declarations));
    let worker = site::read(root, "web/sw.js")?;
    let worker = offline::worker(&worker, &files);
    files.push(File::new("sw.js", worker));
    Ok(files)
}

/// The files with an ending in a folder, one after the other.
fn joined(root: &Path, folder: &str, ending: &str) -> Result<String, Vec<Problem>> {
    let texts = site::names(root, folder, ending)
        .iter()
        .map(|name| site::read(root, &format!("{folder}/{name}")))
        .collect::<Result<Vec<_>, _>>()?;
    Ok(texts.join("\n"))
}

/// The files of a program that trunk left in its folder.
fn program(
    programs: &Path,
    name: &str,
    folder: &str,
) -> Result<(Program, Vec<File>), Vec<Problem>> {
    let from = programs.join(name);
    let entries = fs::read_dir(&from).map_err(|error| failed(&from, &error))?;
    let names: Vec<String> = entries
        .filter_map(|entry| entry.ok()?.file_name().into_string().ok())
        .filter(|file| file.starts_with(&format!("{name}-")))
        .collect();
    let with = |ending: &str| {
        let found = names.iter().find(|file| file.ends_with(ending)).cloned();
        found.ok_or_else(|| {
            let what = format!("no file {name}-…{ending}");
            vec![Problem::new(from.to_string_lossy(), 1, what)]
        })
    };
    let program = Program {
        name: name.into(),
        js: with(".js")?,
        wasm: with("_bg.wasm")?,
    };
    let files = [&program.js, &program.wasm]
        .into_iter()
        .map(|file| {
            Ok(File::new(
                format!("{folder}{file}"),
                bytes(&from.join(file))?,
            ))
        })
        .collect::<Result<Vec<File>, Vec<Problem>>>()?;
    Ok((program, files))
}

/// A name for some content, for the names of files.
fn hash(content: &[u8]) -> String {
    let mut name = offline::sha256(content);
    name.truncate(16);
    name
}
