import type { Answer, Delayed, Offer } from '../planning/promise.ts';
import { isoWriter } from '../time/iso.ts';
import { paragraph } from './layout.ts';
import type { Look } from './look.ts';
import { sayChance } from './say-quantity.ts';
import { sayDeadline, sayLength, sayMoment, type Manner } from './say-time.ts';
import { worded } from '../words/worded.ts';

function delayedLines(delayed: readonly Delayed[], manner: Manner, look: Look): string[] {
  return delayed.flatMap(({ name, wantedBy, lateHours, lateHoursAnyway }) => {
    const more = lateHoursAnyway > 0 ? worded`, ${sayLength((lateHours - lateHoursAnyway) * 60)} more than anyway` : '';
    const text = worded`${name}: ${sayLength(lateHours * 60)} late${more} (wanted by ${sayDeadline(wantedBy, manner)})`;
    return paragraph(text, look, 2, look.paint.bad, 4);
  });
}

function sayReady({ ready }: Offer, manner: Manner): string {
  return worded`${sayMoment(ready.safe, manner)} (holds with ${sayChance(ready.chance)}; usually ${sayMoment(ready.typical, manner)})`;
}

/** Can it be promised; when it would be ready; and what it takes to have it sooner. */
export function promiseScreen(answer: Answer, manner: Manner, look: Look): string {
  const { by, kept, offer, sooner } = answer;
  const { good, bad } = look.paint;
  if (offer === undefined)
    return paragraph(worded`No: no plan was found with such a piece.`, look, 0, bad).join('\n') + '\n';
  const wanted = sayDeadline(by, manner);
  const harmless = offer.delayed.length === 0;
  const lines = kept
    ? paragraph(worded`Yes: ready by ${wanted}, and nobody else has to wait for it.`, look, 0, good)
    : paragraph(worded`No: not by ${wanted} without making another piece late.`, look, 0, bad);
  const first = harmless
    ? paragraph(worded`Soonest safe hand-over: ${sayReady(offer, manner)}`, look, 2, undefined, 4)
    : [
        ...paragraph(
          worded`Every plan that was found makes another piece late; with hand-over ${sayReady(offer, manner)}:`,
          look,
          2,
        ),
        ...delayedLines(offer.delayed, manner, look),
      ];
  const then =
    sooner === undefined
      ? kept
        ? []
        : paragraph(worded`Nothing sooner was found, even where others would have to wait.`, look, 2, undefined, 4)
      : [
          ...paragraph(worded`Sooner, at the cost of others: ${sayReady(sooner, manner)}`, look, 2, undefined, 4),
          ...delayedLines(sooner.delayed, manner, look),
        ];
  return [...lines, ...first, ...then, ''].join('\n');
}

/** The same as a document. */
export function promiseDocument({ by, kept, offer, sooner }: Answer, manner: Manner) {
  const iso = isoWriter(manner.zone);
  const offerDocument = ({ ready, delayed }: Offer) => ({
    ready: { typical: iso(ready.typical), safe: iso(ready.safe), chance: ready.chance },
    delayed: delayed.map((d) => ({ ...d, wantedBy: iso(d.wantedBy) })),
  });
  return {
    format: 'drybench.promise/1',
    timeZone: manner.zone,
    by: iso(by),
    kept,
    ...(offer && { offer: offerDocument(offer) }),
    ...(sooner && { sooner: offerDocument(sooner) }),
  };
}
