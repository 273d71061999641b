//! Settings that are wrong in places, where things are kept, and what a shell is given.

use std::path::{Path, PathBuf};

use crate::support::program::{Ended, Home};

/// The settings file of a home.
fn settings(home: &Home, text: &str) -> PathBuf {
    let folder = home.file(".config/outplant");
    std::fs::create_dir_all(&folder).unwrap();
    let path = folder.join("settings.toml");
    std::fs::write(&path, text).unwrap();
    path
}

/// The program with no nursery named anywhere.
fn unnamed(home: &Home, words: &[&str]) -> Ended {
    let output = home.program().env_remove("OUTPLANT_NURSERY").args(words).output().unwrap();
    let text = |bytes| String::from_utf8(bytes).unwrap();
    Ended { code: output.status.code().unwrap(), out: text(output.stdout), err: text(output.stderr) }
}

#[test]
fn a_wrong_line_of_the_settings_is_named_and_stops_nothing_that_does_not_need_it() {
    let home = Home::default().begun();
    settings(&home, "who = \"mara\"\nlang = \"pt\"\nnursrey = \"x\"\n");
    let ready = home.run(&["ready"]);
    assert_eq!(ready.code, 0, "{}", ready.err);
    assert!(ready.err.contains("settings.toml, line 2: lang takes one of: \"en\", \"es\""), "{}", ready.err);
    assert!(ready.err.contains("line 3: there is no setting 'nursrey'"), "{}", ready.err);
    assert!(ready.err.contains("nursery"), "{}", ready.err);
    // The other lines hold, and a program is told by its answer alone.
    assert_eq!(home.json(&["paths"])["settings"]["who"]["value"], "mara");
    assert_eq!(home.run(&["check", "--json"]).err, "");
    for words in [&["check"][..], &["export"], &["calc", "interval", "--help"], &["species", "coffee"], &["paths"]] {
        assert_eq!(home.run(words).code, 0, "{words:?}");
    }
}

#[test]
fn where_the_settings_may_hide_which_nursery_is_meant_none_is_opened() {
    let home = Home::default().begun();
    settings(&home, "nursery = \"~/mine.outplant\n");
    let ready = unnamed(&home, &["ready"]);
    assert_eq!(ready.code, 3);
    assert!(ready.err.contains("line 1") && ready.err.contains("--nursery"), "{}", ready.err);
    assert_eq!(unnamed(&home, &["species", "coffee"]).code, 0);
    assert_eq!(home.run(&["ready"]).code, 0, "named by the environment");
}

#[test]
fn what_is_opened_and_how_long_it_takes_is_said_where_that_is_asked_for() {
    let home = Home::default().begun();
    for (lang, words) in [
        ("en", ["settings: ", "opens ", "one entry, open after ", "ended with 0 after "]),
        ("es", ["ajustes: ", "se abre ", "una anotación, abierto tras ", "terminó con 0, en "]),
    ] {
        let said = home.run(&["ready", "-v", "--lang", lang]);
        assert!(words.iter().all(|word| said.err.contains(word)), "{}", said.err);
        assert_eq!(said.out, home.done(&["ready", "--lang", lang]), "the answer is the same");
    }
    assert!(home.run(&["why", "tray", "nothing", "--verbose"]).err.contains("ended with 1"));
    assert_eq!(home.run(&["ready", "-v", "--json"]).err, "", "a program is told by its answer alone");
}

#[test]
fn general_options_stand_behind_those_of_a_command_and_only_where_they_mean_something() {
    let home = Home::default();
    for (lang, own, general) in
        [("en", "Options:", "Options of every command:"), ("es", "Opciones:", "Opciones de toda orden:")]
    {
        for command in ["ready", "export", "write", "why tray"] {
            let help = home.done(&[&command.split(' ').collect::<Vec<_>>()[..], &["--help", "--lang", lang]].concat());
            let at = |part: &str| help.find(part).unwrap_or_else(|| panic!("{command}: no {part} in {help}"));
            assert!(at(own) < at(general) && at(general) < at("--nursery") && at(general) < at("--help"), "{help}");
        }
        let check = home.done(&["check", "--help", "--lang", lang]);
        for option in ["--on", "--known", "--plain", "--yes", "--who", "--handbook"] {
            assert!(!check.contains(option), "{option}: {check}");
        }
        let export = home.done(&["export", "--help", "--lang", lang]);
        let general = export.find(general).unwrap();
        assert!(["--as", "--to", "--excel"].iter().all(|own| export.find(own).unwrap() < general), "{export}");
    }
    // What is not shown is taken all the same.
    assert_eq!(home.begun().run(&["check", "--yes", "--who", "mara"]).code, 0);
}

#[test]
fn a_setting_given_twice_is_named_and_of_two_nurseries_none_is_opened() {
    let home = Home::default().begun();
    settings(&home, "who = \"mara\"\nwho = \"tomas\"\n");
    for (lang, told) in [("en", "line 2: who stands on line 1 already"), ("es", "línea 2: who ya está en la línea 1")]
    {
        let said = home.run(&["ready", "--lang", lang]).err;
        assert!(said.contains(told), "{said}");
    }
    assert_eq!(home.json(&["paths"])["settings"]["who"]["value"], "mara");
    settings(&home, "nursery = \"~/nursery.outplant\"\nnursery = \"~/other.outplant\"\n");
    assert_eq!(unnamed(&home, &["ready"]).code, 3);
    assert_eq!(home.run(&["ready"]).code, 0, "named by the environment");
}

#[test]
fn a_tilde_in_the_settings_is_the_home() {
    let home = Home::default().begun();
    settings(&home, "nursery = \"~/nursery.outplant\"\n");
    assert_eq!(unnamed(&home, &["ready"]).code, 0);
    let paths: serde_json::Value = serde_json::from_str(&unnamed(&home, &["paths", "--json"]).out).unwrap();
    assert_eq!(paths["paths"]["nursery"]["there"], true);
    assert_eq!(paths["settings"]["nursery"]["from"], "settings");
}

#[cfg(unix)]
#[test]
fn a_pipe_in_place_of_settings_or_notes_is_not_waited_for() {
    let home = Home::default().begun();
    let pipe = |path: &std::path::Path| {
        let _ = std::fs::remove_file(path);
        assert!(std::process::Command::new("mkfifo").arg(path).status().unwrap().success());
    };
    let path = settings(&home, "");
    pipe(&path);
    assert!(home.run(&["ready"]).err.contains("this is no file"));
    std::fs::remove_file(&path).unwrap();
    let notes = home.file(".config/outplant/devices");
    for note in std::fs::read_dir(notes).unwrap() {
        pipe(&note.unwrap().path());
    }
    let written = home.run(&["write", "weather", "rain_mm=4"]);
    assert!(written.err.contains("this is no file"), "{}: {}", written.code, written.err);
}

#[cfg(target_os = "linux")]
#[test]
fn settings_and_nurseries_stand_in_the_folders_that_the_xdg_variables_name() {
    let home = Home::default();
    let (conf, data) = (home.file("conf"), home.file("data"));
    let mut program = home.program();
    program.env_remove("OUTPLANT_NURSERY").env("XDG_CONFIG_HOME", &conf).env("XDG_DATA_HOME", &data);
    let begin = ["begin", "--name", "T", "--lat", "0", "--lon", "36", "--altitude", "900"];
    assert!(program.args(begin).output().unwrap().status.success());
    assert!(data.join("outplant/nursery.outplant").is_file() && conf.join("outplant/devices").is_dir());
    assert!(!home.file(".config").exists() && !home.file(".local").exists());
}

#[test]
fn colour_and_ascii_can_be_asked_for_and_set() {
    let home = Home::default().begun();
    home.write("place_set", &["place=Vivero ñandú", "order=1", "shade_pct=40"]);
    assert!(!home.done(&["ready"]).contains('\u{1b}'));
    assert!(home.done(&["--color", "always", "ready"]).contains('\u{1b}'));
    settings(&home, "color = \"always\"\nascii = true\n");
    assert!(home.done(&["ready"]).contains('\u{1b}'));
    assert!(!home.done(&["--color=never", "ready"]).contains('\u{1b}'));
    assert!(home.done(&["ready", "--lang", "es"]).is_ascii());
}

#[test]
fn shells_are_given_completions_and_man_a_page_for_each_command() {
    let home = Home::default();
    for shell in ["bash", "zsh", "fish", "powershell", "elvish"] {
        let script = home.done(&["completions", shell]);
        assert!(script.contains("dry-run") && script.contains("rescue"), "{shell}");
    }
    assert!(home.done(&["man"]).contains(".TH outplant 1"));
    let folder = home.file("man");
    home.done(&["man", "--to", folder.to_str().unwrap(), "--lang", "es"]);
    let pages: Vec<String> =
        std::fs::read_dir(&folder).unwrap().map(|page| page.unwrap().file_name().into_string().unwrap()).collect();
    for command in ["outplant-ready.1", "outplant-why-tray.1", "outplant-write.1"] {
        assert!(pages.contains(&command.to_string()), "{pages:?}");
    }
    let page = std::fs::read_to_string(folder.join("outplant-why.1")).unwrap();
    assert!(
        page.contains(".SH \"OPCIONES DE TODA ORDEN\"") && page.contains(".SH ÓRDENES") && !page.contains(".SH NAME"),
        "{page}"
    );
    assert_eq!(home.done(&["help", "why", "tray"]), home.done(&["why", "tray", "--help"]));
}

#[test]
fn an_export_to_a_dash_goes_to_the_screen() {
    let home = Home::default().begun();
    assert_eq!(home.done(&["export", "--to", "-"]), home.done(&["export"]));
    assert!(!home.file("-").exists());
}

#[test]
fn a_table_runs_no_formula_and_a_sheet_has_its_text_back() {
    let home = Home::default().begun();
    home.write("noted", &["text==HYPERLINK(1)"]);
    let table = home.done(&["export", "--as", "csv"]);
    assert!(table.contains(",'=HYPERLINK(1)"), "{table}");
    let office = home.done(&["export", "--excel"]);
    assert!(office.starts_with("\u{feff}id;") && office.contains(";'=HYPERLINK(1)"), "{office}");
    let sheet = home.with("trays.csv", "Tray,Species,How many,Bench\ncof-1,coffee,41,'-North\n");
    home.done(&["import", sheet.to_str().unwrap(), "--as", "trays"]);
    assert!(home.done(&["export"]).contains("\"-North\""));
}

/// A limit on the size of files, as some machines set it (`ulimit -f`, in blocks of 1,024 bytes in bash).
#[cfg(unix)]
#[test]
fn a_file_that_may_not_grow_further_is_a_fault_with_a_sentence_and_leaves_nothing_behind() {
    let home = Home::default().begun();
    for turn in 0..20 {
        home.write("noted", &[&format!("text={}{turn}", "long ".repeat(300))]);
    }
    let program = home.program();
    let line = format!("ulimit -f 8; exec '{}' export --to large.jsonl", program.get_program().to_str().unwrap());
    let mut shell = std::process::Command::new("bash");
    shell.args(["-c", &line]).current_dir(home.path()).env_clear();
    shell.envs(program.get_envs().filter_map(|(name, value)| Some((name, value?))));
    let ended = shell.output().unwrap();
    let told = String::from_utf8_lossy(&ended.stderr).into_owned();
    assert_eq!(ended.status.code(), Some(3), "{told}");
    assert!(told.contains("larger than is allowed"), "{told}");
    let left: Vec<String> = std::fs::read_dir(home.path())
        .unwrap()
        .map(|there| there.unwrap().file_name().to_string_lossy().into_owned())
        .filter(|name| name.contains("large"))
        .collect();
    assert_eq!(left, Vec::<String>::new());
}

#[test]
fn what_only_reads_does_not_say_that_nothing_was_written_and_a_sound_file_needs_no_rescue() {
    let home = Home::default().begun();
    for words in [&["ready"][..], &["walk"], &["check"]] {
        let ended = home.run(&[&["--nursery", "none.outplant"][..], words].concat());
        assert_eq!(ended.code, 1, "{words:?}");
        assert!(!ended.err.contains("nothing was written"), "{words:?}: {}", ended.err);
    }
    let to = home.file("out.jsonl");
    assert!(home.done(&["rescue", to.to_str().unwrap()]).contains("nothing to rescue"));
}

#[cfg(unix)]
#[test]
fn check_says_where_others_can_read_or_write_the_file_and_other_commands_say_it_once() {
    use std::os::unix::fs::PermissionsExt;
    let home = Home::default().begun();
    let file = home.file("nursery.outplant");
    let folder = file.parent().unwrap();
    let set = |path: &Path, mode| std::fs::set_permissions(path, std::fs::Permissions::from_mode(mode)).unwrap();
    let said = |words: &[&str]| {
        let ended = home.run(words);
        assert_eq!(ended.code, 0, "{words:?}: {}", ended.err);
        format!("{}{}", ended.out, ended.err).lines().find(|line| line.contains("chmod 600")).map(str::to_string)
    };
    set(folder, 0o755);
    set(&file, 0o600);
    assert_eq!((said(&["check"]), said(&["ready"])), (None, None));
    set(&file, 0o644);
    let read = said(&["ready"]).unwrap();
    assert!(read.contains("can read"), "{read}");
    assert_eq!((said(&["ready"]), said(&["write", "noted", "text=x"])), (None, None), "it is said once");
    assert_eq!(said(&["check"]), Some(read));
    set(&file, 0o666);
    let write = said(&["write", "noted", "text=y"]).unwrap();
    assert!(write.contains("can write"), "{write}");
    assert_eq!(said(&["ready"]), None);
    assert!(said(&["ready", "--json"]).is_some(), "a program is told in each answer");
    set(&file, 0o600);
    assert_eq!(said(&["ready"]), None);
    set(&file, 0o666);
    assert_eq!(said(&["ready"]), Some(write), "it was not so in between");
    set(folder, 0o700);
    assert_eq!((said(&["check"]), said(&["ready"])), (None, None), "nobody else enters the folder");
}

#[test]
fn what_cannot_be_made_is_named_as_it_was_asked_for() {
    let home = Home::default().begun();
    let nowhere = home.file("none/copy.outplant");
    let blocked = home.with("blocked", "a file");
    let blocked = blocked.join("pages");
    for words in [&["backup", nowhere.to_str().unwrap()][..], &["man", "--to", blocked.to_str().unwrap()]] {
        let ended = home.run(words);
        assert_ne!(ended.code, 0, "{words:?}");
        assert!(ended.err.contains("none") || ended.err.contains("pages"), "{words:?}: {}", ended.err);
        assert!(!ended.err.contains(".new"), "{words:?}: {}", ended.err);
    }
    let file = home.file("nursery.outplant");
    let refused = home.refused(&["import", file.to_str().unwrap()]);
    assert!(refused.contains("is a nursery itself") && refused.lines().count() < 4, "{refused}");
    let nothing = home.run_with(&["calc", "sample_size", "--lang", "es"], "");
    assert!(!nothing.err.contains("EOF"), "{}", nothing.err);
}

#[cfg(target_os = "linux")]
#[test]
fn help_that_cannot_be_shown_is_told() {
    let home = Home::default();
    for words in [&["--help"][..], &["write", "--help"], &["--version"]] {
        let full = std::fs::File::options().write(true).open("/dev/full").unwrap();
        let ended = home.program().args(words).stdout(full).output().unwrap();
        assert_eq!(ended.status.code(), Some(3), "{words:?}");
        assert!(!ended.stderr.is_empty(), "{words:?}");
    }
}

#[cfg(unix)]
#[test]
fn a_device_is_nothing_to_read_entries_from() {
    let home = Home::default().begun();
    for words in
        [&["import", "/dev/zero"][..], &["import", "--as", "trays", "/dev/zero"], &["write", "--batch", "/dev/zero"]]
    {
        let run = home.run(words);
        assert!(run.code == 1 && run.err.contains("/dev/zero") && run.err.contains("this is no file"), "{}", run.err);
    }
}
