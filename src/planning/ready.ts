import { at } from '../at.ts';
import { doseOf } from '../drying/dose.ts';
import { rateLaw } from '../drying/rate-law.ts';
import { drawing } from '../drying/spread.ts';
import { firstUp } from '../drying/first-minute.ts';
import { backFrom } from '../model/away.ts';
import { effectiveMark } from '../model/effective-mark.ts';
import { openSpans } from '../model/hours.ts';
import { marks, type Mark } from '../model/mark.ts';
import type { Piece } from '../model/piece.ts';
import type { PlannedPiece, PlannedStep, ReadyTime } from '../model/plan.ts';
import type { Shop } from '../model/shop.ts';
import type { Minute } from '../time/span.ts';
import { NEVER } from '../time/time-map.ts';
import { nodesOf, type Scene, type World, worldsOf } from './piece-worlds.ts';

const MINUTES_PER_HOUR = 60;
const MINUTES_PER_DAY = 1440;
/** So long after the end of the plan somebody opens the shop again. */
const LOOK_AHEAD_DAYS = 120;
/** What is not so by then is never so. */
const LONGEST_DAYS = 400;

type Nodes = ReturnType<typeof nodesOf>;

/** The next minute from `t` on at which the shop is open; `t` itself where it never is. */
export function openingOf(shop: Shop, from: Minute, to: Minute): (t: Minute) => Minute {
  const spans = openSpans(shop.opening, shop.timeZone, from, to + LOOK_AHEAD_DAYS * MINUTES_PER_DAY);
  return (t) => {
    let [low, high] = [0, spans.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (at(spans, middle).end <= t) low = middle + 1;
      else high = middle;
    }
    return Math.max(t, spans[low]?.start ?? t);
  };
}

function latest(minutes: readonly Minute[]): Minute {
  return Math.max(...minutes);
}

/** The films that may be the last of the piece to reach a mark: not those that are there before another even can be. */
function lastToReach(nodes: Nodes, mark: Mark): { index: number; mark: Mark }[] {
  const films = nodes.flatMap(({ laid, step }, index) => {
    const own = laid && effectiveMark(laid.material, mark);
    const dry = own === undefined ? undefined : step.dry?.[own];
    return own === undefined || dry === undefined ? [] : [{ index, mark: own, dry }];
  });
  const earliest = latest(films.map((f) => f.dry.early));
  return films.filter((f) => f.dry.late >= earliest);
}

/** In how many worlds, of one, something is so by a minute. */
type Share = (minute: Minute) => number;

/** In what share of the worlds every film of the piece has reached `mark` and, if `ends` are given, those have passed. */
function shareReached(nodes: Nodes, mark: Mark, worlds: readonly World[], ends?: readonly Minute[]): Share {
  const films = lastToReach(nodes, mark).flatMap(({ index, mark: own }) => {
    const laid = nodes[index]?.laid;
    const sheet = laid?.material.marks[own];
    if (laid === undefined || sheet === undefined) return [];
    const dose = doseOf(laid.air, rateLaw(laid.material, own));
    // Compared as hours of drying, not as minutes: to look for the minute in every world would take far longer.
    const hoursAt = drawing(sheet);
    const goals = Float64Array.from(
      worlds,
      (w) => dose.hoursAt(at(w.ends, index)) + hoursAt(at(w.deviates, index)) * w.airFactor * laid.scale,
    );
    return [{ dose, goals }];
  });
  return (minute) => {
    const kept = new Uint8Array(worlds.length).fill(1);
    ends?.forEach((end, w) => {
      if (end > minute) kept[w] = 0;
    });
    for (const { dose, goals } of films) {
      const gained = dose.hoursAt(minute);
      goals.forEach((goal, w) => {
        if (goal > gained) kept[w] = 0;
      });
    }
    return kept.reduce((sum, one) => sum + one, 0) / worlds.length;
  };
}

function typicallyReached(nodes: Nodes, mark: Mark): Minute | undefined {
  const films = nodes.flatMap(({ laid, step }) => {
    const own = laid && effectiveMark(laid.material, mark);
    return (own === undefined ? undefined : step.dry?.[own]?.typical) ?? [];
  });
  return films.length === 0 ? undefined : latest(films);
}

/** The first date from the typical one on that holds in at least `wanted` of the worlds, and in how many it does. */
function promised(typical: Minute, share: Share, wanted: number, when = (t: Minute) => t): ReadyTime {
  const last = typical + LONGEST_DAYS * MINUTES_PER_DAY;
  const found = firstUp(typical, last, (t) => share(t) >= wanted);
  const safe = found > last ? NEVER : when(found);
  return { typical: when(typical), safe, chance: Math.floor(share(safe) * 100) / 100 };
}

/**
 * What can be said of a piece: when it reaches each mark, can be listed and handed over, and how late it is. `safe` is
 * the date that holds with the shop's chance, by the spread of its films' drying and of the air's speed.
 */
export function plannedPiece(
  scene: Scene,
  piece: Piece,
  steps: readonly PlannedStep[],
  handOver: Minute | undefined,
): PlannedPiece {
  const wanted = scene.situation.book.shop.safeChance;
  const nodes = nodesOf(
    scene,
    steps.filter((s) => s.piece === piece.id),
  );
  const worlds = worldsOf(scene, nodes);
  const ready: Partial<Record<Mark | 'listed' | 'handedOver', ReadyTime>> = {};
  for (const mark of marks) {
    // A mark that no film of the piece has by itself says nothing that another mark does not say.
    if (!nodes.some((n) => n.step.dry?.[mark] !== undefined)) continue;
    const typical = typicallyReached(nodes, mark);
    if (typical !== undefined) ready[mark] = promised(typical, shareReached(nodes, mark, worlds), wanted);
  }
  if (handOver !== undefined && nodes.length > 0) {
    const back = backFrom(piece) ?? 0;
    const worked = latest([...nodes.map((n) => n.end), back]);
    const workedIn = worlds.map((w) => latest([...w.ends, back]));
    const workedBy: Share = (t) => workedIn.filter((end) => end <= t).length / worlds.length;
    const stacked = typicallyReached(nodes, 'stack') ?? worked;
    ready.listed = promised(worked, workedBy, wanted);
    const share = shareReached(nodes, 'stack', worlds, workedIn);
    const quantile = promised(Math.max(worked, stacked), share, wanted, scene.open);
    // Never before the plan's own date, which counts on the slow end of every film.
    const safe = Math.max(handOver, quantile.safe);
    ready.handedOver = { typical: quantile.typical, safe, chance: Math.floor(share(safe) * 100) / 100 };
  }
  const safe = ready.handedOver?.safe;
  const lateMinutes = piece.wantedBy === undefined || safe === undefined ? 0 : Math.max(0, safe - piece.wantedBy);
  return {
    id: piece.id,
    name: piece.name,
    ...(piece.wantedBy !== undefined && { wantedBy: piece.wantedBy }),
    lateHours: lateMinutes / MINUTES_PER_HOUR,
    ready,
  };
}
