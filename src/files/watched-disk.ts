import { createHash, type Hash } from 'node:crypto';
import { diskCode, O_NONBLOCK, O_RDONLY, type Disk } from './disk.ts';
import { withHandle } from './write-all.ts';

/** A question that was asked of the disk, and what it answered: `!` and a code where it refused. */
export interface Asked {
  readonly kind: 'real' | 'list' | 'open' | 'bytes';
  readonly path: string;
  readonly answer: string;
}

export interface WatchedDisk {
  readonly disk: Disk;
  /** What was asked until now, each once; undefined where one question has had two answers. */
  asked(): readonly Asked[] | undefined;
}

const sum = () => createHash('sha256');

const listed = (names: readonly string[]) => JSON.stringify([...names].sort());

function refused(error: unknown): string {
  const code = diskCode(error);
  if (code === '') throw error;
  return `! ${code}`;
}

/** A disk to read from that writes down what it is asked and what it answers: all that what is read can follow from. */
export function watched(disk: Disk): WatchedDisk {
  const notes = new Map<string, Asked>();
  const open = new Map<number, { readonly path: string; readonly sum: Hash }>();
  let torn = false;

  const note = (kind: Asked['kind'], path: string, answer: string): void => {
    const key = `${kind} ${path}`;
    const before = notes.get(key);
    if (before !== undefined && before.answer !== answer) torn = true;
    notes.set(key, { kind, path, answer });
  };
  const noted = <T>(kind: Asked['kind'], path: string, ask: () => T, say: (answer: T) => string | undefined): T => {
    try {
      const answer = ask();
      const said = say(answer);
      if (said !== undefined) note(kind, path, said);
      return answer;
    } catch (error) {
      note(kind, path, refused(error));
      throw error;
    }
  };

  return {
    asked: () => (torn ? undefined : [...notes.values()]),
    disk: {
      ...disk,
      realPath: (path) =>
        noted(
          'real',
          path,
          () => disk.realPath(path),
          (real) => real,
        ),
      list: (folder) => noted('list', folder, () => disk.list(folder), listed),
      open: (path, flags, mode) => {
        // Where it opens, its bytes are the answer.
        const handle = noted(
          'open',
          path,
          () => disk.open(path, flags, mode),
          () => undefined,
        );
        open.set(handle, { path, sum: sum() });
        return handle;
      },
      read: (handle, into, offset) => {
        const count = disk.read(handle, into, offset);
        open.get(handle)?.sum.update(into.subarray(offset, offset + count));
        return count;
      },
      close: (handle) => {
        const read = open.get(handle);
        if (read !== undefined) note('bytes', read.path, read.sum.digest('base64'));
        open.delete(handle);
        disk.close(handle);
      },
    },
  };
}

const CHUNK_BYTES = 65_536;

function bytesSum(disk: Disk, path: string): string {
  return withHandle(disk, disk.open(path, O_RDONLY | O_NONBLOCK), (handle) => {
    if (!disk.stat(handle).isFile) return '';
    const read = sum();
    const chunk = new Uint8Array(CHUNK_BYTES);
    for (;;) {
      const count = disk.read(handle, chunk, 0);
      if (count === 0) return read.digest('base64');
      read.update(chunk.subarray(0, count));
    }
  });
}

function answerNow(disk: Disk, { kind, path }: Asked): string {
  try {
    if (kind === 'real') return disk.realPath(path);
    return kind === 'list' ? listed(disk.list(path)) : bytesSum(disk, path);
  } catch (error) {
    return refused(error);
  }
}

/** Does the disk give the same answers as then? Every file is read to its end for that. */
export function answersAlike(disk: Disk, asked: readonly Asked[]): boolean {
  return asked.every((question) => answerNow(disk, question) === question.answer);
}
