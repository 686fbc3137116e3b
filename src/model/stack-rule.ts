import type { Material, StackRule } from './material.ts';

/** What `upper` says of lying on `lower`; undefined where it asks nothing. */
export function stackRule(lower: Material, upper: Material): StackRule | undefined {
  return upper.stack.find((rule) => rule.over === lower.family);
}
