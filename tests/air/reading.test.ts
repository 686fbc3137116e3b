import { describe, expect, it } from 'vitest';
import { answerReading } from '../../src/air/reading.ts';

describe('a reading of the meter on the wall', () => {
  // A public worked example reaches the same verdict from a chart reading of 11 °C; rule: ISO 8502-4.
  it('16 °C, 71 %, surface 13 °C: dew point 10.75 °C, margin 2.25 K, no coat', () => {
    const answer = answerReading({ tempC: 16, rhPercent: 71, surfaceC: 13 });
    expect(Math.abs(answer.dewPointC - 10.75)).toBeLessThan(0.05);
    expect(Math.abs(answer.marginK - 2.25)).toBeLessThan(0.05);
    expect(answer.coatable).toBe(false);
    expect(answer.reasons.map((r) => r.code)).toEqual(['near-dew-point']);
  });

  // Dew point by Hyland and Wexler's equations, as in ASHRAE Handbook—Fundamentals 2017, chapter 1 (read in psychrolib's
  // source), calculated. A spread under 20 °F may blush: a trade question-and-answer page of 2006 (read), a rule of the trade.
  it('20 °C, 50 %, surface 18 °C: dew point 9.27 °C, margin 8.73 K, a coat, but shellac may blush', () => {
    const answer = answerReading({ tempC: 20, rhPercent: 50, surfaceC: 18 });
    expect(Math.abs(answer.dewPointC - 9.27)).toBeLessThan(0.05);
    expect(Math.abs(answer.marginK - 8.73)).toBeLessThan(0.05);
    expect(answer.coatable).toBe(true);
    expect(answer.warnings.map((w) => w.code)).toEqual(['blush-likely']);
  });

  // Dew point calculated as above; the 3 K are of ISO 8502-4, as secondary pages give it (read).
  it('20 °C, 65 % on work at 10 °C: 3.2 K below the dew point of 13.23 °C', () => {
    const answer = answerReading({ tempC: 20, rhPercent: 65, surfaceC: 10 });
    expect(Math.abs(answer.dewPointC - 13.23)).toBeLessThan(0.05);
    expect(answer.reasons.map((r) => r.code)).toEqual(['below-dew-point']);
    expect(answerReading({ tempC: 20, rhPercent: 65, surfaceC: 16.28 }).coatable).toBe(true);
    expect(answerReading({ tempC: 20, rhPercent: 65, surfaceC: 16.18 }).coatable).toBe(false);
  });

  // Calculated by ASHRAE 2017, chapter 1, equations 6 and 20, the humidity ratio held.
  it('5 °C, 85 % heated to 20 °C: 4.586 g/kg, 31.7 %, the same dew point of 2.69 °C', () => {
    const answer = answerReading({ tempC: 5, rhPercent: 85 }, 20);
    expect(Math.abs(answer.humidityRatioGPerKg - 4.586)).toBeLessThan(0.02);
    expect(answer.coatable).toBe(false);
    expect(Math.abs((answer.heated?.rhPercent ?? 0) - 31.7)).toBeLessThan(0.2);
    expect(Math.abs((answer.heated?.dewPointC ?? 0) - 2.69)).toBeLessThan(0.05);
    expect(answer.heated?.coatable).toBe(true);
    expect(answer.heated?.vapourPressurePa).toBeCloseTo(answer.vapourPressurePa, 6);
  });

  it('names the frost point below freezing, beside the dew point', () => {
    const answer = answerReading({ tempC: 0, rhPercent: 80 });
    expect(answer.frostPointC).toBeCloseTo(-2.683, 2);
    expect(answer.dewPointC).toBeCloseTo(-3.04, 1);
    expect(answer.marginK).toBeCloseTo(2.683, 2);
    expect(answer.reasons.map((r) => r.code)).toEqual(['near-dew-point', 'freezing']);
    expect(answer.reasons[0]?.text).toBe(
      'the surface is 2.7 K above the frost point; it needs 3 K (ISO 8502-4, for steel)',
    );
    expect(answerReading({ tempC: 15, rhPercent: 60 }).frostPointC).toBeUndefined();
  });

  it('86 % on a warm surface is still too damp, and 15 % is very dry', () => {
    expect(answerReading({ tempC: 20, rhPercent: 86, surfaceC: 26 }).reasons.map((r) => r.code)).toEqual([
      'above-85-percent',
    ]);
    expect(answerReading({ tempC: 22, rhPercent: 15 }).warnings.map((w) => w.code)).toEqual(['very-dry']);
  });
});
