import { isoWriter } from '../time/iso.ts';
import type { Minute } from '../time/span.ts';
import type { MarkTimes, Plan, PlannedPiece, PlannedStep, PlannedWindow } from './plan.ts';

/** Name and version of the form; a reader refuses a higher version rather than guess. */
export const PLAN_FORMAT = 'drybench.plan/1';

export interface StepDocument extends Omit<
  PlannedStep,
  'spans' | 'holdsStationUntil' | 'dry' | 'window' | 'after' | 'broughtIn'
> {
  readonly spans: readonly { readonly start: string; readonly end: string }[];
  readonly holdsStationUntil: string;
  readonly dry?: Readonly<Record<string, Readonly<Record<keyof MarkTimes, string>>>>;
  readonly window?: Omit<PlannedWindow, 'opens' | 'shuts'> & { readonly opens: string; readonly shuts?: string };
  readonly broughtIn?: { readonly from: string; readonly at: string; readonly by: string };
  readonly after: readonly (Omit<PlannedStep['after'][number], 'notBefore'> & { readonly notBefore: string })[];
}

export interface PieceDocument extends Omit<PlannedPiece, 'wantedBy' | 'ready'> {
  readonly wantedBy?: string;
  readonly ready: Readonly<
    Record<string, { readonly typical: string; readonly safe: string; readonly chance: number }>
  >;
}

/**
 * What `week --json` prints and plan.json holds. Instants are ISO 8601 with the offset of the shop's clock, durations
 * hours, chances 0 to 1.
 */
export interface PlanDocument extends Omit<Plan, 'madeAt' | 'from' | 'to' | 'pieces' | 'steps'> {
  readonly format: typeof PLAN_FORMAT;
  readonly madeAt: string;
  readonly from: string;
  readonly to: string;
  readonly pieces: readonly PieceDocument[];
  readonly steps: readonly StepDocument[];
}

type Iso = (minute: Minute) => string;

function mapValues<A, B>(values: Readonly<Record<string, A>>, change: (value: A) => B): Record<string, B> {
  return Object.fromEntries(Object.entries(values).map(([key, value]) => [key, change(value)]));
}

function windowDocument({ opens, shuts, ...rest }: PlannedWindow, iso: Iso) {
  return { opens: iso(opens), ...(shuts !== undefined && { shuts: iso(shuts) }), ...rest };
}

function stepDocument(step: PlannedStep, iso: Iso): StepDocument {
  const { spans, holdsStationUntil, dry, window, after, broughtIn, ...plain } = step;
  return {
    ...plain,
    spans: spans.map((s) => ({ start: iso(s.start), end: iso(s.end) })),
    holdsStationUntil: iso(holdsStationUntil),
    ...(dry && {
      dry: mapValues(dry, (t) => ({ typical: iso(t.typical), early: iso(t.early), late: iso(t.late) })),
    }),
    ...(window && { window: windowDocument(window, iso) }),
    ...(broughtIn && { broughtIn: { ...broughtIn, at: iso(broughtIn.at), by: iso(broughtIn.by) } }),
    after: after.map(({ notBefore, ...link }) => ({ ...link, notBefore: iso(notBefore) })),
  };
}

function pieceDocument({ wantedBy, ready, ...plain }: PlannedPiece, iso: Iso): PieceDocument {
  return {
    ...plain,
    ...(wantedBy !== undefined && { wantedBy: iso(wantedBy) }),
    ready: mapValues(ready, (t) => ({ ...t, typical: iso(t.typical), safe: iso(t.safe) })),
  };
}

/** The plan as a document; nothing of it is lost. */
export function planDocument(plan: Plan): PlanDocument {
  const iso = isoWriter(plan.timeZone);
  return {
    format: PLAN_FORMAT,
    madeAt: iso(plan.madeAt),
    ...(plan.basis !== undefined && { basis: plan.basis }),
    timeZone: plan.timeZone,
    from: iso(plan.from),
    to: iso(plan.to),
    pieces: plan.pieces.map((p) => pieceDocument(p, iso)),
    steps: plan.steps.map((s) => stepDocument(s, iso)),
    ...(plan.sessions !== undefined && { sessions: plan.sessions }),
    proof: plan.proof,
    warnings: plan.warnings,
  };
}
