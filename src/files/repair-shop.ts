import { join } from 'node:path';
import { realDisk, type Disk } from './disk.ts';
import { cannotWrite } from './file-trouble.ts';
import { JOURNAL_CAP } from './journal/read.ts';
import { repairedJournal, type TakenOut } from './journal/repair.ts';
import { withLock, type LockOptions } from './lock.ts';
import { PLAN_FILE, readPlan } from './plan-file.ts';
import { readBytes } from './read-source.ts';
import { replaceFile, seen } from './safe-write.ts';
import { keepCopy, moveAside } from './set-aside.ts';
import { JOURNAL_FILE } from './shop-files.ts';
import { worded } from '../words/worded.ts';

const OWN_CAP = 50_000_000;

/** What was done about one file. */
export type Repair =
  | {
      readonly file: typeof JOURNAL_FILE;
      /** Where the journal as it was is kept. */
      readonly copy: string;
      readonly kept: number;
      readonly takenOut: readonly TakenOut[];
    }
  /** The whole file was set aside. */
  | { readonly file: string; readonly copy: string };

function repairJournal(disk: Disk, folder: string): Repair[] {
  const read = readBytes(disk, { path: folder, label: '' }, JOURNAL_FILE, JOURNAL_CAP);
  const repaired = read.ok ? repairedJournal(read.bytes) : undefined;
  if (!read.ok || repaired === undefined) return [];
  const copy = keepCopy(disk, folder, 'journal.damaged', read.bytes);
  replaceFile(disk, join(folder, JOURNAL_FILE), repaired.text, seen(read.bytes));
  return [{ file: JOURNAL_FILE, copy, kept: repaired.kept, takenOut: repaired.takenOut }];
}

function repairPlan(disk: Disk, folder: string): Repair[] {
  const { findings } = readPlan(folder, disk);
  if (findings.length === 0 || findings.some((f) => f.code === 'newer-plan')) return [];
  return [{ file: PLAN_FILE, copy: moveAside(disk, folder, PLAN_FILE) }];
}

/** Another file that Drybench writes, and whether it can be read. */
export interface OwnFile {
  readonly file: string;
  readonly isBroken: (bytes: Uint8Array) => boolean;
}

function repairOther(disk: Disk, folder: string, { file, isBroken }: OwnFile): Repair[] {
  const read = readBytes(disk, { path: folder, label: '' }, file, OWN_CAP);
  if (read.ok ? !isBroken(read.bytes) : read.missing) return [];
  return [{ file, copy: moveAside(disk, folder, file) }];
}

/** Sets aside a plan that cannot be read, under the shop's lock. What a newer Drybench wrote is left as it is. */
export function setPlanAside(folder: string, disk: Disk = realDisk): Repair | undefined {
  try {
    return repairPlan(disk, folder)[0];
  } catch (error) {
    cannotWrite(PLAN_FILE, error);
  }
}

/**
 * Sets aside what is broken of the files that Drybench itself writes, and keeps it: nothing is thrown away, and each
 * file is at any time the old one or the new one as a whole.
 * @throws FileTrouble where the shop is in use or the disk refuses.
 */
export function repairShop(
  folder: string,
  others: readonly OwnFile[] = [],
  options: LockOptions & { readonly disk?: Disk } = {},
): readonly Repair[] {
  const disk = options.disk ?? realDisk;
  return withLock(disk, folder, 'check', () => repairAll(disk, folder, others), options);
}

function repairAll(disk: Disk, folder: string, others: readonly OwnFile[]): readonly Repair[] {
  try {
    return [
      ...repairJournal(disk, folder),
      ...repairPlan(disk, folder),
      ...others.flatMap((other) => repairOther(disk, folder, other)),
    ];
  } catch (error) {
    cannotWrite(worded`a copy of what is broken`, error);
  }
}
