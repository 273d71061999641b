//! The names of kinds and fields in Spanish: what is typed is read in both languages, and what is shown to be copied stands
//! in the language asked for. The file keeps the English ones.

/// Kinds: as the file has them, and in Spanish.
const KINDS: &[(&str, &str)] = &[
    ("nursery_set", "vivero_descrito"),
    ("season_set", "temporada_descrita"),
    ("species_set", "especie_descrita"),
    ("place_set", "lugar_descrito"),
    ("container_set", "envase_descrito"),
    ("field_set", "terreno_descrito"),
    ("bed_set", "parcela_trazada"),
    ("positions_blocked", "puestos_bloqueados"),
    ("lot_received", "lote_recibido"),
    ("lot_kept", "lote_guardado"),
    ("lot_counted", "lote_contado"),
    ("lot_tested", "lote_probado"),
    ("sown", "sembrada"),
    ("resown", "resembrada"),
    ("plants_received", "plantas_recibidas"),
    ("counted", "contada"),
    ("lost", "perdidas"),
    ("culled", "descartadas"),
    ("moved_on", "pasadas"),
    ("carried", "movida"),
    ("measured", "medida"),
    ("plug_checked", "pilon_revisado"),
    ("roots_cut", "raices_cortadas"),
    ("grafted", "injertadas"),
    ("flushed", "brotada"),
    ("shade_set", "sombra_puesta"),
    ("watering_set", "riego_puesto"),
    ("hardening_begun", "endurecimiento_empezado"),
    ("held", "retenida"),
    ("released", "liberada"),
    ("pest_seen", "plaga_vista"),
    ("treated", "tratada"),
    ("stocktaken", "recuento_hecho"),
    ("given_out", "entregadas"),
    ("relabelled", "reetiquetada"),
    ("let_go", "tarea_dejada"),
    ("sown_in_bed", "siembra_directa"),
    ("plants_found", "plantas_halladas"),
    ("nurse_planted", "nodrizas_plantadas"),
    ("nurse_counted", "nodrizas_contadas"),
    ("nurse_measured", "nodrizas_medidas"),
    ("nurse_cut", "nodrizas_cortadas"),
    ("light_read", "luz_medida"),
    ("soil_checked", "suelo_revisado"),
    ("plants_watered", "plantas_regadas"),
    ("prepared", "parcela_preparada"),
    ("outplanted", "plantadas"),
    ("plants_lost", "plantas_perdidas"),
    ("survival_counted", "supervivencia_contada"),
    ("weather", "tiempo"),
    ("noted", "anotado"),
    ("settled", "resuelto"),
    ("withdrawn", "retirado"),
];

/// Fields: as the file has them, and in Spanish.
const FIELDS: &[(&str, &str)] = &[
    ("about", "sobre"),
    // Of a count: about so many.
    ("about", "mas_o_menos"),
    ("age_days", "edad_dias"),
    ("alive", "vivas"),
    ("altitude_m", "altitud_m"),
    ("at", "puestos"),
    ("bed", "parcela"),
    ("bunches_showing", "racimos_a_la_vista"),
    ("cause", "causa"),
    ("causes", "causas"),
    ("cells", "celdas"),
    ("cells_filled", "celdas_llenas"),
    ("cells_seen", "celdas_vistas"),
    ("collar_mm", "cuello_mm"),
    ("collected", "recogida"),
    ("container", "envase"),
    ("count", "cuantas"),
    ("crown_radius_m", "radio_de_copa_m"),
    ("days", "dias"),
    ("days_since_soaking", "dias_desde_la_mojada"),
    ("dead", "muertas"),
    ("depth_cm", "profundidad_cm"),
    ("edges", "orillas"),
    ("entries", "entradas"),
    ("every_days", "cada_dias"),
    ("field", "terreno"),
    ("for_bed", "para_parcela"),
    ("form", "forma"),
    ("from", "de"),
    ("fruits", "frutos"),
    ("gap_m", "calle_m"),
    ("germinated", "germinadas"),
    ("good_until", "buena_hasta"),
    ("heeled_in", "aporcada"),
    ("height_cm", "altura_cm"),
    ("height_m", "altura_m"),
    ("holds_trays", "caben_bandejas"),
    ("holes", "hoyos"),
    ("how", "como"),
    ("in_row_m", "en_hilera_m"),
    ("initial_pct", "viabilidad_inicial_pct"),
    ("keeps_spot", "guarda_puesto"),
    ("kept", "guardado"),
    ("latitude_deg", "latitud_grados"),
    ("leaf_pairs", "pares_de_hojas"),
    ("length_m", "largo_m"),
    ("light_share", "parte_de_luz"),
    ("litres_each", "litros_cada_una"),
    ("longitude_deg", "longitud_grados"),
    ("lot", "lote"),
    ("mass_g", "peso_g"),
    ("moisture_pct", "humedad_pct"),
    ("name", "nombre"),
    ("never", "nunca"),
    ("nurse", "nodriza"),
    ("of", "del"),
    ("offset_m", "margen_m"),
    ("open_lux", "lux_afuera"),
    ("order", "orden"),
    ("outplanted_on", "plantadas_el"),
    ("pattern", "marco"),
    ("place", "lugar"),
    ("plan", "plan"),
    ("planted_about", "plantadas_hacia"),
    ("planting_days_per_week", "dias_de_siembra_por_semana"),
    ("plants", "plantas"),
    ("plants_per_day", "plantas_por_dia"),
    ("plants_seen", "plantas_vistas"),
    ("profile", "perfil"),
    ("push_kg", "fuerza_kg"),
    ("rain_mm", "lluvia_mm"),
    ("rains", "lluvias"),
    ("readings", "lecturas"),
    ("replicates", "repeticiones"),
    ("resistance_mpa", "resistencia_mpa"),
    ("rod_mm", "varilla_mm"),
    ("roots", "raices"),
    ("roots_seen", "raices_vistas"),
    ("rootstock", "patron"),
    ("row_bearing_deg", "rumbo_de_hilera_grados"),
    ("row_m", "entre_hileras_m"),
    ("row_offset_m", "margen_hileras_m"),
    ("rows", "hileras"),
    ("safe_after_days", "espera_dias"),
    ("plant_after_days", "sembrar_dias"),
    ("seeds", "semillas"),
    ("seeds_per_fruit", "semillas_por_fruto"),
    ("seeds_per_hole", "semillas_por_hoyo"),
    ("seeds_per_kg", "semillas_por_kg"),
    ("shade_now_pct", "sombra_hasta_hoy_pct"),
    ("shade_pct", "sombra_pct"),
    ("share", "parte"),
    ("share_of", "parte_de"),
    ("share_pct", "parte_pct"),
    ("sign", "sena"),
    ("sky", "cielo"),
    ("slope_bearing_deg", "rumbo_de_pendiente_grados"),
    ("slope_pct", "pendiente_pct"),
    ("corner_lat_deg", "latitud_de_esquina_grados"),
    ("corner_lon_deg", "longitud_de_esquina_grados"),
    ("source", "procedencia"),
    ("species", "especie"),
    ("spreads", "se_pega"),
    ("standing", "paradas"),
    ("stands_since", "ahi_desde"),
    ("store_c", "almacen_c"),
    ("task", "tarea"),
    ("text", "texto"),
    ("texture", "textura"),
    ("tmax_c", "maxima_c"),
    ("tmin_c", "minima_c"),
    ("to", "a"),
    ("tray", "bandeja"),
    ("tubers", "tuberculos"),
    ("under_lux", "lux_abajo"),
    ("until", "hasta"),
    ("utc_offset_h", "horas_utc"),
    ("variety", "variedad"),
    ("volume_ml", "volumen_ml"),
    ("walk_minutes", "minutos_de_ronda"),
    ("was", "antes"),
    ("water_litres_per_day", "agua_litros_por_dia"),
    ("wet", "mojado"),
    ("what", "que"),
    ("where", "donde"),
    ("why", "por_que"),
    ("width_m", "ancho_m"),
    ("with", "con"),
    ("yield_kg", "cosecha_kg"),
];

/// What a field is called on the screen and read by too; lines to copy have the other name.
const READ_TOO: &[(&str, &str)] =
    &[("standing", "vivas"), ("standing", "vivos"), ("about", "mas_o_menos"), ("about", "aproximado")];

/// What stands beside the fields of every kind: its day, who writes, the time of day.
const BESIDE: &[(&str, &str)] = &[("happened", "dia"), ("who", "quien"), ("clock", "hora")];

fn other(all: &[(&'static str, &'static str)], english: &str) -> Option<&'static str> {
    all.iter().find(|(one, _)| *one == english).map(|(_, spanish)| *spanish)
}

fn english(all: &[(&'static str, &'static str)], folded: &str) -> Option<&'static str> {
    let wanted = folded.replace('-', "_");
    all.iter().find(|(_, spanish)| *spanish == wanted).map(|(english, _)| *english)
}

/// A kind in Spanish; itself where it has no other name.
pub fn kind_in_spanish(kind: &str) -> &str {
    other(KINDS, kind).unwrap_or(kind)
}

/// A field, or what stands beside the fields, in Spanish; itself where it has no other name.
pub fn field_in_spanish(field: &str) -> &str {
    other(FIELDS, field).or_else(|| other(BESIDE, field)).unwrap_or(field)
}

/// The kind that a folded Spanish name is that of.
pub(crate) fn kind_of_spanish(folded: &str) -> Option<&'static str> {
    english(KINDS, folded)
}

/// The field that a folded Spanish name is that of.
pub(crate) fn field_of_spanish(folded: &str) -> Option<&'static str> {
    english(FIELDS, folded)
}

/// The field that is called so on the screen.
pub(super) fn field_of_the_screen(folded: &str) -> Option<&'static str> {
    english(READ_TOO, folded)
}

/// What stands beside the fields, by its folded Spanish name.
pub fn beside_of_spanish(folded: &str) -> Option<&'static str> {
    english(BESIDE, folded)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::nursery::entry::all_kinds;
    use crate::nursery::entry::fields::find_field;
    use crate::nursery::entry::kind_of_entry;

    #[test]
    fn a_field_is_read_by_its_name_on_the_screen_too() {
        let counted = kind_of_entry("counted").unwrap();
        for (said, field) in
            [("vivas", "standing"), ("paradas", "standing"), ("mas_o_menos", "about"), ("sobre", "about")]
        {
            assert_eq!(find_field(counted.fields, said).map(|found| found.name), Some(field), "{said}");
        }
    }

    #[test]
    fn every_kind_and_field_has_a_spanish_name_of_its_own_that_is_read() {
        for known in all_kinds() {
            let spanish = kind_in_spanish(known.kind);
            assert_ne!(spanish, known.kind, "{} has no Spanish name", known.kind);
            assert_eq!(kind_of_entry(spanish).map(|found| found.kind), Some(known.kind));
            assert!(all_kinds().all(|other| other.kind != spanish), "{spanish} is a kind");
            for field in known.fields {
                let name = field_in_spanish(field.name);
                assert!(name != field.name || name == "plan", "{} has no Spanish name", field.name);
                assert_eq!(find_field(known.fields, name).map(|found| found.name), Some(field.name), "{}", known.kind);
                assert!(known.fields.iter().all(|other| other.name == field.name || other.name != name), "{name}");
                assert!(beside_of_spanish(name).is_none(), "{}: {name} stands beside its fields", known.kind);
            }
        }
    }
}
