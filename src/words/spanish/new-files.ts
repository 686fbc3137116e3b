import type { Wording } from '../worded.ts';

/** Comments of the files that are written for a new shop and a new piece. */
export const newFiles: Readonly<Record<string, Wording>> = {
  'taken as usual: {0}': 'tomado como habitual: {0}',
  'to be coated: the sum of the above': 'superficie que lleva mano: la suma de lo anterior',
  'to be coated, as you measured it': 'superficie que lleva mano, según su medida',
  'how many, for the minutes that each takes': 'cuántos, por los minutos que lleva cada uno',
  'of the wood: how fast it gets as warm as the room': 'de la madera: lo deprisa que se templa como la sala',
  'cannot be taken off it': 'no puede separarse de ella',
  'steps of the recipe left out': 'pasos de la receta que se omiten',
  'parts slotted into the recipe': 'partes intercaladas en la receta',
  'the old finish holds no lead': 'el acabado viejo no lleva plomo',
  'follow local rules and licensed practice': 'siga las normas locales y la práctica con licencia',
  'tested, see below': 'probado, véase abajo',
  'lead: what disturbs the old finish stays out of the plan':
    'plomo: lo que altera el acabado viejo queda fuera del plan',
  'no lead: sanding may go on': 'sin plomo: puede lijarse',
  'nothing that disturbs the old finish is planned before its test:':
    'nada que altere el acabado viejo se planifica antes de su prueba:',
  'drybench lead-test {0} none    (or: found)': 'drybench lead-test {0} none    (o: found)',
  'Taken in on {0}{1}.': 'Recibida el {0}{1}.',
  'Change what you like; `drybench check` says whether it is still right.':
    'Cambie lo que quiera; `drybench check` dice si sigue estando bien.',
  'as the bench sheet calls it': 'como la llama la hoja del banco',
  'to be handed over by then': 'para entregar antes de entonces',
  'what you hope to get': 'lo que espera sacar',
  'what you paid for it': 'lo que pagó por ella',
  'steps before and after the work on all sections': 'pasos antes y después del trabajo en todas las secciones',
  'Not planned: {0}.': 'Sin planificar: {0}.',
  heated: 'con calefacción',
  'not heated': 'sin calefacción',
  '    Two points of a day. The humidity of the cold one is reckoned: the same water in colder air.':
    '    Dos puntos de un día. La humedad del frío se calcula: la misma agua en aire más frío.',
  '    Better is what a logger wrote: `air: air/NAME.csv`, with columns time, temperature and humidity.':
    '    Mejor es lo que escribió un registrador: `air: air/NOMBRE.csv`, con columnas de hora, temperatura y humedad.',
  bench: 'banco',
  floor: 'suelo',
  'drying rack': 'estante de secado',
  'spray corner': 'rincón de pulverizar',
  'for all it sprays in one go': 'para todo lo que pulveriza de una vez',
  'Sanding block': 'Taco de lijar',
  "the recipes' minutes are for a machine: by hand it takes longer":
    'los minutos de las recetas son para una máquina: a mano se tarda más',
  'with extraction': 'con aspiración',
  'Set of clamps': 'Juego de sargentos',
  'in use until the glue has set': 'en uso hasta que la cola ha fraguado',
  'what only some can do': 'lo que solo algunos saben hacer',
  'Your shop. Change what you like; `drybench check` says whether it is still right.':
    'Su taller. Cambie lo que quiera; `drybench check` dice si sigue estando bien.',
  'whose wall clock all times here are of': 'de cuyo reloj de pared son todas las horas de aquí',
  'en or es, for what is shown': 'en o es, para lo que se muestra',
  '12 or 24 hours': '12 o 24 horas',
  'a safe date is one that holds with this chance': 'una fecha segura es la que se cumple con esta probabilidad',
  'work is planned inside these hours only': 'el trabajo se planifica solo dentro de estas horas',
  '  A single day goes by its date, like  2027-12-24: closed':
    '  Un día suelto va por su fecha, como  2027-12-24: closed',
  'each has its own air, dust and paint mist': 'cada una tiene su propio aire, polvo y niebla de pintura',
  'places to work and dry at; slots: how many pieces at a time':
    'sitios donde trabajar y secar; slots: cuántas piezas a la vez',
  'the names that the recipes use': 'los nombres que usan las recetas',
  'who works here; `hours:` as above for who is not always there':
    'quién trabaja aquí; `hours:` como arriba para quien no está siempre',
  'What is on the shelf, for shopping lists, like': 'Lo que hay en el estante, para las listas de la compra, como',
  'stock: { water-borne-acrylic-enamel: 2.5 L }': 'stock: { water-borne-acrylic-enamel: 2.5 L }',
};
