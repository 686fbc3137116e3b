import type { ReadingAnswer } from '../air/reading.ts';
import { grid, painted, paragraph, type Cell } from './layout.ts';
import type { Look } from './look.ts';
import { sayPercent, sayTemp, sayTempDifference } from './say-quantity.ts';
import type { Manner } from './say-time.ts';

type Units = Pick<Manner, 'units'>;

function verdict({ coatable, reasons }: ReadingAnswer, look: Look): string[] {
  if (coatable) return paragraph('Fit for coating, as far as the air goes.', look, 0, look.paint.good);
  return reasons.flatMap(({ text }) => paragraph(`Not fit for coating: ${text}.`, look, 0, look.paint.bad, 2));
}

function columnOf(answer: ReadingAnswer, units: Units): string[] {
  return [
    sayTemp(answer.tempC, units, 1),
    sayPercent(answer.rhPercent),
    sayTemp(answer.surfaceC, units, 1),
    sayTemp(answer.dewPointC, units, 1),
    answer.frostPointC === undefined ? '' : sayTemp(answer.frostPointC, units, 1),
    sayTempDifference(answer.marginK, units),
    `${(answer.vpdPa / 1000).toFixed(2)} kPa`,
    `${answer.humidityRatioGPerKg.toFixed(1)} g/kg`,
    `${answer.woodMoisturePercent.toFixed(1)} %`,
  ];
}

const rowNames = [
  'air',
  'humidity',
  'surface of the work',
  'dew point',
  'frost point',
  'surface above it',
  'drying power of the air',
  'water in the air',
  'wood settles at',
];

/** What a reading means: the figures, and whether to coat; beside it the same air heated, if that was asked. */
export function readingScreen(answer: ReadingAnswer, units: Units, look: Look): string {
  const { heated } = answer;
  const columns = [columnOf(answer, units), ...(heated === undefined ? [] : [columnOf(heated, units)])];
  const rows = rowNames.flatMap((name, i): Cell[][] => {
    const figures = columns.map((c) => c[i] ?? '');
    return figures.every((f) => f === '') ? [] : [[painted(look.paint.quiet, name), ...figures]];
  });
  const head =
    heated === undefined ? [] : [['', painted(look.paint.quiet, 'now'), painted(look.paint.quiet, 'heated')]];
  return [
    ...verdict(answer, look),
    ...answer.warnings.flatMap(({ text }) => paragraph(`Worth knowing: ${text}.`, look, 0, look.paint.warn, 2)),
    ...grid([...head, ...rows], [{}, { align: 'right' }, { align: 'right' }], look, 2),
    ...(heated === undefined ? [] : ['Heated:', ...verdict(heated, look)]),
    '',
  ].join('\n');
}
