//! What can be written down, field by field, and what keys do: names of ours said as a person says them.

use crate::wording::Wording;
use crate::wording::messages::messages;

messages! {
    kind_nursery_set();
    kind_season_set();
    kind_species_set();
    kind_place_set();
    kind_container_set();
    kind_field_set();
    kind_bed_set();
    kind_positions_blocked();
    kind_lot_received();
    kind_lot_kept();
    kind_lot_counted();
    kind_lot_tested();
    kind_sown();
    kind_resown();
    kind_plants_received();
    kind_counted();
    kind_lost();
    kind_culled();
    kind_moved_on();
    kind_carried();
    kind_measured();
    kind_plug_checked();
    kind_flushed();
    kind_shade_set();
    kind_watering_set();
    kind_hardening_begun();
    kind_held();
    kind_released();
    kind_pest_seen();
    kind_treated();
    kind_stocktaken();
    kind_given_out();
    kind_relabelled();
    kind_let_go();
    kind_sown_in_bed();
    kind_plants_found();
    kind_nurse_planted();
    kind_nurse_counted();
    kind_nurse_measured();
    kind_nurse_cut();
    kind_light_read();
    kind_soil_checked();
    kind_prepared();
    kind_outplanted();
    kind_plants_lost();
    kind_survival_counted();
    kind_weather();
    kind_noted();
    kind_withdrawn();
    field_name();
    field_latitude_deg();
    field_longitude_deg();
    field_altitude_m();
    field_utc_offset_h();
    field_plants_per_day();
    field_planting_days_per_week();
    field_walk_minutes();
    field_water_litres_per_day();
    field_rains();
    field_rain_mm();
    field_tmax_c();
    field_tmin_c();
    field_species();
    field_profile();
    field_place();
    field_order();
    field_shade_pct();
    field_holds_trays();
    field_sign();
    field_container();
    field_volume_ml();
    field_depth_cm();
    field_cells();
    field_field();
    field_slope_pct();
    field_texture();
    field_bed();
    field_length_m();
    field_width_m();
    field_row_bearing_deg();
    field_plan();
    field_at();
    field_why();
    field_lot();
    field_source();
    field_collected();
    field_seeds();
    field_fruits();
    field_seeds_per_fruit();
    field_mass_g();
    field_seeds_per_kg();
    field_kept();
    field_moisture_pct();
    field_store_c();
    field_initial_pct();
    field_replicates();
    field_days();
    field_tray();
    field_share_of();
    field_count();
    field_from();
    field_form();
    field_age_days();
    field_height_cm();
    field_shade_now_pct();
    field_good_until();
    field_heeled_in();
    field_stands_since();
    field_standing();
    field_dead();
    field_about();
    field_cells_seen();
    field_cells_filled();
    field_cause();
    field_to();
    field_how();
    field_plants();
    field_roots();
    field_every_days();
    field_for_bed();
    field_until();
    field_what();
    field_share_pct();
    field_with();
    field_safe_after_days();
    field_was();
    field_task();
    field_never();
    field_seeds_per_hole();
    field_holes();
    field_rows();
    field_alive();
    field_planted_about();
    field_nurse();
    field_row_m();
    field_in_row_m();
    field_offset_m();
    field_bunches_showing();
    field_height_m();
    field_crown_radius_m();
    field_share();
    field_yield_kg();
    field_readings();
    field_light_share();
    field_sky();
    field_resistance_mpa();
    field_rod_mm();
    field_push_kg();
    field_days_since_soaking();
    field_wet();
    field_tubers();
    field_outplanted_on();
    field_causes();
    field_text();
    field_entries();
    field_height_cm_row();
    field_collar_mm();
    field_leaf_pairs();
    field_germinated();
    field_under_lux();
    field_open_lux();
    field_pattern();
    field_gap_m();
    choice_in_pod();
    choice_mucilage_on();
    choice_washed_moist();
    choice_in_parchment();
    choice_dry_sealed();
    choice_dry_open();
    choice_cold();
    choice_other();
    choice_opening();
    choice_bought();
    choice_wildling();
    choice_cutting();
    choice_graft();
    choice_gift();
    choice_plug();
    choice_bag();
    choice_bare_root();
    choice_stump();
    choice_pricked_out();
    choice_potted_on();
    choice_merged();
    choice_crumbles();
    choice_holds();
    choice_circling();
    choice_square();
    choice_rectangle();
    choice_triangle();
    choice_quincunx();
    choice_double_row();
    choice_leaves();
    choice_stem();
    choice_harvest();
    choice_felled();
    choice_overcast();
    choice_clear();
    choice_thin_necked();
    choice_even();
    choice_full();
    choice_cleared();
    choice_holes();
    choice_weeded();
    choice_mulched();
    choice_fenced();
    choice_true();
    choice_false();
    does_screen_digit();
    does_screen_next();
    does_move();
    does_page();
    does_open();
    does_back();
    does_help();
    does_why();
    does_find();
    does_write();
    does_day();
    does_writing_day();
    does_news();
    does_undo();
    does_options();
    does_contrast();
    does_usual();
    does_count();
    does_lost();
    does_cull();
    does_move_on();
    does_shade();
    does_water();
    does_measure();
    does_plug();
    does_flush();
    does_outplant();
    does_note();
    does_skip();
    does_one_stop();
    does_let_go();
    does_filter();
    does_sort();
    does_group();
    does_next_part();
    does_load();
    does_more();
    does_fewer();
    does_confirm_load();
    does_withdraw();
    does_day_step();
    does_month_step();
    does_next_field();
    does_submit();
    does_choice();
    does_go_there();
    does_empty_too();
    does_sow_lot();
    does_sow_for();
    does_test_lot();
    does_count_lot();
    does_keep_lot();
    does_used_up_too();
    does_rest_of_round();
    does_read_light();
    does_check_soil();
    does_ground_work();
    does_count_nurses();
    does_count_survivors();
    does_along_bed();
    does_how_many();
    does_unload();
    does_write_list();
    keys_arrows();
    keys_left_right();
    keys_space();
}

impl Wording {
    /// A kind of entry as a person says it: "Count a tray".
    pub fn kind_name(&self, kind: &str) -> String {
        self.said_or_plain("kind", kind)
    }

    /// A field of a form: "Height, cm".
    pub fn field_title(&self, field: &str) -> String {
        self.said_or_plain("field", field)
    }

    /// A word of a closed list by its spelling in files: "in the pod or fruit".
    pub fn choice_name(&self, word: &str) -> String {
        self.said_or_plain("choice", word)
    }

    /// What a key does, by its spelling.
    pub fn key_does(&self, does: &str) -> String {
        self.said_or_plain("does", does)
    }

    /// Keys as they are named: arrows and the bar of blanks have a name in each language, all others are what stands on them.
    pub fn keys_named(&self, keys: &str) -> String {
        match keys {
            "arrows" => self.keys_arrows(),
            "left right" => self.keys_left_right(),
            "Space" => self.keys_space(),
            other => other.to_string(),
        }
    }

    /// The sentence of a name of ours; a name that a newer version brings is shown as it is.
    fn said_or_plain(&self, theme: &str, name: &str) -> String {
        let said = self.say(&format!("{theme}_{name}"), Vec::new());
        if said.is_empty() { name.replace('_', " ") } else { said }
    }
}
