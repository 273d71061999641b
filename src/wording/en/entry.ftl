### Any entry in one sentence.

about_tray = tray { $tray }
about_lot = lot { $lot }
about_bed = bed { $bed }
about_place = place { $place }
about_nothing = nothing named
entry_part_rows = rows { $rows }
part_spots = at { $spots }
part_until = until { $day }
part_heeled_in = heeled in, cool and moist
part_not_heeled_in = not heeled in
part_spreads = goes along with plants
part_spreads_not = does not go along with plants
part_plants_seen = { $plants ->
    [one] { $plants } plant looked at
   *[other] { $plants } plants looked at
}
part_roots_seen = roots looked at
part_roots_unseen = roots not looked at
part_stands_since = in this light since { $day }
part_at_place = at { $place }
part_container = in { $container }
part_cells = { $cells ->
    [one] { $cells } cell
   *[other] { $cells } cells
}
part_sign = sign { $sign }
# (name, latitude, longitude, altitude)
entry_nursery_set = nursery { $name }: { $latitude }°, { $longitude }°, { $altitude }
altitude_said = { $metres } m
altitude_unknown = altitude unknown
part_clock_offset = UTC{ $hours }
part_plants_a_day = { $plants ->
    [one] { $plants } plant a day
   *[other] { $plants } plants a day
}
part_planting_days = { $days ->
    [one] { $days } planting day a week
   *[other] { $days } planting days a week
}
part_walk_minutes = a walk of { $minutes } min
part_water_a_day = { $litres } l of water a day
entry_season_set = rains { $rains }
# (from, until)
season_from_until = { $from } to { $until }
season_no_rains = in no season
part_rain_normals = with monthly rain
part_heat_normals = with monthly temperatures
# (species, figures)
entry_species_set = { $species }: own figures ({ $figures })
# (place, order, shade)
entry_place_set = place { $place }: number { $order } on the walk, { $shade } shade
part_holds_trays = { $trays ->
    [one] room for { $trays } tray
   *[other] room for { $trays } trays
}
# (container, volume)
entry_container_set = container { $container }: { $volume } ml
part_depth = { $cm } cm deep
entry_field_set = field { $field } described
part_slope = { $percent } slope
part_texture = soil { $texture }
# (bed, field, length, width)
entry_bed_set = bed { $bed } in { $field }: { $length } × { $width } m
part_bearing = rows towards { $degrees }°
# (percent, degrees)
part_ground_falls = falling { $percent } toward { $degrees }°
# (latitude, longitude)
part_corner = corner at { $latitude }, { $longitude }
part_edges = first rows { $edges }
part_plan_share = { $percent } of its spots
part_keeps_spot = keeps its spots
part_row_offset = rows moved by { $metres } m
part_plan = for { $plan }
# (species, row, in_row, positions, per_ha)
plan_line = { $species } { $row } × { $in_row } m: { $positions ->
    [one] { $positions } position
   *[other] { $positions } positions
}, { $per_ha } to the hectare
# (bed, positions, spots, why)
entry_positions_blocked = { $positions ->
    [one] bed { $bed }: { $positions } position blocked ({ $spots }), { $why }
   *[other] bed { $bed }: { $positions } positions blocked ({ $spots }), { $why }
}
# (lot, species, source)
entry_lot_received = lot { $lot } received: { $species } from { $source }
part_fruits = { $fruits ->
    [one] { $fruits } fruit
   *[other] { $fruits } fruits
}
part_seeds_per_fruit = { $seeds } seeds a fruit
part_seeds_per_kg = { $seeds } seeds a kg
part_collected = collected { $day }
part_moisture = { $percent } moist
part_store = kept at { $celsius } °C
part_initial = { $percent } alive at first
# (lot, kept)
entry_lot_kept = lot { $lot } now { $kept }
# (lot, amount)
entry_lot_counted = lot { $lot } counted: { $amount }
# (lot, germinated, seeds, days)
entry_lot_tested = { $days ->
    [one] lot { $lot } tested: { $germinated } of { $seeds } seeds up in { $days } day
   *[other] lot { $lot } tested: { $germinated } of { $seeds } seeds up in { $days } days
}
# (tray, amount, lot, container)
entry_sown = tray { $tray } sown: { $amount } of lot { $lot } in { $container }
# (tray, amount, container)
entry_sown_lot_unknown = tray { $tray } sown: { $amount } of an unknown lot in { $container }
part_shares_tray = shares { $tray }
# (tray, seeds, lot)
entry_resown = { $seeds ->
    [one] tray { $tray } sown again: { $seeds } seed of lot { $lot }
   *[other] tray { $tray } sown again: { $seeds } seeds of lot { $lot }
}
# (tray, plants, species, from, form)
entry_plants_received = tray { $tray } received: { $plants } { $species }, { $from }, { $form }
part_age_days = { $days ->
    [one] { $days } day old
   *[other] { $days } days old
}
part_height = { $cm } cm high
part_source = from { $source }
part_shade_now = stood in { $shade } shade
# (tray, living)
entry_counted = tray { $tray } counted: { $living } living
part_dead = { $dead } dead
reason_not_said = reason not said
no_cause_said = cause not said
who_unknown = someone
part_about = about
part_cells_seen = { $cells ->
    [one] { $cells } cell looked at
   *[other] { $cells } cells looked at
}
part_cells_filled = { $cells } filled
# (tray, plants, cause)
entry_lost = tray { $tray }: { $plants } lost, { $cause }
# (tray, plants, why)
entry_culled = tray { $tray }: { $plants } culled, { $why }
# (plants, tray, to, how)
entry_moved_on = { $plants } from tray { $tray } into tray { $to }, { $how }
# (tray, place)
entry_carried = tray { $tray } carried to { $place }
# (tray, plants, height)
entry_measured = { $plants ->
    [one] tray { $tray } measured: { $plants } plant, { $height } cm
   *[other] tray { $tray } measured: { $plants } plants, mean { $height } cm
}
part_collar = collar { $mm } mm
part_leaf_pairs = { $pairs } leaves or leaf pairs
part_leaves = { $leaves } leaves
# (tray, roots)
entry_plug_checked = tray { $tray }: { $roots }
entry_roots_cut = tray { $tray }: circling roots cut
# (tray, plants)
entry_roots_cut_of = { $plants ->
    [one] tray { $tray }: circling roots of { $plants } plant cut
   *[other] tray { $tray }: circling roots of { $plants } plants cut
}
# (tray, plants)
entry_grafted = { $plants ->
    [one] tray { $tray }: { $plants } plant grafted or budded
   *[other] tray { $tray }: { $plants } plants grafted or budded
}
part_variety = variety { $variety }
part_rootstock = on { $stock }
entry_flushed = tray { $tray }: soft new leaves
# (about, shade)
entry_shade_set = { $about }: shade set to { $shade }
# (about, days)
entry_watering_set = { $about }: water every { $days } days
entry_watering_daily = { $about }: water every day
entry_hardening_begun = tray { $tray }: hardening begun
part_for_bed = for bed { $bed }
# (about, why)
entry_held = { $about } held back: { $why }
entry_released = { $about } free again
# (about, pest)
entry_pest_seen = { $about }: { $pest } seen
part_on_share = on { $share }
# (about, means)
entry_treated = { $about } treated with { $means }
part_plant_after = plant after { $days } days
part_safe_after = safe after { $days } days
part_safe_after_hours = safe after { $hours ->
    [one] { $hours } hour
   *[other] { $hours } hours
}
# (tray, living)
entry_stocktaken = tray { $tray } stocktaken: { $living } living
# (tray, plants)
entry_given_out_somewhere = tray { $tray }: { $plants } given out, not said to whom
# (tray, plants, to)
entry_given_out = tray { $tray }: { $plants } given out to { $to }
# (tray, was)
entry_relabelled = tray { $was } is called { $tray } now
entry_label_renewed = tray { $tray }: label written anew
entry_let_go = task { $task } let go
part_never = for good
# (bed, species, holes, seeds)
entry_sown_in_bed = { $holes ->
    [one] bed { $bed }: { $holes } hole of { $species } sown, { $seeds } seeds in it
   *[other] bed { $bed }: { $holes } holes of { $species } sown, { $seeds } seeds in each
}
part_of_lot = lot { $lot }
# (bed, plants, species)
entry_plants_found = bed { $bed }: { $plants } { $species } found standing
part_planted_about = planted about { $day }
# (bed, plants, species, row, in_row)
entry_nurse_planted = bed { $bed }: { $plants } { $species } planted, { $row } × { $in_row } m
part_offset = { $metres } m from the edges
# (bed, living, species)
entry_nurse_counted = bed { $bed }: { $living } { $species } living
part_bunches = { $bunches ->
    [one] { $bunches } bunch showing
   *[other] { $bunches } bunches showing
}
# (bed, species, height, radius)
entry_nurse_measured = bed { $bed }: { $species } { $height } m high, crown radius { $radius } m
# (bed, species, what)
entry_nurse_cut = bed { $bed }: { $species } cut ({ $what })
part_share = { $share } of it
part_yield = { $kg } kg
# (about, light)
entry_light_read = { $about }: { $light } read
# (light, pairs)
light_of_pairs = { $pairs ->
    [one] { $light } light ({ $pairs } pair)
   *[other] { $light } light ({ $pairs } pairs)
}
entry_soil_checked = bed { $bed }: ground checked
part_resistance = { $mpa } MPa
# (mm, kg)
part_rod = rod of { $mm } mm pushed with { $kg } kg
part_rod_only = rod of { $mm } mm
part_push_only = pushed with { $kg } kg
part_at_depth = at { $cm } cm
part_since_soaking = { $days } days after a soaking
part_beneath_hole = in the bottom of the hole
part_beside_hole = beside the hole
part_undug = where nobody dug
part_wet = wet through
part_not_wet = not wet through
entry_plants_watered = bed { $bed }: young plants watered at the foot
part_litres_each = { $litres } l each
# (bed, work)
entry_prepared = bed { $bed } { $work }
# (plants, tray, bed)
entry_outplanted = { $plants } from tray { $tray } planted out in bed { $bed }
# (row, in_row)
part_nurse_row = as nurse plants, { $row } × { $in_row } m
# (bed, plants, species, cause)
entry_plants_lost = bed { $bed }: { $plants } { $species } lost, { $cause }
# (bed, species, living, dead)
entry_survival = bed { $bed }: { $living } { $species } living, { $dead } dead
part_from_tray = from tray { $tray }
part_outplanted_on = planted out { $day }
entry_weather = weather
part_rain = { $mm } mm of rain
part_tmin = lowest { $tmin } °C
part_tmax = highest { $tmax } °C
# (tmin, tmax)
part_tmin_tmax = { $tmin } to { $tmax } °C
entry_settled = understood: { $what }
# (what, of)
entry_settled_of = understood: { $what } ({ $of })
entry_noted = note: { $text }
# (about, text)
entry_noted_about = note on { $about }: { $text }
# (entries, list, why)
entry_withdrawn = { $entries ->
    [one] taken back: { $entries } entry ({ $list }), { $why }
   *[other] taken back: { $entries } entries ({ $list }), { $why }
}
entry_foreign = { $kind }, written by a newer outplant

## from_: by word

from_opening = already standing
from_bought = bought
from_wildling = wildlings
from_cutting = cuttings
from_graft = grafts
from_gift = a gift

## form_: by word

form_plug = plugs
form_bag = bags
form_bare_root = bare-rooted
form_stump = stumps

## moved_: by word

moved_pricked_out = pricked out
moved_potted_on = potted on
moved_merged = put together

## cut_: by word

cut_leaves = leaves
cut_stem = stems
cut_harvest = harvest
cut_felled = felled

## sky_: by word

sky_overcast = overcast
sky_clear = clear sky

## alarm_: by word

alarm_restored = entries that were saved here are gone
alarm_clock = the clock was wrong

## kind_: by word

kind_nursery_set = The nursery
kind_season_set = The rainy seasons
kind_species_set = A species' own figures
kind_place_set = A place for trays
kind_container_set = A container or bag
kind_field_set = A field
kind_bed_set = A bed, laid out anew
kind_positions_blocked = Positions that cannot be planted
kind_lot_received = A seed lot comes in
kind_lot_kept = A lot kept another way
kind_lot_counted = Seed left in a lot
kind_lot_tested = A germination test
kind_sown = Sow a tray
kind_resown = Sow gaps again
kind_plants_received = Plants come in
kind_counted = Count a tray
kind_lost = Seedlings lost
kind_culled = Throw out
kind_moved_on = Prick out or pot on
kind_carried = Carry a tray elsewhere
kind_measured = Measure a sample
kind_plug_checked = Lift a plug
kind_roots_cut = Circling roots cut
kind_grafted = Graft or bud
kind_flushed = Soft new leaves
kind_shade_set = A step of the shade
kind_watering_set = A step of the water
kind_hardening_begun = Hardening begins
kind_held = Hold back
kind_released = Release
kind_pest_seen = A pest or sickness
kind_treated = A treatment
kind_stocktaken = Recount that settles the books
kind_given_out = Given or sold
kind_relabelled = A new label
kind_let_go = Let a task go
kind_sown_in_bed = Sow straight into a bed
kind_plants_found = Plants found in a bed
kind_nurse_planted = Plant nurse plants
kind_nurse_counted = Count nurse plants
kind_nurse_measured = Measure a nurse plant
kind_nurse_cut = Cut or harvest nurse plants
kind_light_read = Read the light
kind_soil_checked = Check the soil
kind_plants_watered = Water young plants
kind_prepared = Ground work done
kind_outplanted = Outplant
kind_plants_lost = Plants lost in a bed
kind_survival_counted = Count survivors
kind_weather = Rain and temperature
kind_noted = A note
kind_settled = An alarm of the file understood
kind_withdrawn = Take back entries
