import { expect, test } from 'vitest';
import {
  sayArea,
  sayChance,
  sayDryingPower,
  sayMass,
  sayMoney,
  sayTemp,
  sayTempDifference,
  sayVolume,
  sayWaterInAir,
} from '../../src/reports/say-quantity.ts';
import {
  sayClock,
  sayClocks,
  sayDate,
  sayDay,
  sayDeadline,
  sayLength,
  sayMoment,
  type Manner,
} from '../../src/reports/say-time.ts';
import { minuteAt } from '../../src/time/zone.ts';
import { manner, on } from './sample.ts';

const us: Manner = { ...manner, clock: 12, units: 'us', currency: 'USD' };

test('days near now have a word, all others their date', () => {
  expect(sayDay(on(10, '23:59'), manner)).toBe('yesterday');
  expect(sayDay(on(11, '00:00'), manner)).toBe('today');
  expect(sayMoment(on(12, '08:30'), manner)).toBe('tomorrow 08:30');
  expect(sayMoment(on(14, '16:05'), manner)).toBe('Thu 14 Jan 16:05');
  expect(sayDate(minuteAt('2028-01-14', 0, manner.zone), manner)).toBe('Fri 14 Jan 2028');
});

test('noon and midnight on a 12-hour clock', () => {
  expect(sayClock(on(11, '00:00'), us)).toBe('12:00 am');
  expect(sayClock(on(11, '12:05'), us)).toBe('12:05 pm');
  expect(sayClock(on(11, '13:00'), us)).toBe('1:00 pm');
});

test('a stretch to midnight ends at 24:00 on a 24-hour clock', () => {
  const night = { start: on(11, '22:00'), end: on(12, '00:00') };
  expect(sayClocks(night, manner)).toBe('22:00–24:00');
  expect(sayClocks(night, us)).toBe('10:00 pm–12:00 am');
});

test('who wants something by a day alone is not told of its last minute', () => {
  expect(sayDeadline(on(14, '23:59'), manner)).toBe('Thu 14 Jan');
  expect(sayDeadline(on(12, '23:59'), us)).toBe('tomorrow');
  expect(sayDeadline(on(14, '17:00'), manner)).toBe('Thu 14 Jan 17:00');
});

// Unicode CLDR, en-US: the month before the day, a comma before the year.
test('in a shop of US units a date in English has its month first', () => {
  expect(sayDate(on(14, '16:05'), us)).toBe('Thu Jan 14');
  expect(sayMoment(on(14, '16:05'), us)).toBe('Thu Jan 14 4:05 pm');
  expect(sayDate(minuteAt('2028-01-14', 0, us.zone), us)).toBe('Fri Jan 14, 2028');
});

// IANA time zone database: Europe/Dublin goes back from 02:00 to 01:00 on 31 October 2027.
test('an hour that the clock shows twice is told apart', () => {
  const first = minuteAt('2027-10-31', 90, manner.zone);
  expect(sayClock(first, manner)).toBe('01:30');
  expect(sayClock(first + 60, manner)).toBe('01:30 (second)');
});

// In Auckland, the time zone that these tests run in, that is the day after.
test('the day is that of the shop, not of the machine', () => {
  expect(sayDay(on(11, '23:30'), manner)).toBe('today');
});

test('lengths', () => {
  expect(['0', '45', '60', '90', '1440', '3119', '3121'].map((m) => sayLength(Number(m)))).toEqual([
    '0 min',
    '45 min',
    '1 h',
    '1 h 30 min',
    '1 d',
    '2 d 3 h',
    '2 d 4 h',
  ]);
});

// The international foot is 0.3048 m, the US gallon 3.785411784 L (NIST SP 811, appendix B).
test('quantities in the units of the shop', () => {
  expect([sayTemp(20, manner), sayTemp(20, us), sayTemp(-40, us)]).toEqual(['20 °C', '68 °F', '-40 °F']);
  expect(sayTemp(-0.2, manner)).toBe('0 °C');
  expect([sayTempDifference(3, manner), sayTempDifference(3, us)]).toEqual(['3.0 °C', '5.4 °F']);
  expect([sayArea(0.9, manner), sayArea(0.9, us)]).toEqual(['0.90 m²', '9.7 sq ft']);
  expect([sayVolume(0.25, manner), sayVolume(0.25, us), sayVolume(3.785411784, us)]).toEqual([
    '0.25 L',
    '8.5 fl oz',
    '1.00 gal',
  ]);
});

// NIST SP 811, appendix B: the conventional inch of mercury is 3.386389 kPa, the avoirdupois pound 453.59237 g (16 ounces)
// and 7000 grains; so 1 g/kg is 7 gr/lb.
test('air and vapours in the units of the shop', () => {
  expect([sayWaterInAir(10, manner), sayWaterInAir(10, us)]).toEqual(['10.0 g/kg', '70 gr/lb']);
  expect([sayDryingPower(3386.389, manner), sayDryingPower(3386.389, us)]).toEqual(['3.39 kPa', '1.000 inHg']);
  expect([sayMass(453.59237, manner), sayMass(453.59237, us)]).toEqual(['454 g', '16.0 oz']);
});

// ISO 4217: the yen has no minor unit, the Kuwaiti dinar has three digits of it.
test('money has the digits of its currency', () => {
  expect(sayMoney(32050, manner)).toBe('320.50 EUR');
  expect(sayMoney(32050, { ...manner, currency: 'JPY' })).toBe('32050 JPY');
  expect(sayMoney(32050, { ...manner, currency: 'KWD' })).toBe('32.050 KWD');
});

test('a chance is never rounded up to certainty', () => {
  expect([sayChance(0.9), sayChance(0.999), sayChance(1)]).toEqual(['90 %', '99 %', '100 %']);
});
