import type { ShopAir } from '../air/shop-air.ts';
import { dryMap } from '../drying/dry-marks.ts';
import { windowMaps } from '../drying/windows.ts';
import { effectiveMark } from '../model/effective-mark.ts';
import { endOf, startOf, type PlannedStep } from '../model/plan.ts';
import type { Situation } from '../model/situation.ts';
import type { Minute, Span } from '../time/span.ts';
import { ALWAYS } from '../time/time-map.ts';
import { isSure } from '../verify/fact.ts';
import { groundOf } from '../verify/ground.ts';
import { airKept } from '../verify/rules/air.ts';
import type { Standing } from './current-plan.ts';
import type { Cause } from './why.ts';

/** A step that waits for a film, and by how much sooner that wait has to be over. */
export interface FilmWait {
  readonly step: PlannedStep;
  readonly cause: Extract<Cause, { readonly kind: 'dry' | 'window' }>;
  readonly minutes: number;
}

/** Does the film dry no sooner than it does, or not so much sooner as it has to? */
export function driesTooLate(
  { book, tasks }: Situation,
  { plan, air, factors }: Standing,
  { step, cause, minutes }: FilmWait,
  then: ShopAir,
): boolean {
  const film = plan.steps.find((s) => s.id === cause.by);
  const laid = tasks.find((t) => t.id === film?.id)?.ways.find((way) => way.name === film?.way)?.film;
  const material = laid && book.materials.get(laid.material);
  if (film === undefined || laid === undefined || material === undefined) return false;
  const needs = tasks.find((t) => t.id === step.id)?.needs ?? [];
  const windows = needs.flatMap((n) => (n.kind === 'window' && n.task === film.id ? n.windows : []));
  const overIn = (rooms: ShopAir): readonly Minute[] => {
    const series = rooms.get(film.room);
    if (series === undefined) return [];
    const factor = factors.get(film.id) ?? 1;
    const mark = cause.kind === 'dry' ? effectiveMark(material, cause.mark) : undefined;
    const maps =
      cause.kind === 'window'
        ? windows.map((window) => windowMaps(window, material, laid, series, factor).opens)
        : mark === undefined
          ? []
          : [dryMap(material, mark, 'late', laid, series, factor)];
    return maps.map((map) => map.at(endOf(film)));
  };
  const usually = overIn(air);
  return usually.length > 0 && overIn(then).every((over, k) => (usually[k] ?? over) - over < minutes);
}

/** After a while of other air, the surface of work has forgotten it. */
const FORGOTTEN_MINUTES = 24 * 60;

/** Does a coat that stays as planned meet air, `then`, in `during`, in which it cannot be laid or dry? */
export function spoilsWhatStays(
  situation: Situation,
  { plan, air, factors }: Standing,
  moving: ReadonlySet<string>,
  { room, during, then }: { readonly room: string; readonly during: Span; readonly then: ShopAir },
): boolean {
  const sectionOf = (s: PlannedStep) => `${s.piece}/${s.section}`;
  const moved = new Set(plan.steps.filter((s) => moving.has(s.id)).map(sectionOf));
  const until = during.end + FORGOTTEN_MINUTES;
  const met = plan.steps.filter(
    (s) => s.room === room && s.material !== undefined && startOf(s) < until && !moved.has(sectionOf(s)),
  );
  const wet = met.filter(
    (s) => Math.max(endOf(s), s.dry?.['dust-free']?.late ?? s.dry?.touch?.late ?? 0) > during.start,
  );
  // What is done later to the same section tells nothing of them.
  const lastIn = new Map(wet.map((s) => [sectionOf(s), startOf(s)]));
  const steps = plan.steps.filter((s) => startOf(s) <= (lastIn.get(sectionOf(s)) ?? ALWAYS));
  const coats = new Set(wet.map((s) => s.id));
  const near = { ...plan, steps };
  const passed = { evidence: { situation, air, factors }, plan: near };
  const ground = groundOf({ situation, air: then, factors }, near, passed);
  return ground.facts.some((f) => coats.has(f.id) && !isSure(f) && airKept(ground, [f]).length > 0);
}
