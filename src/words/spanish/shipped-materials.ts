import type { Wording } from '../worded.ts';

/** Materials. */
export const shippedMaterials: Readonly<Record<string, Wording>> = {
  'Acrylic caulk': 'Sellador acrílico',
  'Nothing sticks to wax; strip it with spirit and a pad first.':
    'Sobre cera no agarra nada; quítela antes con alcohol y estropajo.',
  'Never sand it; tool it smooth while it is wet.': 'No lo lije nunca; repáselo mientras está húmedo.',
  'acrylic caulk': 'sellador acrílico',
  'Aerosol filler primer': 'Imprimación de relleno en aerosol',
  'Its solvents lift oil films; shellac bridges.':
    'Sus disolventes levantan las películas de aceite; la goma laca hace de puente.',
  'Its solvents lift fresh alkyd films; shellac bridges.':
    'Sus disolventes levantan las películas alquídicas frescas; la goma laca hace de puente.',
  'Its vapour burns.': 'Su vapor arde.',
  'No flame, spark or glowing heater; fresh air until it has flashed off.':
    'Sin llamas, chispas ni estufas incandescentes; aire fresco hasta que se haya evaporado.',
  'Warm the can in the room, never on a heater; it can burst above 50 °C.':
    'Temple el bote en la sala, nunca sobre una estufa; por encima de 50 °C puede reventar.',
  'Next coat within the hour or after one to two days; in between it lifts and wrinkles.':
    'La mano siguiente en menos de una hora o al cabo de uno o dos días; entre medias levanta y arruga.',
  toluene: 'tolueno',
  'aerosol filler primer': 'imprimación de relleno en aerosol',
  'Alkyd aerosol enamel': 'Esmalte alquídico en aerosol',
  'alkyd aerosol enamel': 'esmalte alquídico en aerosol',
  'Alkyd enamel': 'Esmalte alquídico',
  'Rags wet with it can set themselves alight.': 'Los trapos empapados de ello pueden arder solos.',
  'Dry them flat outdoors, or drown them in a lidded metal can, at once.':
    'Séquelos extendidos al aire libre, o métalos en agua en un bote metálico con tapa, enseguida.',
  'A thick coat skins over and stays soft beneath.': 'Una mano gruesa hace piel y queda blanda por debajo.',
  'alkyd enamel': 'esmalte alquídico',
  'Bonding primer, water-borne acrylic': 'Imprimación de agarre, acrílica al agua',
  'Water-borne films crawl and peel on oil that is not cured; shellac bridges.':
    'Las películas al agua se retraen y se desprenden sobre aceite sin curar; la goma laca hace de puente.',
  'Strain it, keep it from frost, and ventilate while it dries.':
    'Cuélela, guárdela de las heladas y ventile mientras seca.',
  'dipropylene glycol methyl ether': 'éter metílico de dipropilenglicol',
  'bonding primer': 'imprimación de agarre',
  'Chalk-type paint': 'Pintura a la tiza',
  'Marks and stains until it is waxed or sealed.': 'Se marca y se mancha hasta que se encera o se sella.',
  'chalk type paint': 'pintura a la tiza',
  'Clean water, rinsed or sponged on': 'Agua limpia, aclarada o con esponja',
  'Old veneer and hide glue loosen in water; wring the cloth out.':
    'La chapa vieja y la cola animal se sueltan con agua; escurra el paño.',
  'clean water rinse': 'agua limpia',
  'Contrast filler, of another colour than the primer': 'Masilla de contraste, de otro color que la imprimación',
  'For the last small flaws that a light primer shows; its colour tells where it was sanded away.':
    'Para los últimos defectos pequeños que muestra una imprimación clara; su color dice dónde se ha lijado.',
  'contrast filler': 'masilla de contraste',
  'Degreaser wash': 'Lavado con desengrasante',
  'Gloves and eye protection.': 'Guantes y protección ocular.',
  'Rinse twice; what stays behind keeps paint from sticking.':
    'Aclare dos veces; lo que queda impide que la pintura agarre.',
  'degreaser wash': 'lavado con desengrasante',
  'Dewaxed shellac': 'Goma laca desparafinada',
  'Damp air makes it blush white; wait for drier air rather than spray through it.':
    'El aire húmedo la vela de blanco; espere aire más seco en vez de pulverizar con él.',
  'Thick builds stay soft; two thin coats beat one thick.':
    'Las capas gruesas quedan blandas; dos manos finas valen más que una gruesa.',
  ethanol: 'etanol',
  'dewaxed shellac': 'goma laca desparafinada',
  'Drying oil, boiled linseed or tung': 'Aceite secante, de linaza cocido o de tung',
  'Oil must reach bare wood; on a film it stays sticky.':
    'El aceite ha de llegar a la madera desnuda; sobre una película queda pegajoso.',
  'What is not wiped off dries to a sticky skin.': 'Lo que no se retira seca en una piel pegajosa.',
  'drying oil': 'aceite secante',
  'Epoxy glue, two-part': 'Cola epoxi, de dos componentes',
  'Glue holds on bare wood only; scrape the finish out of the joint.':
    'La cola solo agarra sobre madera desnuda; raspe el acabado de la unión.',
  'Gloves and eye protection; two-part resins can make the skin allergic for life.':
    'Guantes y protección ocular; las resinas de dos componentes pueden volver alérgica la piel de por vida.',
  'A large batch heats itself; mix little.': 'Mucha cantidad se calienta sola; mezcle poco.',
  'epoxy glue': 'cola epoxi',
  'Epoxy primer, two-part': 'Imprimación epoxi, de dos componentes',
  'It lifts alkyd films; shellac bridges.': 'Levanta las películas alquídicas; la goma laca hace de puente.',
  'It does not hold on oil; shellac bridges.': 'No agarra sobre aceite; la goma laca hace de puente.',
  'It lifts lacquer; strip it first.': 'Levanta la laca; decápela antes.',
  'Let the mix stand before use, about half an hour to 2 h, longer in the cold (MO-124).':
    'Deje reposar la mezcla antes de usarla, de media hora a 2 h, más con frío (MO-124).',
  xylene: 'xileno',
  'epoxy primer': 'imprimación epoxi',
  'Epoxy putty, two-part': 'Masilla epoxi, de dos componentes',
  'Cured cold and damp it sweats a waxy film; wash it off with water before sanding.':
    'Curada en frío y húmedo suda una película cerosa; lávela con agua antes de lijar.',
  'epoxy putty': 'masilla epoxi',
  'Gel stain, oil based': 'Tinte en gel, al aceite',
  'Does not penetrate like a thin stain; wipe it even, and let it dry longer.':
    'No penetra como un tinte fluido; extiéndalo parejo, y déjelo secar más.',
  'gel stain': 'tinte en gel',
  'Grain filler, oil-based paste': 'Tapaporos, pasta al aceite',
  'grain filler': 'tapaporos',
  'hardwax oil': 'aceite de cera dura',
  'Hide glue, hot': 'Cola animal, caliente',
  'Glue holds on bare wood only (old hide glue excepted); scrape the finish out of the joint.':
    'La cola solo agarra sobre madera desnuda (salvo cola animal vieja); raspe el acabado de la unión.',
  'Warm the parts; in a cold room it gels before the joint is closed.':
    'Temple las partes; en una sala fría gelifica antes de cerrar la unión.',
  'Keep the pot near 60 °C; hotter weakens the glue.': 'Mantenga el bote cerca de 60 °C; más calor debilita la cola.',
  'hide glue': 'cola animal',
  'Liquid hide glue': 'Cola animal líquida',
  'Check its date; old liquid hide glue does not harden.': 'Mire su fecha; la cola animal líquida vieja no endurece.',
  'liquid hide glue': 'cola animal líquida',
  'Low-tack tape': 'Cinta de baja adherencia',
  'Press the edge down, pull it off flat and back on itself, before the paint is hard or after scoring the edge.':
    'Apriete el borde, quítela plana y doblada sobre sí misma, antes de que la pintura esté dura o tras marcar el borde con cuchilla.',
  'low tack tape': 'cinta de baja adherencia',
  'Masking tape': 'Cinta de enmascarar',
  'Sun and warmth bake its glue on; take it off the same day.':
    'El sol y el calor le cuecen el adhesivo; quítela el mismo día.',
  'masking tape': 'cinta de enmascarar',
  'Milk paint, mixed from powder': 'Pintura a la leche, mezclada de polvo',
  'Milk paint needs a thirsty or a shellacked surface; it flakes off oil.':
    'La pintura a la leche necesita una superficie que absorba o con goma laca; sobre aceite se descascarilla.',
  'Milk paint flakes off a closed alkyd film; shellac bridges.':
    'La pintura a la leche se descascarilla sobre una película alquídica cerrada; la goma laca hace de puente.',
  'Holds lime; gloves and eye protection while mixing, and no breathing of the powder.':
    'Contiene cal; guantes y protección ocular al mezclar, y sin respirar el polvo.',
  'Mixed paint spoils within a day or two.': 'La pintura mezclada se echa a perder en uno o dos días.',
  'milk paint': 'pintura a la leche',
  'Polyurethane, moisture-curing': 'Poliuretano, curado por humedad',
  'Its strong solvents lift alkyd films; shellac bridges.':
    'Sus disolventes fuertes levantan las películas alquídicas; la goma laca hace de puente.',
  'Its strong solvents soften oil films; shellac bridges.':
    'Sus disolventes fuertes ablandan las películas de aceite; la goma laca hace de puente.',
  'Its strong solvents wrinkle lacquer; strip it first.': 'Sus disolventes fuertes arrugan la laca; decápela antes.',
  'Holds isocyanates, which can make the lungs allergic for life.':
    'Contiene isocianatos, que pueden volver alérgicos los pulmones de por vida.',
  'Follow its safety data sheet; spraying needs supplied air and trained people.':
    'Siga su ficha de datos de seguridad; pulverizarlo exige aire suministrado y personas formadas.',
  'An opened can hardens from the air; close it with no room above the liquid.':
    'Un bote abierto endurece con el aire; ciérrelo sin hueco sobre el líquido.',
  'moisture cure polyurethane': 'poliuretano',
  'Nitrocellulose lacquer': 'Laca nitrocelulósica',
  'Its strong solvents lift and wrinkle alkyd films; shellac bridges.':
    'Sus disolventes fuertes levantan y arrugan las películas alquídicas; la goma laca hace de puente.',
  'Its strong solvents bite into the paint; shellac bridges.':
    'Sus disolventes fuertes muerden la pintura; la goma laca hace de puente.',
  'Its strong solvents swell a water-borne film that is not cured; shellac bridges.':
    'Sus disolventes fuertes hinchan una película al agua sin curar; la goma laca hace de puente.',
  'Dry overspray burns fast; wet it, bag it, keep it out of a booth that also sees peroxide hardeners.':
    'La niebla seca arde deprisa; mójela, embólsela, y no la deje en una cabina donde también se usen endurecedores de peróxido.',
  'Damp air makes it blush white.': 'El aire húmedo la vela de blanco.',
  'nitrocellulose lacquer': 'laca nitrocelulósica',
  'An oil film must be dry through or the varnish wrinkles.':
    'Una película de aceite ha de estar seca del todo o el barniz se arruga.',
  'oil based polyurethane': 'poliuretano al aceite',
  'Oil or alkyd primer': 'Imprimación al aceite o alquídica',
  'oil primer': 'imprimación al aceite o alquídica',
  'Oil wiping stain': 'Tinte al aceite, a trapo',
  'It colours bare wood; on a film it stays on top and never dries well.':
    'Colorea la madera desnuda; sobre una película queda encima y nunca seca bien.',
  'Sanding stained wood cuts the colour through; de-nib after the first coat over it.':
    'Lijar madera teñida corta el color; quite motas tras la primera mano encima.',
  'oil wiping stain': 'tinte al aceite',
  'Paste wax': 'Cera en pasta',
  'Its solvent softens a water-borne film that is still fresh.':
    'Su disolvente ablanda una película al agua aún fresca.',
  'Its solvent softens fresh lacquer.': 'Su disolvente ablanda la laca fresca.',
  'Wax shuts out the oxygen that a fresh alkyd film still needs.':
    'La cera corta el oxígeno que una película alquídica fresca aún necesita.',
  'Wax shuts out the oxygen that fresh oil still needs.': 'La cera corta el oxígeno que el aceite fresco aún necesita.',
  'Nothing but wax sticks over it.': 'Encima no agarra nada más que cera.',
  'Be done with all paint first.': 'Termine antes toda la pintura.',
  'Waxy cloths can hold solvent and oil; dry them flat outdoors before they go in the bin.':
    'Los paños con cera pueden llevar disolvente y aceite; séquelos extendidos al aire libre antes de tirarlos.',
  'paste wax': 'cera en pasta',
  'Polyester filler, two-part': 'Masilla de poliéster, de dos componentes',
  'Its styrene lifts alkyd paint; sand back to wood.':
    'Su estireno levanta la pintura alquídica; lije hasta la madera.',
  'Its styrene lifts lacquer; sand back to wood.': 'Su estireno levanta la laca; lije hasta la madera.',
  'Peroxide hardener harms the eyes; goggles.': 'El endurecedor de peróxido daña los ojos; gafas cerradas.',
  'It must never meet lacquer dust or oily rags.': 'Nunca debe juntarse con polvo de laca ni trapos con aceite.',
  styrene: 'estireno',
  'polyester filler': 'masilla de poliéster',
  'PVA wood glue': 'Cola blanca de madera (PVA)',
  'Below its chalk temperature the line dries white and weak, however long it is left.':
    'Por debajo de su temperatura de tiza la línea seca blanca y débil, por mucho que se deje.',
  'Wood above 12 % moisture or below 6 % makes weak joints.':
    'La madera por encima del 12 % de humedad o por debajo del 6 % da uniones débiles.',
  'pva glue': 'cola blanca de madera (PVA)',
  'Residue-free cleaner, alcohol and water': 'Limpiador sin residuo, alcohol y agua',
  'Test on shellac and lacquer; alcohol dissolves them.': 'Pruebe sobre goma laca y laca; el alcohol las disuelve.',
  'residue free cleaner': 'limpiador sin residuo',
  'Sanding sealer, nitrocellulose': 'Tapaporos de lijar, nitrocelulósico',
  'One coat, sanded thin; thick sealer stays soft under the finish.':
    'Una mano, lijada fina; el tapaporos grueso queda blando bajo el acabado.',
  'sanding sealer': 'tapaporos de lijar',
  'Shellac sealer primer, pigmented': 'Imprimación selladora de goma laca, pigmentada',
  'Stops knots, old stain and odours; stir the pigment up often.':
    'Frena nudos, tinte viejo y olores; remueva a menudo el pigmento.',
  'shellac sealer primer': 'imprimación selladora de goma laca',
  'Solvent wood filler': 'Masilla de madera al disolvente',
  'solvent filler': 'masilla de madera al disolvente',
  'Solvent wipe': 'Limpieza con disolvente',
  'Wet cloths burn; dry them flat outdoors.': 'Los paños mojados arden; séquelos extendidos al aire libre.',
  'spirit wipe': 'limpieza con disolvente',
  'Stain-blocking primer, water-borne': 'Imprimación antimanchas, al agua',
  'Coated too soon, tannin and old stain come through the topcoat.':
    'Si recibe mano demasiado pronto, el tanino y el tinte viejo atraviesan el acabado.',
  'stain blocking primer': 'imprimación antimanchas',
  'Polyurethane, two-part': 'Poliuretano, de dos componentes',
  'Its solvents swell a water-borne film that is not cured; shellac bridges.':
    'Sus disolventes hinchan una película al agua sin curar; la goma laca hace de puente.',
  'Damp air makes it bubble.': 'El aire húmedo le hace burbujas.',
  'two part polyurethane': 'poliuretano',
  'Water-based wood filler': 'Masilla de madera al agua',
  'Deep fills in lifts of 6 mm or less, each dry through; they shrink.':
    'Rellenos hondos en capas de 6 mm o menos, cada una seca del todo; merman.',
  'water based filler': 'masilla de madera al agua',
  'Water-based stain': 'Tinte al agua',
  'It colours bare wood; a film keeps it out.': 'Colorea la madera desnuda; una película no lo deja pasar.',
  'Raises the grain; raise and sand it with clean water first.':
    'Levanta el repelo; levántelo y líjelo antes con agua limpia.',
  'water based stain': 'tinte al agua',
  'Water-borne acrylic enamel': 'Esmalte acrílico al agua',
  'water borne acrylic enamel': 'esmalte acrílico al agua',
  'Water-borne alkyd enamel': 'Esmalte alquídico al agua',
  'Its alkyd part goes on hardening by oxygen for weeks; keep drawers and doors open.':
    'Su parte alquídica sigue endureciendo con el oxígeno durante semanas; deje abiertos cajones y puertas.',
  'water borne alkyd enamel': 'esmalte alquídico al agua',
  'Water-borne lacquer, acrylic clear': 'Laca al agua, acrílica transparente',
  'Raises the grain of bare wood; raise and sand it first, or seal with shellac.':
    'Levanta el repelo de la madera desnuda; levántelo y líjelo antes, o selle con goma laca.',
  'water borne lacquer': 'laca al agua',
  'Water-borne polyurethane, clear': 'Poliuretano al agua, transparente',
  'No steel wool between coats; its dust rusts.': 'Sin lana de acero entre manos; su polvo se oxida.',
  'water borne polyurethane': 'poliuretano al agua',
  'Wiping varnish': 'Barniz a muñequilla',
  'wiping varnish': 'barniz a muñequilla',
};
