import { at } from '../at.ts';
import type { AirSeries } from '../air/series.ts';
import type { ShopAir } from '../air/shop-air.ts';
import { fitStretches, oncePerLimits } from '../drying/fit-stretches.ts';
import type { Book } from '../model/book.ts';
import { openSpans } from '../model/hours.ts';
import type { Material } from '../model/material.ts';
import { intersect, subtract, unite, type Span, type Spans } from '../time/span.ts';
import type { UnfitHours } from './bench.ts';
import type { Manner } from './say-time.ts';
import { unfitSaid } from './say-unfit.ts';
import { translated, worded } from '../words/worded.ts';

const mostNamed = 3;

/** Can the air forbid it at all? */
export function minds(material: Material): boolean {
  return material.limits !== undefined || material.minFilmTempC !== undefined;
}

interface Unfit {
  readonly material: Material;
  readonly spans: Spans;
  readonly why: readonly string[];
}

function unfitOf(materials: readonly Material[], series: AirSeries, open: Spans): Unfit[] {
  const stretches = oncePerLimits(materials, (material) =>
    open.flatMap((span) => fitStretches(material, series, span.start, span.end)),
  );
  return materials.map((material, i) => {
    const bad = at(stretches, i).filter((s) => !s.fit);
    const why = bad.flatMap((s) => s.why.map((w) => translated(unfitSaid[w.code])));
    return { material, spans: unite(bad), why };
  });
}

function reasons(unfit: readonly Unfit[]): string {
  return [...new Set(unfit.flatMap((u) => u.why))].join(', ');
}

function sayWhom(unfit: readonly Unfit[], of: number): string {
  const names = unfit.map((u) => u.material.name.split(', ')[0] ?? u.material.name);
  return names.length <= mostNamed ? names.join(', ') : worded`${names.length} of ${of} materials`;
}

/**
 * The opening hours of one day in which the air of a room forbids to lay down some or all of `materials`, and why. Which
 * ones, hour by hour and with figures, is for the screen of the air.
 */
export function unfitHours(
  book: Book,
  materials: readonly Material[],
  air: ShopAir,
  day: Span,
  manner: Manner,
): UnfitHours[] {
  const open = intersect(openSpans(book.shop.opening, manner.zone, day.start, day.end), [day]);
  const minding = materials.filter(minds);
  if (minding.length === 0) return [];
  return book.shop.rooms.flatMap((room): UnfitHours[] => {
    const series = air.get(room.id);
    if (series === undefined) return [];
    const unfit = unfitOf(minding, series, open).filter((u) => u.spans.length > 0);
    const forAll = unfit.length === minding.length ? unfit.reduce((all, u) => intersect(all, u.spans), open) : [];
    const some = unfit.filter((u) => subtract(u.spans, forAll).length > 0);
    const forSome = subtract(unite(some.flatMap((u) => u.spans)), forAll);
    const stretches = (spans: Spans, why: string) => spans.map((span) => ({ room: room.id, span, why }));
    const whom = worded` for ${sayWhom(some, minding.length)}`;
    return [...stretches(forAll, reasons(unfit)), ...stretches(forSome, reasons(some) + whom)];
  });
}
