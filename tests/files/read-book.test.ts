import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { findShop } from '../../src/files/find-shop.ts';
import { readBook } from '../../src/files/read-book.ts';
import { readSafetyPages } from '../../src/files/safety-pages.ts';
import { shippedDir } from '../../src/files/shipped.ts';
import { isoOf } from '../../src/time/zone.ts';
import {
  emptyFolder,
  fill,
  paintYaml,
  pieceYaml,
  readWith,
  recipeYaml,
  shopYaml,
  soundShop,
  told,
} from './shop-folder.ts';

const shipped = shippedDir();

describe('what is right', () => {
  test('the demo shop, with all recipes, parts and materials that come with Drybench', () => {
    const { book, findings, recipeIds, materialIds, partIds } = readBook('shared/demo', {
      shippedDir: shipped,
      everything: true,
    });
    expect(findings).toEqual([]);
    expect(book?.pieces).toHaveLength(8);
    expect([...book!.recipes.keys()]).toEqual(recipeIds);
    expect([...book!.materials.keys()]).toEqual(materialIds);
    expect([...book!.parts!.keys()]).toEqual(partIds);
  });

  test('only what is used is read', () => {
    const { book } = readBook('shared/demo', { shippedDir: shipped, recipes: ['shellac-lacquer'] });
    const all = readBook('shared/demo', { shippedDir: shipped, everything: true }).book;
    expect(book!.materials.size).toBeLessThan(all!.materials.size);
    for (const [id, material] of book!.materials) expect(material).toEqual(all!.materials.get(id));
  });

  test('the safety pages', () => {
    const { pages, findings } = readSafetyPages(shipped);
    expect(findings).toEqual([]);
    expect(pages.length).toBeGreaterThan(5);
  });

  test('the model of a small shop', () => {
    const { book, findings } = readWith({
      'pieces/chair.yaml': `name: Chair
arrives: 2027-03-27
wanted-by: 2027-03-28
price: 120.50 EUR
lead-test: { on: 2027-03-28T12:00, found: no }
sections:
  frame: { recipe: one-coat, area: 10 sq ft, items: 4, thickness: 3/4 in, materials: { test-paint: dewaxed-shellac } }
`,
    });
    expect(findings).toEqual([]);
    expect(book?.shop).toMatchObject({ timeZone: 'Europe/Dublin', units: 'metric', clock: 24, safeChance: 0.9 });
    expect(book?.shop.opening.week.monday).toEqual([
      { from: 480, to: 750 },
      { from: 795, to: 1050 },
    ]);
    expect(book?.shop.opening.week.sunday).toEqual([]);
    expect(book?.shop.hands[0]?.hours).toEqual(book?.shop.opening);
    const piece = book!.pieces[0]!;
    expect(piece.priceMinor).toBe(12_050);
    expect(piece.sections[0]).toMatchObject({ name: 'Frame', items: 4 });
    expect(piece.sections[0]?.areaM2).toBeCloseTo(0.9290304, 9);
    expect(piece.sections[0]?.thicknessMm).toBeCloseTo(19.05, 9);
    // The day of the spring change has 23 hours: its last minute is still 23:59 on the clock.
    expect(isoOf(piece.arrives!, 'Europe/Dublin')).toBe('2027-03-27T00:00:00+00:00');
    expect(isoOf(piece.wantedBy!, 'Europe/Dublin')).toBe('2027-03-28T23:59:00+01:00');
    expect(isoOf(piece.leadTest!.minute, 'Europe/Dublin')).toBe('2027-03-28T12:00:00+01:00');
    expect(book?.recipes.get('one-coat')?.steps[1]?.ways).toEqual([
      {
        name: '',
        time: { fixedMinutes: 5, minutesPerM2: 10, minutesPerItem: 0 },
        stations: ['bench'],
        tools: [],
        thickness: 1,
        transferEfficiency: 1,
      },
    ]);
  });

  test("a shop's own material over the class that it is like", () => {
    const { book, findings } = readWith({
      'materials/my-enamel.yaml':
        'name: My enamel\nlike: water-borne-acrylic-enamel\nsource: label of the can\nmarks: { touch: 90 min }\n',
      'recipes/one-coat.yaml': recipeYaml.replace('test-paint', 'my-enamel'),
    });
    expect(findings).toEqual([]);
    const own = book!.materials.get('my-enamel')!;
    const base = readBook('shared/demo', { shippedDir: shipped, everything: true }).book!.materials.get(
      'water-borne-acrylic-enamel',
    )!;
    expect(own).toEqual({
      ...base,
      id: 'my-enamel',
      name: 'My enamel',
      source: 'label of the can',
      marks: { ...base.marks, touch: { low: 1.5, typical: 1.5, high: 1.5, source: 'label of the can' } },
    });
  });

  test("a shop's own material in three lines: the class that it is like, its name, and what the container says", () => {
    const own = 'like: hardwax-oil\nname: Our oil\nmarks: { touch: "6 h [4 h - 8 h]", recoat: 12 h }\n';
    expect(own.trimEnd().split('\n')).toHaveLength(3);
    const { book, findings } = readWith({
      'materials/our-oil.yaml': own,
      'recipes/one-coat.yaml': recipeYaml.replace('test-paint', 'our-oil'),
    });
    expect(findings).toEqual([]);
    const material = book?.materials.get('our-oil');
    expect(material).toMatchObject({ name: 'Our oil', family: 'oil', oilyRags: true });
    expect(material?.marks.touch).toMatchObject({ low: 4, typical: 6, high: 8 });
    expect(material?.marks.recoat).toMatchObject({ typical: 12 });
    expect(material?.marks.cure?.typical).toBe(14 * 24);
    expect(material?.stack.length).toBeGreaterThan(0);
  });

  test('a material under the name of a shipped one that is like that one', () => {
    const { book, findings } = readWith({
      'materials/dewaxed-shellac.yaml': 'like: dewaxed-shellac\nmin-film-temp: 9 °C\n',
      'recipes/one-coat.yaml': recipeYaml.replace('test-paint', 'dewaxed-shellac'),
    });
    expect(findings).toEqual([]);
    expect(book?.materials.get('dewaxed-shellac')).toMatchObject({ minFilmTempC: 9, family: 'shellac' });
  });

  test('the folder of the shop is found from below', () => {
    const folder = emptyFolder();
    fill(folder, soundShop);
    expect(findShop(join(folder, 'pieces'))).toBe(folder);
    expect(findShop('/')).toBeUndefined();
  });
});

const swap = (text: string, from: string, to: string) => {
  if (!text.includes(from)) throw new Error(`no "${from}"`);
  return text.replace(from, to);
};
const shop = (from: string, to: string) => ({ 'shop.yaml': swap(shopYaml, from, to) });
const recipe = (from: string, to: string) => ({ 'recipes/one-coat.yaml': swap(recipeYaml, from, to) });
const paint = (from: string, to: string) => ({ 'materials/test-paint.yaml': swap(paintYaml, from, to) });
const piece = (from: string, to: string) => ({ 'pieces/chair.yaml': swap(pieceYaml, from, to) });
const join2 = `joins:
  - step: wrap
    section: frame
    do: Wrap
    stage: mask
    time: 5 min
    material: low-tack-tape
    after: legs/stain
`;

describe('what is wrong is told with its place, and what to write', () => {
  test.each<[string, Record<string, string>, string, RegExp]>([
    ['a misspelt key', shop('currency:', 'curency:'), 'shop.yaml:3:1 error unknown-key', /did you mean currency\?/],
    [
      'a zone',
      shop('Europe/Dublin', 'Dublin'),
      'shop.yaml:2:12 error unknown-time-zone',
      /did you mean Europe\/Dublin\?/,
    ],
    ['a currency', shop('EUR', 'eur'), 'shop.yaml:3:11 error unknown-currency', /write EUR/],
    ['hours', shop('17:30', '7:30'), 'shop.yaml:5:11 error bad-hours', /earlier time first/],
    ['a day', shop('saturday', 'saterday'), 'shop.yaml:6:3 error bad-day', /did you mean saturday\?/],
    [
      'a room',
      shop('room: workshop', 'room: workshpo'),
      'shop.yaml:10:18 error unknown-room',
      /did you mean workshop\?/,
    ],
    [
      'a kind of station',
      shop('kind: bench', 'kind: bnech'),
      'shop.yaml:10:34 error unknown-kind-of-station',
      /did you mean bench\?/,
    ],
    ['a unit', shop('20 °C', '20 K'), 'shop.yaml:8:40 error bad-temperature', /18 °C or 64 °F/],
    ['a form of air', shop('constant', 'constnt'), 'shop.yaml:8:20 error unknown-air', /constant, daily/],
    ['a missing value', shop('EUR', ''), 'shop.yaml:3:9 error empty-value', /a currency like EUR/],
    ['a list for a value', shop('EUR', '[EUR]'), 'shop.yaml:3:11 error wrong-kind', /a currency like EUR/],
    [
      'a recipe',
      piece('one-coat', 'one-coot'),
      'pieces/chair.yaml:3:20 error unknown-recipe',
      /did you mean one-coat\?/,
    ],
    ['an area', piece('1 m2', '1'), 'pieces/chair.yaml:3:36 error bad-area', /0\.9 m2/],
    ['the section `whole`', piece('frame', 'whole'), 'pieces/chair.yaml:3:3 error bad-id', /another word/],
    [
      'no sections',
      { 'pieces/chair.yaml': 'name: Chair\nsections: {}\n' },
      'pieces/chair.yaml:2:11 error no-sections',
      /name one/,
    ],
    [
      'a wanted date before it arrives',
      piece('name: Chair', 'name: Chair\narrives: 2027-02-01\nwanted-by: 2027-01-01'),
      'pieces/chair.yaml:3:12 error wanted-before-it-arrives',
      /later date/,
    ],
    [
      'a day that there is not',
      piece('name: Chair', 'name: Chair\narrives: 2027-02-30'),
      'pieces/chair.yaml:2:10 error bad-time',
      /no such day/,
    ],
    [
      'a time that the clock skips',
      piece('name: Chair', 'name: Chair\narrives: 2027-03-28T01:30'),
      'pieces/chair.yaml:2:10 error bad-time',
      /skips that time; write 00:30\+00:00 or 02:30\+01:00/,
    ],
    [
      'a time that the clock shows twice',
      piece('name: Chair', 'name: Chair\narrives: 2027-10-31T01:30'),
      'pieces/chair.yaml:2:10 warning time-shown-twice',
      /^$/,
    ],
    [
      'a step to leave out',
      piece('area:', 'without: [snad], area:'),
      'pieces/chair.yaml:3:40 error unknown-step',
      /did you mean sand\?/,
    ],
    [
      'a material to use instead',
      piece('area:', 'materials: { test-paint: test-pain }, area:'),
      'pieces/chair.yaml:3:55 error unknown-material',
      /did you mean test-paint\?/,
    ],
    [
      'a material that is not used',
      piece('area:', 'materials: { test-pain: test-paint }, area:'),
      'pieces/chair.yaml:3:54 warning material-not-in-recipe',
      /did you mean test-paint\?/,
    ],
    [
      'a part',
      piece('area:', 'with: [{ part: fill-gauges }], area:'),
      'pieces/chair.yaml:3:37 error unknown-part',
      /did you mean fill-gouges\?/,
    ],
    [
      'attached to itself',
      piece('area:', 'attached-to: frame, area:'),
      'pieces/chair.yaml:3:43 error unknown-section',
      /none yet/,
    ],
    [
      'money of another currency',
      piece('name: Chair', 'name: Chair\nprice: 3 USD'),
      'pieces/chair.yaml:2:8 error bad-money',
      /EUR/,
    ],
    [
      'a join with a section that is not there',
      { 'pieces/chair.yaml': pieceYaml + join2 },
      'pieces/chair.yaml:11:12 error unknown-section',
      /frame/,
    ],
    [
      'a material',
      recipe('test-paint', 'tst-paint'),
      'recipes/one-coat.yaml:13:15 error unknown-material',
      /did you mean test-paint\?/,
    ],
    [
      'a step without time',
      recipe('    time: 20 min\n', ''),
      'recipes/one-coat.yaml:3:5 error missing-key',
      /time: 20 min/,
    ],
    [
      'a stage',
      recipe('stage: sand', 'stage: sandd'),
      'recipes/one-coat.yaml:5:12 error unknown-stage',
      /did you mean sand\?/,
    ],
    ['a tool', recipe('may-pause: yes', 'tools: sander'), 'recipes/one-coat.yaml:7:12 error unknown-tool', /none yet/],
    [
      'a station',
      recipe('may-pause: yes', 'at: spray'),
      'recipes/one-coat.yaml:7:9 error no-such-station',
      /it has bench/,
    ],
    [
      'a skill',
      recipe('may-pause: yes', 'skill: sprya'),
      'recipes/one-coat.yaml:7:12 error no-such-skill',
      /did you mean spray\?/,
    ],
    [
      'too few hands',
      recipe('may-pause: yes', 'people: 2'),
      'recipes/one-coat.yaml:7:13 error too-few-hands',
      /add a hand to shop.yaml; or, .*write people: 1/,
    ],
    [
      'two hands who never meet',
      {
        ...recipe('may-pause: yes', 'people: 2'),
        ...shop('skills: spray }', 'skills: spray }\n  helper: { hours: { monday: 18:00-20:00, saturday: closed } }'),
      },
      'recipes/one-coat.yaml:7:13 error never-together',
      /let their hours overlap/,
    ],
    [
      'two hands who meet for too short',
      {
        ...recipe('may-pause: yes', 'people: 2'),
        ...shop(
          'skills: spray }',
          'skills: spray }\n  helper: { hours: { monday: 12:15-13:00, saturday: 08:00-09:10 } }',
        ),
      },
      'pieces/chair.yaml:3:10 error step-too-long',
      /longer hours/,
    ],
    [
      'a recipe for two in a shop of one, who has another for one alone',
      {
        ...piece('name: Chair', 'name: Chair\nwhole: whole-piece'),
        ...shop('kind: bench }', 'kind: bench }\n  floor: { room: workshop, kind: floor }'),
      },
      'shipped/recipes/whole-piece.yaml:61:13 error too-few-hands',
      /write whole-piece-alone for whole-piece in the pieces, or add a hand/,
    ],
    [
      'a name twice',
      recipe('step: coat', 'step: sand'),
      'recipes/one-coat.yaml:9:11 error step-twice',
      /a name of its own/,
    ],
    [
      'a later step',
      recipe('may-pause: yes', 'after: coat'),
      'recipes/one-coat.yaml:7:12 error order-in-a-circle',
      /move one/,
    ],
    [
      'itself',
      recipe('may-pause: yes', 'after: sand @ touch'),
      'recipes/one-coat.yaml:7:12 error order-in-a-circle',
      /move one/,
    ],
    [
      'an unknown step',
      recipe('may-pause: yes', 'after: snad'),
      'recipes/one-coat.yaml:7:12 error unknown-step',
      /did you mean sand\?/,
    ],
    [
      'a mark in a link',
      recipe('may-pause: yes', 'after: sand @ toch'),
      'recipes/one-coat.yaml:7:12 error bad-step-link',
      /did you mean touch\?/,
    ],
    [
      'unmasking nothing',
      recipe('stage: sand', 'stage: unmask'),
      'recipes/one-coat.yaml:3:5 error unmasks-nothing',
      /unmasks:/,
    ],
    [
      'a mask that stays',
      recipe('stage: sand', 'stage: mask'),
      'recipes/one-coat.yaml:3:5 warning never-unmasked',
      /unmasks:/,
    ],
    [
      'steps between one coat',
      recipe('    material:', '    between: [{ step: scuff, do: Scuff, stage: sand, time: 5 min }]\n    material:'),
      'recipes/one-coat.yaml:13:14 warning between-one-coat',
      /coats: 2/,
    ],
    [
      'a coat longer than a day',
      piece('1 m2', '90 m2'),
      'pieces/chair.yaml:3:10 error step-too-long',
      /split the section/,
    ],
    [
      'a family',
      paint('water-borne', 'waterborne'),
      'materials/test-paint.yaml:2:9 error unknown-family',
      /did you mean water-borne\?/,
    ],
    ['a mark', paint('touch:', 'toutch:'), 'materials/test-paint.yaml:5:3 error unknown-key', /did you mean touch\?/],
    [
      'a spread out of order',
      paint('[30 min - 2 h]', '[2 h - 3 h]'),
      'materials/test-paint.yaml:5:10 error bad-duration',
      /between the low and the high/,
    ],
    ['no family', paint('family: water-borne\n', ''), 'materials/test-paint.yaml:1:1 error missing-key', /family/],
    [
      'marks out of order',
      paint('touch: 1 h [30 min - 2 h]', 'touch: 9 h'),
      'materials/test-paint.yaml:5:10 warning marks-out-of-order',
      /the sheet/,
    ],
    [
      'a window that never opens',
      paint('opens: 2 h [1 h - 3 h]', '{ opens: 2 h, shuts: 1 h }'),
      'materials/test-paint.yaml:9:5 error window-never-open',
      /later time/,
    ],
    [
      'a window that may never open',
      paint('opens: 2 h [1 h - 3 h]', '{ opens: "2 h [1 h - 4 h]", shuts: 3 h }'),
      'materials/test-paint.yaml:9:5 warning window-may-never-open',
      /narrow/,
    ],
    [
      'windows that overlap',
      paint('opens: 2 h [1 h - 3 h]', '{ opens: 1 h, shuts: 9 h }\n  - { opens: 5 h }'),
      'materials/test-paint.yaml:9:5 warning windows-overlap',
      /join the two/,
    ],
    [
      'a parent',
      paint('family:', 'like: my-paint\nfamily:'),
      'materials/test-paint.yaml:2:7 error unknown-material',
      /./,
    ],
    [
      'parents in a circle',
      { ...paint('family:', 'like: b\nfamily:'), 'materials/b.yaml': 'like: test-paint\n' },
      'materials/b.yaml:1:7 error like-in-a-circle',
      /stand alone/,
    ],
  ])('%s', (_, files, finding, advice) => {
    const read = readWith(files);
    expect(told(read)).toEqual([finding]);
    expect(read.findings[0]?.advice ?? '').toMatch(advice);
    expect(read.book === undefined).toBe(finding.includes(' error '));
  });

  test('a circle between two sections', () => {
    const read = readWith({
      'pieces/chair.yaml': `name: Chair
sections:
  a: { recipe: one-coat, area: 1 m2 }
  b: { recipe: one-coat, area: 1 m2 }
joins:
  - { step: one, section: a, do: x, stage: inspect, time: 5 min, after: b/coat, before: sand }
  - { step: two, section: b, do: x, stage: inspect, time: 5 min, after: a/coat, before: sand }
`,
    });
    expect(told(read)).toEqual(['pieces/chair.yaml:6:5 error order-in-a-circle']);
    expect(read.findings[0]?.message).toContain('a/one waits for b/coat');
  });

  test('all that is wrong in all files at once, in order', () => {
    const read = readWith({
      ...shop('EUR', 'EURO'),
      ...piece('1 m2', '1'),
      'pieces/zzz.yaml': 'name: x\nname: y\n',
      ...recipe('20 min', 'soon'),
    });
    expect(told(read)).toEqual([
      'shop.yaml:3:11 error unknown-currency',
      'pieces/chair.yaml:3:36 error bad-area',
      'pieces/zzz.yaml:1:1 error missing-key',
      'pieces/zzz.yaml:2:1 error duplicate-key',
      'recipes/one-coat.yaml:6:11 error bad-duration',
    ]);
  });
});

describe('files that are no files', () => {
  const read = (spoil: (folder: string) => void) => {
    const folder = emptyFolder();
    fill(folder, soundShop);
    spoil(folder);
    return told(readBook(folder, { shippedDir: shipped }));
  };
  const chair = (folder: string) => join(folder, 'pieces/chair.yaml');
  const replaceBy = (folder: string, make: (path: string) => unknown) => {
    rmSync(chair(folder));
    make(chair(folder));
  };

  test.each<[string, (folder: string) => void, string[]]>([
    ['no shop.yaml', (f) => rmSync(join(f, 'shop.yaml')), ['shop.yaml:1:1 error missing-file']],
    ['no pieces', (f) => rmSync(join(f, 'pieces'), { recursive: true }), []],
    ['too big', (f) => writeFileSync(chair(f), '#'.repeat(1_000_001)), ['pieces/chair.yaml:1:1 error too-big']],
    [
      'not UTF-8',
      (f) => writeFileSync(chair(f), Buffer.from('name: caf\xe9\n', 'latin1')),
      ['pieces/chair.yaml:1:10 error not-utf-8'],
    ],
    [
      'not UTF-8 behind a replacement sign',
      (f) => writeFileSync(chair(f), Buffer.from('# \xef\xbf\xbd\n\xff', 'latin1')),
      ['pieces/chair.yaml:2:1 error not-utf-8'],
    ],
    [
      'UTF-16',
      (f) => writeFileSync(chair(f), Buffer.from('\uFEFFname: x', 'utf16le')),
      ['pieces/chair.yaml:1:1 error not-utf-8'],
    ],
    ['a byte-order mark', (f) => writeFileSync(chair(f), `\uFEFF${pieceYaml}`), []],
    ['CRLF', (f) => writeFileSync(chair(f), pieceYaml.replaceAll('\n', '\r\n')), []],
    ['a folder', (f) => replaceBy(f, (path) => mkdirSync(path)), ['pieces/chair.yaml:1:1 error not-a-file']],
    [
      'a link out of the shop',
      (f) => replaceBy(f, (path) => symlinkSync('/etc/hostname', path)),
      ['pieces/chair.yaml:1:1 error link-out-of-shop'],
    ],
    [
      'a link that leads nowhere',
      (f) => replaceBy(f, (path) => symlinkSync('nowhere', path)),
      ['pieces/chair.yaml:1:1 error missing-file'],
    ],
    [
      'a link within the shop',
      (f) => {
        writeFileSync(join(f, 'c'), pieceYaml);
        replaceBy(f, (path) => symlinkSync('../c', path));
      },
      [],
    ],
    [
      'a pipe',
      (f) => replaceBy(f, (path) => execFileSync('mkfifo', [path])),
      ['pieces/chair.yaml:1:1 error not-a-file'],
    ],
    [
      'odd names',
      (f) => fill(f, { 'pieces/Big Chair.yaml': '', 'pieces/b.yml': '', 'pieces/.hidden.yaml': '' }),
      ['pieces/Big Chair.yaml:1:1 warning bad-file-name', 'pieces/b.yml:1:1 warning bad-file-name'],
    ],
    [
      'a damaged journal',
      (f) => writeFileSync(join(f, 'journal.jsonl'), '{}\n'),
      ['journal.jsonl:1:1 error journal-damaged'],
    ],
    [
      'air out of the shop',
      (f) => writeFileSync(join(f, 'shop.yaml'), shopYaml.replace(/air: .*/, 'air: ../x.csv }')),
      ['shop.yaml:8:20 error bad-file-name'],
    ],
    [
      'air that is not there',
      (f) => writeFileSync(join(f, 'shop.yaml'), shopYaml.replace(/air: .*/, 'air: air/x.csv }')),
      ['shop.yaml:8:20 error missing-file'],
    ],
  ])('%s', (_, spoil, findings) => {
    expect(read(spoil)).toEqual(findings);
  });
});

test('the shipped folder is found from src, from dist and from a build of the tests', () => {
  for (const module of ['src/files/shipped.ts', 'dist/files/shipped.js', 'build/src/files/shipped.js'])
    expect(shippedDir(new URL(`file://${join(shipped, module)}`).href)).toBe(shipped);
  expect(() => shippedDir('file:///nowhere/files/shipped.js')).toThrow('install it again');
  expect(readFileSync(join(shipped, 'package.json'), 'utf8')).toContain('"drybench"');
});
