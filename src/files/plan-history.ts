import { join } from 'node:path';
import type { Plan } from '../model/plan.ts';
import { planDocument } from '../model/plan-document.ts';
import { diskCode, realDisk, type Disk } from './disk.ts';
import { cannotWrite } from './file-trouble.ts';
import { planIn } from './plan-file.ts';
import { readBytes } from './read-source.ts';
import { ABSENT, replaceFile, seen } from './safe-write.ts';

/** Plans that the shop has followed, so that what is taken back in the journal brings back the plan that there was. */
export const HISTORY_FOLDER = 'plans';
const PLAN_CAP = 50_000_000;
/** So many plans are kept; the oldest go first. */
export const MOST_PLANS = 200;
const NAME = /^([0-9a-f]{24})-(\d{1,10})\.json$/;

interface Kept {
  readonly name: string;
  readonly basis: string;
  readonly madeAt: number;
}

function listed(disk: Disk, shopDir: string): Kept[] {
  let names: string[];
  try {
    names = disk.list(join(shopDir, HISTORY_FOLDER));
  } catch (error) {
    if (diskCode(error) === 'ENOENT' || diskCode(error) === 'ENOTDIR') return [];
    throw error;
  }
  return names.flatMap((name) => {
    const [, basis, madeAt] = NAME.exec(name) ?? [];
    return basis === undefined || madeAt === undefined ? [] : [{ name, basis, madeAt: Number(madeAt) }];
  });
}

/** The plans made from `basis`, the latest first; what cannot be read is left out, for a plan can be made anew. */
export function* plansMadeFrom(shopDir: string, basis: string, disk: Disk = realDisk): Generator<Plan> {
  const found = listed(disk, shopDir).filter((k) => k.basis === basis);
  for (const { name } of found.sort((a, b) => b.madeAt - a.madeAt)) {
    const read = readBytes(disk, { path: join(shopDir, HISTORY_FOLDER), label: '' }, name, PLAN_CAP);
    const plan = read.ok ? planIn(Buffer.from(read.bytes).toString('utf8')).plan : undefined;
    if (plan?.basis === basis) yield plan;
  }
}

function forgetOldest(disk: Disk, folder: string, plans: readonly Kept[]): void {
  if (plans.length <= MOST_PLANS) return;
  const aged = plans.map((p) => ({ ...p, changedMs: disk.statPath(join(folder, p.name)).changedMs }));
  aged.sort((a, b) => a.changedMs - b.changedMs || a.madeAt - b.madeAt);
  for (const { name } of aged.slice(0, aged.length - MOST_PLANS)) disk.unlink(join(folder, name));
}

/**
 * Remembers a plan that has a basis. Call it under the shop's lock.
 * @throws FileTrouble
 */
export function rememberPlan(shopDir: string, plan: Plan, disk: Disk = realDisk): void {
  const { basis, madeAt } = plan;
  if (basis === undefined) return;
  const folder = join(shopDir, HISTORY_FOLDER);
  const name = `${basis}-${madeAt}.json`;
  try {
    disk.makeFolder(folder);
    const before = readBytes(disk, { path: folder, label: '' }, name, PLAN_CAP);
    const text = `${JSON.stringify(planDocument(plan))}\n`;
    replaceFile(disk, join(folder, name), text, before.ok ? seen(before.bytes) : ABSENT);
    forgetOldest(disk, folder, listed(disk, shopDir));
  } catch (error) {
    if (diskCode(error) === '') throw error;
    cannotWrite(HISTORY_FOLDER, error);
  }
}
