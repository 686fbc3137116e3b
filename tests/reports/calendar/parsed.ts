import { execFileSync } from 'node:child_process';
import { createRequire } from 'node:module';
import ICAL from 'ical.js';

export interface ParsedAlarm {
  readonly offsetSeconds: number;
  readonly action: unknown;
  readonly description: unknown;
}

export interface ParsedEvent {
  readonly uid: string;
  readonly start: string;
  readonly end: string;
  readonly summary: string;
  readonly description: string | undefined;
  readonly sequence: number;
  readonly status: unknown;
  readonly transparency: unknown;
  readonly properties: readonly string[];
  readonly alarms: readonly ParsedAlarm[];
}

const iso = (time: ICAL.Time) => (time.isDate ? time.toString() : time.toJSDate().toISOString());

function alarmOf(alarm: ICAL.Component): ParsedAlarm {
  const trigger = alarm.getFirstPropertyValue('trigger');
  if (!(trigger instanceof ICAL.Duration)) throw new Error('a trigger that is no duration');
  return {
    offsetSeconds: trigger.toSeconds(),
    action: alarm.getFirstPropertyValue('action'),
    description: alarm.getFirstPropertyValue('description'),
  };
}

/** What ical.js, a strict reader, makes of a calendar. */
export function parsed(text: string): { readonly calendar: ICAL.Component; readonly events: readonly ParsedEvent[] } {
  const calendar = new ICAL.Component(ICAL.parse(text) as unknown[]);
  const events = calendar.getAllSubcomponents('vevent').map((vevent) => {
    const event = new ICAL.Event(vevent);
    return {
      uid: event.uid,
      start: iso(event.startDate),
      end: iso(event.endDate),
      summary: event.summary,
      description: event.description,
      sequence: event.sequence,
      status: vevent.getFirstPropertyValue('status'),
      transparency: vevent.getFirstPropertyValue('transp'),
      properties: vevent.getAllProperties().map((p) => p.name),
      alarms: vevent.getAllSubcomponents('valarm').map(alarmOf),
    };
  });
  return { calendar, events };
}

// In a process of its own: this package puts a Temporal into the global scope of whoever loads it.
const SECOND_READER = `
  const ical = require(process.argv[1]);
  let text = '';
  process.stdin.on('data', (d) => (text += d)).on('end', () => {
    const all = Object.values(ical.sync.parseICS(text)).filter((c) => c.type === 'VEVENT');
    const events = all.map((e) => ({ uid: e.uid, start: e.start.toISOString(), end: e.end.toISOString(),
      day: e.datetype, summary: e.summary, alarms: (e.alarms ?? []).length }));
    process.stdout.write(JSON.stringify(events));
  });`;

export interface SecondReading {
  readonly uid: string;
  readonly start: string;
  readonly end: string;
  readonly day: string;
  readonly summary: string;
  readonly alarms: number;
}

/** What node-ical, a lenient reader, makes of a calendar. */
export function secondReading(text: string): readonly SecondReading[] {
  const path = createRequire(import.meta.url).resolve('node-ical');
  const out = execFileSync(process.execPath, ['-e', SECOND_READER, path], {
    input: text,
    env: { ...process.env, TZ: 'UTC' },
    encoding: 'utf8',
  });
  return JSON.parse(out) as SecondReading[];
}
