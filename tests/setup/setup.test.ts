// A shop made by questions or options: `check` is content with it, editors too (a validator of JSON Schema 2020-12 from
// outside this project), and a piece taken in can be planned and put on the phone.
import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { jsonSchemas } from '../../src/files/json-schemas.ts';
import { readBook } from '../../src/files/read-book.ts';
import { shippedDir } from '../../src/files/shipped.ts';
import { weekdays } from '../../src/model/shop.ts';
import { drybench } from '../commands/run-cli.ts';

async function inFolder<T>(use: (folder: string) => Promise<T>): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), 'drybench-setup-'));
  try {
    return await use(folder);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

const ajv = new Ajv2020({ allErrors: true, allowUnionTypes: true });

/** What a validator says of a YAML file by the schema that its first line names. */
function refusedByItsSchema(file: string): unknown {
  const text = readFileSync(file, 'utf8');
  const named = /^# yaml-language-server: \$schema=(\S+)\n/.exec(text)?.[1];
  if (named === undefined) throw new Error(`${file} names no schema in its first line`);
  const schema = JSON.parse(readFileSync(resolve(dirname(file), named), 'utf8')) as object;
  const validate = ajv.compile(schema);
  validate(parse(text));
  return validate.errors ?? [];
}

const setUp = (folder: string, ...options: string[]) =>
  drybench(['setup', join(folder, 'shop'), '--zone', 'Europe/Dublin', ...options]);

describe('JSON Schema as a validator reads it', () => {
  const shipped = shippedDir();
  const yaml = (folder: string) =>
    readdirSync(join(shipped, folder))
      .filter((f) => f.endsWith('.yaml'))
      .map((f) => join(shipped, folder, f));
  const { shop, piece, recipe, material } = jsonSchemas();
  it.each([
    ['shop', shop, [join(shipped, 'shared/demo/shop.yaml')]],
    ['piece', piece, yaml('shared/demo/pieces')],
    ['recipe', recipe, [...yaml('recipes'), ...yaml('recipes/parts')]],
    ['material', material, yaml('shared/materials')],
  ] as const)('finds every shipped %s right, and a broken one wrong', (_, schema, files) => {
    const validate = ajv.compile(schema);
    expect(files.length).toBeGreaterThan(0);
    for (const file of files) {
      const data = parse(readFileSync(file, 'utf8')) as Record<string, unknown>;
      expect([file, validate(data), validate.errors]).toEqual([file, true, null]);
      expect(validate({ ...data, nmae: 'misspelt' })).toBe(false);
      expect(validate({ ...data, name: undefined, steps: 3, sections: 3, rooms: 3, marks: 3 })).toBe(false);
    }
  });
});

describe('setup', () => {
  it('with Enter for everything makes a shop that check and editors are content with', () =>
    inFolder(async (folder) => {
      const { code, out } = await setUp(folder, '--ask-nothing');
      expect([code, out]).toEqual([0, expect.stringContaining('shop.yaml')]);
      const shop = join(folder, 'shop');
      expect(await drybench(['check', '--shop', shop])).toMatchObject({ code: 0, out: 'All is right: 0 pieces.\n' });
      expect(refusedByItsSchema(join(shop, 'shop.yaml'))).toEqual([]);
    }));

  it('asked and answered in Spanish writes what the same answers in English write', () =>
    inFolder(async (folder) => {
      const made = async (name: string, answers: readonly string[]) => {
        const { code, err } = await drybench(
          ['setup', join(folder, name), '--zone', 'Europe/Madrid', '--language', 'es'],
          { isTTY: true, typed: answers.map((line) => `${line}\n`).join('') },
        );
        expect([name, code]).toEqual([name, 0]);
        return { err, text: readFileSync(join(folder, name, 'shop.yaml'), 'utf8') };
      };
      const rest = ['', '', '2, 4, 6, 2', '0, 3, 0, 0', 'Ana, Luis'];
      const english = await made('one', [
        ...['Taller', '', '', '', 'sunday', '', 'closed', 'closed', 'Taller heated, Cochera not heated'],
        ...['14 to 20 °C', '5 to 10 °C', ...rest, 'nobody', '', '', ''],
      ]);
      const spanish = await made('two', [
        ...['Taller', '', '', '', 'Domingo', '', 'cerrado', '', 'Taller con calefacción, Cochera sin calefacción'],
        ...['14 a 20 °C', '', ...rest, 'nadie', '', '', ''],
      ]);
      expect(spanish.text).toBe(english.text);
      expect(english.text).toContain('saturday: closed');
      for (const usual of ['[lunes]', '[cerrado]', '[Taller con calefacción]', '[15 a 20 °C]', '[5 a 10 °C]'])
        expect(spanish.err).toContain(usual);
      const asUsual = await drybench(['setup', join(folder, 'three'), '--language', 'es', '--ask-nothing']);
      expect([asUsual.code, asUsual.err]).toEqual([0, '']);
      expect(await drybench(['check', '--shop', join(folder, 'three')])).toMatchObject({ code: 0 });
    }));

  it('with two people, and Enter for the rest, can do every shipped recipe', () =>
    inFolder(async (folder) => {
      expect((await setUp(folder, '--ask-nothing', '--hands', 'Ann, Ben')).code).toBe(0);
      const { findings } = readBook(join(folder, 'shop'), { shippedDir: shippedDir(), everything: true });
      expect(findings).toEqual([]);
    }));

  it('then a piece, its week, and the week on the phone', () =>
    inFolder(async (folder) => {
      const shop = join(folder, 'shop');
      const run = (...words: string[]) => drybench([...words, '--shop', shop, '--at', '2027-01-11T07:30']);
      expect((await setUp(folder, '--ask-nothing')).code).toBe(0);
      const options = [
        '--kind',
        'chair',
        '--size',
        '45 x 45 x 90',
        '--finish',
        'painted-brushed',
        '--old-finish',
        'clear',
      ];
      expect((await run('intake', '--name', 'Kitchen chair', ...options)).code).toBe(0);
      expect(refusedByItsSchema(join(shop, 'pieces/kitchen-chair.yaml'))).toEqual([]);
      expect((await run('check')).out).toBe('All is right: 1 piece.\n');
      const week = await run('week');
      expect([week.code, week.out]).toEqual([0, expect.stringContaining('Kitchen chair')]);
      const calendar = join(folder, 'week.ics');
      expect((await run('phone', '--file', calendar)).code).toBe(0);
      expect(readFileSync(calendar, 'utf8')).toContain('BEGIN:VEVENT');
    }));

  it('says what was answered, whatever that is', () =>
    fc.assert(
      fc.asyncProperty(
        fc.record({
          name: fc
            .string({ unit: 'grapheme', minLength: 1, maxLength: 40 })
            .filter((n) => n.trim() !== '' && !n.startsWith('-')),
          units: fc.constantFrom('metric', 'us'),
          currency: fc.constantFrom('EUR', 'USD', 'GBP', 'JPY'),
          clock: fc.constantFrom(12, 24),
          start: fc.constantFrom('monday', 'sunday'),
          from: fc.integer({ min: 6, max: 9 }),
          saturday: fc.boolean(),
          cold: fc.integer({ min: -5, max: 15 }),
          more: fc.integer({ min: 0, max: 12 }),
          rh: fc.integer({ min: 20, max: 95 }),
          bench: fc.integer({ min: 1, max: 5 }),
          sprayers: fc.nat(2),
        }),
        (a) =>
          inFolder(async (folder) => {
            const us = a.units === 'us';
            const [cold, warm] = [a.cold, a.cold + a.more].map((c) => (us ? Math.round((c * 9) / 5 + 32) : c));
            const [open, shut] = [`0${a.from}:00-17:00`, a.saturday ? '09:00-13:00' : 'closed'];
            const { code, err } = await setUp(
              folder,
              ...['--name', a.name, '--units', a.units, '--currency', a.currency, '--clock', String(a.clock)],
              ...[
                '--week-starts-on',
                a.start,
                '--hours',
                open,
                '--saturday',
                shut,
                '--rooms',
                'Main heated, Cold shed',
              ],
              ...['--air', `${cold} to ${warm} ${us ? '°F' : '°C'}; 2 to 8 °C`, '--humidity', `${a.rh} %; 80`],
              ...['--places', `${a.bench}, 2, 1, 1; 0, 3, 0, 0`, '--hands', 'Ann, Ben', '--who-sprays', 'ben'],
              ...['--sprayers', String(a.sprayers)],
            );
            expect([code, err]).toEqual([0, '']);
            const shop = join(folder, 'shop');
            expect(refusedByItsSchema(join(shop, 'shop.yaml'))).toEqual([]);
            const { book, findings } = readBook(shop, { shippedDir: shippedDir() });
            expect(findings).toEqual([]);
            const hours = { from: a.from * 60, to: 17 * 60 };
            expect(book!.shop).toMatchObject({
              name: a.name.trim(),
              timeZone: 'Europe/Dublin',
              units: a.units,
              currency: a.currency,
              clock: a.clock,
              weekStartsOn: a.start,
              rooms: [{ id: 'main', name: 'Main' }, { id: 'cold-shed' }],
              hands: [
                { name: 'Ann', skills: ['lift'] },
                { name: 'Ben', skills: ['spray', 'lift'] },
              ],
            });
            for (const day of weekdays)
              expect(book!.shop.opening.week[day]).toEqual(
                day === 'sunday' ? [] : day === 'saturday' ? (a.saturday ? [{ from: 540, to: 780 }] : []) : [hours],
              );
            expect(book!.shop.stations.map((s) => [s.room, s.kind, s.slots])).toEqual([
              ['main', 'bench', a.bench],
              ['main', 'floor', 2],
              ['main', 'rack', 1],
              ['main', 'spray', 1],
              ['cold-shed', 'floor', 3],
            ]);
            expect(book!.shop.tools.some((t) => t.id === 'sprayer')).toBe(a.sprayers > 0);
            const air = book!.shop.rooms[0]!.air;
            if (air.kind !== 'daily') throw new Error(`air is ${air.kind}`);
            const [night, noon] = air.curve;
            expect(Math.abs(night!.tempC - a.cold)).toBeLessThan(0.6);
            expect(Math.abs(noon!.tempC - a.cold - a.more)).toBeLessThan(0.6);
            expect(noon!.rhPercent).toBe(a.rh);
            expect(night!.rhPercent).toBeGreaterThanOrEqual(Math.min(95, a.rh));
          }),
      ),
      { numRuns: 15 },
    ));

  it('leaves a shop that is there alone, and can give it schemas', () =>
    inFolder(async (folder) => {
      expect((await setUp(folder, '--ask-nothing')).code).toBe(0);
      const shop = join(folder, 'shop');
      const before = readFileSync(join(shop, 'shop.yaml'), 'utf8');
      const again = await setUp(folder, '--ask-nothing', '--name', 'Other');
      expect([again.code, again.err.replaceAll(/\s+/g, ' ')]).toEqual([
        2,
        expect.stringContaining('holds a shop already: nothing was written'),
      ]);
      rmSync(join(shop, 'schemas'), { recursive: true });
      expect((await setUp(folder, '--schemas')).code).toBe(0);
      expect(existsSync(join(shop, 'schemas/piece.json'))).toBe(true);
      expect(readFileSync(join(shop, 'shop.yaml'), 'utf8')).toBe(before);
    }));

  it('who ends the questions early has no shop', () =>
    inFolder(async (folder) => {
      const { code, err } = await drybench(['setup', join(folder, 'shop')], { isTTY: true, typed: 'Quay\n\n\n' });
      expect([code, err]).toEqual([130, expect.stringContaining('stopped: nothing was written')]);
      expect(readdirSync(folder)).toEqual([]);
    }));

  it('refuses a shop in which nothing can be done', () =>
    inFolder(async (folder) => {
      const closed = await setUp(folder, '--hours', 'closed');
      expect([closed.code, closed.err]).toEqual([2, expect.stringContaining('never open')]);
      const empty = await setUp(folder, '--places', '0, 0, 0, 0');
      expect([empty.code, empty.err]).toEqual([2, expect.stringContaining('no place to work')]);
      expect(readdirSync(folder)).toEqual([]);
    }));
});
