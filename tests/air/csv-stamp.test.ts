import { expect, it } from 'vitest';
import { stampReader } from '../../src/air/csv-stamp.ts';
import { readTime } from '../../src/time/zone.ts';
import fc from '../support/property.ts';

const two = (n: number) => String(n).padStart(2, '0');

it('a stamp with its own offset is read as any time is, days that are none included', () => {
  const stamp = fc.record({
    year: fc.integer({ min: 1969, max: 2201 }),
    month: fc.integer({ min: 0, max: 13 }),
    day: fc.integer({ min: 0, max: 32 }),
    hour: fc.integer({ min: 0, max: 24 }),
    minute: fc.integer({ min: 0, max: 60 }),
    seconds: fc.constantFrom('', ':59', ':07.250'),
    offset: fc.constantFrom('Z', '+00:00', '+01:00', '-05:30', '+13:45', '-14:00', '+05:60'),
  });
  const reader = stampReader('Europe/Brussels');
  fc.assert(
    fc.property(stamp, ({ year, month, day, hour, minute, seconds, offset }) => {
      const written = `${year}-${two(month)}-${two(day)}T${two(hour)}:${two(minute)}${seconds}${offset}`;
      const [fast, plain] = [reader(written, undefined), readTime(written, 'Europe/Brussels')];
      expect(fast.ok && fast.minute).toBe(plain.ok && plain.minute);
    }),
    { numRuns: 3000 },
  );
});
