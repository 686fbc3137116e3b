// Areas from overall measures. The oracle builds each piece out of corner points in space and adds up the triangles of
// its faces (half the cross product of two edges); what is taken as usual is common practice, no source.
import fc from '../support/property.ts';
import { describe, expect, it, test } from 'vitest';
import { estimateSections, insideOf } from '../../src/intake/estimate.ts';
import { kinds, type Counts, type Size } from '../../src/intake/kinds.ts';

type Point = readonly [number, number, number];

const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const triangle = (a: Point, b: Point, c: Point) => {
  const [u, v] = [minus(b, a), minus(c, a)];
  return Math.hypot(u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]) / 2;
};
const quad = (a: Point, b: Point, c: Point, d: Point) => triangle(a, b, c) + triangle(a, c, d);

type Side = 'top' | 'bottom' | 'front' | 'back' | 'left' | 'right';

/** Area of the named sides of a box with one corner at the origin, mm². */
function box(w: number, d: number, h: number, sides: readonly Side[]): number {
  const p = (x: number, y: number, z: number): Point => [x * w, y * d, z * h];
  const faces: Record<Side, number> = {
    bottom: quad(p(0, 0, 0), p(1, 0, 0), p(1, 1, 0), p(0, 1, 0)),
    top: quad(p(0, 0, 1), p(1, 0, 1), p(1, 1, 1), p(0, 1, 1)),
    front: quad(p(0, 0, 0), p(1, 0, 0), p(1, 0, 1), p(0, 0, 1)),
    back: quad(p(0, 1, 0), p(1, 1, 0), p(1, 1, 1), p(0, 1, 1)),
    left: quad(p(0, 0, 0), p(0, 1, 0), p(0, 1, 1), p(0, 0, 1)),
    right: quad(p(1, 0, 0), p(1, 1, 0), p(1, 1, 1), p(1, 0, 1)),
  };
  return sides.reduce((sum, side) => sum + faces[side], 0);
}

const none: Counts = { alike: 1, drawers: 0, doors: 0, fittings: 0 };
const length = fc.integer({ min: 300, max: 2500 });
const sizes = fc.tuple(length, length, length);
const around: readonly Side[] = ['front', 'back', 'left', 'right'];

function areaOf(sections: ReturnType<typeof estimateSections>, id: string): number {
  const found = sections.find((s) => s.id === id);
  if (found === undefined) throw new Error(`no section ${id}`);
  return found.areaM2 * 1e6;
}

describe('the area of', () => {
  it('a chest is its box without the back and underside; a lidded box has its back too', () => {
    fc.assert(
      fc.property(sizes, fc.integer({ min: 1, max: 9 }), ([w, d, h], drawers) => {
        expect(areaOf(estimateSections('chest', [w, d, h], { ...none, drawers }), 'body')).toBeCloseTo(
          box(w, d, h, ['top', 'front', 'left', 'right']),
          3,
        );
        expect(areaOf(estimateSections('chest', [w, d, h], none), 'body')).toBeCloseTo(
          box(w, d, h, ['top', ...around]),
          3,
        );
      }),
    );
  });

  it('boxes of drawers is that of their bottoms and walls inside, each within the piece', () => {
    fc.assert(
      fc.property(sizes, fc.integer({ min: 1, max: 9 }), ([w, d, h], drawers) => {
        const boxHeight = (0.8 * (h - 100)) / drawers;
        const one = box(w - 38, d - 50, boxHeight, ['bottom', ...around]);
        expect(areaOf(estimateSections('chest', [w, d, h], { ...none, drawers }), 'drawer-boxes')).toBeCloseTo(
          drawers * one,
          3,
        );
      }),
    );
  });

  it('a table is that of its top with its edges, and of legs and aprons', () => {
    fc.assert(
      fc.property(sizes, ([l, w, h]) => {
        const sections = estimateSections('table', [l, w, h], none);
        expect(areaOf(sections, 'top')).toBeCloseTo(box(l, w, 25, ['top', ...around]), 3);
        const legs = 4 * box(60, 60, h - 25, around);
        const aprons = box(l - 120, 1, 100, ['front', 'back']) + box(1, w - 120, 100, ['left', 'right']);
        expect(areaOf(sections, 'base')).toBeCloseTo(legs + aprons, 3);
      }),
    );
  });

  it('chairs is that of one, so many times', () => {
    fc.assert(
      fc.property(sizes, fc.integer({ min: 1, max: 12 }), ([w, d, h], alike) => {
        const seat = Math.min(450, h / 2);
        const legs = 4 * box(40, 40, seat, around);
        const stretchers =
          2 * box(w, 25, 25, ['top', 'bottom', 'front', 'back']) +
          2 * box(25, d, 25, ['top', 'bottom', 'left', 'right']);
        const one = box(w, d, 1, ['top']) + legs + stretchers + box(w, 1, h - seat, ['front', 'back']) / 2;
        expect(areaOf(estimateSections('chair', [w, d, h], { ...none, alike }), 'chairs')).toBeCloseTo(alike * one, 3);
      }),
    );
  });

  it('a cabinet is its box with its doors on both sides, or with what is seen inside', () => {
    fc.assert(
      fc.property(sizes, fc.integer({ min: 1, max: 4 }), ([w, d, h], doors) => {
        const shell = box(w, d, h, ['top', 'left', 'right']);
        const front = box(w, d, h, ['front']);
        const closed = estimateSections('cabinet', [w, d, h], { ...none, doors });
        expect(areaOf(closed, 'carcass')).toBeCloseTo(shell + 0.2 * front, 3);
        expect(areaOf(closed, 'doors')).toBeCloseTo(2 * 0.8 * front, 3);
        const open = estimateSections('cabinet', [w, d, h], none);
        const inside = box(w, d, h, ['top', 'bottom', 'left', 'right', 'back']);
        expect(areaOf(open, 'carcass')).toBeCloseTo(shell + inside, 3);
        expect(insideOf([w, d, h], 'carcass').areaM2 * 1e6).toBeCloseTo(inside, 3);
      }),
    );
  });

  it('a bed is that of head, foot and rails on both sides', () => {
    fc.assert(
      fc.property(sizes, ([w, l, h]) => {
        const sections = estimateSections('bed', [w, l, h], none);
        const [head, foot] = [box(w, 1, h, ['front', 'back']), box(w, 1, h / 2, ['front', 'back'])];
        expect(areaOf(sections, 'ends')).toBeCloseTo(0.7 * (head + foot), 3);
        expect(areaOf(sections, 'rails')).toBeCloseTo(2 * box(1, l, 150, ['left', 'right']), 3);
      }),
    );
  });
});

test('no measure makes an area shrink, and none is below nothing', () => {
  const counts = fc.record({
    alike: fc.integer({ min: 1, max: 9 }),
    drawers: fc.nat(9),
    doors: fc.nat(4),
    fittings: fc.nat(20),
  });
  const any = fc.tuple(...Array.from({ length: 3 }, () => fc.integer({ min: 50, max: 6000 })));
  fc.assert(
    fc.property(
      fc.constantFrom(...kinds),
      any,
      counts,
      fc.nat(2),
      fc.integer({ min: 1, max: 500 }),
      (kind, size, c, axis, more) => {
        const small = size as unknown as Size;
        const large = size.map((mm, i) => (i === axis ? mm + more : mm)) as unknown as Size;
        const [before, after] = [estimateSections(kind, small, c), estimateSections(kind, large, c)];
        expect(after.map((s) => s.id)).toEqual(before.map((s) => s.id));
        before.forEach((section, i) => {
          expect(section.areaM2).toBeGreaterThanOrEqual(0);
          expect(after[i]!.areaM2).toBeGreaterThanOrEqual(section.areaM2 - 1e-12);
        });
      },
    ),
  );
});
