### Help of commands and options.

## help_: by word

help_outplant = Which trays are ready to go out to which prepared bed, and why
help_outplant_more = Without a command it opens the nursery on the whole screen; without a terminal it prints what is ready.
    Dates are written 2026-03-14, 14/3, yesterday or +7. Ends with 0 done, 1 refused, 2 usage, 3 the file, 5 busy, 6 damaged, 129, 130 or 143 stopped.
help_any_nursery = The nursery's file (else OUTPLANT_NURSERY, the settings, or the data folder)
help_any_on = Look at another day, past or to come
help_any_known = Use only what had been recorded by the end of this day
help_any_lang = en or es
help_any_json = Answer with one JSON object, for programs
help_any_format = For people, one JSON object, or one list of it as a table
help_any_list = Which list of the answer is the table, such as trays, beds or can_wait; else the one the command is for
help_value_format = FORM
help_value_list = LIST
help_any_plain = The round as numbered questions, for screen readers and plain terminals
help_any_yes = Yes to whatever would be asked
help_any_handbook = Forecast by the handbook alone, setting aside what this nursery learned (else the settings)
help_any_who = Who writes (else the settings, or the system's user)
help_any_color = When colour is used (else the settings, NO_COLOR, or whether it goes to a screen)
help_any_ascii = Answers in plain ASCII (else the settings, or what the terminal can show)
help_any_verbose = Also say, beside the answer, what is opened and how long it takes
help_any_help = Show help
help_any_version = Show the version
help_sample = A copy of the sample nursery, its days counted back from today
help_sample_into = Only make this file; refused where one is there already
help_begin = An empty nursery
help_begin_more = Example: outplant begin --name "Stone Terrace" --lat -1.2 --lon 36.1 --altitude 1650
help_begin_name = What people call it; it, latitude, longitude and altitude are asked for at a terminal where they are left out
help_begin_lat = Latitude in degrees, south negative
help_begin_lon = Longitude in degrees, west negative
help_begin_altitude = Altitude in m; without it it is unknown
help_begin_utc_offset = Hours ahead of UTC (else longitude / 15, rounded)
help_ready = Which trays are ready for which bed today, and what the others wait for
help_why = Why: what holds it back and what to do; with --all each question with its figures and sources
help_why_more = Examples: outplant why cof-021   outplant why "School 1"   outplant why cof-021 "School 1"   outplant why tray cof-021
help_why_tray = Why a tray is ready or not
help_why_tray_tray = The code on its label
help_why_bed = Why a bed is open or not
help_why_bed_bed = Its name
help_why_bed_species = Only for this species
help_why_bed_positions = With --json: its positions too, one by one, with their light now and month by month
help_why_bed_by = The day on which its light is to suit: which nurse plants to set for it, and by when
help_why_place = What stands on a bench or frame, its light, and what keeps hands out of it
help_why_place_place = Its name
help_why_pair = Why a tray fits a bed or not
help_why_pair_tray = The code on the tray's label
help_why_pair_bed = The bed's name
help_why_pair_how = Also say what to do about each thing that holds it back
help_why_tray_all = Each question with its figures, sources and entries, what is met too
help_why_bed_all = Each question with its figures, sources and entries, what is met too
help_why_pair_all = Each question with its figures, sources and entries, what is met too
help_write = Write down one thing that was seen or done
help_write_more = Examples:
    outplant write counted tray=cof-031 standing=41
    outplant write lost tray=cof-031 count=3 cause=rats happened=2026-03-12
    outplant write cof-031 lost 3, rats
    outplant write "planted 30 cof-031 in Upper 1"
    Without a kind, lists what can be written.
help_write_kind = What it is: counted, lost, sown, outplanted ...; or the first word of a line
help_write_fields = Its fields, key=value; lists as JSON; or the other words of a line
help_log = What was written, the newest first, with the number each entry is taken back by
help_log_more = Examples: outplant log   outplant log c1   outplant log yesterday   outplant log rats Amani
help_log_words = A name, a word, a day or a person; each of several must hold
help_log_most = At most so many (else 30)
help_value_words = WORD
help_value_n = N
help_value_names = NAME
help_ready_name = Only the tray, the bed, the place, the lot or the species of this name
help_undo = Take back the last thing this copy wrote, or the one named; the old entry stays readable
help_undo_entry = The number of the entry, as outplant log shows it: k3f9:12
help_undo_together = Also take back later entries that rest on it
help_undo_all = The whole command of the entry, however many came in with it
help_undo_only = The named entry alone
help_undo_dry_run = Only say what would be taken back
help_undo_why = Why it is taken back
help_import = Take a file, whole or nothing
help_import_more = A sheet of trays (--as trays) has the columns Tray, Species, How many; it may have Sown about or Age, Bag,
    Bench, Height, Shade, Form, Source, Notes. A sheet of beds (--as beds) has Bed, Length, Width, Species; it may have
    Field, Spacing, Standing, Planted about, Nurse plants, Nurses planted, Light. Names in English or Spanish, commas or
    semicolons, any usual encoding.
help_import_file = The file; - reads what is piped in
help_import_what = entries, one JSON object a line; trays or beds, a sheet with a row for each; weather, a sheet with a row a day
help_import_sheet = Which sheet of a workbook (.xlsx, .ods) is read; without it the first that holds anything
help_import_as_new = A name of the sheet that nobody knows is a new species: "NAME like SPECIES" takes its figures, NAME alone none
help_import_marked = Where a sheet of trays or beds is not taken: a new file with the sheet and a column of remarks
help_import_dry_run = Write nothing; of a sheet show how its columns, names and rows are understood, and the first answers
help_export = Give out every entry
help_export_what = entries, which import reads back, csv for a spreadsheet, or geojson for a map of the beds
help_export_excel = The csv as office programs open it: UTF-8 mark, semicolons, decimal commas in Spanish
help_export_to = Write this file instead of the screen
help_check = Prove the file: chain, books, replay; reads only
help_rescue = Bring every undamaged entry out of a damaged file; reads only
help_rescue_to = The new file, which import reads
help_rescue_no_backup = Where no backup has what is lost: entries behind a loss go on as another device
help_backup = Make a verified copy
help_backup_to = The new file
help_paths = Where things are kept, and what is set where
help_completions = A script by which a shell completes commands
help_completions_more = bash: outplant completions bash > ~/.local/share/bash-completion/completions/outplant   fish: outplant completions fish > ~/.config/fish/completions/outplant.fish   zsh: outplant completions zsh > FOLDER/_outplant, a folder of $fpath
help_completions_shell = The shell
help_man = The page for man; with --to a page for each command
help_man_more = To read it: outplant man | man -l -   For all: outplant man --to ~/.local/share/man/man1
help_man_to = Put them into this folder
help_value_when = WHEN
help_value_shell = SHELL
help_value_folder = FOLDER
help_schema = The JSON schema of an answer for programs
help_schema_answer = The answer
help_species = The species, and where each of their figures comes from
help_species_name = One species, by any of its names; or a new one with the figures of another: add NAME like SPECIES
help_species_sources = How many figures were read in their source, are from memory, common practice, ours or your own
help_ready_since = Only the verdicts that changed since the end of this day, and what changed them
help_ready_tray = Only this tray, with the beds that plan its species
help_ready_bed = Only this bed, with the trays of the species it plans
help_ready_fits = Only trays and beds that fit one another
help_ready_all = Everything: every tray and bed, not the plan of the day and the first of the rest
help_walk = Today's round in walking order: what to count, move, shade, water, send out
help_write_batch = A sheet of short lines, whole or nothing; - reads what is piped in
help_write_happened = The day it was seen or done: 2026-03-14, yesterday, 12/11, 24 nov; today without it
help_write_dry_run = Write nothing; of a batch show the entry each line becomes
help_value_answer = ANSWER
help_value_file = FILE
help_value_date = DATE
help_value_lang = LANG
help_value_name = NAME
help_value_deg = DEG
help_value_m = M
help_value_h = H
help_value_text = TEXT
help_value_kind = KIND
help_value_fields = KEY=VALUE
help_value_tray = TRAY
help_value_bed = BED
help_value_species = SPECIES
help_value_entry = ENTRY
help_value_what = WHAT
help_value_to = FILE

## Around them

short_forms_heading = Lines for --batch, or one of them behind write: short, or in your own words, as the last ones. What may mean several things is asked about, or refused with the lines it may mean. A day alone holds for the lines after it, a day before a line for that line; commas may stand between the parts:
help_usage = Usage:
help_commands = Commands
help_arguments = Arguments
help_options = Options
help_general = Options of every command
help_some_options = [OPTIONS]
help_value_command = COMMAND
# (help, values)
help_choice = { $help } [one of: { $values }]
# (help, values, usual)
help_choice_usual = { $help } [one of: { $values }; without it: { $usual }]
