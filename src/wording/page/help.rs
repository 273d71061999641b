//! The help of commands and options.

use crate::wording::messages::messages;
use crate::wording::{Wording, said};

messages! {
    help_outplant();
    help_outplant_more();
    help_any_nursery();
    help_any_on();
    help_any_known();
    help_any_lang();
    help_any_json();
    help_any_plain();
    help_any_handbook();
    help_any_who();
    help_any_help();
    help_any_version();
    help_sample();
    help_sample_into();
    help_begin();
    help_begin_more();
    help_begin_name();
    help_begin_lat();
    help_begin_lon();
    help_begin_altitude();
    help_begin_utc_offset();
    help_ready();
    help_ready_since();
    help_ready_tray();
    help_ready_bed();
    help_ready_fits();
    help_walk();
    help_why();
    help_why_more();
    help_why_tray();
    help_why_tray_tray();
    help_why_bed();
    help_why_bed_bed();
    help_why_bed_species();
    help_why_pair();
    help_why_pair_tray();
    help_why_pair_bed();
    help_why_pair_how();
    help_write();
    help_write_more();
    help_write_kind();
    help_write_fields();
    help_write_batch();
    help_write_happened();
    help_write_dry_run();
    short_forms_heading();
    help_undo();
    help_undo_entry();
    help_undo_together();
    help_undo_all();
    help_undo_only();
    help_undo_dry_run();
    help_undo_why();
    help_import();
    help_import_more();
    help_import_file();
    help_import_what();
    help_import_dry_run();
    help_export();
    help_export_what();
    help_export_to();
    help_check();
    help_rescue();
    help_rescue_to();
    help_rescue_no_backup();
    help_backup();
    help_backup_to();
    help_schema();
    help_schema_answer();
    help_species();
    help_species_name();
    help_species_sources();
    help_usage();
    help_commands();
    help_arguments();
    help_options();
    help_some_options();
    help_value_answer();
    help_value_file();
    help_value_date();
    help_value_lang();
    help_value_name();
    help_value_deg();
    help_value_m();
    help_value_h();
    help_value_text();
    help_value_command();
    help_value_kind();
    help_value_fields();
    help_value_tray();
    help_value_bed();
    help_value_species();
    help_value_entry();
    help_value_what();
    help_value_to();
    help_choice(help: text, values: text);
    help_choice_usual(help: text, values: text, usual: text);
}

impl Wording {
    /// The help of a command or option by its key (`help_why_tray`), where it has one.
    pub fn help(&self, key: &str) -> Option<String> {
        said(&self.bundle, key, &[])
    }
}
