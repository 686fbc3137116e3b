import type { ClockSpan } from '../model/shop.ts';
import type { Change } from '../planning/change.ts';
import { minuteAt } from '../time/zone.ts';
import { joinedByAnd, worded } from '../words/worded.ts';
import type { Names } from './names.ts';
import { sayPercent, sayTempDifference } from './say-quantity.ts';
import { type Manner, sayClocks, sayDate, sayMoment } from './say-time.ts';

/** `Sat 23 Jan, 09:00–17:00` */
function sayHours(date: string, spans: readonly ClockSpan[], manner: Manner): string {
  const at = (minutes: number) => minuteAt(date, minutes, manner.zone);
  const hours = spans.map((s) => sayClocks({ start: at(s.from), end: at(s.to) }, manner)).join(', ');
  return `${sayDate(at(0), manner)}, ${hours}`;
}

function sayDuring(change: Change & { kind: 'warmer' | 'drier' }, manner: Manner): string {
  const { during } = change;
  return during === undefined
    ? ''
    : worded` from ${sayMoment(during.start, manner)} to ${sayMoment(during.end, manner)}`;
}

/** What to do for one change, as a clause: `be open Sat 23 Jan, 09:00–17:00`. */
function sayOne(change: Change, names: Names, manner: Manner): string {
  switch (change.kind) {
    case 'open':
      return worded`be open ${sayHours(change.date, change.spans, manner)}`;
    case 'in':
      return worded`have ${names.hand(change.hand)} in ${sayHours(change.date, change.spans, manner)} too`;
    case 'helper': {
      const skills = change.skills === undefined ? '' : worded` who can ${joinedByAnd(change.skills)}`;
      return worded`have another pair of hands${skills} in ${sayHours(change.date, change.spans, manner)}`;
    }
    case 'warmer':
      return worded`warm ${names.room(change.room)} by ${sayTempDifference(change.byK, manner, 0)}${sayDuring(change, manner)}`;
    case 'drier':
      return worded`dry the air of ${names.room(change.room)} to ${sayPercent(change.toRhPercent)}${sayDuring(change, manner)}`;
    case 'tool':
      return worded`have ${change.more} more of ${names.tool(change.tool)}`;
    case 'slot':
      return worded`have room for ${change.more} more at ${names.station(change.station)}`;
    case 'station':
      return worded`have a place for it in ${names.room(change.room)}`;
    case 'arrives':
      return worded`have ${names.piece(change.piece)} here by ${sayMoment(change.at, manner)}`;
    case 'back':
      return change.at > change.left
        ? worded`have ${names.piece(change.piece)} back by ${sayMoment(change.at, manner)}`
        : worded`not let ${names.piece(change.piece)} leave ${sayMoment(change.left, manner)}`;
    case 'room':
      return worded`have ${names.room(change.room)} from ${sayMoment(change.during.start, manner)} to ${sayMoment(change.during.end, manner)} too`;
    case 'not-put-off':
      return worded`no longer put it off`;
    case 'skip':
      return worded`leave a step out (drybench skip ${change.task.replace('/', ' ')})`;
    case 'without':
      return worded`plan without ${names.piece(change.piece)} for now`;
    case 'instead':
    case 'material':
      throw new Error(`no other ${change.kind} is looked for`);
  }
}

/** A change as a heading, short: `Garage 4 K warmer`. */
export function nameChange(change: Change, names: Names, manner: Manner): string {
  const inSection = (of: { readonly piece: string; readonly section: string }) =>
    `${names.piece(of.piece)}, ${names.section(of.piece, of.section)}`;
  switch (change.kind) {
    case 'warmer':
      return worded`${names.room(change.room)} ${sayTempDifference(change.byK, manner, 0)} warmer`;
    case 'drier':
      return worded`${names.room(change.room)} dried to ${sayPercent(change.toRhPercent)}`;
    case 'slot':
      return worded`${signed(change.more)} at ${names.station(change.station)}`;
    case 'station':
      return worded`new place for ${change.slots} in ${names.room(change.room)}`;
    case 'open':
      return worded`open ${sayHours(change.date, change.spans, manner)}`;
    case 'helper':
      return worded`helper ${sayHours(change.date, change.spans, manner)}`;
    case 'instead':
      return `${inSection(change)}: ${names.recipe(change.recipe)}`;
    case 'material':
      return `${inSection(change)}: ${names.material(change.now)}`;
    case 'without':
      return worded`without ${names.piece(change.piece)}`;
    case 'in':
    case 'tool':
    case 'arrives':
    case 'back':
    case 'room':
    case 'not-put-off':
    case 'skip':
      return sayOne(change, names, manner);
  }
}

const signed = (n: number) => (n > 0 ? `+${n}` : `−${-n}`);

/** What to do, all of it together. */
export function sayChanges(changes: readonly Change[], names: Names, manner: Manner): string {
  return joinedByAnd(changes.map((change) => sayOne(change, names, manner)));
}
