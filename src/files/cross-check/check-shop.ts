import { weekdays, type Shop } from '../../model/shop.ts';
import { adviseWord } from '../suggest.ts';
import type { Path } from '../yaml/tree.ts';
import type { Complaint } from './complaint.ts';

function complain(code: string, path: Path, message: string, advice: string): Complaint {
  return { code, severity: 'error', file: 'shop.yaml', path, message, advice };
}

/** What does not fit together within shop.yaml. */
export function checkShop(shop: Shop, materialIds: readonly string[]): Complaint[] {
  const rooms = shop.rooms.map((r) => r.id);
  const days = weekdays.flatMap((day) => shop.opening.week[day]);
  return [
    ...shop.stations
      .filter((s) => !rooms.includes(s.room))
      .map((s) =>
        complain('unknown-room', ['stations', s.id, 'room'], `there is no room ${s.room}`, adviseWord(s.room, rooms)),
      ),
    ...Object.keys(shop.stock ?? {})
      .filter((id) => !materialIds.includes(id))
      .map((id) =>
        complain('unknown-material', ['stock', id], `there is no material ${id}`, adviseWord(id, materialIds)),
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
