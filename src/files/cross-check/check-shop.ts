import type { Material } from '../../model/material.ts';
import type { Quantity, QuantityUnit } from '../../model/quantity.ts';
import { boughtIn, type Supply } from '../../model/supply.ts';
import { weekdays, type Shop } from '../../model/shop.ts';
import { adviseWord } from '../suggest.ts';
import type { Path } from '../yaml/tree.ts';
import type { Complaint } from './complaint.ts';

const unitSaid: Readonly<Record<QuantityUnit, string>> = { L: 'litres', m: 'metres', pieces: 'pieces' };
const unitExample: Readonly<Record<QuantityUnit, string>> = {
  L: 'a volume like 2.5 L',
  m: 'a length like 50 m',
  pieces: 'a number without a unit',
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
      return [complain('unknown-material', path, `there is no material or supply ${id}`, guess)];
    }
    if (known === unit) return [];
    return [complain('wrong-unit', path, `${id} is counted in ${unitSaid[known]}`, `write ${unitExample[known]}`)];
  };
  const rooms = shop.rooms.map((r) => r.id);
  const hands = shop.hands.map((h) => h.id);
  const days = weekdays.flatMap((day) => shop.opening.week[day]);
  return [
    ...shop.stations
      .filter((s) => !rooms.includes(s.room))
      .map((s) =>
        complain('unknown-room', ['stations', s.id, 'room'], `there is no room ${s.room}`, adviseWord(s.room, rooms)),
      ),
    ...(shop.appointments ?? []).flatMap((appointment, i) =>
      appointment.hands
        .filter((id) => !hands.includes(id))
        .map((id) =>
          complain('unknown-hand', ['appointments', i, 'hands'], `there is no hand ${id}`, adviseWord(id, hands)),
        ),
    ),
    ...Object.entries(shop.stock ?? {}).flatMap(([id, amount]) => keeps(id, amount, ['stock', id])),
    ...Object.entries(shop.prices ?? {}).flatMap(([id, prices]) =>
      prices.flatMap((price, i) => keeps(id, price.holds, ['prices', id, ...(prices.length > 1 ? [i] : [])])),
    ),
    ...(shop.hands.length === 0
      ? [complain('no-hands', ['hands'], 'nobody works here', 'name one hand at least')]
      : []),
    ...(shop.stations.length === 0
      ? [complain('no-stations', ['stations'], 'there is no place to work at', 'name one station at least')]
      : []),
    ...(days.length === 0 && Object.values(shop.opening.days).every((d) => d.length === 0)
      ? [complain('never-open', ['opening'], 'the shop is never open', 'write hours for one day at least')]
      : []),
  ];
}
