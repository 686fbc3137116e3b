import type { Wording } from '../worded.ts';

/** Commands and their options. */
export const commandLine: Readonly<Record<string, Wording>> = {
  'what to do when, day by day, and what dries meanwhile': 'qué hacer y cuándo, día a día, y qué seca entretanto',
  Plan: 'Planificar',
  'how many days to show (default 7)': 'cuántos días mostrar (por defecto 7)',
  'with a small picture of the days': 'con un pequeño dibujo de los días',
  'plan all anew, however much moves': 'planificar todo de nuevo, por mucho que se mueva',
  'plan all anew, and search as long as that for a better plan':
    'planificar todo de nuevo, y buscar un plan mejor durante ese tiempo',
  'only look: the shop goes on following the plan that it has': 'solo mirar: el taller sigue con el plan que tiene',
  'now, next and after; when to coat; what opens and shuts':
    'ahora, lo siguiente y lo de después; cuándo dar manos; qué se abre y qué se cierra',
  'with all that is to be known for the safety of the work of the day':
    'con todo lo que hay que saber para la seguridad del trabajo del día',
  'when a piece can be touched, carried, wrapped, handed over':
    'cuándo una pieza puede tocarse, llevarse, envolverse, entregarse',
  'every piece in a table to read to a customer': 'todas las piezas en una tabla, para leérsela a un cliente',
  'what holds a step where it is': 'qué retiene un paso donde está',
  'could I take on a piece with these recipes, and when would it be ready':
    '¿podría aceptar una pieza con estas recetas, y cuándo estaría lista?',
  'when it is wanted': 'para cuándo se quiere',
  'area of each section, or of all: "1.2 m2" or "1.2 m2, 0.4 m2" (default 1 m2)':
    'superficie de cada sección, o de todas: "1.2 m2" o "1.2 m2, 0.4 m2" (por defecto 1 m2)',
  'pieces in each section, or in all: 4 or "1, 4" (default 1)':
    'piezas en cada sección, o en todas: 4 o "1, 4" (por defecto 1)',
  'when it comes in (default: now)': 'cuándo llega (por defecto: ahora)',
  'its joining steps (default: as most pieces have them)':
    'sus pasos de unión (por defecto: como la mayoría de las piezas)',
  'what it would bring: weighed against what others lose by waiting':
    'lo que daría: se sopesa con lo que otras pierden por esperar',
  'the plan beside the same with changes, each by itself': 'el plan junto al mismo con cambios, cada uno por separado',
  'a room heated more: garage=+3K': 'una sala con más calefacción: garage=+3K',
  'a room dried: workshop=45%': 'una sala más seca: workshop=45%',
  'more places: bench-1=+1': 'más plazas: bench-1=+1',
  'a new place, so many slots: garage/rack=4': 'un puesto nuevo, con tantas plazas: garage/rack=4',
  'open on a day: 2027-01-16=08:00-16:00': 'abrir un día: 2027-01-16=08:00-16:00',
  'another pair of hands on a day: 2027-01-16=08:00-12:00': 'otra persona un día: 2027-01-16=08:00-12:00',
  'another recipe: washstand/body=painted-brushed': 'otra receta: washstand/body=painted-brushed',
  'another material: washstand/body/oil-primer=bonding-primer':
    'otro material: washstand/body/oil-primer=bonding-primer',
  'without a piece': 'sin una pieza',
  'all changes at once as well': 'también todos los cambios a la vez',
  'what a change costs: helper=40EUR, warmer=12EUR': 'lo que cuesta un cambio: helper=40EUR, warmer=12EUR',
  'make a shop to begin with: asks, or takes it from these options':
    'crear un taller para empezar: pregunta, o lo toma de estas opciones',
  Shop: 'Taller',
  'what the shop is called': 'cómo se llama el taller',
  "time zone, like Europe/Dublin (default: this computer's)":
    'zona horaria, como Europe/Dublin (por defecto: la de este ordenador)',
  'metric or us': 'metric o us',
  'EUR, USD, ...': 'EUR, USD, ...',
  '12 or 24': '12 o 24',
  'monday or sunday': 'monday o sunday',
  'Monday to Friday: "08:00-12:30, 13:15-17:30"': 'de lunes a viernes: "08:00-12:30, 13:15-17:30"',
  'on Saturdays, or closed': 'los sábados, o closed',
  'on Sundays, or closed': 'los domingos, o closed',
  'its rooms, with the word heated: "Workshop heated, Garage"':
    'sus salas, con la palabra heated si tienen calefacción: "Taller heated, Garaje"',
  'coldest and warmest hour of each room: "15 to 20 °C; 4 to 9 °C"':
    'hora más fría y más cálida de cada sala: "15 to 20 °C; 4 to 9 °C"',
  'of each room at its warmest hour: "50 %; 75 %"': 'de cada sala en su hora más cálida: "50 %; 75 %"',
  'benches, floor, rack, to spray in, of each room: "2, 4, 6, 2; 0, 3, 0, 0"':
    'bancos, suelo, estante y sitios para pulverizar de cada sala: "2, 4, 6, 2; 0, 3, 0, 0"',
  'who works there: "Ann, Ben"': 'quién trabaja allí: "Ann, Ben"',
  'who of them sprays': 'quién de ellos pulveriza',
  'how many sprayers': 'cuántas pistolas de pulverizar',
  'how many sanders with extraction': 'cuántas lijadoras con aspiración',
  'how many sets of clamps': 'cuántos juegos de sargentos',
  'no questions: what is not said is as usual': 'sin preguntas: lo que no se dice es lo habitual',
  'only write the schemas for editors into a shop that is there':
    'solo escribir los esquemas para editores en un taller que ya existe',
  'take in a piece: asks what it is, or takes it from these options':
    'recibir una pieza: pregunta qué es, o lo toma de estas opciones',
  'what it is called': 'cómo se llama',
  'short name, for its file and for commands': 'nombre corto, para su archivo y para las órdenes',
  'chest, table, chair, cabinet, bed or other': 'chest, table, chair, cabinet, bed u other',
  'overall measures: "90 x 45 x 80 cm"': 'medidas totales: "90 x 45 x 80 cm"',
  'how many alike, of chairs': 'cuántas iguales, si son sillas',
  'how many drawers': 'cuántos cajones',
  'how many doors': 'cuántas puertas',
  'how many pulls, hinges and other metal parts': 'cuántos tiradores, bisagras y otros herrajes',
  'areas instead of the estimates: "top=1.2 m2, base=0.9 m2"':
    'superficies en lugar de las estimadas: "top=1.2 m2, base=0.9 m2"',
  'pine, oak, ash, ...': 'pine, oak, ash, ...',
  'what is on it: bare, clear, paint, wax-or-oil or unknown':
    'qué lleva puesto: bare, clear, paint, wax-or-oil o unknown',
  'may it hold lead: no, yes, tested-none or tested-found': 'puede llevar plomo: no, yes, tested-none o tested-found',
  'day of the lead test (default: today)': 'día de la prueba de plomo (por defecto: hoy)',
  'joints-loose, veneer-loose, runner-missing, gouges, odour; with a section: gouges=top':
    'joints-loose, veneer-loose, runner-missing, gouges, odour; con una sección: gouges=top',
  'recipe that is wanted: painted-brushed, or "painted-brushed, top=hardwax-oil"':
    'receta que se quiere: painted-brushed, o "painted-brushed, top=hardwax-oil"',
  'yes: a dark finish goes under a light colour': 'yes: un acabado oscuro va bajo un color claro',
  'when it comes in (default: today)': 'cuándo llega (por defecto: hoy)',
  'what it cost': 'lo que costó',
  'what you hope to get for it': 'lo que espera sacar por ella',
  'are my files right, and if not, where': 'si mis archivos están bien y, si no, dónde fallan',
  'set aside what is broken in the journal and the plan; a copy is kept':
    'apartar lo que está roto en el diario y el plan; se guarda una copia',
  'the air of each room, and the hours fit for coating': 'el aire de cada sala, y las horas aptas para dar manos',
  'how many days to show (default 2)': 'cuántos días mostrar (por defecto 2)',
  'what the meter says: "13 °C 82 %" (needs no shop)': 'lo que marca el medidor: "13 °C 82 %" (no necesita taller)',
  'how warm the surface of the work is: "12 °C"': 'a qué temperatura está la superficie de la pieza: "12 °C"',
  'what if the same air were heated: "16 °C"': 'qué pasaría si se calentara ese mismo aire: "16 °C"',
  'what to buy, how much, and by which day': 'qué comprar, cuánto y para qué día',
  'only for work that begins until then': 'solo para el trabajo que empieza hasta entonces',
  'with the steps that use it': 'con los pasos que lo usan',
  'what a piece has cost, the hours in it, the price below which it loses':
    'lo que ha costado una pieza, sus horas, y el precio por debajo del cual pierde',
  'a step is done': 'un paso está hecho',
  Journal: 'Diario',
  'when it began (default: as entered with begun, else its usual time before the end)':
    'cuándo empezó (por defecto: lo anotado con begun, si no su tiempo habitual antes del final)',
  'when it was over (default: now)': 'cuándo terminó (por defecto: ahora)',
  'who did it (default: as planned)': 'quién lo hizo (por defecto: según el plan)',
  'how much of its material it took: "0.35 L" (for what the piece costs)':
    'cuánto material llevó: "0.35 L" (para lo que cuesta la pieza)',
  'what the meter said: "18 °C 55 %"': 'lo que marcaba el medidor: "18 °C 55 %"',
  'a step is begun and goes on': 'un paso ha empezado y sigue',
  'how a film looks: wet, tacky, dry or hard': 'cómo se ve una película: wet, tacky, dry o hard',
  'a step cannot be done before a time': 'un paso no puede hacerse antes de una hora',
  'a step is left out': 'un paso se omite',
  'a step is to be done once more': 'un paso ha de hacerse otra vez',
  'a coat failed: runs, fish-eyes, scratched-through, blush, wrinkles, dust-nibs':
    'una mano ha fallado: runs, fish-eyes, scratched-through, blush, wrinkles, dust-nibs',
  'the lead test of the old paint: found, or none': 'la prueba de plomo de la pintura vieja: found o none',
  'take back the last entry of the journal': 'retirar la última entrada del diario',
  'the plan for the calendar of a phone': 'el plan para el calendario de un teléfono',
  Share: 'Compartir',
  'write the calendar to this file (.ics), or - for standard output':
    'escribir el calendario en este archivo (.ics), o - para la salida estándar',
  'serve it for a phone to subscribe to, on this machine only':
    'servirlo para que un teléfono se suscriba, solo en este equipo',
  'serve it in the local network': 'servirlo en la red local',
  'serve it at this address': 'servirlo en esta dirección',
  'serve it at this port (default 47631)': 'servirlo en este puerto (por defecto 47631)',
  'stop serving after this long, e.g. "10 min"': 'dejar de servir al cabo de este tiempo, p. ej. "10 min"',
  'make the address given out so far worthless': 'anular la dirección dada hasta ahora',
  'only work, drying, window, ready, appointment, away, off: one or several':
    'solo work, drying, window, ready, appointment, away, off: una o varias',
  'only this piece': 'solo esta pieza',
  'only what this hand does': 'solo lo que hace esta persona',
  'how long before a window shuts its alarm rings (default 60)':
    'cuánto antes de cerrarse una ventana suena su aviso (por defecto 60)',
  'a page to print: the week as a picture with its day sheet, a card for a buyer, or labels':
    'una página para imprimir: la semana en un dibujo con su hoja del día, una ficha para el comprador, o etiquetas',
  'write the page to this file, or - for standard output (default: wall.html, card-PIECE.html, labels.html)':
    'escribir la página en este archivo, o - para la salida estándar (por defecto: wall.html, card-PIECE.html, labels.html)',
  'first day to show (default: today)': 'primer día que mostrar (por defecto: hoy)',
  'a card for the buyer of this piece': 'una ficha para el comprador de esta pieza',
  'labels for sections and bags of hardware': 'etiquetas para las secciones y las bolsas de herrajes',
  'a script for bash, zsh or fish that completes commands, options, pieces and steps':
    'un script para bash, zsh o fish que completa órdenes, opciones, piezas y pasos',
  Shell: 'Terminal',
};
