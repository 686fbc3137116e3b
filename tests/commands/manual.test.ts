import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { faces } from '../../src/commands/faces.ts';
import { manualPage } from '../../src/commands/manual.ts';
import { drybench } from './run-cli.ts';

const page = manualPage('1.2.3');
const asText = (lines: string) =>
  lines
    .replaceAll(/\\\[u([0-9A-F]{4,5})\]/g, (_, code: string) => String.fromCodePoint(parseInt(code, 16)))
    .replaceAll('\\-', '-');
const oneLine = (text: string) => text.replaceAll(/\s+/g, ' ');
const shown = oneLine(
  asText(page)
    .replaceAll(/\\f[BIR]/g, '')
    .replaceAll('\\&', ''),
);

describe('the manual', () => {
  it.each([undefined, ...faces.map((face) => face.name)])('holds all that the help of %s says', async (name) => {
    const { out } = await drybench(name === undefined ? [] : [name, '--help']);
    // An entry of the help: two blanks, what to type, two blanks or more, what it means, on as many lines as it takes.
    const entries = [...out.matchAll(/^ {2}(\S.*?)(?: {2,}|\n {10,})(\S.*(?:\n {10,}\S.*)*)/gm)];
    expect(entries.length).toBeGreaterThan(3);
    for (const [, typed = '', meaning = ''] of entries) {
      if (typed.startsWith('-h,') || typed === '') continue;
      expect(shown).toContain(oneLine(`${typed.replace(' [options]', '')} ${meaning}`));
    }
  });

  it('names the version, and not what only scripts of shells ask', () => {
    expect(page).toContain('drybench 1.2.3');
    expect(shown).not.toContain('offer');
  });

  it('is found by man in what is packed', () => {
    const read = (name: string) => readFileSync(fileURLToPath(new URL(`../../${name}`, import.meta.url)), 'utf8');
    const { man, version, files } = JSON.parse(read('package.json')) as Record<string, string> & { files: string[] };
    expect(man).toBe('./dist/drybench.1');
    expect(files).toContain('dist');
    expect(read('dist/drybench.1')).toBe(manualPage(version ?? ''));
  });

  it.skipIf(!existsSync('/usr/bin/groff'))('is set without a warning, no line over 80', () => {
    const set = spawnSync('groff', ['-man', '-Tutf8', '-ww', '-rLL=78n', '-P-cbou'], { input: page, encoding: 'utf8' });
    expect({ status: set.status, stderr: set.stderr }).toEqual({ status: 0, stderr: '' });
    for (const line of set.stdout.split('\n')) expect(Array.from(line).length).toBeLessThanOrEqual(80);
    expect(set.stdout).toContain('°C');
  });
});
