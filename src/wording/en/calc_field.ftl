### Formulas of sun, water and shade: sentences, sources and help.

# (high, from_north)
calc_sun_above = The sun stands { $high }° above the horizon, { $from_north }° from north over east.
# (high, from_north)
calc_sun_below = The sun stands { $high }° below the horizon, { $from_north }° from north over east.
# (rises, sets, hours)
calc_sun_day = It rises at { $rises } and sets at { $sets } (UTC): a day of { $hours } h.
calc_sun_no_end = It neither rises nor sets: { $hours } h of sun.
calc_sun_formula = Solar Position Algorithm; elevation of the sun's centre without the bending of light; sunrise and sunset where its upper edge is seen, 50/60° below the horizon
calc_sun_source = Reda & Andreas 2004, Solar Energy 76:577 (checked against another library)
# (radiation, hours)
calc_radiation_some = Above the air the sun sends { $radiation } MJ/m² on level ground that day, in { $hours } h of daylight.
calc_radiation_slope = On that slope: { $radiation } MJ/m².
calc_radiation_formula = Ra = 1440/π 0.0820 dr (ws sin φ sin δ + cos φ cos δ sin ws); dr = 1 + 0.033 cos(2π J/365); δ = 0.409 sin(2π J/365 - 1.39); ws = arccos(-tan φ tan δ); N = 24/π ws; on a slope the sum over the minutes of the sun before it
calc_radiation_source = Allen et al. 1998, FAO Irrigation and Drainage Paper 56, equations 21 to 25 and 34
# (et0, by_warmth)
calc_et0_both = Well-watered grass gives off { $et0 } mm that day (Penman-Monteith); by temperatures alone { $by_warmth } mm (Hargreaves).
calc_et0_hargreaves = Well-watered grass gives off about { $by_warmth } mm that day, by temperatures alone (Hargreaves); wind, humidity or sunlight would tell more.
calc_et0_formula = ET0 = (0.408 Δ (Rn - G) + γ 900/(T + 273) u2 (es - ea)) / (Δ + γ (1 + 0.34 u2)); Hargreaves 0.0023 (T + 17.8) sqrt(Tmax - Tmin) 0.408 Ra. Not measured: vapour from the coldest, wind 2 m/s, sunlight 0.16 sqrt(Tmax - Tmin) Ra
calc_et0_source = Allen et al. 1998, FAO Irrigation and Drainage Paper 56, equations 6 to 50 and 52
# (day, wrong)
calc_water_day = day { $day }: { $wrong }
# (days, left, held)
calc_water_end = After { $days } days { $left } mm of { $held } mm are left to the roots.
calc_water_no_stress = No day of thirst.
# (days, first)
calc_water_stress = Days of thirst: { $days }, the first is day { $first }.
calc_water_formula = Dr = Dr before - rain - watering + Ks Kc ET0 + DP, from 0 to TAW; Ks = 1 up to p TAW, then (TAW - Dr) / (TAW - p TAW); DP is what is over; TAW = 1000 (FC - WP) root depth; p adjusted = p + 0.04 (5 - ETc), 0.1 to 0.8
calc_water_source = Allen et al. 1998, FAO Irrigation and Drainage Paper 56, chapter 8, equations 82 to 88 (no runoff, no water from below)
# (list, row, wrong)
calc_in_row = { $list } { $row }: { $wrong }
calc_light_no_sun = On { $day } the sun does not rise there: what light there is comes from the sky.
# (mean, darkest, brightest)
calc_light_some = On that day { $mean } of the open light on average, from { $darkest } to { $brightest }.
# (read, expected, factor)
calc_light_leaves = { $read } was read where the crowns as drawn let through { $expected }: the leaves are { $factor } times as dense.
# (read, expected, gaps)
calc_light_no_leaves = { $read } was read where the crowns as drawn let through { $expected } and { $gaps } comes past them: no leaves explain that. The crowns are drawn too small or too large, or in the wrong place.
# (least, most)
calc_light_held = More than { $most } or less than { $least } times is not believed of leaves: look at the crowns.
# (low, high, line, points)
calc_light_cuts = In the band of { $low } to { $high }, by how many plants are cut: { $line }; of { $points } points.
calc_light_of_what = say under what: a bed (--rows, --plants, --row, --plant, --top, --foot, --width), or as JSON crowns and points
calc_light_formula = light = diffuse share x mean over the sky + rest x mean over the sun of the day of exp(-sum k x leaf density x metres of crown along the ray); crowns are ellipsoids; sky evenly bright, sun weighted by the sine of its height
calc_light_source = Monsi & Saeki 1953 (Beer's law in leaves); geometry of ellipsoids; sun as calc sun. No stems, no light back from the ground
calc_rains_climate_service = 20 mm in 3 days, no 7 dry in 21
calc_rains_sivakumar = 20 mm in 3 days, no more than 7 dry in 30
calc_rains_stern = 20 mm in 2 days, no 10 dry in 30
calc_rains_blocks = 25 mm in ten days, 20 in each of the next two
# (rule, date)
calc_rains_began = { $rule }: the rains began on { $date }.
# (rule, date)
calc_rains_not_yet = { $rule }: rain enough by { $date }; the record ends before it can be told whether a dry run followed.
calc_rains_none = { $rule }: on no day of this record.
calc_rains_formula = the first days with so much rain that are not followed by so long a dry run; dry is up to 1 mm, 0.85 mm in 2 days' rule. History: what comes after has to be known
calc_rains_source = rule of a climate service (International Research Institute, code seen); Sivakumar 1988; Stern, Dennett & Garbutt 1981; AGRHYMET / FAO (all three from memory and open scripts)
calc_leaves_some = The plant bears { $area } m² of leaf.
calc_leaves_too_small = So small a plant is below the line of the formula: measure a leaf, length x width x 0.68.
# (index, light)
calc_leaves_light = Leaf area index { $index }; { $light } of the light passes an even stand of such plants.
calc_leaves_formula = middle leaf m² = -0.404 + 0.381 height + 0.411 girth (m); plant = middle leaf x living leaves; light = exp(-k LAI); density = leaf / (π/6 width² depth of the crown)
calc_leaves_source = Nyombi et al. 2009, highland bananas (abstract seen; k 0.7 there); Monsi & Saeki 1953

## help_: by word

help_calc_sun = Where the sun stands, and when it rises and sets
help_calc_sun_lat = Latitude in degrees, south below 0
help_calc_sun_lon = Longitude in degrees, west below 0
help_calc_sun_elev = Height above the sea in m (0)
help_calc_sun_utc = The moment: 2026-03-15T10:00:00-06:00
help_calc_radiation = What the sun sends in a day above the air, and hours of daylight
help_calc_radiation_lat = Latitude in degrees, south below 0
help_calc_radiation_doy = Day of the year, 1 to 366
help_calc_radiation_slope = How steep the ground is, in degrees
help_calc_radiation_facing = Where it falls to, in degrees from north over east
help_calc_et0 = Water that well-watered grass gives off in a day
help_calc_et0_lat = Latitude in degrees, south below 0
help_calc_et0_elev = Height above the sea in m
help_calc_et0_doy = Day of the year, 1 to 366
help_calc_et0_tmax = Warmest of the day, °C
help_calc_et0_tmin = Coldest of the day, °C
help_calc_et0_rhmax = Highest relative humidity, %
help_calc_et0_rhmin = Lowest relative humidity, %
help_calc_et0_ea = Vapour pressure in kPa, in place of humidity
help_calc_et0_u2 = Wind at 2 m, in m/s
help_calc_et0_wind = Wind at another height, in m/s
help_calc_et0_wind_height = That height above grass, in m
help_calc_et0_rs = Sunlight in MJ/m² a day
help_calc_et0_sunshine = Hours of sunshine, in place of sunlight
help_calc_water = Water in reach of roots, day by day
help_calc_water_taw = Water the root zone holds between field capacity and wilting, in mm
help_calc_water_fc = Field capacity as a share of the soil: 0.28; with --wp and --zr in place of --taw
help_calc_water_wp = Wilting point as a share of the soil: 0.14
help_calc_water_zr = Depth of the roots, in m
help_calc_water_p = Share of that water that is easily taken: 0.3
help_calc_water_p_adjusted = That share falls on days of high demand
help_calc_water_ks_from = Thirst of a day by what is missing at previous_end (usual) or at start_of_day, today's rain in
help_calc_water_dr0 = Missing to field capacity at the beginning, in mm
help_calc_water_rain = Rain of each day in mm: 0,0,12
help_calc_water_irrigation = Watering of each day in mm; one number for all days
help_calc_water_et0 = Demand of grass on each day in mm; one number for all days
help_calc_water_kc = Crop coefficient of each day; one number for all days
help_calc_light = Light between and under crowns
help_calc_light_more = A regular bed is typed; crowns and points one by one are read as JSON: crowns (each with x, y, zc, rh, hh and lad), points (each x, y, z), with reading or band and cuts where wanted.
help_calc_light_lat = Latitude in degrees, south below 0
help_calc_light_lon = Longitude in degrees, west below 0
help_calc_light_elev = Height above the sea in m (0)
help_calc_light_date = The day: 2026-03-15
help_calc_light_months = So many months in a row from that day (1)
help_calc_light_diffuse = Share of the light that comes from the whole sky, in %
help_calc_light_rows = Rows of nurse plants
help_calc_light_plants = Plants in each row
help_calc_light_row = From row to row, in m
help_calc_light_plant = From plant to plant, in m
help_calc_light_top = Top of the crowns above the ground, in m
help_calc_light_foot = Foot of the crowns above the ground, in m
help_calc_light_width = Width of the crowns, in m
help_calc_light_lad = Leaf density, m² of leaf in m³ of crown
help_calc_light_k = Extinction of the leaves: banana 0.7, pigeon pea 0.55
help_calc_light_heading = Where the rows run to, in degrees from north over east (90)
help_calc_light_slope = How steep the ground is, in degrees
help_calc_light_facing = Where it falls to, in degrees from north over east
help_calc_rains = When the rains began, by four rules
help_calc_rains_first = The first day of the record: 2026-05-01
help_calc_rains_rain = Rain of each day in mm: 0,0,12; no day may be missing
help_calc_leaves = Leaves of a banana plant, and the light under a stand
help_calc_leaves_height = Height of the stem, in m
help_calc_leaves_girth = Around the stem at its foot, in m
help_calc_leaves_leaves = Living leaves
help_calc_leaves_ground = Ground of one plant in m²: 9 at 3 x 3 m
help_calc_leaves_k = Extinction of the leaves: banana 0.7
help_calc_leaves_width = Width of the crown in m, for its leaf density
help_calc_leaves_depth = Depth of the crown from top to foot, in m
