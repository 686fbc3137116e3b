import type { Proof } from '../model/plan.ts';
import { paragraph } from './layout.ts';
import type { Look } from './look.ts';

/** `2 415 530`: in threes, so that it can be read. */
function figure(value: number): string {
  const [whole = '', part] = String(Math.round(value * 10) / 10).split('.');
  return whole.replace(/\B(?=(\d{3})+$)/g, '\u00a0') + (part === undefined ? '' : `.${part}`);
}

/** What is known of how good the plan is. */
export function proofLines(proof: Proof, look: Look): string[] {
  const aims = proof.objective
    .filter(({ value, bound }) => value !== 0 || bound !== 0)
    .map(({ name, value, bound }) =>
      value === bound
        ? `${name} ${figure(value)}, the least possible`
        : `${name} ${figure(value)}, at least ${figure(bound)}`,
    );
  const verdict = proof.proven
    ? 'Proven: no plan does better.'
    : `Not proven best: at most ${figure(proof.gapPercent)} % could still be gained.`;
  return [
    ...paragraph(`Checked against every rule that no plan may break. ${verdict}`, look, 2, look.paint.quiet),
    ...(aims.length === 0 ? [] : paragraph(`Cost: ${aims.join('; ')}`, look, 2, look.paint.quiet, 4)),
  ];
}
