/** Faces alike of a piece, as far as they are coated: rectangles, or the share of them that is wood. */
export interface Face {
  /** `sides`, `legs, all round`. */
  readonly what: string;
  readonly count: number;
  readonly lengthMm: number;
  readonly heightMm: number;
  /** Share of the rectangle that is wood, 0 to 1; absent: all of it. */
  readonly share?: number;
}

const MM2_PER_M2 = 1e6;

/** Area of faces, m². Geometry. */
export function areaOfFaces(faces: readonly Face[]): number {
  return faces.reduce((sum, f) => sum + f.count * f.lengthMm * f.heightMm * (f.share ?? 1), 0) / MM2_PER_M2;
}

export function face(what: string, count: number, lengthMm: number, heightMm: number, share?: number): Face {
  const sides = { what, count, lengthMm: Math.max(0, lengthMm), heightMm: Math.max(0, heightMm) };
  return share === undefined ? sides : { ...sides, share };
}
