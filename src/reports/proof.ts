import type { Proof } from '../model/plan.ts';
import { PLAIN_WEIGHT, WORK_WEIGHT } from '../schedule/weights.ts';
import { paragraph } from './layout.ts';
import type { Look } from './look.ts';
import { sayWork } from './say-time.ts';
import { counted, worded } from '../words/worded.ts';

type Aim = Proof['objective'][number];

/** What the search weighs one day by of a piece that stands in the shop with no money in it. */
const PLAIN_DAY = PLAIN_WEIGHT * 24 * 60;

const digits = (days: number) => (days < 10 ? 10 : 1);

/** A plan's own days are never said too low, those that no plan goes below never too high. */
function days(value: number, round: (n: number) => number): string {
  const count = value / PLAIN_DAY;
  const rounded = round(count * digits(count)) / digits(count);
  return counted(rounded, '{0} day', '{0} days');
}

function countsAs({ value, bound }: Aim): string {
  const own = days(value, Math.ceil);
  return value === bound
    ? worded`${own}, the least possible`
    : worded`${own}, no plan below ${days(bound, Math.floor)}`;
}

const words: Readonly<Record<string, (aim: Aim) => string | undefined>> = {
  'tied up': (aim) =>
    worded`Standing in the shop counts as ${countsAs(aim)} (a day of a piece counts for more the more money is in it).`,
  late: (aim) => worded`Being late counts as ${countsAs(aim)}.`,
  moved: (aim) => worded`Moving steps off the plan followed before counts as ${countsAs(aim)}.`,
  'extra work': ({ value, bound }) =>
    value === bound
      ? undefined
      : worded`Work that another plan might spare: ${sayWork(Math.ceil((value - bound) / WORK_WEIGHT))}.`,
};

/** What is known of how good the plan is. */
export function proofLines(proof: Proof, look: Look): string[] {
  const aims = proof.objective
    .filter(({ value, bound }) => value > 0 || bound > 0)
    .flatMap((aim) => words[aim.name]?.(aim) ?? []);
  const verdict = proof.proven
    ? worded`Proven: no plan does better.`
    : worded`Not proven best: at most ${Math.ceil(proof.gapPercent * 10) / 10} % could still be gained.`;
  return [
    ...paragraph(worded`Checked against every rule that no plan may break. ${verdict}`, look, 2, look.paint.quiet),
    ...(aims.length === 0 ? [] : paragraph(aims.join(' '), look, 2, look.paint.quiet)),
  ];
}
