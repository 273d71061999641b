//! The settings file and where things are kept. The caller reads the environment; this room only decides.

use serde::Deserialize;
use std::path::{Path, PathBuf};

/// What a person has set, from `settings.toml`.
#[derive(Clone, PartialEq, Eq, Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Settings {
    /// The nursery opened when none is named.
    #[serde(default)]
    pub nursery: Option<PathBuf>,
    /// Who writes.
    #[serde(default)]
    pub who: Option<String>,
    /// Language, `en` or `es`.
    #[serde(default)]
    pub lang: Option<String>,
    /// Whether forecasts rest on the handbook alone and set aside what this nursery learned.
    #[serde(default)]
    pub handbook: bool,
}

/// Why the settings cannot be used.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum SettingsError {
    /// The file is there and cannot be read.
    #[error("{path}: {what}")]
    Unreadable {
        /// The file.
        path: PathBuf,
        /// What is wrong, with its line.
        what: String,
    },
}

/// Where this program keeps its things.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Folders {
    /// The settings file and the identity of this copy.
    pub settings: PathBuf,
    /// Nurseries.
    pub data: PathBuf,
}

impl Folders {
    /// The folders of this user: `XDG_CONFIG_HOME` and `XDG_DATA_HOME` on Linux, the system's own elsewhere; below the
    /// present folder where the user has no home.
    pub(crate) fn of_user() -> Folders {
        match directories::ProjectDirs::from("", "", "outplant") {
            Some(dirs) => Folders { settings: dirs.config_dir().to_path_buf(), data: dirs.data_dir().to_path_buf() },
            None => Folders { settings: PathBuf::from(".outplant"), data: PathBuf::from(".outplant") },
        }
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
}

impl Settings {
    /// Reads the settings; a file that is not there is no fault.
    pub fn read(folders: &Folders) -> Result<Settings, SettingsError> {
        let path = folders.settings_file();
        let text = match std::fs::read_to_string(&path) {
            Ok(text) => text,
            Err(fault) if fault.kind() == std::io::ErrorKind::NotFound => return Ok(Settings::default()),
            Err(fault) => return Err(SettingsError::Unreadable { path, what: fault.to_string() }),
        };
        toml::from_str(&text).map_err(|fault| SettingsError::Unreadable { path, what: fault.message().to_string() })
    }

    /// The nursery to open: the one named on the command line or in the environment, else the one set, else the one in
    /// the data folder.
    pub fn nursery(&self, named: Option<&Path>, folders: &Folders) -> PathBuf {
        named.map(Path::to_path_buf).or_else(|| self.nursery.clone()).unwrap_or_else(|| folders.own_nursery())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_named_nursery_leads_over_the_set_one_and_that_over_the_data_folder() {
        let folders = Folders { settings: "/s".into(), data: "/d".into() };
        let set = Settings { nursery: Some("/set".into()), ..Settings::default() };
        assert_eq!(set.nursery(Some(Path::new("/named")), &folders), PathBuf::from("/named"));
        assert_eq!(set.nursery(None, &folders), PathBuf::from("/set"));
        assert_eq!(Settings::default().nursery(None, &folders), PathBuf::from("/d/nursery.outplant"));
    }

    #[test]
    fn an_unknown_setting_is_named() {
        let folder = tempfile::tempdir().unwrap();
        let folders = Folders { settings: folder.path().into(), data: folder.path().into() };
        std::fs::write(folders.settings_file(), "whoo = \"mara\"\n").unwrap();
        let SettingsError::Unreadable { what, .. } = Settings::read(&folders).unwrap_err();
        assert!(what.contains("whoo"), "{what}");
    }
}
