/**
 * Checks an answer against the instance file itself. It shares nothing with the engine or with the reader the bench
 * uses, so that a mistake in those cannot hide here.
 */

/** What a published instance demands, as its file puts it. */
export interface Demands {
  readonly durations: readonly number[];
  /** use[i][k]: units of resource k that activity i takes. */
  readonly use: readonly (readonly number[])[];
  readonly capacities: readonly number[];
  /** start of `to` >= start of `from` + `gap`. */
  readonly gaps: readonly { readonly from: number; readonly to: number; readonly gap: number }[];
}

/** What is published of the best value. */
export interface Published {
  readonly lower: number | undefined;
  readonly upper: number | undefined;
  readonly status: string;
}

/** An answer as the bench writes it. */
export interface Claim {
  readonly status: string;
  readonly makespan?: number;
  readonly bound: number;
  readonly starts?: readonly number[];
}

/** Reads the demands of a .sch or .sm file. */
export function readDemands(name: string, text: string): Demands {
  return name.endsWith('.sch') ? demandsOfSch(text) : demandsOfSm(text);
}

function demandsOfSch(text: string): Demands {
  const numbers = text.replaceAll(/[[\]]/g, ' ').trim().split(/\s+/).map(Number);
  let next = 0;
  const take = () => numbers[next++]!;
  const count = take() + 2;
  const kinds = take();
  next += 2;
  const gaps: { from: number; to: number; gap: number }[] = [];
  for (let i = 0; i < count; i++) {
    const from = take();
    take();
    const arcs = take();
    const targets = Array.from({ length: arcs }, take);
    for (const to of targets) gaps.push({ from, to, gap: take() });
  }
  const durations: number[] = [];
  const use: number[][] = [];
  for (let i = 0; i < count; i++) {
    next += 2;
    durations.push(take());
    use.push(Array.from({ length: kinds }, take));
  }
  return { durations, use, capacities: Array.from({ length: kinds }, take), gaps };
}

function demandsOfSm(text: string): Demands {
  const between = (from: string, to: string) => {
    const part = text.slice(text.indexOf(from) + from.length, to === '' ? undefined : text.indexOf(to));
    return part.split('\n').flatMap((line) => (/^[\s\d]*\d[\s\d]*$/.test(line) ? [line.trim().split(/\s+/)] : []));
  };
  const jobs = between('REQUESTS/DURATIONS:', 'RESOURCEAVAILABILITIES:').map((row) => row.map(Number));
  const durations = jobs.map((row) => row[2]!);
  const gaps = between('PRECEDENCE RELATIONS:', 'REQUESTS/DURATIONS:').flatMap((row) => {
    const [job, , , ...after] = row.map(Number);
    return after.map((other) => ({ from: job! - 1, to: other - 1, gap: durations[job! - 1]! }));
  });
  const capacities = between('RESOURCEAVAILABILITIES:', '').flat().map(Number);
  return { durations, use: jobs.map((row) => row.slice(3)), capacities, gaps };
}

/** Everything that is wrong with the claim, in words; empty if nothing is. */
export function faultsOf(claim: Claim, demands: Demands, published: Published | undefined): string[] {
  const found = claim.status === 'optimal' || claim.status === 'feasible';
  return [
    ...(found ? faultsOfStarts(claim, demands) : []),
    ...(published === undefined ? [] : faultsAgainst(claim, published)),
    ...(claim.status === 'optimal' && claim.bound !== claim.makespan
      ? ['"optimal" but bound and makespan differ']
      : []),
    ...(claim.makespan !== undefined && claim.bound > claim.makespan ? ['bound above makespan'] : []),
  ];
}

function faultsOfStarts(claim: Claim, demands: Demands): string[] {
  const { durations, use, capacities, gaps } = demands;
  const starts = claim.starts ?? [];
  if (starts.length !== durations.length) return [`${starts.length} starts for ${durations.length} activities`];
  const faults: string[] = [];
  if (starts.some((s) => !Number.isInteger(s) || s < 0)) faults.push('a start is no whole number from 0 on');
  if (starts[0] !== 0) faults.push('the first activity does not start at 0');
  for (const { from, to, gap } of gaps)
    if (starts[to]! < starts[from]! + gap) faults.push(`${to} starts less than ${gap} after ${from}`);
  const last = starts.at(-1)!;
  starts.forEach((s, i) => {
    if (s + durations[i]! > last) faults.push(`${i} ends after the last activity starts`);
  });
  if (claim.makespan !== last) faults.push(`makespan ${claim.makespan}, but the last activity starts at ${last}`);
  for (let t = 0; t <= last; t++)
    capacities.forEach((capacity, k) => {
      const used = starts.reduce((sum, s, i) => (s <= t && t < s + durations[i]! ? sum + use[i]![k]! : sum), 0);
      if (used > capacity) faults.push(`resource ${k} at ${t}: ${used} of ${capacity}`);
    });
  return faults;
}

function faultsAgainst(claim: Claim, published: Published): string[] {
  const { lower, upper, status } = published;
  const faults: string[] = [];
  if (claim.status === 'infeasible' && upper !== undefined) faults.push('"infeasible", but a schedule is published');
  if (claim.makespan !== undefined && status === 'infeasible') faults.push('a schedule, but published as infeasible');
  if (claim.makespan !== undefined && lower !== undefined && claim.makespan < lower)
    faults.push(`makespan ${claim.makespan} below the published lower bound ${lower}`);
  if (upper !== undefined && claim.bound > upper)
    faults.push(`bound ${claim.bound} above the published value ${upper}`);
  return faults;
}
