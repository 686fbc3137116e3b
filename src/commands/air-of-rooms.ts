import { shopAir } from '../air/shop-air.ts';
import { airDocument } from '../reports/air-document.ts';
import { roomAirScreen, type RoomAir } from '../reports/room-air.ts';
import { harmless } from '../terminal/harmless.ts';
import { localDay } from '../time/zone.ts';
import { answerLook, print, printJson, wantsJson } from './answers.ts';
import { numberFlag, type Call, type ExitCode } from './call.ts';
import { openShop } from './open-shop.ts';

const DAY = 1440;

/** The air of each room of the shop through the coming days. */
export async function answerRooms(call: Call): Promise<ExitCode> {
  const count = numberFlag(call, 'days', 2, 1, 14);
  const { book, manner } = await openShop(call);
  const days = Array.from({ length: count }, (_, plus) => localDay(manner.now, manner.zone, plus));
  // A day before, for the work has followed the air; two days after, for some coats mind how cold it gets by then.
  const air = shopAir(book.shop, (days[0]?.start ?? manner.now) - DAY, (days.at(-1)?.end ?? manner.now) + 2 * DAY);
  const materials = [...book.materials.values()].map((m) => ({ ...m, name: harmless(m.name) }));
  const rooms = book.shop.rooms.flatMap((room): (RoomAir & { readonly id: string })[] => {
    const series = air.get(room.id);
    return series === undefined ? [] : [{ id: room.id, name: harmless(room.name), series, days, materials }];
  });
  if (wantsJson(call))
    printJson(call, {
      format: 'drybench.air/1',
      timeZone: manner.zone,
      rooms: rooms.map((r) => airDocument(r.id, r, manner.zone)),
    });
  else {
    const look = await answerLook(call);
    print(call, rooms.map((room) => roomAirScreen(room, manner, look)).join('\n'));
  }
  return 0;
}
