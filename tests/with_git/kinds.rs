//! Every kind of repository that git makes: what can be had of it, or the message and its cure.

use std::fs;
use std::path::Path;

use tholebook::store::Cut;
use tholebook::store::Repository;
use tholebook::store::RepositoryError;

use crate::git::Yard;
use crate::git::at;
use crate::git::done;
use crate::git::error;
use crate::git::follow;
use crate::git::opened;
use crate::git::run;
use crate::git::write;

#[test]
#[ignore = "needs git"]
fn a_plain_repository_gives_all_its_states() {
    let club = Yard::new();
    let folder = club.club(&[]);
    done(&folder, &["gc", "--quiet"]);
    done(&folder, &["tag", "--annotate", "--message=spring", "spring", "HEAD~1"]);
    let repository = opened(&folder);
    for rev in ["HEAD", "main~2", "spring"] {
        let id = repository.commit(rev).expect(rev);
        let peeled = format!("{rev}^{{commit}}");
        assert_eq!(id.to_string(), done(&folder, &["rev-parse", &peeled]));
        assert_eq!(repository.at(id).expect("texts").files.len(), 2);
        assert_eq!(repository.records(id).expect("records").len(), 2);
    }
    assert_eq!(repository.staged().expect("the index").files.len(), 2);
}

#[test]
#[ignore = "needs git"]
fn the_walk_of_a_tangled_history_meets_what_git_meets() {
    let yard = Yard::new();
    let folder = yard.club(&[]);
    for side in ["port", "bow", "stroke"] {
        done(&folder, &["switch", "--quiet", "--create", side, "main~1"]);
        write(&folder, format!("boats/{side}.yaml"), "");
        done(&folder, &["add", "--all"]);
        done(&folder, &["commit", "--quiet", "--message", side]);
        done(&folder, &["switch", "--quiet", "main"]);
        done(&folder, &["merge", "--quiet", "--no-edit", side]);
    }
    let repository = opened(&folder);
    let head = repository.head().expect("a head").expect("a commit");
    let mut ours: Vec<String> =
        repository.walk(head).expect("a walk").iter().map(ToString::to_string).collect();
    let gits = done(&folder, &["rev-list", "HEAD"]);
    let mut gits: Vec<&str> = gits.lines().collect();
    ours.sort_unstable();
    gits.sort_unstable();
    assert_eq!(ours, gits);
    for id in repository.walk(head).expect("a walk") {
        let details = repository.details(id).expect("details");
        let format = "--format=%an|%ae|%ct|%s|%P";
        let gits = done(&folder, &["show", "--no-patch", format, &id.to_string()]);
        let parents: Vec<String> = details.parents.iter().map(ToString::to_string).collect();
        let (author, when) = (details.author, details.committer.when.expect("a time"));
        let ours = format!(
            "{}|{}|{}|{}|{}",
            author.name,
            author.email,
            when.seconds,
            details.subject,
            parents.join(" ")
        );
        assert_eq!(ours, gits);
    }
}

#[test]
#[ignore = "needs git"]
fn a_merge_in_memory_is_the_one_that_git_makes() {
    let yard = Yard::new();
    let folder = yard.club(&[]);
    write(&folder, "boats/b.yaml", "a: 1\nb: 2\nc: 3\nd: 4\ne: 5\n");
    done(&folder, &["add", "--all"]);
    done(&folder, &["commit", "--quiet", "--message", "b"]);
    done(&folder, &["switch", "--quiet", "--create", "theirs"]);
    done(&folder, &["mv", "boats/b.yaml", "boats/renamed.yaml"]);
    done(&folder, &["commit", "--quiet", "--message", "renamed"]);
    done(&folder, &["switch", "--quiet", "main"]);
    write(&folder, "boats/b.yaml", "a: 9\nb: 2\nc: 3\nd: 4\ne: 5\n");
    done(&folder, &["commit", "--quiet", "--all", "--message", "changed"]);
    let repository = opened(&folder);
    let (ours, theirs) =
        (repository.commit("main").expect("ours"), repository.commit("theirs").expect("theirs"));
    let merge = repository.merged(ours, theirs).expect("a merge");
    assert_eq!(done(&folder, &["status", "--porcelain"]), "", "nothing was touched");
    let base = done(&folder, &["merge-base", "main", "theirs"]);
    assert_eq!(merge.base.expect("a base").to_string(), base);
    done(&folder, &["merge", "--quiet", "--no-edit", "theirs"]);
    assert_eq!(merge.store, at(&folder, "HEAD").expect("what git made"));
}

#[test]
#[ignore = "needs git"]
fn a_conflict_is_told_before_it_happens_and_while_it_lasts() {
    let yard = Yard::new();
    let folder = yard.club(&[]);
    done(&folder, &["switch", "--quiet", "--create", "theirs"]);
    for (branch, pin) in [("theirs", 8), ("main", 9)] {
        done(&folder, &["switch", "--quiet", branch]);
        write(&folder, "boats/a.yaml", &format!("pin: {pin}\n"));
        done(&folder, &["commit", "--quiet", "--all", "--message", branch]);
    }
    let repository = opened(&folder);
    let side = |rev| repository.commit(rev).expect("a commit");
    let merge = repository.merged(side("main"), side("theirs")).expect("a merge");
    assert_eq!(merge.conflicts, ["boats/a.yaml"]);
    assert!(!run(&folder, &["merge", "theirs"]).status.success());
    let told = error(opened(&folder).staged());
    assert_eq!(told.to_string(), "a merge is not finished: boats/a.yaml");
}

#[test]
#[ignore = "needs git"]
fn a_shallow_clone_ends_at_its_edge_and_names_the_cure() {
    let yard = Yard::new();
    yard.club(&[]);
    let folder = yard.clone("shallow", &["--depth=2"]);
    done(&folder, &["worktree", "add", "--quiet", "--detach", "../linked"]);
    for folder in [&folder, &yard.folder.join("linked")] {
        let repository = opened(folder);
        assert!(repository.is_shallow());
        let walked = repository.walk(repository.commit("HEAD").expect("a head")).expect("a walk");
        assert_eq!(walked.len(), 2);
        assert!(repository.details(walked[1]).expect("details").at_the_edge);
        assert!(!repository.details(walked[0]).expect("details").at_the_edge);
    }
    let told = error(at(&folder, "HEAD~2"));
    assert!(matches!(told, RepositoryError::UnknownRevision { shallow: Some(_), .. }), "{told}");
    follow(&told);
    assert_eq!(at(&folder, "HEAD~2").expect("it is here now").files.len(), 2);
    assert!(!opened(&folder).is_shallow());
}

#[test]
#[ignore = "needs git"]
fn a_filtered_clone_names_the_texts_it_lacks_and_the_cure() {
    for filter in ["--filter=blob:none", "--filter=tree:0"] {
        let yard = Yard::new();
        let from = yard.club(&[]);
        done(&from, &["config", "uploadpack.allowFilter", "true"]);
        let folder = yard.clone("filtered", &[filter]);
        assert_eq!(at(&folder, "HEAD").expect("what is checked out").files.len(), 2);
        let repository = opened(&folder);
        let walked = repository.walk(repository.commit("HEAD").expect("a head"));
        assert_eq!(walked.expect("commits are all here").len(), 3);
        let told = error(at(&folder, "HEAD~1"));
        assert!(matches!(told, RepositoryError::Absent { cut: Cut::Filtered, .. }), "{told}");
        if filter.contains("blob") {
            assert_eq!(told.to_string(), "the repository does not hold boats/a.yaml");
        }
        follow(&told);
        assert_eq!(at(&folder, "HEAD~1").expect("it is here now").files.len(), 2);
    }
}

#[test]
#[ignore = "needs git"]
fn a_sparse_checkout_has_every_text_in_its_commits_and_its_index() {
    let yard = Yard::new();
    let folder = yard.club(&[]);
    done(&folder, &["sparse-checkout", "set", "docs"]);
    assert!(!folder.join("boats").exists(), "it is sparse");
    assert_eq!(at(&folder, "HEAD").expect("texts").files.len(), 2);
    assert_eq!(opened(&folder).staged().expect("the index").files.len(), 2);
}

#[test]
#[ignore = "needs git"]
fn a_sparse_index_and_a_split_one_are_told_with_a_cure_that_works() {
    let sparse: &[&str] = &["sparse-checkout", "set", "--cone", "--sparse-index", "docs"];
    let split: &[&str] = &["update-index", "--split-index"];
    for command in [sparse, split] {
        let yard = Yard::new();
        let folder = yard.club(&[]);
        done(&folder, command);
        let told = error(opened(&folder).staged());
        let right = matches!(
            told,
            RepositoryError::SparseIndex { .. } | RepositoryError::SplitIndex { .. }
        );
        assert!(right, "{told}");
        assert_eq!(at(&folder, "HEAD").expect("commits need no index").files.len(), 2);
        follow(&told);
        assert_eq!(opened(&folder).staged().expect("the index").files.len(), 2);
    }
}

#[test]
#[ignore = "needs git"]
fn an_index_of_a_later_version_or_without_a_checksum_is_read() {
    let yard = Yard::new();
    let folder = yard.club(&[]);
    done(&folder, &["config", "index.skipHash", "true"]);
    done(&folder, &["update-index", "--index-version", "4", "--force-write-index"]);
    assert_eq!(opened(&folder).staged().expect("the index").files.len(), 2);
}

#[test]
#[ignore = "needs git"]
fn a_sha_256_repository_is_told() {
    let yard = Yard::new();
    let folder = yard.club(&["--object-format=sha256"]);
    let told = error(Repository::around(&folder));
    assert!(matches!(told, RepositoryError::Sha256 { .. }), "{told}");
    assert!(told.to_string().contains("SHA-256"), "{told}");
    let books = tholebook::store::open_folder(&folder).expect("the folder can be read");
    assert_eq!(books.files.len(), 2);
}

#[test]
#[ignore = "needs git"]
fn a_reftable_repository_is_told_and_a_clone_of_it_can_be_read() {
    let yard = Yard::new();
    let folder = yard.club(&["--ref-format=reftable"]);
    let told = error(Repository::around(&folder));
    assert!(matches!(told, RepositoryError::RefTable { .. }), "{told}");
    assert!(told.help().contains("git clone --ref-format=files "), "{}", told.help());
    let clone = yard.clone("clone", &["--ref-format=files"]);
    assert_eq!(at(&clone, "HEAD").expect("texts").files.len(), 2);
}

#[test]
#[ignore = "needs git"]
fn an_empty_repository_and_a_detached_head_are_no_trouble() {
    let yard = Yard::new();
    let folder = yard.club(&[]);
    done(&folder, &["checkout", "--quiet", "--detach", "HEAD~1"]);
    let repository = opened(&folder);
    let head = repository.head().expect("a head");
    assert_eq!(head, Some(repository.commit("main~1").expect("a commit")));
    done(&folder, &["init", "--quiet", "--initial-branch=main", "../empty"]);
    let empty = yard.folder.join("empty");
    write(&empty, "club.yaml", "");
    assert_eq!(opened(&empty).head().expect("an answer"), None);
    let told = error(opened(&empty).staged());
    assert!(matches!(told, RepositoryError::NoBook { .. }), "{told}");
    done(&empty, &["add", "--all"]);
    assert_eq!(opened(&empty).staged().expect("the index").files.len(), 1);
}

#[test]
#[ignore = "needs git"]
fn a_bare_clone_a_mirror_and_one_that_borrows_objects_are_read() {
    let yard = Yard::new();
    yard.club(&[]);
    for options in [&["--bare"][..], &["--mirror"], &["--shared", "--bare"]] {
        let name = format!("copy{}.git", options.concat());
        let from = yard.folder.join("club");
        let from = from.to_str().expect("plain");
        done(&yard.folder, &[&["clone", "--quiet"], options, &[from, &name]].concat());
        let store = at(&yard.folder.join(&name), "HEAD").expect("texts");
        assert_eq!((store.files.len(), store.name), (2, name.trim_end_matches(".git").to_owned()));
    }
}

#[test]
#[ignore = "needs git"]
fn a_submodule_of_boats_is_told_and_its_own_repository_is_its_own() {
    let yard = Yard::new();
    let folder = yard.club(&[]);
    let lent = yard.clone("lent", &[]);
    let lent = lent.to_str().expect("plain");
    let allow = "protocol.file.allow=always";
    done(&folder, &["-c", allow, "submodule", "add", "--quiet", lent, "boats/lent"]);
    let store = opened(&folder).staged().expect("the index");
    assert_eq!(store.files.len(), 2);
    assert!(store.warnings[0].contains("\"boats/lent\" is a submodule"), "{:?}", store.warnings);
    assert_eq!(at(&folder.join("boats/lent"), "HEAD").expect("its own").files.len(), 2);
}

#[test]
#[ignore = "needs git"]
fn texts_are_had_as_they_are_committed_whatever_line_ends_the_folder_has() {
    let yard = Yard::new();
    let folder = yard.club(&[]);
    done(&folder, &["config", "core.autocrlf", "true"]);
    fs::remove_file(folder.join("boats/a.yaml")).expect("it was there");
    done(&folder, &["checkout", "--quiet", "boats/a.yaml"]);
    let on_disk = fs::read(folder.join("boats/a.yaml")).expect("a file");
    assert_eq!(on_disk, b"pin: 3\r\n");
    let store = at(&folder, "HEAD").expect("texts");
    let text = tholebook::store::Content::Text("pin: 3\n".into());
    assert_eq!(store.files[0].content, text);
    assert_eq!(opened(&folder).staged().expect("the index").files[0].content, text);
}

#[cfg(unix)]
#[test]
#[ignore = "needs git"]
fn a_repository_of_another_user_is_told_with_the_command_that_helps() {
    let yard = Yard::new();
    let folder = yard.club(&[]);
    let strangers = [folder.clone(), folder.join(".git")];
    let given = |path: &std::path::PathBuf| {
        std::os::unix::fs::chown(path, Some(54_321), Some(54_321)).is_ok()
    };
    if !strangers.iter().all(given) {
        return; // Only the system's own user can give a folder away.
    }
    let home = yard.folder.join("home");
    fs::create_dir(&home).expect("a folder");
    for trusted in ["", "yes"] {
        if !trusted.is_empty() {
            let file = home.join(".gitconfig");
            let file = file.to_str().expect("plain");
            let folder = folder.to_str().expect("plain");
            done(&home, &["config", "--file", file, "--add", "safe.directory", folder]);
        }
        let test = "kinds::the_strangers_repository_seen_by_a_user";
        let output = crate::hooks::again(test)
            .env("HOME", &home)
            .env("STRANGER", &folder)
            .env("TRUSTED", trusted)
            .output();
        let said = String::from_utf8_lossy(&output.expect("it runs already").stdout).into_owned();
        assert!(said.contains("1 passed"), "{said}");
    }
}

/// Does its work when another test runs it.
#[test]
#[ignore = "needs git"]
fn the_strangers_repository_seen_by_a_user() {
    let Some(folder) = std::env::var_os("STRANGER") else { return };
    let folder = Path::new(&folder);
    if std::env::var_os("TRUSTED").is_some_and(|trusted| !trusted.is_empty()) {
        assert_eq!(at(folder, "HEAD").expect("texts").files.len(), 2);
        return;
    }
    let told = error(Repository::around(folder));
    assert!(matches!(told, RepositoryError::NotTrusted { .. }), "{told}");
    let command = format!("git config --global --add safe.directory {}", folder.display());
    assert!(told.help().contains(&command), "{}", told.help());
}

/// The limit is one that any machine keeps, however slowly the program was built to run.
#[test]
#[ignore = "needs git"]
fn a_history_of_twenty_thousand_commits_is_walked_with_its_records() {
    let yard = Yard::new();
    let folder = yard.folder.join("long");
    done(&yard.folder, &["init", "--quiet", "--initial-branch=main", "long"]);
    let stream = yard.folder.join("stream");
    fs::write(&stream, long_history(20_000)).expect("a file");
    let status = std::process::Command::new("git")
        .args(["fast-import", "--quiet"])
        .current_dir(&folder)
        .stdin(fs::File::open(&stream).expect("it was just written"))
        .status();
    assert!(status.expect("git is here").success());
    let repository = opened(&folder);
    let started = std::time::Instant::now();
    let walked = repository.walk(repository.commit("main").expect("a branch")).expect("a walk");
    let records = |id: &_| repository.records(*id).expect("records").len();
    let all: usize = walked.iter().map(records).sum();
    let whole = started.elapsed();
    assert_eq!((walked.len(), all), (20_000, 20_000 * 101));
    assert!(whole.as_secs() < 30, "{whole:?}");
}

/// A hundred boats; every tenth commit changes one, the others something that is no record.
fn long_history(commits: usize) -> String {
    let mut stream = String::new();
    for number in 0..commits {
        stream.push_str(&format!(
            "commit refs/heads/main\ncommitter Ines <i@x> {} +0000\ndata 1\nx\n",
            1_700_000_000 + number
        ));
        let mut file = |path: String, text: String| {
            stream.push_str(&format!("M 100644 inline {path}\ndata {}\n{text}\n", text.len()));
        };
        if number == 0 {
            file("club.yaml".into(), String::new());
            (0..100).for_each(|boat| file(format!("boats/{boat}.yaml"), "pin: 0".into()));
        } else if number % 10 == 0 {
            file(format!("boats/{}.yaml", number / 10 % 100), format!("pin: {number}"));
        } else {
            file("log.txt".into(), format!("{number}"));
        }
    }
    stream
}
