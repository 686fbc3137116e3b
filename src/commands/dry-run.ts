import { dryDisk } from '../files/dry-disk.ts';
import { diffScreen } from '../reports/dry-run.ts';
import { harmless } from '../terminal/harmless.ts';
import { answerLook, print, printJson, wantsJson } from './answers.ts';
import type { Call, Command, ExitCode } from './call.ts';
import type { Face } from './faces.ts';
import { worded } from '../words/worded.ts';

async function show(call: Call, changes: ReturnType<ReturnType<typeof dryDisk>['changes']>): Promise<void> {
  const { diffOf } = await import('../files/diff-text.ts');
  const diffs = diffOf(changes, call.disk.realPath(call.io.folder));
  const diff = diffs.map(({ text }) => text).join('');
  if (wantsJson(call)) {
    const files = diffs.map(({ path, change, from }) => ({ path, change, ...(from !== undefined && { from }) }));
    printJson(call, { format: 'drybench.dryrun/1', dryRun: true, files, diff });
    return;
  }
  const isPerson = call.io.stdout.isTTY === true;
  print(call, diffScreen(diff, await answerLook(call), harmless, !isPerson));
  if (isPerson && diff !== '') call.io.stderr.write(worded`drybench: a dry run: nothing was written\n`);
}

/**
 * Does all that the command does, but to a disk in memory; shows what it would have written instead of what it answers. A
 * command that only looks answers as always, and remembers nothing.
 */
export async function answerDry(face: Face, { answer }: Command, call: Call): Promise<ExitCode> {
  const { disk, changes } = dryDisk(call.disk);
  if (face.writes?.(call.flags) !== true) return answer({ ...call, disk });
  const unread = { write: () => true };
  const code = await answer({ ...call, disk, io: { ...call.io, stdout: unread } });
  await show(call, changes());
  return code;
}
