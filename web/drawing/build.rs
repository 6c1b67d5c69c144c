//! Puts the sentences of `content/` beside the program without the comments that are only for whoever
//! writes them.

use std::path::Path;
use std::{env, fs};

fn main() {
    let from = format!("{}/../../content", env!("CARGO_MANIFEST_DIR"));
    let to = env::var_os("OUT_DIR").expect("cargo sets OUT_DIR");
    println!("cargo:rerun-if-changed={from}");
    for entry in fs::read_dir(&from).expect("content/ is there") {
        let file = entry.expect("content/ can be read").path();
        let Some(name) = file
            .file_name()
            .filter(|_| file.extension().is_some_and(|e| e == "toml"))
        else {
            continue;
        };
        println!("cargo:rerun-if-changed={}", file.display());
        let text = fs::read_to_string(&file).unwrap_or_else(|e| panic!("{}: {e}", file.display()));
        let said = text
            .lines()
            .filter(|line| !line.is_empty() && !line.starts_with('#'));
        let said: String = said.flat_map(|line| [line, "\n"]).collect();
        fs::write(Path::new(&to).join(name), said).expect("OUT_DIR takes files");
    }
}
