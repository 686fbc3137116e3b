import { minorDigits } from '../model/money.ts';
import type { Plan, PlannedPiece } from '../model/plan.ts';
import type { Comparison, Variant } from '../planning/compare.ts';
import { isoWriter } from '../time/iso.ts';
import { headed } from './headed.ts';
import { painted, paragraph, type Cell, type Column } from './layout.ts';
import type { Look } from './look.ts';
import type { Names } from './names.ts';
import { noPieceScreen } from './no-piece.ts';
import { nameChange } from './say-change.ts';
import { sayLength, sayMoment, type Manner } from './say-time.ts';
import { marked, worded } from '../words/worded.ts';

const LEAST_DAYS = 0.05;

function pieceIn(plan: Plan | undefined, id: string): PlannedPiece | undefined {
  return plan?.pieces.find((p) => p.id === id);
}

function readyCell(
  piece: PlannedPiece | undefined,
  before: PlannedPiece | undefined,
  manner: Manner,
  look: Look,
): Cell {
  const ready = piece?.ready.handedOver;
  if (piece === undefined || ready === undefined) return painted(look.paint.quiet, '–');
  const late = piece.lateHours > 0 ? worded` ${sayLength(piece.lateHours * 60)} late` : '';
  const text = `${sayMoment(ready.safe, manner)}${late}`;
  const was = before?.ready.handedOver?.safe;
  if (was === undefined || was === ready.safe) return late === '' ? text : painted(look.paint.bad, text);
  return painted(ready.safe < was ? look.paint.good : look.paint.bad, text);
}

function days(value: number): string {
  const text = marked(Math.abs(value).toFixed(1));
  return Math.abs(value) < LEAST_DAYS
    ? worded`no difference`
    : value > 0
      ? worded`${text} d sooner in all`
      : worded`${text} d later in all`;
}

/** A change alone by what it does; several at once by what they were called. */
function headOf({ wish }: Variant, names: Names, manner: Manner): string {
  const [only, ...more] = wish.changes;
  return only === undefined || more.length > 0 ? wish.said : nameChange(only, names, manner);
}

function gainLine(variant: Variant, names: Names, manner: Manner): string {
  const { plan, daysSooner, lateHoursLess, daysPerMajor, daysPerHour } = variant;
  const head = headOf(variant, names, manner);
  if (plan === undefined) return worded`${head}: no plan was found`;
  const late =
    Math.abs(lateHoursLess) < 0.5
      ? ''
      : lateHoursLess > 0
        ? worded`, ${sayLength(lateHoursLess * 60)} less late`
        : worded`, ${sayLength(-lateHoursLess * 60)} more late`;
  const money =
    daysPerMajor === undefined ? '' : worded`, ${marked((daysPerMajor * 100).toFixed(1))} d for 100 ${manner.currency}`;
  const hour = daysPerHour === undefined ? '' : worded`, ${marked(daysPerHour.toFixed(2))} d an hour`;
  return `${head}: ${days(daysSooner)}${late}${money}${hour}`;
}

function buysMost(by: 'money' | 'hours', change: string): string {
  return by === 'money' ? worded`Buys most for its money: ${change}` : worded`Buys most for its hours: ${change}`;
}

/** Safe hand-over of each piece now and with each change, side by side; then what each change buys. */
export function compareScreen({ now, variants, best }: Comparison, names: Names, manner: Manner, look: Look): string {
  if (now.pieces.length === 0) return noPieceScreen(look);
  const { strong, quiet } = look.paint;
  const head = [worded`safe hand-over`, worded`now`, ...variants.map((v) => headOf(v, names, manner))].map((text) =>
    painted(quiet, text),
  );
  const rows = now.pieces.map((piece): Cell[] => [
    painted(strong, piece.name),
    readyCell(piece, undefined, manner, look),
    ...variants.map((v) => readyCell(pieceIn(v.plan, piece.id), piece, manner, look)),
  ]);
  const bought = variants.find((v) => v.wish.name === best?.name);
  return [
    ...headed(
      [head, ...rows],
      [
        { least: 14 },
        ...rows.slice(0, 1).flatMap((row) => row.slice(1).map((): Column => ({ least: 12, align: 'right' }))),
      ],
      look,
    ),
    '',
    ...variants.flatMap((v) => paragraph(gainLine(v, names, manner), look, 2, undefined, 4)),
    ...(bought === undefined || best === undefined
      ? []
      : paragraph(buysMost(best.by, headOf(bought, names, manner)), look, 2, look.paint.good, 4)),
    '',
  ].join('\n');
}

/** The same as a document; money in units of the currency. */
export function compareDocument({ now, variants, best }: Comparison, manner: Manner) {
  const iso = isoWriter(manner.zone);
  const minor = 10 ** minorDigits(manner.currency);
  const pieces = (plan: Plan) =>
    plan.pieces.map(({ id, name, lateHours, ready: { handedOver } }) => ({
      id,
      name,
      lateHours,
      ...(handedOver && {
        handedOver: { typical: iso(handedOver.typical), safe: iso(handedOver.safe), chance: handedOver.chance },
      }),
    }));
  return {
    format: 'drybench.compare/1',
    timeZone: manner.zone,
    currency: manner.currency,
    now: pieces(now),
    variants: variants.map(({ wish, plan, daysSooner, lateHoursLess, daysPerMajor, daysPerHour }) => ({
      name: wish.name,
      said: wish.said,
      ...(wish.costMinor !== undefined && { cost: wish.costMinor / minor }),
      ...(plan && { pieces: pieces(plan) }),
      daysSooner,
      lateHoursLess,
      ...(daysPerMajor !== undefined && { daysPerUnitOfMoney: daysPerMajor }),
      ...(daysPerHour !== undefined && { daysPerHour }),
    })),
    ...(best && { best }),
  };
}
