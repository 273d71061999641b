### What was typed wrongly.

usage_unknown_command = there is no command '{ $word }'
usage_unknown_option = there is no option '{ $option }' here
usage_unexpected = '{ $word }' is one word too many here; a name of several words stands in quotes, as "Upper 1"
usage_needs_value = { $option } needs a value behind it
# (value, option, values)
usage_one_of = { $option } cannot be '{ $value }'; it is one of: { $values }
# (value, option)
usage_not_a_day = { $option }: '{ $value }' is not a day; write it as 2026-03-14, 14/3, yesterday or +7
# (value, option)
usage_not_a_number = { $option }: '{ $value }' is not a number
# (value, option, point)
usage_decimal_comma = { $option }: '{ $value }' is not a number here: write { $point }
# (value, option)
usage_not_an_entry = { $option }: '{ $value }' is no number of an entry: they are like k3f9:12, and outplant log shows them
# (option, value)
usage_not_so_many = { $option } cannot be { $value }: a whole number from 1 up to some millions
# (option, most, value)
usage_long_name = { $option } takes no more letters than { $most }, and { $value } is longer
# (value, option)
usage_bad_name = { $option } cannot be '{ $value }': a name or code has letters, without blanks at its ends or invisible characters
usage_missing = still missing: { $arguments }
usage_twice = { $option } stands there twice; once is enough
# (option, other)
usage_not_together = { $option } and { $other } do not go together
usage_not_readable = what was typed holds characters that cannot be read (not UTF-8)
usage_other = this cannot be read as a command
usage_more = More: { $help }
