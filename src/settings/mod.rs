//! The settings file and where things are kept. The caller reads the environment; this room only decides.

mod reading;

use std::path::{Path, PathBuf};

use crate::base::letters::Letters;

pub(crate) use reading::{ReadSettings, Takes, WrongSetting, colour};

/// The names of the settings, as they are written, in the order they are shown.
pub(crate) const NAMES: [&str; 7] = ["nursery", "who", "lang", "handbook", "color", "ascii", "keys"];

/// What a person has set, from `settings.toml`.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub(crate) struct Settings {
    /// The nursery opened when none is named.
    pub(crate) nursery: Option<PathBuf>,
    /// Who writes.
    pub(crate) who: Option<String>,
    /// Language, `en` or `es`.
    pub(crate) lang: Option<String>,
    /// Whether forecasts rest on the handbook alone and set aside what this nursery learned.
    pub(crate) handbook: bool,
    /// Whether colour is always used, or never; none where the screen decides.
    pub(crate) color: Option<bool>,
    /// Whether answers keep to ASCII.
    pub(crate) ascii: bool,
    /// Letters of the screen that were moved.
    pub(crate) keys: Letters,
}

/// Where this program keeps its things.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Folders {
    /// The settings file and the identity of this copy.
    pub settings: PathBuf,
    /// Nurseries.
    pub data: PathBuf,
    /// The person's home, where there is one.
    pub home: Option<PathBuf>,
}

impl Folders {
    /// The folders of this user: `XDG_CONFIG_HOME` and `XDG_DATA_HOME` on Linux, the system's own elsewhere; below the
    /// present folder where the user has no home.
    pub(crate) fn of_user() -> Folders {
        let home = directories::BaseDirs::new().map(|dirs| dirs.home_dir().to_path_buf());
        let (settings, data) = match directories::ProjectDirs::from("", "", "outplant") {
            Some(dirs) => (dirs.config_dir().to_path_buf(), dirs.data_dir().to_path_buf()),
            None => (PathBuf::from(".outplant"), PathBuf::from(".outplant")),
        };
        Folders { settings, data, home }
    }

    /// The settings file.
    pub(crate) fn settings_file(&self) -> PathBuf {
        self.settings.join("settings.toml")
    }

    /// The nursery kept in the data folder.
    pub(crate) fn own_nursery(&self) -> PathBuf {
        self.data.join("nursery.outplant")
    }

    /// The copy of the sample nursery.
    pub fn sample_nursery(&self) -> PathBuf {
        self.data.join("sample.outplant")
    }

    /// A path as a person writes it: `~` before it is their home.
    fn expanded(&self, written: &Path) -> PathBuf {
        match (written.strip_prefix("~"), &self.home) {
            (Ok(rest), Some(home)) => home.join(rest),
            _ => written.to_path_buf(),
        }
    }
}

impl Settings {
    /// The nursery to open: the one named on the command line or in the environment, else the one set, else the one in
    /// the data folder.
    pub(crate) fn nursery(&self, named: Option<&Path>, folders: &Folders) -> PathBuf {
        let written = named.or(self.nursery.as_deref());
        written.map_or_else(|| folders.own_nursery(), |written| folders.expanded(written))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_named_nursery_leads_over_the_set_one_and_that_over_the_data_folder() {
        let folders = Folders { settings: "/s".into(), data: "/d".into(), home: Some("/h".into()) };
        let set = Settings { nursery: Some("/set".into()), ..Settings::default() };
        assert_eq!(set.nursery(Some(Path::new("/named")), &folders), PathBuf::from("/named"));
        assert_eq!(set.nursery(None, &folders), PathBuf::from("/set"));
        assert_eq!(Settings::default().nursery(None, &folders), PathBuf::from("/d/nursery.outplant"));
    }

    #[test]
    fn a_tilde_is_the_home_of_the_person() {
        let folders = Folders { settings: "/s".into(), data: "/d".into(), home: Some("/h".into()) };
        let set = |path: &str| Settings { nursery: Some(path.into()), ..Settings::default() };
        assert_eq!(set("~/finca.outplant").nursery(None, &folders), PathBuf::from("/h/finca.outplant"));
        assert_eq!(set("~other/x").nursery(None, &folders), PathBuf::from("~other/x"));
        assert_eq!(Settings::default().nursery(Some(Path::new("~/n")), &folders), PathBuf::from("/h/n"));
        let homeless = Folders { home: None, ..folders };
        assert_eq!(set("~/n").nursery(None, &homeless), PathBuf::from("~/n"));
    }
}
