import { describe, expect, test } from 'vitest';
import { paintYaml, readWith, told } from './shop-folder.ts';

const upper = `${paintYaml}stack:
  - { over: oil, verdict: no, barrier: dewaxed-shellac, why: It crawls on oil. }
  - { over: wax, verdict: no, why: Nothing sticks to wax. }
  - { over: alkyd, verdict: after, mark: cure, why: It wrinkles while it is fresh. }
`;
const lower = (family: string) => paintYaml.replace('water-borne', family).replace('Test paint', 'Lower coat');
const coat = (step: string, material: string) =>
  `  - { step: ${step}, do: Coat, stage: coat, time: 10 min, material: ${material} }\n`;
const scuff = '  - { step: scuff, do: Scuff, stage: sand, time: 5 min }\n';
const recipe = (...steps: string[]) => `name: Own\nsteps:\n${steps.join('')}`;

function read(family: string, steps: string, section = 'recipe: own, area: 1 m2') {
  return readWith({
    'materials/test-paint.yaml': upper,
    'materials/lower.yaml': lower(family),
    'recipes/own.yaml': steps,
    'pieces/chair.yaml': `name: Chair\nsections:\n  frame: { ${section} }\n`,
  });
}

const refused = (book: ReturnType<typeof read>) => book.findings.filter((f) => f.code === 'stack-refused');
const plain = recipe(coat('under', 'lower'), scuff, coat('top', 'test-paint'));

describe("a recipe of the shop's own", () => {
  test('a coat that its sheet refuses over the one below is an error, with the barrier that would allow it', () => {
    const book = read('oil', plain);
    expect(told({ findings: refused(book) })).toEqual(['pieces/chair.yaml:3:10 error stack-refused']);
    expect(refused(book)[0]?.message).toBe('frame/top: test-paint cannot go over lower: It crawls on oil.');
    expect(refused(book)[0]?.advice).toBe('lay a coat of dewaxed-shellac between the two');
    expect(book.book).toBeUndefined();
  });

  test('where the sheet knows no barrier, none is named', () => {
    expect(refused(read('wax', plain))[0]?.advice).toMatch(/another material/);
  });

  test('the barrier between them makes it right', () => {
    const steps = recipe(coat('under', 'lower'), coat('seal', 'dewaxed-shellac'), scuff, coat('top', 'test-paint'));
    const book = read('oil', steps);
    expect(refused(book)).toEqual([]);
    expect(book.book).toBeDefined();
  });

  test('a coat that must only wait is not refused', () => {
    expect(refused(read('alkyd', plain))).toEqual([]);
  });

  test('a step that is left out is not looked at, and a replaced material is told where it is replaced', () => {
    expect(refused(read('oil', plain, 'recipe: own, area: 1 m2, without: [under]'))).toEqual([]);
    const both = recipe(coat('under', 'lower'), coat('top', 'lower'), scuff, coat('last', 'spare'));
    const book = readWith({
      'materials/test-paint.yaml': upper,
      'materials/lower.yaml': lower('oil'),
      'materials/spare.yaml': lower('oil'),
      'recipes/own.yaml': both,
      'pieces/chair.yaml':
        'name: Chair\nsections:\n  frame: { recipe: own, area: 1 m2, materials: { spare: test-paint } }\n',
    });
    expect(told({ findings: refused(book) })).toEqual(['pieces/chair.yaml:3:57 error stack-refused']);
  });
});
