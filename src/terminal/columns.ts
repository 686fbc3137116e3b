/** What a stream tells of its width. */
interface Wide {
  readonly columns?: number | undefined;
}

/** The width that is usual, where none is told. */
export const usualColumns = 80;

/** The width that a stream tells; undefined for what is no terminal, and for a terminal that does not know it and tells 0. */
export function toldColumns({ columns }: Wide): number | undefined {
  return columns !== undefined && columns > 0 ? columns : undefined;
}
