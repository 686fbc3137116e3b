import type { Wording } from '../worded.ts';

/** Recipes. */
export const shippedRecipes: Readonly<Record<string, Wording>> = {
  'Clear water-borne finish over stripped wood': 'Acabado transparente al agua sobre madera decapada',
  'Stripped, patched, sanded through the grits, the grain raised and knocked back, then three coats of clear water-borne polyurethane with a scuff between.':
    'Decapada, reparada, lijada grano a grano, con el repelo levantado y rebajado, y después tres manos de poliuretano transparente al agua con un matizado entre medias.',
  'Strip the old finish': 'Decapar el acabado viejo',
  'Gloves, eye protection, fresh air, no flame.': 'Guantes, protección ocular, aire fresco, sin llamas.',
  'Lead test before old paint.': 'Prueba de plomo antes que la pintura vieja.',
  'Wash stripper and its wax off with spirit': 'Lavar con alcohol el decapante y su cera',
  'Vapour burns: no flame or spark, fresh air.': 'El vapor arde: sin llamas ni chispas, aire fresco.',
  'Rags flat outdoors.': 'Trapos extendidos al aire libre.',
  'Glue and clamp loose joints and lifted edges': 'Encolar y apretar uniones flojas y cantos levantados',
  "Fill checks and holes in the wood's colour, proud": 'Rellenar grietas y agujeros del color de la madera, rebosando',
  'Sand bare wood with 80, vacuum off': 'Lijar la madera desnuda con 80, aspirar',
  'Extraction and dust mask.': 'Aspiración y mascarilla antipolvo.',
  'Sand with 120, vacuum off': 'Lijar con 120, aspirar',
  'Sand with 180, vacuum off': 'Lijar con 180, aspirar',
  'Damp the wood to raise the grain, let it dry': 'Humedecer la madera para levantar el repelo, dejarla secar',
  'Sand raised grain off with 220, vacuum off, tack cloth': 'Quitar el repelo con 220, aspirar, bayeta atrapapolvo',
  'Dust mask.': 'Mascarilla antipolvo.',
  'Strain, thin slightly, trial pass, lay on a thin clear coat':
    'Colar, diluir un poco, pasada de prueba, dar una mano fina transparente',
  'Scuff with 320, vacuum off, tack cloth': 'Matizar con 320, aspirar, bayeta atrapapolvo',
  Clamps: 'Sargentos',
  Sander: 'Lijadora',
  spray: 'pistola',
  Sprayer: 'Pistola de pulverizar',
  brush: 'brocha',
  'Drawer boxes and runners': 'Cajas de cajones y guías',
  'Boxes and runners, not fronts: cleaned, runners made good, insides sealed against smell.':
    'Cajas y guías, no los frentes: limpias, con las guías reparadas y el interior sellado contra olores.',
  'No film on what slides; the runners are waxed when the piece is whole again.':
    'Sin película donde desliza; las guías se enceran cuando la pieza vuelve a estar entera.',
  'Vacuum, wash with wrung-out cloths, let the wood dry': 'Aspirar, lavar con paños escurridos, dejar secar la madera',
  'Mould and droppings: respirator.': 'Moho y excrementos: mascarilla respiratoria.',
  'Make runners good: plane, glue and clamp on strips': 'Reparar las guías: cepillar, encolar y apretar listones',
  'Sand sides, bottoms and runners with 120, vacuum off': 'Lijar costados, fondos y guías con 120, aspirar',
  'Sand with 180, vacuum off, tack cloth': 'Lijar con 180, aspirar, bayeta atrapapolvo',
  'Seal insides with shellac, leave the runners bare': 'Sellar interiores con goma laca, dejar desnudas las guías',
  'Hardwax oil': 'Aceite de cera dura',
  'A top stripped, sanded no finer than 180 so that the wood drinks, and oiled twice.':
    'Un tablero decapado, lijado no más fino que 180 para que la madera beba, y aceitado dos veces.',
  'The second coat goes on before the first has shut; after that the first has to be abraded.':
    'La segunda mano va antes de que la primera se haya cerrado; después hay que lijar la primera.',
  'Strip or scrape the old finish': 'Decapar o raspar el acabado viejo',
  'Fill knots and checks with two-part putty, proud':
    'Rellenar nudos y grietas con masilla de dos componentes, rebosando',
  'Gloves.': 'Guantes.',
  'Mix small batches; a large one heats itself.': 'Mezclar poco; mucha cantidad se calienta sola.',
  'Sand with 180, stop there; vacuum off, tack cloth': 'Lijar con 180 y no más; aspirar, bayeta atrapapolvo',
  'Spread oil thin, wait, buff off all that is wet': 'Extender aceite fino, esperar, retirar todo lo húmedo',
  'Oily rags self-ignite.': 'Los trapos con aceite arden solos.',
  'Lidded metal can with water, or flat outdoors, at once.':
    'Bote metálico con tapa y agua, o extendidos al aire libre, enseguida.',
  'Metal hardware, cleaned apart': 'Herrajes, limpios aparte',
  'Pulls, hinges and escutcheons cleaned away from the wood, enamelled from the can and waxed; refitted last of all.':
    'Tiradores, bisagras y bocallaves limpiados lejos de la madera, esmaltados con aerosol y encerados; se montan al final de todo.',
  'For bare brass leave out `enamel`.': 'Para latón desnudo, omita `enamel`.',
  'Soak and brush in degreaser, rinse, dry each part': 'Remojar y cepillar en desengrasante, aclarar, secar cada pieza',
  'Gloves, eye protection.': 'Guantes, protección ocular.',
  'Old paint may hold lead: keep it wet.': 'La pintura vieja puede llevar plomo: manténgala mojada.',
  'Rub bright, key the metal with 320': 'Frotar hasta el brillo, dar mordiente al metal con 320',
  'Wipe with spirit; from now on with gloves': 'Limpiar con alcohol; desde ahora con guantes',
  'Shake two minutes, trial pass, spray thin': 'Agitar dos minutos, pasada de prueba, pulverizar fino',
  'Vapour burns: no flame or spark, fan on, vapour respirator.':
    'El vapor arde: sin llamas ni chispas, ventilador en marcha, mascarilla para vapores.',
  'Wax thinly, let it haze, buff': 'Encerar fino, dejar que se vele, sacar brillo',
  'Milk or chalk-type paint with wax': 'Pintura a la leche o a la tiza con cera',
  'A matt painted finish closed with wax.': 'Un acabado pintado mate cerrado con cera.',
  'Use `materials` to change milk paint for a chalk-type paint.':
    'Use `materials` para cambiar la pintura a la leche por una a la tiza.',
  'Nothing but wax sticks over the wax: be done with all paint first.':
    'Sobre la cera no agarra nada más que cera: termine antes toda la pintura.',
  'Wash with degreaser, rinse twice, let the wood dry':
    'Lavar con desengrasante, aclarar dos veces, dejar secar la madera',
  'Fill dents and holes, proud': 'Rellenar golpes y agujeros, rebosando',
  'Sand dull with 120, filler level, vacuum off': 'Lijar mate con 120, masilla a ras, aspirar',
  'Lead test before old paint; local rules if found.':
    'Prueba de plomo antes que la pintura vieja; normas locales si lo hay.',
  'Seal stains and knots with one thin coat of shellac': 'Sellar manchas y nudos con una mano fina de goma laca',
  'Mix, strain, brush a thin coat and leave it': 'Mezclar, colar, dar una mano fina a brocha y dejarla',
  'Smooth with 220, vacuum off, tack cloth': 'Alisar con 220, aspirar, bayeta atrapapolvo',
  'Smooth with 320, vacuum off, tack cloth': 'Alisar con 320, aspirar, bayeta atrapapolvo',
  'Brush wax in thin, wipe off, let it haze, buff': 'Dar cera fina a brocha, retirar, dejar que se vele, sacar brillo',
  'Waxy cloths dry flat outdoors, then bin.':
    'Los paños con cera se secan extendidos al aire libre, y después a la basura.',
  'Oil-based polyurethane': 'Poliuretano al aceite',
  'Hard-wearing clear finish for chairs, tops and stools: three brushed coats, each scuffed before the next.':
    'Acabado transparente resistente para sillas, tableros y taburetes: tres manos a brocha, cada una matizada antes de la siguiente.',
  'Strip the old finish, pick the turnings clean': 'Decapar el acabado viejo, limpiar los torneados',
  'Knock loose joints apart, clean, glue and clamp': 'Desmontar a golpes uniones flojas, limpiar, encolar y apretar',
  "Fill checks and holes in the wood's colour": 'Rellenar grietas y agujeros del color de la madera',
  'Sand with 220, vacuum off, tack cloth': 'Lijar con 220, aspirar, bayeta atrapapolvo',
  'Stir, never shake; brush thin and tip off': 'Remover, nunca agitar; dar fino a brocha y peinar',
  'No flame.': 'Sin llamas.',
  'Scuff dull with 320, vacuum off, tack cloth': 'Matizar con 320, aspirar, bayeta atrapapolvo',
  'Painted, brushed with a water-borne alkyd enamel': 'Pintado a brocha con esmalte alquídico al agua',
  'Where no gun is at hand or the shape is all edges: beds, frames, panelled cases.':
    'Donde no hay pistola o la forma es toda cantos: camas, armazones, cascos con paneles.',
  'Two-part putty for the holes, caulk for the seams, each after its own time.':
    'Masilla de dos componentes para los agujeros, sellador para las juntas, cada uno a su tiempo.',
  'Glue and clamp loose joints': 'Encolar y apretar uniones flojas',
  'Fill dents and holes with two-part putty, proud':
    'Rellenar golpes y agujeros con masilla de dos componentes, rebosando',
  'Sand dull with 120, putty level, vacuum off': 'Lijar mate con 120, masilla a ras, aspirar',
  'Strain the primer, brush one light coat': 'Colar la imprimación, dar una mano ligera a brocha',
  'Inspect the primer under a raking light, ring flaws': 'Revisar la imprimación con luz rasante, marcar los defectos',
  'Fill ringed flaws with filler of another colour': 'Rellenar los defectos marcados con masilla de otro color',
  'Scuff primer and spots with 220, vacuum off, tack cloth':
    'Matizar imprimación y puntos con 220, aspirar, bayeta atrapapolvo',
  'Caulk open seams and panel edges, tool off': 'Sellar juntas abiertas y cantos de paneles, repasar',
  'Strain, thin slightly, brush enamel and tip off': 'Colar, diluir un poco, dar esmalte a brocha y peinar',
  'Scuff with 320 clear of the caulk, vacuum off, tack cloth':
    'Matizar con 320 sin tocar el sellador, aspirar, bayeta atrapapolvo',
  'Painted, sprayed with a water-borne enamel': 'Pintado a pistola con esmalte al agua',
  'For sound old finish or bare wood that is to be opaque: body, doors, drawer fronts.':
    'Para acabado viejo firme o madera desnuda que ha de quedar opaca: cuerpo, puertas, frentes de cajones.',
  'A light primer is the inspection coat; what it shows is filled again in another colour.':
    'Una imprimación clara es la mano de revisión; lo que muestra se rellena otra vez con otro color.',
  'Flush drawers stay in place and are sprayed with the body.':
    'Los cajones enrasados se quedan puestos y se pulverizan con el cuerpo.',
  'Sheet off insides; flush drawers in place, sheeted off behind':
    'Cubrir interiores; cajones enrasados en su sitio, cubiertos por detrás',
  'Strain, thin slightly, trial pass, prime one light coat':
    'Colar, diluir un poco, pasada de prueba, dar una mano ligera de imprimación',
  'Mask for paint mist, fan drawing away from you.':
    'Mascarilla para la niebla de pintura, ventilador que se la lleve lejos de usted.',
  'Strain, thin slightly, trial pass, spray enamel': 'Colar, diluir un poco, pasada de prueba, pulverizar esmalte',
  'Pull tape and sheets, ease the drawers open a finger': 'Quitar cinta y cubiertas, abrir los cajones un dedo',
  'Shellac seal and lacquer': 'Sellado de goma laca y laca',
  'Open-pored hardwood stripped, grain filled, sealed with dewaxed shellac and sprayed with lacquer, rubbed out and waxed.':
    'Madera dura de poro abierto decapada, con tapaporos, sellada con goma laca desparafinada y pulverizada con laca, pulida y encerada.',
  'Strip the old finish, lightly on veneer': 'Decapar el acabado viejo, con suavidad en la chapa',
  'Sand bare solid wood with 80, vacuum off': 'Lijar la madera maciza desnuda con 80, aspirar',
  'Rub grain filler in, wipe off across when the gloss goes':
    'Meter tapaporos, retirar a contraveta cuando pierde el brillo',
  'Smooth filled grain with 220, vacuum off, tack cloth': 'Alisar el poro relleno con 220, aspirar, bayeta atrapapolvo',
  'Seal with one thin coat of shellac': 'Sellar con una mano fina de goma laca',
  'De-nib with 320, vacuum off, tack cloth': 'Quitar motas con 320, aspirar, bayeta atrapapolvo',
  'Strain, thin slightly, trial pass, spray lacquer': 'Colar, diluir un poco, pasada de prueba, pulverizar laca',
  'Explosive vapour: no flame, spark or heater; fan, respirator, local rules.':
    'Vapor explosivo: sin llamas, chispas ni estufas; ventilador, mascarilla respiratoria, normas locales.',
  'Level with 400, rub out with a fine pad, wipe clean': 'Nivelar con 400, pulir con estropajo fino, limpiar',
  'Lacquer dust burns fast; bag it.': 'El polvo de laca arde deprisa; a una bolsa.',
  'Stained, with an oil topcoat': 'Teñido, con mano de aceite encima',
  'Legs or a top stripped to bare wood, stained and built up with three thin coats of wiping varnish.':
    'Patas o tablero decapados hasta la madera, teñidos y cubiertos con tres manos finas de barniz a muñequilla.',
  'Where something beside them is sprayed, wrap them in paper and low-tack tape by a joining step between `stain` and `oil`.':
    'Donde se pulveriza algo al lado, envuélvalas en papel y cinta de baja adherencia con un paso de unión entre `stain` y `oil`.',
  'Try the stain, wipe it on, wipe the rest off': 'Probar el tinte, darlo con trapo, retirar el resto',
  'Wipe varnish on thin, wipe off what stands wet': 'Dar barniz fino con trapo, retirar lo que quede húmedo',
  'Whole piece with hardware and drawers, one alone': 'Pieza entera con herrajes y cajones, una persona sola',
  'What comes before and after the work on all sections of a case piece: looked over and photographed, taken apart with every screw bagged, cleaned where nobody looks; put together again, runners waxed, photographed, wrapped where it stands.':
    'Lo que va antes y después del trabajo en todas las secciones de un mueble de casco: revisado y fotografiado, desmontado con cada tornillo en su bolsa, limpio donde nadie mira; montado de nuevo, guías enceradas, fotografiado, envuelto donde está.',
  'For a shop in which nobody is there to lift with.': 'Para un taller en el que no hay nadie con quien levantar.',
  'Look over, photograph every face, note each fault': 'Revisar, fotografiar cada cara, anotar cada defecto',
  'Old paint may hold lead: test before anything abrades it.':
    'La pintura vieja puede llevar plomo: pruebe antes de que nada la lije.',
  'Take off hardware, doors, drawers; bag and label': 'Quitar herrajes, puertas, cajones; embolsar y etiquetar',
  'Two lift what is heavy; drawers out first.': 'Lo pesado, entre dos; primero los cajones fuera.',
  'Vacuum and wipe underside, back and insides too': 'Aspirar y limpiar también debajo, detrás y por dentro',
  'Refit doors, drawers and hardware from their bags': 'Montar puertas, cajones y herrajes de sus bolsas',
  'Wax runners and all that slides, buff': 'Encerar guías y todo lo que desliza, sacar brillo',
  'Dust and photograph for the listing, faults too':
    'Quitar el polvo y fotografiar para el anuncio, también los defectos',
  'Wrap where it stands, drawers held shut': 'Envolver donde está, cajones sujetos cerrados',
  'Two lift what is heavy; ask somebody in to lift.': 'Lo pesado, entre dos; llame a alguien para levantar.',
  'Whole piece without hardware': 'Pieza entera sin herrajes',
  'What comes before and after the work on all sections of a table, chair or frame: looked over and photographed, taken apart, cleaned underneath; put together, photographed, wrapped.':
    'Lo que va antes y después del trabajo en todas las secciones de una mesa, silla o armazón: revisado y fotografiado, desmontado, limpio por debajo; montado, fotografiado, envuelto.',
  'Look over, photograph every face, rock the joints': 'Revisar, fotografiar cada cara, mover las uniones',
  'Take loose parts off, bag screws, mark each place': 'Quitar partes sueltas, embolsar tornillos, marcar cada sitio',
  'Two lift what is heavy.': 'Lo pesado, entre dos.',
  'Vacuum and wipe the underside too': 'Aspirar y limpiar también por debajo',
  'Put the parts together, felt under the feet': 'Montar las partes, fieltro bajo los pies',
  'Wrap in blankets that breathe, corners padded': 'Envolver en mantas que transpiren, esquinas acolchadas',
  'Whole piece with hardware and drawers': 'Pieza entera con herrajes y cajones',
  'What comes before and after the work on all sections of a case piece: looked over and photographed, taken apart with every screw bagged, cleaned where nobody looks; put together again, runners waxed, photographed, wrapped.':
    'Lo que va antes y después del trabajo en todas las secciones de un mueble de casco: revisado y fotografiado, desmontado con cada tornillo en su bolsa, limpio donde nadie mira; montado de nuevo, guías enceradas, fotografiado, envuelto.',
  'Wrap in blankets that breathe, drawers held shut': 'Envolver en mantas que transpiren, cajones sujetos cerrados',
  'Two lift, knees bent, way cleared.': 'Levantar entre dos, rodillas dobladas, paso libre.',
};
