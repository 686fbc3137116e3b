/** Something wrong in the text of a YAML file. */
export interface Fault {
  readonly offset: number;
  readonly code: string;
  readonly message: string;
  readonly advice?: string;
}
