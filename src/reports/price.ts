import type { Account, SoFar } from '../bookkeeping/accounts.ts';
import type { KindEarns } from '../bookkeeping/by-kind.ts';
import type { Names } from './names.ts';
import { decimalText } from '../model/money.ts';
import { headed } from './headed.ts';
import { grid, painted, paragraph, type Cell, type Column } from './layout.ts';
import type { Look } from './look.ts';
import { noPieceScreen } from './no-piece.ts';
import { sayMoney, sayPercent } from './say-quantity.ts';
import { sayWork, type Manner } from './say-time.ts';
import { marked, worded } from '../words/worded.ts';

const right: Column = { align: 'right', least: 9 };

/** What it takes to write accounts down. */
interface Desk {
  readonly names: Pick<Names, 'material'>;
  readonly manner: Manner;
  readonly look: Look;
}

/** An amount in a column whose head names the currency. */
function amount(minor: number, { currency }: Manner): string {
  return marked(decimalText(minor, currency));
}

function gain(minor: number, manner: Manner, look: Look): Cell {
  return painted(minor < 0 ? look.paint.bad : look.paint.good, amount(minor, manner));
}

function sumRow(label: string, { soFar, toCome }: SoFar, say: (value: number) => string): Cell[] {
  return [label, say(soFar), say(toCome), say(soFar + toCome)];
}

function costRows(a: Account, manner: Manner, look: Look): Cell[][] {
  const say = (minor: number) => amount(minor, manner);
  const strong = (cells: Cell[]): Cell[] =>
    cells.map((cell) => (typeof cell === 'string' ? painted(look.paint.strong, cell) : cell));
  const isAny = ({ soFar, toCome }: SoFar) => soFar + toCome > 0;
  return [
    ['', worded`so far`, worded`to come`, worded`at the end`].map((text) => painted(look.paint.quiet, text)),
    sumRow(worded`bought for`, { soFar: a.purchase, toCome: 0 }, say),
    sumRow(worded`materials`, a.materials, say),
    ...(isAny(a.pay) ? [sumRow(worded`pay`, a.pay, say)] : []),
    ...(isAny(a.overhead) ? [sumRow(worded`share of the shop`, a.overhead, say)] : []),
    strong(sumRow(worded`cost, ${manner.currency}`, a.cost, say)),
    sumRow(worded`bench hours`, a.minutes, sayWork),
    sumRow(worded`days in the shop`, a.days, String),
  ];
}

function saleRows(a: Account, feePercent: number, manner: Manner, look: Look): Cell[][] {
  const { strong } = look.paint;
  const say = (minor: number) => sayMoney(minor, manner);
  const lowest: Cell[] =
    a.lowestPrice === undefined
      ? [worded`loses`, worded`at every price: selling takes it all`]
      : [worded`loses below`, painted(strong, say(a.lowestPrice))];
  const { sale } = a;
  if (sale === undefined) return [lowest, [worded`price hoped for`, worded`none: write price: into its file`]];
  const { perBenchHour, perDayHeld } = sale;
  return [
    lowest,
    [worded`price hoped for`, say(sale.price)],
    ...(sale.fee > 0 ? [[worded`selling, ${sayPercent(feePercent)}`, say(-sale.fee)]] : []),
    [worded`margin`, painted(sale.margin < 0 ? look.paint.bad : look.paint.good, say(sale.margin))],
    ...(perBenchHour === undefined ? [] : [[worded`earned a bench hour`, say(perBenchHour)]]),
    ...(perDayHeld === undefined ? [] : [[worded`earned a day held`, say(perDayHeld)]]),
  ];
}

function workedLine({ minutes, plannedMinutes }: Account): string {
  if (plannedMinutes === 0) return '';
  const more = minutes.soFar - plannedMinutes;
  const by = sayWork(Math.abs(more));
  const verdict = more === 0 ? worded`as planned` : more > 0 ? worded`${by} more` : worded`${by} less`;
  return worded`Worked ${sayWork(minutes.soFar)} for what was planned as ${sayWork(plannedMinutes)}: ${verdict}.`;
}

function noteLines(accounts: readonly Account[], { names, look }: Desk): string[] {
  const { quiet, warn } = look.paint;
  const unpriced = [...new Set(accounts.flatMap((a) => a.unpriced))];
  const held = accounts.filter((a) => a.heldSteps > 0);
  return [
    ...(unpriced.length === 0
      ? []
      : paragraph(
          worded`Counted as nothing, for shop.yaml has no price of it: ${unpriced.map(names.material).join(', ')}`,
          look,
          2,
          warn,
          4,
        )),
    ...held.flatMap((a) =>
      paragraph(worded`${a.name}: the steps that wait for its lead test are not counted.`, look, 2, warn, 4),
    ),
    ...paragraph(worded`Earned means before your own pay and taxes. To come is what the plan says.`, look, 2, quiet),
  ];
}

/** One piece: what it has cost, will cost and brings. */
export function accountScreen(a: Account, feePercent: number, desk: Desk): string {
  const { manner, look } = desk;
  const kind = a.kind === '' ? '' : ` · ${a.kind}`;
  const worked = workedLine(a);
  return [
    ...paragraph(`${a.name}${kind}`, look, 0, look.paint.strong),
    ...headed(costRows(a, manner, look), [{ least: 18 }, right, right, right], look, 2),
    ...(worked === '' ? [] : paragraph(worked, look, 2)),
    '',
    ...grid(saleRows(a, feePercent, manner, look), [{ least: 20 }, right], look, 2),
    '',
    ...noteLines([a], desk),
    '',
  ].join('\n');
}

const NARROW = 90;
const longestBar = ({ columns }: Look) => (columns < NARROW ? 12 : 24);

function bar(value: number, most: number, look: Look): string {
  if (value <= 0 || most <= 0) return '';
  return (look.ascii ? '#' : '█').repeat(Math.max(1, Math.round((value / most) * longestBar(look))));
}

function kindLines(kinds: readonly KindEarns[], manner: Manner, look: Look): string[] {
  if (kinds.length === 0) return [];
  const { quiet, strong, good } = look.paint;
  const most = Math.max(...kinds.map((k) => k.perBenchHour));
  const head = [worded`kind`, worded`pieces`, worded`hours`, worded`a day held`, worded`a bench hour`, ''].map((t) =>
    painted(quiet, t),
  );
  const rows = kinds.map((k): Cell[] => [
    k.kind === '' ? worded`of no kind` : k.kind,
    String(k.pieces),
    sayWork(k.minutes),
    k.perDayHeld === undefined ? '' : amount(k.perDayHeld, manner),
    gain(k.perBenchHour, manner, look),
    painted(good, bar(k.perBenchHour, most, look)),
  ]);
  return [
    ...paragraph(worded`What kinds of piece earn, in ${manner.currency}`, look, 0, strong),
    ...headed([head, ...rows], [{ least: 12 }, right, right, right, right, { whole: true }], look, 2),
    '',
  ];
}

/** All pieces, a line each, and which kind of piece earns most for an hour at the bench. */
export function accountsScreen(accounts: readonly Account[], kinds: readonly KindEarns[], desk: Desk): string {
  const { manner, look } = desk;
  const { quiet, strong } = look.paint;
  if (accounts.length === 0) return noPieceScreen(look);
  const wide = look.columns >= NARROW;
  const head = [
    '',
    worded`cost so far`,
    worded`at the end`,
    worded`loses below`,
    worded`hoped for`,
    worded`margin`,
    ...(wide ? [worded`a bench hour`] : []),
  ];
  const rows = accounts.map((a): Cell[] => [
    painted(strong, a.name),
    amount(a.cost.soFar, manner),
    amount(a.cost.soFar + a.cost.toCome, manner),
    a.lowestPrice === undefined ? worded`always` : amount(a.lowestPrice, manner),
    a.sale === undefined ? painted(quiet, worded`none`) : amount(a.sale.price, manner),
    a.sale === undefined ? '' : gain(a.sale.margin, manner, look),
    ...(wide ? [a.sale?.perBenchHour === undefined ? '' : gain(a.sale.perBenchHour, manner, look)] : []),
  ]);
  return [
    ...paragraph(worded`What pieces cost and bring, in ${manner.currency}`, look, 0, strong),
    ...headed(
      [head.map((t) => painted(quiet, t)), ...rows],
      [{ least: 14 }, ...head.slice(1).map(() => right)],
      look,
      2,
    ),
    '',
    ...kindLines(kinds, manner, look),
    ...noteLines(accounts, desk),
    '',
  ].join('\n');
}
