import type { Wording } from '../worded.ts';

/** Parts of recipes. */
export const shippedParts: Readonly<Record<string, Wording>> = {
  'Block stains, dark to light': 'Bloquear manchas, de oscuro a claro',
  'For a dark old finish under a light paint.': 'Para un acabado viejo oscuro bajo una pintura clara.',
  "One coat that stops dye and old stain, before the recipe's primer or paint.":
    'Una mano que frena el color y el tinte viejo, antes de la imprimación o la pintura de la receta.',
  'Strain, lay on one even coat of stain-blocking primer': 'Colar, dar una mano uniforme de imprimación antimanchas',
  'Touch in again where dark comes through': 'Retocar donde asome lo oscuro',
  'Fill gouges': 'Rellenar golpes hondos',
  "Deep damage built up in two-part putty, levelled coarse before the recipe's own sanding.":
    'Daño hondo reconstruido con masilla de dos componentes, nivelado en basto antes del lijado de la receta.',
  'Cut back to sound wood, undercut the edge, vacuum': 'Recortar hasta madera sana, socavar el borde, aspirar',
  'Press two-part putty in, proud': 'Meter a presión masilla de dos componentes, rebosando',
  'Level the putty with 80 on a block, vacuum off': 'Nivelar la masilla con 80 en taco, aspirar',
  'Fill open grain': 'Tapar el poro abierto',
  'For oak, ash, mahogany that is to be smooth under paint or clear.':
    'Para roble, fresno o caoba que ha de quedar liso bajo pintura o transparente.',
  'After the last grit, before the first coat.': 'Tras el último grano, antes de la primera mano.',
  'Patch veneer': 'Reparar chapa',
  'Blisters and losses cut out straight, a patch of the same wood let in and pressed.':
    'Bolsas y faltas cortadas rectas, y un parche de la misma madera encajado y prensado.',
  'Before filling and sanding.': 'Antes de rellenar y lijar.',
  'Cut the loss straight, let in a patch, glue and clamp':
    'Cortar recta la falta, encajar un parche, encolar y apretar',
  'Level the patch with 180 by hand, vacuum off': 'Nivelar el parche con 180 a mano, aspirar',
  'Re-glue joints': 'Reencolar uniones',
  'Loose joints knocked apart, old glue off, glued and clamped.':
    'Uniones flojas desmontadas, sin cola vieja, encoladas y apretadas.',
  'Slot it in before anything is filled.': 'Intercálela antes de rellenar nada.',
  'Knock loose joints apart, old glue off both sides': 'Desmontar uniones flojas, cola vieja fuera por ambos lados',
  'Try it dry, glue, clamp square': 'Probar en seco, encolar, apretar a escuadra',
  'Replace drawer runners': 'Cambiar guías de cajón',
  'Worn runners of the carcass out, new ones of hard straight wood in.':
    'Guías gastadas del casco fuera, y otras nuevas de madera dura y recta dentro.',
  'No film goes on them; they are waxed last.': 'No llevan película; se enceran al final.',
  'Cut new runners to the old line, try each drawer': 'Cortar guías nuevas según la línea vieja, probar cada cajón',
  'Glue and clamp the front end only, the side moves':
    'Encolar y apretar solo el extremo delantero, el costado se mueve',
  'Seal odour': 'Sellar olores',
  'Smoke, mothballs and mice, in boxes and carcasses.': 'Humo, naftalina y ratones, en cajas y cascos.',
  'Aired and washed first; what stays is sealed in with shellac.':
    'Antes aireado y lavado; lo que queda se sella con goma laca.',
  'Scrub insides with degreaser, rinse, leave open to dry':
    'Fregar interiores con desengrasante, aclarar, dejar abierto para secar',
  'Smooth the inside with 180, vacuum off, tack cloth': 'Alisar el interior con 180, aspirar, bayeta atrapapolvo',
  'Seal tannin and knots': 'Sellar tanino y nudos',
  'Oak, cedar, mahogany and pine knots bleed brown through water-borne paint.':
    'Los nudos de roble, cedro, caoba y pino sangran pardo a través de la pintura al agua.',
  'Two thin coats of dewaxed shellac under it.': 'Dos manos finas de goma laca desparafinada debajo.',
  'Lay on a thin coat of shellac, knots twice': 'Dar una mano fina de goma laca, en los nudos dos',
};
