import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { Script } from 'node:vm';
import { realDisk } from './files/disk.ts';
import { recalled, remember, rememberedIn, shelfOf, type Shelf } from './files/remembered.ts';

/** What cli.ts exports. */
type Program = Pick<typeof import('./cli.ts'), 'run'>;

/** What V8 had made of each chunk by the end of a run, all functions that were called among it. */
type Code = ReadonlyMap<string, Uint8Array>;

/** After so many runs of a command, most of what any run of it calls has been called. */
const RUNS_KEPT = 6;

interface Kept {
  readonly code: Code;
  /** So many runs of the command have added what they called. */
  readonly runs: number;
}

interface Started {
  readonly program: Program;
  /** Was anything loaded that was not known? */
  readonly isNew: () => boolean;
  /** The code of all that has been called until now. */
  readonly codeNow: () => Code;
}

// As node wraps a CommonJS module.
const head = '(function(exports,require,module,__filename){';
type Wrapped = (exports: unknown, require: (id: string) => unknown, module: object, file: string) => void;

/** Each command has code of its own: that of another would be read for nothing. */
const commandIn = ([first = '']: readonly string[]) => (/^[a-z]+$/.test(first) ? first : '');

function shelfFor(words: readonly string[], folder: string): Shelf | undefined {
  const keptIn = rememberedIn(process.env, 'code');
  if (keptIn === undefined) return undefined;
  // V8 asks for its own version and flags, and for a source of the same length: that it is the same source says the stamp.
  const stamp = [readFileSync(join(folder, 'stamp.txt'), 'utf8'), process.version, process.arch].join(' ');
  return shelfOf({ folder: keptIn, stamp }, commandIn(words));
}

/** Loads the program from the chunks in `folder` (CommonJS, as the build makes them), by the code that is known of them. */
function load(folder: string, known: Code): Started {
  const outside = createRequire(join(folder, 'cli.js'));
  const scripts = new Map<string, Script>();
  const modules = new Map<string, { exports: unknown }>();
  let isNew = false;

  const exportsOf = (name: string): unknown => {
    const loaded = modules.get(name);
    if (loaded !== undefined) return loaded.exports;
    const filename = join(folder, name);
    const cachedData = known.get(name) as Buffer | undefined;
    const source = `${head}${readFileSync(filename, 'utf8')}\n})`;
    const script = new Script(source, { filename, columnOffset: -head.length, ...(cachedData && { cachedData }) });
    if (cachedData === undefined || script.cachedDataRejected === true) isNew = true;
    const module = { exports: {} };
    scripts.set(name, script);
    modules.set(name, module);
    (script.runInThisContext() as Wrapped)(module.exports, required, module, filename);
    return module.exports;
  };
  const required = (id: string) => (id.startsWith('./') ? exportsOf(id.slice(2)) : (outside(id) as unknown));

  return {
    program: exportsOf('cli.js') as Program,
    isNew: () => isNew,
    codeNow: () => new Map([...known, ...[...scripts].map(([name, s]) => [name, s.createCachedData()] as const)]),
  };
}

/**
 * Runs the program that the build has put beside this file. Half of a short command would go into compiling: what V8 compiled is kept in
 * the user's own folder for such things, and taken from there the next time. @returns the exit code.
 */
export async function start(words: readonly string[]): Promise<number> {
  const folder = import.meta.dirname;
  const shelf = shelfFor(words, folder);
  const kept = shelf && (recalled(realDisk, shelf) as Kept | undefined);
  const { program, isNew, codeNow } = load(folder, kept?.code ?? new Map<string, Uint8Array>());
  const code = await program.run(words);
  // Where it came to nothing, little of the command was called. A dry run writes nothing, not even this.
  const mayKeep = code <= 1 && !words.includes('--dry-run');
  const runs = isNew() ? 0 : (kept?.runs ?? 0);
  if (shelf !== undefined && mayKeep && runs < RUNS_KEPT)
    remember(realDisk, shelf, { code: codeNow(), runs: runs + 1 } satisfies Kept);
  return code;
}
