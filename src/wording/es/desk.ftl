saved = { $entries ->
    [one] anotado: { $entries } anotación
   *[other] anotado: { $entries } anotaciones
}
saved_entry = anotado como { $entry }
saved_taken_back_by = todo se retira con: outplant undo { $entry } --all
saved_with_doubt = quedó anotado, pero ahora esto no puede ser: { $doubt }
tried_with_doubt = se podría anotar, pero entonces esto no puede ser: { $doubt }
dry_run = { $entries ->
    [one] se podría anotar { $entries } anotación; no se anotó nada
   *[other] se podrían anotar { $entries } anotaciones; no se anotó nada
}
taken = { $entries ->
    [one] entró { $entries } anotación
   *[other] entraron { $entries } anotaciones
}
already_here = { $entries ->
    [one] { $entries } anotación ya estaba aquí
   *[other] { $entries } anotaciones ya estaban aquí
}
import_read = { $lines } líneas leídas
import_written = { $lines } anotaciones escritas
import_looked_up = { $lines } anotaciones puestas en su lugar
import_judged = buscando lo que no puede ser: { $share } % listo
import_saving = guardando
import_stopped_at = se detuvo la importación después de la línea { $line }; no se tomó nada
import_cancelled = se detuvo la importación; no se tomó nada
undo_done = { $entries ->
    [one] se retiró { $entries } anotación
   *[other] se retiraron { $entries } anotaciones
}
undo_asks = { $entries ->
    [one] ¿retirar { $entries } anotación? (s/n)
   *[other] ¿retirar las { $entries } anotaciones? (s/n)
}
undo_would = { $entries ->
    [one] undo retiraría { $entries } anotación; no se escribió nada
   *[other] undo retiraría { $entries } anotaciones; no se escribió nada
}
undo_left = no se retiró nada
undo_came_together = { $entry } entró junto con otras: --only la retiraría sola
begun = el libro de { $name } queda abierto en { $file }
sample_made = el vivero de muestra está en { $file }
backup_made = { $entries ->
    [one] copiado y revisado: { $entries } anotación en { $file }
   *[other] copiado y revisado: { $entries } anotaciones en { $file }
}
exported_map = { $features ->
    [one] { $features } objeto en { $file }.
   *[other] { $features } objetos en { $file }.
}
exported = { $entries ->
    [one] { $entries } anotación en { $file }
   *[other] { $entries } anotaciones en { $file }
}
check_sound = { $entries ->
    [one] el archivo está sano: { $entries } anotación; cadena, libros y repaso coinciden
   *[other] el archivo está sano: { $entries } anotaciones; cadena, libros y repaso coinciden
}
check_doubts = { $doubts ->
    [one] { $doubts } duda por aclarar
   *[other] { $doubts } dudas por aclarar
}
clock_behind = el reloj dice { $today }, pero la última anotación, { $entry }, es del { $newest }. Si el reloj está bien ahora: outplant undo { $entry } y después outplant write settled what=clock
clock_behind_several = el reloj dice { $today }, pero { $entries ->
    [one] una anotación es de un día posterior
   *[other] { $entries } anotaciones son de días posteriores
}, la última del { $newest }. Si el reloj está bien ahora, retírelas: { $undo }; y después outplant write settled what=clock
clock_before_built = el reloj dice { $today }, pero este programa se construyó el { $built }
clock_long_after_built = el reloj dice { $today }, más de diez años después de que se construyó este programa, el { $built }
clock_behind_writing = el reloj dice { $today }, pero esta copia anotó a una hora de un día posterior. Si el reloj está bien ahora: outplant write settled what=clock
clock_ahead = el reloj dice { $today }, más de un año después de la última anotación, del { $newest }
clock_asks = ¿está bien el reloj? (s/n)
