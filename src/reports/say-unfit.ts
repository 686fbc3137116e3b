import type { Breach, BreachCode } from '../drying/air-limits.ts';
import type { Remedy } from '../drying/remedy.ts';
import { fahrenheit, sayPercent, sayTemp, sayTempDifference } from './say-quantity.ts';
import { sayWork, type Manner } from './say-time.ts';
import { joinedByAnd, phrase, worded } from '../words/worded.ts';

type Units = Pick<Manner, 'units'>;

/** Two figures with as few decimals as tell them apart, `least` or more: never "10 °C, wants 10 °C". */
function toldApart(
  is: number,
  limit: number,
  say: (value: number, decimals: number) => string,
  least = 0,
): [string, string] {
  const decimals = [least, least + 1].find((d) => say(is, d) !== say(limit, d)) ?? least + 2;
  return [say(is, decimals), say(limit, least)];
}

/** How far a surface is above the dew point, and how far it must be. */
export function marginToldApart(is: number, limit: number, units: Units): [string, string] {
  return toldApart(is, limit, (v, d) => sayTempDifference(v, units, d), 1);
}

/** Why a coat may not go on: what is, and what it would have to be. */
export function sayUnfit({ code, is, limit }: Breach, units: Units): string {
  const temps = toldApart(is, limit, (v, d) => sayTemp(v, units, d)).join(worded`, wants `);
  const percents = toldApart(is, limit, sayPercent).join(worded`, wants `);
  switch (code) {
    case 'air-too-cold':
      return worded`too cold (${temps})`;
    case 'air-too-warm':
      return worded`too warm (${temps} at most)`;
    case 'surface-too-cold':
      return worded`work too cold (${temps})`;
    case 'surface-too-warm':
      return worded`work too warm (${temps} at most)`;
    case 'air-too-dry':
      return worded`too dry (${percents})`;
    case 'air-too-damp':
      return worded`too damp (${percents} at most)`;
    case 'near-dew-point': {
      const [above, wanted] = marginToldApart(is, limit, units);
      return worded`too near the dew point (${above} above, wants ${wanted})`;
    }
    case 'film-does-not-form':
      return worded`too cold for a film to form (${temps})`;
    case 'cold-ahead':
      return worded`too cold soon after (${temps})`;
    case 'will-not-dry':
      return worded`too damp to dry (${sayPercent(is)})`;
  }
}

/** The same without the figures. */
export const unfitSaid: Readonly<Record<BreachCode, string>> = {
  'air-too-cold': phrase('too cold'),
  'air-too-warm': phrase('too warm'),
  'surface-too-cold': phrase('work too cold'),
  'surface-too-warm': phrase('work too warm'),
  'air-too-dry': phrase('too dry'),
  'air-too-damp': phrase('too damp'),
  'near-dew-point': phrase('near the dew point'),
  'film-does-not-form': phrase('too cold'),
  'cold-ahead': phrase('too cold soon after'),
  'will-not-dry': phrase('too damp'),
};

/** `10 °C`, `7.5 °C`; `50 °F`, `45.5 °F`. */
function wholeOrTenths(tempC: number, units: Units): string {
  const shown = units.units === 'us' ? fahrenheit(tempC) : tempC;
  return sayTemp(tempC, units, Math.abs(shown - Math.round(shown)) < 0.05 ? 0 : 1);
}

/**
 * What would make it fit, and by when that would have to be: `heat to 16 °C and dry the air to 60 % by 08:00, and keep 10 °C
 * or more for 24 h after`.
 */
export function sayRemedy({ heatToC, dryToRhPercent, wait, thenKeep }: Remedy, units: Units, by?: string): string {
  if (wait === true) return worded`let the work warm up with the room`;
  const done = joinedByAnd([
    ...(heatToC === undefined ? [] : [worded`heat to ${wholeOrTenths(heatToC, units)}`]),
    ...(dryToRhPercent === undefined ? [] : [worded`dry the air to ${sayPercent(dryToRhPercent)}`]),
  ]);
  const kept =
    thenKeep === undefined
      ? ''
      : worded`, and keep ${wholeOrTenths(thenKeep.tempC, units)} or more for ${sayWork(thenKeep.hours * 60)} after the coat`;
  return `${done}${by === undefined ? '' : worded` by ${by}`}${kept}`;
}

/** Of reasons that come to the same only the plainer is said. */
const sameAs: Readonly<Partial<Record<BreachCode, readonly BreachCode[]>>> = {
  'surface-too-cold': ['air-too-cold'],
  'surface-too-warm': ['air-too-warm'],
  'film-does-not-form': ['air-too-cold', 'surface-too-cold'],
  'will-not-dry': ['air-too-damp'],
};

/** All that forbids a coat: each reason with its figures, but for what another says as well. */
export function sayReasons(why: readonly Breach[], units: Units): string {
  const codes = new Set(why.map((w) => w.code));
  const plain = why.filter(({ code }) => !(sameAs[code] ?? []).some((other) => codes.has(other)));
  return plain.map((w) => sayUnfit(w, units)).join(', ');
}
