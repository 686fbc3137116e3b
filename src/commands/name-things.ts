import type { Piece } from '../model/piece.ts';
import type { Task } from '../model/task.ts';
import type { Call } from './call.ts';
import { choose, chooseAmong, meant, type Choice } from './choose.ts';
import { worded } from '../words/worded.ts';

type PieceChoice = Choice & { readonly piece: Piece };
type TaskChoice = Choice & { readonly task: Task };

/** What a piece may be called. */
export function pieceChoice(piece: Piece): PieceChoice {
  return {
    id: piece.id,
    keys: [piece.id, piece.name],
    alsoCalled: [...piece.id.split('-'), ...piece.name.split(/\s+/)],
    label: piece.name,
    piece,
  };
}

/** The piece that `word` names: its id or name, or the beginning of either or of a word in them. */
export async function choosePiece(call: Call, pieces: readonly Piece[], word: string): Promise<Piece> {
  return (await choose(call, 'piece', word, pieces.map(pieceChoice))).piece;
}

function taskChoice(task: Task): TaskChoice {
  const coat = task.coat === undefined ? '' : worded`, coat ${task.coat}`;
  return {
    id: task.id,
    keys: [task.step, `${task.section}/${task.step}`],
    label: `${task.section}/${task.step}: ${task.title}${coat}`,
    task,
  };
}

/** All steps that `word` may mean. */
export function meantTasks(tasks: readonly Task[], word: string): readonly Task[] {
  return meant(word, tasks.map(taskChoice)).map((choice) => choice.task);
}

/** The step that `word` names among `tasks` of one piece: STEP or SECTION/STEP, or the beginning of either. */
export async function chooseTask(call: Call, tasks: readonly Task[], word: string): Promise<Task> {
  // Who types the beginning of a coat's name means the coat, and not the rags after it.
  const meantRags = /rag/i.test(word);
  const choices = tasks.filter((t) => meantRags || t.atOnceAfter === undefined);
  return (await choose(call, 'step', word, choices.map(taskChoice))).task;
}

/** The next step of a piece: asks which, where several sections have one. */
export async function chooseNext(call: Call, tasks: readonly Task[], piece: Piece): Promise<Task> {
  const nextOfSection = tasks.filter((t, i) => tasks.findIndex((other) => other.section === t.section) === i);
  const [only] = nextOfSection;
  if (only !== undefined && nextOfSection.length === 1) return only;
  return (await chooseAmong(call, worded`which step of ${piece.name}`, nextOfSection.map(taskChoice))).task;
}
