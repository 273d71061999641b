### The screen Journal.

journal_search = Con:
journal_day = Día
journal_what = Qué
journal_who = Quién
journal_recorded = Apuntado
journal_number = Número
journal_taken_back = Retirada
journal_by = por { $entry }; ya no cuenta
journal_counts = Cuenta. Con { $KEY_R } se retira, y antes se dice qué se retira.
journal_none = Nada de lo anotado tiene { $search }.
confirm_waiting_short = Buscando ...
