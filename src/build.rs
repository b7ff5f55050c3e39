//! Tells the program which commit it is built from, where that can be seen. Starts no program.

use std::env;
use std::fs;
use std::path::Path;

fn main() {
    // What is not there would have everything built again each time.
    let seen = ["src/build.rs", ".git/HEAD", ".git/logs/HEAD", ".cargo_vcs_info.json"];
    for path in seen.into_iter().filter(|path| Path::new(path).is_file()) {
        println!("cargo::rerun-if-changed={path}");
    }
    let version = env::var("CARGO_PKG_VERSION").unwrap_or_default();
    let commit = of_checkout().or_else(of_package).filter(|id| is_id(id));
    let built = commit.map_or_else(|| version.clone(), |id| format!("{version} ({})", &id[..8]));
    println!("cargo::rustc-env=THOLEBOOK_VERSION={built}");
}

/// Returns the commit that is checked out.
fn of_checkout() -> Option<String> {
    let head = fs::read_to_string(".git/HEAD").ok()?;
    let Some(name) = head.trim().strip_prefix("ref: ") else { return Some(head.trim().to_owned()) };
    let loose = fs::read_to_string(Path::new(".git").join(name)).ok();
    loose.map(|id| id.trim().to_owned()).or_else(|| of_packed(name))
}

fn of_packed(name: &str) -> Option<String> {
    let packed = fs::read_to_string(".git/packed-refs").ok()?;
    let ids = packed.lines().filter_map(|line| line.split_once(' '));
    ids.into_iter().find(|(_, own)| *own == name).map(|(id, _)| id.to_owned())
}

/// Returns the commit that a package was made of, as cargo writes it down.
fn of_package() -> Option<String> {
    let about = fs::read_to_string(".cargo_vcs_info.json").ok()?;
    let (_, rest) = about.split_once("\"sha1\": \"")?;
    rest.split_once('"').map(|(id, _)| id.to_owned())
}

fn is_id(text: &str) -> bool {
    text.len() >= 40 && text.bytes().all(|byte| byte.is_ascii_hexdigit())
}
