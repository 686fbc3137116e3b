import type { Shop, Station, StationKind } from '../model/shop.ts';

/** Stations of one kind in one room: for the search they are one resource with as many units as they have slots. */
export interface Place {
  readonly room: string;
  readonly kind: StationKind;
  readonly stations: readonly Station[];
  readonly slots: number;
}

/** In the order in which the shop's file first names each. */
export function placesOf(shop: Shop): Place[] {
  const places = new Map<string, Place>();
  for (const station of shop.stations) {
    const key = `${station.room}\n${station.kind}`;
    const place = places.get(key) ?? { room: station.room, kind: station.kind, stations: [], slots: 0 };
    places.set(key, { ...place, stations: [...place.stations, station], slots: place.slots + station.slots });
  }
  return [...places.values()];
}
