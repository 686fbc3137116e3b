import type { Wording } from '../worded.ts';

/** Air and drying: records, readings, what hinders a coat; dates and times. */
export const air: Readonly<Record<string, Wording>> = {
  time: 'hora',
  temperature: 'temperatura',
  humidity: 'humedad',
  'a logger that keeps winter time needs stamps with an offset, e.g. 2027-07-11T07:00+00:00':
    'un registrador que sigue en hora de invierno necesita marcas con su desfase, p. ej. 2027-07-11T07:00+00:00',
  '"{0}" does not exist on this clock; the row was left out': '"{0}" no existe en este reloj; se ha omitido la fila',
  '{0} "{1}" is no time': '{0} "{1}" no es una hora ni una fecha',
  '"{0}" is no time: {1}': '"{0}" no es una hora: {1}',
  'write a time like 2027-01-11T07:30': 'escriba una hora como 2027-01-11T07:30',
  '"{0}" is no temperature': '"{0}" no es una temperatura',
  'write a number like 8.5': 'escriba un número como 8.5',
  'no room has {0} °{1}': 'ninguna sala está a {0} °{1}',
  'is it °F?': '¿son °F?',
  '"{0}" is no humidity': '"{0}" no es una humedad',
  'write a number like 82': 'escriba un número como 82',
  'humidity of {0} is outside 0 to 100 %': 'la humedad de {0} está fuera de 0 a 100 %',
  'write percent, e.g. 82': 'escriba un porcentaje, p. ej. 82',
  'the time of day is missing': 'falta la hora del día',
  'no record yet: its first 24 hours stand in': 'aún no hay registro: valen en su lugar sus primeras 24 horas',
  'no record yet: its first value stands in': 'aún no hay registro: vale en su lugar su primer valor',
  'hole in the record: the same hours of the nearest day on record stand in':
    'hueco en el registro: valen las mismas horas del día registrado más cercano',
  'past the record: its last 24 hours repeat': 'pasado el registro: se repiten sus últimas 24 horas',
  'past the record: its last value stands in': 'pasado el registro: vale su último valor',
  'outdoors: {0}': 'exterior: {0}',
  'begin with a heading like time,temp_c,rh and go on with rows like 2027-01-11T07:00,8.5,82':
    'empiece con un encabezado como time,temp_c,rh y siga con filas como 2027-01-11T07:00,8.5,82',
  'every humidity is 1 or less': 'todas las humedades son 1 o menos',
  'write humidity in percent, not as a fraction': 'escriba la humedad en porcentaje, no como fracción',
  'there is a heading but no reading': 'hay encabezado pero ninguna lectura',
  'the file holds nothing': 'el archivo no contiene nada',
  ', no ': ' ni de ',
  'the heading names no {0} column': 'en el encabezado no hay columna de {0}',
  'more than {0} rows': 'más de {0} filas',
  'keep the weeks that matter': 'deje solo las semanas que importan',
  'too many faults: the rest was not read': 'demasiados fallos: el resto no se ha leído',
  'line {0} has the same time with another reading; this one was taken':
    'la línea {0} tiene la misma hora con otra lectura; se ha tomado esta',
  'give each time one row': 'dé una sola fila a cada hora',
  'write °C or °F into the heading, e.g. temp_c': 'escriba °C o °F en el encabezado, p. ej. temp_c',
  'nothing names the unit of temperature: °C was taken': 'nada indica la unidad de temperatura: se han tomado °C',
  '{0} of {1} rows have no reading': '{0} de {1} filas no tienen lectura',
  'they are filled as holes': 'se rellenan como huecos',
  'nothing on record for {0} h before this row': 'nada registrado en las {0} h anteriores a esta fila',
  'the same hours of the nearest day stand in': 'valen las mismas horas del día más cercano',
  'frost point': 'punto de escarcha',
  'dew point': 'punto de rocío',
  'the surface is {0} K below the {1}: water settles on it':
    'la superficie está {0} K por debajo del {1}: el agua se deposita en ella',
  'the surface is {0} K above the {1}; it needs {2} K (ISO 8502-4, for steel)':
    'la superficie está {0} K por encima del {1}; necesita {2} K (ISO 8502-4, para acero)',
  'humidity of {0} % is above {1} %': 'la humedad de {0} % supera el {1} %',
  'the surface is at or below freezing': 'la superficie está a cero grados o menos',
  'the {0} is {1} K below the air: shellac and lacquer may blush under {2} K':
    'el {0} está {1} K por debajo del aire: la goma laca y la laca pueden velarse con menos de {2} K',
  'air at {0} % dries water-borne coats very fast: keep a wet edge':
    'el aire al {0} % seca muy deprisa las manos al agua: mantenga el borde húmedo',
  'air at {0} is colder than {1}': 'el aire a {0} está más frío que {1}',
  'air at {0} is warmer than {1}': 'el aire a {0} está más cálido que {1}',
  'surface at {0} is colder than {1}': 'la superficie a {0} está más fría que {1}',
  'surface at {0} is warmer than {1}': 'la superficie a {0} está más cálida que {1}',
  'humidity of {0} is below {1}': 'la humedad de {0} está por debajo de {1}',
  'humidity of {0} is above {1}': 'la humedad de {0} está por encima de {1}',
  'surface is {0} above the dew point; it needs {1}':
    'la superficie está {0} por encima del punto de rocío; necesita {1}',
  'at {0} no film forms; it needs more than {1}': 'a {0} no se forma película; necesita más de {1}',
  'air falls to {0} too soon; it must stay at {1} or above':
    'el aire baja a {0} demasiado pronto; debe seguir a {1} o más',
  'at {0} the air takes up hardly any water: it will not dry': 'a {0} el aire apenas toma agua: no secará',
  'write a date and time like 2027-01-11T07:30, or a date like 2027-01-11':
    'escriba una fecha y hora como 2027-01-11T07:30, o una fecha como 2027-01-11',
  'there is no such day or time; write one like 2027-01-11 or 2027-01-11T07:30':
    'no existe ese día u hora; escriba uno como 2027-01-11 o 2027-01-11T07:30',
  'the year must lie between 1970 and 2199': 'el año debe estar entre 1970 y 2199',
  'the clock skips that time; write {0} or {1} on that day': 'el reloj se salta esa hora; escriba {0} o {1} de ese día',
  'the clock shows {0} twice that day; the first was taken ({1})':
    'el reloj muestra {0} dos veces ese día; se ha tomado la primera ({1})',
};
