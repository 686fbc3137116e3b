import type { Material } from '../../model/material.ts';
import type { Quantity, QuantityUnit } from '../../model/quantity.ts';
import { boughtIn, type Supply } from '../../model/supply.ts';
import { weekdays, type Shop } from '../../model/shop.ts';
import { adviseWord } from '../suggest.ts';
import type { Path } from '../yaml/tree.ts';
import type { Complaint } from './complaint.ts';
import { phrase, translated, worded } from '../../words/worded.ts';

const unitSaid: Readonly<Record<QuantityUnit, string>> = {
  L: phrase('litres'),
  m: phrase('metres'),
  pieces: phrase('pieces'),
};
const unitExample: Readonly<Record<QuantityUnit, string>> = {
  L: phrase('a volume like 2.5 L'),
  m: phrase('a length like 50 m'),
  pieces: phrase('a number without a unit'),
};

function complain(code: string, path: Path, message: string, advice: string): Complaint {
  return { code, severity: 'error', file: 'shop.yaml', path, message, advice };
}

/** What does not fit together within shop.yaml. */
export function checkShop(
  shop: Shop,
  materialIds: readonly string[],
  materials: ReadonlyMap<string, Material>,
  supplies: ReadonlyMap<string, Supply> = new Map(),
): Complaint[] {
  const keeps = (id: string, { unit }: Quantity, path: Path): Complaint[] => {
    const known = boughtIn({ materials, supplies }, id);
    if (known === undefined) {
      // A material that is there and could not be read is told of in its own file.
      if (materialIds.includes(id)) return [];
      const guess = adviseWord(id, [...materialIds, ...supplies.keys()]);
      return [complain('unknown-material', path, worded`there is no material or supply ${id}`, guess)];
    }
    if (known === unit) return [];
    return [
      complain(
        'wrong-unit',
        path,
        worded`${id} is counted in ${translated(unitSaid[known])}`,
        worded`write ${translated(unitExample[known])}`,
      ),
    ];
  };
  const rooms = shop.rooms.map((r) => r.id);
  const hands = shop.hands.map((h) => h.id);
  const days = weekdays.flatMap((day) => shop.opening.week[day]);
  return [
    ...shop.stations
      .filter((s) => !rooms.includes(s.room))
      .map((s) =>
        complain(
          'unknown-room',
          ['stations', s.id, 'room'],
          worded`there is no room ${s.room}`,
          adviseWord(s.room, rooms),
        ),
      ),
    ...(shop.appointments ?? []).flatMap((appointment, i) =>
      appointment.hands
        .filter((id) => !hands.includes(id))
        .map((id) =>
          complain('unknown-hand', ['appointments', i, 'hands'], worded`there is no hand ${id}`, adviseWord(id, hands)),
        ),
    ),
    ...Object.entries(shop.stock ?? {}).flatMap(([id, amount]) => keeps(id, amount, ['stock', id])),
    ...Object.entries(shop.prices ?? {}).flatMap(([id, prices]) =>
      prices.flatMap((price, i) => keeps(id, price.holds, ['prices', id, ...(prices.length > 1 ? [i] : [])])),
    ),
    ...(shop.hands.length === 0
      ? [complain('no-hands', ['hands'], worded`nobody works here`, worded`name one hand at least`)]
      : []),
    ...(shop.stations.length === 0
      ? [complain('no-stations', ['stations'], worded`there is no place to work at`, worded`name one station at least`)]
      : []),
    ...(days.length === 0 && Object.values(shop.opening.days).every((d) => d.length === 0)
      ? [complain('never-open', ['opening'], worded`the shop is never open`, worded`write hours for one day at least`)]
      : []),
  ];
}
