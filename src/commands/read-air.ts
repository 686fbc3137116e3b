import { readTempC } from '../files/quantities/temperature.ts';
import { CannotGoOn } from './call.ts';
import { worded } from '../words/worded.ts';

const longest = 64;

/** `13 °C 82 %`, temperature and humidity in either order. */
export function readAir(what: string, text: string): { readonly tempC: number; readonly rhPercent: number } {
  const advice = worded`write temperature and humidity like "13 °C 82 %" or "55 °F 82 %"`;
  const parts =
    text.length > longest
      ? null
      : /^\s*(?:([\d.]{1,8})\s*%(?:\s*rh)?[\s,]+)?(.*?)(?:[\s,]+([\d.]{1,8})\s*%(?:\s*rh)?)?\s*$/iu.exec(text);
  const humidity = parts?.[1] ?? parts?.[3];
  const temp = readTempC(parts?.[2] ?? '');
  if (humidity === undefined) throw new CannotGoOn(worded`${what} "${text}" names no humidity`, advice);
  if (!temp.ok) throw new CannotGoOn(worded`${what} "${text}": the temperature ${temp.why}`, advice);
  const rhPercent = Number(humidity);
  if (!(rhPercent >= 0 && rhPercent <= 100))
    throw new CannotGoOn(worded`${what} "${text}": the humidity lies outside 0 % to 100 %`, advice);
  return { tempC: temp.value, rhPercent };
}

/** A temperature like `12 °C`. */
export function readTemp(what: string, text: string): number {
  const temp = readTempC(text);
  if (temp.ok) return temp.value;
  throw new CannotGoOn(`${what} "${text}" ${temp.why}`, temp.write);
}
