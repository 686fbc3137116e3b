// What was found and what is wanted becomes recipes with parts. Which part answers what: common practice, no source.
import { beforeAll, describe, expect, it } from 'vitest';
import { meansOf, type ShopMeans } from '../../src/files/means.ts';
import { readBook } from '../../src/files/read-book.ts';
import { shippedDir } from '../../src/files/shipped.ts';
import type { AgreedSection, Answers } from '../../src/intake/answers.ts';
import { faultFaces, faults } from '../../src/intake/found.ts';
import { placePart } from '../../src/intake/place-part.ts';
import { propose } from '../../src/intake/propose.ts';
import { unknownWood, woods } from '../../src/intake/woods.ts';
import type { Piece, Section } from '../../src/model/piece.ts';
import { inEmptyShop, shopText } from './shop.ts';

let means: ShopMeans;
beforeAll(() =>
  inEmptyShop(shopText('metric', 'EUR'), (folder) => {
    const { book, libraries } = readBook(folder, { shippedDir: shippedDir() });
    means = meansOf(book!, libraries);
  }),
);

const painted = ['painted-brushed', 'painted-sprayed', 'milk-paint-wax'];
const stripped = ['clear-water-borne', 'hardwax-oil', 'oil-polyurethane', 'shellac-lacquer', 'stained-oil-topcoat'];

const outside = (recipe: string): AgreedSection => ({
  id: 'body',
  name: 'Body',
  role: 'outside',
  items: 1,
  thicknessMm: 19,
  faces: [],
  assumed: [],
  areaM2: 2,
  recipe,
});

const answers = (recipe: string, also: Partial<Answers> = {}): Answers => ({
  id: 'chest',
  name: 'Chest',
  kind: 'chest',
  counts: { alike: 1, drawers: 0, doors: 0, fittings: 0 },
  sections: [outside(recipe)],
  notDoable: [],
  found: {},
  wood: unknownWood,
  oldFinish: 'clear',
  darkToLight: false,
  lead: 'no',
  arrives: '2027-01-11',
  takenInAt: 0,
  ...also,
});

const wood = (name: string) => woods.find((w) => w.name === name)!;
const partsOf = (a: Answers) => propose(a, means).sections.flatMap((s) => (s.section.with ?? []).map((p) => p.part));
const withoutOf = (a: Answers) => propose(a, means).sections.flatMap((s) => s.section.without);

describe('a repair or a fill', () => {
  const repairs = faults.filter((f) => f !== 'odour').map((f) => faultFaces[f].part);
  const cases = [...painted, ...stripped, 'drawers'].flatMap((recipe) =>
    repairs.map((part) => [part, recipe] as const),
  );

  it.each(cases)('%s can be slotted into %s, and check has nothing to say', (part, id) => {
    const recipe = means.recipes.get(id)!;
    const section: Section = { ...outside(id), materials: {}, without: [] };
    const piece = (s: Section): Piece => ({
      id: 'chest',
      name: 'Chest',
      kind: '',
      priceMinor: 0,
      costMinor: 0,
      mayCarryLead: false,
      sections: [s],
      joins: [],
    });
    const placed = placePart(part, section, recipe, means.materialOf, (s) => means.problems(piece(s)));
    expect(placed?.with).toHaveLength(1);
    expect(means.check(piece(placed!))).toEqual([]);
  });
});

describe('a change from dark to light', () => {
  it.each(painted)('puts a stain-blocking primer under %s', (recipe) => {
    expect(partsOf(answers(recipe, { darkToLight: true }))).toEqual(['block-stains']);
    expect(partsOf(answers(recipe))).toEqual([]);
  });

  it.each(stripped)('asks nothing of %s, which shows the wood', (recipe) => {
    expect(partsOf(answers(recipe, { darkToLight: true }))).toEqual([]);
  });
});

describe('open-grained wood', () => {
  const oldFinishes = ['bare', 'clear', 'paint', 'wax-or-oil', 'unknown'] as const;

  it.each(oldFinishes)('is filled under every film, whatever was on it before: %s', (oldFinish) => {
    for (const recipe of ['clear-water-borne', 'oil-polyurethane', 'stained-oil-topcoat', ...painted])
      expect(partsOf(answers(recipe, { wood: wood('ash'), oldFinish }))).toEqual(['fill-grain']);
  });

  it('is left open under oil, and filled once by a recipe that fills; closed wood is not filled', () => {
    expect(partsOf(answers('hardwax-oil', { wood: wood('oak') }))).toEqual([]);
    expect(partsOf(answers('shellac-lacquer', { wood: wood('oak') }))).toEqual([]);
    for (const recipe of [...painted, ...stripped])
      expect(partsOf(answers(recipe, { wood: wood('maple') }))).toEqual([]);
  });
});

describe('wood that bleeds', () => {
  it.each(['painted-brushed', 'painted-sprayed'])('is sealed under %s wherever it lies or comes bare', (recipe) => {
    const pine = (also: Partial<Answers>) => partsOf(answers(recipe, { wood: wood('pine'), ...also }));
    for (const oldFinish of ['bare', 'clear', 'wax-or-oil', 'unknown'] as const)
      expect(pine({ oldFinish })).toEqual(['seal-tannin']);
    expect(pine({ oldFinish: 'paint' })).toEqual([]);
    expect(pine({ oldFinish: 'paint', found: { gouges: ['body'] } })).toEqual(['fill-gouges', 'seal-tannin']);
    expect(pine({ oldFinish: 'paint', found: { gouges: ['other'] } })).toEqual([]);
    expect(partsOf(answers(recipe, { wood: wood('beech'), oldFinish: 'bare' }))).toEqual([]);
  });

  it('is not sealed twice: by a recipe that seals, or under a primer that blocks stains', () => {
    expect(partsOf(answers('milk-paint-wax', { wood: wood('pine'), oldFinish: 'bare' }))).toEqual([]);
    expect(partsOf(answers('painted-brushed', { wood: wood('pine'), darkToLight: true }))).toEqual(['block-stains']);
  });

  it('needs nothing under a clear finish', () => {
    expect(partsOf(answers('clear-water-borne', { wood: wood('pine'), oldFinish: 'bare' }))).toEqual([]);
  });

  it('oak, open and bleeding, is filled and then sealed before its primer, and check is content', () => {
    const { piece } = propose(answers('painted-brushed', { wood: wood('oak') }), means);
    expect(piece.sections[0]!.with).toEqual([
      { part: 'fill-grain', before: 'prime' },
      { part: 'seal-tannin', before: 'prime' },
    ]);
    expect(means.check(piece)).toEqual([]);
  });
});

describe('what a piece does not need', () => {
  it('is left out: stripping bare wood, gluing sound joints', () => {
    expect(withoutOf(answers('clear-water-borne', { oldFinish: 'bare' }))).toEqual(['strip', 'wash-off', 'glue']);
    expect(withoutOf(answers('clear-water-borne'))).toEqual(['glue']);
    const loose = answers('clear-water-borne', { found: { 'joints-loose': ['body'] } });
    expect([...partsOf(loose), ...withoutOf(loose)]).toEqual(['reglue-joints', 'glue']);
  });
});

describe('what cannot be done', () => {
  it('is told, and the rest is proposed', () => {
    const proposal = propose(answers('painted-brushed', { found: { 'runner-missing': ['drawer-boxes'] } }), means);
    expect(proposal.left).toEqual(['a drawer runner worn out or missing: there is no section for it']);
    const parts = new Map([...means.parts].filter(([id]) => id !== 'fill-gouges'));
    const poor = propose(answers('painted-brushed', { found: { gouges: ['body'] } }), { ...means, parts });
    expect(poor.left).toHaveLength(1);
    expect(poor.left[0]).toContain('fill-gouges');
    expect(poor.sections[0]!.section.with).toBeUndefined();
  });
});

describe('a piece with fittings', () => {
  it('gets the steps for them round all sections, or is told that the shop cannot do those', () => {
    const metal: AgreedSection = { ...outside('metal-hardware'), id: 'hardware', role: 'fittings' };
    const cased = answers('painted-brushed', { sections: [outside('painted-brushed'), metal] });
    expect(propose(cased, means)).toMatchObject({ piece: { whole: 'whole-piece' }, left: [] });
    expect(propose(answers('painted-brushed'), means)).toMatchObject({
      piece: { whole: 'whole-piece-plain' },
      left: [],
    });
    const without = (...ids: string[]) => new Map([...means.recipes].filter(([id]) => !ids.includes(id)));
    const poor = propose(cased, { ...means, recipes: without('whole-piece', 'whole-piece-alone') });
    expect([poor.piece.whole, poor.left]).toEqual(['whole-piece-plain', [expect.stringContaining('whole-piece')]]);
  });

  // Whoever is alone has the same steps, none of which takes two: nothing is dropped and nothing has to be chosen.
  it.each([
    ['one hand works', '  helper: { skills: [lift] }\n', ''],
    [
      'two hands are never in together',
      'helper: { skills: [lift] }',
      'helper: { skills: [lift], hours: { monday: closed, tuesday: closed, wednesday: closed, thursday: closed, friday: closed, saturday: closed, sunday: closed } }',
    ],
  ])('is put together and wrapped by one alone where %s', async (_, two, one) => {
    await inEmptyShop(shopText('metric', 'EUR').replace(two, one), (folder) => {
      const { book, libraries } = readBook(folder, { shippedDir: shippedDir() });
      const alone = meansOf(book!, libraries);
      const metal: AgreedSection = { ...outside('metal-hardware'), id: 'hardware', role: 'fittings' };
      const proposal = propose(answers('painted-brushed', { sections: [outside('painted-brushed'), metal] }), alone);
      expect([proposal.piece.whole, proposal.left]).toEqual(['whole-piece-alone', []]);
      expect(alone.check(proposal.piece)).toEqual([]);
      const ids = (recipe: string) => libraries.recipes.get(recipe)!.steps.map((s) => s.id);
      expect(ids('whole-piece-alone')).toEqual(ids('whole-piece'));
    });
  });
});

describe('everything at once', () => {
  it.each([...painted, ...stripped])('on %s leaves check with nothing to say', (recipe) => {
    for (const oldFinish of ['bare', 'paint'] as const)
      for (const darkToLight of [false, true])
        for (const w of ['pine', 'oak', 'ash', 'beech'].map(wood)) {
          const found = Object.fromEntries(faults.map((f) => [f, ['body']]));
          const proposal = propose(answers(recipe, { wood: w, oldFinish, darkToLight, found, lead: 'may' }), means);
          expect(means.check(proposal.piece)).toEqual([]);
          const asked = proposal.sections[0]!.reasons.size - proposal.sections[0]!.section.without.length;
          expect(proposal.sections[0]!.section.with).toHaveLength(asked);
        }
  });
});
