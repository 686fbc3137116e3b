import { at } from '../at.ts';
import type { Minute } from '../time/span.ts';
import { byte, int } from '../typed.ts';
import { holdKinds, type Net, type NetLag, type NetPresence, type NetUse } from './net.ts';
import { presenceEnd } from './plan.ts';

/** A place and a mode for every activity, that may break rules. */
export interface Candidate {
  readonly starts: Int32Array;
  readonly ends: Int32Array;
  /** Numbered through. */
  readonly modes: Int32Array;
}

/** A stretch of time that an activity's mode takes up, of a resource or in an exclusion. */
export interface Taken {
  readonly activity: number;
  readonly from: Minute;
  readonly until: Minute;
  readonly units: number;
  readonly use?: NetUse;
  readonly presence?: NetPresence;
}

/** A broken rule: activities whose modes take part in it, and what of it could be parted. */
export type Clash =
  | { readonly kind: 'lag'; readonly parties: readonly number[] }
  | { readonly kind: 'moved'; readonly parties: readonly number[]; readonly use: NetUse }
  | { readonly kind: 'taken'; readonly parties: readonly number[]; readonly taken: readonly Taken[] };

/** The first rule that `candidate` breaks, if any; starts and horizon are taken to be kept. */
export function clashOf(net: Net, candidate: Candidate): Clash | undefined {
  return (
    lagClash(net, candidate) ?? movedClash(net, candidate) ?? capacityClash(net, candidate) ?? roomClash(net, candidate)
  );
}

function lagClash(net: Net, candidate: Candidate): Clash | undefined {
  for (const lag of net.lags) {
    if (
      !lag.when.every((c) => byte(c.allowed, int(candidate.modes, c.activity) - int(net.modeFirst, c.activity)) === 1)
    )
      continue;
    const a = int(lag.fromEnd ? candidate.ends : candidate.starts, lag.from);
    const b = int(lag.toEnd ? candidate.ends : candidate.starts, lag.to);
    if ((lag.least === undefined || lag.least.at(a) <= b) && (lag.most === undefined || b <= lag.most.at(a))) continue;
    return { kind: 'lag', parties: partiesOf(lag) };
  }
  return undefined;
}

function partiesOf(lag: NetLag): number[] {
  return [lag.from, lag.to, ...lag.when.map((condition) => condition.activity)];
}

function movedClash(net: Net, candidate: Candidate): Clash | undefined {
  for (let i = 0; i < net.count; i++)
    for (const use of at(net.modes, int(candidate.modes, i)).uses) {
      if (use.kind !== holdKinds.mapOrNext || use.map === undefined) continue;
      if (at(net.modes, int(candidate.modes, use.next)).usesResource.has(use.resource)) continue;
      if (int(candidate.starts, use.next) < use.map.at(int(candidate.ends, i)))
        return { kind: 'moved', parties: [i, use.next], use };
    }
  return undefined;
}

function untilOf(candidate: Candidate, use: NetUse): Minute {
  const end = int(candidate.ends, use.activity);
  const byMap = use.map === undefined ? Infinity : use.map.at(end);
  const byNext = use.next < 0 ? Infinity : int(candidate.starts, use.next);
  return use.kind === holdKinds.none ? end : Math.max(end, Math.min(byMap, byNext));
}

function capacityClash(net: Net, candidate: Candidate): Clash | undefined {
  const byResource = Array.from(net.capacity, (): Taken[] => []);
  for (let i = 0; i < net.count; i++)
    for (const use of at(net.modes, int(candidate.modes, i)).uses)
      add(at(byResource, use.resource), {
        activity: i,
        from: int(candidate.starts, i),
        until: untilOf(candidate, use),
        units: use.units,
        use,
      });
  for (const [resource, taken] of byResource.entries()) {
    const over = overload(taken, int(net.capacity, resource));
    if (over !== undefined) return clashAmong(over);
  }
  return undefined;
}

function add(list: Taken[], taken: Taken): void {
  if (taken.from < taken.until && taken.units > 0) list.push(taken);
}

/** What is taken at the first minute with more than `capacity` in use: as few, and as large, as are too many. */
function overload(taken: Taken[], capacity: number): Taken[] | undefined {
  taken.sort((a, b) => a.from - b.from || a.activity - b.activity);
  let running: Taken[] = [];
  for (const next of taken) {
    running = running.filter((t) => t.until > next.from);
    running.push(next);
    if (running.reduce((sum, t) => sum + t.units, 0) <= capacity) continue;
    const largest = running.slice(0, -1).sort((a, b) => b.units - a.units || a.activity - b.activity);
    const fewest = [next];
    let units = next.units;
    for (const t of largest) {
      if (units > capacity) break;
      fewest.push(t);
      units += t.units;
    }
    return fewest;
  }
  return undefined;
}

function roomClash(net: Net, candidate: Candidate): Clash | undefined {
  const all: Taken[] = [];
  for (let i = 0; i < net.count; i++)
    for (const presence of at(net.modes, int(candidate.modes, i)).presences)
      add(all, {
        activity: i,
        from: int(candidate.starts, i),
        until: presenceEnd(presence, int(candidate.ends, i)),
        units: 1,
        presence,
      });
  all.sort((a, b) => a.from - b.from || a.activity - b.activity);
  let running: Taken[] = [];
  for (const next of all) {
    running = running.filter((t) => t.until > next.from);
    const other = running.find(
      (t) => t.presence?.exclusion === next.presence?.exclusion && t.presence?.side !== next.presence?.side,
    );
    if (other !== undefined) return clashAmong([other, next]);
    running.push(next);
  }
  return undefined;
}

function clashAmong(taken: readonly Taken[]): Clash {
  return { kind: 'taken', parties: taken.map((t) => t.activity), taken };
}
