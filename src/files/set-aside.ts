import { randomBytes } from 'node:crypto';
import { join } from 'node:path';
import { O_CREAT, O_EXCL, O_WRONLY, type Disk } from './disk.ts';
import { flushFolder, patiently, withHandle, writeAll } from './write-all.ts';

const freeName = (stem: string): string => `${stem}-${Date.now()}-${randomBytes(3).toString('hex')}`;

/** Keeps bytes in a new file of the folder, on the disk when this returns. @returns its name. */
export function keepCopy(disk: Disk, folder: string, stem: string, bytes: Uint8Array): string {
  const name = freeName(stem);
  withHandle(disk, disk.open(join(folder, name), O_WRONLY | O_CREAT | O_EXCL, 0o644), (handle) => {
    writeAll(disk, handle, bytes);
    disk.flush(handle);
  });
  flushFolder(disk, folder);
  return name;
}

/** Gives what stands at `name`, whatever it is, another name in the same folder. @returns that name. */
export function moveAside(disk: Disk, folder: string, name: string): string {
  const aside = freeName(`${name}.broken`);
  patiently(() => disk.rename(join(folder, name), join(folder, aside)));
  flushFolder(disk, folder);
  return aside;
}
