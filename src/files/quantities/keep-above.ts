import { readHours } from './duration.ts';
import { LONGEST_QUANTITY, read, refuse, type Read } from './read.ts';
import { readTempC } from './temperature.ts';
import { worded } from '../../words/worded.ts';

/** `10 °C for 24 h` */
export function readKeepAbove(text: string): Read<{ tempC: number; hours: number }> {
  const write = worded`write a temperature and for how long, like 10 °C for 24 h`;
  const [tempText, hoursText, ...rest] = text.length > LONGEST_QUANTITY ? [] : text.split(' for ');
  if (tempText === undefined || hoursText === undefined || rest.length > 0)
    return refuse(worded`does not say for how long`, write);
  const temp = readTempC(tempText.trim());
  if (!temp.ok) return temp;
  const hours = readHours(hoursText.trim());
  return hours.ok ? read({ tempC: temp.value, hours: hours.value }) : hours;
}
