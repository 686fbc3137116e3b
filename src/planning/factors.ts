import type { AirSeries } from '../air/series.ts';
import type { ShopAir } from '../air/shop-air.ts';
import { LEAST_FACTOR, learnDrying, type Observation, observationOf } from '../drying/learn.ts';
import type { Learned } from '../model/learned.ts';
import { marks, type Spread } from '../model/mark.ts';
import type { Film, Material } from '../model/material.ts';
import type { Plan } from '../model/plan.ts';
import type { DoneStep, Situation } from '../model/situation.ts';
import type { Task } from '../model/task.ts';

/** Factors are kept to a thousandth, so that one that is learned anew a hair differently moves no plan. */
const GRAIN = 1000;

/** A film that lies, and all that was seen of it. */
interface SeenFilm {
  readonly task: string;
  readonly material: Material;
  readonly film: Film;
  readonly observations: readonly Observation[];
}

function placeOf(task: Task, done: DoneStep, { book }: Situation, kept: Plan | undefined): string | undefined {
  const { stations } = book.shop;
  const known = done.station ?? kept?.steps.find((s) => s.id === task.id)?.station;
  const kinds = task.ways[0]?.stations ?? [];
  return (known === undefined ? stations.find((s) => kinds.includes(s.kind)) : stations.find((s) => s.id === known))
    ?.room;
}

function seenFilm(
  situation: Situation,
  air: ShopAir,
  kept: Plan | undefined,
  task: Task,
  looks: readonly Parameters<typeof observationOf>[4][],
): SeenFilm[] {
  const done = situation.done.get(task.id);
  const wayName = done?.way ?? kept?.steps.find((s) => s.id === task.id)?.way;
  const film = (task.ways.find((w) => w.name === wayName) ?? task.ways[0])?.film;
  const material = film && situation.book.materials.get(film.material);
  if (done === undefined || film === undefined || material === undefined) return [];
  const series: AirSeries | undefined = air.get(placeOf(task, done, situation, kept) ?? '');
  if (series === undefined || done.to < series.from) return [];
  const observations = looks.flatMap((look) => observationOf(material, film, series, done.to, look) ?? []);
  return [{ task: task.id, material, film, observations }];
}

/** The spread that the material's sheet leaves: of its earliest mark, which is what is looked at. */
function sheetSpread(material: Material): Spread | undefined {
  return marks.map((mark) => material.marks[mark]).find((hours) => hours !== undefined);
}

function rounded(factor: number): number {
  return Math.round(factor * GRAIN) / GRAIN;
}

/**
 * What was seen of this very film holds for it, whatever else was learned: still wet or tacky, its usual hours are at
 * least those that had passed; dry or hard, they are at most those, but never less than half of the sheet's.
 */
function asSeen(learned: number, observations: readonly Observation[]): number {
  const ratios = (kind: Observation['kind']) =>
    observations.filter((o) => o.kind === kind && o.expected > 0).map((o) => o.seen / o.expected);
  const most = Math.min(...ratios('by').map((r) => Math.max(r, LEAST_FACTOR)));
  const least = Math.max(...ratios('not-yet').map((r) => Math.ceil(r * GRAIN + 1) / GRAIN));
  return Math.max(Math.min(learned, most), least);
}

function seenFilms(situation: Situation, air: ShopAir, kept: Plan | undefined): SeenFilm[] {
  return situation.tasks.flatMap((task) => {
    const looks = situation.sightings.get(task.id);
    return looks === undefined ? [] : seenFilm(situation, air, kept, task, looks);
  });
}

function learnedFrom(films: readonly SeenFilm[]): ReadonlyMap<string, Learned> {
  const learned = new Map<string, Learned>();
  for (const { material } of films) {
    const sheet = sheetSpread(material);
    if (learned.has(material.id) || sheet === undefined) continue;
    const looks = films.filter((f) => f.material.id === material.id).flatMap((f) => f.observations);
    learned.set(material.id, learnDrying(sheet, looks));
  }
  return learned;
}

/** What the shop has learned of each material that it looked at, by material id, and on how many looks that rests. */
export function learnedMaterials(situation: Situation, air: ShopAir, kept?: Plan): ReadonlyMap<string, Learned> {
  return learnedFrom(seenFilms(situation, air, kept));
}

/**
 * The shop's own factors on the hours of films, by task id: what has been learned of each material from all looks at it,
 * shrunk towards 1 by how few they are and kept inside the bounds of `learn`; a film that was seen itself keeps to what
 * was seen. Tasks that are not named have factor 1. `kept` says where a film lies whose record does not.
 */
export function factorsOf(situation: Situation, air: ShopAir, kept?: Plan): ReadonlyMap<string, number> {
  const { tasks } = situation;
  const films = seenFilms(situation, air, kept);
  if (films.length === 0) return new Map();
  const learned = learnedFrom(films);
  const seen = new Map(films.map((f) => [f.task, f.observations]));
  return new Map(
    tasks.flatMap((task): [string, number][] => {
      const film = task.ways.find((w) => w.film !== undefined)?.film;
      const ofMaterial = film && learned.get(film.material)?.factor;
      if (ofMaterial === undefined) return [];
      const factor = rounded(asSeen(ofMaterial, seen.get(task.id) ?? []));
      return factor === 1 ? [] : [[task.id, factor]];
    }),
  );
}
