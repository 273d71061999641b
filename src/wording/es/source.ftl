### De dónde vienen las reglas. Los nombres de publicaciones quedan como son.

source_common_practice = práctica común
source_load = un viaje son { $LOAD_PLANTS } plantas, o todas las que hay si son menos (nuestro, práctica común)
source_light_step = luz de la era junto a la luz de la bandeja en sus últimos { $LAST_LIGHT_DAYS } días: más de { $LARGE_STEP } de la luz plena y { $LARGE_STEP_RATIO } veces la luz quema, y también más de { $STEEP_RATIO } veces con más de { $SMALL_STEP }; sobre { $FITS_UP_TO } veces, cuidado (nuestro; ninguna publicación da un número seguro)
source_waiting_time = el tiempo de espera anotado con el tratamiento; mandan la etiqueta y las normas del lugar
source_flush = práctica común: las hojas nuevas tardan 2-3 semanas en endurecer
source_last_day_taken = nadie anotó cuánto aguantan: se toman { $BARE_ROOTS_KEEP_DAYS } días, { $HEELED_IN_KEEP_DAYS } si están enterradas en fresco y húmedo (de memoria: Jaenicke 1999, Good tree nursery practices, ICRAF); mire las raíces
source_last_day_written = el último día que se anotó cuando llegaron: práctica común
source_hardening = 3-4 semanas: Malawi moringa guide; 4-6 semanas: Tearfund, Pillars guide F14; no sale con menos de { $HARDENING_LEAST_DAYS } días, y el último paso con { $LAST_STEP_DAYS } días: nuestro, práctica común
source_holding = los días máximos de la especie, según la raíz cúbica del volumen de la bolsa (nuestro, práctica común; relacionado: Poorter et al. 2012, Functional Plant Biology 39:839); mirar el cepellón vale más
source_nurse_days = nuestra: { $NURSE_AFTER_EMERGENCE_DAYS } días después de que deba salir lo último de la semilla o de los brotes
source_grafted_height = la altura mínima de la especie; los injertos salen con 60 a { $GRAFTED_MOST_CM } cm (Nakasone y Paull 1998, Tropical Fruits, de memoria)
source_plug = práctica común: el cepellón que sostiene y tiene puntas blancas está listo, el que se desmorona está tierno
source_root_limit = Bengough et al. 2011, Journal of Experimental Botany 62:59
source_rod = Bengough et al. 2011, Journal of Experimental Botany 62:59; empuje sobre el área de la punta de la varilla, práctica común
source_tuber_shape = práctica común: el tubérculo que sale delgado habla de suelo duro
source_tubers_lifted = práctica común: sacar tubérculos afloja el suelo hasta unos 0,4 m; se cuenta por dos épocas de lluvia, o un año si no hay lluvias descritas (nuestro)
source_safe_rains = práctica común: se siembra hasta 8 semanas antes del fin de las lluvias usuales, o hasta la mitad si son cortas
source_written_here = según lo anotado en este vivero
source_rain = nuestro, con la lluvia con que Sivakumar 1988 fecha el inicio de las lluvias (Agricultural and Forest Meteorology 42:295, de memoria); un día sin lectura del pluviómetro no se sabe, nunca es seco
source_usual_rains = sin lectura del pluviómetro en { $NO_GAUGE_DAYS } días: las lluvias usuales de la época (nuestro, práctica común)
source_light_to_come = nuestro: necesita un modelo de la luz bajo las nodrizas, que todavía no existe
source_positions = práctica común: hoyos del trazo de la era, contando los dos bordes, menos los impedidos y las plantas vivas
source_no_figure = el perfil de la especie, que no lo dice
source_counting = práctica común: cada 1-2 días hasta que sale la mitad, luego cada 3-4; después cada { $COUNT_EVERY_DAYS } días, { $COUNT_NEAR_EVERY_DAYS } en endurecimiento o lista, { $COUNT_SICK_EVERY_DAYS } si está enferma (nuestro)
source_sow_again = nuestra: a media emergencia nació menos del { $POOR_EMERGENCE_SHARE } % de lo esperado (práctica común); el último día de siembra es el último día seguro de las lluvias menos los días usuales hasta salir
source_stop_waiting = práctica común: pasado el último día de la especie y nada nuevo en { $NOTHING_NEW_DAYS } días o en un cuarto de los días hasta la media emergencia
source_prick_out = el lugar de siembra de la especie; práctica común: de 2 cotiledones a 2 hojas verdaderas, unas 3 semanas después de que sale la mitad
source_pot_on = práctica común: pasar a una bolsa de 2-3 veces el volumen, podar raíces o descartar; el tiempo, como en los días en la bolsa
source_grading = altura sobre cuello mayor de { $LANKY_ABOVE }: apartar, mayor de { $CULL_LANKY_ABOVE }: descartar (práctica común; Jaenicke 1999, de memoria)
source_measuring = práctica común: { $SAMPLE_PLANTS } plantas al mes cerca de la salida, una celda de cada tantas, con los bordes
source_lift_plug = práctica común: sacar un cepellón cerca de la salida y cerca del fin de lo que aguanta la bolsa
source_steps = el plan de endurecimiento de la especie; un paso cada 7-10 días, hasta { $FITS_UP_TO } veces la luz cabe; a lo más { $LARGE_STEP } de la luz plena en un paso, y { $STEEP_RATIO } veces donde está oscuro (nuestro)
source_treatment_over = el tiempo de espera anotado con el tratamiento
source_seed_test = práctica común: 2 x 25 semillas antes de contar con un lote; cada { $TEST_AFTER_DAYS } días (nuestro)
source_seed_life_kept = nuestro: los días de la especie a temperatura ambiente, más si la semilla que se puede secar está cerrada o en frío, menos si se guarda seca la que muere al secarse
source_seed_life = los días que aguanta la semilla de la especie según cómo se guarda
source_ground_ahead = práctica común: limpia y hoyos en las 6 semanas antes de sembrar, deshierba y cobertura en las últimas 2
source_rings = práctica común: plateos cada 4 semanas en los meses 1-6
source_nurses = nuestro: la copa de una nodriza cambia en dos meses
source_light_ahead = práctica común: la luz se revisa 3 meses antes de sembrar; una lectura vale { $READING_LASTS_DAYS } días (nuestro)
source_soil_ahead = práctica común: la varilla con el suelo a capacidad de campo antes de sembrar; Bengough et al. 2011 para el límite
source_survival = práctica común: a 1, 3, 6 y 12 meses; Evans & Turnbull 2004, de memoria
source_going_out = nuestro: nada impide la salida de la bandeja a la era; antes de que acaben lo que aguanta la bolsa y las lluvias seguras
source_gauge = práctica común: se lee cada mañana
source_collar = cuello de al menos max(mínimo, altura / 8), según Jaenicke 1999, de memoria; mínimo: { $floor }
source_light_readings = { $band }; lecturas de menos de { $READING_LASTS_DAYS } días, las nuevas pesan más, ninguna de antes del último corte o pérdida grande (nuestro)
source_ground_work = { $days ->
    [one] nuestro, práctica común: lo que no está anotado no está hecho, y cuenta por { $days } día
   *[other] nuestro, práctica común: lo que no está anotado no está hecho, y cuenta por { $days } días
}
