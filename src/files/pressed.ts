import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { type ReadDocument, unparsedFile } from './document.ts';
import type { SourceText } from './source-text.ts';

/** What one file reads as, and the hash of the text that it was read from. */
export interface Pressed {
  readonly hash: string;
  readonly value: unknown;
}

/** Files that come with Drybench, read when it was built, by the names that findings give them. */
export type PressedFiles = Readonly<Record<string, Pressed>>;

/** The document of a file that was read at build time and is still the same; undefined for any other. */
export type TakePressed = (source: SourceText) => ReadDocument<unknown> | undefined;

export const takeNone: TakePressed = () => undefined;

export function hashOf({ text }: SourceText): string {
  return createHash('sha256').update(text).digest('base64');
}

/** Takes from the file at `path` that the build has written; nothing where there is no such file. */
export function pressedIn(path: URL): TakePressed {
  if (!existsSync(path)) return takeNone;
  const files = JSON.parse(readFileSync(path, 'utf8')) as PressedFiles;
  return (source) => {
    const found = Object.hasOwn(files, source.file) ? files[source.file] : undefined;
    if (found?.hash !== hashOf(source)) return undefined;
    return { value: found.value, file: unparsedFile(source), findings: [] };
  };
}
