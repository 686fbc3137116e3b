import { airAt, type AirSeries } from '../air/series.ts';
import type { StretchToMend } from '../drying/fit-stretches.ts';
import { outlook, shownMechanisms, standardAir, type AirNow, type ShownMechanism } from '../drying/outlook.ts';
import type { Material, Mechanism } from '../model/material.ts';
import { intersect, type Span, type Spans } from '../time/span.ts';
import { localTime, type LocalDay } from '../time/zone.ts';
import { fitGroups, type FitOf } from './fit-groups.ts';
import { paragraph } from './layout.ts';
import { signs, type Look, type Paint } from './look.ts';
import { heights, yesNo } from './picture.ts';
import { sayPercent, sayTemp } from './say-quantity.ts';
import { sayClock, sayClocks, sayDate, sayDay, type Manner } from './say-time.ts';
import { sayReasons, sayRemedy } from './say-unfit.ts';
import { minds } from './unfit-hours.ts';
import { marked, phrase, translated, worded } from '../words/worded.ts';

/** The air of one room over some days, and what is to be laid down in it. */
export interface RoomAir {
  readonly name: string;
  readonly series: AirSeries;
  readonly days: readonly LocalDay[];
  readonly materials: readonly Material[];
  /** When the shop is open. */
  readonly open: Spans;
}

const stepMinutes = 60;
const labelColumns = 20;

/**
 * An unvented flame gives off 1.6 kg of water for each kg of propane (stoichiometry); no flame or hot surface where solvent is
 * sprayed: 29 CFR 1910.107(c)(2), from memory.
 */
const heatingNote = phrase(
  'Heat so early that the work is warm as well, and with nothing that burns in the room: that adds water. No flame or glowing heater while solvent coats go on and flash off.',
);

const mechanismSaid: Readonly<Record<ShownMechanism, string>> = {
  solvent: phrase('solvent dries'),
  water: phrase('water dries'),
  oxidation: phrase('oil hardens'),
  'two-part': phrase('two-part hardens'),
  'moisture-cure': phrase('damp-cure hardens'),
  'wood-water': phrase('glue, wet wood dry'),
};

const shownAs: Readonly<Record<Mechanism, ShownMechanism | undefined>> = {
  solvent: 'solvent',
  water: 'water',
  oxidation: 'oxidation',
  'two-part': 'two-part',
  'moisture-cure': 'moisture-cure',
  'pva-glue': 'wood-water',
  'hide-glue': 'wood-water',
  'wood-water': 'wood-water',
  none: undefined,
};

function mechanismsOf(materials: readonly Material[]): ShownMechanism[] {
  const used = new Set(materials.map((m) => shownAs[m.mechanism]));
  return shownMechanisms.filter((m) => used.has(m));
}

function range(values: readonly number[], say: (value: number) => string): string {
  const [low, high] = [say(Math.min(...values)), say(Math.max(...values))];
  return low === high ? low : worded`${low} to ${high}`;
}

/** Below, what a picture shows stands above it. */
const narrowColumns = 64;
const pictureIndent = ({ columns }: Look) => (columns < narrowColumns ? 2 : labelColumns + 2);

function line(label: string, picture: string, text: string, look: Look, paint: Paint = (t) => t): string[] {
  const before = ' '.repeat(pictureIndent(look));
  const width = before.length + look.widthOf(picture) + 2 + look.widthOf(signs(text, look));
  if (look.columns < narrowColumns || width > look.columns)
    return [...paragraph(`${label}: ${text}`, look, 2, undefined, 4), before + paint(picture)];
  return [signs(`  ${label.padEnd(labelColumns)}`, look) + paint(picture) + signs(`  ${text}`, look)];
}

/** Clock hours over the pictures, every six. */
function hourLine(day: LocalDay, manner: Manner, look: Look): string {
  const hours: string[] = [];
  for (let minute = day.start; minute < day.end; minute += stepMinutes) {
    const { clock } = localTime(minute, manner.zone);
    hours.push(clock % 360 === 0 ? String(clock / 60) : '');
  }
  const text = hours.reduce((all, hour, at) => (hour === '' ? all : all.padEnd(at) + hour), '');
  return look.paint.quiet(' '.repeat(pictureIndent(look)) + text);
}

function figureLines(rows: readonly AirNow[], all: readonly AirNow[], room: RoomAir, manner: Manner, look: Look) {
  const one = (label: string, of: (row: AirNow) => number, say: (value: number) => string, floor?: number) => {
    const scale = all.map(of);
    const values = rows.map(of);
    const picture = heights(values, floor ?? Math.min(...scale), Math.max(...scale), look);
    return line(label, picture, range(values, say), look);
  };
  return [
    ...one(
      worded`temperature`,
      (r) => r.tempC,
      (v) => sayTemp(v, manner),
    ),
    ...one(worded`humidity`, (r) => r.rhPercent, sayPercent),
    ...one(
      worded`dew point`,
      (r) => r.dewPointC,
      (v) => sayTemp(v, manner),
    ),
    ...mechanismsOf(room.materials).flatMap((m) =>
      one(
        translated(mechanismSaid[m]),
        (r) => r.speed[m],
        (v) => `${marked(v.toFixed(1))} ×`,
        0,
      ),
    ),
  ];
}

const isAllOf = (day: LocalDay, { start, end }: Span) => start <= day.start && end >= day.end;

/** What is said of a stretch: materials of which the same is said stand together. */
function sayStretch(stretch: StretchToMend, day: LocalDay, open: Spans, manner: Manner): string {
  const hours = isAllOf(day, stretch) ? worded`all day` : sayClocks(stretch, manner);
  if (stretch.fit) return hours;
  const why = sayReasons(stretch.why, manner);
  if (stretch.remedy === undefined) return worded`${hours} ${why}; neither heating nor drying the air helps`;
  const worked = intersect(open, [{ start: Math.max(stretch.start, manner.now), end: stretch.end }])[0]?.start;
  const by = worked === undefined || worked <= manner.now ? undefined : sayClock(worked, manner);
  return `${hours} ${why}: ${sayRemedy(stretch.remedy, manner, by)}`;
}

interface Among {
  /** How many materials there are. */
  readonly of: number;
  readonly open: Spans;
  /** The group shown above. */
  readonly before: readonly FitOf[] | undefined;
}

const neverFit = (group: readonly FitOf[] | undefined) => group?.[0]?.stretches.every((s) => !s.fit) === true;

/** Hours fit for a group of materials, in a picture and in words; why the others are not, and what would help. */
function fitLines(
  group: readonly FitOf[],
  day: LocalDay,
  { of, open, before }: Among,
  manner: Manner,
  look: Look,
): string[] {
  const stretches = group[0]?.stretches ?? [];
  const isFit = (minute: number) => stretches.some((s) => s.fit && s.start <= minute && minute < s.end);
  const signsOfDay: boolean[] = [];
  for (let minute = day.start; minute < day.end; minute += stepMinutes) signsOfDay.push(isFit(minute));
  const fit = stretches.filter((s) => s.fit);
  const allDay = fit.some((s) => isAllOf(day, s));
  const hours =
    fit.length === 0 ? worded`not today` : allDay ? worded`all day` : fit.map((s) => sayClocks(s, manner)).join(', ');
  const whom = group.length === of ? '' : group.map((g) => g.material.name).join('; ');
  const paint = fit.length === 0 ? look.paint.bad : allDay ? look.paint.good : look.paint.warn;
  const hindrances = stretches.filter((s) => !s.fit);
  const saidAbove = neverFit(group) && neverFit(before);
  return [
    ...(saidAbove ? [] : line(worded`fit for coating`, yesNo(signsOfDay, look), hours, look, paint)),
    ...(whom === '' ? [] : paragraph(whom, look, pictureIndent(look))),
    ...hindrances.flatMap((s) =>
      paragraph(sayStretch(s, day, open, manner), look, pictureIndent(look), look.paint.quiet, pictureIndent(look) + 2),
    ),
  ];
}

/** A room's coming days as small pictures, an hour a sign. */
export function roomAirScreen(room: RoomAir, manner: Manner, look: Look): string {
  const { series, days, open } = room;
  const minding = room.materials.filter(minds);
  const rowsOf = days.map((day) => outlook(series, day.start, day.end, stepMinutes));
  const all = rowsOf.flat();
  const groupsOf = days.map((day) =>
    fitGroups(minding, series, day.start, day.end, (s) => sayStretch(s, day, open, manner)),
  );
  const heats = groupsOf.flat(2).some(({ stretches }) => stretches.some((s) => s.remedy?.heatToC !== undefined));
  const notes = series.notes.filter((n) => days.some((d) => n.from < d.end && n.to > d.start));
  const dayLines = days.flatMap((day, i) => {
    const near = sayDay(day.start, manner);
    const date = sayDate(day.start, manner);
    return [
      look.paint.strong(near === date ? date : `${date}, ${near}`),
      hourLine(day, manner, look),
      ...figureLines(rowsOf[i] ?? [], all, room, manner, look),
      ...(groupsOf[i] ?? []).flatMap((group, k, all) =>
        fitLines(group, day, { of: minding.length, open, before: all[k - 1] }, manner, look),
      ),
      '',
    ];
  });
  const now = airAt(series, manner.now);
  const head = worded`${room.name} · now ${sayTemp(now.tempC, manner)}, ${sayPercent(now.rhPercent)}`;
  return [
    ...paragraph(head, look, 0, look.paint.strong),
    ...notes.flatMap((n) => paragraph(worded`Careful: ${n.text}`, look, 2, look.paint.warn)),
    ...dayLines,
    ...paragraph(
      mechanismsOf(room.materials).length === 0
        ? worded`An hour a sign.`
        : worded`An hour a sign; drying speed 1 is that at ${sayTemp(standardAir.tempC, manner)} and ${standardAir.rhPercent} % humidity.`,
      look,
      0,
      look.paint.quiet,
    ),
    ...(heats ? paragraph(translated(heatingNote), look, 0, look.paint.quiet) : []),
    '',
  ].join('\n');
}
