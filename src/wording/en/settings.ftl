### The settings file, and where things are kept.

# (file, line, what)
settings_wrong_line = { $file }, line { $line }: { $what }. The line was left out
# (file, what)
settings_wrong_file = { $file }: { $what }. It was left out
settings_no_file = this is no file
settings_too_long = this is too long for settings
settings_no_text = this is no text (not UTF-8)
settings_no_setting = this is not read as name = value; text stands in quotation marks: who = "Mara"
settings_unknown = there is no setting '{ $name }'
settings_takes_text = { $name } takes text in quotation marks
settings_takes_yes_or_no = { $name } takes true or false
# (name, first)
settings_twice = { $name } stands on line { $first } already
# (name, values)
settings_takes_one_of = { $name } takes one of: { $values }
settings_takes_letters = { $name } takes letters between braces, each with the one it is moved to: c = "v"
# (name, written)
settings_no_letter = { $name } moves letters a to z of the screen; '{ $written }' is none
# (name, letter)
settings_letter_twice = { $name } puts two on the letter { $letter }: each letter does one thing
settings_hide_nursery = so it is not known which nursery is meant: mend it, or name the nursery with --nursery
paths_settings = settings
paths_notes = notes of this copy
paths_data = nurseries
paths_nursery = this nursery
paths_sample = sample
paths_not_there = not there
paths_set = What is set, and where:
paths_usual = not set
paths_from_option = said with the command
paths_from_environment = environment
paths_from_settings = settings
paths_from_system = system
man_written = the pages are in { $folder }
