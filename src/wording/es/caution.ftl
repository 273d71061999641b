### Lo que puede hacer daño: una línea donde se propone o se anota un trabajo, y lo que pueden hacer las plantas.

caution_label = Cuidado
label_care = cuidado
label_plant = planta
caution_plant_label = Planta
caution_line = { $label }: { $line }
caution_plant = { $plant } ({ $dangers })
caution_plant_unknown = nadie ha escrito si hace daño
caution_said_first = El cuidado se dice completo en la primera parada de cada clase y de cada planta que puede dañar.
caution_leads = Mandan las normas del lugar, la etiqueta y la práctica autorizada, más que lo dicho aquí.

## caution_: by word

caution_pits = Tape o cerque cada hoyo abierto: niños, ganado. A uno hondo nunca solo: las paredes se caen.
caution_blades = Machete y azadón con filo y funda, botas puestas; a dos brazos de los demás; corte lejos de la pierna.
caution_knives = Cuchilla con filo, corte lejos de la mano; límpiela entre bandejas; toda herida se lava.
caution_clearing = Primero busque abejas y alambre. Fuego solo donde se permite. Motosierra: con capacitación y equipo.
caution_fencing = Guantes y lentes para el alambre tenso; nadie en su línea.
caution_felling = Corta uno, los demás a dos largos del tallo; nadie debajo; nada de machete en escalera.
caution_potting = Humedezca la tierra; tápese nariz y ojos: moho, cal, polvo de sacos. Lávese las manos.
caution_lifting = Antes mire debajo: culebras, alacranes. Rodillas dobladas, pocas bolsas, entre dos si está mojada.
caution_planting = Pocas bolsas a la vez, rodillas dobladas. Horas frescas, sombra, agua a sorbos; con mareo, pare.
caution_watering = Diez litros son 10 kg: baldes a medias, rodillas dobladas. Horas frescas, beba a sorbos.
caution_shade_cloth = La malla desde una escalera firme que alguien sostiene, no desde cajas ni toneles. Bandejas: rodillas dobladas.
caution_spraying = Manda la etiqueta: dosis, guantes, mascarilla, tiempo de no entrar. Con licencia si se pide; niños lejos.
caution_after_spraying = Solo después del tiempo de la etiqueta: guantes, manga larga, manos lavadas; los niños todavía no.
caution_hygiene = Lo enfermo al final; después lave manos y herramientas. Lo descartado: en ningún montón del vivero.
caution_sowing = La semilla teñida es veneno: guantes, nunca comida. El agua caliente quema. El ácido, solo gente capacitada.
caution_seed_test = Cloro nunca con amoníaco ni ácido: el gas mata. Nitrato lejos del fuego. Ácido giberélico: guantes, lentes.
caution_seed_store = La semilla tratada o con moho no es comida. Polvo de sacos lejos de nariz y ojos. Con llave, por los niños.
caution_climbing = Desde el suelo con vara si se puede. Subir solo con práctica, cuerda y compañía; antes busque abejas.
caution_in_the_field = Botas; mire dónde pisa y mete la mano. Lleve agua, y que alguien sepa dónde está.
