import fc from '../support/property.ts';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import { roomAir } from '../../src/air/room-air.ts';
import { airAt } from '../../src/air/series.ts';
import { readAirCsv } from '../../src/air/read-air-csv.ts';
import { minuteAt } from '../../src/time/zone.ts';

const zone = 'Europe/Dublin';
const read = (text: string, timeZone = zone) => readAirCsv(text, timeZone, 'air/shed.csv');
const local = (minute: number) => DateTime.fromMillis(minute * 60_000, { zone });
const seven = minuteAt('2027-01-11', 7 * 60, zone);

/** One reading of 8.5 °C and 82 % at seven o'clock, however it is written. */
describe.each([
  ['commas', 'time,temp_c,rh\n2027-01-11T07:00,8.5,82\n'],
  ['semicolons and decimal commas', 'Time;Temperature (°C);Humidity\n2027-01-11 07:00;8,5;82\n'],
  ['tabs', 'TIMESTAMP\tTempC\tRH\n2027-01-11T07:00:00\t8.5\t82.0\n'],
  ['Fahrenheit', 'time,Temp °F,RH %\n2027-01-11T07:00,47.3,82\n'],
  ['Fahrenheit in words', 'time,temperature_fahrenheit,relative_humidity\n2027-01-11T07:00,47.3,82\n'],
  ['quotes', '"time","temp, °C","rh"\n"2027-01-11 07:00","8,5","82"\n'],
  ['a date and a time apart', 'Date,Time,Temp C,RH\n2027-01-11,7:00,8.5,82\n'],
  ['slashes in the date', 'time,temp c,rh\n2027/01/11 07:00,8.5,82\n'],
  ['an offset', 'time,temp c,rh\n2027-01-11T08:00+01:00,8.5,82\n'],
  ['an offset without a colon', 'time,temp c,rh\n2027-01-11T08:00:00+0100,8.5,82\n'],
  ['universal time in the heading', 'time (UTC),temp c,rh\n2027-01-11T07:00,8.5,82\n'],
  ['seconds since 1970', `timestamp,temp c,rh\n${seven * 60},8.5,82\n`],
  ['milliseconds since 1970', `timestamp,temp c,rh\n${seven * 60_000},8.5,82\n`],
  ['Fahrenheit behind the number', 'time,temp,rh\n2027-01-11T07:00,47.3 °F,82 %\n'],
  ['Fahrenheit in the heading, but °C behind the number', 'time,temp_f,rh\n2027-01-11T07:00,8.5 °C,82\n'],
  ['units behind the numbers', 'time,temp,rh\n2027-01-11T07:00,8.5 °C,82 %\n'],
  ['other columns around', 'id,time,dew_point_c,temp_c,absolute_humidity,rh\n1,2027-01-11T07:00,5,8.5,7,82\n'],
  [
    'remarks, blank lines, a mark at the start and old line ends',
    '\uFEFF# shed\r\n\r\ntime,temp_c,rh\r\n2027-01-11T07:00,8.5,82\r\n',
  ],
])('a record with %s', (_, text) => {
  it('is read', () => {
    const { samples, findings } = read(text);
    expect(findings.filter((f) => f.severity === 'error')).toEqual([]);
    expect(samples).toEqual([{ minute: seven, tempC: expect.closeTo(8.5, 6) as number, rhPercent: 82 }]);
  });
});

describe('a heading', () => {
  it('without a unit is read as °C, with a warning', () => {
    const { findings } = read('time,temp,rh\n2027-01-11T07:00,8.5,82\n');
    expect(findings).toEqual([expect.objectContaining({ code: 'air-unit', severity: 'warning' })]);
  });

  it('without a unit is enough where the numbers have theirs', () => {
    expect(read('time,temp,rh\n2027-01-11T07:00,47.3 °F,82\n').findings).toEqual([]);
  });

  it('that lacks columns is refused by name', () => {
    const { samples, findings } = read('when,warmth\n2027-01-11T07:00,8.5\n');
    expect(samples).toEqual([]);
    expect(findings[0]?.message).toBe('the heading names no temperature, no humidity column');
    expect(findings[0]?.place).toMatchObject({ file: 'air/shed.csv', line: 1, column: 1 });
  });

  it('of nothing is refused', () => {
    expect(read('\n# nothing\n').findings[0]?.code).toBe('air-empty');
    expect(read('time,temp_c,rh\n').findings[0]?.code).toBe('air-empty');
  });
});

describe('a bad row', () => {
  it.each([
    ['2027-01-11T07:30,warm,80', 'air-number', 18],
    ['2027-01-11T07:30,8.5,eighty', 'air-number', 22],
    ['2027-01-11T07:30,-99.9,80', 'air-range', 18],
    ['2027-01-11T07:30,8.5,180', 'air-range', 22],
    ['11/01/2027 07:30,8.5,80', 'air-time', 1],
    ['2027-02-30T07:30,8.5,80', 'air-time', 1],
    ['2027-01-11,8.5,80', 'air-time', 1],
  ])('%s is left out and pointed at', (row, code, column) => {
    const { samples, findings } = read(`time,temp_c,rh\n2027-01-11T07:00,8.5,82\n${row}\n`);
    expect(samples).toHaveLength(1);
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({
      code,
      severity: 'error',
      place: { file: 'air/shed.csv', line: 3, column, text: row },
    });
  });

  it('without a reading is a hole, and counted', () => {
    const { samples, findings } = read(
      'time,temp_c,rh\n2027-01-11T07:00,8.5,82\n2027-01-11T08:00,,\n2027-01-11T09:00,n/a,82\n',
    );
    expect(samples).toHaveLength(1);
    expect(findings).toEqual([expect.objectContaining({ code: 'air-blank', message: '2 of 3 rows have no reading' })]);
  });

  it('after row of a wrong file stops the reading', () => {
    const rows = Array.from({ length: 1000 }, (_, i) => `line ${i},x,y`).join('\n');
    const { findings } = read(`time,temp_c,rh\n${rows}\n`);
    expect(findings.length).toBeLessThanOrEqual(21);
    expect(findings.at(-1)?.code).toBe('air-too-many-faults');
  });

  it('with humidity as a fraction is told to be percent', () => {
    expect(read('time,temp_c,rh\n2027-01-11T07:00,8.5,0.82\n').findings[0]?.message).toContain('1 or less');
  });

  it('a little over saturation is 100 %', () => {
    expect(read('time,temp_c,rh\n2027-01-11T07:00,8.5,102\n').samples[0]?.rhPercent).toBe(100);
  });
});

describe('the order of rows', () => {
  it('does not matter, and the last of two for one time wins', () => {
    const { samples, findings } = read(
      'time,temp_c,rh\n2027-01-11T08:00,9,80\n2027-01-11T07:00,8,80\n2027-01-11T08:00,10,80\n',
    );
    expect(samples.map((s) => s.tempC)).toEqual([8, 10]);
    expect(findings).toEqual([expect.objectContaining({ code: 'air-repeated', severity: 'warning' })]);
    expect(findings[0]?.place?.line).toBe(4);
  });

  it('a hole over three hours is told with the row after it', () => {
    const { findings } = read('time,temp_c,rh\n2027-01-11T07:00,8,80\n2027-01-11T13:30,8,80\n');
    expect(findings).toEqual([expect.objectContaining({ code: 'air-hole' })]);
    expect(findings[0]?.message).toContain('6.5 h');
    expect(findings[0]?.place?.line).toBe(3);
  });
});

describe('the days on which the clock changes', () => {
  it('the hour shown twice is read twice, in order', () => {
    // Dublin, 31 October 2027: at 02:00 summer time the clock goes back to 01:00.
    const rows = ['00:30', '01:00', '01:30', '01:00', '01:30', '02:00'].map((t, i) => `2027-10-31T${t},${i},80`);
    const { samples } = read(`time,temp_c,rh\n${rows.join('\n')}\n`);
    const first = samples[0]?.minute ?? 0;
    expect(samples.map((s) => s.minute - first)).toEqual([0, 30, 60, 90, 120, 150]);
    expect(samples.map((s) => s.tempC)).toEqual([0, 1, 2, 3, 4, 5]);
  });

  it('the hour that is skipped is left out with a warning', () => {
    const rows = ['00:30', '01:30', '02:30'].map((t, i) => `2027-03-28T${t},${i},80`);
    const { samples, findings } = read(`time,temp_c,rh\n${rows.join('\n')}\n`);
    expect(samples.map((s) => s.tempC)).toEqual([0, 2]);
    expect((samples[1]?.minute ?? 0) - (samples[0]?.minute ?? 0)).toBe(60);
    expect(findings).toEqual([expect.objectContaining({ code: 'air-skipped-hour', severity: 'warning' })]);
  });

  it('every minute of two years is read as the zone itself has it', () => {
    const stamps: string[] = [];
    for (let d = 0; d < 730; d += 13)
      for (const clock of ['04:07', '13:45', '23:59']) {
        const date = new Date(Date.UTC(2027, 0, 1 + d)).toISOString().slice(0, 10);
        stamps.push(`${date}T${clock}`);
      }
    for (const timeZone of [zone, 'America/St_Johns', 'Australia/Lord_Howe', 'Asia/Kathmandu']) {
      const { samples } = read(`time,temp_c,rh\n${stamps.map((s) => `${s},5,80`).join('\n')}\n`, timeZone);
      const expected = stamps.map((s) =>
        minuteAt(s.slice(0, 10), Number(s.slice(11, 13)) * 60 + Number(s.slice(14)), timeZone),
      );
      expect(samples.map((s) => s.minute)).toEqual(expected);
    }
  });
});

/** However a logger or a forecast writes it: what was measured comes back. */
describe('the same air', () => {
  const shape = fc.record({
    delimiter: fc.constantFrom(',', ';', '\t'),
    comma: fc.boolean(),
    fahrenheit: fc.boolean(),
    unitIn: fc.constantFrom('heading', 'number'),
    upper: fc.boolean(),
    time: fc.constantFrom('local', 'utc', 'offset'),
    quoted: fc.boolean(),
    ends: fc.constantFrom('\n', '\r\n'),
  });
  const rows = fc.uniqueArray(
    fc.record({
      minute: fc.integer({ min: seven - 400 * 1440, max: seven + 400 * 1440 }),
      tenths: fc.integer({ min: -200, max: 350 }),
      rh: fc.integer({ min: 1, max: 100 }),
    }),
    { selector: (r) => r.minute, minLength: 1, maxLength: 40 },
  );

  it('is read in any order, twice over, with any delimiter, decimals, unit, case and kind of time stamp', () => {
    fc.assert(
      fc.property(rows, shape, (all, s) => {
        const quote = (text: string) => (s.quoted || (s.comma && s.delimiter === ',') ? `"${text}"` : text);
        const decimals = (value: number) => value.toFixed(1).replace('.', s.comma ? ',' : '.');
        const unit = s.fahrenheit ? '°F' : '°C';
        // what the clock shows twice, or jumps over, has tests of its own
        const kept = all.filter(({ minute }) => s.time !== 'local' || local(minute).getPossibleOffsets().length === 1);
        const stamp = (minute: number) =>
          s.time === 'local'
            ? local(minute).toFormat('yyyy-MM-dd HH:mm')
            : s.time === 'utc'
              ? local(minute).toUTC().toFormat("yyyy-MM-dd'T'HH:mm'Z'")
              : local(minute).toFormat("yyyy-MM-dd'T'HH:mmZZ");
        const heading = ['Time', `Temp${s.unitIn === 'heading' ? ` ${unit}` : ''}`, 'Humidity'];
        const lines = kept.map(({ minute, tenths, rh }) => {
          const temp = decimals(s.fahrenheit ? (tenths / 10) * 1.8 + 32 : tenths / 10);
          return [stamp(minute), s.unitIn === 'number' ? `${temp} ${unit}` : temp, String(rh)].map(quote);
        });
        const cased = s.upper ? heading.map((h) => h.toUpperCase()) : heading;
        const text = [cased.map(quote), ...lines, ...lines].map((cells) => cells.join(s.delimiter)).join(s.ends);
        const { samples, findings } = read(text);
        expect(findings.filter((f) => f.severity === 'error')).toEqual(kept.length === 0 ? findings : []);
        expect(findings.filter((f) => f.code === 'air-unit' || f.code === 'air-repeated')).toEqual([]);
        const sorted = [...kept].sort((a, b) => a.minute - b.minute);
        expect(samples.map((x) => [x.minute, x.rhPercent])).toEqual(sorted.map((x) => [x.minute, x.rh]));
        // a tenth of a degree Fahrenheit is rounded: at most half of it, 0.028 K
        for (const [i, x] of samples.entries())
          expect(Math.abs(x.tempC - (sorted[i]?.tenths ?? NaN) / 10)).toBeLessThan(0.03);
      }),
      { numRuns: 300 },
    );
  });

  it('of a forecast is read the same way, and is what the room has after now', () => {
    const hours = Array.from({ length: 72 }, (_, h) => h);
    const at = (h: number) =>
      DateTime.fromMillis((seven + 60 * h) * 60_000, { zone: 'UTC' }).toFormat("yyyy-MM-dd'T'HH:mm'Z'");
    const text = `time;temperature (°C);relative_humidity\n${hours.map((h) => `${at(h)};${String(h / 10).replace('.', ',')};70`).join('\n')}`;
    const { samples, findings } = read(text);
    expect(findings).toEqual([]);
    const air = roomAir({ kind: 'series', name: 'forecast.csv', samples }, zone, seven, seven + 71 * 60);
    for (const h of hours.slice(0, 71)) expect(airAt(air, seven + 60 * h).tempC).toBeCloseTo(h / 10, 9);
    expect(air.notes).toEqual([]);
  });
});

// Luxon reads each of them by itself: the quick way must agree.
it('times of a record are read as luxon reads them', () => {
  const heading = 'time,temp_c,rh\n';
  const minute = fc.integer({ min: 26_000_000, max: 40_000_000 });
  fc.assert(
    fc.property(
      fc.uniqueArray(minute, { minLength: 1, maxLength: 20 }),
      fc.constantFrom('Europe/Dublin', 'America/St_Johns', 'Australia/Lord_Howe', 'Asia/Kathmandu'),
      (minutes, timeZone) => {
        const sorted = minutes.sort((a, b) => a - b);
        const stamps = sorted.map((m) => DateTime.fromMillis(m * 60_000, { zone: timeZone }));
        const withOffset = stamps.map((s) => `${s.toFormat("yyyy-MM-dd'T'HH:mmZZ")},1,2`).join('\n');
        expect(read(heading + withOffset, timeZone).samples.map((s) => s.minute)).toEqual(sorted);
        const once = stamps.filter((s) => s.getPossibleOffsets().length === 1);
        const without = once.map((s) => `${s.toFormat('yyyy-MM-dd HH:mm')},1,2`).join('\n');
        const found = read(heading + without, timeZone).samples.map((s) => s.minute);
        expect(found).toEqual(once.map((s) => s.toMillis() / 60_000));
      },
    ),
  );
});

it('any text ends in samples or findings', () => {
  const bits = ['2027-01-11T07:30', ',', ';', '\n', '18', '"', 'x', '-', '.', '\r', '\t', '#', '\u0000', '😀'];
  fc.assert(
    fc.property(fc.array(fc.constantFrom(...bits), { maxLength: 60 }), (parts) => {
      const { samples, findings } = read(`time,temp_c,rh\n${parts.join('')}`);
      expect(samples.length + findings.length).toBeGreaterThan(0);
    }),
    { numRuns: 500 },
  );
});

it('a record of nothing but odd rows is told of in a bounded number of short findings', () => {
  const row = (i: number) => `2027-01-11T07:30,${i % 50},50,${'x'.repeat(5000)}\n`;
  const { findings } = read(`time,temp_c,rh\n${Array.from({ length: 300 }, (_, i) => row(i)).join('')}`);
  expect(findings).toHaveLength(50);
  expect(Math.max(...findings.map((f) => f.place?.text?.length ?? 0))).toBeLessThanOrEqual(400);
});

it('refuses a record of more rows than any before it is read', () => {
  const { samples, findings } = readAirCsv(
    `time,temp_c,rh\n${'2027-01-11T07:30,10,50\n'.repeat(220_001)}`,
    'UTC',
    'x.csv',
  );
  expect(samples).toEqual([]);
  expect(findings.map((f) => f.code)).toEqual(['air-too-long']);
});
