import { condensationPointC, saturationPressurePa, vapourPressurePa, vpdPa } from '../../air/psychrometrics.ts';
import { airAt, type Air } from '../../air/series.ts';
import { LEAST_VPD_PA } from '../../drying/laws/water.ts';
import type { Material } from '../../model/material.ts';
import type { Minute } from '../../time/span.ts';
import type { Breach } from '../breach.ts';
import { reached, type Fact, type LaidFilm } from '../fact.ts';
import type { Ground } from '../ground.ts';

/** Straight lines between equal samples are not quite level in floating point. */
const SLACK = 1e-6;

function nearDew({ tempC, rhPercent }: Air, marginK: number): boolean {
  return saturationPressurePa(tempC - marginK) < vapourPressurePa(tempC, rhPercent) - SLACK;
}

/** What forbids the material in this air; undefined where nothing does. */
function unfit({ limits, minFilmTempC, mechanism }: Material, air: Air): string | undefined {
  const { tempC, rhPercent } = air;
  const degrees = `${tempC.toFixed(1)} °C`;
  const humidity = `${rhPercent.toFixed(1)} % humidity`;
  if (limits !== undefined) {
    if (tempC < limits.minTempC - SLACK) return `${degrees} is below ${limits.minTempC} °C`;
    if (tempC > limits.maxTempC + SLACK) return `${degrees} is above ${limits.maxTempC} °C`;
    if (rhPercent < limits.minRhPercent - SLACK) return `${humidity} is below ${limits.minRhPercent} %`;
    if (rhPercent > limits.maxRhPercent + SLACK) return `${humidity} is above ${limits.maxRhPercent} %`;
    if (nearDew(air, limits.dewMarginK)) {
      const clear = tempC - condensationPointC(tempC, rhPercent);
      return `${degrees} is only ${clear.toFixed(1)} K above the dew point, not ${limits.dewMarginK} K`;
    }
  }
  if (minFilmTempC !== undefined && tempC <= minFilmTempC - SLACK)
    return `${degrees} is below the film-forming temperature of ${minFilmTempC} °C`;
  if (mechanism === 'water' && vpdPa(tempC, rhPercent) < LEAST_VPD_PA - SLACK)
    return `at ${degrees} and ${humidity} water hardly leaves the film`;
  return undefined;
}

/** Until when the film minds the air: dust-free, or else dry to the touch, at the slow end. */
function mindsUntil(laid: LaidFilm, end: Minute): Minute {
  const { marks } = laid.material;
  const mark = marks['dust-free'] === undefined ? 'touch' : 'dust-free';
  return marks[mark] === undefined ? end : (reached(laid, end, mark, 'late') ?? end);
}

/** Longer than any film stays wet: what never dries is told once, not minute by minute. */
const LONGEST_MINUTES = 30 * 1440;

function firstUnfit(fact: Fact, laid: LaidFilm): { minute: Minute; why: string } | undefined {
  const until = Math.min(mindsUntil(laid, fact.end), fact.end + LONGEST_MINUTES);
  for (let minute = fact.start; minute < until; minute += 1) {
    const why = unfit(laid.material, airAt(laid.air, minute));
    if (why !== undefined) return { minute, why };
  }
  return undefined;
}

/** Air inside the material's limits at every minute from the start of application until the film is dust-free. */
export function airKept({ facts, say }: Ground): Breach[] {
  return facts
    .filter((f) => !f.settled)
    .flatMap((fact): Breach[] => {
      if (fact.laid === undefined) return [];
      const found = firstUnfit(fact, fact.laid);
      if (found === undefined) return [];
      const text =
        `${say.step(fact.id)} starts ${say.when(fact.start)} and minds the air until ` +
        `${say.when(mindsUntil(fact.laid, fact.end))}, but ${say.when(found.minute)} ${found.why}`;
      return [{ rule: 'air', steps: [fact.id], at: found.minute, text }];
    });
}
