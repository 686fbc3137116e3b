import { rhAfterHeating } from '../air/psychrometrics.ts';
import { weekdays, type Units, type Weekday } from '../model/shop.ts';
import { schemaLine } from './schema-files.ts';
import { commentedYaml, type CommentedLine } from './yaml/commented.ts';
import type { Plain } from './yaml/tree.ts';
import { phrase, spokenCode, translated, worded } from '../words/worded.ts';

/** A room as `setup` was told of it. */
export interface NewRoom {
  readonly id: string;
  readonly name: string;
  readonly heated: boolean;
  /** Of the coldest hour of a day and the warmest; and the humidity then, percent. */
  readonly coldC: number;
  readonly warmC: number;
  readonly warmRhPercent: number;
  readonly places: Readonly<Record<'bench' | 'floor' | 'rack' | 'spray', number>>;
}

export interface NewHand {
  readonly id: string;
  readonly name: string;
  readonly sprays: boolean;
}

/** All that `setup` was told. Hours as they are written. */
export interface NewShop {
  readonly name: string;
  readonly timeZone: string;
  readonly units: Units;
  readonly clock: '12' | '24';
  readonly weekStartsOn: 'monday' | 'sunday';
  readonly currency: string;
  readonly opening: Readonly<Record<Weekday, string>>;
  readonly rooms: readonly NewRoom[];
  readonly hands: readonly NewHand[];
  readonly tools: Readonly<Record<'sprayer' | 'sander' | 'clamps', number>>;
}

// The coldest hour of a room is before sunrise, the warmest after noon: common practice, no source.
const COLDEST = '06:00';
const WARMEST = '15:00';
/** What is wetter condenses on the walls and stays no longer in the air. */
const MOST_RH = 95;

function sayTemp(tempC: number, units: Units): string {
  return units === 'us' ? `${Math.round((tempC * 9) / 5 + 32)} °F` : `${Math.round(tempC * 10) / 10} °C`;
}

function airOf({ coldC, warmC, warmRhPercent }: NewRoom, units: Units): Plain {
  const cold = Math.round(Math.min(MOST_RH, rhAfterHeating(warmC, warmRhPercent, coldC)));
  const point = (tempC: number, rh: number) => ({ temp: sayTemp(tempC, units), rh: `${rh} %` });
  return { daily: { [COLDEST]: point(coldC, cold), [WARMEST]: point(warmC, warmRhPercent) } };
}

function roomLines(room: NewRoom, units: Units): CommentedLine[] {
  return [
    { indent: 2, key: room.id },
    { indent: 4, key: 'name', value: room.name, why: room.heated ? worded`heated` : worded`not heated` },
    worded`    Two points of a day. The humidity of the cold one is reckoned: the same water in colder air.`,
    worded`    Better is what a logger wrote: \`air: air/NAME.csv\`, with columns time, temperature and humidity.`,
    { indent: 4, key: 'air', value: airOf(room, units) },
  ];
}

const placeNames = {
  bench: phrase('bench'),
  floor: phrase('floor'),
  rack: phrase('drying rack'),
  spray: phrase('spray corner'),
} as const;

function stationLines(rooms: readonly NewRoom[]): CommentedLine[] {
  return rooms.flatMap((room) =>
    (['bench', 'floor', 'rack', 'spray'] as const).flatMap((kind): CommentedLine[] => {
      const slots = room.places[kind];
      if (slots === 0) return [];
      const name = `${room.name} ${translated(placeNames[kind])}`;
      const value = { name, room: room.id, kind, slots: String(slots) };
      return [{ indent: 2, key: `${room.id.slice(0, 30)}-${kind}`, value }];
    }),
  );
}

function toolLines({ sprayer, sander, clamps }: NewShop['tools']): CommentedLine[] {
  const tool = (key: string, value: Plain, why: string): CommentedLine => ({ indent: 2, key, value, why });
  return [
    ...(sprayer === 0
      ? []
      : [
          tool(
            'sprayer',
            { count: String(sprayer), 'set-up': '10 min', 'wash-up': '15 min' },
            worded`for all it sprays in one go`,
          ),
        ]),
    sander === 0
      ? tool(
          'sander',
          { name: worded`Sanding block`, count: '1' },
          worded`the recipes' minutes are for a machine: by hand it takes longer`,
        )
      : tool('sander', { count: String(sander) }, worded`with extraction`),
    tool(
      'clamps',
      { name: worded`Set of clamps`, count: String(Math.max(1, clamps)) },
      worded`in use until the glue has set`,
    ),
  ];
}

function handLines(hands: readonly NewHand[]): CommentedLine[] {
  return hands.flatMap((hand) => [
    { indent: 2, key: hand.id },
    { indent: 4, key: 'name', value: hand.name },
    { indent: 4, key: 'skills', value: hand.sprays ? ['spray', 'lift'] : ['lift'], why: worded`what only some can do` },
  ]);
}

/** The text of shop.yaml for a new shop; each line says what it is for. */
export function shopFileText(shop: NewShop): string {
  const key = (name: string, value: Plain, why: string): CommentedLine => ({ indent: 0, key: name, value, why });
  const title = (name: string, why: string): CommentedLine => ({ indent: 0, key: name, why });
  return `${schemaLine('shop', 0)}\n${commentedYaml([
    worded`Your shop. Change what you like; \`drybench check\` says whether it is still right.`,
    '',
    key('name', shop.name, worded`as the bench sheet calls it`),
    key('time-zone', shop.timeZone, worded`whose wall clock all times here are of`),
    ...(spokenCode() === 'en' ? [] : [key('language', spokenCode(), worded`en or es, for what is shown`)]),
    key('units', shop.units, worded`metric or us, for what is shown`),
    key('clock', shop.clock, worded`12 or 24 hours`),
    key('week-starts-on', shop.weekStartsOn, worded`monday or sunday`),
    key('currency', shop.currency, worded`code of ISO 4217`),
    key('safe-chance', '90 %', worded`a safe date is one that holds with this chance`),
    '',
    title('opening', worded`work is planned inside these hours only`),
    ...weekdays.map((day): CommentedLine => ({ indent: 2, key: day, value: shop.opening[day] })),
    worded`  A single day goes by its date, like  2027-12-24: closed`,
    '',
    title('rooms', worded`each has its own air, dust and paint mist`),
    ...shop.rooms.flatMap((room) => roomLines(room, shop.units)),
    '',
    title('stations', worded`places to work and dry at; slots: how many pieces at a time`),
    ...stationLines(shop.rooms),
    '',
    title('tools', worded`the names that the recipes use`),
    ...toolLines(shop.tools),
    '',
    title('hands', worded`who works here; \`hours:\` as above for who is not always there`),
    ...handLines(shop.hands),
    '',
    worded`What is on the shelf, for shopping lists, like`,
    worded`stock: { water-borne-acrylic-enamel: 2.5 L }`,
  ])}`;
}
