import { readZone } from '../files/formats/shop.ts';
import type { NewHand, NewRoom, NewShop } from '../files/new-shop.ts';
import { readHoursOfDay } from '../files/quantities/clock.ts';
import { readPercent } from '../files/quantities/measure.ts';
import { readCurrency } from '../files/quantities/money.ts';
import { wholeReader } from '../files/quantities/plain.ts';
import { mapped, read, refuse, type Reader } from '../files/quantities/read.ts';
import { readTempC } from '../files/quantities/temperature.ts';
import { weekdays, type Units, type Weekday } from '../model/shop.ts';
import { CannotGoOn } from './call.ts';
import { freeId, idFromName } from './id-from-name.ts';
import { oneWordOf, someWords, type Asker } from './questions.ts';
import { isWord } from './answer-words.ts';
import { phrase, translated, worded } from '../words/worded.ts';

const mostPlaces = 99;
const americanZone =
  /^(?:America\/(?:New_York|Chicago|Denver|Los_Angeles|Phoenix|Anchorage|Detroit|Boise)|Pacific\/Honolulu|US\/)/;

/** Words with commas between them. */
const wordList: Reader<readonly string[]> = (text) => {
  const words = text.split(',').map((word) => word.trim());
  const wrong = words.map((word) => someWords(word)).find((r) => !r.ok);
  return wrong ?? read(words);
};

/** One value for each room, `;` between them. */
function eachRoom<T>(reader: Reader<T>, count: number): Reader<readonly T[]> {
  return (text) => {
    const reads = text.split(';').map((part) => reader(part.trim()));
    const wrong = reads.find((r) => !r.ok);
    if (wrong !== undefined) return wrong;
    if (reads.length !== count)
      return refuse(worded`is not for ${count} rooms`, worded`write one for each room, with ; between`);
    return read(reads.flatMap((r) => (r.ok ? [r.value] : [])));
  };
}

/** What stands between any of `words`. */
function splitAtWords(text: string, words: readonly string[]): string[] {
  const parts: string[][] = [[]];
  for (const word of text.trim().split(/\s+/)) {
    if (words.includes(word)) parts.push([]);
    else parts.at(-1)?.push(word);
  }
  return parts.map((part) => part.join(' '));
}

const rangeC: Reader<readonly [number, number]> = (text) => {
  const write = worded`write the coldest and the warmest like 15 to 20 °C`;
  const ends = text.split(/\.\.|–/).flatMap((part) => splitAtWords(part, ['to', worded`to`]));
  const [from = '', to = ''] = ends;
  if (ends.length !== 2) return refuse(worded`is not two temperatures`, write);
  const unit = /[°CFcf].*$/.exec(to)?.[0] ?? '';
  const [cold, warm] = [readTempC(/[CFcf]/.test(from) ? from : `${from.trim()} ${unit}`), readTempC(to.trim())];
  if (!cold.ok) return cold;
  if (!warm.ok) return warm;
  return cold.value <= warm.value ? read([cold.value, warm.value]) : refuse(worded`has the warmest first`, write);
};

const fourPlaces: Reader<NewRoom['places']> = (text) => {
  const numbers = text.split(',').map((word) => wholeReader(0, mostPlaces)(word.trim()));
  const wrong = numbers.find((n) => !n.ok);
  if (wrong !== undefined) return wrong;
  const [bench = 0, floor = 0, rack = 0, spray = 0] = numbers.flatMap((n) => (n.ok ? [n.value] : []));
  return numbers.length === 4
    ? read({ bench, floor, rack, spray })
    : refuse(worded`is not four numbers`, worded`write benches, floor, rack, to spray in, like 2, 4, 6, 2`);
};

const share: Reader<number> = (text) => readPercent(/^[\d.]+$/.test(text) ? `${text} %` : text);

/** What Enter means. Common practice, no source: put in what the meter says. */
function usualAir(heated: boolean, units: Units): { readonly temps: string; readonly rh: string } {
  const rh = heated ? '50 %' : '75 %';
  const [low, high] = units === 'us' ? (heated ? [60, 68] : [40, 50]) : heated ? [15, 20] : [5, 10];
  return { temps: `${low} ${worded`to`} ${high} ${units === 'us' ? '°F' : '°C'}`, rh };
}

/** One question a room at a terminal; one option for all of them. */
async function knowEach<T>(
  asker: Asker,
  flag: string,
  rooms: readonly { readonly name: string; readonly usual: string }[],
  ask: string,
  reader: Reader<T>,
): Promise<readonly T[]> {
  if (!asker.asks || asker.isSaid(flag))
    return asker.know({
      flag,
      ask,
      usual: rooms.map((r) => r.usual).join('; '),
      read: eachRoom(reader, rooms.length),
    });
  const values: T[] = [];
  for (const { name, usual } of rooms) values.push(await asker.know({ ask: `${name}: ${ask}`, usual, read: reader }));
  return values;
}

/** `Workshop heated`, `Garage`, `Attic not heated`: in English or the language that is spoken. */
function namedRoom(words: string): { readonly name: string; readonly heated: boolean } {
  const inBoth = (word: string, heated: boolean) => [word, translated(word)].map((said) => [said, heated] as const);
  const endings: readonly (readonly [string, boolean])[] = [
    ...inBoth(phrase('not heated'), false),
    ['unheated', false],
    ...inBoth(phrase('heated'), true),
  ];
  const lower = words.toLowerCase();
  const [ending, heated] = endings.find(([said]) => lower.endsWith(` ${said}`)) ?? ['', false];
  return { name: words.slice(0, words.length - ending.length).trim(), heated };
}

async function knowRooms(asker: Asker, units: Units): Promise<NewRoom[]> {
  const written = await asker.know({
    flag: 'rooms',
    ask: worded`Rooms, with commas; write heated behind a heated one`,
    usual: worded`Workshop heated`,
    read: wordList,
  });
  const ids: string[] = [];
  const named = written.map((words, i) => {
    const { name, heated } = namedRoom(words);
    const id = freeId(idFromName(name, 'room'), ids);
    ids.push(id);
    const air = usualAir(heated, units);
    return { id, name, heated, air, places: i === 0 ? '2, 4, 6, 2' : '0, 3, 0, 0' };
  });
  const of = (usual: (room: (typeof named)[number]) => string) => named.map((r) => ({ name: r.name, usual: usual(r) }));
  const temps = await knowEach(
    asker,
    'air',
    of((r) => r.air.temps),
    worded`coldest and warmest hour of these days`,
    rangeC,
  );
  const damp = await knowEach(
    asker,
    'humidity',
    of((r) => r.air.rh),
    worded`humidity at its warmest hour`,
    share,
  );
  const places = await knowEach(
    asker,
    'places',
    of((r) => r.places),
    worded`benches, floor, rack, to spray in`,
    fourPlaces,
  );
  const none = { bench: 0, floor: 0, rack: 0, spray: 0 };
  const rooms = named.map(({ id, name, heated }, i): NewRoom => {
    const [coldC, warmC] = temps[i] ?? [0, 0];
    return { id, name, heated, coldC, warmC, warmRhPercent: Math.round(damp[i] ?? 0), places: places[i] ?? none };
  });
  if (rooms.every(({ places: p }) => p.bench + p.floor + p.rack + p.spray === 0))
    throw new CannotGoOn(worded`there is no place to work at: nothing was written`, worded`give one bench at least`);
  return rooms;
}

async function knowOpening(asker: Asker): Promise<NewShop['opening']> {
  const hours: Reader<string> = (text) =>
    isWord(text, phrase('closed')) ? read('closed') : mapped(readHoursOfDay, () => text.trim())(text);
  const ask = (flag: string, days: string, usual: string) =>
    asker.know({ flag, ask: worded`Open ${days}, or closed`, usual, read: hours });
  const week = await ask('hours', worded`Monday to Friday`, '08:00-12:30, 13:15-17:30');
  const saturday = await ask('saturday', worded`on Saturday`, worded`closed`);
  const sunday = await ask('sunday', worded`on Sunday`, worded`closed`);
  if ([week, saturday, sunday].every((h) => h === 'closed'))
    throw new CannotGoOn(worded`the shop is never open: nothing was written`, worded`give hours for one day at least`);
  const special: Partial<Record<Weekday, string>> = { saturday, sunday };
  return Object.fromEntries(weekdays.map((day) => [day, special[day] ?? week])) as Record<Weekday, string>;
}

async function knowHands(asker: Asker): Promise<NewHand[]> {
  const names = await asker.know({
    flag: 'hands',
    ask: worded`Who works there, with commas`,
    usual: worded`Owner`,
    read: wordList,
  });
  const lower = names.map((n) => n.toLowerCase());
  const sprayers = await asker.know({
    flag: 'who-sprays',
    ask: worded`Who of them sprays, with commas; or nobody`,
    usual: names[0] ?? worded`nobody`,
    read: (text) => {
      if (isWord(text, phrase('nobody')) || isWord(text, phrase('none'))) return read([]);
      const words = text.split(',').map((word) => word.trim().toLowerCase());
      const unknown = words.find((word) => !lower.includes(word));
      return unknown === undefined
        ? read(words)
        : refuse(worded`names "${unknown}", who is not there`, worded`write ${names.join(', ')}`);
    },
  });
  const ids: string[] = [];
  return names.map((name): NewHand => {
    const id = freeId(idFromName(name, 'hand'), ids);
    ids.push(id);
    return { id, name, sprays: sprayers.includes(name.toLowerCase()) };
  });
}

/** All that a shop begins with. */
export async function knowShop(asker: Asker): Promise<NewShop> {
  const name = await asker.know({
    flag: 'name',
    ask: worded`What is the shop called`,
    usual: worded`Workshop`,
    read: someWords,
  });
  const timeZone = await asker.know({
    flag: 'zone',
    ask: worded`Time zone, like Europe/Dublin`,
    usual: Intl.DateTimeFormat().resolvedOptions().timeZone,
    read: readZone,
  });
  const american = americanZone.test(timeZone);
  const units = await asker.know({
    flag: 'units',
    ask: worded`Units, metric or us`,
    usual: american ? 'us' : 'metric',
    read: oneWordOf<Units>(['metric', 'us']),
  });
  const currency = await asker.know({
    flag: 'currency',
    ask: worded`Currency, like EUR or USD`,
    usual: american ? 'USD' : 'EUR',
    read: (text) => readCurrency(text.toUpperCase()),
  });
  const clock = await asker.know({
    flag: 'clock',
    ask: worded`Clock, 12 or 24 hours`,
    usual: units === 'us' ? '12' : '24',
    read: (text) =>
      text === '12' || text === '24'
        ? read<'12' | '24'>(text)
        : refuse(worded`is not 12 or 24`, worded`write 12 or 24`),
  });
  const weekStartsOn = await asker.know({
    flag: 'week-starts-on',
    ask: worded`The week starts on, monday or sunday`,
    usual: units === 'us' ? worded`sunday` : worded`monday`,
    read: oneWordOf<'monday' | 'sunday'>(['monday', 'sunday']),
  });
  const opening = await knowOpening(asker);
  const rooms = await knowRooms(asker, units);
  const hands = await knowHands(asker);
  const count = (flag: string, ask: string, usual: number, least = 0) =>
    asker.know({ flag, ask, usual: String(usual), read: wholeReader(least, mostPlaces) });
  const tools = {
    sprayer: await count('sprayers', worded`How many sprayers`, hands.some((h) => h.sprays) ? 1 : 0),
    sander: await count('sanders', worded`How many sanders with extraction (0: by hand)`, 1),
    clamps: await count('clamps', worded`How many sets of clamps`, 2, 1),
  };
  return { name, timeZone, units, clock, weekStartsOn, currency, opening, rooms, hands, tools };
}
