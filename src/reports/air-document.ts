import { fitOutlook, outlook } from '../drying/outlook.ts';
import { isoWriter } from '../time/iso.ts';
import type { RoomAir } from './room-air.ts';
import { minds } from './unfit-hours.ts';

/** The air of a room by the hour, and the hours fit for each material: times ISO 8601, °C, percent, Pa. */
export function airDocument(id: string, { name, series, days, materials }: RoomAir, zone: string) {
  const iso = isoWriter(zone);
  const from = days[0]?.start ?? 0;
  const to = days.at(-1)?.end ?? from;
  return {
    id,
    name,
    hours: outlook(series, from, to).map(({ minute, ...rest }) => ({ time: iso(minute), ...rest })),
    fit: materials.filter(minds).map((material) => ({
      material: material.id,
      stretches: fitOutlook(material, series, from, to, 30).map((s) => ({
        ...s,
        start: iso(s.start),
        end: iso(s.end),
      })),
    })),
    notes: series.notes.map((n) => ({ ...n, from: iso(n.from), to: iso(n.to) })),
  };
}
