import type { Size } from '../../intake/kinds.ts';
import type { Units } from '../../model/shop.ts';
import { readLengthMm } from './measure.ts';
import { read, refuse, type Read, type Reader } from './read.ts';
import { worded } from '../../words/worded.ts';

const LEAST_MM = 50;
const MOST_MM = 6000;

const unitOf: Readonly<Record<Units, string>> = { metric: 'cm', us: 'in' };

/** `90 x 45 x 80 cm`: three measures, mm. A unit stands behind the last or behind each; none means cm, or inches. */
export function sizeReader(units: Units): Reader<Size> {
  const unit = unitOf[units];
  const write =
    units === 'us'
      ? worded`write three measures like 36 x 18 x 32 in`
      : worded`write three measures like 90 x 45 x 80 cm`;
  return (text) => {
    const parts = text.length > 100 ? [] : text.toLowerCase().split(/\s*(?:[x×*]|\bby\b)\s*/);
    if (parts.length !== 3) return refuse(worded`is not three measures`, write);
    const named = /[a-z"]+$/.exec(parts.at(-1)?.trim() ?? '')?.[0] ?? unit;
    const lengths = parts.map((part): Read<number> =>
      readLengthMm(/[a-z"]$/.test(part.trim()) ? part : `${part} ${named}`),
    );
    const wrong = lengths.find((length) => !length.ok);
    if (wrong !== undefined) return wrong;
    const [a = 0, b = 0, c = 0] = lengths.flatMap((length) => (length.ok ? [length.value] : []));
    const odd = [a, b, c].some((mm) => mm < LEAST_MM || mm > MOST_MM);
    return odd ? refuse(worded`has a measure below 5 cm (2 in) or above 6 m (19 ft)`, write) : read([a, b, c]);
  };
}

/** `90 x 45 x 80 cm`, in whole units. */
export function exampleSize(size: Size, units: Units): string {
  const mmPerUnit = units === 'us' ? 25.4 : 10;
  return `${size.map((mm) => Math.round(mm / mmPerUnit)).join(' x ')} ${unitOf[units]}`;
}
