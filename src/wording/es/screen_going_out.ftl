### The screen Going out.

fits_heading = Hoy caben
fits_hands = Hay lugar; las manos plantan { $number } al día, lo más urgente primero.
misses_heading = Hoy no, y la parcela más cercana
full_heading = Ya sin lugar: lo ocupa la lista de carga
fits_heading_on = Caben el { $day }
misses_heading_on = El { $day } no, y la parcela más cercana
no_plants = Ninguna bandeja tiene plantas vivas.
items_more = { $items } más abajo
load_heading = Lista de carga
load_empty = No hay nada en la lista de carga: elija una bandeja para una parcela, con { $KEY_O } se pone.
load_listed = en la lista: { $plants }
load_how_many = ¿Cuántas?
load_no_bed = Ninguna parcela tiene esta especie en su plan.
load_choose_tray = A la lista van bandejas: elija una para { $bed }; { $KEY_V } muestra las de hoy.
load_nothing_left = No queda nada que cargar de esta bandeja para esta parcela. Con espacio se pone un número igual.
load_full = no queda nada: la lista de carga ocupa los hoyos o las plantas
load_same_places = los mismos hoyos que { $trays }
load_same_plants = las mismas plantas que para { $beds }
load_no_more = { $why }. Con + otra vez se pone igual, con duda
load_said = En la lista: { $plants } de { $tray } para { $bed }
load_taken_off = Fuera de la lista: { $tray } para { $bed }
load_number = { $tray } → { $bed }: { $plants }
load_number_listed = { $tray } → { $bed }: { $plants }, en la lista
load_room = espacio
load_line = { $plants } { $species } de { $tray }
load_line_at = { $plants } { $species } de { $tray }, que está en { $place }
load_bed_sum = { $bed }: { $plants }
load_sum = { $lines ->
    [one] { $lines } renglón en la lista, { $plants } plantas
   *[other] { $lines } renglones en la lista, { $plants } plantas
}
load_tray_promised = { $tray }: { $listed } prometidas, { $plantable } plantables de { $standing } vivas
load_bed_promised = { $bed }, { $species }: { $listed } prometidas, { $open } hoyos libres
load_fits_not = { $tray } hoy no cabe en { $bed }: { $why }
load_warnings = { $warnings } cosas por revisar: { $KEY_C } lo dice antes de anotar
load_gone = { $tray } para { $bed }: la bandeja está vacía o ya no está, o la parcela ya no tiene la especie en su plan
load_caution = Cuidado usual: una bandeja de bolsas regadas pesa de 15 a 40 kg. Entre dos o con menos bolsas, doblar las piernas, carga pegada al cuerpo. Lo pesado temprano y tarde, sombra, agua antes de la sed. Dolor de cabeza, calambres, mareo: parar, sombra, beber.
load_caution_short = Pesa: entre dos o menos bolsas, doblar las piernas. Calor: temprano o tarde, sombra, agua antes de la sed.
load_confirm_hint = Cuando estén en la tierra, { $KEY_C } lo anota todo de una vez.
load_ask = ¿Apuntar como plantadas el { $day }: { $plants } plantas en { $lines ->
    [one] { $lines } renglón
   *[other] { $lines } renglones
}?
load_ask_keys = { $KEY_W }: anotarlo todo. { $KEY_Q }: todavía no.
pair_fits_well = nada lo impide, nada que cuidar
coming_heading = Qué estará listo de hoy a { $weeks } semanas
coming_none = Nada tiene fecha en estas semanas.
coming_week = { $first } a { $last }
coming_undated = Sin fecha hasta que alguien haga o mire
coming_tray = { $tray }, { $species }, { $standing } vivas
coming_bed = { $bed } para { $species }, { $open } libres
sign_fits_today = hoy cabe en la parcela
sign_held_back = algo que se sabe la retiene
sign_not_known = solo la retiene lo que nadie sabe
sign_no_place = ninguna parcela la tiene en su plan, o la lista no le deja lugar
sign_take_care = que cuidar, o en duda
sign_tray_to_come = bandeja que estará lista
sign_bed_to_come = parcela que estará lista
