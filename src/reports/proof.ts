import type { Proof } from '../model/plan.ts';
import { paragraph } from './layout.ts';
import type { Look } from './look.ts';

const figure = (value: number): string => String(Math.round(value * 100) / 100);

/** What is known of how good the plan is, in a line or two. */
export function proofLines(proof: Proof, look: Look): string[] {
  const aims = proof.objective.map(({ name, value, bound }) =>
    value === bound
      ? `${name} ${figure(value)} (least possible)`
      : `${name} ${figure(value)} (at least ${figure(bound)})`,
  );
  const verdict = proof.proven
    ? 'Proven: no plan does better.'
    : `Not proven best: at most ${figure(proof.gapPercent)} % could still be gained.`;
  return [
    ...paragraph(`Checked against every rule that no plan may break. ${verdict}`, look, 2, look.paint.quiet),
    ...(aims.length === 0 ? [] : paragraph(aims.join(' · '), look, 2, look.paint.quiet)),
  ];
}
