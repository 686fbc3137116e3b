import type { Wording } from '../worded.ts';

/** Pages to print. */
export const pages: Readonly<Record<string, Wording>> = {
  'Lead was found in the old paint of this piece. Do not sand, scrape or heat it, keep small children from mouthing it, and follow your local rules.':
    'En la pintura vieja de este mueble se halló plomo. No la lije, raspe ni caliente, evite que los niños pequeños se la lleven a la boca, y siga las normas locales.',
  'The old paint was tested for lead and none was found. A test speaks for the spots that were tested.':
    'La pintura vieja se probó y no se halló plomo. Una prueba vale para los puntos que se probaron.',
  'Old paint on this piece may hold lead and was not tested: do not sand, scrape or heat it.':
    'La pintura vieja de este mueble puede llevar plomo y no se ha probado: no la lije, raspe ni caliente.',
  'The day of hand-over is not planned yet.': 'El día de entrega aún no está planificado.',
  'Ready to hand over: {0} (holds with {1} chance)': 'Lista para entregar: {0} (se cumple con una probabilidad de {1})',
  Finish: 'Acabado',
  'What it can bear, and from when': 'Qué puede soportar, y desde cuándo',
  'Until the last of these days the finish is still hardening: spare it heat, water and rubbing.':
    'Hasta el último de estos días el acabado sigue endureciendo: evítele calor, agua y roces.',
  Care: 'Cuidados',
  Mind: 'Atención',
  'What this card is': 'Qué es esta ficha',
  'Dates are worked out from the finish and the air that was expected; the maker’s label and data sheet of the finish stand above them. Care is common practice.':
    'Las fechas se calculan con el acabado y el aire esperado; la etiqueta y la ficha técnica del fabricante del acabado mandan sobre ellas. Los cuidados son práctica común.',
  ' · {0} of {1}': ' · {0} de {1}',
  'Card for the buyer: {0}': 'Ficha para el comprador: {0}',
  'Finish, day of hand-over, what the piece can bear from when, care and cautions.':
    'Acabado, día de entrega, qué puede soportar el mueble y desde cuándo, cuidados y precauciones.',
  'Wipe up spirits and perfume at once: alcohol softens shellac.':
    'Seque enseguida licores y perfumes: el alcohol ablanda la goma laca.',
  'Use mats under hot dishes and wet glasses: heat and standing water leave white rings.':
    'Ponga salvamanteles bajo platos calientes y vasos mojados: el calor y el agua estancada dejan cercos blancos.',
  'Wipe with a damp cloth; no strong alkaline cleaner.':
    'Limpie con un paño húmedo; sin limpiadores alcalinos fuertes.',
  'Things left standing on it in the first weeks may stick.':
    'Las cosas que queden encima las primeras semanas pueden pegarse.',
  'Wipe with a damp cloth and mild soap.': 'Limpie con un paño húmedo y jabón suave.',
  'A light yellowing with time and in the dark is usual.':
    'Es normal que amarillee un poco con el tiempo y en la oscuridad.',
  'Wipe with a dry or barely damp cloth; oil again when it looks dry.':
    'Limpie con un paño seco o apenas húmedo; vuelva a aceitar cuando se vea seco.',
  'Wipe up water and wine soon.': 'Seque pronto el agua y el vino.',
  'Use mats under hot dishes; keep solvents, nail varnish and rubber feet off it.':
    'Ponga salvamanteles bajo platos calientes; evite disolventes, esmalte de uñas y patas de goma.',
  'Dust with a dry cloth; wax thinly again when it turns dull.':
    'Quite el polvo con un paño seco; encere de nuevo, fino, cuando pierda brillo.',
  'Use mats: heat and standing water mark wax.': 'Ponga salvamanteles: el calor y el agua estancada marcan la cera.',
  'Wipe with a damp cloth and mild soap; no scouring powder.':
    'Limpie con un paño húmedo y jabón suave; sin polvos abrasivos.',
  'Wipe with a barely damp cloth; without a coat of wax or varnish over it, it marks.':
    'Limpie con un paño apenas húmedo; sin una mano de cera o barniz encima, se marca.',
  'A stain without a coat over it wears: keep water off it.': 'Un tinte sin mano encima se desgasta: evítele el agua.',
  'Dust with a soft cloth. No silicone polish: it stops any later finish from holding.':
    'Quite el polvo con un paño suave. Sin abrillantador de silicona: impide que agarre cualquier acabado posterior.',
  'Keep it out of strong sun and away from radiators; steady humidity spares the wood.':
    'Evítele el sol fuerte y los radiadores; una humedad constante cuida la madera.',
  'Lift it by its frame, never by its top, doors or drawers.':
    'Levántelo por su armazón, nunca por el tablero, las puertas o los cajones.',
  'to tick when done': 'por marcar cuando esté hecho',
  '{0}{1}: away at {2}, promised back {3}.': '{0}{1}: fuera en {2}, vuelta prometida {3}.',
  '{0} is off: {1}.': '{0} libra: {1}.',
  '{0} can be had: {1}.': '{0} está disponible: {1}.',
  '{0}: no coating {1}: {2}.': '{0}: sin dar manos {1}: {2}.',
  'No hands-on work.': 'Sin trabajo de manos.',
  'Times, never permission: the label and safety data sheet of the container stand above every time here, and local rules and licensed practice above both.':
    'Tiempos, nunca permiso: la etiqueta y la ficha de datos de seguridad del envase mandan sobre todo tiempo de aquí, y las normas locales y la práctica con licencia, sobre ambas.',
  '{0}, continued': '{0}, continuación',
  'Day sheet, {0}{1}': 'Hoja del día, {0}{1}',
  'Boxes to tick, each with its number on the picture, its time, piece and work.':
    'Casillas por marcar, cada una con su número en el dibujo, su hora, su pieza y su trabajo.',
  '{0} parts': { one: '{0} elemento', other: '{0} elementos' },
  'screws and fittings': 'tornillos y herrajes',
  'bag ___ of ___ · piece has {0}': 'bolsa ___ de ___ · la pieza tiene {0}',
  'Labels, sheet {0} of {1}': 'Etiquetas, hoja {0} de {1}',
  'Piece, section and count of parts, to cut apart.': 'Pieza, sección y número de elementos, para recortar.',
  Labels: 'Etiquetas',
  'hands-on work; its number stands on the day sheet': 'trabajo de manos; su número está en la hoja del día',
  drying: 'secado',
  'window open for the next coat': 'ventana abierta para la mano siguiente',
  'window shuts': 'la ventana se cierra',
  'ready to hand over': 'lista para entregar',
  'closed (drawn narrower)': 'cerrado (dibujado más estrecho)',
  'air not fit for coating, or for some materials: the day sheet says which':
    'aire no apto para dar manos, o para algunos materiales: la hoja del día dice cuáles',
  '{0} work  {1} drying  {2} window open  {3} closed': '{0} trabajo  {1} secado  {2} ventana abierta  {3} cerrado',
  '{0} more days do not fit this width.': {
    one: '{0} día más no cabe en esta anchura.',
    other: '{0} días más no caben en esta anchura.',
  },
  'Nothing in these days for: {0}.': 'Nada en estos días para: {0}.',
  'On the next sheet: {0}.': 'En la hoja siguiente: {0}.',
  '{0}: no coating': '{0}: sin dar manos',
  '{0} not fit for coating {1} to {2}: {3}': '{0}: no apto para dar manos de {1} a {2}: {3}',
  ', {0} late': ', {0} de retraso',
  'ready {0}{1}': 'lista {0}{1}',
  'whole piece': 'pieza entera',
  '{0}: ready to hand over {1} ({2})': '{0}: lista para entregar {1} ({2})',
  '{0} to {1} {2}': 'de {0} a {1} {2}',
  'picture {0} of {1} · ': 'dibujo {0} de {1} · ',
  '{0}planned {1}': '{0}planificado {1}',
  'Rows are sections of pieces, columns are days. {0}. The day sheet after the picture says the same in words.':
    'Las filas son secciones de piezas, las columnas son días. {0}. La hoja del día que sigue al dibujo dice lo mismo con palabras.',
  ', done': ', hecho',
  ', and stays open': ', y sigue abierta',
  '{0}: window for {1} opens {2}{3}': '{0}: la ventana para {1} se abre {2}{3}',
  '{0}: window shuts {1}': '{0}: la ventana se cierra {1}',
  '{0}: drying, {1}': '{0}: secado, {1}',
  clean: 'limpiar',
  repair: 'reparar',
  fill: 'rellenar',
  prime: 'imprimar',
  topcoat: 'acabado',
  dismantle: 'desmontar',
  mask: 'enmascarar',
  unmask: 'desenmascarar',
  refit: 'montar',
  inspect: 'revisar',
};
