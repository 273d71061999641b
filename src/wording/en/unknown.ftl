unknown_exposure_step_pair = the step in light is not known: read the light at the tray and in the bed

## unknown_: by word

unknown_days_since_sowing = nobody wrote down when it was sown: measure a sample of { $USUAL_SAMPLE }, that tells as much
unknown_days_in_container = nobody wrote down since when it is in this bag: lift a plug and look at the roots
unknown_height = height is not measured: measure a sample, plant by plant
unknown_collar = root collars are not measured: measure a sample with a caliper
unknown_leaves = leaves are not counted: count them on a sample
unknown_plug = no plug was looked at: lift one
unknown_flush = nobody looked at the new leaves: see whether they are soft
unknown_hardening = nobody wrote down what light it stood in: read the light here
unknown_exposure_step = the light where it stands is not known: read it there
unknown_held = whether somebody holds it back is not known: ask, then write it
unknown_treated = the waiting time is not known: read the label, then write it
unknown_living = how many live is not known: count them
unknown_load = how many can be planted is not known: count, and measure a sample
unknown_good_until = its last day is not written down: look at the roots, then write it
unknown_light_now = the light is not known: read the light in this bed
unknown_light_coming = the light to come is not reckoned yet; the light of today decides
unknown_soil = the soil is not known: push a rod two days after a soaking
unknown_cleared = whether it is cleared is not known: look, then write it
unknown_holes = whether holes are dug is not known: look, then write it
unknown_weeded = whether it is weeded is not known: look at the rings, then write it
unknown_mulched = whether mulch lies there is not known: look, then write it
unknown_fenced = whether the fence stands is not known: walk it, then write it
unknown_water = the rain of these days is not known: read the gauge and write it, noughts too
unknown_season = the usual rains are not written down: write from when until when it rains
unknown_open_positions = how many positions are open is not known: count the living in this bed
