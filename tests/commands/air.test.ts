import { expect, test } from 'vitest';
import { readAir } from '../../src/commands/read-air.ts';
import { drybench } from './run-cli.ts';
import { inShop, shopFile } from './small-shop.ts';

/** Without regard to where lines break. */
const flat = (text: string) => text.replaceAll(/\s+/g, ' ');

test.each([
  ['13 °C 82 %', 13, 82],
  ['82 % 13 °C', 13, 82],
  ['13°C, 82%', 13, 82],
  ['13 C 82 % RH', 13, 82],
  ['-2.5 °C 71.5 %', -2.5, 71.5],
  ['68 °F 50 %', 20, 50],
])('"%s" is %f °C and %f %%', (text, tempC, rhPercent) => {
  const air = readAir('--reading', text);
  expect(air.tempC).toBeCloseTo(tempC, 9);
  expect(air.rhPercent).toBe(rhPercent);
});

test.each(['', '13 °C', '82 %', '13 82 %', '13 °C 820 %', '13 °C 1.2.3 %', 'warm 50 %', `${'9'.repeat(500)} °C 5 %`])(
  '"%s" is refused',
  async (reading) => {
    const { code, out, err } = await drybench(['air', `--reading=${reading}`]);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain('write temperature and humidity like "13 °C 82 %"');
  },
);

// Dew point of 20 °C, 50 % RH: 9.3 °C (ASHRAE Handbook—Fundamentals 2017, chapter 1: by equations 5, 6 and 24).
test('a reading needs no shop, and answers as one document; what is merely worth knowing stays beside it', async () => {
  const { code, out, err } = await drybench(['air', '--reading', '20 °C 50 %', '--json']);
  expect(code).toBe(0);
  expect(err).toMatch(/^drybench: the dew point is 10\.7 K below the air: shellac and lacquer may blush[^\n]*\n$/);
  const answer = JSON.parse(out) as Record<string, number>;
  expect(answer['dewPointC']).toBeCloseTo(9.3, 1);
  expect(answer).toMatchObject({ coatable: true, reasons: [] });
});

const figures = ['tempC', 'rhPercent', 'vapourPressurePa', 'saturationPressurePa', 'vpdPa', 'dewPointC'];
const ends = ['humidityRatioGPerKg', 'woodMoisturePercent'];
const judged = ['coatable', 'reasons'];

test.each([
  ['20 °C 50 %', [], [...figures, ...ends, ...judged], undefined],
  ['20 °C 50 %', ['--surface', '18 °C'], [...figures, ...ends, 'marginK', ...judged], undefined],
  ['-2 °C 80 %', [], [...figures, 'frostPointC', ...ends, ...judged], undefined],
  [
    '13 °C 82 %',
    ['--surface', '12 °C', '--heat-to', '16 °C'],
    [...figures, ...ends, 'marginK', ...judged, 'heated'],
    [...figures, ...ends, 'marginK', ...judged],
  ],
  [
    '-2 °C 80 %',
    ['--heat-to', '16 °C'],
    [...figures, 'frostPointC', ...ends, ...judged, 'heated'],
    [...figures, 'frostPointC', ...ends, ...judged],
  ],
])('the document of "%s" %j has just these names', async (reading, more, names, ofHeated) => {
  const { out } = await drybench(['air', `--reading=${reading}`, ...more, '--json']);
  const answer = JSON.parse(out) as { heated?: object };
  expect(Object.keys(answer)).toEqual(names);
  expect(answer.heated && Object.keys(answer.heated)).toEqual(ofHeated);
});

/** Values of psychrolib 1.1.1 at 101 325 Pa: dew or frost point, and humidity ratio. */
test.each([
  ['16 °C 71 %', { dewPointC: [10.754, 0.05], vapourPressurePa: [1290.9, 5] }],
  ['20 °C 65 %', { dewPointC: [13.227, 0.05], woodMoisturePercent: [12.0, 0.1] }],
  ['5 °C 85 %', { dewPointC: [2.69, 0.05], humidityRatioGPerKg: [4.586, 0.02] }],
])('the figures of "%s"', async (reading, wanted) => {
  const { out } = await drybench(['air', `--reading=${reading}`, '--json']);
  const answer = JSON.parse(out) as Record<string, number>;
  for (const [name, [value, within]] of Object.entries(wanted) as [string, [number, number]][])
    expect(Math.abs((answer[name] ?? NaN) - value), name).toBeLessThanOrEqual(within);
});

test('a cold surface near the dew point is not fit; the same air heated is', async () => {
  const words = ['air', '--reading', '13 °C 82 %', '--surface', '12 °C', '--heat-to', '16 °C'];
  const { code, out } = await drybench(words);
  expect(code).toBe(0);
  expect(flat(out)).toMatch(/^Not fit for coating: the surface is 2\.0 °C above the dew point; it needs 3\.0 °C/);
  expect(out).toMatch(/ air +13\.0 °C +16\.0 °C\n/);
  expect(out).toMatch(/Heated:\nFit for coating, as far as the air goes\.\n$/);
  const { heated } = JSON.parse((await drybench([...words, '--json'])).out) as { heated: Record<string, unknown> };
  expect(heated).toMatchObject({ tempC: 16, coatable: true });
});

test('a surface that is short of its limit by less than is shown is never said to be at it', async () => {
  const metric = await drybench(['air', '--reading', '13 °C 82 %']);
  expect(flat(metric.out)).toMatch(
    /^Not fit for coating: the surface is 2\.9\d+ °C above the dew point; it needs 3\.0 °C /,
  );
  const us = await drybench(['air', '--reading', '55 °F 82 %']);
  expect(flat(us.out)).toMatch(
    /^Not fit for coating: the surface is 5\.3\d+ °F above the dew point; it needs 5\.4 °F /,
  );
});

test('a reading in Fahrenheit is answered in Fahrenheit', async () => {
  const { out } = await drybench(['air', '--reading', '68 °F 50 %']);
  expect(out).toMatch(/ air +68\.0 °F\n/);
  const near = await drybench(['air', '--reading', '55 °F 82 %', '--surface', '53 °F']);
  expect(flat(near.out)).toMatch(
    /^Not fit for coating: the surface is \d\.\d °F above the dew point; it needs 5\.4 °F/,
  );
});

test('the air of rooms: pictures with their range, hours fit, why others are not, and what would help', async () => {
  await inShop({}, async (folder) => {
    const { code, out } = await drybench(['air', '--at', '2027-01-11T07:30', '--days', '1'], { folder });
    expect(code).toBe(0);
    expect(out).toMatch(/^Workshop · now 20 °C, 50 %\nMon 11 Jan, today\n/);
    expect(out).toMatch(/\n {2}temperature +▁{24} {2}20 °C\n/);
    expect(out).toMatch(/\n {2}fit for coating +█{24} {2}all day\n/);
    expect(out).toMatch(/\nShed · now 4 °C, 90 %\n/);
    expect(out).toMatch(/\n {2}fit for coating +·{24} {2}not today\n/);
    expect(flat(out)).toMatch(/all day too cold \(4 °C, wants 10 °C\)/);
    expect(flat(out)).toMatch(/heat to \d+(\.\d)? °C by 08:00/);
    const plain = await drybench(['air', '--at', '2027-01-11T07:30', '--plain'], { folder });
    expect(plain.out).toMatch(/^[\n\x20-\x7e]+$/);
    const json = JSON.parse((await drybench(['air', '--at', '2027-01-11T07:30', '--json'], { folder })).out) as {
      rooms: { id: string; hours: { time: string; tempC: number }[] }[];
    };
    expect(json.rooms.map((r) => [r.id, r.hours.length])).toEqual([
      ['workshop', 48],
      ['shed', 48],
    ]);
    expect(json.rooms[0]?.hours[0]).toMatchObject({ time: '2027-01-11T00:00:00+00:00', tempC: 20 });
  });
});

test('what the bench has taught and what is in doubt stand under the air, each once and only for what is still to be laid', async () => {
  await inShop({}, async (folder) => {
    const now = (clock: string) => ['--at', `2027-01-11T${clock}`];
    const before = await drybench(['air', ...now('08:00')], { folder });
    expect(before.out).not.toContain('Learned from the bench');
    expect(before.out.split('How much damp air slows the late drying').length).toBe(2);
    for (const [clock, step] of [
      ['08:40', 'scuff'],
      ['08:50', 'wipe'],
      ['09:30', 'paint-1'],
    ] as const)
      expect((await drybench(['done', 'stool', step, ...now(clock)], { folder })).code).toBe(0);
    expect((await drybench(['seen', 'stool', 'paint-1', 'tacky', ...now('15:30')], { folder })).code).toBe(0);
    const { out } = await drybench(['air', ...now('16:00')], { folder });
    expect(flat(out)).toMatch(
      /Learned from the bench Water-borne acrylic enamel dries \d+ % slower here than the container says, from 1 look at it\./,
    );
    const json = await drybench(['air', ...now('16:00'), '--json'], { folder });
    const { learned, doubts } = JSON.parse(json.out) as {
      learned: { id: string; factor: number; observations: number }[];
      doubts: { code: string }[];
    };
    expect(learned).toMatchObject([{ id: 'water-borne-acrylic-enamel', observations: 1 }]);
    expect(learned[0]?.factor).toBeGreaterThan(1);
    expect(learned[0]?.factor).toBeLessThanOrEqual(2);
    expect(doubts.map((d) => d.code)).toEqual(['trade-figures', 'damp-late']);
  });
});

test('warmth that a material must be kept in afterwards is part of what would help', async () => {
  await inShop({}, async (folder) => {
    const { out } = await drybench(['air', '--at', '2027-01-11T07:30', '--days', '1'], { folder });
    expect(flat(out)).toMatch(/heat to \d+(\.\d)? °C by 08:00, and keep 10 °C or more for 24 h after the coat/);
    expect(flat(out)).toContain('with nothing that burns in the room');
  });
});

test('what speed 1 means is said in the units of the shop', async () => {
  const air = async (units: string) => {
    const changes = { 'shop.yaml': shopFile.replace('units: metric', `units: ${units}`) };
    return inShop(changes, async (folder) =>
      flat((await drybench(['air', '--at', '2027-01-11T07:30', '--days', '1'], { folder })).out),
    );
  };
  expect(await air('metric')).toContain('drying speed 1 is that at 23 °C and 50 % humidity');
  // 23 °C is 73.4 °F.
  expect(await air('us')).toContain('drying speed 1 is that at 73 °F and 50 % humidity');
  expect(await air('us')).not.toContain('°C');
});

// 68 °F is 20 °C; at 50 % its water is 7.26 g/kg, 51 gr/lb, and its drying power 1.17 kPa, 0.345 inHg (calculated by ASHRAE
// 2017, chapter 1, equations 6 and 20; factors of NIST SP 811, appendix B).
test('a reading in °F is answered in US units throughout, in JSON in metric ones', async () => {
  const { out } = await drybench(['air', '--reading', '68 °F 50 %']);
  expect(flat(out)).toMatch(/drying power of the air 0\.34[56] inHg/);
  expect(flat(out)).toMatch(/water in the air 51 gr\/lb/);
  expect(out).not.toMatch(/kPa|g\/kg|°C/);
  const json = JSON.parse((await drybench(['air', '--reading', '68 °F 50 %', '--json'])).out) as Record<string, number>;
  expect(json['humidityRatioGPerKg']).toBeCloseTo(7.26, 1);
});
