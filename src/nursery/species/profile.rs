//! What is known of a species: every figure with its source. All fields but the names may be unknown.

use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

use super::figure::Figure;
use crate::base::SpeciesKey;
use crate::words;

words! {
    /// What a species is for.
    Role {
        /// Raised in the nursery and planted out.
        Nursery: "nursery", "vivero";
        /// A fast plant grown to shade, mulch and protect others.
        Nurse: "nurse", "nodriza";
    }
    /// How seed of a species keeps.
    Storage {
        /// Dies when dried: days to weeks.
        Recalcitrant: "recalcitrant", "recalcitrante";
        /// Stands some drying: weeks to months.
        Intermediate: "intermediate", "intermedia";
        /// Keeps dry and cold: months to years.
        Orthodox: "orthodox", "ortodoxa";
    }
    /// The kind of stem, which decides the rule for the root collar.
    Stem {
        /// A woody stem: collar at least max(floor, height / 8), target height / 6.
        Woody: "woody", "lenosa";
        /// A soft or succulent stem (moringa, papaya): no collar rule.
        Soft: "soft", "blanda";
    }
    /// Where a plant that lies without soil is looked at, where that is not its bark.
    LooksAlive {
        /// The base and the heart leaves of a slip.
        HeartLeaves: "heart_leaves", "cogollo";
        /// The flesh of the corm of a sucker.
        Corm: "corm", "cormo";
        /// The spear leaf, and the nut below it.
        SpearLeaf: "spear_leaf", "hoja_flecha";
        /// The flesh and the eyes of a rhizome or tuber.
        Rhizome: "rhizome", "rizoma";
        /// The nodes of a vine.
        Vine: "vine", "guia";
        /// The base of a slip of a grass.
        Clump: "clump", "macolla";
    }
    /// What a plant can do to people, animals or the land; the sentences are in `wording`.
    Danger {
        /// Raw parts give cyanide.
        RawCyanide: "raw_cyanide", "cianuro_crudo";
        /// The seed is poisonous.
        PoisonousSeed: "poisonous_seed", "semilla_venenosa";
        /// The unripe fruit is poisonous.
        PoisonousUnripeFruit: "poisonous_unripe_fruit", "fruto_verde_venenoso";
        /// The leaf is poisonous.
        PoisonousLeaf: "poisonous_leaf", "hoja_venenosa";
        /// The root or tuber is poisonous.
        PoisonousRoot: "poisonous_root", "raiz_venenosa";
        /// What is harmless by the pinch poisons by the spoon.
        PoisonousInQuantity: "poisonous_in_quantity", "venenosa_en_cantidad";
        /// Dangerous to people with weak kidneys.
        HarmsWeakKidneys: "harms_weak_kidneys", "dana_rinones_debiles";
        /// Raw leaf, corm or root makes mouth and hands itch.
        ItchesRaw: "itches_raw", "pica_cruda";
        /// Sap, latex or resin irritates or burns skin and eyes.
        IrritatingSap: "irritating_sap", "savia_irritante";
        /// Juice on the skin burns in the sun.
        BurnsInSun: "burns_in_sun", "quema_con_sol";
        /// The oil of the shell burns and blisters.
        ShellOil: "shell_oil", "aceite_de_cascara";
        /// Powder, oil or smoke hurts the eyes.
        HurtsEyes: "hurts_eyes", "dana_ojos";
        /// Spines or thorns.
        Spines: "spines", "espinas";
        /// Hairs itch or sting.
        IrritatingHairs: "irritating_hairs", "pelos_que_pican";
        /// Dust of the wood, pod or fibre irritates.
        IrritatingDust: "irritating_dust", "polvo_irritante";
        /// People become allergic to it.
        Allergy: "allergy", "alergia";
        /// Stains skin and clothes.
        Stains: "stains", "mancha";
        /// Heavy fruits or pods fall.
        FallingFruit: "falling_fruit", "frutos_que_caen";
        /// Limbs break in wind.
        BreakingLimbs: "breaking_limbs", "ramas_que_caen";
        /// Small children choke on the seed.
        ChokingSeed: "choking_seed", "semilla_que_ahoga";
        /// Ants live on it.
        Ants: "ants", "hormigas";
        /// Poisons dogs.
        ToxicToDogs: "toxic_to_dogs", "venenosa_para_perros";
        /// Poisons livestock or poultry.
        ToxicToLivestock: "toxic_to_livestock", "venenosa_para_ganado";
        /// Poisons fish.
        ToxicToFish: "toxic_to_fish", "venenosa_para_peces";
        /// Spreads by itself into land and water.
        Invasive: "invasive", "invasora";
    }
    /// What growers look for a species under.
    Group {
        /// Fruit and nut trees and vines.
        Fruit: "fruit", "frutal";
        /// Trees for timber and poles.
        Timber: "timber", "maderable";
        /// Palms.
        Palm: "palm", "palma";
        /// Cacao, coffee and other crops for sale.
        Crop: "crop", "cultivo";
        /// Spices and dyes.
        Spice: "spice", "especia";
        /// Trees and shrubs for shade, mulch, fodder and fences.
        NurseTree: "nurse_tree", "arbol_nodriza";
        /// Covers, mulch and food plants of the first years.
        Cover: "cover", "cobertura";
    }
    /// Which hardening template a species follows.
    Template {
        /// Full sun at the end (FS).
        FullSun: "full_sun", "pleno_sol";
        /// Ends at the shade of the destination bed (MD).
        PartShade: "part_shade", "media_sombra";
        /// Ends at 50-60 % shade; full sun is never a target (SH).
        Shade: "shade", "sombra";
    }
}

/// A list of names: the first is the one shown.
#[derive(Clone, PartialEq, Debug, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Names {
    /// English common names.
    #[serde(default)]
    pub en: Vec<String>,
    /// Spanish common names.
    #[serde(default)]
    pub es: Vec<String>,
}

/// Height and crown radius of a nurse plant at an age.
#[derive(Clone, Copy, PartialEq, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct GrowthPoint {
    /// Months since planting.
    pub month: f64,
    /// Height, m.
    pub height_m: f64,
    /// Crown radius, m.
    pub radius_m: f64,
}

/// One step of a hardening template (advice for the walk, not a gate).
#[derive(Clone, Copy, PartialEq, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HardeningStep {
    /// Days before planting out.
    pub days_before: u32,
    /// Shade to set, percent; none where the step is the shade of the destination bed or leaves shade alone.
    #[serde(default)]
    pub shade_pct: Option<f64>,
    /// Whether the step brings the shade of the destination bed.
    #[serde(default)]
    pub bed_shade: bool,
    /// Water every so many days from this step.
    #[serde(default)]
    pub water_every_days: Option<u32>,
    /// Whether the plants are soaked on this day.
    #[serde(default)]
    pub soak: bool,
}

macro_rules! profile {
    ($($(#[$note:meta])* $field:ident $(| $alias:literal)* : $type:ty ;)*) => {
        /// A species profile.
        #[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
        #[serde(deny_unknown_fields)]
        pub struct Profile {
            /// The key it is stored by.
            pub key: SpeciesKey,
            /// Scientific name.
            pub scientific: String,
            /// The three letters a tray code begins with.
            pub code: String,
            /// What it is for.
            pub role: Role,
            /// What growers look for it under; none for a nursery's own species.
            #[serde(default)]
            pub group: Option<Group>,
            /// Common names.
            pub names: Names,
            /// Other scientific names.
            #[serde(default)]
            pub synonyms: Vec<String>,
            /// Words for it that mean another plant first, here or elsewhere: asked about, never chosen.
            #[serde(default)]
            pub shared_names: Vec<String>,
            /// Varieties and clones by which people write it, behind or before its name.
            #[serde(default)]
            pub varieties: Vec<String>,
            /// Plants and words it is never offered for.
            #[serde(default)]
            pub never_confuse_with: Vec<String>,
            /// Texts of this profile in Spanish, by their English.
            #[serde(default)]
            pub in_spanish: BTreeMap<String, String>,
            /// Where sources disagree or the figures are thin.
            #[serde(default)]
            pub notes: Vec<String>,
            /// What can hurt people or plants.
            #[serde(default)]
            pub cautions: Vec<String>,
            $($(#[$note])* #[serde(default)] pub $field: Option<Figure<$type>>,)*
        }

        /// A figure's name, and the other names it is read by.
        pub const FIGURES: &[(&str, &[&str])] = &[$((stringify!($field), &[$($alias),*])),*];

        impl Profile {
            /// A profile with names only.
            pub fn named(key: SpeciesKey, scientific: &str, code: &str, role: Role, names: Names) -> Profile {
                Profile {
                    key, scientific: scientific.to_string(), code: code.to_string(), role, group: None, names,
                    synonyms: Vec::new(), shared_names: Vec::new(), varieties: Vec::new(),
                    never_confuse_with: Vec::new(), in_spanish: BTreeMap::new(),
                    notes: Vec::new(), cautions: Vec::new(), $($field: None,)*
                }
            }

            /// Sets one figure by its name from a JSON value (a bare value, or `{"value", "source", "flag"}`);
            /// a bare value gets `source` and the flag `own`. The error says what is wrong.
            pub fn set_figure(&mut self, name: &str, value: &serde_json::Value, source: &str) -> Result<(), super::ProfileFault> {
                match name {
                    $(stringify!($field) $(| $alias)* => {
                        self.$field = super::overrides::read_figure(name, value, source)?;
                        Ok(())
                    })*
                    other => Err(super::ProfileFault::UnknownFigure { written: other.to_string() }),
                }
            }

            /// Every figure as (name, value as JSON, source, flag); unknown ones are left out.
            pub fn figures(&self) -> Vec<(&'static str, serde_json::Value, &str, super::figure::Flag)> {
                let mut all = Vec::new();
                $(if let Some(figure) = &self.$field {
                    all.push((stringify!($field), serde_json::json!(figure.value), figure.source.as_str(), figure.flag));
                })*
                all
            }
        }
    };
}

profile! {
    /// How its seed keeps.
    storage | "storage_class": Storage;
    /// Days of life at room temperature, from the day of collection.
    storage_ambient_days | "storage_ambient_d": f64;
    /// Days of life in the fruit or pod.
    storage_in_pod_days: f64;
    /// Days of life with the mucilage on.
    storage_mucilage_on_days: f64;
    /// Days of life washed and kept moist.
    storage_washed_moist_days: f64;
    /// Days of life dried and sealed, at room temperature.
    storage_dry_sealed_days: f64;
    /// Days of life in a cold store of 4 to 6 degrees: dried and sealed, but for seed that dies when dried.
    storage_cold_days: f64;
    /// Cold that kills its seed: below so many degrees C.
    seed_dies_below_c: f64;
    /// Fewest seeds (or fruits sown as seed) in a kilogram.
    seeds_per_kg_least | "seeds_per_kg_min": f64;
    /// Most seeds in a kilogram.
    seeds_per_kg_most | "seeds_per_kg_max": f64;
    /// Germination of fresh seed, percent.
    germination_fresh_pct | "germ_fresh_pct" | "germ_or_strike_pct": f64;
    /// Whether lots are said to germinate very differently: test first.
    germination_varies: bool;
    /// The most seedlings one seed or fruit may give.
    seedlings_per_seed_most: f64;
    /// Whether the plants that go out are usually grafted or budded; a seedling of it is the stock.
    usually_grafted: bool;
    /// Whether it lives when it goes out with bare roots or as a stump.
    bare_roots: bool;
    /// Days that its stumps and stakes keep, moist and in the shade.
    stump_keep_days: f64;
    /// Where it is seen to be alive while it lies without soil, where that is not its bark.
    looks_alive: LooksAlive;
    /// Day of the first emergence after sowing.
    emerge_first_days | "emerge_first_d": f64;
    /// Day by which half of what will come is up.
    emerge_half_days | "emerge_half_d": f64;
    /// Last day on which emergence is worth waiting for.
    emerge_last_days | "emerge_last_d": f64;
    /// What is done to the seed before sowing.
    pretreatment: String;
    /// Where it is sown.
    sow_place: String;
    /// The container the days below hold for, ml.
    container_ml: f64;
    /// Depth of that container, cm.
    container_depth_cm: f64;
    /// Fewest days from sowing to planting out.
    plantable_least_days | "plantable_min_d": f64;
    /// Usual days from sowing to planting out.
    plantable_usual_days | "plantable_typ_d": f64;
    /// Last day before that container is normally root-bound.
    plantable_most_days | "plantable_max_d": f64;
    /// Least height for planting out, cm.
    height_least_cm | "height_min_cm": f64;
    /// Most height for planting out, cm.
    height_most_cm | "height_max_cm": f64;
    /// Floor of the root-collar diameter, mm.
    collar_floor_mm | "rcd_min_mm": f64;
    /// Kind of stem.
    stem: Stem;
    /// Fewest leaves or leaf pairs for planting out (unit in `leaves_note`).
    leaves_least | "min_leaves_count": f64;
    /// Whether `leaves_least` counts pairs.
    leaves_in_pairs: bool;
    /// What the leaves must look like.
    leaves_note | "min_leaves": String;
    /// Nursery shade by phase, in words.
    nursery_shade | "nursery_shade_pct_by_phase": String;
    /// Hardening template.
    hardening_template: Template;
    /// Days of that template, from its first step to planting out.
    hardening_days: f64;
    /// Steps of that template.
    hardening_steps | "hardening": Vec<HardeningStep>;
    /// Least shade at planting out, percent.
    outplant_shade_least_pct | "outplant_shade_min_pct": f64;
    /// Most shade at planting out, percent.
    outplant_shade_most_pct | "outplant_shade_max_pct": f64;
    /// Spacing in the field, in words.
    spacing | "spacing_m": String;
    /// Usual distance between rows, m.
    row_m: f64;
    /// Usual distance in the row, m.
    in_row_m: f64;
    /// Water need, in words.
    water_need: String;
    /// FAO-56 depletion fraction p.
    depletion_fraction: f64;
    /// Planting material of a nurse plant, in words.
    planting_material: String;
    /// How planting material keeps, in words.
    storage_note: String;
    /// Height and crown radius by age.
    growth_points | "growth_points_month_h_m_r_m": Vec<GrowthPoint>;
    /// How it grows, in words, where points are not known.
    growth_note: String;
    /// Extinction coefficient k of the crown (Beer's law).
    crown_k: f64;
    /// Leaf area index, in words.
    leaf_area_index | "lai_typical": String;
    /// Light that passes a closed stand, least percent.
    light_transmitted_least_pct: f64;
    /// Light that passes a closed stand, most percent.
    light_transmitted_most_pct: f64;
    /// Leaves it keeps through the dry months, percent, where it is known to shed.
    dry_months_leaves_pct: f64;
    /// Months from planting to useful shade.
    useful_shade_months | "months_to_useful_shade": f64;
    /// Months the stem lives, least.
    stem_life_least_months: f64;
    /// Months the stem lives, most.
    stem_life_most_months | "lifespan_months": f64;
    /// Month of the first fruit.
    fruiting_first_month | "fruiting_month_first": f64;
    /// Whether the stem dies after fruiting once.
    dies_after_fruiting | "monocarpic": bool;
    /// When it is replaced, in words.
    replacement | "replacement_interval": String;
    /// Yield of a plant, kg, least.
    yield_least_kg: f64;
    /// Yield of a plant, kg, most.
    yield_most_kg | "yield_per_plant_kg": f64;
    /// Plants per hectare, in words.
    density | "density_per_ha": String;
    /// When it is chopped, in words.
    chop | "chop_interval_months": String;
    /// Dry matter, t/ha a year, in words.
    biomass | "biomass_t_dm_ha_y": String;
    /// What it does to the soil, in words.
    soil_effect: String;
    /// Shade it stands, in words.
    shade_tolerance: String;
    /// What it can do to people, animals or the land; an empty list where nothing is known to harm.
    danger: Vec<Danger>;
    /// More of that, in words.
    danger_note: String;
}

impl Profile {
    /// The dangers known of it; none where nobody wrote whether it harms, and an empty list where it is said not to.
    pub fn dangers(&self) -> Option<&[Danger]> {
        self.danger.as_ref().map(|figure| figure.value.as_slice())
    }

    /// What it is raised from where that is no seed: cuttings, suckers, rhizomes, grafts.
    pub(crate) fn raised_without_seed(&self) -> Option<&str> {
        let material = self.planting_material.as_ref()?.value.as_str();
        (!material.contains("seed") || material.contains("no seed")).then_some(material)
    }

    /// Whether it is set as a stake, rhizome, vine or slip and never as a plant with roots of its own, as a graft or an air layer is.
    pub(crate) fn is_set_without_roots(&self) -> bool {
        let with_roots = |material: &str| ["graft", "air layer"].iter().any(|word| material.starts_with(word));
        self.raised_without_seed().is_some_and(|material| !with_roots(material))
    }

    /// Whether it is set where it stays and never stands in a nursery: a built-in nurse plant without days of one.
    pub(crate) fn is_set_in_place(&self) -> bool {
        self.role == Role::Nurse && self.group.is_some() && self.plantable_least_days.is_none()
    }
}
