import type { Condition, Lag } from '../engine/problem.ts';
import type { Mark } from '../model/mark.ts';
import type { Need, Task } from '../model/task.ts';
import type { Variant } from './compiled.ts';
import type { Ground } from './ground.ts';
import type { Manner } from './manners.ts';

const MINUTES_PER_HOUR = 60;

/** An activity of the problem that may have laid a film, and how: one variant per room and film. */
export interface Source {
  readonly activity: number;
  /** Id of its task. */
  readonly task: string;
  /** The shop's own factor on the hours of the film. */
  readonly factor: number;
  readonly variants: readonly Variant[];
  /** By mode. */
  readonly manners: readonly Manner[];
}

/** Groups the manners of a task by what makes them dry differently. */
export function variantsOf(manners: readonly Manner[]): Variant[] {
  const groups = new Map<string, Variant & { readonly modes: number[] }>();
  manners.forEach((manner, mode) => {
    const { film } = manner.way;
    if (film === undefined) return;
    const key = JSON.stringify([manner.place.room, film]);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, { room: manner.place.room, film, modes: [mode] });
    else group.modes.push(mode);
  });
  const all = [...groups.values()];
  return all.length === 1 && all[0]?.modes.length === manners.length
    ? all.map(({ room, film }) => ({ room, film }))
    : all;
}

function ifVariant(source: Source, variant: Variant): Condition[] {
  return variant.modes === undefined ? [] : [{ activity: source.activity, modes: variant.modes }];
}

/** `to` starts no earlier than `source` ends, plus some hours. */
export function orderLag(from: number, to: number, waitHours: number, when: readonly Condition[] = []): Lag {
  return {
    from,
    fromPoint: 'end',
    to,
    toPoint: 'start',
    least: Math.round(waitHours * MINUTES_PER_HOUR),
    ...(when.length > 0 && { when }),
  };
}

/** `to` starts no earlier than the film of `source` has reached `mark`, at the slow end. */
export function markLags(
  ground: Ground,
  source: Source,
  mark: Mark,
  to: number,
  when: readonly Condition[] = [],
): Lag[] {
  return source.variants.flatMap((variant) => {
    const least = ground.drying.mark(variant.film, variant.room, mark, 'late', source.factor);
    if (least === undefined) return [];
    const conditions = [...ifVariant(source, variant), ...when];
    return [
      {
        from: source.activity,
        fromPoint: 'end' as const,
        to,
        toPoint: 'start' as const,
        least: ground.fromActivity(source.task, least),
        ...(conditions.length > 0 && { when: conditions }),
      },
    ];
  });
}

/** `to` starts inside each window of the film of `source`; `when[k]` says under which condition window `k` is meant. */
export function windowLags(
  ground: Ground,
  source: Source,
  need: Need & { readonly kind: 'window' },
  to: number,
  when: (window: number) => readonly Condition[],
): Lag[] {
  return need.windows.flatMap((window, k) =>
    source.variants.map((variant) => {
      const { opens, shuts } = ground.drying.window(variant.film, variant.room, window, source.factor);
      const conditions = [...ifVariant(source, variant), ...when(k)];
      return {
        from: source.activity,
        fromPoint: 'end' as const,
        to,
        toPoint: 'start' as const,
        least: ground.fromActivity(source.task, opens),
        ...(shuts !== undefined && { most: ground.fromActivity(source.task, shuts) }),
        ...(conditions.length > 0 && { when: conditions }),
      };
    }),
  );
}

/** `to` ends no later than some hours after what ended `sinceMinutes` before the end of `from`. */
export function withinLag(from: number, to: number, hours: number, sinceMinutes = 0): Lag {
  return { from, fromPoint: 'end', to, toPoint: 'end', most: Math.floor(hours * MINUTES_PER_HOUR) - sinceMinutes };
}

/** The lags that one need of a task asks for, where it needs no choice. */
export function needLags(
  ground: Ground,
  source: Source,
  need: Need,
  to: number,
  when: readonly Condition[] = [],
): Lag[] {
  switch (need.kind) {
    case 'order':
      return [orderLag(source.activity, to, need.waitHours, when)];
    case 'mark':
      return markLags(ground, source, need.mark, to, when);
    case 'within':
      return [withinLag(source.activity, to, need.hours, ground.ragMinutes(source.task))];
    case 'window':
      return windowLags(ground, source, need, to, () => when);
  }
}

/** Does a coat have to choose, and perhaps to prepare, or is there but one plain window? */
export function needsChoice(need: Need): need is Need & { kind: 'window' } {
  return need.kind === 'window' && (need.windows.length > 1 || need.windows.some((w) => w.prepTask !== undefined));
}

export function prepTasksOf(need: Need & { kind: 'window' }, tasks: ReadonlyMap<string, Task>): (Task | undefined)[] {
  return need.windows.map((w) => (w.prepTask === undefined ? undefined : tasks.get(w.prepTask)));
}

/** What may not be moved is kept from whom: manners by mode; undefined where the mode does nothing. */
export type Mover = Pick<Source, 'activity'> & { readonly manners: readonly (Manner | undefined)[] };

function modesWhere(manners: readonly (Manner | undefined)[], keep: (manner: Manner) => boolean): number[] {
  return manners.flatMap((manner, mode) => (manner !== undefined && keep(manner) ? [mode] : []));
}

/**
 * What is wet is not moved: `to` starts before the film of `source` can be moved only at the same place, and there in a
 * manner that keeps the place. `alone`: no manner of `to` has to, because its own film does.
 */
export function unmovedLags(ground: Ground, source: Source, to: Mover, alone: boolean): Lag[] {
  return source.variants.flatMap((variant) => {
    const least = ground.drying.mark(variant.film, variant.room, 'handle', 'late', source.factor);
    if (least === undefined) return [];
    const places = new Set((variant.modes ?? [...source.manners.keys()]).map((m) => source.manners[m]?.place));
    return [...places].flatMap((place): Lag[] => {
      const there = (variant.modes ?? [...source.manners.keys()]).filter((m) => source.manners[m]?.place === place);
      const apart = modesWhere(to.manners, (m) => m.place !== place || (!alone && m.inPlace === undefined));
      if (apart.length === 0) return [];
      const when = [
        ...(there.length === source.manners.length ? [] : [{ activity: source.activity, modes: there }]),
        ...(apart.length === to.manners.length ? [] : [{ activity: to.activity, modes: apart }]),
      ];
      return [
        {
          from: source.activity,
          fromPoint: 'end',
          to: to.activity,
          toPoint: 'start',
          least: ground.fromActivity(source.task, least),
          ...(when.length > 0 && { when }),
        },
      ];
    });
  });
}
