import type { Book } from '../model/book.ts';
import { heldTasks } from '../model/gates.ts';
import { shareOf } from '../model/money.ts';
import type { Piece } from '../model/piece.ts';
import type { Plan } from '../model/plan.ts';
import { grainsOf, type QuantityUnit } from '../model/quantity.ts';
import type { Situation } from '../model/situation.ts';
import type { Task } from '../model/task.ts';
import { lengthOf, type Minute, type Span } from '../time/span.ts';
import { heldCosts, type Held, type Presence } from './presence.ts';
import { lowestPrice, ratePer, sellingFee } from './sale.ts';
import { soldAs } from './shopping.ts';
import { type Use, usesOf } from './uses.ts';
import { reallyUsed } from './used-since.ts';
import { wayNamed, workLeft } from './work-left.ts';
import { workedMinutes } from './work-time.ts';

/** An amount until now, and what is still to come. */
export interface SoFar {
  readonly soFar: number;
  readonly toCome: number;
}

/** What a piece has cost, will cost, and brings. Money in minor units of the shop's currency. */
export interface Account {
  readonly piece: string;
  readonly name: string;
  readonly kind: string;
  readonly purchase: number;
  readonly materials: SoFar;
  readonly pay: SoFar;
  readonly overhead: SoFar;
  readonly cost: SoFar;
  /** Minutes at the bench, of all hands together. */
  readonly minutes: SoFar;
  /** What the recipes planned for the work that is done. */
  readonly plannedMinutes: number;
  readonly days: SoFar;
  /** Below this it loses; absent where the fee takes all. */
  readonly lowestPrice?: number;
  /** At the price hoped for; absent where none is. */
  readonly sale?: {
    readonly price: number;
    readonly fee: number;
    readonly margin: number;
    /** Absent where it takes no time at all. */
    readonly perBenchHour?: number;
    readonly perDayHeld?: number;
  };
  /** Materials and supplies that it takes and that have no price: they count for nothing here. */
  readonly unpriced: readonly string[];
  /** Steps that wait for a lead test: neither they nor what they take are counted. */
  readonly heldSteps: number;
}

/** One piece of work on one piece, done or not. */
interface Job {
  readonly task: Task;
  readonly uses: readonly Use[];
  /** Of all hands together. */
  readonly minutes: number;
  readonly plannedMinutes: number;
  readonly span: Span;
  readonly hands: readonly string[];
  readonly minutesEach: number;
  readonly isPast: boolean;
}

function jobsDone(book: Book, { tasks, done }: Situation): Job[] {
  return tasks.flatMap((task): Job[] => {
    const step = done.get(task.id);
    if (step === undefined) return [];
    const way = wayNamed(task, step.way);
    const span = { start: step.from, end: step.to };
    const minutesEach = workedMinutes(book.shop, span);
    return [
      {
        task,
        uses: reallyUsed(usesOf(book, tasks, task, way), task, step.used),
        minutes: minutesEach * task.people,
        plannedMinutes: way.workMinutes * task.people,
        span,
        hands: step.hands ?? [],
        minutesEach,
        isPast: true,
      },
    ];
  });
}

function jobsLeft(book: Book, situation: Situation, plan: Plan): Job[] {
  return workLeft(situation, plan).map(({ task, way, part, step }): Job => {
    const minutesEach = lengthOf(step.spans);
    return {
      task,
      uses: usesOf(book, situation.tasks, task, way, part),
      minutes: minutesEach * task.people,
      plannedMinutes: 0,
      span: { start: step.spans[0]?.start ?? plan.from, end: step.spans.at(-1)?.end ?? plan.from },
      hands: step.hands,
      minutesEach,
      isPast: false,
    };
  });
}

function sumOf<T>(list: readonly T[], value: (one: T) => number): number {
  return list.reduce((sum, one) => sum + value(one), 0);
}

/** What the uses of all jobs cost, each thing rounded once; and what has no price. */
function materialCost(book: Book, jobs: readonly Job[]): { readonly minor: number; readonly unpriced: string[] } {
  const amounts = new Map<string, { unit: QuantityUnit; value: number }>();
  for (const { item, unit, value = 0 } of jobs.flatMap((j) => j.uses))
    amounts.set(item, { unit, value: (amounts.get(item)?.value ?? 0) + value });
  let minor = 0;
  const unpriced: string[] = [];
  for (const [item, amount] of amounts) {
    const price = book.shop.prices?.[item]?.[0];
    // A part of a sheet or cloth is a part of its price.
    const inThousandths = { value: amount.value * 1000, unit: amount.unit };
    if (price !== undefined)
      minor += shareOf(price.minor, {
        top: BigInt(grainsOf(inThousandths)),
        bottom: BigInt(grainsOf(price.holds)) * 1000n,
      });
    else if (!soldAs(book, item).isFromTap) unpriced.push(item);
  }
  return { minor, unpriced };
}

/** What the hands that are paid by the hour get for their work. */
function payOf({ shop }: Book, jobs: readonly Job[]): number {
  return sumOf(shop.hands, ({ id, payMinorPerHour = 0 }) => {
    const minutes = sumOf(jobs, (j) => (j.hands.includes(id) ? j.minutesEach : 0));
    return shareOf(payMinorPerHour, { top: BigInt(minutes), bottom: 60n });
  });
}

function presenceOf(piece: Piece, jobs: readonly Job[], plan: Plan, now: Minute): Presence {
  const first = Math.min(...jobs.map((j) => j.span.start));
  const last = Math.max(...jobs.map((j) => j.span.end));
  const from = piece.arrives ?? (Number.isFinite(first) ? first : now);
  const leaves = plan.pieces.find((p) => p.id === piece.id)?.ready.handedOver?.typical;
  return { piece: piece.id, from, to: Math.max(from, leaves ?? (Number.isFinite(last) ? last : now)) };
}

function split(soFar: number, all: number): SoFar {
  return { soFar, toCome: all - soFar };
}

function accountOf(book: Book, piece: Piece, jobs: readonly Job[], held: Held, heldSteps: number): Account {
  const past = jobs.filter((j) => j.isPast);
  const material = { past: materialCost(book, past), all: materialCost(book, jobs) };
  const materials = split(material.past.minor, material.all.minor);
  const pay = split(payOf(book, past), payOf(book, jobs));
  const overhead = split(held.minorSoFar, held.minor);
  const each = [materials, pay, overhead];
  const cost = { soFar: piece.costMinor + sumOf(each, (s) => s.soFar), toCome: sumOf(each, (s) => s.toCome) };
  const minutes = split(
    sumOf(past, (j) => j.minutes),
    sumOf(jobs, (j) => j.minutes),
  );
  const days = split(held.daysSoFar, held.days);
  const feePercent = book.shop.sellingFeePercent ?? 0;
  const atEnd = cost.soFar + cost.toCome;
  const lowest = lowestPrice(atEnd, feePercent);
  const fee = sellingFee(piece.priceMinor, feePercent);
  const margin = piece.priceMinor - fee - atEnd;
  const perBenchHour = ratePer(margin, minutes.soFar + minutes.toCome, 60);
  const perDayHeld = ratePer(margin, held.days);
  return {
    piece: piece.id,
    name: piece.name,
    kind: piece.kind,
    purchase: piece.costMinor,
    materials,
    pay,
    overhead,
    cost,
    minutes,
    plannedMinutes: sumOf(past, (j) => j.plannedMinutes),
    days,
    ...(lowest !== undefined && { lowestPrice: lowest }),
    ...(piece.priceMinor > 0 && {
      sale: {
        price: piece.priceMinor,
        fee,
        margin,
        ...(perBenchHour !== undefined && { perBenchHour }),
        ...(perDayHeld !== undefined && { perDayHeld }),
      },
    }),
    unpriced: material.all.unpriced,
    heldSteps,
  };
}

/** The account of every piece, in the order of the book: the journal's work with what it took, and the plan's to come. */
export function accountsOf(book: Book, situation: Situation, plan: Plan): Account[] {
  const jobs = [...jobsDone(book, situation), ...jobsLeft(book, situation, plan)];
  const jobsOf = (piece: Piece) => jobs.filter((j) => j.task.piece === piece.id);
  const presences = book.pieces.map((piece) => presenceOf(piece, jobsOf(piece), plan, situation.now));
  const { overheadMinorPerDay = 0, timeZone } = book.shop;
  const costs = heldCosts(presences, overheadMinorPerDay, situation.now, timeZone);
  const held = [...heldTasks(situation)];
  return book.pieces.map((piece) =>
    accountOf(
      book,
      piece,
      jobsOf(piece),
      costs.get(piece.id) ?? { daysSoFar: 0, days: 0, minorSoFar: 0, minor: 0 },
      held.filter((id) => id.startsWith(`${piece.id}/`)).length,
    ),
  );
}
