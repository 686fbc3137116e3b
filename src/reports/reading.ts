import { DEW_MARGIN_K } from '../air/dew-margin.ts';
import { pointSaid, type ReadingAnswer, type ReadingNote } from '../air/reading.ts';
import { figures } from './figures.ts';
import { paragraph } from './layout.ts';
import type { Look } from './look.ts';
import { sayDryingPower, sayPercent, sayTemp, sayTempDifference, sayWaterInAir } from './say-quantity.ts';
import type { Manner } from './say-time.ts';
import { marginToldApart } from './say-unfit.ts';
import { phrase, translated, worded } from '../words/worded.ts';

type Units = Pick<Manner, 'units'>;

/** A note in the units of the reading. */
function sayNote({ code, text }: ReadingNote, answer: ReadingAnswer, units: Units): string {
  const { marginK, surfaceC } = answer;
  const point = pointSaid(surfaceC - marginK);
  switch (code) {
    case 'below-dew-point':
      return worded`the surface is ${sayTempDifference(-marginK, units)} below the ${point}: water settles on it`;
    case 'near-dew-point': {
      const [above, needs] = marginToldApart(marginK, DEW_MARGIN_K, units);
      return worded`the surface is ${above} above the ${point}; it needs ${needs} (ISO 8502-4, for steel; on wood common practice)`;
    }
    case 'blush-likely':
      return worded`the ${point} is near the air: shellac and lacquer may blush (a rule of the trade)`;
    case 'above-85-percent':
    case 'freezing':
    case 'very-dry':
      return text;
  }
}

/** A note as a script gets it: its own words, which are metric, or those in US units. */
export function noteText(note: ReadingNote, answer: ReadingAnswer, units: Units): string {
  return units.units === 'us' ? sayNote(note, answer, units) : note.text;
}

function verdict(answer: ReadingAnswer, units: Units, look: Look): string[] {
  if (answer.coatable) return paragraph(worded`Fit for coating, as far as the air goes.`, look, 0, look.paint.good);
  return answer.reasons.flatMap((note) =>
    paragraph(worded`Not fit for coating: ${sayNote(note, answer, units)}.`, look, 0, look.paint.bad, 2),
  );
}

function columnOf(answer: ReadingAnswer, units: Units): string[] {
  return [
    sayTemp(answer.tempC, units, 1),
    sayPercent(answer.rhPercent),
    sayTemp(answer.surfaceC, units, 1),
    sayTemp(answer.dewPointC, units, 1),
    answer.frostPointC === undefined ? '' : sayTemp(answer.frostPointC, units, 1),
    sayTempDifference(answer.marginK, units),
    sayDryingPower(answer.vpdPa, units),
    sayWaterInAir(answer.humidityRatioGPerKg, units),
    sayPercent(answer.woodMoisturePercent, 1),
  ];
}

const rowNames = [
  phrase('air'),
  phrase('humidity'),
  phrase('surface of the work'),
  phrase('dew point'),
  phrase('frost point'),
  phrase('surface above it'),
  phrase('drying power of the air'),
  phrase('water in the air'),
  phrase('wood settles at'),
];

/** What a reading means: the figures, and whether to coat; beside it the same air heated, if that was asked. */
export function readingScreen(answer: ReadingAnswer, units: Units, look: Look): string {
  const { heated } = answer;
  const columns = [columnOf(answer, units), ...(heated === undefined ? [] : [columnOf(heated, units)])];
  const rows = rowNames.flatMap((name, i): string[][] => {
    const texts = columns.map((c) => c[i] ?? '');
    return texts.every((f) => f === '') ? [] : [[look.paint.quiet(translated(name)), ...texts]];
  });
  const head = heated === undefined ? [] : [['', look.paint.quiet(worded`now`), look.paint.quiet(worded`heated`)]];
  return [
    ...verdict(answer, units, look),
    ...answer.warnings.flatMap((note) =>
      paragraph(worded`Worth knowing: ${sayNote(note, answer, units)}.`, look, 0, look.paint.warn, 2),
    ),
    ...figures([...head, ...rows], (['left', 'right', 'right'] as const).slice(0, columns.length + 1), 2),
    ...(heated === undefined ? [] : [worded`Heated:`, ...verdict(heated, units, look)]),
    '',
  ].join('\n');
}
