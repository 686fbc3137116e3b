import { appendDeeds } from '../files/journal/append.ts';
import { recordOfEntry } from '../files/journal/record.ts';
import type { Deed, Entry } from '../model/journal.ts';
import { gateOpen } from '../model/gates.ts';
import { openBefore } from '../model/open-before.ts';
import type { Piece } from '../model/piece.ts';
import type { Situation } from '../model/situation.ts';
import type { Task } from '../model/task.ts';
import { situationOf } from '../planning/situation-of.ts';
import { harmless } from '../terminal/harmless.ts';
import { mostShown } from '../reports/look.ts';
import { answerLook, printJson, tell, wantsJson } from './answers.ts';
import { CannotGoOn, isFlagged, type Call, type ExitCode } from './call.ts';
import { choosePiece, chooseNext, chooseTask, meantTasks } from './name-things.ts';
import { openShop, warn, type OpenShop } from './open-shop.ts';
import { worded } from '../words/worded.ts';

/** Which steps a command is about: those still to do, or those that are over. */
export type StepsAbout = 'open' | 'done';

/** The shop, and the step that the words PIECE and STEP name in it. */
export interface NamedStep {
  readonly shop: OpenShop;
  readonly situation: Situation;
  readonly task: Task;
}

/** @throws CannotGoOn where the words name no step, or several. */
export async function namedStep(call: Call, about: StepsAbout): Promise<NamedStep> {
  const shop = await openShop(call);
  const [pieceWord = '', stepWord] = call.words;
  const piece = await choosePiece(call, shop.book.pieces, pieceWord);
  const situation = situationOf(shop.book, shop.now);
  const { tasks, done } = situation;
  const ofPiece = tasks.filter((t) => t.piece === piece.id);
  const choices = ofPiece.filter((t) => done.has(t.id) === (about === 'done'));
  if (stepWord !== undefined) refuseOther(about, stepWord, piece, choices, ofPiece);
  if (choices.length === 0)
    throw new CannotGoOn(
      about === 'open' ? worded`${piece.name} has no step left to do` : worded`no step of ${piece.name} is done`,
    );
  const task =
    stepWord === undefined ? await chooseNext(call, choices, piece) : await chooseTask(call, choices, stepWord);
  return { shop, situation, task };
}

/** @throws CannotGoOn at a step that there is, but that this command is not about. */
function refuseOther(
  about: StepsAbout,
  word: string,
  piece: Piece,
  choices: readonly Task[],
  ofPiece: readonly Task[],
): void {
  if (choices.length === 0 || meantTasks(choices, word).length > 0) return;
  const [named, ...more] = meantTasks(ofPiece, word);
  if (named === undefined) return;
  const step = more.length === 0 ? `${named.section}/${named.step}` : word;
  throw about === 'done'
    ? new CannotGoOn(
        worded`"${step}" of ${piece.name} is not done yet`,
        worded`enter it first: drybench done ${piece.id} ${step}`,
      )
    : new CannotGoOn(
        worded`"${step}" of ${piece.name} is done already`,
        worded`if it is to be done once more: drybench again ${piece.id} ${step}`,
      );
}

/**
 * Nothing that disturbs paint that may hold lead is entered before its test is recorded.
 * @throws CannotGoOn at a step behind a closed gate.
 */
export function refuseBehindGate({ shop, situation, task }: NamedStep): void {
  if (!task.gated || gateOpen(situation, task.piece)) return;
  const name = shop.book.pieces.find((p) => p.id === task.piece)?.name ?? task.piece;
  if (situation.leadTests.get(task.piece)?.found === true)
    throw new CannotGoOn(
      worded`${name} carries lead: "${task.title}" disturbs it and is not entered as work of this shop`,
      worded`follow local rules and licensed practice; if a later test found none, enter it with lead-test first`,
    );
  throw new CannotGoOn(
    worded`${name} may carry lead, and "${task.title}" disturbs it: record the test first`,
    worded`drybench lead-test ${task.piece} none, or found`,
  );
}

/**
 * Oily rags are put away as their coat ends, and nothing is entered that would have them lie.
 * @throws CannotGoOn at the step that puts them away.
 */
export function refuseOilyRags({ task }: NamedStep, what: string): void {
  if (task.atOnceAfter === undefined) return;
  throw new CannotGoOn(
    worded`oily rags can set themselves alight: putting them away cannot be ${what}`,
    worded`put them away, then write: drybench done ${task.piece} ${task.section}/${task.step}`,
  );
}

/** Enters deeds into the journal and says what was noted. `deedsOf` sees the entries as they are at that moment. */
export async function enter(
  call: Call,
  shop: OpenShop,
  command: string,
  deedsOf: (entries: readonly Entry[]) => readonly Deed[],
  said: string,
): Promise<ExitCode> {
  const zone = shop.book.shop.timeZone;
  const appended = appendDeeds(shop.folder, deedsOf, { at: shop.now, zone, command, disk: call.disk });
  if (!appended.ok)
    throw new CannotGoOn(worded`the journal is not right: nothing was entered`, undefined, 2, appended.findings);
  await warn(call, appended.findings);
  if (wantsJson(call))
    printJson(call, { format: 'drybench.entered/1', entries: appended.entries.map((e) => recordOfEntry(e, zone)) });
  else {
    await tell(call, worded`Noted: ${harmless(said)}.\n`);
    // For a person, who may have mistyped; a script has no use for it.
    if (command !== 'undo' && call.io.stderr.isTTY === true && !isFlagged(call, 'dryRun'))
      call.io.stderr.write(worded`  Mistyped? drybench undo takes it back.\n`);
  }
  return 0;
}

/** `Pine washstand, body/enamel-1` */
export function sayTask({ shop, task }: NamedStep): string {
  const piece = shop.book.pieces.find((p) => p.id === task.piece)?.name ?? task.piece;
  return `${piece}, ${task.section}/${task.step}`;
}

/** What stands open before a step that is entered: perhaps done and not entered, perhaps left out. */
export async function tellOpenBefore(call: Call, { situation, task }: NamedStep): Promise<void> {
  if (wantsJson(call)) return;
  const open = openBefore(
    task,
    new Map(situation.tasks.map((t) => [t.id, t])),
    (id) => situation.done.has(id) || situation.atWork.has(id),
  ).reverse();
  if (open.length === 0) return;
  const names = open.map((t) => `${t.section}/${t.step}`);
  const most = mostShown(MOST_NAMES, await answerLook(call));
  const listed = names.length <= most ? names.join(', ') : `${names.slice(0, most).join(', ')} …`;
  await tell(
    call,
    worded`Before it, not entered: ${harmless(listed)}.\n` +
      worded`Done too: drybench done ${task.piece} STEP. Left out: drybench skip ${task.piece} STEP. Else the plan has it still to do.\n`,
  );
}

/** More names than these are no help. */
const MOST_NAMES = 6;
