import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import fc from '../../support/property.ts';
import { describe, expect, test } from 'vitest';
import { calendarOf } from '../../../src/reports/calendar/calendar-of.ts';
import { newLedger } from '../../../src/reports/calendar/ledger.ts';
import { calendarText, escaped, folded } from '../../../src/reports/calendar/text.ts';
import { bookOf, pieceOf, plan, planOf, span, stepOf, threePieces, twelveSteps, ZONE } from './made-shop.ts';
import { parsed, secondReading } from './parsed.ts';

const now = plan.madeAt;
const book = bookOf();
const whole = (p = plan, b = book) =>
  calendarOf({ plan: p, book: b, ledger: newLedger('shop', ZONE), now, choice: {}, form: 'feed', warnMinutes: 30 })
    .text;

const familyOf = (text: string) => new TextEncoder().encode(text).length;

function lineFaults(text: string): string[] {
  const lines = text.split('\r\n');
  return [
    ...(lines.at(-1) === '' ? [] : ['does not end with a line end']),
    ...lines.filter((line) => /[\r\n]/.test(line)).map((line) => `a bare line end in ${line}`),
    ...lines.filter((line) => familyOf(line) > 75).map((line) => `more than 75 octets: ${line}`),
    ...lines.filter((line) => /\p{Surrogate}/u.test(line)).map((line) => `a torn character: ${line}`),
  ];
}

const hostileName = `Čaj ☕ table; legs, top \\ "x"\n${'👩‍👩‍👧‍👦'.repeat(40)}`;

/** ical.js leaves properties that it does not know as they stand, so this one is read here. */
function unescapedName(text: string): string {
  const line = text
    .replaceAll('\r\n ', '')
    .split('\r\n')
    .find((l) => l.startsWith('X-WR-CALNAME:'))!;
  expect(line.replace(/\\[\\;,]/g, '')).not.toMatch(/[\\;,]/);
  return line.slice('X-WR-CALNAME:'.length).replace(/\\(.)/gu, '$1');
}

/** One piece and one step that carry `name`. */
function namedPlan(name: string) {
  const b = bookOf([pieceOf('named', name, ['top'])], { name });
  const step = stepOf('named/top/coat', [span('2027-03-12T10:00', '2027-03-12T10:30')], { title: name, stage: 'coat' });
  return { book: b, plan: planOf([step]) };
}

describe('the bytes of a calendar, RFC 5545 section 3.1', () => {
  test('lines end in CRLF, hold at most 75 octets, and never tear a character', () => {
    const named = namedPlan(hostileName);
    const text = whole(named.plan, named.book);
    expect(lineFaults(text)).toEqual([]);
    const [event] = parsed(text).events;
    expect(event?.summary).toBe(`${hostileName} – ${hostileName}, top`);
    expect(secondReading(text)).toEqual([
      expect.objectContaining({ uid: event?.uid, start: event?.start, end: event?.end }),
    ]);
  });

  test('a fold falls exactly where RFC 5545 allows it: 75 octets, then 74 after the space', () => {
    expect(folded('a'.repeat(75))).toBe(`${'a'.repeat(75)}\r\n`);
    expect(folded('a'.repeat(76))).toBe(`${'a'.repeat(75)}\r\n a\r\n`);
    expect(folded(`${'a'.repeat(74)}é`)).toBe(`${'a'.repeat(74)}\r\n é\r\n`);
    expect(folded('a'.repeat(150))).toBe(`${'a'.repeat(75)}\r\n ${'a'.repeat(74)}\r\n a\r\n`);
  });

  test('escapes as section 3.3.11 says: backslash, semicolon, comma and line breaks, nothing else', () => {
    expect(escaped('a\\b;c,d\ne:f"g')).toBe('a\\\\b\\;c\\,d\\ne:f"g');
  });

  test('any text comes back from ical.js as it was, but for its control characters', () => {
    const unit = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.constantFrom(
        '\r\n',
        '\n',
        '\r',
        '\u2028',
        '\u0085',
        '\0',
        '\x1b',
        '\\',
        ';',
        ',',
        ':',
        '"',
        '\ud800',
        '👩‍👩‍👧‍👦',
        'e\u0301',
        '\u202e',
        'BEGIN:VEVENT',
      ),
    );
    fc.assert(
      fc.property(fc.array(unit, { maxLength: 30 }), (parts) => {
        const name = parts.join('');
        const named = namedPlan(name);
        const text = whole(named.plan, named.book);
        const read = parsed(text);
        expect(lineFaults(text)).toEqual([]);
        expect(read.events.map((e) => e.summary)).toEqual([calendarText(`${name} – ${name}, top`)]);
        expect(unescapedName(text)).toBe(calendarText(name).replaceAll('\n', ' '));
      }),
      { numRuns: 300 },
    );
  });
});

describe('injection', () => {
  const allowed = new Set([
    'uid',
    'dtstamp',
    'created',
    'last-modified',
    'sequence',
    'dtstart',
    'dtend',
    'summary',
    'description',
    'categories',
    'status',
    'transp',
  ]);
  const attacks = [
    '\r\nATTENDEE:mailto:x@y',
    '\rATTENDEE:mailto:x@y',
    '\u2028X-EVIL:1',
    '\u0085X-EVIL:1',
    '\0',
    '\x1b[31m',
    '\nEND:VEVENT\nBEGIN:VEVENT\nUID:x',
  ];

  test.each(attacks)('%j in every name and id adds no property and no event', (attack) => {
    const id = `stool${attack}`;
    const b = bookOf([pieceOf(id, `Stool${attack}`, [`seat${attack}`])], { name: attack });
    const step = stepOf(`${id}/seat${attack}/coat${attack}`, [span('2027-03-12T10:00', '2027-03-12T10:30')], {
      title: attack,
      material: attack,
      station: attack,
      room: attack,
      hands: [attack],
      tools: [attack],
    });
    const text = whole(planOf([step]), b);
    const { calendar, events } = parsed(text);
    expect(events).toHaveLength(1);
    expect(events[0]!.properties.filter((p) => !allowed.has(p))).toEqual([]);
    expect(calendar.getAllProperties().map((p) => p.name)).toEqual([
      'version',
      'prodid',
      'calscale',
      'name',
      'x-wr-calname',
      'refresh-interval',
      'x-published-ttl',
    ]);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\u0000-\u001f\u007f-\u009f]/u);
  });
});

describe('reproducible', () => {
  const root = join(import.meta.dirname, '../../..');
  const out = join(root, 'build/tests-calendar');

  test('the same bytes in every zone and language of the machine, now and two seconds later', async () => {
    const tsc = [join(root, 'node_modules/typescript/bin/tsc'), join(import.meta.dirname, 'print-calendar.ts')];
    const how = ['--ignoreConfig', '--noCheck', '--module', 'nodenext', '--target', 'es2023', '--skipLibCheck'];
    const where = ['--rewriteRelativeImportExtensions', '--rootDir', root, '--outDir', out];
    execFileSync(process.execPath, [...tsc, ...how, ...where], { cwd: root });
    const printed = (env: Record<string, string>) =>
      execFileSync(process.execPath, [join(out, 'tests/reports/calendar/print-calendar.js')], {
        env: { ...process.env, ...env },
        encoding: 'utf8',
      });
    const first = printed({ TZ: 'UTC' });
    expect(parsed(first).events.length).toBeGreaterThan(12);
    await setTimeout(2000);
    for (const env of [
      { TZ: 'UTC' },
      { TZ: 'Asia/Tokyo' },
      { TZ: 'America/St_Johns' },
      { LANG: 'C', LC_ALL: 'C' },
      { LANG: 'ar_EG.UTF-8', LC_ALL: 'ar_EG.UTF-8' },
    ])
      expect(printed(env)).toBe(first);
  });

  test('no stamp without its zone, and the order of the steps does not matter', () => {
    const text = whole();
    expect(text.match(/^(DTSTAMP|CREATED|LAST-MODIFIED):.*$/gm)?.every((line) => /:\d{8}T\d{6}Z\r?$/.test(line))).toBe(
      true,
    );
    expect(whole(planOf([...twelveSteps].reverse(), threePieces))).toBe(text);
  });
});
