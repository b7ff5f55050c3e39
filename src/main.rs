//! The `tholebook` command. Everything it does is in the library.

/// A book is many small texts that several threads make and drop.
#[global_allocator]
static ALLOCATOR: mimalloc::MiMalloc = mimalloc::MiMalloc;

fn main() -> std::process::ExitCode {
    tholebook::cli::run()
}
