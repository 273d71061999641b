### Cómo crecen las plantas de una bandeja.

growth_heading = Crecimiento
growth_label_height = altura
growth_label_collar = cuello
growth_label_lanky = alta y delgada
growth_label_sample = muestra
growth_label_formula = fórmula
growth_cm = { $value } cm
growth_mm = { $value } mm
growth_there = { $mean } en promedio el { $day }, al menos { $target }: ya está
growth_expected = { $mean } en promedio; { $target } el { $day } por su propia curva, de { $samples ->
    [one] { $samples } día
   *[other] { $samples } días
} de medir
growth_expected_between = { $mean } en promedio; { $target } el { $day } ({ $low } a { $high }, con 95 % de seguridad) por su propia curva, de { $samples ->
    [one] { $samples } día
   *[other] { $samples } días
} de medir
growth_unknown = se necesita { $target }: { $why }
growth_unknown_mean = { $mean } en promedio, se necesita { $target }: { $why }
growth_why_never_measured = nunca se midió
growth_why_few = { $have ->
    [one] se midió en un día; para decir un día hacen falta { $LEAST_SAMPLES }
   *[other] se midió en { $have } días; para decir un día hacen falta { $LEAST_SAMPLES }
}
growth_why_no_age = no se sabe el día de siembra
growth_why_no_end = las muestras no dicen dónde termina de crecer
growth_why_wide = las muestras no dicen el día con menos de un año de duda
growth_why_ends_below = por su propia curva termina en { $at }
growth_species_day = el día mínimo de la especie es el { $least }
growth_species_days = por los días de la especie, lo mínimo el { $least }, lo usual el { $usual }
growth_lanky_now = altura / cuello { $sturdiness } el { $day }, a lo más { $limit }: separar ya
growth_lanky_on = altura / cuello { $sturdiness } el { $day }, pasa { $limit } hacia el { $on }: separar antes
growth_lanky_not = altura / cuello { $sturdiness } el { $day }, a lo más { $limit }: por ahora no
growth_lanky_one = altura / cuello { $sturdiness } el { $day }, a lo más { $limit }; una muestra no dice hacia dónde va
growth_sample = { $plants ->
    [one] { $plants } planta
   *[other] { $plants } plantas
} el { $day }: el promedio se sabe con { $within } de duda
growth_sample_more = { $plants ->
    [one] { $plants } planta
   *[other] { $plants } plantas
} el { $day }: el promedio se sabe con { $within } de duda; medir { $more } más
growth_sample_one = una planta el { $day }: medir { $more } más
growth_formula = logística A / (1 + exp(-k (t - t0))) o Gompertz A exp(-exp(-k (t - t0))), mínimos cuadrados sobre todas las plantas, la mejor de las dos; aquí { $curve }
growth_source = Verhulst 1838, Gompertz 1825; Bates y Watts 1988 (de memoria); altura sobre cuello hasta 6: Jaenicke 1999 (de memoria); más: nuestro, práctica común
growth_curve_logistic = logística: A { $a }, k { $k } al día, t0 el día { $t0 }
growth_curve_gompertz = Gompertz: A { $a }, k { $k } al día, t0 el día { $t0 }
round_lanky_soon = creciendo alta y delgada: altura / cuello { $sturdiness }, pasa { $limit } hacia el { $day }
round_sample_small = medir { $more } más: el promedio se sabe con { $within } de duda y está así de cerca de { $least }
