import { doubtLines, doubtsOf } from '../reports/doubts.ts';
import { lessonLines, lessonsDocument } from '../reports/learned.ts';
import { heldTasks } from '../model/gates.ts';
import { learnedMaterials } from '../planning/factors.ts';
import type { Plan } from '../model/plan.ts';
import { planDocument } from '../model/plan-document.ts';
import { heldLines, readyOverview, readyPiece, readyTable } from '../reports/ready.ts';
import { harmlessData } from '../terminal/harmless.ts';
import { answerLook, print, printJson, wantsJson } from './answers.ts';
import { CannotGoOn, isFlagged, type Call, type ExitCode } from './call.ts';
import { choosePiece } from './name-things.ts';
import { openShop } from './open-shop.ts';
import { planOf } from './plan-of.ts';
import { worded } from '../words/worded.ts';

/** Materials that the plan still lays down on the pieces asked about. */
function laidBy(plan: Plan, isAsked: (piece: { readonly id: string }) => boolean): ReadonlySet<string> {
  const open = plan.steps.filter((s) => s.done !== true && isAsked({ id: s.piece }));
  return new Set(open.flatMap((s) => s.material ?? []));
}

/** When pieces are ready: one in full, all in a line each, or (`--all`) the table to read to a customer. */
export async function answer(call: Call): Promise<ExitCode> {
  const shop = await openShop(call);
  const [word] = call.words;
  const all = isFlagged(call, 'all');
  if (word !== undefined && all)
    throw new CannotGoOn(worded`a piece and --all do not go together`, worded`name a piece, or write --all`);
  const one = word === undefined ? undefined : await choosePiece(call, shop.book.pieces, word);
  const { plan, air, situation, kept } = await planOf(call, shop);
  const lessons = { materials: learnedMaterials(situation, air, kept), hands: situation.paces };
  const isAsked = ({ id }: { readonly id: string }) => one === undefined || one.id === id;
  if (wantsJson(call)) {
    const { madeAt, timeZone, pieces } = planDocument(plan);
    printJson(call, {
      format: 'drybench.ready/1',
      madeAt,
      timeZone,
      pieces: pieces.filter(isAsked),
      learned: lessonsDocument(lessons),
      doubts: doubtsOf(laidBy(plan, isAsked), shop.book),
    });
    return 0;
  }
  const look = await answerLook(call);
  const pieces = harmlessData(plan.pieces).filter(isAsked);
  const inFull = one !== undefined || all;
  const [only] = pieces;
  if (one !== undefined && only !== undefined) print(call, readyPiece(only, shop.manner, look));
  else if (all) print(call, readyTable(pieces, shop.book.shop.safeChance, shop.manner, look));
  else print(call, readyOverview(pieces, shop.manner, look));
  const book = harmlessData(shop.book);
  const held = heldTasks(situation);
  const waiting = new Set(situation.tasks.filter((task) => held.has(task.id)).map((task) => task.piece));
  const withheld = heldLines(
    pieces.filter(({ id }) => waiting.has(id)).map(({ name }) => name),
    look,
  );
  const grounds = [
    ...lessonLines(lessons, book, look),
    ...(inFull ? doubtLines(doubtsOf(laidBy(plan, isAsked), book), look) : []),
  ];
  for (const lines of [withheld, grounds]) if (lines.length > 0) print(call, `\n${lines.join('\n')}\n`);
  return 0;
}
