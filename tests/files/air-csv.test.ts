import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, test } from 'vitest';
import { readAirCsv } from '../../src/files/air-csv.ts';
import { isoOf } from '../../src/time/zone.ts';

const read = (text: string, zone = 'Europe/Dublin') => readAirCsv({ file: 'air/x.csv', text }, zone);
const head = 'time,temp-c,rh-percent\n';
const told = (text: string) => read(text).findings.map((f) => `${f.place?.line ?? 0} ${f.severity} ${f.code}`);

describe('what loggers write', () => {
  test.each<[string, string]>([
    ['wall clock', `${head}2027-01-11T07:30,18.5,60\n`],
    [
      'a space between, seconds, quotes',
      `"Date Time","Temperature °C","Humidity %"\n"2027-01-11 07:30:00","18.5","60"\n`,
    ],
    ['Fahrenheit', `time,temp-f,rh\n2027-01-11 07:30,65.3,60\n`],
    ['Fahrenheit in brackets', `Timestamp;Temp (°F);RH (%)\r\n2027-01-11 07:30;65,3;60\r\n`],
    ['semicolons and decimal commas', `time;temp-c;rh-percent\n2027-01-11T07:30;18,5;60\n`],
    [
      'tabs, other columns, comments',
      `# a logger\nn\ttime\trh-percent\tdew\ttemp-c\n1\t2027-01-11T07:30Z\t60\t10\t18.5\n\n`,
    ],
    ['an offset', `${head}2027-01-11T08:30+01:00,18.5,60`],
  ])('%s', (_, text) => {
    const { samples, findings } = read(text);
    expect(findings).toEqual([]);
    expect(samples).toHaveLength(1);
    expect(isoOf(samples[0]!.minute, 'UTC')).toBe('2027-01-11T07:30:00+00:00');
    expect(samples[0]?.tempC).toBeCloseTo(18.5, 9);
    expect(samples[0]?.rhPercent).toBe(60);
  });

  test('the hour that the clock shows twice is told apart by the order of the rows', () => {
    const times = ['00:30', '01:00', '01:30', '01:00', '01:30', '02:00'];
    const { samples, findings } = read(head + times.map((t) => `2027-10-31T${t},10,60`).join('\n'));
    expect(findings).toEqual([]);
    expect(samples.map((s) => isoOf(s.minute, 'UTC').slice(8, 16))).toEqual([
      '30T23:30',
      '31T00:00',
      '31T00:30',
      '31T01:00',
      '31T01:30',
      '31T02:00',
    ]);
  });

  test('rows without a reading are left out, and that is told', () => {
    expect(told(`${head}2027-01-11T07:30,,60\n2027-01-11T08:30,18,60\n`)).toEqual(['1 warning air-gaps']);
  });
});

test.each<[string, string, string[]]>([
  ['no header', '2027-01-11T07:30,18,60\n', ['1 error bad-air-header']],
  ['nothing', '', ['1 error bad-air-header']],
  ['no rows', head, ['1 error empty-file']],
  ['no time', `${head}yesterday,18,60\n`, ['2 error bad-air-row']],
  ['a day that there is not', `${head}2027-02-30T07:30,18,60\n`, ['2 error bad-air-row']],
  ['a time that the clock skips', `${head}2027-03-28T01:30,18,60\n`, ['2 error bad-air-row']],
  ['no temperature', `${head}2027-01-11T07:30,warm,60\n`, ['2 error bad-air-row']],
  ['infinite', `${head}2027-01-11T07:30,1e999,60\n`, ['2 error bad-air-row']],
  ['too hot', `${head}2027-01-11T07:30,300,60\n`, ['2 error bad-air-row']],
  ['too humid', `${head}2027-01-11T07:30,18,101\n`, ['2 error bad-air-row']],
  ['out of order', `${head}2027-01-11T07:30,18,60\n2027-01-11T07:00,18,60\n`, ['3 error air-out-of-order']],
])('%s is refused', (_, text, findings) => {
  expect(told(text)).toEqual(findings);
});

// Luxon reads each of them by itself: the quick way must agree.
test('times of a record are read as luxon reads them', () => {
  const minute = fc.integer({ min: 26_000_000, max: 40_000_000 });
  fc.assert(
    fc.property(
      fc.uniqueArray(minute, { minLength: 1, maxLength: 20 }),
      fc.constantFrom('Europe/Dublin', 'America/St_Johns', 'Australia/Lord_Howe', 'Asia/Kathmandu'),
      (minutes, zone) => {
        const sorted = minutes.sort((a, b) => a - b);
        const stamps = sorted.map((m) => DateTime.fromMillis(m * 60_000, { zone }));
        const withOffset = stamps.map((s) => `${s.toFormat("yyyy-MM-dd'T'HH:mmZZ")},1,2`).join('\n');
        expect(read(head + withOffset, zone).samples.map((s) => s.minute)).toEqual(sorted);
        const once = stamps.filter((s) => s.getPossibleOffsets().length === 1);
        const without = once.map((s) => `${s.toFormat('yyyy-MM-dd HH:mm')},1,2`).join('\n');
        expect(read(head + without, zone).samples.map((s) => s.minute)).toEqual(once.map((s) => s.toMillis() / 60_000));
      },
    ),
  );
});

test('any text ends in samples or findings', () => {
  const bits = fc.constantFrom(
    '2027-01-11T07:30',
    ',',
    ';',
    '\n',
    '18',
    '"',
    'x',
    '-',
    '.',
    '\r',
    '\t',
    '#',
    '\u0000',
    '😀',
  );
  fc.assert(
    fc.property(fc.array(bits, { maxLength: 60 }), (parts) => {
      const { samples, findings } = read(head + parts.join(''));
      expect(samples.length + findings.length).toBeGreaterThan(0);
    }),
    { numRuns: 500 },
  );
});
