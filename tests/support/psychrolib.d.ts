declare module 'psychrolib' {
  /** The calls that the tests make, in SI: °C, Pa, J/kg, kg/kg, and relative humidity from 0 to 1. */
  interface Psychrolib {
    readonly SI: number;
    SetUnitSystem(system: number): void;
    GetSatVapPres(tempC: number): number;
    GetVapPresFromRelHum(tempC: number, rh: number): number;
    GetTDewPointFromRelHum(tempC: number, rh: number): number;
    GetHumRatioFromRelHum(tempC: number, rh: number, pressurePa: number): number;
    GetMoistAirEnthalpy(tempC: number, humidityRatio: number): number;
    GetTWetBulbFromRelHum(tempC: number, rh: number, pressurePa: number): number;
  }
  const psychrolib: Psychrolib;
  export default psychrolib;
}
