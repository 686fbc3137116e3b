import type * as z from 'zod/mini';
import type { Node } from '../yaml/tree.ts';

/** Something wrong at a node. */
export interface Remark {
  readonly code: string;
  readonly message: string;
  readonly advice?: string;
}

/** What a schema is built with. */
export interface Settings {
  /** Zone of the wall clock that times without an offset are read on. */
  readonly zone: string;
  /** ISO 4217 code that amounts of money must have. */
  readonly currency: string;
  /** Warnings are not told. */
  readonly silent: boolean;
}

/** What a shape needs to know while it reads, and where it says what is wrong. */
export interface Notes extends Pick<Settings, 'zone' | 'currency'> {
  error(at: Node, remark: Remark): void;
  warn(at: Node, remark: Remark): void;
}

/** What an issue of our own carries. */
interface Told {
  readonly remark: Remark;
  readonly severity: 'error' | 'warning';
  /** It is about the key, not its value. */
  readonly onKey: boolean;
}

type Issue = z.core.$ZodIssue;

/** What a check of a schema hands on; its issues get their path from the schemas around it. */
export type Context = Pick<z.core.ParsePayload, 'issues'>;

export function toldIn(issue: Issue): Told | undefined {
  return issue.code === 'custom' ? (issue.params as Told | undefined) : undefined;
}

export function isWarning(issue: Issue): boolean {
  return toldIn(issue)?.severity === 'warning';
}

export function addRemark(context: Context, remark: Remark, severity: Told['severity'] = 'error'): void {
  context.issues.push({ code: 'custom', input: undefined, params: { remark, severity, onKey: false } });
}

export function addKeyRemark(context: Context, key: string, remark: Remark): void {
  context.issues.push({
    code: 'custom',
    input: undefined,
    path: [key],
    params: { remark, severity: 'error', onKey: true },
  });
}

/** Stands for the value that is being read: its place is known once the schema has run. */
const here: Node = { kind: 'text', text: '', style: 'plain', start: 0, end: 0 };

export function notesOf(context: Context, settings: Settings): { readonly notes: Notes; readonly here: Node } {
  const notes: Notes = {
    zone: settings.zone,
    currency: settings.currency,
    error: (_, remark) => addRemark(context, remark),
    warn: (_, remark) => {
      if (!settings.silent) addRemark(context, remark, 'warning');
    },
  };
  return { notes, here };
}
