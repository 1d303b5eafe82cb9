//! Numbers of a document and their paths.

use axlebow_model::{Document, KINDS, MODEL, read, starter};

fn document(kind: &str) -> Document {
    read(&starter(kind, "A").unwrap(), "a.toml", &MODEL).unwrap()
}

#[test]
fn every_number_is_found_again_by_its_path() {
    for kind in KINDS {
        let document = document(kind);
        let numbers = document.numbers();
        assert!(numbers.len() > 40, "{}", numbers.len());
        for own in numbers {
            assert_eq!(document.number(&own.path), Ok(own.value), "{}", own.path);
            assert_eq!(document.kind(&own.path), Ok(own.kind), "{}", own.path);
            assert!(own.bounds.admit(own.value), "{}", own.path);
        }
    }
}

#[test]
fn an_entry_goes_by_its_name_where_it_has_one() {
    let paths: Vec<String> = document("trailer-tube").numbers().into_iter().map(|own| own.path).collect();
    assert!(paths.iter().any(|path| path == "seat[both].width"), "{paths:?}");
    assert!(paths.iter().any(|path| path == "spindle.step[0].od"), "{paths:?}");
}
