import type { ShopAir } from '../air/shop-air.ts';
import { dryMap } from '../drying/dry-marks.ts';
import { applicationStarts } from '../drying/fit-hours.ts';
import { potLifeMap } from '../drying/pot-life.ts';
import { windowMaps } from '../drying/windows.ts';
import type { AirSeries } from '../air/series.ts';
import { effectiveMark } from '../model/effective-mark.ts';
import type { Book } from '../model/book.ts';
import type { Mark, Pace } from '../model/mark.ts';
import type { Film, Material } from '../model/material.ts';
import type { WindowChoice } from '../model/task.ts';
import type { Minute, Spans } from '../time/span.ts';
import type { TimeMap } from '../time/time-map.ts';
import { remembering } from './once.ts';

export interface WindowMaps {
  readonly opens: TimeMap;
  readonly shuts?: TimeMap;
}

/** The shop's drying as time maps, each made once: the search asks for the same ones again and again. */
export interface ShopDrying {
  material(film: Film): Material;
  /** Films of one name dry alike. */
  nameOf(film: Film): string;
  /** `factor` is the shop's own, on the hours of that film. Undefined where the material has nothing to dry for that mark. */
  mark(film: Film, room: string, wanted: Mark, pace: Pace, factor?: number): TimeMap | undefined;
  window(film: Film, room: string, window: WindowChoice, factor?: number): WindowMaps;
  /** From mixing to the last minute at which it can be worked; undefined where that has no end. */
  potLife(film: Film, room: string): TimeMap | undefined;
  /** Starts from which air and surface keep to the material's limits from application until dust-free. */
  starts(film: Film, room: string, runMinutes: number, thicknessMm?: number): Spans;
}

export function shopDrying(book: Book, air: ShopAir, from: Minute, to: Minute): ShopDrying {
  const once = remembering();
  const material = (film: Film): Material => {
    const found = book.materials.get(film.material);
    if (found === undefined) throw new Error(`material ${film.material} is missing, though the files were checked`);
    return found;
  };
  const airIn = (room: string): AirSeries => {
    const found = air.get(room);
    if (found === undefined) throw new Error(`the air of room ${room} is missing`);
    return found;
  };
  const nameOf = (film: Film) => `${film.material}|${film.thickness}|${film.depthMm ?? ''}`;
  return {
    material,
    mark: (film, room, wanted, pace, factor = 1) =>
      once(`mark|${nameOf(film)}|${room}|${wanted}|${pace}|${factor}`, () => {
        const mark = effectiveMark(material(film), wanted);
        return mark === undefined ? undefined : dryMap(material(film), mark, pace, film, airIn(room), factor);
      }),
    window: (film, room, window, factor = 1) =>
      once(`window|${nameOf(film)}|${room}|${factor}|${JSON.stringify([window.opens, window.shuts])}`, () =>
        windowMaps(window, material(film), film, airIn(room), factor),
      ),
    nameOf,
    potLife: (film, room) => once(`potLife|${film.material}|${room}`, () => potLifeMap(material(film), airIn(room))),
    starts: (film, room, runMinutes, thicknessMm) =>
      once(`starts|${nameOf(film)}|${room}|${runMinutes}|${thicknessMm ?? ''}`, () =>
        applicationStarts(material(film), film, airIn(room), runMinutes, from, to, thicknessMm),
      ),
  };
}
