// Run as a process of its own: node WRITER FOLDER COUNT NAME. Enters COUNT records, telling each once it is on the disk.
import { writeSync } from 'node:fs';
import { appendDeeds } from '../../src/files/journal/append.ts';

const [folder = '', count = '0', name = ''] = process.argv.slice(2);
for (let n = 1; n <= Number(count); n += 1) {
  const appended = appendDeeds(folder, () => [{ kind: 'skipped', task: `${name}/${n}` }], {
    at: 29_993_000,
    zone: 'UTC',
    command: 'writer',
    waitMs: 60_000,
  });
  if (!appended.ok) throw new Error(appended.findings.map((f) => f.message).join('; '));
  writeSync(1, `${name}/${n}\n`);
}
