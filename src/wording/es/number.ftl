month_short = { $month ->
    [1] ene
    [2] feb
    [3] mar
    [4] abr
    [5] may
    [6] jun
    [7] jul
    [8] ago
    [9] sep
    [10] oct
    [11] nov
   *[12] dic
}
day_full = { $day } { $month } { $year }
day_in_year = { $day } { $month }
days = { $days ->
    [one] { $days } día
   *[other] { $days } días
}
plants = { $plants ->
    [one] { $plants } planta
   *[other] { $plants } plantas
}
seeds = { $seeds ->
    [one] { $seeds } semilla
   *[other] { $seeds } semillas
}
trays = { $trays ->
    [one] { $trays } bandeja
   *[other] { $trays } bandejas
}
beds = { $beds ->
    [one] { $beds } parcela
   *[other] { $beds } parcelas
}
entries = { $entries ->
    [one] { $entries } anotación
   *[other] { $entries } anotaciones
}
plants_between = { $low } a { $high } plantas, lo probable { $likely }
rough_up_to = hasta { $most }
rough_one = una o dos
rough_few = unas pocas
rough_between = de { $low } a { $high }
share_asked = { $share } %: ¿es { $percent } %? Escriba { $percent }
one_percent_asked = 1 %: ¿es 100 %? Escriba 100, o añada --yes si es 1 %
percent_of = { $percent } %
