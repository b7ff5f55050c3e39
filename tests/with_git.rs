//! What the store makes of repositories that the git program itself made. Each test needs git, so
//! none runs unasked: `cargo test --test with_git -- --ignored`.

#[path = "with_git/gate.rs"]
mod gate;
#[path = "with_git/git.rs"]
mod git;
#[path = "with_git/guard/mod.rs"]
mod guard;
#[path = "with_git/hooks.rs"]
mod hooks;
#[path = "with_git/kinds.rs"]
mod kinds;
#[path = "with_git/looking_back.rs"]
mod looking_back;
#[path = "with_git/recipes.rs"]
mod recipes;
#[path = "with_git/wiring.rs"]
mod wiring;
