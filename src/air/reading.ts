import { clearOfDew, DEW_MARGIN_K } from './dew-margin.ts';
import {
  condensationPointC,
  dewPointC,
  frostPointC,
  humidityRatio,
  rhAfterHeating,
  saturationPressurePa,
  vapourPressurePa,
  vpdPa,
} from './psychrometrics.ts';
import { equilibriumMoisturePercent } from './wood-moisture.ts';
import { worded } from '../words/worded.ts';

/** What the meter on the wall says, and perhaps a thermometer held to the work. */
export interface Reading {
  readonly tempC: number;
  readonly rhPercent: number;
  readonly surfaceC?: number;
}

export type ReadingCode =
  'near-dew-point' | 'below-dew-point' | 'above-85-percent' | 'freezing' | 'blush-likely' | 'very-dry';

export interface ReadingNote {
  readonly code: ReadingCode;
  readonly text: string;
}

/** What a reading means for coating, whatever the material; the material's own limits come on top. */
export interface ReadingAnswer {
  readonly tempC: number;
  readonly rhPercent: number;
  /** The given one, else the air's. */
  readonly surfaceC: number;
  readonly vapourPressurePa: number;
  readonly saturationPressurePa: number;
  readonly vpdPa: number;
  /** Over liquid water, also below freezing. */
  readonly dewPointC: number;
  /** Over ice; present where water would settle as frost. */
  readonly frostPointC?: number;
  readonly humidityRatioGPerKg: number;
  /** Where wood ends up if it stays in this air. */
  readonly woodMoisturePercent: number;
  /** Surface above the dew point, or the frost point where there is one. */
  readonly marginK: number;
  readonly coatable: boolean;
  /** Why not; empty if coatable. */
  readonly reasons: readonly ReadingNote[];
  /** Worth knowing, and no hindrance. */
  readonly warnings: readonly ReadingNote[];
  /** The same after heating at constant humidity ratio: the work's surface is taken to have warmed with the room. */
  readonly heated?: ReadingAnswer;
}

/** Humidity above which no coat goes on: secondary pages on ISO 8502-4 and ISO 12944-7. */
const MOST_RH_PERCENT = 85;
/** Shellac and lacquer blush when the dew point is nearer to the air than 20 °F: a trade rule. */
const BLUSH_SPREAD_K = 20 / 1.8;
/** Below this, fast water-borne films keep brush marks and crack: a paint-industry education page, from memory. */
const LEAST_RH_PERCENT = 20;

/** Answers a reading; with `heatToC` also for the same air heated (or let cool) to that. */
export function answerReading(reading: Reading, heatToC?: number): ReadingAnswer {
  const { tempC, rhPercent } = reading;
  const surfaceC = reading.surfaceC ?? tempC;
  const settlesC = condensationPointC(tempC, rhPercent);
  const marginK = surfaceC - settlesC;
  const reasons = hindrances(reading, surfaceC, settlesC);
  const heatedTo =
    heatToC === undefined
      ? undefined
      : answerReading({ tempC: heatToC, rhPercent: rhAfterHeating(tempC, rhPercent, heatToC) });
  return {
    tempC,
    rhPercent,
    surfaceC,
    vapourPressurePa: vapourPressurePa(tempC, rhPercent),
    saturationPressurePa: saturationPressurePa(tempC),
    vpdPa: vpdPa(tempC, rhPercent),
    dewPointC: dewPointC(tempC, rhPercent),
    ...(settlesC <= 0 ? { frostPointC: frostPointC(tempC, rhPercent) } : {}),
    humidityRatioGPerKg: 1000 * humidityRatio(tempC, rhPercent),
    woodMoisturePercent: equilibriumMoisturePercent(tempC, rhPercent),
    marginK,
    coatable: reasons.length === 0,
    reasons,
    warnings: warningsOn(reading, settlesC),
    ...(heatedTo === undefined ? {} : { heated: heatedTo }),
  };
}

/** Which point it is at which water settles: at or below freezing it settles as frost. */
export function pointSaid(settlesC: number): string {
  return settlesC <= 0 ? worded`frost point` : worded`dew point`;
}

function hindrances({ tempC, rhPercent }: Reading, surfaceC: number, settlesC: number): readonly ReadingNote[] {
  const notes: ReadingNote[] = [];
  const marginK = surfaceC - settlesC;
  const point = pointSaid(settlesC);
  if (marginK < 0) {
    const text = worded`the surface is ${(-marginK).toFixed(1)} K below the ${point}: water settles on it`;
    notes.push({ code: 'below-dew-point', text });
  } else if (!clearOfDew({ tempC, rhPercent }, surfaceC)) {
    const text = worded`the surface is ${marginK.toFixed(1)} K above the ${point}; it needs ${DEW_MARGIN_K} K (ISO 8502-4, for steel)`;
    notes.push({ code: 'near-dew-point', text });
  }
  if (rhPercent > MOST_RH_PERCENT) {
    const text = worded`humidity of ${rhPercent.toFixed(0)} % is above ${MOST_RH_PERCENT} %`;
    notes.push({ code: 'above-85-percent', text });
  }
  if (surfaceC <= 0) notes.push({ code: 'freezing', text: worded`the surface is at or below freezing` });
  return notes;
}

function warningsOn({ tempC, rhPercent }: Reading, settlesC: number): readonly ReadingNote[] {
  const notes: ReadingNote[] = [];
  const spreadK = tempC - settlesC;
  if (spreadK < BLUSH_SPREAD_K) {
    const text = worded`the ${pointSaid(settlesC)} is ${spreadK.toFixed(1)} K below the air: shellac and lacquer may blush under ${BLUSH_SPREAD_K.toFixed(1)} K`;
    notes.push({ code: 'blush-likely', text });
  }
  if (rhPercent < LEAST_RH_PERCENT) {
    const text = worded`air at ${rhPercent.toFixed(0)} % dries water-borne coats very fast: keep a wet edge`;
    notes.push({ code: 'very-dry', text });
  }
  return notes;
}
