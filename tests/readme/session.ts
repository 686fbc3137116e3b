import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PassThrough } from 'node:stream';
import { run } from '../../src/cli.ts';

/** `'two words' one` as a shell parts them: single and double quotes only. */
export function words(line: string): string[] {
  return [...line.matchAll(/"([^"]*)"|'([^']*)'|(\S+)/g)].map(([, a, b, c]) => a ?? b ?? c ?? '');
}

interface Typed {
  readonly command: string;
  readonly answers: readonly string[];
}

/** Lines that begin with `$ ` are commands; what is typed to a command's questions stands below it. */
function typedIn(script: string): Typed[] {
  const commands: { command: string; answers: string[] }[] = [];
  for (const line of script.trim().split('\n'))
    if (line.startsWith('$ ')) commands.push({ command: line.slice(2), answers: [] });
    else commands.at(-1)?.answers.push(line);
  return commands;
}

/** Answers each question as soon as it stands there; it shows as it does on a terminal. */
async function ask(folder: string, { command, answers }: Typed, show: (text: string) => void): Promise<void> {
  const left = [...answers];
  const stdin = Object.assign(new PassThrough(), { isTTY: true });
  const write = (text: string) => {
    show(text);
    // A question alone ends in a blank.
    if (!text.endsWith(' ')) return;
    const line = left.shift();
    if (line === undefined) stdin.end();
    else {
      show(`${line}\n`);
      stdin.write(`${line}\n`);
    }
  };
  const code = await run(words(command).slice(1), {
    stdin,
    stdout: { columns: 80, write: show },
    stderr: { isTTY: true, columns: 80, write },
    env: { NO_COLOR: '1', TERM: 'dumb' },
    folder,
    clock: () => Date.UTC(2027, 0, 11, 6, 30),
    page: () => false,
  });
  if (code !== 0 || left.length > 0) show(`(exit code ${code}, ${left.length} lines not asked for)\n`);
}

/** What a terminal shows of a session that begins in an empty folder, at 07:30 on 11 January 2027 in Brussels. */
export async function transcript(script: string): Promise<string> {
  const home = mkdtempSync(join(tmpdir(), 'drybench-readme-'));
  let folder = home;
  let shown = '';
  const show = (text: string) => (shown += text);
  try {
    for (const typed of typedIn(script)) {
      show(`$ ${typed.command}\n`);
      const [name, where = ''] = words(typed.command);
      if (name === 'cd') folder = join(folder, where);
      else await ask(folder, typed, show);
    }
    return shown.replaceAll(/ +$/gm, '');
  } finally {
    rmSync(home, { recursive: true });
  }
}
