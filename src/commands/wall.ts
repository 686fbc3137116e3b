import type { Book } from '../model/book.ts';
import { careOf } from '../model/safety.ts';
import type { Task } from '../model/task.ts';
import type { Piece } from '../model/piece.ts';
import type { SafetyPage } from '../model/safety.ts';
import { buyerCard } from '../reports/wall/card.ts';
import { bagLabels } from '../reports/wall/labels.ts';
import { PAPER_MARK } from '../reports/wall/paper.ts';
import type { WallInput } from '../reports/wall/wall-input.ts';
import { wallWeek, type Paper } from '../reports/wall/wall-week.ts';
import { harmless } from '../terminal/harmless.ts';
import { localDay } from '../time/zone.ts';
import { printJson, tell, wantsJson } from './answers.ts';
import { CannotGoOn, isFlagged, numberFlag, textFlag, type Call, type ExitCode } from './call.ts';
import { coatingHours } from './coating-hours.ts';
import { choosePiece } from './name-things.ts';
import { openShop, timeOf, type OpenShop } from './open-shop.ts';
import { shippedSafety } from './shipped-safety.ts';
import { outFile } from './out-file.ts';
import type { Planned } from './plan-grounds.ts';
import { planOf } from './plan-of.ts';
import { counted, worded } from '../words/worded.ts';

interface Sheet extends Paper {
  readonly usualFile: string;
}

/** More days than these are no picture any more. */
const MOST_DAYS = 14;

function cautionsOf(book: Book, tasks: readonly Task[], safety: readonly SafetyPage[]): WallInput['cautions'] {
  return new Map(
    tasks.map((task) => {
      const { own, pages } = careOf(task, book.materials.get(task.material ?? ''), safety);
      return [task.id, [...own, ...pages.map((p) => p.short)]];
    }),
  );
}

async function inputOf(call: Call, shop: OpenShop, planned: Planned, unfitDays: number): Promise<WallInput> {
  const { plan, situation } = planned;
  return {
    plan,
    book: shop.book,
    unfit: unfitDays === 0 ? [] : coatingHours(shop, planned, unfitDays),
    cautions: cautionsOf(shop.book, situation.tasks, await shippedSafety(call)),
  };
}

async function week(call: Call, shop: OpenShop): Promise<Sheet> {
  const count = numberFlag(call, 'days', 7, 1, MOST_DAYS);
  const { zone, now } = shop.manner;
  const from = textFlag(call, 'from');
  const first = from === undefined ? now : timeOf(call, '--from', from, zone);
  const days = Array.from({ length: count }, (_, plus) => localDay(first, zone, plus));
  const daysAhead = Math.max(0, Math.ceil((first - now) / 1440)) + count + 1;
  const input = await inputOf(call, shop, await planOf(call, shop), Math.min(daysAhead, 370));
  return { ...wallWeek(input, days), usualFile: 'wall.html' };
}

async function card(call: Call, shop: OpenShop, piece: Piece): Promise<Sheet> {
  const planned = await planOf(call, shop);
  const plannedPiece = planned.plan.pieces.find((p) => p.id === piece.id);
  if (plannedPiece === undefined) throw new CannotGoOn(worded`nothing is planned for "${piece.name}"`, undefined, 1);
  return {
    ...buyerCard(await inputOf(call, shop, planned, 0), piece, plannedPiece),
    usualFile: `card-${piece.id}.html`,
  };
}

async function sheetOf(call: Call, shop: OpenShop): Promise<Sheet> {
  const cardFor = textFlag(call, 'card');
  if (cardFor !== undefined) return card(call, shop, await choosePiece(call, shop.book.pieces, cardFor));
  return isFlagged(call, 'labels') ? { ...bagLabels(shop.book.pieces), usualFile: 'labels.html' } : week(call, shop);
}

/** Writes a page to print: the week, a buyer's card, or labels. */
export async function answer(call: Call): Promise<ExitCode> {
  if (textFlag(call, 'card') !== undefined && isFlagged(call, 'labels'))
    throw new CannotGoOn(worded`--card and --labels do not go together`, worded`write one of them`);
  const shop = await openShop(call, { supplies: true });
  const sheet = await sheetOf(call, shop);
  const file = textFlag(call, 'file') ?? sheet.usualFile;
  const to = outFile(call, file);
  to.write(sheet.html, PAPER_MARK);
  if (to.path === undefined) return 0;
  const pages = counted(sheet.pages, '{0} page', '{0} pages');
  if (wantsJson(call)) printJson(call, { format: 'drybench.wall/1', file: to.path, pages: sheet.pages });
  else
    await tell(
      call,
      worded`Written to ${harmless(file)}: ${pages}. Open it in a browser and print it, on A4 or Letter.\n`,
    );
  return 0;
}
