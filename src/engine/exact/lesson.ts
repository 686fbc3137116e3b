/** Working memory of learning: the facts that together lead to the conflict, at most one per bound. */
export interface Lesson {
  /** NO, NEEDED, or WAS_NEEDED once its reason has taken its place. */
  readonly isNeeded: Int32Array;
  readonly needed: Int32Array;
  /** Where on the trail the needed fact became true. */
  readonly where: Int32Array;
  readonly involved: Int32Array;
  involvedSize: number;
  /** How many of them became true on the last level. */
  onLastLevel: number;
  facts: Int32Array;
  levelStamp: Int32Array;
  stamp: number;
}

export function createLesson(bounds: number): Lesson {
  return {
    isNeeded: new Int32Array(bounds),
    needed: new Int32Array(bounds),
    where: new Int32Array(bounds),
    involved: new Int32Array(bounds),
    involvedSize: 0,
    onLastLevel: 0,
    facts: new Int32Array(2 * bounds + 2),
    levelStamp: new Int32Array(64),
    stamp: 0,
  };
}
