### Fórmulas del sol, del agua y de la sombra: frases, fuentes y ayuda.

calc_sun_above = El sol está a { $high }° sobre el horizonte, a { $from_north }° desde el norte hacia el este.
calc_sun_below = El sol está a { $high }° bajo el horizonte, a { $from_north }° desde el norte hacia el este.
calc_sun_day = Sale a las { $rises } y se pone a las { $sets } (UTC): un día de { $hours } h.
calc_sun_no_end = Ni sale ni se pone: { $hours } h de sol.
calc_sun_formula = Solar Position Algorithm; altura del centro del sol sin la refracción del aire; salida y puesta cuando se ve su borde superior, a 50/60° bajo el horizonte
calc_sun_source = Reda y Andreas 2004, Solar Energy 76:577 (comparado con otra biblioteca)
calc_radiation_some = Sobre el aire el sol manda ese día { $radiation } MJ/m² al suelo plano, en { $hours } h de luz.
calc_radiation_slope = En esa pendiente: { $radiation } MJ/m².
calc_radiation_formula = Ra = 1440/π 0.0820 dr (ws sen φ sen δ + cos φ cos δ sen ws); dr = 1 + 0.033 cos(2π J/365); δ = 0.409 sen(2π J/365 - 1.39); ws = arccos(-tan φ tan δ); N = 24/π ws; en una pendiente, la suma de los minutos en que el sol le da de frente
calc_radiation_source = Allen et al. 1998, Estudio FAO Riego y Drenaje 56, ecuaciones 21 a 25 y 34
calc_et0_both = El pasto bien regado gasta ese día { $et0 } mm (Penman-Monteith); solo por las temperaturas { $by_warmth } mm (Hargreaves).
calc_et0_hargreaves = El pasto bien regado gasta ese día unos { $by_warmth } mm, solo por las temperaturas (Hargreaves); el viento, la humedad o la luz dirían más.
calc_et0_formula = ET0 = (0.408 Δ (Rn - G) + γ 900/(T + 273) u2 (es - ea)) / (Δ + γ (1 + 0.34 u2)); Hargreaves 0.0023 (T + 17.8) raíz(Tmax - Tmin) 0.408 Ra. Sin medir: vapor por la mínima, viento de 2 m/s, luz 0.16 raíz(Tmax - Tmin) Ra
calc_et0_source = Allen et al. 1998, Estudio FAO Riego y Drenaje 56, ecuaciones 6 a 50 y 52
calc_water_day = día { $day }: { $wrong }
calc_water_end = Después de { $days } días quedan { $left } mm de { $held } mm para las raíces.
calc_water_no_stress = Ningún día de sed.
calc_water_stress = Días de sed: { $days }, el primero es el día { $first }.
calc_water_formula = Dr = Dr anterior - lluvia - riego + Ks Kc ET0 + DP, de 0 a TAW; Ks = 1 hasta p TAW, luego (TAW - Dr) / (TAW - p TAW); DP es lo que sobra; TAW = 1000 (FC - WP) profundidad de raíces; p ajustada = p + 0.04 (5 - ETc), de 0.1 a 0.8
calc_water_source = Allen et al. 1998, Estudio FAO Riego y Drenaje 56, capítulo 8, ecuaciones 82 a 88 (sin escurrimiento ni agua desde abajo)
calc_in_row = { $list } { $row }: { $wrong }
calc_light_some = Ese día llega en promedio { $mean } de la luz abierta, de { $darkest } a { $brightest }.
calc_light_leaves = Se leyó { $read } donde las copas dibujadas dejan pasar { $expected }: las hojas son { $factor } veces tan densas.
calc_light_no_leaves = Se leyó { $read } donde las copas dibujadas dejan pasar { $expected } y { $gaps } pasa a su lado: ninguna hoja explica eso. Las copas están dibujadas muy pequeñas o muy grandes, o en otro lugar.
calc_light_held = Más de { $most } o menos de { $least } veces no se cree de las hojas: revise las copas.
calc_light_cuts = En la franja de { $low } a { $high }, según cuántas plantas se cortan: { $line }; de { $points } puntos.
calc_light_formula = luz = parte difusa x promedio del cielo + resto x promedio del sol del día de exp(-suma k x densidad de hojas x metros de copa en el rayo); las copas son elipsoides; cielo de brillo parejo, sol pesado por el seno de su altura
calc_light_source = Monsi y Saeki 1953 (ley de Beer en hojas); geometría de elipsoides; sol como en calc sun. Sin troncos ni luz devuelta por el suelo

## help_: by word

help_calc_sun = Dónde está el sol, y cuándo sale y se pone
help_calc_sun_lat = Latitud en grados, sur bajo 0
help_calc_sun_lon = Longitud en grados, oeste bajo 0
help_calc_sun_elev = Altura sobre el mar en m (0)
help_calc_sun_utc = El momento: 2026-03-15T10:00:00-06:00
help_calc_radiation = Lo que el sol manda en un día sobre el aire, y horas de luz
help_calc_radiation_lat = Latitud en grados, sur bajo 0
help_calc_radiation_doy = Día del año, 1 a 366
help_calc_radiation_slope = Qué tan inclinado es el terreno, en grados
help_calc_radiation_facing = Hacia dónde cae, en grados desde el norte hacia el este
help_calc_et0 = Agua que el pasto bien regado gasta en un día
help_calc_et0_lat = Latitud en grados, sur bajo 0
help_calc_et0_elev = Altura sobre el mar en m
help_calc_et0_doy = Día del año, 1 a 366
help_calc_et0_tmax = Máxima del día, °C
help_calc_et0_tmin = Mínima del día, °C
help_calc_et0_rhmax = Humedad relativa más alta, %
help_calc_et0_rhmin = Humedad relativa más baja, %
help_calc_et0_ea = Presión de vapor en kPa, en lugar de la humedad
help_calc_et0_u2 = Viento a 2 m, en m/s
help_calc_et0_wind = Viento a otra altura, en m/s
help_calc_et0_wind_height = Esa altura sobre el pasto, en m
help_calc_et0_rs = Luz del sol en MJ/m² por día
help_calc_et0_sunshine = Horas de sol, en lugar de la luz
help_calc_water = Agua al alcance de las raíces, día por día
help_calc_water_taw = Agua que guarda la zona de raíces entre capacidad de campo y marchitez, en mm
help_calc_water_fc = Capacidad de campo como parte del suelo: 0.28; con --wp y --zr en lugar de --taw
help_calc_water_wp = Punto de marchitez como parte del suelo: 0.14
help_calc_water_zr = Profundidad de las raíces, en m
help_calc_water_p = Parte de esa agua que se toma con facilidad: 0.3
help_calc_water_p_adjusted = Esa parte baja en días de mucha demanda
help_calc_water_ks_from = La sed de un día por lo que falta en previous_end (lo usual) o en start_of_day, con la lluvia de hoy
help_calc_water_dr0 = Lo que falta para capacidad de campo al comienzo, en mm
help_calc_water_rain = Lluvia de cada día en mm: 0,0,12
help_calc_water_irrigation = Riego de cada día en mm; un número vale para todos los días
help_calc_water_et0 = Demanda del pasto en cada día en mm; un número vale para todos los días
help_calc_water_kc = Coeficiente de cultivo de cada día; un número vale para todos los días
help_calc_light = Luz entre las copas y debajo de ellas
help_calc_light_more = Una parcela regular se escribe con opciones; copas y puntos uno por uno se leen como JSON: crowns [{"{"}x, y, zc, rh, hh, lad{"}"}], points [[x, y, z]], con reading o con band y cuts si se quiere.
help_calc_light_lat = Latitud en grados, sur bajo 0
help_calc_light_lon = Longitud en grados, oeste bajo 0
help_calc_light_elev = Altura sobre el mar en m (0)
help_calc_light_date = El día: 2026-03-15
help_calc_light_months = Tantos meses seguidos desde ese día (1)
help_calc_light_diffuse = Parte de la luz que viene de todo el cielo, en %
help_calc_light_rows = Surcos de plantas nodrizas
help_calc_light_plants = Plantas en cada surco
help_calc_light_row = De surco a surco, en m
help_calc_light_plant = De planta a planta, en m
help_calc_light_top = Punta de las copas sobre el suelo, en m
help_calc_light_foot = Pie de las copas sobre el suelo, en m
help_calc_light_width = Ancho de las copas, en m
help_calc_light_lad = Densidad de hojas, m² de hoja en m³ de copa
help_calc_light_k = Extinción de las hojas: banano 0.7, gandul 0.55
help_calc_light_heading = Hacia dónde van los surcos, en grados desde el norte hacia el este (90)
help_calc_light_slope = Qué tan inclinado es el terreno, en grados
help_calc_light_facing = Hacia dónde cae, en grados desde el norte hacia el este
