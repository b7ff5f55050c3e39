//! The `tholebook` command. Everything it does is in the library.

fn main() -> std::process::ExitCode {
    tholebook::cli::run()
}
