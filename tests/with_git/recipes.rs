//! The recipes for build servers, their own lines run by `sh` in a clone such as a server makes,
//! beside a bare repository that changes are proposed to.

use std::fs;
use std::path::Path;
use std::path::PathBuf;
use std::process::Command;
use std::process::Output;

use serde_yaml::Value;

use crate::git::done;
use crate::guard::club::BOAT;
use crate::guard::club::Club;
use crate::guard::club::PROGRAM;
use crate::guard::club::edit;
use crate::guard::club::said;

/// A kind of build server.
#[derive(Clone, Copy, Debug)]
enum Server {
    Actions,
    Pipelines,
}

const BOTH: [Server; 2] = [Server::Actions, Server::Pipelines];

impl Server {
    /// Returns the lines that the recipe runs.
    fn lines(self) -> String {
        let read = |path: &str| -> Value {
            let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("example-club").join(path);
            serde_yaml::from_str(&fs::read_to_string(path).expect("a recipe")).expect("YAML")
        };
        let lines = match self {
            Self::Actions => {
                let recipe = read(".github/workflows/book.yml");
                let steps = recipe["jobs"]["book"]["steps"].as_sequence().expect("steps").clone();
                let check = steps.iter().find(|step| step["name"] == "check the book");
                check.expect("the check")["run"].clone()
            }
            Self::Pipelines => read(".gitlab-ci.yml")["book"]["script"][0].clone(),
        };
        lines.as_str().expect("lines").to_owned()
    }

    /// Fetches what a server of this kind fetches for a proposed change.
    fn cloned(self, club: &Club, branch: &str, depth: Option<&str>) -> PathBuf {
        let origin = format!("file://{}", club.yard.folder.join("server.git").display());
        let clone = club.yard.folder.join(format!("{self:?}"));
        let _ = fs::remove_dir_all(&clone);
        fs::create_dir_all(&clone).expect("a folder");
        done(&clone, &["init", "--quiet"]);
        done(&clone, &["remote", "add", "origin", &origin]);
        let all = "+refs/heads/*:refs/remotes/origin/*".to_owned();
        let one = format!("+refs/heads/{branch}:refs/remotes/origin/{branch}");
        let what = match self {
            Self::Actions => all,
            Self::Pipelines => one,
        };
        let depth: Vec<&str> = depth.into_iter().collect();
        done(&clone, &[&["fetch", "--quiet"], &depth[..], &["origin", &what]].concat());
        done(&clone, &["checkout", "--quiet", "--detach", &format!("origin/{branch}")]);
        clone
    }

    /// Runs the recipe's lines for a change that is proposed to `main`.
    fn proposed(self, clone: &Path) -> Output {
        let settings = match self {
            Self::Actions => [("GITHUB_BASE_REF", "main"), ("BEFORE", "")],
            Self::Pipelines => {
                [("CI_MERGE_REQUEST_TARGET_BRANCH_NAME", "main"), ("CI_COMMIT_BEFORE_SHA", NOUGHTS)]
            }
        };
        self.run(clone, &settings)
    }

    /// Runs the recipe's lines for a push to `main`.
    fn pushed(self, clone: &Path, before: &str) -> Output {
        let name = match self {
            Self::Actions => "BEFORE",
            Self::Pipelines => "CI_COMMIT_BEFORE_SHA",
        };
        self.run(clone, &[(name, before)])
    }

    fn run(self, clone: &Path, settings: &[(&str, &str)]) -> Output {
        let home = clone.join("home");
        fs::create_dir_all(&home).expect("a folder");
        let programs = Path::new(PROGRAM).parent().expect("a folder").display().to_string();
        let path = format!("{programs}:{}", std::env::var("PATH").expect("a path"));
        // -e: both kinds of server stop at the first line that fails.
        let mut shell = Command::new("sh");
        shell.arg("-e").arg("-c").arg(self.lines()).current_dir(clone);
        shell.env_clear().env("PATH", path).env("HOME", &home).env("RUNNER_TEMP", &home);
        shell.env("GITHUB_STEP_SUMMARY", home.join("summary.md"));
        shell.envs(settings.iter().copied()).output().expect("sh is here")
    }
}

const NOUGHTS: &str = "0000000000000000000000000000000000000000";

/// A club and a bare repository that has its book.
fn club() -> Club {
    let club = Club::new();
    done(&club.yard.folder, &["clone", "--quiet", "--bare", "club", "server.git"]);
    done(&club.folder, &["remote", "add", "origin", "../server.git"]);
    club
}

/// Commits what lies there and sends it to a branch of the server.
fn sent(club: &Club, branch: &str) {
    club.committed(branch);
    done(&club.folder, &["push", "--quiet", "--force", "origin", &format!("HEAD:{branch}")]);
}

fn shown(output: &Output) -> (Option<i32>, String) {
    (output.status.code(), said(output))
}

#[test]
#[ignore = "needs git"]
fn a_sound_change_is_let_through_and_summed_up() {
    let club = club();
    done(&club.folder, &["switch", "--quiet", "--create", "note"]);
    club.remark("a new seat in the bow");
    sent(&club, "note");
    for server in BOTH {
        let clone = server.cloned(&club, "note", None);
        let (code, said) = shown(&server.proposed(&clone));
        assert_eq!(code, Some(0), "{server:?}: {said}");
    }
    let summary = club.yard.folder.join("Actions/home/summary.md");
    let summary = fs::read_to_string(summary).expect("a summary");
    assert!(summary.contains("checked 1 boat"), "{summary}");
}

#[test]
#[ignore = "needs git"]
fn an_unsafe_change_is_refused() {
    let club = club();
    done(&club.folder, &["switch", "--quiet", "--create", "crack"]);
    club.unfit();
    sent(&club, "crack");
    for server in BOTH {
        let clone = server.cloned(&club, "crack", None);
        let (code, said) = shown(&server.proposed(&clone));
        assert_eq!(code, Some(1), "{server:?}: {said}");
        assert!(said.contains("unfit"), "{server:?}: {said}");
    }
    let report = club.yard.folder.join("Pipelines/book.xml");
    assert!(fs::read_to_string(report).expect("a report").contains("<failure"));
}

#[test]
#[ignore = "needs git"]
fn two_changes_that_are_unsafe_together_are_refused() {
    let club = club();
    club.parted();
    done(&club.folder, &["push", "--quiet", "origin", "main", "spare"]);
    for server in BOTH {
        let clone = server.cloned(&club, "spare", None);
        let (code, said) = shown(&server.proposed(&clone));
        assert_eq!(code, Some(1), "{server:?}: {said}");
        let said =
            said.split_whitespace().filter(|word| *word != "│").collect::<Vec<_>>().join(" ");
        assert!(said.contains("one part comes from HEAD, another from origin/main"), "{said}");
    }
}

#[test]
#[ignore = "needs git"]
fn a_change_cant_loosen_the_limit_it_breaks() {
    let club = club();
    done(&club.folder, &["switch", "--quiet", "--create", "loose"]);
    edit(&club.folder, BOAT, "seat: 2", "gap: 60", "gap: 55");
    edit(&club.folder, BOAT, "seat: 2", "clearance: 8.0", "clearance: 3.0");
    edit(&club.folder, BOAT, "rigged", "date: 2026-10-17", "date: 2026-10-24");
    let file = club.folder.join("club.yaml");
    let text = fs::read_to_string(&file).expect("the club");
    let own = "limits:\n  surfboat:\n    clearance: {least: 1}\n";
    fs::write(&file, format!("{text}{own}")).expect("the club");
    sent(&club, "loose");
    for server in BOTH {
        let clone = server.cloned(&club, "loose", None);
        let (code, said) = shown(&server.proposed(&clone));
        assert_eq!(code, Some(1), "{server:?}: {said}");
        assert!(said.contains("limit-loosened"), "{server:?}: {said}");
    }
}

#[test]
#[ignore = "needs git"]
fn a_push_is_held_beside_what_was_there_before() {
    let club = club();
    let before = done(&club.folder, &["rev-parse", "HEAD"]);
    club.remark("rigged in the rain");
    sent(&club, "main");
    for server in BOTH {
        let clone = server.cloned(&club, "main", None);
        for before in [before.as_str(), NOUGHTS, ""] {
            let (code, said) = shown(&server.pushed(&clone, before));
            assert_eq!(code, Some(0), "{server:?} {before}: {said}");
        }
    }
}

#[test]
#[ignore = "needs git"]
fn a_clone_without_the_past_is_refused_and_never_green() {
    let club = club();
    club.remark("one more commit");
    sent(&club, "main");
    done(&club.folder, &["switch", "--quiet", "--create", "note"]);
    club.remark("a new seat in the bow");
    sent(&club, "note");
    done(&club.folder, &["switch", "--quiet", "main"]);
    club.remark("meanwhile");
    sent(&club, "main");
    for server in BOTH {
        let clone = server.cloned(&club, "note", Some("--depth=1"));
        let (code, said) = shown(&server.proposed(&clone));
        assert_eq!(code, Some(3), "{server:?}: {said}");
        assert!(said.contains("fetch --unshallow"), "{server:?}: {said}");
    }
}
