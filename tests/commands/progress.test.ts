// What may take more than a second says so on a person's terminal, on standard error, and takes its line away again.
import { describe, expect, it } from 'vitest';
import { widthOf } from '../../src/terminal/width.ts';
import { drybench, type Surroundings } from './run-cli.ts';
import { inShop, pieceFile, shopFile } from './small-shop.ts';

const at = ['--at', '2027-01-11T07:30'];
const clearLine = '\r\u001b[K';
/** A terminal, and a machine so slow that all takes a while. */
const terminal: Surroundings = { isTTY: true, columns: 80, tickMs: 400 };

/** The words of progress in their order, each once. */
const told = (err: string) => [...new Set(err.split(clearLine).filter((text) => text !== ''))];

// At 4 °C no coat may be laid: with the workshop as cold as that, there is no plan.
const cold = { 'shop.yaml': shopFile.replace('temp: 20 °C', 'temp: 4 °C') };

const asked: [words: string[], says: string, changes?: Readonly<Record<string, string>>][] = [
  [['week', '--look'], 'planning …'],
  [['week', '--anew'], 'planning …'],
  [['today'], 'planning …'],
  [['ready'], 'planning …'],
  [['why', 'stool', 'paint-2'], 'trying what would let it begin sooner …'],
  [['promise', 'brushed', '--by', '2027-03-01'], 'planning with the new piece …'],
  [['compare', '--warmer', 'shed=+3K', '--slot', 'bench=+1'], 'planning … 3 of 3'],
  [['buy'], 'planning …'],
  [['price'], 'planning …'],
  [['phone', '--file', 'x.ics'], 'planning …'],
  [['wall'], 'planning …'],
  [['week'], 'looking for what would leave a plan …', cold],
];

describe('how far it has come', () => {
  it.each(asked)('%j says "%s"', (words, says, changes = {}) =>
    inShop({ 'pieces/chair.yaml': pieceFile('Chair'), ...changes }, async (folder) => {
      const { err } = await drybench([...words, ...at], { folder, ...terminal });
      expect(told(err)).toContain(says);
      // Each is taken away before anything else is said.
      if (changes === cold) expect(err).toMatch(/\u001b\[Kdrybench: /);
      else expect(err.endsWith(clearLine)).toBe(true);
    }),
  );

  it.each<[string, Surroundings]>([
    ['in a pipe', {}],
    ['on a dumb terminal', { ...terminal, env: { TERM: 'dumb' } }],
  ])('is not said %s', (_, surroundings) =>
    inShop({}, async (folder) => {
      for (const [words] of asked) {
        const { code, err } = await drybench([...words, ...at], { folder, ...surroundings });
        expect([words, code, err]).toEqual([words, 0, '']);
      }
    }),
  );

  it('is not said of what is soon done', () =>
    inShop({}, async (folder) => {
      for (const words of [['week', '--look'], ['ready'], ['promise', 'brushed', '--by', '2027-03-01']]) {
        const { err } = await drybench([...words, ...at], { folder, ...terminal, tickMs: 0 });
        expect([words, err]).toEqual([words, '']);
      }
    }));

  it('is said on a terminal that does not know its width', () =>
    inShop({}, async (folder) => {
      const { err } = await drybench(['week', '--look', ...at], { folder, ...terminal, columns: 0 });
      expect(told(err)).toContain('planning …');
    }));

  it('never takes more than its line: what wraps could not be taken away', () =>
    inShop({}, async (folder) => {
      for (const words of [
        ['week', '--look'],
        ['why', 'stool', 'paint-2'],
        ['compare', '--slot', 'bench=+1'],
      ]) {
        const { err } = await drybench([...words, '--language', 'es', ...at], { folder, ...terminal, columns: 30 });
        expect(told(err).length).toBeGreaterThan(0);
        for (const text of told(err)) expect(widthOf(text)).toBeLessThan(30);
      }
    }));

  it('comes below what is known already: what holds a step is written before anything is tried', () =>
    inShop({}, async (folder) => {
      const written: string[] = [];
      const { out } = await drybench(['why', 'stool', 'paint-2', ...at], {
        folder,
        columns: 80,
        onOut: (text) => written.push(text),
      });
      expect(written.map((text) => [text.includes('because'), text.includes('tried')])).toEqual([
        [true, false],
        [false, true],
      ]);
      const pages: string[] = [];
      const paged = { ...terminal, tickMs: 0, rows: 2, env: { PAGER: 'less', NO_COLOR: '1' } };
      await drybench(['why', 'stool', 'paint-2', ...at], { folder, ...paged, onPage: (_, text) => pages.push(text) });
      expect(pages).toEqual([out]);
    }));
});
