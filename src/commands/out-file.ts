import { resolve } from 'node:path';
import { print, wantsJson } from './answers.ts';
import { CannotGoOn, type Call } from './call.ts';
import { writeOwnFile } from './own-file.ts';
import { worded } from '../words/worded.ts';

/** Where what a command makes as a whole is to go: a file, or standard output, as `-` says. */
export interface OutFile {
  /** Absent: standard output, which then holds nothing else. */
  readonly path?: string;
  /** `mark`: what tells a file that we made from others of that name. */
  readonly write: (text: string, mark: string) => void;
}

/** @throws CannotGoOn where standard output is to hold two things. */
export function outFile(call: Call, file: string): OutFile {
  if (file === '-') {
    if (wantsJson(call))
      throw new CannotGoOn(worded`--json and --file - do not go together`, worded`name a file, or leave out --json`);
    return {
      write: (text) => {
        print(call, text);
      },
    };
  }
  const path = resolve(call.io.folder, file);
  return {
    path,
    write: (text, mark) => {
      writeOwnFile(call.disk, path, text, mark);
    },
  };
}
