//! The libraries in the program and their licences, as `LICENSE-LIBRARIES` lists them.
//!
//! `LICENCES=write cargo test --test licences` writes it anew.

use std::collections::BTreeMap;
use std::collections::BTreeSet;
use std::fs;
use std::path::Path;
use std::process::Command;

use serde_json::Value;

const HEAD: &str = "\
The libraries that are part of the program, each with its licence as its authors state it. Their full
texts come with their sources.

libgit2, the C library inside libgit2-sys: GPL-2.0 with a linking exception, which lets it be linked
with any program. zlib, inside libz-sys: Zlib. mimalloc, inside libmimalloc-sys: MIT.

";

/// Returns what cargo says of every package, for the machine it runs on.
fn metadata() -> Value {
    let cargo = std::env::var("CARGO").unwrap_or_else(|_| "cargo".to_owned());
    let words = ["metadata", "--format-version", "1", "--locked", "--offline"];
    let output = Command::new(cargo)
        .args(words)
        .args(["--filter-platform", "x86_64-unknown-linux-gnu"])
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .output()
        .expect("cargo runs the tests");
    let said = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "{said}");
    serde_json::from_slice(&output.stdout).expect("JSON")
}

fn text<'v>(value: &'v Value, key: &str) -> &'v str {
    value[key].as_str().unwrap_or_default()
}

/// Returns whether a package only writes code while the program is built.
fn is_macro(package: &Value) -> bool {
    let targets = package["targets"].as_array().expect("targets");
    targets
        .iter()
        .any(|target| target["kind"].as_array().expect("kinds").contains(&"proc-macro".into()))
}

/// Returns the ids of the packages that the program itself is made of: neither for its tests nor
/// for its building only.
fn parts(metadata: &Value) -> BTreeSet<String> {
    let packages = metadata["packages"].as_array().expect("packages");
    let macros: BTreeSet<&str> =
        packages.iter().filter(|own| is_macro(own)).map(|own| text(own, "id")).collect();
    let nodes = metadata["resolve"]["nodes"].as_array().expect("nodes");
    let needs = |id: &str| -> Vec<String> {
        let node = nodes.iter().find(|node| text(node, "id") == id).expect("a package");
        let is_part = |need: &&Value| {
            need["dep_kinds"].as_array().expect("kinds").iter().any(|kind| kind["kind"].is_null())
        };
        let needs = node["deps"].as_array().expect("needs").iter().filter(is_part);
        needs
            .map(|need| text(need, "pkg"))
            .filter(|id| !macros.contains(id))
            .map(str::to_owned)
            .collect()
    };
    let mut parts = BTreeSet::new();
    let mut open = vec![text(&metadata["resolve"], "root").to_owned()];
    while let Some(id) = open.pop() {
        if parts.insert(id.clone()) {
            open.extend(needs(&id));
        }
    }
    parts
}

fn list() -> String {
    let metadata = metadata();
    let parts = parts(&metadata);
    let mut by_licence: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
    for package in metadata["packages"].as_array().expect("packages") {
        if parts.contains(text(package, "id")) && text(package, "name") != "tholebook" {
            let licence = text(package, "license").replace('/', " OR ");
            assert!(!licence.is_empty(), "{} states no licence", text(package, "name"));
            let name = format!("{} {}", text(package, "name"), text(package, "version"));
            by_licence.entry(licence).or_default().insert(name);
        }
    }
    let each = by_licence.iter().map(|(licence, names)| {
        let names: String = names.iter().map(|name| format!("  {name}\n")).collect();
        format!("{licence}\n{names}")
    });
    format!("{HEAD}{}", each.collect::<Vec<_>>().join("\n"))
}

#[test]
fn every_library_and_its_licence_is_listed() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("LICENSE-LIBRARIES");
    let list = list();
    if std::env::var("LICENCES").as_deref() == Ok("write") {
        fs::write(&path, &list).expect("the list");
    }
    let written = fs::read_to_string(&path).unwrap_or_default();
    assert_eq!(written, list, "LICENCES=write cargo test --test licences writes it anew");
}
