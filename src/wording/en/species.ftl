## figure_: by word

figure_storage = how seed keeps
figure_storage_ambient_days = seed life, at room temperature
figure_storage_in_pod_days = seed life, in the fruit
figure_storage_mucilage_on_days = seed life, mucilage on
figure_storage_washed_moist_days = seed life, washed and moist
figure_storage_dry_sealed_days = seed life, dry and sealed
figure_storage_cold_days = seed life in a cold store
figure_seed_dies_below_c = seed is killed by cold below
figure_seeds_per_kg_least = seeds in a kilogram, least
figure_seeds_per_kg_most = seeds in a kilogram, most
figure_germination_fresh_pct = germination of fresh seed
figure_germination_varies = lots germinate very differently
figure_seedlings_per_seed_most = seedlings of one seed, most
figure_usually_grafted = usually grafted
figure_bare_roots = lives from bare roots
figure_stump_keep_days = stumps, stakes, slips and suckers keep
figure_looks_alive = seen to be alive without soil by
figure_emerge_first_days = first ones up
figure_emerge_half_days = half of them up
figure_emerge_last_days = last ones up
figure_pretreatment = before sowing
figure_sow_place = where it is sown
figure_container_ml = container
figure_container_depth_cm = container depth
figure_plantable_least_days = sowing to planting out, least
figure_plantable_usual_days = sowing to planting out, usual
figure_plantable_most_days = sowing to planting out, most
figure_height_least_cm = height to go out, least
figure_height_most_cm = height to go out, most
figure_collar_floor_mm = root collar, least
figure_stem = stem
figure_leaves_least = leaves, least
figure_leaves_in_pairs = leaves counted in pairs
figure_leaves_note = leaves, how they look
figure_nursery_shade = shade in the nursery
figure_hardening_template = hardening ends at
figure_hardening_days = hardening, length
figure_hardening_steps = hardening, steps
figure_outplant_shade_least_pct = shade in the bed, least
figure_outplant_shade_most_pct = shade in the bed, most
figure_spacing = spacing
figure_row_m = between rows
figure_in_row_m = in the row
figure_water_need = water
figure_depletion_fraction = water it can draw, share
figure_planting_material = planting material
figure_storage_note = how it keeps
figure_growth_points = height and crown by age
figure_crown_k = light stopped by leaves, k
figure_leaf_area_index = leaf area
figure_light_transmitted_least_pct = light it lets through, least
figure_light_transmitted_most_pct = light it lets through, most
figure_dry_months_leaves_pct = leaves kept in dry months
figure_useful_shade_months = useful shade from
figure_stem_life_least_months = life of a stem, least
figure_stem_life_most_months = life of a stem, most
figure_fruiting_first_month = first fruit, month
figure_dies_after_fruiting = dies after fruiting
figure_replacement = when it is replaced
figure_yield_least_kg = yield of a plant, least
figure_yield_most_kg = yield of a plant, most
figure_density = plants on a hectare
figure_chop = when it is chopped
figure_biomass = mulch it gives
figure_soil_effect = what it does to the soil
figure_shade_tolerance = shade it stands
figure_growth_note = growth
figure_danger = dangers
figure_danger_note = more on its dangers

## Around them

species_heading = Species known here
species_key = key
species_code = code
species_name_heading = name
species_scientific = scientific name
species_hint = One of them with every figure and its source: outplant species { $key }
species_also = also called { $names }
species_notes = Notes
species_cautions = Cautions
species_no_figures = no figures are known of it: write your own with outplant write species_set
flag_seen = read in the source
flag_memory = from memory
flag_common = common practice
flag_ours = ours, not published
flag_own = this nursery's own
species_sources_heading = { $figures } figures of all species, and how far they can be trusted
# (figures, flag)
flag_counted = { $figures } { $flag }
# (source, flag)
figure_source = { $source } ({ $flag })
unit_days = { $value } d
unit_months = { $value } months
# (month, height, radius)
growth_point = month { $month }: { $height } m high, crown { $radius } m from the stem
# (days, what)
step_before = { $days } d before: { $what }
step_shade = { $shade } shade
step_bed_shade = the shade of its bed
step_water = { $days ->
    [one] water every day
   *[other] water every { $days } days
}
step_soak = soak it

## role_: by word

role_nursery = raised in the nursery and planted out
role_nurse = nurse plant

## word_: by word

word_recalcitrant = dies when dried
word_intermediate = stands some drying
word_orthodox = keeps dry and cold
word_heart_leaves = its base and heart leaves
word_corm = the flesh of its corm
word_spear_leaf = its spear leaf and its nut
word_rhizome = its flesh and eyes
word_vine = its nodes
word_clump = its base
word_woody = woody
word_soft = soft
word_full_sun = full sun
word_part_shade = the shade of its bed
word_shade = 50 to 60 % shade

## Asked first of a plant

in_short_seed = Seed type
in_short_emerge = Days to emerge
in_short_months = Months in the nursery
in_short_light = Light in the field
# (label, said)
in_short_line = { $label }: { $said }
in_short_unknown = unknown
in_short_no_seed = none: raised from { $material }
in_short_kept = unknown; it keeps { $note }
in_short_sown_in_place = none: sown where it stays
in_short_planted_in_place = none: planted where it stays
# (least, most)
in_short_span = { $least } to { $most }
in_short_from = { $least } and more
# (least, most)
in_short_light_share = { $least } to { $most } % of full sun
in_short_light_shade = unknown; shade it bears: { $shade }

## Found, and what it can do

species_dangers = Danger: { $list }.
species_no_danger = no danger known
species_danger_unknown = Danger: nobody has written whether it harms anybody
species_found = Species called "{ $word }"
species_with_word = Names with "{ $word }" in them
species_never = never to be taken for { $list }
species_list_hint = outplant species with a word finds those that have it in a name
# (written, plants)
asked_several_plants = several plants are called { $written }: write which one: { $plants }
# (written, plants)
asked_piece_of_name = no plant is called just { $written }; names with it: { $plants }. Write the whole name
# (written, plants)
asked_one_of_several = { $written } is the name of several plants, of which one is known here: { $plants }. Write that name if it is meant
# (name, scientific)
plant_named = { $name } ({ $scientific })
species_group_own = Your own

## group_: by word

group_fruit = Fruit and nut trees
group_timber = Timber trees
group_palm = Palms
group_crop = Cacao, coffee and other crops
group_spice = Spices and dyes
group_nurse_tree = Trees for shade, mulch and fences
group_cover = Nurse crops and covers

## danger_: by word

danger_raw_cyanide = gives cyanide when raw
danger_poisonous_seed = poisonous seed
danger_poisonous_unripe_fruit = poisonous unripe fruit
danger_poisonous_leaf = poisonous leaf
danger_poisonous_root = poisonous root
danger_poisonous_in_quantity = poisonous in quantity
danger_harms_weak_kidneys = dangerous to people with weak kidneys
danger_itches_raw = raw parts make hands and mouth itch
danger_irritating_sap = sap burns or irritates skin and eyes
danger_burns_in_sun = juice on the skin burns in the sun
danger_shell_oil = the oil of the shell burns and blisters the skin
danger_hurts_eyes = hurts the eyes
danger_spines = spines
danger_irritating_hairs = hairs that itch or sting
danger_irritating_dust = its dust irritates lungs and skin
danger_allergy = some people are allergic to it
danger_stains = stains skin and clothes
danger_falling_fruit = heavy fruit falls
danger_breaking_limbs = limbs break in wind
danger_choking_seed = small children choke on the seed
danger_ants = ants live on it
danger_toxic_to_dogs = poisons dogs
danger_toxic_to_livestock = poisons livestock
danger_toxic_to_fish = poisons fish
danger_invasive = spreads by itself: not where it is listed as invasive
