import { shopAir, type ShopAir } from '../air/shop-air.ts';
import type { Situation } from '../model/situation.ts';
import type { Minute } from '../time/span.ts';

const DAY = 24 * 60;
/** Films done longer ago than this are taken as cured. */
const LOOK_BACK_MINUTES = 60 * DAY;
/** Drying goes on past the last step that is planned. */
const LOOK_AHEAD_MINUTES = 21 * DAY;

/** The air from the first film that still matters, on the hour, so that a plan made a minute later reads the same. */
export function airFor({ book, now, done }: Situation, to: Minute): ShopAir {
  const ends = [...done.values()].map((d) => d.to).filter((end) => end > now - LOOK_BACK_MINUTES);
  const first = Math.min(now - DAY, ...ends);
  return shopAir(book.shop, Math.floor(first / 60) * 60, to + LOOK_AHEAD_MINUTES);
}
