import { openSpans } from '../model/hours.ts';
import type { Shop } from '../model/shop.ts';
import { lengthOf, type Span } from '../time/span.ts';

/**
 * Minutes of work in a span that the journal names: without the breaks of the opening hours that lie wholly inside, so
 * that lunch and nights do not count, and who works late is believed.
 */
export function workedMinutes({ opening, timeZone }: Pick<Shop, 'opening' | 'timeZone'>, span: Span): number {
  const open = openSpans(opening, timeZone, span.start, span.end);
  const breaks = open.flatMap(({ end }, i) => {
    const next = open[i + 1];
    return next === undefined || end < span.start || next.start > span.end ? [] : [{ start: end, end: next.start }];
  });
  return lengthOf([span]) - lengthOf(breaks);
}
