import { readPlan } from '../files/plan-file.ts';
import type { Task } from '../model/task.ts';
import { listFlag, knownId } from './flag-values.ts';
import type { Call } from './call.ts';
import type { OpenShop } from './open-shop.ts';

/** Who did a step, and in which of its ways. */
export interface Doing {
  readonly hands?: readonly string[];
  readonly way?: string;
}

/** As `--by` says, else as the shop's plan had it; in a shop with one hand there is no other. */
export function doingOf(call: Call, { folder, book }: OpenShop, task: Task): Doing {
  const { hands } = book.shop;
  const planned = readPlan(folder).plan?.steps.find((s) => s.id === task.id);
  const told = listFlag(call, 'by').map((id) => knownId('--by', id, hands).id);
  const known = (planned?.hands ?? []).filter((id) => hands.some((h) => h.id === id));
  const only = hands.length === 1 ? hands.map((h) => h.id) : [];
  const who = [told, known, only].find((ids) => ids.length > 0);
  const way = task.ways.length > 1 ? task.ways.find((w) => w.name === planned?.way) : undefined;
  return { ...(who && { hands: who }), ...(way && { way: way.name }) };
}
