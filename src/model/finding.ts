/** A place in a file, counted from 1. */
export interface Place {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  /** The line as it stands in the file. */
  readonly text?: string;
  /** The line before it, where there is one: so that the reader recognises the place. */
  readonly before?: string;
  /** The line after it, where there is one. */
  readonly after?: string;
}

/** Something wrong, or worth knowing, in what the user wrote. */
export interface Finding {
  /** Short and stable, e.g. `unknown-key`. */
  readonly code: string;
  readonly severity: 'error' | 'warning';
  readonly message: string;
  /** What to write instead. */
  readonly advice?: string;
  readonly place?: Place;
}
