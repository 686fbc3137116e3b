import { at } from '../at.ts';
import { fitOutlook, oncePerLimits } from '../drying/fit-stretches.ts';
import { outlook } from '../drying/outlook.ts';
import { type Degrees, inWords } from '../drying/why-unfit.ts';
import { isoWriter } from '../time/iso.ts';
import type { RoomAir } from './room-air.ts';
import { fahrenheit, fahrenheitApart } from './say-quantity.ts';
import type { Manner } from './say-time.ts';
import { minds } from './unfit-hours.ts';

const us: Degrees = {
  degrees: (tempC) => `${fahrenheit(tempC).toFixed(1)} °F`,
  apart: (kelvin) => `${fahrenheitApart(kelvin).toFixed(1)} °F`,
};

/** The air of a room by the hour, and the hours fit for each material: times ISO 8601, °C, percent, Pa; words in the units of the shop. */
export function airDocument(
  id: string,
  { name, series, days, materials }: RoomAir,
  { zone, units }: Pick<Manner, 'zone' | 'units'>,
) {
  const iso = isoWriter(zone);
  const from = days[0]?.start ?? 0;
  const to = days.at(-1)?.end ?? from;
  const minding = materials.filter(minds);
  const outlooks = oncePerLimits(minding, (material) => fitOutlook(material, series, from, to));
  return {
    id,
    name,
    hours: outlook(series, from, to).map(({ minute, ...rest }) => ({ time: iso(minute), ...rest })),
    fit: minding.map((material, i) => ({
      material: material.id,
      stretches: at(outlooks, i).map((s) => ({
        ...s,
        ...(units === 'us' && { why: inWords(s.why, us) }),
        start: iso(s.start),
        end: iso(s.end),
      })),
    })),
    notes: series.notes.map((n) => ({ ...n, from: iso(n.from), to: iso(n.to) })),
  };
}
