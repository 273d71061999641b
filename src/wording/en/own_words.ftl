### Why a line in a person's own words is not written as it is, and the lines that may be meant.

why_not_done = the line says that it was not done ("{ $word }")
why_intent = it is still to be done ("{ $word }"): write it when it is done
why_coming = it is of a coming day ("{ $word }"): write it when it is done
why_unsure = it is not sure ("{ $word }"): write what is sure
# (low, high)
why_range = it is { $low } or { $high }: write one number
why_question = this is a question, nothing that was seen
why_question_of = this is a question about { $name }, nothing that was seen
why_no_number = how many? The number is missing
why_not_whole = plants are counted in whole ones, not { $value }
why_unknown_name = nobody knows '{ $name }' here
why_no_tray = which tray?
why_no_place = to which bench or place?
why_no_lot = of which lot of seed?
why_no_remedy = treated with what?
why_no_hours = how many hours?
why_no_unit = in which unit? Write it in { $units }
why_each_or_all = one number for { $trays }: how many of each?
why_bad_day = there is no day '{ $day }'
why_far_open = on which day? '{ $day }' leaves it open
why_several_days = it names several days ({ $days }): was it so on each of them?
# (holes, places)
why_some_holes = holes dug: { $holes }, places in the plan of the bed: { $places }: is all of it dug? If not, keep the line as a note
why_some_holes_of = holes dug: { $holes }, and the bed has no plan that says how many it needs: is all of it dug? If not, keep the line as a note
why_weeds_or_all = "{ $word }": were the weeds cut (weeded), or everything that grew there (cleared)?
why_over_half = more than half of the { $standing } that stand there: is it a loss or a count?
why_more_than_there = more than there is: { $there }
# (alive, all)
why_more_than_all = { $alive } alive of { $all }: more than all
# (seen, all)
why_whole_or_part = { $seen } of { $all }: are { $seen } all that stand, or what stands in the { $all } cells that were looked at?
why_in_use = { $name } is the code of another tray: choose one that is free
# (low, high)
why_crossed = the lowest, { $low }, is above the highest, { $high }
# (plant, bed)
why_none_there = by the books no { $plant } stands in { $bed }
why_both = { $name } is the name of two things: is it the tray, the bed or the lot of seed?
why_correction = "{ $word }" is about an earlier line: take that back (outplant undo, or { $KEY_U } on the screen), then write it right
why_of_a_part = "{ $word }" is said of some of the plants: how many live, or how many died?
why_not_thrown_away = "{ $word }": what is thrown away is not there any more; given away, sold or planted out is another line, such as c1 gave 10 to NAME
why_graft_took = "{ $word }": grafted is for the day of grafting; that a graft took is a note, such as note c1: 12 grafts took; what failed is a loss, such as 2 grafts failed in c1
why_away_from = "{ $word }": plants that come out of a bed are not planted in it: write a note, or what was lost there
why_ended = "{ $word }": it has come to an end, and only what begins is written so; keep it as a note, or write free for a tray that was held
why_came_back = "{ $word }": plants that come back are not given out; write a note, and count the tray
why_not_of_plants = "{ $word }" are no plants of the tray: how many plants were there? Otherwise keep it as a note
why_food_or_remedy = "{ $word }": is it food or lime (a note), or a remedy after which the label says how long to wait (treated)?
why_collar_alone = a collar stands beside the height of its plant, in mm behind the cm: c1 38/4.1 36/4
why_day_or_height = '{ $word }': is it a day, or a height in cm and a collar in mm?
why_number_now = the number that holds is { $number }: is it what stands there now?
why_pest_gone = "{ $word }": what is not seen any more is written with a share of 0%
why_no_millimetres = "{ $word }" does not say how much rain fell: write it in mm; if nobody measured it, keep it as a note
why_since_then = "{ $word }" is of several days: write the rain of each day, or keep it as a note
why_half_of_what = "{ $word }" does not say how much shade is left: write it in %
why_planted_or_on_the_way = are they planted, or only on their way there?
why_no_receiver = "{ $word }" is not who got them: who were they given to?
why_several = it can mean several things
why_no_reading = it was not understood; say it in fewer words: tray, number, what happened
why_no_reading_of = '{ $words }' was not understood
why_not_said = { $part } is missing
# (kind, parts)
why_lacks = { $kind }: still missing: { $parts }
why_which_tray = of which tray: { $trays }?
why_which_bed = in which bed: { $beds }?
why_which_plant = of which plant: { $plants }?
why_fence_down = "{ $word }": that fence does not stand, and fenced is only for what was closed; keep it as a note, and write fenced once it is closed again
why_dead_or_leafless = "{ $word }": did they die, or only lose their leaves and may shoot again?
why_lived_through_it = "{ $word }": these are alive. Are they all that stand, or some of them?
why_which_container = several are of this size: { $containers }?
# (written, known)
why_cause_nearly = the cause '{ $written }': is { $known } meant?
words_meant = { $why } Meant is perhaps:
words_ask_which = which of these { $lines } is meant? Its number, or Enter to write nothing:
words_to_fill = { $why } Write it whole, as here:

### Words that lines of ours are made of; the reader of short lines knows them all.

line_word_dead = dead
line_word_alive = alive
line_word_given = given
line_word_recount = recount
line_word_shade = shade
line_word_water = water
line_word_rain = rain
line_word_hardening = hardening
line_word_flush = flush
line_word_light = light
line_word_note = note
