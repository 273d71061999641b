### The screen Beds.

beds_bed = Parcela
beds_species = En el plan
beds_standing = Estado
beds_open = Libres
beds_light = Luz
beds_missing = Falta
beds_nothing = nada
bed_size = { $length } m de largo, { $width } m de ancho
bed_size_bearing = { $length } m de largo, { $width } m de ancho, surcos a { $degrees }° del norte
bed_ready_for = nada lo impide
plan_heading = Plano para { $species }
plan_none = El plan de esta especie no da hoyos que se puedan dibujar.
plan_scale = Escala: una letra es { $column } m a lo largo, un renglón { $line } m a lo ancho.
plan_part = Se ve de { $begin } a { $end } m de { $length } m. Izquierda y derecha recorren la parcela.
plan_thinned = Dibujado más junto de lo que está: una marca puede ser varios hoyos.
plan_hidden = Donde dos marcas se juntan se ve la de { $species }.
plan_living = { $species }, vivas: { $plants }
plan_dead = murió aquí: { $plants }
plan_open = libres: { $positions }
plan_blocked = piedra o tocón, nada cabe: { $positions }
plan_unsaid = planta o falla: viven { $living } en { $places } hoyos, no se anotó en cuáles.
plan_unsaid_rows = planta o falla: en los surcos { $rows } quedan { $living } vivas en { $places } hoyos, no se anotó en cuáles.
plan_other = { $species }: { $living } vivas, { $positions } hoyos
plan_nurse_all = { $nurse }, nodriza: { $planted } como se plantaron
plan_nurse_some = { $nurse }, nodriza: lugares de { $planted } como se plantaron, viven { $alive }, no se anotó cuáles
plan_nurse_elsewhere = { $nurse }: viven { $alive }, lugares sin anotar.
light_heading = Luz
light_old = última lectura { $light } el { $day }: ya vieja, o de antes de un corte o pérdida
light_row = { $light }, { $day }
light_legend = █ bajo 25 %, ▒ hasta 50 %, ░ hasta 75 %, - más clara
light_month_heading = { $bed }, { $species }: luz en { $month }
light_month_told = { $light }; { $share } de los hoyos libres dentro de { $band }
light_being_reckoned = Se está calculando la luz.
light_no_nurses = No se anotó ninguna nodriza en esta parcela: no hay sombra que calcular.
light_not_from = Desde { $month }: { $why }
light_digits = Cada cifra es luz en décimos: 3 es de 30 a 39 % del sol pleno. - y + van un mes atrás y adelante.
light_digits_at_most = Falta algo que da sombra: cada cifra es la mayor luz que puede haber, y < lo dice en la línea de los meses.
light_underlined = Subrayado: fuera de { $band }.
light_chart_heading = Luz mes a mes
light_chart_legend = ● probable, ○ el mes que se ve, │ cuatro de cada cinco veces entre sus puntas.
light_chart_band = Puntos al fondo: { $band }.
plan_north = { $eighth ->
    [0] El norte queda arriba en este plano.
    [1] El norte queda arriba a la derecha en este plano.
    [2] El norte queda a la derecha en este plano.
    [3] El norte queda abajo a la derecha en este plano.
    [4] El norte queda abajo en este plano.
    [5] El norte queda abajo a la izquierda en este plano.
    [6] El norte queda a la izquierda en este plano.
   *[7] El norte queda arriba a la izquierda en este plano.
}
ground_heading = Suelo y agua
food_chart_kg = { $most } kg
food_chart_legend = █ al menos, │ a lo sumo: comida de cada mes, por la edad de las plantas y el último conteo.
nurses_heading = Plantas nodrizas
nurse_line = { $nurse }: viven { $alive } de { $planted }, edad { $age }
nurse_counted = contadas el { $day }
nurse_shades_from = sombra útil desde el { $day }
nurse_shades_since = da sombra útil desde el { $day }
nurse_ends = termina hacia el { $day }
nurse_past_end = pasó su final usual, { $day }
nurses_gone = ya no están: { $nurses }
survival_heading = Qué fue de cada plantación
survival_from_tray = { $species } de { $tray }, { $day }: { $planted } plantadas, { $living } vivas
survival_at_stake = { $species }, siembra directa { $day }: { $planted } hoyos, { $living } vivas
survival_found = { $species }, ya estaban, { $day }: { $planted } plantas, { $living } vivas
survival_rows = surcos { $rows }
survival_count = { $months } meses: { $alive } vivas, { $share }
survival_with_others = (con otras)
survival_not_counted = aún sin contar
