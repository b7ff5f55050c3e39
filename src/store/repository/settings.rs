//! The settings of one clone: read, made, taken away. Nobody else's settings are touched.

use git2::Config;
use git2::ConfigLevel;
use git2::ErrorCode;

use crate::store::error::StoreError;
use crate::store::repository::Repository;

impl Repository {
    /// Returns what this clone's own settings say under a name.
    ///
    /// # Errors
    ///
    /// They can't be read.
    pub fn setting(&self, name: &str) -> Result<Option<String>, StoreError> {
        let mut own = self.own_settings()?;
        let own = own.snapshot().map_err(|error| self.unreadable(&error))?;
        match own.get_str(name) {
            Ok(value) => Ok(Some(value.to_owned())),
            Err(error) if error.code() == ErrorCode::NotFound => Ok(None),
            Err(error) => Err(self.unreadable(&error)),
        }
    }

    /// Makes a setting of this clone.
    ///
    /// # Errors
    ///
    /// The file with the settings can't be written; it is as it was.
    pub fn make_setting(&self, name: &str, value: &str) -> Result<(), StoreError> {
        let made = self.own_settings()?.set_str(name, value);
        made.map_err(|error| self.unreadable(&error))
    }

    /// Takes a setting of this clone away; returns whether there was one.
    ///
    /// # Errors
    ///
    /// The file with the settings can't be written; it is as it was.
    pub fn take_setting(&self, name: &str) -> Result<bool, StoreError> {
        match self.own_settings()?.remove(name) {
            Ok(()) => Ok(true),
            Err(error) if error.code() == ErrorCode::NotFound => Ok(false),
            Err(error) => Err(self.unreadable(&error)),
        }
    }

    fn own_settings(&self) -> Result<Config, StoreError> {
        let all = self.git.config().map_err(|error| self.unreadable(&error))?;
        all.open_level(ConfigLevel::Local).map_err(|error| self.unreadable(&error))
    }
}
