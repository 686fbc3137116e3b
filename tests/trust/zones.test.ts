import { DateTime } from 'luxon';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { PlanDocument } from '../../src/model/plan-document.ts';
import { faces } from '../../src/commands/faces.ts';
import { drybench } from '../commands/run-cli.ts';
import { inShop, pieceFile, shopFile } from '../commands/small-shop.ts';

// The tests themselves run with TZ at Auckland (vitest.config.ts), so that no shop here is in the computer's zone. What a
// wall clock shows is taken from luxon, day by day, and not from src/time.

/** A moment just before something odd happens to the clock or the calendar, on the wall clock of the zone. */
const moments: readonly (readonly [what: string, zone: string, at: string])[] = [
  ['spring in Europe', 'Europe/Dublin', '2027-03-26T07:30'],
  ['autumn in Europe', 'Europe/Dublin', '2027-10-29T07:30'],
  ['spring in America', 'America/New_York', '2027-03-12T07:30'],
  ['autumn in America', 'America/St_Johns', '2027-11-05T07:30'],
  ['autumn in the south', 'Australia/Adelaide', '2027-04-02T07:30'],
  ['spring in the south', 'America/Santiago', '2027-09-03T07:30'],
  ['half an hour on Lord Howe', 'Australia/Lord_Howe', '2027-10-01T07:30'],
  ['three quarters on Chatham', 'Pacific/Chatham', '2027-04-02T07:30'],
  ['the end of a month in a half-hour zone', 'Asia/Kolkata', '2027-04-30T07:30'],
  ['the end of a year at the front of the world', 'Pacific/Kiritimati', '2027-12-31T07:30'],
  ['a leap day in a quarter-hour zone', 'Asia/Kathmandu', '2028-02-28T07:30'],
  ['the end of a year at the back of the world', 'Pacific/Pago_Pago', '2027-12-31T07:30'],
];

const looks: readonly (readonly string[])[] = [
  ['check'],
  ['today'],
  ['ready'],
  ['ready', '--all'],
  ['why', 'stool', 'paint-2'],
  ['air'],
  ['buy'],
  ['price'],
  ['compare', '--warmer', 'workshop=+2K'],
  ['promise', 'brushed', '--by', '2028-06-01'],
  ['wall', '--file', 'wall.html'],
  ['phone', '--file', 'phone.ics'],
  ['completion', 'bash'],
];

/** A day at the bench, entered at once; each writes a record with its time. */
const entries: readonly (readonly string[])[] = [
  ['lead-test', 'stool', 'none'],
  ['begun', 'stool', 'scuff'],
  ['done', 'stool', 'scuff'],
  ['undo'],
  ['done', 'stool', 'scuff'],
  ['skip', 'stool', 'wipe'],
  ['done', 'stool', 'paint-1'],
  ['seen', 'stool', 'paint-1', 'wet'],
  ['failed', 'stool', 'paint-1', 'runs'],
  ['again', 'stool', 'scuff'],
];

/** A shop made in that zone, with a piece taken in. */
const newShop = (zone: string): readonly (readonly string[])[] => [
  ['setup', 'new', '--zone', zone, '--ask-nothing'],
  [
    'intake',
    '--name',
    'Side table',
    '--kind',
    'table',
    '--size',
    '60 x 40 x 70 cm',
    '--finish',
    'oil-polyurethane',
    '--ask-nothing',
  ],
  ['check'],
  ['today'],
];

test('every command is tried', () => {
  const tried = [['week'], ...looks, ...entries, ['slip'], ...newShop('UTC')].map(([name]) => name);
  expect(new Set(tried)).toEqual(new Set(faces.map((f) => f.name)));
});

const oldStool = { 'pieces/stool.yaml': `${pieceFile('Milking stool')}may-carry-lead: yes\n` };

// Open at the weekend as well, when clocks change.
const everyDay = shopFile.replace(/(saturday|sunday): closed/g, '$1: 08:00-17:00');

test.each(moments)(
  '%s: every command answers, hours are those of the wall clock, waits are real hours',
  (_, zone, at) =>
    inShop({ ...oldStool, 'shop.yaml': everyDay.replace('Europe/Dublin', zone) }, async (shop) => {
      const say = (...words: string[]) => drybench([...words, '--shop', shop, '--at', at], { folder: shop });
      const { code, out, err } = await say('week', '--json');
      expect({ code, err }).toEqual({ code: 0, err: '' });
      const plan = JSON.parse(out) as PlanDocument;
      expect(plan.timeZone).toBe(zone);
      expect(plan.steps.length).toBe(4);
      for (const { spans } of plan.steps)
        for (const { start, end } of spans) {
          const [from, to] = [start, end].map((t) => DateTime.fromISO(t, { setZone: true }));
          // The offset that is written is the zone's at that moment.
          for (const t of [from!, to!]) expect(t.offset).toBe(t.setZone(zone).offset);
          const clock = (t: DateTime) => t.hour * 60 + t.minute;
          expect(clock(from!)).toBeGreaterThanOrEqual(8 * 60);
          expect(clock(to!)).toBeLessThanOrEqual(17 * 60);
        }
      // At a steady 20 °C and 50 % the waits between the coats take as long as they do where no clock changes.
      expect(waitsOf(plan)).toEqual(await waitsIn());
      const answered = async (words: readonly string[], folder = shop) => {
        const told = await drybench([...words, '--at', at], { folder });
        expect({ words, code: told.code, err: told.code === 0 ? '' : told.err }).toEqual({ words, code: 0, err: '' });
        return told.out;
      };
      for (const words of looks) await answered(words);
      const calendar = readFileSync(join(shop, 'phone.ics'), 'utf8');
      for (const [, stamp] of calendar.matchAll(/^DT(?:START|END):(.*)\r$/gm)) expect(stamp).toMatch(/^\d{8}T\d{6}Z$/);
      expect(readdirSync(shop)).toContain('wall.html');

      for (const words of entries) await answered(words);
      // Put off to a wall clock behind whatever changes.
      const until = DateTime.fromISO(at, { zone }).plus({ days: 3 }).set({ hour: 9, minute: 20 });
      await answered(['slip', 'stool', 'paint-2', until.toFormat("yyyy-MM-dd'T'HH:mm")]);
      const records = readFileSync(join(shop, 'journal.jsonl'), 'utf8').trim().split('\n');
      expect(records).toHaveLength(entries.length + 1);
      for (const record of records) expect(timeOf(record)).toEqual(DateTime.fromISO(at, { zone }).toMillis());
      const after = JSON.parse(await answered(['week', '--json'])) as PlanDocument;
      const paint = after.steps.find((s) => s.step === 'paint-2')!;
      expect(Date.parse(paint.spans[0]!.start)).toBeGreaterThanOrEqual(until.toMillis());

      const [setup, ...rest] = newShop(zone);
      await answered(setup!);
      for (const words of rest) await answered(words, join(shop, 'new'));
      const [intake] = readdirSync(join(shop, 'new/pieces'));
      expect(readFileSync(join(shop, 'new/pieces', intake!), 'utf8')).toContain(`arrives: ${at.slice(0, 10)}`);
    }),
  300_000,
);

function timeOf(record: string): number {
  return Date.parse((JSON.parse(record) as { at: string }).at);
}

/** Hours of drying by which each film is dry in the slow case, from the end of its coat. */
function waitsOf(plan: PlanDocument): number[] {
  return plan.steps.flatMap((s) => {
    const end = s.spans.at(-1)!.end;
    return Object.values(s.dry ?? {}).map((t) => (Date.parse(t.late) - Date.parse(end)) / 60_000);
  });
}

let known: Promise<number[]> | undefined;
/** The same in a zone whose clock never changes, at no odd day. */
function waitsIn(): Promise<number[]> {
  known ??= inShop({ 'shop.yaml': everyDay.replace('Europe/Dublin', 'UTC') }, async (shop) => {
    const { out } = await drybench(['week', '--json', '--look', '--shop', shop, '--at', '2027-06-10T07:30']);
    return waitsOf(JSON.parse(out) as PlanDocument);
  });
  return known;
}
