import type { Shop } from '../model/shop.ts';
import type { Minute } from '../time/span.ts';
import { roomAir } from './room-air.ts';
import type { AirSeries } from './series.ts';

/** The air of every room of the shop, by room id. */
export type ShopAir = ReadonlyMap<string, AirSeries>;

export function shopAir(shop: Shop, from: Minute, to: Minute): ShopAir {
  return new Map(shop.rooms.map((room) => [room.id, roomAir(room.air, shop.timeZone, from, to)]));
}
