import fc from '../support/property.ts';
import { describe, expect, test } from 'vitest';
import { lowestPrice, ratePer, sellingFee } from '../../src/bookkeeping/sale.ts';
import { decimalText, equalParts, minorDigits, percentFraction, shareOf } from '../../src/model/money.ts';
import { readMoneyMinor } from '../../src/files/quantities/money.ts';

// The oracle reckons on digits with BigInt: thousandths of a percent, so 8.125 % is 8125.
const anyThousandths = fc.integer({ min: 0, max: 100_000 });
const anyMinor = fc.integer({ min: 0, max: 9_999_999_999 });

/** Nearest whole number, a half upwards, of a positive quotient. */
const nearest = (top: bigint, bottom: bigint) => (top + bottom / 2n) / bottom;

describe('money', () => {
  test('a share of it is the nearest whole minor unit of the exact share', () => {
    fc.assert(
      fc.property(anyMinor, anyThousandths, (minor, thousandths) => {
        const exact = nearest(BigInt(minor) * BigInt(thousandths), 100_000n);
        expect(BigInt(shareOf(minor, percentFraction(thousandths / 1000)))).toBe(exact);
      }),
    );
  });

  test('a loss is shared as a gain is', () => {
    fc.assert(
      fc.property(anyMinor, anyThousandths, (minor, t) => {
        expect(shareOf(-minor, percentFraction(t / 1000)) + shareOf(minor, percentFraction(t / 1000))).toBe(0);
      }),
    );
  });

  test('2.28 % of 12.50 is 28.5 cents, so 29; binary fractions make it 28', () => {
    expect(shareOf(1250, percentFraction(2.28))).toBe(29);
    expect(Math.round((1250 * 2.28) / 100)).toBe(28);
  });

  test('equal parts add up to the whole and differ by one unit at most', () => {
    fc.assert(
      fc.property(anyMinor, fc.integer({ min: 1, max: 60 }), (minor, count) => {
        const parts = equalParts(minor, count);
        expect(parts.reduce((sum, part) => sum + BigInt(part), 0n)).toBe(BigInt(minor));
        expect(Math.max(...parts) - Math.min(...parts)).toBeLessThanOrEqual(1);
      }),
    );
  });

  test('written out and read in again it is the same, in currencies of no, two and three digits (ISO 4217)', () => {
    fc.assert(
      fc.property(anyMinor, fc.constantFrom('JPY', 'EUR', 'KWD'), (minor, currency) => {
        const text = decimalText(minor, currency);
        expect(text.split('.')[1]?.length ?? 0).toBe(minorDigits(currency));
        expect(readMoneyMinor(`${text} ${currency}`, currency)).toEqual({ ok: true, value: minor });
      }),
    );
    expect(decimalText(-5, 'EUR')).toBe('-0.05');
    expect(decimalText(0, 'JPY')).toBe('0');
  });
});

describe('the price below which a piece loses', () => {
  test('brings its cost back after the fee, and one unit less does not', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 10_000_000 }), fc.integer({ min: 0, max: 99_000 }), (cost, thousandths) => {
        const left = (price: number) =>
          BigInt(price) - nearest(BigInt(price) * BigInt(thousandths), 100_000n) - BigInt(cost);
        const price = lowestPrice(cost, thousandths / 1000) ?? NaN;
        expect(left(price) >= 0n).toBe(true);
        expect(left(price - 1) < 0n).toBe(true);
      }),
    );
  });

  test('by hand: 184.00 at 8 % is 200.00, of which 16.00 go; where the fee takes all there is none', () => {
    expect(lowestPrice(18_400, 8)).toBe(20_000);
    expect(sellingFee(20_000, 8)).toBe(1600);
    expect(lowestPrice(18_400, 100)).toBeUndefined();
    expect(lowestPrice(0, 8)).toBe(0);
  });
});

test('money an hour: 60.00 for 2 h 30 min are 24.00, a loss of 1.00 in 40 min is 1.50 an hour; of no time there is none', () => {
  expect(ratePer(6000, 150, 60)).toBe(2400);
  expect(ratePer(-100, 40, 60)).toBe(-150);
  expect(ratePer(100, 0, 60)).toBeUndefined();
});
