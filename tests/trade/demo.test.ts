// The demo shop: what it must hold, and facts of the trade on its steps. Common practice, no source.
import { describe, expect, it } from 'vitest';
import { shopAir } from '../../src/air/shop-air.ts';
import { windowMaps } from '../../src/drying/windows.ts';
import { at } from '../../src/at.ts';
import { expand } from '../../src/model/expand.ts';
import { isFullCoat } from '../../src/model/film-needs.ts';
import { openSpans } from '../../src/model/hours.ts';
import type { AirSource } from '../../src/model/shop.ts';
import type { Need, Task } from '../../src/model/task.ts';
import { tradeOfPiece } from '../../src/model/trade-of-piece.ts';
import { minuteAt } from '../../src/time/zone.ts';
import { demo, material, task, tasksOf } from './shipped.ts';

const DAY = 24 * 60;
const noon = (date: string) => minuteAt(date, 12 * 60, demo().shop.timeZone);
const start = () => minuteAt('2027-01-11', 7 * 60 + 30, demo().shop.timeZone);
const fourWeeks = 28 * DAY;

function samplesOf(air: AirSource) {
  if (air.kind === 'heated') return samplesOf(air.outdoors);
  return air.kind === 'series' ? air.samples : [];
}

function openBetween(from: number, to: number): number {
  const { shop } = demo();
  const open = openSpans(shop.opening, shop.timeZone, from, to);
  return open.reduce((sum, s) => sum + Math.max(0, Math.min(s.end, to) - Math.max(s.start, from)), 0);
}

describe('the demo shop', () => {
  it('has eight pieces of different kinds, at least 120 steps, prices, costs and dates', () => {
    const { pieces } = demo();
    expect(pieces.length).toBe(8);
    expect(new Set(pieces.map((p) => p.kind)).size).toBe(8);
    const steps = expand(demo()).filter((t) => t.onlyFor === undefined && t.atOnceAfter === undefined);
    expect(steps.length).toBeGreaterThanOrEqual(120);
    expect(steps.length).toBeLessThanOrEqual(220);
    for (const p of pieces) {
      expect(p.priceMinor).toBeGreaterThan(p.costMinor);
      expect(p.wantedBy).toBeGreaterThan(start());
      expect(p.arrives).toBeLessThan(p.wantedBy ?? 0);
    }
  });

  it('uses ten recipes, and several on one piece', () => {
    const used = demo().pieces.flatMap((p) => p.sections.map((s) => s.recipe));
    expect(new Set(used).size).toBeGreaterThanOrEqual(9);
    expect(demo().pieces.some((p) => new Set(p.sections.map((s) => s.recipe)).size >= 4)).toBe(true);
  });

  it('has hands enough for all of it within four weeks', () => {
    const { shop } = demo();
    const work = expand(demo())
      .filter((t) => t.onlyFor === undefined)
      .reduce((sum, t) => sum + t.people * Math.min(...t.ways.map((w) => w.workMinutes)), 0);
    const hours = shop.hands
      .flatMap((h) => openSpans(h.hours, shop.timeZone, start(), start() + fourWeeks))
      .reduce((sum, s) => sum + s.end - s.start, 0);
    expect(work).toBeGreaterThan(80 * 60);
    expect(work).toBeLessThan(0.7 * hours);
  });

  it('has a warm room and a cold damp one, with hourly air for three weeks', () => {
    const [workshop, garage] = [at(demo().shop.rooms, 0), at(demo().shop.rooms, 1)];
    expect(workshop.air.kind).toBe('heated');
    for (const room of [workshop, garage]) {
      const samples = samplesOf(room.air);
      expect(at(samples, 0).minute).toBe(minuteAt('2027-01-11', 0, demo().shop.timeZone));
      expect(samples.length).toBe(21 * 24 + 1);
      expect(samples.every((s, i) => i === 0 || s.minute - at(samples, i - 1).minute === 60)).toBe(true);
      const mean = (of: (s: (typeof samples)[number]) => number) =>
        samples.reduce((sum, s) => sum + of(s), 0) / samples.length;
      expect(mean((s) => s.tempC)).toBeLessThan(7);
      expect(mean((s) => s.rhPercent)).toBeGreaterThan(80);
    }
  });

  it('tests before it sands: a piece that may carry lead has its test, and its old paint stands behind the gate', () => {
    const carrying = demo().pieces.filter((p) => p.mayCarryLead);
    expect(carrying.length).toBeGreaterThanOrEqual(1);
    for (const p of carrying) {
      expect(p.leadTest?.found).toBe(false);
      expect(p.leadTest?.minute).toBeLessThan(start());
      expect(tasksOf(p.id).some((t) => t.gated)).toBe(true);
    }
  });
});

function waits(of: Task, kind: Need['kind'], on: string): Need[] {
  return of.needs.filter((n) => n.kind === kind && n.task === on);
}

describe('its steps', () => {
  it('do nothing that the trade would not', () => {
    for (const piece of demo().pieces) expect([piece.id, tradeOfPiece(demo(), piece)]).toEqual([piece.id, []]);
  });

  it('let every filler dry right through before it is sanded', () => {
    let fills = 0;
    for (const { id } of demo().pieces) {
      const tasks = tasksOf(id);
      for (const fill of tasks) {
        const laid = material(at(fill.ways, 0).film?.material);
        if (fill.stage !== 'fill' || laid?.marks.sand === undefined) continue;
        const later = tasks.slice(tasks.indexOf(fill) + 1).filter((t) => t.section === fill.section);
        const sanding = later.find((t) => t.stage === 'sand' && t.onlyFor === undefined);
        expect(sanding?.needs).toContainEqual({ kind: 'mark', task: fill.id, mark: 'sand' });
        fills += 1;
      }
    }
    expect(fills).toBeGreaterThanOrEqual(8);
  });

  it('let two-part putty and caulk each reach a mark of its own', () => {
    const putty = 'slat-bed/frame/fill';
    const caulk = 'slat-bed/frame/caulk';
    expect(waits(task('slat-bed/frame/sand-120'), 'mark', putty)).toEqual([
      { kind: 'mark', task: putty, mark: 'sand' },
    ]);
    expect(waits(task('slat-bed/frame/coat-1'), 'mark', caulk)).toEqual([
      { kind: 'mark', task: caulk, mark: 'recoat' },
    ]);
  });

  it('wrap stained legs once the stain takes tape, before the body is sprayed, and oil them after the unwrapping', () => {
    const legs = (step: string) => task(`pine-washstand/legs/${step}`);
    expect(legs('mask-legs').needs).toContainEqual({ kind: 'mark', task: 'pine-washstand/legs/stain', mark: 'tape' });
    expect(material('low-tack-tape')?.family).toBe('tape');
    expect(waits(task('pine-washstand/body/prime'), 'order', 'pine-washstand/legs/mask-legs')).toHaveLength(1);
    expect(waits(legs('unmask-legs'), 'mark', 'pine-washstand/body/coat-2')).toEqual([
      { kind: 'mark', task: 'pine-washstand/body/coat-2', mark: 'touch' },
    ]);
    expect(waits(legs('oil-1'), 'order', 'pine-washstand/legs/unmask-legs').length).toBeGreaterThan(0);
  });

  it('take tape off inside its own limit', () => {
    const limit = material('low-tack-tape')?.removeWithin?.low ?? 0;
    for (const [off, on] of [
      ['pine-washstand/body/unsheet', 'pine-washstand/body/sheet-off'],
      ['pine-washstand/legs/unmask-legs', 'pine-washstand/legs/mask-legs'],
      ['china-cabinet/carcass/unsheet', 'china-cabinet/carcass/sheet-off'],
    ] as const)
      expect(waits(task(off), 'within', on)).toMatchObject([{ hours: limit }]);
  });

  it('refit last of all: hardware cleaned apart, drawers sealed, then refit, wax, photograph, wrap', () => {
    const tasks = tasksOf('pine-washstand');
    const end = tasks.filter((t) => t.section === 'whole').slice(-4);
    expect(end.map((t) => t.step)).toEqual(['refit', 'wax-runners', 'photograph', 'wrap']);
    const awaited = at(end, 0).needs.flatMap((n) => (n.kind === 'order' ? [n.task] : []));
    expect(awaited.sort()).toEqual([
      'pine-washstand/body/unsheet',
      'pine-washstand/drawer-boxes/seal',
      'pine-washstand/hardware/wax',
      'pine-washstand/legs/oil-3',
    ]);
    expect(new Set(tasks.filter((t) => t.section === 'hardware').map((t) => t.object))).toEqual(
      new Set(['pine-washstand/hardware']),
    );
  });

  it('put each coat on a film that has a window or a mark for it', () => {
    for (const { id } of demo().pieces)
      for (const t of tasksOf(id)) {
        const laid = material(at(t.ways, 0).film?.material);
        if (laid === undefined || !isFullCoat(laid) || t.coat === undefined || t.coat === 1) continue;
        const below = `${t.piece}/${t.section}/${t.step.replace(/\d+$/, String(t.coat - 1))}`;
        expect(t.needs.some((n) => (n.kind === 'window' || n.kind === 'mark') && n.task === below)).toBe(true);
      }
  });
});

describe('the trap', () => {
  it('is that a top oiled on a Friday can take its second coat unabraded only while the shop is shut', () => {
    const { shop } = demo();
    const oil = material('hardwax-oil');
    const air = shopAir(shop, start(), start() + fourWeeks).get('workshop');
    const unabraded = oil?.windows.find((w) => w.prep === undefined && w.shuts !== undefined);
    if (oil === undefined || air === undefined || unabraded === undefined) throw new Error('no such window');
    const maps = windowMaps(unabraded, oil, { material: oil.id, thickness: 1 }, air);
    const openMinutes = (end: number) => openBetween(maps.opens.at(end), maps.shuts?.at(end) ?? Infinity);
    const hour = 60;
    const friday = noon('2027-01-15') + 4 * hour;
    expect(openMinutes(friday)).toBe(0);
    const monday = noon('2027-01-11') + 4 * hour;
    expect(openMinutes(monday)).toBeGreaterThan(hour);
  });
});
