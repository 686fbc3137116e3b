import { WHOLE } from '../model/expand.ts';
import type { Span } from '../time/span.ts';
import { pieceCell, under, type Bench } from './bench.ts';
import { datedIn, sayEnd, sayLate, sayLoad, sayPart, type Dated } from './dated.ts';
import { painted, type Cell } from './layout.ts';
import { sayClock, sayDay, sayMomentSeenOn } from './say-time.ts';
import { joinedByAnd, worded } from '../words/worded.ts';

function datedRow(dated: Dated, day: Span, bench: Bench): Cell[] {
  const { look, manner, names, plan, book } = bench;
  const { quiet, strong, warn } = look.paint;
  const when = (minute: number) => sayMomentSeenOn(day.start, minute, manner);
  switch (dated.kind) {
    case 'appointment': {
      const { what, hands } = dated.appointment;
      const late = sayLate(dated.appointment, plan, names, when);
      return [
        painted(strong, sayPart(dated.span, day, manner)),
        worded`appointment`,
        under(
          [what, ...sayLoad(dated.appointment, names)].join(', '),
          late.map((text) => painted(warn, text)),
        ),
        book.shop.hands.length > 1 ? painted(quiet, joinedByAnd(hands.map(names.hand))) : '',
      ];
    }
    case 'away': {
      const { span, at, piece, section = WHOLE } = dated;
      const leaves = span.start >= day.start ? worded`leaves ${sayClock(span.start, manner)}, ` : '';
      const back = sayEnd(span.end, manner, when, (t) => sayDay(t, manner));
      return [
        painted(quiet, worded`away`),
        pieceCell({ piece, section }, bench),
        worded`at ${at}, ${leaves}promised back ${back}`,
        '',
      ];
    }
    case 'off':
      return [painted(quiet, worded`off`), names.hand(dated.hand), sayPart(dated.span, day, manner), ''];
    case 'open':
      return [painted(quiet, worded`to be had`), names.room(dated.room), sayPart(dated.span, day, manner), ''];
  }
}

/** What is fixed on a day: appointments, pieces away, days off, hours of hired rooms. */
export function datedRows(day: Span, bench: Bench): Cell[][] {
  return datedIn(day, bench.book).map((dated) => datedRow(dated, day, bench));
}
