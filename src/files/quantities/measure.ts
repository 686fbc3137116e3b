import { adviseWord } from '../suggest.ts';
import { amountsOf } from './amount.ts';
import { read, refuse, type Reader } from './read.ts';
import { translated, worded } from '../../words/worded.ts';

/** One kind of quantity with one unit a value: its units, each as a multiple of the core's unit. */
export interface Measure {
  readonly what: string;
  readonly example: string;
  readonly units: Readonly<Record<string, number>>;
  readonly most: number;
  readonly mostWritten: string;
}

/** Reads a positive or zero quantity of one unit into the core's unit. */
export function measureReader(measure: Measure): Reader<number> {
  return (text) => {
    const write = worded`write ${translated(measure.example)}`;
    const what = translated(measure.what);
    const amounts = amountsOf(text);
    const [amount] = amounts ?? [];
    if (amounts?.length !== 1 || amount === undefined) return refuse(worded`is not ${what}`, write);
    if (amount.unit === '') return refuse(worded`has no unit`, worded`${write}, with its unit`);
    if (/^,\d/.test(amount.unit))
      return refuse(worded`has a decimal comma`, worded`write a decimal point: ${text.replace(/(\d),(\d)/, '$1.$2')}`);
    const factor = Object.hasOwn(measure.units, amount.unit) ? measure.units[amount.unit] : undefined;
    if (factor === undefined)
      return refuse(
        worded`is not ${what}: "${amount.unit}" is no unit for it`,
        adviseWord(amount.unit, Object.keys(measure.units)),
      );
    const value = amount.value * factor;
    if (value < 0) return refuse(worded`is below zero`, write);
    if (value > measure.most)
      return refuse(worded`is more than ${measure.mostWritten}`, worded`write ${measure.mostWritten} or less`);
    return read(value);
  };
}

// The inch is 25.4 mm, the US gallon 231 cubic inches, exactly: NIST Handbook 44 (2023), appendix C.
const MM_PER_INCH = 25.4;
const LITRES_PER_GALLON = 3.785411784;
const M_PER_FOOT = 0.3048;

export const readLengthMm = measureReader({
  what: 'a length',
  example: '19 mm or 3/4 in',
  units: {
    mm: 1,
    cm: 10,
    m: 1000,
    in: MM_PER_INCH,
    '"': MM_PER_INCH,
    inch: MM_PER_INCH,
    ft: 12 * MM_PER_INCH,
    yd: 36 * MM_PER_INCH,
  },
  most: 100_000,
  mostWritten: '100 m',
});

export const readAreaM2 = measureReader({
  what: 'an area',
  example: '0.9 m2 or 12 sq ft',
  units: {
    m2: 1,
    'm²': 1,
    cm2: 1e-4,
    'cm²': 1e-4,
    'sq m': 1,
    'sq ft': M_PER_FOOT ** 2,
    sqft: M_PER_FOOT ** 2,
    ft2: M_PER_FOOT ** 2,
    'ft²': M_PER_FOOT ** 2,
  },
  most: 1000,
  mostWritten: '1000 m2',
});

export const readVolumeL = measureReader({
  what: 'a volume',
  example: '2.5 L or 1 qt',
  units: {
    L: 1,
    l: 1,
    mL: 1e-3,
    ml: 1e-3,
    gal: LITRES_PER_GALLON,
    qt: LITRES_PER_GALLON / 4,
    pt: LITRES_PER_GALLON / 8,
    'fl oz': LITRES_PER_GALLON / 128,
  },
  most: 10_000,
  mostWritten: '10 000 L',
});

export const readRoomM3 = measureReader({
  what: 'the volume of a room',
  example: '90 m3 or 3200 cu ft',
  units: { m3: 1, 'm³': 1, 'cu ft': M_PER_FOOT ** 3, ft3: M_PER_FOOT ** 3, 'ft³': M_PER_FOOT ** 3 },
  most: 1_000_000,
  mostWritten: '1 000 000 m3',
});

export const readCoverageM2PerL = measureReader({
  what: 'a coverage',
  example: '10 m2/L or 400 sq ft/gal',
  units: { 'm2/L': 1, 'm²/L': 1, 'm2/l': 1, 'm²/l': 1, 'sq ft/gal': M_PER_FOOT ** 2 / LITRES_PER_GALLON },
  most: 1000,
  mostWritten: '1000 m2/L',
});

export const readActivationKJPerMol = measureReader({
  what: 'an activation energy',
  example: '50 kJ/mol',
  units: { 'kJ/mol': 1 },
  most: 500,
  mostWritten: '500 kJ/mol',
});

export const readSolventGPerL = measureReader({
  what: 'a content of solvent',
  example: '350 g/L',
  units: { 'g/L': 1, 'g/l': 1 },
  most: 2000,
  mostWritten: '2000 g/L',
});

export const readConcentrationMgPerM3 = measureReader({
  what: 'a concentration',
  example: '350 mg/m3',
  units: { 'mg/m3': 1, 'mg/m³': 1, 'g/m3': 1000, 'g/m³': 1000 },
  most: 1_000_000,
  mostWritten: '1 000 000 mg/m3',
});

export const readFilmUm = measureReader({
  what: 'a film thickness',
  example: '40 um or 1.5 mil',
  units: { um: 1, µm: 1, μm: 1, mil: MM_PER_INCH },
  most: 10_000,
  mostWritten: '10 000 um',
});

export const readPercent = measureReader({
  what: 'a share',
  example: '65 %',
  units: { '%': 1 },
  most: 100,
  mostWritten: '100 %',
});
