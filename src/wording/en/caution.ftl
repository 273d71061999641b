### What could hurt somebody: one line where work is proposed or written down, and what plants can do.
### docs/cautions.md holds every line with where it comes from.

caution_label = Care
label_care = care
label_plant = plant
caution_plant_label = Plant
# (label, line)
caution_line = { $label }: { $line }
# (plant, dangers)
caution_plant = { $plant } ({ $dangers })
caution_plant_unknown = nobody wrote whether it harms anybody
caution_said_first = Care is said in full at the first stop of each kind and of each plant that can harm.
caution_leads = Local rules, the label and licensed practice lead over what is said here.

## caution_: by word

caution_pits = Cover or fence every open pit: children, stock. Into a deep one never alone; its walls fall.
caution_blades = Machete and hoe sharp and sheathed, boots on; two arm's lengths apart; cut away from the leg.
caution_knives = Knife sharp, cut away from the hand; clean it between trays; wash every wound.
caution_clearing = First look for bees and wire. Fire only where allowed. Saw and brushcutter: trained, in full gear.
caution_fencing = Gloves and glasses for wire under tension; nobody stands in its line.
caution_felling = One cuts, all others two stem lengths away; nobody under it; no machete on a ladder.
caution_potting = Damp the soil; cover nose and eyes: mould, lime, dust of sacks. Wash your hands.
caution_lifting = Look under it first: snakes, scorpions. Knees bent, few bags at a time, two people for a wet tray.
caution_planting = Few bags at a time, knees bent. Cool hours, shade, water in small drinks; dizzy or headache: stop.
caution_watering = Ten litres weigh 10 kg: cans half full, one in each hand, knees bent. Cool hours, drink in small drinks.
caution_shade_cloth = Cloth from a firm ladder that somebody holds, not from crates or tanks. Trays: knees bent.
caution_spraying = The label leads: dose, gloves, mask, its time to stay out. Licence where it is asked; children far away.
caution_after_spraying = Only after the label's time: gloves and long sleeves, hands washed; children not yet.
caution_hygiene = Sick plants last of all, then wash hands and tools. What is thrown out: never on a nursery heap.
caution_sowing = Coloured seed is poison: gloves, never food. Hot water scalds. Acid is for trained people only.
caution_seed_test = Bleach never with ammonia or acid: the gas kills. Nitrate far from fire. Gibberellic acid: gloves, glasses.
caution_seed_store = Treated or mouldy seed is no food. No dust of sacks in nose or eyes. Locked away from children.
caution_climbing = From the ground with a pole where you can. Climb only trained, roped, not alone; look for bees first.
caution_in_the_field = Boots; look where you tread and reach. Water along, and somebody knows where you are.
