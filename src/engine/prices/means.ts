import { real } from '../../typed.ts';

/** Share of the last starts in the mean of a round. */
const freshness = 0.25;

/** Keeps a running mean of the starts seen, and puts `most` of its states, evenly over the `rounds`, into `orders`. */
export function meansInto(
  orders: Float64Array[],
  count: number,
  rounds: number,
  most: number,
): (starts: Float64Array) => void {
  const mean = new Float64Array(count);
  let round = 0;
  return (starts) => {
    const share = round === 0 ? 1 : freshness;
    for (let i = 0; i < count; i++) mean[i] = (1 - share) * real(mean, i) + share * real(starts, i);
    round += 1;
    if (Math.floor((round * most) / rounds) > orders.length) orders.push(mean.slice());
  };
}
