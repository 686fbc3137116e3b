import type { Disk } from '../files/disk.ts';
import type { Finding } from '../model/finding.ts';
import type { Io } from '../terminal/io.ts';
import { worded } from '../words/worded.ts';

/** 0 done; 1 the answer is no; 2 the user's input is wrong; 70 a defect in Drybench; 75 shop in use; 130 interrupted. */
export type ExitCode = 0 | 1 | 2 | 70 | 75 | 130;

/** Whether the person has cut a search short. The answer is then said to be the best found until then, and the exit code is 130. */
export interface Halt {
  early: boolean;
}

/** One use of one command. */
export interface Call {
  /** Arguments, as typed. */
  readonly words: readonly string[];
  /** Options by their long name in camelCase: texts, or true for a flag. */
  readonly flags: Readonly<Record<string, unknown>>;
  readonly io: Io;
  /** All that the command writes goes through this, and what it reads back. */
  readonly disk: Disk;
  readonly halt: Halt;
}

/** What every file of a command exports. */
export interface Command {
  readonly answer: (call: Call) => Promise<ExitCode>;
}

/** The command cannot go on, for a reason that the user can mend. */
export class CannotGoOn extends Error {
  readonly advice: string | undefined;
  readonly exitCode: ExitCode;
  readonly findings: readonly Finding[];
  /** One line each, between the message and the advice. */
  readonly details: readonly string[];

  constructor(
    message: string,
    advice?: string,
    exitCode: ExitCode = 2,
    findings: readonly Finding[] = [],
    details: readonly string[] = [],
  ) {
    super(message);
    this.advice = advice;
    this.exitCode = exitCode;
    this.findings = findings;
    this.details = details;
  }
}

export function textFlag(call: Call, name: string): string | undefined {
  const value = call.flags[name];
  return typeof value === 'string' ? value : undefined;
}

export function isFlagged(call: Call, name: string): boolean {
  return call.flags[name] === true;
}

/** A whole number within bounds, or `usual` where the option is not given. */
export function numberFlag(call: Call, name: string, usual: number, least: number, most: number): number {
  const text = textFlag(call, name);
  if (text === undefined) return usual;
  const value = /^\d{1,9}$/.test(text) ? Number(text) : NaN;
  if (value >= least && value <= most) return value;
  throw new CannotGoOn(
    worded`--${name} "${text}" is not a number that fits`,
    worded`write a whole number from ${least} to ${most}`,
  );
}
