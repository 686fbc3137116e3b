import type { ReadingAnswer } from '../air/reading.ts';
import { noteText } from './reading.ts';

/**
 * What a reading means, as a document: °C, percent, Pa, K, g of water per kg of dry air. `marginK` is there where a
 * thermometer was held to the work; the heated work is taken to be as warm as its air.
 * Words are in the units of the reading.
 */
export function readingDocument(answer: ReadingAnswer, surfaceMeasured: boolean, units: 'metric' | 'us'): object {
  const { tempC, rhPercent, vapourPressurePa, saturationPressurePa, vpdPa, dewPointC, frostPointC } = answer;
  const { humidityRatioGPerKg, woodMoisturePercent, marginK, coatable, reasons, heated } = answer;
  return {
    tempC,
    rhPercent,
    vapourPressurePa,
    saturationPressurePa,
    vpdPa,
    dewPointC,
    ...(frostPointC !== undefined && { frostPointC }),
    humidityRatioGPerKg,
    woodMoisturePercent,
    ...(surfaceMeasured && { marginK }),
    coatable,
    reasons: reasons.map((note) => ({ ...note, text: noteText(note, answer, { units }) })),
    ...(heated !== undefined && { heated: readingDocument(heated, surfaceMeasured, units) }),
  };
}
