import { realDisk, type Disk } from '../../src/files/disk.ts';

export type Failure = 'EIO' | 'ENOSPC' | 'short-write' | 'crash';

/** The process dies here: nothing that follows reaches the disk. */
export class Crash extends Error {}

export interface FailingDisk {
  readonly disk: Disk;
  /** Calls so far. */
  readonly calls: () => number;
  /** Did the failure come to pass? */
  readonly failed: () => boolean;
}

/**
 * A real disk whose call number `failAt`, from 1, fails. A short write takes half of the bytes and then says that the
 * disk is full. After a crash every further call fails too, as none would ever be made.
 */
export function failingDisk(failAt: number, failure: Failure): FailingDisk {
  let count = 0;
  let failed = false;
  const raise = (code: string): never => {
    throw Object.assign(new Error(code), { code });
  };
  const disk = Object.fromEntries(
    Object.entries(realDisk).map(([name, call]) => [
      name,
      (...args: unknown[]) => {
        if (failed && failure === 'crash') throw new Crash();
        count += 1;
        if (count === failAt) {
          failed = true;
          if (failure === 'crash') throw new Crash();
          if (failure !== 'short-write') raise(failure);
          if (name === 'write') {
            const [handle, bytes, offset] = args as Parameters<Disk['write']>;
            const half = bytes.subarray(0, offset + Math.floor((bytes.length - offset) / 2));
            realDisk.write(handle, half, offset);
          }
          raise('ENOSPC');
        }
        return (call as (...all: unknown[]) => unknown)(...args);
      },
    ]),
  ) as unknown as Disk;
  return { disk, calls: () => count, failed: () => failed };
}
