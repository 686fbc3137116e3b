import { at } from '../at.ts';
import type { AirSeries } from '../air/series.ts';
import { fitOutlook, oncePerLimits, type StretchToMend } from '../drying/fit-stretches.ts';
import type { Material } from '../model/material.ts';
import type { Minute } from '../time/span.ts';
import { grouped } from './grouped.ts';

/** A material and the hours that are fit for it. */
export interface FitOf {
  readonly material: Material;
  readonly stretches: readonly StretchToMend[];
}

/** Materials with the hours of `from` to `to` that are fit for them in this air, grouped by what `alike` says of each. */
export function fitGroups(
  materials: readonly Material[],
  air: AirSeries,
  from: Minute,
  to: Minute,
  alike: (stretch: StretchToMend) => string,
): FitOf[][] {
  const outlooks = oncePerLimits(materials, (material) => fitOutlook(material, air, from, to));
  const each = materials.map((material, i) => ({ material, stretches: at(outlooks, i) }));
  return [...grouped(each, ({ stretches }) => stretches.map(alike).join('\n')).values()];
}
