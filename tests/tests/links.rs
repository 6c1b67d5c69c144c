//! Links that were given out must keep their meaning.
//!
//! `links/v1/*.txt`: a link on the first line, then the scenario it stands for as JSON. Files are added,
//! never changed: a link on somebody's wall does not change either.

use calc_core::link::{Decoded, decode, encode};
use std::path::Path;

#[test]
fn links_keep_their_meaning() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("links/v1");
    let mut read = 0;
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        let name = path.display();
        let text = std::fs::read_to_string(&path).unwrap();
        let (link, json) = text.split_once('\n').expect("a link, then JSON");
        let Decoded::Intact(reading) = decode(link) else {
            panic!("{name}: {:?}", decode(link));
        };
        assert_eq!(reading.notices, [], "{name}");
        assert_eq!(encode(&reading.sheet), link, "{name}");
        // Fields that came later stand at defaults that change nothing: only those listed count.
        let expected: serde_json::Map<String, serde_json::Value> =
            serde_json::from_str(json).unwrap();
        let found = serde_json::to_value(reading.sheet.input()).unwrap();
        for (field, value) in &expected {
            assert_eq!(&found[field], value, "{name}: {field}");
        }
        for (field, value) in found.as_object().unwrap() {
            let later = !expected.contains_key(field);
            let standard = serde_json::to_value(calc_core::Input::default()).unwrap();
            assert!(
                !later || &standard[field] == value,
                "{name}: {field} is not listed"
            );
        }
        read += 1;
    }
    assert!(read >= 6, "{read} links");
}
