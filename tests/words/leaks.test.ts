// Every command in a language of which each text is known and no letter is Latin: what Latin letters are left on a screen
// come from the files of the shop, are ids, or are typed. Any other is a text that another language cannot say.
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { parse } from 'yaml';
import { faces } from '../../src/commands/faces.ts';
import { manualPage } from '../../src/commands/manual.ts';
import { speak, type Language, type Wording } from '../../src/words/worded.ts';
import { drybench } from '../commands/run-cli.ts';
import { mistakes } from '../files/fifty-mistakes.ts';
import { root } from './sources.ts';

/** Each Latin letter as one of another script, as wide; what is filled in stays. */
const strange = vi.hoisted(() => {
  const kept = /\{\d+\}/g;
  const moved = (text: string) =>
    text.replaceAll(/[A-Za-z]/g, (c) => String.fromCharCode(c.charCodeAt(0) + (c < 'a' ? 0x0410 - 65 : 0x0430 - 97)));
  const pseudo = (text: string) => {
    let out = '';
    let from = 0;
    for (const { 0: part, index } of text.matchAll(kept)) {
      out += moved(text.slice(from, index)) + part;
      from = index + part.length;
    }
    return out + moved(text.slice(from));
  };
  return { pseudo };
});

vi.mock('../../src/words/spanish.ts', async (original) => {
  const { spanishByArea } = await original<typeof import('../../src/words/spanish.ts')>();
  const known = new Map(Object.values(spanishByArea).flatMap((area) => Object.entries(area)));
  const wordingOf = (english: string): Wording | undefined =>
    known.has(english) ? strange.pseudo(english) : undefined;
  return { spanish: { code: 'es', wordingOf } satisfies Language, spanishByArea };
});

const demo = join(root, 'shared/demo');
const now = ['--at', '2027-01-11T07:30'];

/** Strings and keys of a file. */
function stringsIn(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  if (Array.isArray(value)) return value.flatMap(stringsIn);
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => [key, ...stringsIn(inner)]);
}

const yamlFiles = (folder: string) =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => join(folder, name));

const inFile = (path: string) => stringsIn(parse(readFileSync(path, 'utf8')));
const ofShop = [join(demo, 'shop.yaml'), ...yamlFiles(join(demo, 'pieces'))].flatMap((path) => [
  path.replace(/^.*\/|\.yaml$/g, ''),
  ...inFile(path),
]);

/** Names that a narrow cell breaks or cuts. */
const broken = [
  'Drawer',
  'boxes',
  'Body',
  'and',
  'drawer',
  'fronts',
  'Hinges',
  'lock',
  'plate',
  'Pulls',
  'escutch',
  'escutcheons',
];

const shippedFolders = ['recipes', 'recipes/parts', 'shared/materials', 'shared/safety'].map((f) => join(root, f));
const shippedFiles = [...shippedFolders.flatMap(yamlFiles), join(root, 'shared/supplies.yaml')];

/** What stands under `source`, at any depth. */
function sourcesIn(value: unknown): string[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    key === 'source' && typeof inner === 'string' ? [inner] : sourcesIn(inner),
  );
}

/** Ids, and citations of sources. */
const ofShipped = shippedFiles.flatMap((path) => [
  path.replace(/^.*\/|\.yaml$/g, ''),
  ...inFile(path).filter((text) => /^[a-z0-9-]+$/.test(text)),
  ...sourcesIn(parse(readFileSync(path, 'utf8'))),
]);

const units =
  /\b(?:min|h|d|mm|cm|m|L|g|kg|K|C|F|EUR|kPa|kJ|mol|in|ft|sq|cu|gal|a|p|ISO|IANA|JSON|CSV|UTF|ASCII|NUL|UID|QR|Ctrl)\b/g;
/** What Intl says for Spanish. */
const dates = /(?<!\p{L})(?:lun|mar|mié|jue|vie|sáb|dom|ene|feb|abr|may|jun|jul|ago|sept|oct|nov|dic)(?!\p{L})/gu;
const typed =
  /--[a-z-]+(?:=\S+)?|`[^`]*`|"[^"]*"|drybench(?: [\w/.-]+)*|Drybench|\S+\.(?:yaml|csv|json|jsonl|ics|html|bashrc|zshrc|fish)\S*/g;

/** What advice names: forms that a file may have. */
const forms = ['inch', 'yd', 'Brussels', 'my', 'paint', 'away', 'chalk', 'type'];

/** Longest first, so that no part of a name is left of it. */
const fromFiles = [...new Set([...ofShop, ...ofShipped].flatMap((text) => [text, text.trim()]))]
  .filter((text) => /[A-Za-z]{2}/.test(text))
  .flatMap((text) => [text, ...text.split(', ').slice(0, 1), text.replaceAll('-', ' ')])
  .sort((a, b) => b.length - a.length);

const escaped = (text: string) => text.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&');

function wholeWords(texts: readonly string[]): RegExp {
  return new RegExp(`(?<!\\p{L})(?:${texts.map(escaped).join('|')})(?!\\p{L})`, 'gu');
}

const ofFiles = wholeWords(fromFiles);

/** What is left of a screen without all that may stand on it: a name may hold part of another, whichever goes first. */
function leaksOf(screen: string, ...more: readonly string[]): string[] {
  const others = more.length > 0 ? [wholeWords(more)] : [];
  const leftBy = (...allowed: readonly RegExp[]) => {
    const left = [typed, ...allowed, dates, units].reduce((text, may) => text.replaceAll(may, ' '), screen);
    return new Set(left.match(/[A-Za-z][A-Za-z'’]+/g) ?? []);
  };
  const otherWay = leftBy(...others, ofFiles);
  return [...leftBy(ofFiles, ...others)].filter((word) => otherWay.has(word));
}

let shop = '';
beforeAll(() => {
  shop = mkdtempSync(join(tmpdir(), 'drybench-words-'));
  cpSync(demo, shop, { recursive: true });
  const file = join(shop, 'shop.yaml');
  writeFileSync(file, readFileSync(file, 'utf8').replace(/^name:/m, 'language: es\nname:'));
});
afterAll(() => {
  rmSync(shop, { recursive: true });
  speak();
});

const inShop = (...words: readonly string[]) =>
  drybench([...words, '--shop', shop, ...now], { columns: 2000, folder: shop });

describe('no English is left', () => {
  it.each([
    ['week', '--look'],
    ['week', '--look', '--picture', '--days', '2'],
    ['today'],
    ['today', '--care'],
    ['ready'],
    ['ready', '--all'],
    ['ready', 'washstand'],
    ['why', 'washstand', 'body/prime'],
    ['promise', 'painted-brushed', '--by', '2027-03-20'],
    ['compare', '--warmer', 'garage=+3K', '--helper', '2027-01-16=08:00-12:00', '--together'],
    ['buy', '--steps'],
    ['price'],
    ['price', 'washstand'],
    ['air'],
    ['air', '--reading', '3 °C 92 %', '--surface', '1 °C', '--heat-to', '16 °C'],
    ['check'],
    ['phone', '--file', 'week.ics'],
    ['wall', '--file', 'wall.html'],
    ['wall', '--card', 'washstand', '--file', 'wall.html'],
    ['done', 'cabinet', 'whole/look-over'],
    ['undo'],
    ['week', '--days', '2'],
  ])(
    'on the screen of %s %s %s %s',
    async (...words) => {
      const { code, out, err } = await inShop(...words.filter((word) => typeof word === 'string'));
      expect(code, err).toBe(0);
      expect(leaksOf(out + err, ...broken, 'done', 'warmer', 'together', 'phone', 'week.ics', 'wall.html')).toEqual([]);
      expect(out).toMatch(/[а-я]/);
    },
    120_000,
  );

  it.each([['--help'], ...faces.map(({ name }) => [name, '--help'])])('in the help of %s', async (...words) => {
    const { out } = await inShop(...words);
    expect(leaksOf(out, ...faces.map(({ name }) => name))).toEqual([]);
    expect(out).toMatch(/[а-я]/);
  });

  it('in the manual', async () => {
    await inShop('check');
    const plain = manualPage('1')
      .replaceAll('\\-', '-')
      .replaceAll(/\\\[u[0-9A-F]+\]|\\f[BIR]|^\.\w+( \d+ "")?/gm, ' ');
    const variables = [...plain.matchAll(/[A-Z_]{4,}/g)].flatMap(([name]) => [name, ...name.split('_')]);
    expect(leaksOf(plain, ...variables, ...faces.map(({ name }) => name), 'plans', 'schemas')).toEqual([]);
  });

  it.each(mistakes.map((mistake) => [mistake.what, mistake] as const))('in what is said of %s', async (_, mistake) => {
    const path = join(shop, mistake.file);
    const { edit } = mistake;
    const before = 'from' in edit ? readFileSync(path, 'utf8') : undefined;
    const text = 'from' in edit ? (before ?? '').replace(edit.from, edit.to) : edit.whole;
    const fresh = before === undefined;
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, text);
    try {
      const { out, err } = await inShop('check');
      expect(out + err).toMatch(/[а-я]/);
      // The line that is shown stands in the file.
      const words = text.match(/[A-Za-z][\w-]*/g) ?? [];
      const said = (out + err).replaceAll(/^ {4}.*$/gm, ' ');
      expect(leaksOf(said, ...[...words, ...forms].sort((a, b) => b.length - a.length))).toEqual([]);
    } finally {
      if (fresh) rmSync(path);
      else writeFileSync(path, before);
    }
  });
});
