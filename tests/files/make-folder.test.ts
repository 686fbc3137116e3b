import { mkdirSync, mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { realDisk } from '../../src/files/disk.ts';

function inFolder(act: (folder: string) => void): void {
  const folder = mkdtempSync(join(tmpdir(), 'drybench-folder-'));
  try {
    act(folder);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

it('makes a folder with all above it, and leaves one that is there', () => {
  inFolder((folder) => {
    realDisk.makeFolder(join(folder, 'a', 'b', 'c'));
    mkdirSync(join(folder, 'a', 'b', 'c', 'kept'));
    realDisk.makeFolder(join(folder, 'a', 'b', 'c'));
    expect(statSync(join(folder, 'a', 'b', 'c', 'kept')).isDirectory()).toBe(true);
  });
});

it('refuses where a file stands in the way', () => {
  inFolder((folder) => {
    writeFileSync(join(folder, 'file'), '');
    expect(() => realDisk.makeFolder(join(folder, 'file'))).toThrow('EEXIST');
    expect(() => realDisk.makeFolder(join(folder, 'file', 'below'))).toThrow('ENOTDIR');
  });
});

it.runIf(process.platform === 'linux')('ends where nothing can be made in a folder that is there', () => {
  expect(() => realDisk.makeFolder('/proc/drybench/code')).toThrow('ENOENT');
});
