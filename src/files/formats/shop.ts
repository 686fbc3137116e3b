import {
  stationKinds,
  type AirSource,
  type Hand,
  type Room,
  type Shop,
  type Station,
  type Tool,
} from '../../model/shop.ts';
import { isZone } from '../../time/zone.ts';
import { languageCodes } from '../../words/languages.ts';
import { readCurrency } from '../quantities/money.ts';
import { readId } from '../quantities/plain.ts';
import { read, refuse, type Read } from '../quantities/read.ts';
import { listOf, namedBy, oneOrMany } from '../shapes/collections.ts';
import { may, must, record } from '../shapes/record.ts';
import type { ValueOf } from '../shapes/shape.ts';
import { choice, quantity, written } from '../shapes/text.ts';
import { nearest } from '../suggest.ts';
import { present } from '../present.ts';
import { air, type WrittenAir } from './air.ts';
import { appointment, appointmentOf, stretches } from './dated.ts';
import { hoursByDay } from './hours.ts';
import { amount, containerPrice, id, instant, minutes, money, name, percent, roomM3, whole } from './values.ts';
import { translated, worded } from '../../words/worded.ts';

/** IANA name of a zone. */
export function readZone(text: string): Read<string> {
  if (text.length <= 64 && isZone(text)) return read(text);
  const zones = Intl.supportedValuesOf('timeZone');
  const city = zones.find((zone) => zone.toLowerCase().endsWith(`/${text.toLowerCase().replaceAll(' ', '_')}`));
  const guess = city ?? nearest(text, zones);
  return refuse(
    worded`is no time zone`,
    guess === undefined ? worded`write one like Europe/Dublin` : worded`did you mean ${guess}?`,
  );
}

const room = record('a room', {
  name: may(name, 'name'),
  volume: may(roomM3, 'volume, like 90 m3'),
  air: must(air, 'where its air is known from'),
  open: may(hoursByDay, 'hours in which it can be had, as of a room hired for a day; always if left out'),
});

const station = record('a station', {
  name: may(name, 'name'),
  room: must(id, 'id of its room'),
  kind: must(choice('a kind of station', stationKinds), `one of ${stationKinds.join(', ')}`),
  slots: may(whole(1, 1000), 'pieces that it holds at a time; 1 if left out'),
});

const tool = record('a tool', {
  name: may(name, 'name'),
  count: may(whole(1, 1000), 'how many there are; 1 if left out'),
  'set-up': may(minutes, 'before its first use of a session'),
  'wash-up': may(minutes, 'after its last use of a session'),
});

const hand = record('a hand', {
  name: may(name, 'name'),
  skills: may(oneOrMany(id, 'skills'), 'what only some can do: spray, lift'),
  pay: may(money, 'what an hour of it costs the shop; left out for who owns the shop'),
  hours: may(hoursByDay, "own hours; the shop's opening hours if left out"),
  off: may(stretches, 'days off: dates, or from when to when'),
});

const clock = written<12 | 24>({
  wanted: '12 or 24',
  code: 'unknown-12-or-24',
  jsonSchema: { type: ['number', 'string'], examples: ['24', '12'] },
  read: (text) =>
    text === '12' ? read(12) : text === '24' ? read(24) : refuse(worded`is not 12 or 24`, worded`write 12 or 24`),
});

export const shopShape = record('shop.yaml', {
  name: must(name, 'the name of the shop'),
  'time-zone': must(quantity('a time zone', 'unknown-time-zone', readZone, 'Europe/Dublin'), 'IANA name of the zone'),
  language: may(choice('a language', languageCodes), 'en or es, for what is shown; en if left out'),
  units: may(choice('a system of units', ['metric', 'us']), 'metric or us, for what is shown'),
  clock: may(clock, '24 or 12, for what is shown'),
  'week-starts-on': may(choice('a first day', ['monday', 'sunday']), 'monday or sunday'),
  currency: must(quantity('a currency', 'unknown-currency', readCurrency, 'EUR'), 'code of ISO 4217'),
  'safe-chance': may(percent, 'chance that a safe date is to hold with; 90 % if left out'),
  'overhead-per-day': may(money, 'what the shop costs a day'),
  'selling-fee': may(percent, 'share of the price that selling costs'),
  opening: must(hoursByDay, 'opening hours by day'),
  rooms: must(namedBy(readId, room, 'rooms'), 'rooms by id'),
  stations: must(namedBy(readId, station, 'stations'), 'stations by id'),
  tools: may(namedBy(readId, tool, 'tools'), 'tools by id'),
  hands: must(namedBy(readId, hand, 'hands'), 'hands by id'),
  appointments: may(listOf(appointment, 'appointments'), 'what is fixed with others: pick-ups, deliveries'),
  stock: may(namedBy(readId, amount, 'materials and supplies'), 'on the shelf: litres, metres or pieces'),
  'stock-counted': may(instant('first'), 'day or time of that count; a day means before its work'),
  prices: may(
    namedBy(readId, oneOrMany(containerPrice, 'prices'), 'materials and supplies'),
    'what containers cost, like 38 EUR for 1 L; the first is what a piece is reckoned with',
  ),
  waste: may(percent, 'share of a material that is lost in cans, cups and brushes; 10 % if left out'),
});

type WrittenShop = ValueOf<typeof shopShape>;

/** `front-door` as `Front door`. */
export function nameFromId(id: string): string {
  const words = id.replaceAll('-', ' ');
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** A safe date holds with this chance where the shop names none: the usual nine in ten. */
const USUAL_SAFE_PERCENT = 90;

/** The model's shop. `airOf` reads the records that a room's air names. */
export function shopOf(doc: WrittenShop, airOf: (written: WrittenAir) => AirSource): Shop {
  return present({
    name: doc.name,
    timeZone: doc['time-zone'],
    units: doc.units ?? 'metric',
    clock: doc.clock ?? 24,
    weekStartsOn: doc['week-starts-on'] ?? 'monday',
    currency: doc.currency,
    opening: doc.opening,
    rooms: doc.rooms.map(({ key, value }): Room =>
      present({
        id: key,
        name: value.name ?? nameFromId(key),
        air: airOf(value.air),
        volumeM3: value.volume,
        open: value.open,
      }),
    ),
    stations: doc.stations.map(({ key, value }): Station => ({
      id: key,
      name: value.name ?? nameFromId(key),
      room: value.room,
      kind: value.kind,
      slots: value.slots ?? 1,
    })),
    tools: (doc.tools ?? []).map(({ key, value }): Tool => ({
      id: key,
      name: value.name ?? translated(nameFromId(key)),
      count: value.count ?? 1,
      setUpMinutes: value['set-up'] ?? 0,
      washUpMinutes: value['wash-up'] ?? 0,
    })),
    hands: doc.hands.map(({ key, value }): Hand =>
      present({
        id: key,
        name: value.name ?? nameFromId(key),
        skills: value.skills ?? [],
        hours: value.hours ?? doc.opening,
        off: value.off,
        payMinorPerHour: value.pay,
      }),
    ),
    appointments: doc.appointments?.map((a) =>
      appointmentOf(
        a,
        doc.hands.map(({ key }) => key),
      ),
    ),
    overheadMinorPerDay: doc['overhead-per-day'],
    sellingFeePercent: doc['selling-fee'],
    stock: doc.stock && Object.fromEntries(doc.stock.map(({ key, value }) => [key, value])),
    stockCounted: doc['stock-counted'],
    prices: doc.prices && Object.fromEntries(doc.prices.map(({ key, value }) => [key, value])),
    wastePercent: doc.waste,
    safeChance: (doc['safe-chance'] ?? USUAL_SAFE_PERCENT) / 100,
  });
}
