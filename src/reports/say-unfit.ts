import type { Breach, BreachCode } from '../drying/air-limits.ts';
import type { Remedy } from '../drying/remedy.ts';
import { sayPercent, sayTemp, sayTempDifference } from './say-quantity.ts';
import type { Manner } from './say-time.ts';

type Units = Pick<Manner, 'units'>;

/** Why a coat may not go on: what is, and what it would have to be. */
export function sayUnfit({ code, is, limit }: Breach, units: Units): string {
  const temps = `${sayTemp(is, units)}, wants ${sayTemp(limit, units)}`;
  switch (code) {
    case 'air-too-cold':
      return `too cold (${temps})`;
    case 'air-too-warm':
      return `too warm (${temps} at most)`;
    case 'surface-too-cold':
      return `work too cold (${temps})`;
    case 'surface-too-warm':
      return `work too warm (${temps} at most)`;
    case 'air-too-dry':
      return `too dry (${sayPercent(is)}, wants ${sayPercent(limit)})`;
    case 'air-too-damp':
      return `too damp (${sayPercent(is)}, wants ${sayPercent(limit)} at most)`;
    case 'near-dew-point':
      return `too near the dew point (${sayTempDifference(is, units)} above, wants ${sayTempDifference(limit, units)})`;
    case 'film-does-not-form':
      return `too cold for a film to form (${temps})`;
    case 'cold-ahead':
      return `too cold soon after (${temps})`;
    case 'will-not-dry':
      return `too damp to dry (${sayPercent(is)})`;
  }
}

/** The same without the figures. */
export const unfitSaid: Readonly<Record<BreachCode, string>> = {
  'air-too-cold': 'too cold',
  'air-too-warm': 'too warm',
  'surface-too-cold': 'work too cold',
  'surface-too-warm': 'work too warm',
  'air-too-dry': 'too dry',
  'air-too-damp': 'too damp',
  'near-dew-point': 'near the dew point',
  'film-does-not-form': 'too cold',
  'cold-ahead': 'too cold soon after',
  'will-not-dry': 'too damp',
};

/** What would make it fit: `heat to 16 °C and dry to 60 %`. */
export function sayRemedy({ heatToC, dryToRhPercent, wait }: Remedy, units: Units): string {
  if (wait === true) return 'let the work warm up with the room';
  return [
    ...(heatToC === undefined ? [] : [`heat to ${sayTemp(heatToC, units, 1)}`]),
    ...(dryToRhPercent === undefined ? [] : [`dry the air to ${sayPercent(dryToRhPercent)}`]),
  ].join(' and ');
}
