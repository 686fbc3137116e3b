import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { shippedDir } from '../../src/files/shipped.ts';
import { drybench } from '../commands/run-cli.ts';
import { transcript } from './session.ts';

// README shows what the program prints: each block after `<!-- shows: … -->` is the output of that command at 80 columns
// without colour; each after `<!-- session … -->` what a terminal shows of the commands and answers typed there.
// DRYBENCH_WRITE_README=1 writes it anew.

const file = join(shippedDir(), 'README.md');
const block = /(<!-- shows: ([^>]*) -->\n```text\n)([^`]*)```/g;

test('README shows what the program prints', async () => {
  const readme = readFileSync(file, 'utf8');
  const shown = [...readme.matchAll(block)];
  expect(shown.length).toBeGreaterThan(0);
  let written = readme;
  for (const [whole, head, command, screen] of shown) {
    const { out, code } = await drybench(command!.trim().split(' '), { folder: shippedDir(), columns: 80 });
    expect(code).toBe(0);
    if (process.env['DRYBENCH_WRITE_README'] === '1') written = written.replace(whole, `${head!}${out}\`\`\``);
    else expect(screen).toBe(out);
  }
  if (written !== readme) writeFileSync(file, written);
});

const session = /(<!-- session\n([^>]*)-->\n```text\n)([^`]*)```/g;

test('README shows its first ten minutes as they are', async () => {
  const readme = readFileSync(file, 'utf8');
  const shown = [...readme.matchAll(session)];
  expect(shown.length).toBeGreaterThan(0);
  let written = readme;
  for (const [whole, head, script, screen] of shown) {
    const now = await transcript(script!);
    expect(now).not.toContain('(exit code');
    if (process.env['DRYBENCH_WRITE_README'] === '1') written = written.replace(whole, () => `${head!}${now}\`\`\``);
    else expect(screen).toBe(now);
  }
  if (written !== readme) writeFileSync(file, written);
});

const program = /(<!-- runs -->\n```js\n([^`]*(?:`[^`\n]+`[^`]*)*?)```\n\nprints\n\n```text\n)([^`]*)```/;

test('README shows what the program in it prints', () => {
  const readme = readFileSync(file, 'utf8');
  const [whole, head, code, screen] = program.exec(readme) ?? [];
  // The package's own name leads to its built library, as for those who install it.
  const { status, stdout, stderr } = spawnSync(process.execPath, ['--input-type=module', '-e', code!], {
    cwd: shippedDir(),
    encoding: 'utf8',
  });
  expect(stderr).toBe('');
  expect(status).toBe(0);
  if (process.env['DRYBENCH_WRITE_README'] === '1')
    writeFileSync(
      file,
      readme.replace(whole!, () => `${head!}${stdout}\`\`\``),
    );
  else expect(screen).toBe(stdout);
});
