/** J/(mol K), CODATA 2018. */
const GAS_CONSTANT = 8.314462618;
const KELVIN = 273.15;

/**
 * Speed of a thermally activated process at `tempC`, 1 at `referenceC`: exp[(Ea/R)(1/Tref - 1/T)]. 50 kJ/mol doubles it
 * every 10 K or so.
 */
export function arrhenius(activationKJPerMol: number, tempC: number, referenceC: number): number {
  const inverse = 1 / (referenceC + KELVIN) - 1 / (tempC + KELVIN);
  return Math.exp(((activationKJPerMol * 1000) / GAS_CONSTANT) * inverse);
}
