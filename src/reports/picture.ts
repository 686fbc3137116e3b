import type { Look } from './look.ts';

const blocks = '▁▂▃▄▅▆▇█';
const digits = '0123456789';

/** Heights as one sign each, `low` to `high` of the scale; in ASCII a digit from 0 to 9. */
export function heights(values: readonly number[], low: number, high: number, look: Look): string {
  const signs = look.ascii ? digits : blocks;
  const top = signs.length - 1;
  return values
    .map((value) => {
      const share = high > low ? (value - low) / (high - low) : 0;
      return signs[Math.min(top, Math.max(0, Math.round(share * top)))] ?? '';
    })
    .join('');
}

/** Yes and no as a full and an empty sign. */
export function yesNo(values: readonly boolean[], look: Look): string {
  const [yes, no] = look.ascii ? ['#', '-'] : ['█', '·'];
  return values.map((value) => (value ? yes : no)).join('');
}
