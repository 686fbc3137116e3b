import { diskCode, O_RDONLY, type Disk } from './disk.ts';

/** Writes every byte, however few the disk takes at a time. */
export function writeAll(disk: Disk, handle: number, bytes: Uint8Array): void {
  let written = 0;
  while (written < bytes.length) {
    const count = disk.write(handle, bytes, written);
    if (count <= 0) throw Object.assign(new Error('the disk took nothing'), { code: 'EIO' });
    written += count;
  }
}

/** Opens, acts and closes, whatever happens in between. */
export function withHandle<T>(disk: Disk, handle: number, act: (handle: number) => T): T {
  let result: T;
  try {
    result = act(handle);
  } catch (error) {
    try {
      disk.close(handle);
    } catch {
      // The first error says more.
    }
    throw error;
  }
  disk.close(handle);
  return result;
}

/** Makes a rename or a new file in `folder` last. Windows cannot, and needs no such thing. */
export function flushFolder(disk: Disk, folder: string): void {
  try {
    withHandle(disk, disk.open(folder, O_RDONLY), (handle) => disk.flush(handle));
  } catch (error) {
    const windowsRefuses = process.platform === 'win32' && ['EPERM', 'EISDIR', 'EACCES'].includes(diskCode(error));
    if (!windowsRefuses) throw error;
  }
}

const pause = new Int32Array(new SharedArrayBuffer(4));

/** Waits without giving way to anything else: between two tries for a lock or a rename. */
export function sleep(milliseconds: number): void {
  Atomics.wait(pause, 0, 0, milliseconds);
}

/** Everything that stands in a file, however few bytes the disk gives at a time. */
export function bytesOf(disk: Disk, path: string): Buffer {
  return withHandle(disk, disk.open(path, O_RDONLY), (handle) => {
    const chunks: Uint8Array[] = [];
    for (;;) {
      const chunk = new Uint8Array(65_536);
      const count = disk.read(handle, chunk, 0);
      if (count === 0) return Buffer.concat(chunks);
      chunks.push(chunk.subarray(0, count));
    }
  });
}

const PATIENT_TRIES = 8;

/** Acts again where Windows refuses because a scanner, an editor or another command holds the file for a moment. */
export function patiently<T>(act: () => T): T {
  for (let tries = 1; ; tries += 1) {
    try {
      return act();
    } catch (error) {
      const held = process.platform === 'win32' && ['EPERM', 'EACCES', 'EBUSY'].includes(diskCode(error));
      if (!held || tries === PATIENT_TRIES) throw error;
      sleep(10 * 2 ** tries);
    }
  }
}
