import { localTime } from '../time/zone.ts';
import type { Minute } from '../time/span.ts';
import type { Situation } from '../model/situation.ts';
import { NEVER } from '../time/time-map.ts';

/** How a breach names steps, times and durations. */
export interface Say {
  /** `Desk, top, coat 2` */
  readonly step: (id: string) => string;
  readonly piece: (id: string) => string;
  /** `Tue 2027-01-12 16:35`, or `2:35 pm` in a shop with such a clock. */
  readonly when: (minute: Minute) => string;
}

const dayNames = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];

function twoDigits(value: number): string {
  return String(value).padStart(2, '0');
}

function clockText(clock: number, hours: 12 | 24): string {
  const hour = Math.floor(clock / 60);
  const minute = twoDigits(clock % 60);
  if (hours === 24) return `${twoDigits(hour)}:${minute}`;
  return `${((hour + 11) % 12) + 1}:${minute} ${hour < 12 ? 'am' : 'pm'}`;
}

/** `2 h 35 min`, `40 min`, `3 h`. */
export function lasting(minutes: number): string {
  const hours = Math.floor(minutes / 60);
  const rest = minutes % 60;
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}

export function sayFor({ book, tasks }: Situation): Say {
  const { shop } = book;
  const pieces = new Map(book.pieces.map((p) => [p.id, p.name]));
  const sections = new Map(book.pieces.flatMap((p) => p.sections.map((s) => [`${p.id}/${s.id}`, s.name])));
  const steps = new Map(tasks.map((t) => [t.id, t]));
  // A plan with much wrong names the same times over and over.
  const said = new Map<Minute, string>();
  const piece = (id: string): string => pieces.get(id) ?? id;
  return {
    piece,
    step: (id) => {
      const task = steps.get(id);
      if (task === undefined) return id;
      const section = sections.get(`${task.piece}/${task.section}`) ?? task.section;
      return `${piece(task.piece)}, ${section}, ${task.step.replaceAll('-', ' ')}`;
    },
    when: (minute) => {
      if (minute >= NEVER) return 'never';
      const known = said.get(minute);
      if (known !== undefined) return known;
      const { date, weekday, clock } = localTime(minute, shop.timeZone);
      const text = `${dayNames[weekday - 1] ?? ''} ${date} ${clockText(clock, shop.clock)}`;
      said.set(minute, text);
      return text;
    },
  };
}
