import { at } from '../at.ts';
import type { Purchase, ShoppingList } from '../bookkeeping/shopping.ts';
import { decimalText } from '../model/money.ts';
import type { Book } from '../model/book.ts';
import type { Piece } from '../model/piece.ts';
import type { Minute } from '../time/span.ts';
import { grouped } from './grouped.ts';
import { headed } from './headed.ts';
import { painted, paragraph, type Cell, type Column } from './layout.ts';
import type { Look } from './look.ts';
import { namesOf, type Names } from './names.ts';
import { sayAmount, sayMoney } from './say-quantity.ts';
import { sayDay, type Manner } from './say-time.ts';
import { marked, worded } from '../words/worded.ts';

export interface Shopping {
  readonly list: ShoppingList;
  /** Pieces with work that no plan may place before their lead test. */
  readonly heldPieces: readonly Pick<Piece, 'name'>[];
  /** Only for steps that start before. */
  readonly until?: Minute;
  readonly withSteps: boolean;
  /** Of the shelf, where the shop names what is on it: when that was counted, if it says so. */
  readonly counted?: { readonly at?: Minute };
}

interface Desk {
  readonly names: Names;
  readonly manner: Manner;
  readonly look: Look;
  readonly withSteps: boolean;
}

/** `2.50 L` as `2.5 L`, `1,00 L` as `1 L`: sizes are said as they stand on the container. */
function withoutZeros(amount: string): string {
  return amount.replace(/([.,]\d*?)0+(?= )/, '$1').replace(/[.,](?= )/, '');
}

/** Sizes of one unit name it once: `0.75 + 2 × 2.5 L`. */
function unitOnce(sizes: readonly string[]): readonly string[] {
  const unitOf = (size: string) => size.replace(/^[\d.,]+/, '');
  const last = unitOf(sizes.at(-1) ?? '');
  return sizes.map((size, k) =>
    k < sizes.length - 1 && unitOf(size) === last ? size.slice(0, size.length - last.length) : size,
  );
}

function containersCell({ containers, toBuy, unit }: Purchase, manner: Manner): string {
  if (containers.length === 0) return worded`${sayAmount({ value: toBuy, unit }, manner)}, sizes not known`;
  const sizes = unitOnce(containers.map(({ holds }) => withoutZeros(sayAmount(holds, manner))));
  return containers
    .map(({ count }, k) => (count === 1 && containers.length > 1 ? at(sizes, k) : `${count} × ${at(sizes, k)}`))
    .join(' + ');
}

function usesLine({ uses, unit }: Purchase, { names, manner }: Desk): string {
  return [...grouped(uses, (u) => u.work.task.piece)]
    .map(([piece, ofPiece]) => {
      const value = ofPiece.reduce((sum, u) => sum + (u.value ?? 0), 0);
      const steps = [...new Set(ofPiece.map((u) => `${u.work.task.section}/${u.work.task.step}`))];
      return `${names.piece(piece)} ${sayAmount({ value, unit }, manner)} (${steps.join(', ')})`;
    })
    .join('; ');
}

function rowOf(p: Purchase, desk: Desk, priced: boolean): Cell[] {
  const { manner, look } = desk;
  const { quiet, strong } = look.paint;
  const steps = desk.withSteps ? [painted(quiet, usesLine(p, desk))] : [];
  return [
    p.by === undefined ? '' : sayDay(p.by, manner),
    [painted(strong, shortName(p.name)), ...steps],
    sayAmount({ value: p.needed, unit: p.unit }, manner),
    p.onShelf === 0 ? painted(quiet, '–') : sayAmount({ value: p.onShelf, unit: p.unit }, manner),
    containersCell(p, manner),
    ...(priced
      ? [p.costMinor === undefined ? painted(quiet, '–') : marked(decimalText(p.costMinor, manner.currency))]
      : []),
  ];
}

function shortName(name: string): string {
  return name.split(', ')[0] ?? name;
}

function totalLines(toBuy: readonly Purchase[], { manner, look }: Desk): string[] {
  const priced = toBuy.flatMap((p) => p.costMinor ?? []);
  if (priced.length === 0)
    return paragraph(
      worded`No prices yet: write \`prices:\` into shop.yaml to see what this costs.`,
      look,
      2,
      look.paint.quiet,
    );
  const total = sayMoney(
    priced.reduce((sum, c) => sum + c, 0),
    manner,
  );
  const without = toBuy.length - priced.length;
  return paragraph(
    without === 0 ? worded`${total} in all` : worded`${total} for what has a price; ${without} without`,
    look,
    2,
  );
}

/** What has been taken off the shelf since it was counted, or that nothing has. */
function shelfLines({ list, counted }: Shopping, { manner, look }: Desk): string[] {
  if (counted === undefined) return [];
  if (counted.at === undefined)
    return paragraph(
      worded`The shelf is taken as \`stock:\` says. Write \`stock-counted: DATE\` beside it, and what the journal says was used since then is taken off.`,
      look,
      2,
      look.paint.quiet,
      4,
    );
  const gone = list.purchases.filter((p) => p.usedSinceCount > 0);
  const said = gone.map((p) => `${shortName(p.name)} ${sayAmount({ value: p.usedSinceCount, unit: p.unit }, manner)}`);
  const used =
    said.length === 0
      ? worded`nothing of it was used since`
      : worded`since then used and taken off: ${said.join(', ')}`;
  return paragraph(worded`The shelf was counted ${sayDay(counted.at, manner)}; ${used}.`, look, 2, look.paint.quiet, 4);
}

function noteLines(shopping: Shopping, desk: Desk): string[] {
  const { list, heldPieces, until } = shopping;
  const { manner, look } = desk;
  const { quiet, warn } = look.paint;
  const enough = list.purchases.filter((p) => p.toBuy === 0);
  const span =
    until === undefined
      ? worded`all work that is planned`
      : worded`work that begins until ${sayDay(until - 1, manner)}`;
  return [
    ...(enough.length === 0
      ? []
      : paragraph(
          worded`The shelf has enough: ${enough.map((p) => worded`${shortName(p.name)} (${sayAmount({ value: p.needed, unit: p.unit }, manner)} of ${sayAmount({ value: p.onShelf, unit: p.unit }, manner)})`).join(', ')}`,
          look,
          2,
          quiet,
          4,
        )),
    ...shelfLines(shopping, desk),
    ...list.unknown.flatMap(({ item, name }) =>
      paragraph(worded`${name}: nothing says how much; write coverage into materials/${item}.yaml`, look, 2, warn, 4),
    ),
    ...heldPieces.flatMap((p) =>
      paragraph(worded`${p.name}: nothing is counted for what waits for its lead test.`, look, 2, warn, 4),
    ),
    ...paragraph(
      worded`For ${span}. Reckoned from area, coverage, what lands and what is lost; mend \`stock:\` in shop.yaml when you have shopped, and its date. The label of each container stands above these figures.`,
      look,
      2,
      quiet,
    ),
  ];
}

/** What to buy, how much, and by which day. */
export function buyScreen(shopping: Shopping, book: Book, manner: Manner, look: Look): string {
  const { strong, quiet } = look.paint;
  const desk = { names: namesOf(book), manner, look, withSteps: shopping.withSteps };
  const toBuy = shopping.list.purchases.filter((p) => p.toBuy > 0);
  if (toBuy.length === 0)
    return [...paragraph(worded`Nothing to buy.`, look, 0, strong), ...noteLines(shopping, desk), ''].join('\n');
  const priced = toBuy.some((p) => p.costMinor !== undefined);
  const head = [
    worded`by`,
    worded`what`,
    worded`needed`,
    worded`shelf`,
    worded`buy`,
    ...(priced ? [manner.currency] : []),
  ];
  const columns: Column[] = [
    { align: 'right' },
    { least: 12 },
    { align: 'right' },
    { align: 'right' },
    { whole: true },
    { align: 'right' },
  ];
  const rows = [head.map((text) => painted(quiet, text)), ...toBuy.map((p) => rowOf(p, desk, priced))];
  return [
    ...paragraph(worded`To buy`, look, 0, strong),
    ...headed(rows, columns.slice(0, head.length), look, 2, 1),
    '',
    ...totalLines(toBuy, desk),
    ...noteLines(shopping, desk),
    '',
  ].join('\n');
}
