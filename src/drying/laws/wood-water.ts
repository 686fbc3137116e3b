import { vpdPa } from '../../air/psychrometrics.ts';
import { equilibriumMoisturePercent } from '../../air/wood-moisture.ts';
import { arrhenius } from './arrhenius.ts';
import type { Rate, ReferenceAir } from './law.ts';
import { dryEnough, filmForms } from './water.ts';

/** Bound water moving in wood, kJ/mol (Siau, Transport Processes in Wood, from memory). */
const BOUND_WATER_KJ_PER_MOL = 38;

/** Water that wood in equilibrium with this air can still take up before it is saturated, percent of its dry mass. */
function woodRoom(tempC: number, rhPercent: number): number {
  return equilibriumMoisturePercent(tempC, 100) - equilibriumMoisturePercent(tempC, rhPercent);
}

/**
 * Water in or on wood: a glue line, a washed or sponged surface. `airShare` of it leaves by the air (VPD), the rest by
 * soaking away into wood whose moisture content follows the air (Wood Handbook eq. 4-5). Both shares are (design
 * suggestion): sources agree on what counts, not on how much. Damp wood, cold, and a chalk temperature slow it.
 */
export function woodWaterRate(airShare: number, chalkTempC: number | undefined, reference: ReferenceAir): Rate {
  const referenceVpd = vpdPa(reference.tempC, reference.rhPercent);
  const referenceRoom = woodRoom(reference.tempC, reference.rhPercent);
  return (tempC, rhPercent) => {
    const deficit = vpdPa(tempC, rhPercent);
    const gate = dryEnough(deficit) * filmForms(tempC, chalkTempC);
    if (gate === 0) return 0;
    const air = deficit / referenceVpd;
    const room = Math.max(0, woodRoom(tempC, rhPercent)) / referenceRoom;
    const wood = room * arrhenius(BOUND_WATER_KJ_PER_MOL, tempC, reference.tempC);
    return gate * air ** airShare * wood ** (1 - airShare);
  };
}
