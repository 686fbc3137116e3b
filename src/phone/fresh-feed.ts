import type { Feed } from './feed.ts';

export interface FeedSource {
  /** Changes when the feed may have to be made anew. */
  readonly stamp: () => Promise<string>;
  /** Makes it; throws if the shop's files are wrong. */
  readonly build: () => Promise<Feed>;
  /** Told once a change why the old feed is still served. */
  readonly onBroken: (error: unknown) => void;
}

/**
 * The feed as of now, made anew only when the shop's files changed. Who asks meanwhile waits for the one that is being
 * made. While the files are wrong the last good feed stays.
 */
export function freshFeed(source: FeedSource, first: Feed, firstStamp: string): () => Promise<Feed> {
  let good = first;
  let stamp = firstStamp;
  let making: Promise<Feed> | undefined;

  const renewed = async (): Promise<Feed> => {
    const now = await source.stamp();
    if (now === stamp) return good;
    stamp = now;
    try {
      good = await source.build();
    } catch (error) {
      source.onBroken(error);
    }
    return good;
  };

  return () => {
    making ??= renewed().finally(() => {
      making = undefined;
    });
    return making;
  };
}
