import type { Change } from '../planning/change.ts';
import type { Cause, WhyLink } from '../planning/why.ts';
import type { ToldNearest } from '../planning/nearest-change.ts';
import type { LateCoat } from '../planning/remedies.ts';
import { sayStep, type Bench } from './bench.ts';
import { grid, painted, paragraph, type Cell } from './layout.ts';
import { isByLine } from './look.ts';
import { sayChanges } from './say-change.ts';
import { markSaid } from './say-mark.ts';
import { sayMoment, sayWork, type Manner } from './say-time.ts';
import { sayReasons } from './say-unfit.ts';
import type { Span } from '../time/span.ts';
import { minuteAt } from '../time/zone.ts';
import { counted, translated, worded } from '../words/worded.ts';

type Desk = Pick<Bench, 'plan' | 'names' | 'look' | 'manner'>;

/** `coat 1 on Pine washstand, body` */
function sayOther(id: string, own: Pick<WhyLink, 'step'>, { plan, names }: Desk): string {
  const step = plan.steps.find((s) => s.id === id);
  if (step === undefined) return id;
  const section = names.section(step.piece, step.section);
  const sameSection = step.piece === own.step.piece && step.section === own.step.section;
  const whose = sameSection ? '' : ` (${names.piece(step.piece)}${section === '' ? '' : `, ${section}`})`;
  return `“${sayStep(step)}”${whose}`;
}

function sayMissing({ step }: Pick<WhyLink, 'step'>): string {
  return step.hands.length > 1
    ? worded`it takes ${step.hands.length} hands, who are not in together`
    : worded`nobody is in`;
}

/** One cause as a sentence. */
export function sayCause(cause: Cause, link: Pick<WhyLink, 'step'>, desk: Desk): string {
  const { manner, names } = desk;
  const until = (minute: number) => sayMoment(minute, manner);
  const other = (by: string) => sayOther(by, link, desk);
  switch (cause.kind) {
    case 'done':
      return worded`it is done`;
    case 'at-work':
      return worded`it is at work`;
    case 'now':
      return worded`nothing holds it: it comes first`;
    case 'arrival':
      return worded`the piece arrives ${until(cause.until)}`;
    case 'put-off':
      return worded`it was put off until ${until(cause.until)}`;
    case 'order':
      return worded`it comes after ${other(cause.by)}, over ${until(cause.until)}`;
    case 'dry':
      return worded`${other(cause.by)} must dry first: fit to ${translated(markSaid[cause.mark])} from ${until(cause.until)}`;
    case 'window': {
      const shuts = cause.shuts === undefined ? '' : worded` and shuts ${until(cause.shuts)}`;
      return worded`the window of ${other(cause.by)} opens ${until(cause.until)}${shuts}`;
    }
    case 'hand':
      return worded`${cause.name} is busy with ${other(cause.by)} until ${until(cause.until)}`;
    case 'tool':
      return worded`${cause.name} is in use by ${other(cause.by)} until ${until(cause.until)}`;
    case 'place':
      return worded`${cause.name} is taken by ${other(cause.by)} until ${until(cause.until)}`;
    case 'dust':
      return worded`dust and wet film would meet: ${other(cause.by)} until ${until(cause.until)}`;
    case 'object':
      return worded`another part of the same piece is at work or cannot be moved yet: ${other(cause.by)} until ${until(cause.until)}`;
    case 'keeps-window':
      return worded`any sooner, and ${other(cause.by)} (${until(cause.until)}) would come too late after it`;
    case 'session-waits':
      return worded`it waits for ${other(cause.by)} (${until(cause.until)}), to be laid in one go with it: mixed and washed up once, which spares ${sayWork(cause.savedMinutes)}`;
    case 'session':
      return worded`it is laid in one go with ${other(cause.by)}, over ${until(cause.until)}: mixed and washed up once, which spares ${sayWork(cause.savedMinutes)}`;
    case 'hours':
      return worded`${sayMissing(link)}, or not for long enough, from ${until(cause.since)} to ${until(cause.until)}`;
    case 'air': {
      const why = sayReasons(cause.breaches, manner);
      return worded`the air of ${names.room(cause.room)} forbids it until ${until(cause.until)}${why === '' ? '' : `: ${why}`}`;
    }
    case 'cold-work': {
      const latest = cause.latest > cause.carried ? worded` (${until(cause.latest)} at the latest)` : '';
      return worded`it is brought in from ${names.room(cause.from)} by ${until(cause.carried)}${latest}: its surface is warm enough ${until(cause.until)}`;
    }
    case 'away':
      return worded`the piece is away at ${cause.at}, or would not be safe to move before it leaves, until ${until(cause.until)}`;
    case 'room':
      return worded`${names.room(cause.room)} cannot be had, or not for as long as it must stand there, until ${until(cause.until)}`;
    case 'better-so':
      return worded`it could start ${until(cause.couldFrom)}, but the plan as a whole is better so`;
  }
}

/** All that holds the step of a link. */
export function sayHeld(link: Pick<WhyLink, 'step' | 'cause' | 'then'>, desk: Desk): string {
  const { cause, then } = link;
  const first = sayCause(cause, link, desk);
  if (then === undefined) return first;
  return then.kind === 'hours'
    ? worded`${first}; then ${sayMissing(link)}, or not for long enough, until ${sayMoment(then.until, desk.manner)}`
    : worded`${first}; then ${sayCause(then, link, desk)}`;
}

/** What of the chain is there only because a coat comes late, and until when that could be, or could have been, spared. */
function lateLines(chain: readonly WhyLink[], late: readonly LateCoat[], desk: Desk): string[] {
  const { look, manner } = desk;
  return late.flatMap(({ coat, remedy, film, shuts }) => {
    const link = chain.find(({ step }) => step.id === coat.id || step.id === remedy.id);
    if (link === undefined) return [];
    const minutes = remedy.spans.reduce((sum, s) => sum + s.end - s.start, 0);
    const extra = `“${sayStep(remedy)}” (${sayWork(minutes)}, ${sayMoment(remedy.spans[0]?.start ?? 0, manner)})`;
    const lies = worded`${sayOther(film, link, desk)} takes the next coat`;
    const until = sayMoment(shuts, manner);
    const text =
      shuts < manner.now
        ? worded`${extra} has come in by itself: without it ${lies} until ${until} only, and “${sayStep(coat)}” was not begun by then.`
        : worded`${extra} is only there because “${sayStep(coat)}” is planned so late: without it ${lies} until ${until}, so who begins by then is spared it.`;
    return paragraph(text, look, 0, look.paint.warn);
  });
}

/** What would let the step begin sooner, as it was tried. */
function nearestLines(nearest: ToldNearest, first: WhyLink, desk: Desk): string[] {
  const { look, manner, names } = desk;
  const at = (minute: number) => sayMoment(minute, manner);
  const step = `“${sayStep(first.step)}”`;
  switch (nearest.kind) {
    case 'as-it-is':
      return paragraph(
        worded`Nothing has to change for ${step} to begin ${at(nearest.start)} instead of ${at(first.start)}, everything else as planned; but the plan as a whole is better so.`,
        look,
      );
    case 'change': {
      const count = nearest.along.length;
      const stays = worded`everything else stays as planned`;
      const along =
        count === 0 ? '' : `${counted(count, '{0} other step begins sooner', '{0} other steps begin sooner')}; `;
      return paragraph(
        worded`The nearest change: ${sayChanges(nearest.changes, names, manner)}. Then ${step} could begin ${at(nearest.start)} instead of ${at(first.start)} (tried: ${along}${stays}).`,
        look,
        0,
        look.paint.good,
      );
    }
    case 'none':
      return nearest.tried === 0
        ? []
        : paragraph(
            worded`No single change that was tried (other hands or hours, tools, places, warmer or drier rooms) lets ${step} begin sooner with everything else as planned.`,
            look,
          );
  }
}

/** Ids of the steps that are spoken of. */
export function spokenOf(chain: readonly WhyLink[], late: readonly LateCoat[]): ReadonlySet<string> {
  const others = chain.flatMap(({ cause }) => ('by' in cause ? [cause.by] : []));
  return new Set([...chain.map(({ step }) => step.id), ...others, ...late.map(({ film }) => film)]);
}

/** Why a step is where it is: each link of the chain with what holds it, back to now. */
export function whyScreen(chain: readonly WhyLink[], late: readonly LateCoat[], desk: Desk): string {
  const { look, manner, names } = desk;
  const rows = chain.map((link, i): Cell[] => {
    const section = names.section(link.step.piece, link.step.section);
    const before = chain[i - 1]?.step;
    const same = !isByLine(look) && before?.piece === link.step.piece && before.section === link.step.section;
    return [
      painted(look.paint.strong, sayMoment(link.start, manner)),
      [
        sayStep(link.step),
        ...(same
          ? []
          : [painted(look.paint.quiet, `${names.piece(link.step.piece)}${section === '' ? '' : `, ${section}`}`)]),
        painted(look.paint.quiet, worded`because ${sayHeld(link, desk)}`),
      ],
    ];
  });
  const [first] = chain;
  if (first === undefined) return paragraph(worded`This step is not in the plan.`, look).join('\n') + '\n';
  return [...grid(rows, [{ align: 'right' }, {}], look), ...lateLines(chain, late, desk)].join('\n') + '\n';
}

/** What would let the first step of the chain begin sooner, below that. */
export function nearestScreen(first: WhyLink | undefined, nearest: ToldNearest, desk: Desk): string {
  const lines = first === undefined ? [] : nearestLines(nearest, first, desk);
  return lines.map((line) => `${line}\n`).join('');
}

/** The same as a document: every cause with its times in ISO 8601. */
export function whyDocument(
  chain: readonly WhyLink[],
  late: readonly LateCoat[],
  nearest: ToldNearest,
  iso: (minute: number) => string,
  manner: Manner,
) {
  const timed = (cause: Cause) =>
    Object.fromEntries(
      Object.entries(cause).map(([key, value]) => [
        key,
        typeof value === 'number' && key !== 'savedMinutes' ? iso(value) : value,
      ]),
    );
  const between = ({ start, end }: Span) => ({ start: iso(start), end: iso(end) });
  const dated = (change: Change) => {
    if (change.kind === 'back') return { ...change, left: iso(change.left), at: iso(change.at) };
    if ('at' in change) return { ...change, at: iso(change.at) };
    if ('during' in change) return { ...change, during: between(change.during) };
    if (!('spans' in change)) return change;
    const { date, spans, ...rest } = change;
    const at = (clock: number) => minuteAt(date, clock, manner.zone);
    return { ...rest, hours: spans.map((s) => between({ start: at(s.from), end: at(s.to) })) };
  };
  return {
    format: 'drybench.why/1',
    timeZone: manner.zone,
    late: late.map(({ coat, remedy, film, shuts }) => ({
      coat: coat.id,
      remedy: remedy.id,
      film,
      shuts: iso(shuts),
    })),
    nearest: {
      kind: nearest.kind,
      ...(nearest.kind !== 'none' && { begins: iso(nearest.start) }),
      ...(nearest.kind === 'change' && { changes: nearest.changes.map(dated), along: nearest.along }),
      ...(nearest.kind === 'none' && { tried: nearest.tried }),
    },
    chain: chain.map(({ step, start, cause, then }) => ({
      step: step.id,
      start: iso(start),
      cause: timed(cause),
      ...(then && { then: timed(then) }),
    })),
  };
}
