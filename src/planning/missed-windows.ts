import type { PlannedStep, Warning } from '../model/plan.ts';
import type { Preparation } from '../model/material.ts';
import type { Situation } from '../model/situation.ts';
import { phrase, worded } from '../words/worded.ts';

const asked: Readonly<Record<Preparation, string>> = {
  scuff: phrase('scuff the film first'),
  abrade: phrase('abrade the film first'),
  'wash-and-scuff': phrase('wash and scuff the film first'),
  'tack-coat': phrase('lay a tack coat first'),
  strip: phrase('the film has to come off again'),
};

/** Coats over a film that lies already and whose plain window was missed: what has to come between, said once a coat. */
export function windowWarnings(situation: Situation, steps: readonly PlannedStep[]): Warning[] {
  const planned = new Set(steps.map((s) => s.id));
  return situation.tasks.flatMap((task): Warning[] => {
    if (situation.done.has(task.id) || !planned.has(task.id)) return [];
    return task.needs.flatMap((need): Warning[] => {
      if (need.kind !== 'window' || !situation.done.has(need.task)) return [];
      const late = need.windows.find((w) => w.prepTask !== undefined && planned.has(w.prepTask));
      if (late?.prep === undefined) return [];
      const piece = situation.book.pieces.find((p) => p.id === task.piece)?.name ?? task.piece;
      const wait = late.remedy === true && late.prep !== 'strip' ? worded`let it cure fully, then ` : '';
      const film = need.task.split('/').slice(1).join('/');
      const text = worded`${piece}, ${task.section}/${task.step} misses the window of ${film}: ${wait}${asked[late.prep]}.`;
      return [{ code: 'window-missed', text, step: task.id }];
    });
  });
}
