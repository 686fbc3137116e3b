import { dryMap } from '../../drying/dry-marks.ts';
import { marks, type Mark, type Pace } from '../../model/mark.ts';
import type { MarkTimes, PlannedStep } from '../../model/plan.ts';
import type { Minute } from '../../time/span.ts';
import type { Breach } from '../breach.ts';
import { isSure, lateMark, type Fact } from '../fact.ts';
import type { Ground } from '../ground.ts';
import { broughtInFaults } from './shown-brought-in.ts';
import { holds, prepared, windowsOf, type OpenWindow } from './window.ts';

function dryFaults(fact: Fact, { say }: Ground): string[] {
  const { laid, end, step } = fact;
  if (isSure(fact)) return [];
  const shown: Partial<Readonly<Record<Mark, MarkTimes>>> = step.dry ?? {};
  return marks.flatMap((mark) => {
    const times = shown[mark];
    if (laid?.material.marks[mark] === undefined)
      return times === undefined ? [] : [`is shown to reach the mark ${mark}, which it does not have`];
    if (times === undefined) return [`is not shown to reach the mark ${mark}`];
    return (['early', 'typical', 'late'] as const satisfies readonly Pace[]).flatMap((pace) => {
      const when = dryMap(laid.material, mark, pace, laid.film, laid.air, laid.factor).at(end);
      if (times[pace] === when) return [];
      return [`is shown to reach the mark ${mark} (${pace}) ${say.when(times[pace])}, but that is ${say.when(when)}`];
    });
  });
}

function sameWindow(shown: NonNullable<PlannedStep['window']>, { choice, opens, shuts }: OpenWindow): boolean {
  return shown.opens === opens && shown.shuts === shuts && shown.prep === choice.prep;
}

function windowFaults(fact: Fact, ground: Ground): string[] {
  const { byId, say } = ground;
  const windows = fact.task.needs.flatMap((need) => {
    const beneath = need.kind === 'window' ? byId.get(need.task) : undefined;
    return need.kind !== 'window' || beneath === undefined ? [] : [{ beneath, open: windowsOf(need, beneath) }];
  });
  const shown = fact.step.window;
  if (shown === undefined) return windows.length === 0 ? [] : ['is shown without its recoat window'];
  const used = (w: OpenWindow, beneath: Fact) =>
    fact.settled || (holds(w, fact.start) && prepared(w, beneath, fact, ground));
  const agrees = windows.some(
    ({ beneath, open }) => beneath.id === shown.of && open.some((w) => sameWindow(shown, w) && used(w, beneath)),
  );
  return agrees
    ? []
    : [`is shown in a window from ${say.when(shown.opens)} that ${say.step(shown.of)} does not offer it`];
}

/** What each need says may be shown as the time before which the step could not start. */
function waitsFor(fact: Fact, { byId }: Ground): { step: string; mark?: Mark; notBefore: Minute }[] {
  return fact.task.needs.flatMap((need) => {
    const other = byId.get(need.task);
    if (other === undefined) return [];
    switch (need.kind) {
      case 'order':
        return [{ step: need.task, notBefore: other.end + Math.round(need.waitHours * 60) }];
      case 'mark':
        return [
          {
            step: need.task,
            mark: need.mark,
            notBefore: lateMark(other, need.mark),
          },
        ];
      case 'window':
        return windowsOf(need, other).map((w) => ({ step: need.task, mark: 'recoat', notBefore: w.opens }));
      case 'within':
        return [];
    }
  });
}

function afterFaults(fact: Fact, ground: Ground): string[] {
  const waits = waitsFor(fact, ground);
  return fact.step.after
    .filter((a) => !waits.some((w) => w.step === a.step && w.mark === a.mark && w.notBefore === a.notBefore))
    .map(
      (a) => `is shown to wait for ${ground.say.step(a.step)} until ${ground.say.when(a.notBefore)}, which is not so`,
    );
}

/**
 * A place is kept until what the step laid can be moved, or all that lies beneath it, too, or until the next step of its
 * object takes it over.
 */
function holdFaults({ id, start, end, movableFrom, step, task }: Fact, { byObject, say }: Ground): string[] {
  const shown = step.holdsStationUntil;
  const members = byObject.get(task.object) ?? [];
  const takenOver = members.some((f) => f.id !== id && f.start === shown);
  const beneath = members.filter((f) => f.task.section === task.section && f.end <= start).map((f) => f.movableFrom);
  if (shown === movableFrom || shown === Math.max(movableFrom, ...beneath) || (takenOver && shown >= end)) return [];
  return [`is shown to keep its place until ${say.when(shown)}, but keeps it until ${say.when(movableFrom)}`];
}

function labelFaults({ step, task, way }: Fact): string[] {
  const same =
    step.piece === task.piece &&
    step.section === task.section &&
    step.step === task.step &&
    step.title === task.title &&
    step.stage === task.stage &&
    step.coat === task.coat &&
    step.material === way.film?.material;
  return same ? [] : ['is shown under the name, stage, coat or material of something else'];
}

function proofFaults({ plan }: Ground): Breach[] {
  const { objective, gapPercent, proven } = plan.proof;
  const breach = (text: string): Breach => ({ rule: 'shown', steps: [], at: plan.madeAt, text });
  return [
    ...objective
      .filter((o) => !(o.bound <= o.value))
      .map((o) => breach(`the proof says that ${o.name} is ${o.value}, below its own bound ${o.bound}`)),
    ...(gapPercent >= 0 && !(proven && gapPercent > 0)
      ? []
      : [breach(`the proof says "${proven ? 'proven' : 'not proven'}" with a gap of ${gapPercent} %`)]),
  ];
}

/** The times, windows and labels that a plan shows are those that follow from it. */
export function timesShown(ground: Ground): Breach[] {
  const { facts, say } = ground;
  return [
    ...facts.flatMap((fact) =>
      [
        ...labelFaults(fact),
        ...dryFaults(fact, ground),
        ...windowFaults(fact, ground),
        ...afterFaults(fact, ground),
        ...holdFaults(fact, ground),
        ...broughtInFaults(fact, ground),
      ].map((fault): Breach => ({
        rule: 'shown',
        steps: [fact.id],
        at: fact.start,
        text: `${say.step(fact.id)} ${fault}`,
      })),
    ),
    ...proofFaults(ground),
  ];
}
