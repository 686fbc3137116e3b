import { expect, test } from 'vitest';
import { saySaved } from '../../src/reports/sessions.ts';
import { on, plan } from './sample.ts';

const step = plan.steps[0];
const shared = {
  ...plan,
  sessions: step === undefined ? [] : [{ steps: [step.id], savedMinutes: 30 }],
} as unknown as typeof plan;

test('where the days shown save nothing, only the whole plan is told of', () => {
  const start = step?.spans[0]?.start ?? 0;
  expect(saySaved(shared, { start, end: start + 1440 }, 1)).toContain('saves 30 min today, 30 min in the whole plan.');
  expect(saySaved(shared, { start: on(1, '08:00'), end: on(2, '08:00') }, 1)).toBe(
    'Mixing and washing up once for several coats saves 30 min in the whole plan.',
  );
});
