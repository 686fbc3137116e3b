import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { faces } from '../../src/commands/faces.ts';
import { published, schemaFolder, schemaNames as names, schemas } from '../support/published.ts';
import { drybench, type Surroundings } from './run-cli.ts';
import { enteredOfTheStool, inShop } from './small-shop.ts';

const seen = new Set<string>();

/** Validates by the schema that the document names, or that of a reading, which names none; notes that it was used. */
function expectPublished(document: unknown): void {
  const { name, errors } = published(document);
  expect(errors).toEqual([]);
  seen.add(name);
}

/** Runs a command with --json: one published document on standard output, or one on standard error. */
async function answered(words: readonly string[], surroundings: Surroundings, code = 0): Promise<void> {
  const ran = await drybench([...words, '--json'], surroundings);
  if (ran.code !== code) throw new Error(`${words.join(' ')}: exit code ${ran.code}\n${ran.err}`);
  if (ran.out !== '') expectPublished(JSON.parse(ran.out));
  else {
    const trouble: unknown = JSON.parse(ran.err);
    expect(trouble).toMatchObject({ format: 'drybench.trouble/1', exitCode: code });
    expectPublished(trouble);
  }
}

describe('--json on a small shop', () => {
  const asked: readonly (readonly string[])[] = [
    ['week', '--dry-run'],
    ['week'],
    ['today'],
    ['ready'],
    ['ready', 'stool'],
    ['why', 'stool', 'paint-1'],
    ['promise', 'brushed', '--by', '2027-03-01', '--price', '50 EUR'],
    ['compare', '--warmer', 'shed=+3K', '--cost', 'warmer=12EUR', '--together'],
    ['check'],
    ['check', '--repair'],
    ['air'],
    ['air', '--reading', '13 °C 82 %', '--surface', '12 °C', '--heat-to', '16 °C'],
    ['air', '--reading', '-3 °C 82 %'],
    ['buy'],
    ['price'],
    ['price', 'stool'],
    ['begun', 'stool', 'scuff'],
    ['done', 'stool', 'scuff', '--from', '2027-01-11T06:30', '--by', 'owner', '--air', '18 °C 55 %'],
    ...enteredOfTheStool,
    ['week'],
    ['today'],
    ['air'],
    ['phone', '--file', 'x.ics'],
    ['wall'],
    ['wall', '--card', 'stool'],
    ['wall', '--labels'],
    ['week', '--version'],
    ['setup', 'new', '--zone', 'Europe/Dublin', '--ask-nothing'],
    ['setup', 'new', '--schemas'],
    [
      'intake',
      '--name',
      'Red chair',
      '--kind',
      'chair',
      '--size',
      '40 x 40 x 50 cm',
      '--finish',
      'brushed',
      '--ask-nothing',
    ],
    ['lead-test', 'chest', 'none'],
    ['completion', 'bash'],
  ];

  it('every command is asked', () => {
    expect(new Set(asked.map(([name]) => name))).toEqual(new Set(faces.map((face) => face.name)));
  });

  it('every answer is as its schema says', () =>
    inShop({}, async (shop) => {
      const chest = `name: Chest\nkind: chest\nmay-carry-lead: yes\nsections:\n  top: { recipe: brushed, area: 1 m2 }\n`;
      for (const words of asked) {
        if (words[0] === 'lead-test') writeFileSync(join(shop, 'pieces/chest.yaml'), chest);
        await answered(words, { folder: shop });
      }
    }));

  it('what cannot be answered is as its schema says, on standard error', () =>
    inShop({ 'pieces/bad.yaml': 'nmae: x\n' }, async (shop) => {
      await answered(['check'], { folder: shop }, 2);
      await answered(['week'], { folder: shop }, 2);
      await answered(['wek'], { folder: shop }, 2);
      await answered(['week', '--days', 'many'], { folder: shop }, 2);
      await answered(['week', '--bogus'], { folder: shop }, 2);
      await answered(['why', 'stool'], { folder: shop }, 2);
      await answered(['week'], {}, 2);
      await answered(['completion', 'cmd'], {}, 2);
      rmSync(join(shop, 'pieces/bad.yaml'));
      await answered(['ready', 'table'], { folder: shop }, 2);
      await answered(['promise', 'brushed'], { folder: shop }, 2);
      await answered(['undo'], { folder: shop }, 1);
    }));
});

describe('--json on the demo', () => {
  const home = mkdtempSync(join(tmpdir(), 'drybench-json-'));
  beforeAll(() => cpSync('shared/demo', home, { recursive: true }));
  afterAll(() => rmSync(home, { recursive: true }));
  const at = ['--at', '2027-01-11T07:30'];

  const asked: string[][] = [
    ['week', '--look'],
    ['today'],
    ['ready'],
    ['why', 'oak-table', 'top/oil-2'],
    ['air'],
    ['buy'],
    ['price'],
    ['wall', '--file', 'wall.html'],
  ];
  it.each(asked)('%s %s', (...words: string[]) => answered([...words, ...at], { folder: home }));
});

describe('the schemas', () => {
  it('each was met by an answer', () => {
    expect([...seen].sort()).toEqual(names.sort());
  });

  it.each(names)('%s says what it is, and refuses something else', (name) => {
    const schema = JSON.parse(readFileSync(join(schemaFolder, `${name}.json`), 'utf8')) as Record<string, unknown>;
    expect(schema).toMatchObject({ $id: `${name}.json`, $schema: 'https://json-schema.org/draft/2020-12/schema' });
    expect(schema['title']).toMatch(/\w/);
    expect(schemas.getSchema(`${name}.json`)?.({ format: `drybench.${name}/1` })).toBe(false);
  });
});
