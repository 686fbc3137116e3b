import { applyPatch, parsePatch } from 'diff';
import { chmodSync, lstatSync, mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { faces } from '../../src/commands/faces.ts';
import fc from '../support/property.ts';
import { drybench, type Surroundings } from './run-cli.ts';
import { enteredOfTheStool, inShop } from './small-shop.ts';

/** What a folder holds: bytes of files by their path, and of everything in it and of itself when it was changed last. */
interface Tree {
  readonly files: ReadonlyMap<string, Buffer>;
  readonly changed: ReadonlyMap<string, string>;
}

function treeOf(folder: string): Tree {
  const files = new Map<string, Buffer>();
  const changed = new Map<string, string>();
  const look = (path: string): void => {
    const { mtimeNs, mode } = lstatSync(join(folder, path), { bigint: true });
    changed.set(path, `${mtimeNs} ${mode}`);
    const stat = lstatSync(join(folder, path));
    if (stat.isDirectory()) for (const name of readdirSync(join(folder, path))) look(join(path, name));
    else if (stat.isFile()) files.set(path, readFileSync(join(folder, path)));
  };
  look('');
  return { files, changed };
}

/** What is set aside is kept under a name with the time and a random number, which no two runs have alike. */
const withoutChance = (text: string) => text.replaceAll(/-\d{13}-[0-9a-f]{6}(?![0-9a-f])/g, '-COPY');

function texts(files: ReadonlyMap<string, Buffer>): Record<string, string> {
  const named = [...files].map(([path, bytes]): [string, string] => [withoutChance(path), bytes.toString('utf8')]);
  return Object.fromEntries(named.sort());
}

interface DryAnswer {
  readonly dryRun: boolean;
  readonly files: readonly { readonly path: string; readonly change: string }[];
  readonly diff: string;
}

/** The files as the diff makes them of what they were. */
function patched(before: ReadonlyMap<string, Buffer>, { diff }: Pick<DryAnswer, 'diff'>): Record<string, string> {
  const after = new Map(Object.entries(texts(before)));
  for (const patch of diff === '' ? [] : parsePatch(diff)) {
    const { oldFileName = '', newFileName = '' } = patch;
    const old = oldFileName === '/dev/null' ? '' : (after.get(oldFileName) ?? '');
    const made = applyPatch(old, patch, { autoConvertLineEndings: false });
    if (made === false) throw new Error(`the diff of ${oldFileName} fits no text`);
    if (newFileName === '/dev/null') after.delete(oldFileName);
    else after.set(withoutChance(newFileName), made);
  }
  return Object.fromEntries([...after].sort());
}

/** Tries a command, then does it. @returns whether anything was written. */
async function triedThenDone(words: readonly string[], folder: string): Promise<boolean> {
  const before = treeOf(folder);
  const tried = await drybench([...words, '--dry-run', '--json'], { folder });
  const between = treeOf(folder);
  expect(between).toEqual(before);
  const done = await drybench(words, { folder });
  expect({ words, code: tried.code }).toEqual({ words, code: done.code });
  const after = texts(treeOf(folder).files);
  if (tried.out === '') {
    expect(after).toEqual(texts(before.files));
    return false;
  }
  const answer = JSON.parse(tried.out) as DryAnswer;
  expect(answer.dryRun).toBe(true);
  expect(patched(before.files, answer)).toEqual(after);
  const old = texts(before.files);
  const differing = Object.keys({ ...old, ...after }).filter((path) => after[path] !== old[path]);
  expect(answer.files.map(({ path }) => withoutChance(path)).sort()).toEqual(differing.sort());
  return differing.length > 0;
}

const chest = `name: Chest\nkind: chest\nmay-carry-lead: yes\nsections:\n  top: { recipe: brushed, area: 1 m2 }\n`;
const chair = ['--kind', 'chair', '--size', '40 x 40 x 50 cm', '--finish', 'brushed', '--ask-nothing'];

/** Every way in which a command writes. */
const writing: readonly (readonly string[])[] = [
  ['week'],
  ['begun', 'stool', 'scuff'],
  ['done', 'stool', 'scuff', '--from', '2027-01-11T06:30', '--by', 'owner', '--air', '18 °C 55 %'],
  ['week', '--anew'],
  ...enteredOfTheStool,
  ['lead-test', 'chest', 'none'],
  ['phone', '--file', 'x.ics'],
  ['wall'],
  ['wall', '--card', 'stool', '--file', 'pieces/card.html'],
  ['wall', '--labels'],
  ['setup', 'new', '--zone', 'Europe/Dublin', '--ask-nothing'],
  ['setup', '.', '--schemas'],
  ['intake', '--name', 'Red chair', ...chair],
  ['check', '--repair'],
];

describe('a dry run', () => {
  it('every command that writes is tried, and only such a one', () => {
    const known = new Set(writing.map(([name]) => name));
    expect(new Set(faces.filter((face) => face.writes !== undefined).map(({ name }) => name))).toEqual(known);
  });

  it('no command names a disk by itself', () => {
    const sources = readdirSync('src/commands', { recursive: true, encoding: 'utf8' }).filter((f) => f.endsWith('.ts'));
    expect(sources.length).toBeGreaterThan(50);
    const reaching = /\brealDisk\b|\b(write|append|mkdir|rename|unlink|rm)\w*(Sync)?\b[^;]*from 'node:fs/;
    const naming = sources.filter((file) => reaching.test(readFileSync(join('src/commands', file), 'utf8')));
    expect(naming).toEqual([]);
  });

  it('writes nothing, and shows what the same command writes then', () =>
    inShop({ 'pieces/chest.yaml': chest }, async (folder) => {
      for (const words of writing) {
        if (words[0] === 'check') writeFileSync(join(folder, 'plan.json'), 'no plan\n\tof ours');
        expect({ words, wrote: await triedThenDone(words, folder) }).toEqual({ words, wrote: true });
      }
    }));

  it('does so in any order, on a journal that is spoilt or not, and where the command refuses', () => {
    const order = fc.array(fc.constantFrom(...writing), { minLength: 3, maxLength: 7 });
    const spoil = fc.option(
      fc.record({ at: fc.double({ min: 0, max: 0.999, noNaN: true }), with: fc.constantFrom('x', '\n', '\u001b') }),
    );
    return fc.assert(
      fc.asyncProperty(order, spoil, fc.constantFrom('', 'x\n', '{"format":'), (commands, fault, plan) =>
        inShop({ 'pieces/chest.yaml': chest, ...(plan !== '' && { 'plan.json': plan }) }, async (folder) => {
          for (const step of ['scuff', 'wipe']) await drybench(['skip', 'stool', step], { folder });
          const journal = join(folder, 'journal.jsonl');
          const sound = readFileSync(journal, 'utf8');
          const cutAt = Math.floor((fault?.at ?? 0) * sound.length);
          if (fault !== null) writeFileSync(journal, sound.slice(0, cutAt) + fault.with + sound.slice(cutAt + 1));
          for (const words of [...commands, ['check', '--repair'], ...commands]) await triedThenDone(words, folder);
        }),
      ),
      { numRuns: process.env['DRYBENCH_LONG'] === '1' ? 40 : 4 },
    );
  });

  it('of a command that only looks is its answer, and nothing is remembered', () =>
    inShop({}, async (folder) => {
      for (const words of [['today'], ['ready'], ['week', '--look'], ['check'], ['wall', '--file', '-']]) {
        const before = treeOf(folder);
        const tried = await drybench([...words, '--dry-run'], { folder });
        expect(treeOf(folder)).toEqual(before);
        expect(tried).toEqual(await drybench(words, { folder }));
      }
    }));

  const dry = async (folder: string, words: readonly string[], more: Surroundings = {}) => {
    const before = treeOf(folder);
    const ran = await drybench([...words, '--dry-run'], { folder, ...more });
    expect(treeOf(folder)).toEqual(before);
    return ran;
  };

  it('shows a unified diff, its paths from where one stands', () =>
    inShop({}, async (folder) => {
      const { code, out, err } = await dry(folder, ['skip', 'stool', 'wipe']);
      expect({ code, err }).toEqual({ code: 0, err: '' });
      expect(out).toMatch(
        /^--- \/dev\/null\n\+\+\+ journal\.jsonl\n@@ -0,0 \+1,1 @@\n\+\{"sum":.*"kind":"skipped".*\}\n$/,
      );
      const below = await dry(folder, ['skip', 'stool', 'wipe'], { folder: join(folder, 'pieces') });
      expect(below.out).toContain('+++ ../journal.jsonl\n');
    }));

  it('is coloured only where colour is on, fits the screen of a person, and tells that nothing was written', () =>
    inShop({}, async (folder) => {
      const person = { isTTY: true, columns: 40, env: { TERM: 'xterm' } };
      const { out, err } = await dry(folder, ['skip', 'stool', 'wipe'], person);
      expect(out).toContain('\u001b[32m+{"sum":');
      expect(err).toBe('drybench: a dry run: nothing was written\n');
      const plain = await dry(folder, ['skip', 'stool', 'wipe', '--plain'], person);
      expect(plain.out).not.toContain('\u001b');
      for (const line of plain.out.split('\n')) expect(line.length).toBeLessThanOrEqual(40);
    }));

  it('nothing from a file steers the terminal', () =>
    inShop({ 'journal.jsonl': '\u001b[2J\u202e\n' }, async (folder) => {
      const { out } = await dry(folder, ['check', '--repair']);
      expect(out).toContain('-\\u{1b}[2J\\u{202e}\n');
      expect(out).not.toMatch(/[\u001b\u202e]/);
    }));

  it('of what is no text tells that it differs; of a folder, its new name', () =>
    inShop({}, async (folder) => {
      writeFileSync(join(folder, 'journal.jsonl'), Buffer.from([0xff, 0xfe, 0x0a]));
      mkdirSync(join(folder, 'plan.json'));
      const { code, out } = await dry(folder, ['check', '--repair']);
      expect(code).toBe(0);
      expect(out).toContain('Binary files journal.jsonl and journal.jsonl differ\n');
      expect(out).toMatch(/Binary files \/dev\/null and journal\.damaged-\S+ differ\n/);
      expect(out).toMatch(/rename from plan\.json\nrename to plan\.json\.broken-\S+\n/);
    }));

  it('with what goes to standard output, shows what is written beside it', () =>
    inShop({}, async (folder) => {
      const before = treeOf(folder);
      const { code, out } = await dry(folder, ['phone', '--file', '-']);
      expect(out).toContain('+++ calendar.json\n');
      expect(await drybench(['phone', '--file', '-'], { folder })).toMatchObject({ code });
      expect(patched(before.files, { diff: out })).toEqual(texts(treeOf(folder).files));
    }));

  it('where nothing is to be written says so', () =>
    inShop({}, async (folder) => {
      expect(await dry(folder, ['check', '--repair'])).toEqual({
        code: 0,
        out: 'Nothing would be written.\n',
        err: '',
      });
      const { out } = await drybench(['check', '--repair', '--dry-run', '--json'], { folder });
      expect(JSON.parse(out)).toEqual({ format: 'drybench.dryrun/1', dryRun: true, files: [], diff: '' });
    }));

  it(
    'finds a shop that another command holds in use, and leaves its lock',
    () =>
      inShop({}, async (folder) => {
        const lock = { pid: process.pid, host: 'another-machine', began: '', since: 'now', command: 'week' };
        writeFileSync(join(folder, '.drybench.lock'), JSON.stringify(lock));
        expect(await dry(folder, ['skip', 'stool', 'wipe'])).toMatchObject({ code: 75, out: '' });
      }),
    20_000,
  );

  it('a link stays a link: what it points to is what would change', () =>
    inShop({}, async (folder) => {
      await drybench(['skip', 'stool', 'wipe'], { folder });
      await drybench(['wall', '--file', 'pieces/real.html'], { folder });
      symlinkSync('pieces/real.html', join(folder, 'wall.html'));
      const { out } = await dry(folder, ['wall', '--days', '3']);
      expect(out).toContain('+++ pieces/real.html\n');
    }));

  it('what is served is not tried', () =>
    inShop({}, async (folder) => {
      expect((await dry(folder, ['phone', '--serve'])).code).toBe(2);
    }));

  it.skipIf(process.getuid?.() === 0)('refuses what the disk would refuse', () =>
    inShop({}, async (folder) => {
      chmodSync(folder, 0o555);
      try {
        const words = ['skip', 'stool', 'wipe'];
        const tried = await dry(folder, words);
        expect(tried).toEqual(await drybench(words, { folder }));
        expect(tried.code).toBe(2);
      } finally {
        chmodSync(folder, 0o755);
      }
    }),
  );
});
