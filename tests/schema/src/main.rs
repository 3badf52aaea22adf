//! `fairfoot-schema-check SCHEMA REPORT…` checks that every report follows the schema, and that the schema rejects
//! something.

use std::process::ExitCode;

fn read(path: &str) -> serde_json::Value {
    let text = std::fs::read_to_string(path).unwrap_or_else(|error| panic!("{path}: {error}"));
    serde_json::from_str(&text).unwrap_or_else(|error| panic!("{path}: {error}"))
}

fn main() -> ExitCode {
    let mut paths = std::env::args().skip(1);
    let schema = read(&paths.next().expect("a schema"));
    let validator = jsonschema::validator_for(&schema).expect("a schema");
    let mut wrong = 0_usize;
    let mut count = 0_usize;
    for path in paths {
        count += 1;
        for error in validator.iter_errors(&read(&path)) {
            wrong += 1;
            println!("{path}: {error} at {}", error.instance_path());
        }
    }
    // The schema must reject something.
    assert!(!validator.is_valid(&serde_json::json!({ "format": "1" })));
    assert!(count > 0, "no report was given");
    println!("{count} reports held against the schema, {wrong} errors");
    ExitCode::from(u8::from(wrong > 0))
}
