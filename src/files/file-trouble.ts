import { diskCode } from './disk.ts';
import { phrase, translated, worded } from '../words/worded.ts';

export type TroubleKind =
  /** Another command works on the shop: try again later. */
  | 'in-use'
  /** The file was changed by someone else since it was read. */
  | 'changed-on-disk'
  /** The disk refuses. */
  | 'cannot-write';

/** A file could not be written; nothing of it was. `message` is for the user. */
export class FileTrouble extends Error {
  override readonly name = 'FileTrouble';
  readonly kind: TroubleKind;

  constructor(kind: TroubleKind, message: string, cause?: unknown) {
    super(message, { cause });
    this.kind = kind;
  }
}

const words: Readonly<Record<string, string>> = {
  ENOSPC: phrase('the disk is full'),
  EDQUOT: phrase('your share of the disk is full'),
  EACCES: phrase('you may not write there'),
  EPERM: phrase('you may not write there'),
  EROFS: phrase('the disk is read-only'),
  EIO: phrase('the disk reports a fault'),
  ENOENT: phrase('the folder is not there'),
  ENOTDIR: phrase('the folder is not there'),
};

/** An error of the disk in words; any other error, which is a defect, is passed on. */
export function cannotWrite(what: string, error: unknown): never {
  const code = diskCode(error);
  if (code === '') throw error;
  throw new FileTrouble('cannot-write', worded`${what} cannot be written: ${translated(words[code] ?? code)}`, error);
}
