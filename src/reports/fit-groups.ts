import type { AirSeries } from '../air/series.ts';
import { fitOutlook, type StretchToMend } from '../drying/outlook.ts';
import type { Material } from '../model/material.ts';
import type { Minute } from '../time/span.ts';
import { grouped } from './grouped.ts';

/** A material and the hours that are fit for it. */
export interface FitOf {
  readonly material: Material;
  readonly stretches: readonly StretchToMend[];
}

const lookMinutes = 30;

/** Materials with the hours of `from` to `to` that are fit for them in this air, grouped by what `alike` says of each. */
export function fitGroups(
  materials: readonly Material[],
  air: AirSeries,
  from: Minute,
  to: Minute,
  alike: (stretch: StretchToMend) => string,
): FitOf[][] {
  const each = materials.map((material) => ({ material, stretches: fitOutlook(material, air, from, to, lookMinutes) }));
  return [...grouped(each, ({ stretches }) => stretches.map(alike).join('\n')).values()];
}
