import type { Bonds, Wait } from '../waits.ts';

/** Names by which equal waits are found, so that what follows from them is laid out once. */
export interface Naming {
  /** A number of its own for each object. */
  number(object: object): number;
  wait(wait: Wait): string;
}

/** Numbers objects as they come. */
export function namingOf(): Naming {
  const numbers = new Map<object, number>();
  const number = (object: object): number => {
    const found = numbers.get(object) ?? numbers.size;
    numbers.set(object, found);
    return found;
  };
  const list = (objects: readonly object[]): string => objects.map(number).join(',');
  const bonds = ({ lags, shut, holds }: Bonds): string => {
    const lagged = lags.map(({ fromEnd, least, most }) =>
      [
        fromEnd ? 'e' : 's',
        least === undefined ? '' : number(least),
        most === undefined || !shut ? '' : number(most),
      ].join(','),
    );
    return [...lagged, `h${list(holds)}`].join(';');
  };
  const wait = ({ slots, always, either, beyond }: Wait): string => {
    const ways = either.map((through) =>
      through
        .map((way) => [number(way.slots), bonds(way.direct), bonds(way.into), bonds(way.onward)].join('>'))
        .join('/'),
    );
    const further = beyond === undefined ? '' : `${list(beyond.slots)}>${bonds(beyond.bonds)}`;
    return [list(slots), bonds(always), ...ways, further].join('|');
  };
  return { number, wait };
}
