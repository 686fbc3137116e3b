import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { faces } from '../../src/commands/faces.ts';
import { commonOptions } from '../../src/commands/program.ts';
import { choices } from '../../src/commands/shell/choices.ts';
import { wordsOf } from '../../src/commands/shell/line.ts';
import { shells } from '../../src/commands/shell/scripts.ts';
import fc from '../support/property.ts';
import { drybench } from './run-cli.ts';
import { inShop } from './small-shop.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const there = (name: string) => spawnSync(name, ['--version']).status === 0;

/** The words offered at the end of `line`, by the helper that all shells ask. */
async function offered(line: string, folder?: string): Promise<string[]> {
  const { code, out, err } = await drybench(['offer', '--', line], folder === undefined ? {} : { folder });
  expect({ code, err }).toEqual({ code: 0, err: '' });
  return out.split('\n').flatMap((text) => (text === '' ? [] : [text.split('\t')[0] ?? '']));
}

describe('what fits at the end of a line', () => {
  it('is every command that the help shows, and no other', async () => {
    const { out } = await drybench([]);
    const shown = [...out.matchAll(/^ {2}([a-z][a-z-]+) /gm)].map(([, name]) => name);
    expect((await offered('drybench ')).sort()).toEqual(shown.sort());
    expect(shown).not.toContain('offer');
  });

  it.each(faces.map((f) => f.name))('is every option of %s', async (name) => {
    const { out } = await drybench([name, '--help']);
    const shown = [...out.matchAll(/^ {2}(?:-h, )?(--[a-z-]+)/gm)].map(([, flag]) => flag);
    expect(shown.length).toBeGreaterThan(3);
    expect((await offered(`drybench ${name} --`)).sort()).toEqual(shown.sort());
  });

  it('is a piece, a step that is open or over as the command wants it, or a word of a list', () =>
    inShop({}, async (folder) => {
      expect(await offered('drybench done ', folder)).toEqual(['stool']);
      expect(await offered('drybench done st', folder)).toEqual(['stool']);
      expect(await offered('drybench done x', folder)).toEqual([]);
      const steps = ['seat/scuff', 'seat/wipe', 'seat/paint-1', 'seat/paint-2-scuff', 'seat/paint-2'];
      expect(await offered('drybench done stool ', folder)).toEqual(steps);
      expect(await offered('drybench done milk seat/p', folder)).toEqual(steps.slice(2));
      expect(await offered('drybench why stool pai', folder)).toEqual(['paint-1', 'paint-2-scuff', 'paint-2']);
      expect(await offered('drybench seen stool ', folder)).toEqual([]);
      await drybench(['done', 'stool', 'scuff'], { folder });
      expect(await offered('drybench done stool ', folder)).toEqual(steps.slice(1));
      expect(await offered('drybench again stool ', folder)).toEqual(['seat/scuff']);
      expect(await offered('drybench seen stool scuff ', folder)).toEqual(['wet', 'tacky', 'dry', 'hard']);
    }));

  it('is a room or a station of the shop, with a figure to begin from, for what compare changes', () =>
    inShop({}, async (folder) => {
      expect(await offered('drybench compare --warmer ', folder)).toEqual(['workshop=+3K', 'shed=+3K']);
      expect(await offered('drybench compare --warmer shed=+3K sh', folder)).toEqual(['shed=+3K']);
      expect(await offered('drybench compare --drier w', folder)).toEqual(['workshop=50%']);
      expect(await offered('drybench compare --slot ', folder)).toEqual(['bench=+1']);
    }));

  it('takes the shop that the line names, and passes over options and their values', () =>
    inShop({}, async (folder) => {
      const at = '--at 2027-01-11T07:30';
      expect(await offered(`drybench ready --shop ${folder} `)).toEqual(['stool']);
      expect(await offered(`drybench ready --shop=${folder} ${at} `)).toEqual(['stool']);
      expect(await offered(`drybench --shop '${folder}' why ${at} "sto`)).toEqual(['stool']);
      expect(await offered('drybench done stool seat/scuff --by ', folder)).toEqual(['owner']);
      expect(await offered('drybench done stool seat/scuff --by owner o', folder)).toEqual(['owner']);
      expect(await offered('drybench phone --file ', folder)).toEqual([':file']);
      expect(await offered('drybench week --shop ', folder)).toEqual([':folder']);
      expect(await offered('drybench setup --units u')).toEqual(['us']);
      expect(await offered('drybench promise bru', folder)).toEqual(['brushed']);
      expect(await offered('drybench promise brushed painted-', folder)).toEqual([
        'painted-brushed',
        'painted-sprayed',
      ]);
    }));

  it('is nothing where there is no shop, or one whose files are wrong', async () => {
    expect(await offered('drybench done ')).toEqual([]);
    await inShop({ 'pieces/stool.yaml': 'name: [' }, async (folder) => {
      expect(await offered('drybench done ', folder)).toEqual(['stool']);
      expect(await offered('drybench done stool ', folder)).toEqual([]);
    });
  });

  it('is nothing, and no trouble, whatever stands in the line', () =>
    fc.assert(
      fc.asyncProperty(fc.string(), async (line) => {
        const typed = wordsOf(`drybench ${line}`).at(-1) ?? '';
        for (const word of await offered(`drybench ${line}`))
          expect(word.startsWith(typed) || word.startsWith(':')).toBe(true);
      }),
    ));

  it('knows lists only of what the help names', () => {
    const ofCommands = faces.flatMap((f) => [
      ...(f.options ?? []).map(([flags]) => flags.split(' ')[0]),
      ...(f.words ?? '').split(' ').map((w) => w.replaceAll(/[<>[\].]/g, '')),
    ]);
    const names = [...ofCommands, ...commonOptions.map(([flags]) => flags.split(' ')[0])];
    for (const name of Object.keys(choices)) expect(names).toContain(name);
  });
});

// POSIX.1-2017, Shell Command Language, 2.2 Quoting; the oracle is the shell itself.
describe.skipIf(!there('bash'))('in a real bash', () => {
  it('a line is parted as bash parts it', () =>
    fc.assert(
      fc.property(fc.array(fc.stringMatching(/^[a-z'"\\ =:/-]{1,6}$/), { maxLength: 4 }), (parts) => {
        const quoted = parts.map((p) => [`'${p.replaceAll("'", `'\\''`)}'`, p.replaceAll(/[^a-z]/g, '\\$&')]);
        for (const way of [0, 1]) {
          const line = `drybench ${quoted.map((q) => q[way]).join(' ')} `;
          const { stdout } = spawnSync('bash', ['-c', `printf '%s\\0' ${line}`], { encoding: 'utf8' });
          expect(wordsOf(line)).toEqual([...stdout.split('\0').slice(0, -1), '']);
        }
      }),
      { numRuns: 20 },
    ));

  /** What bash would put there, or offer, at a press of Tab behind `line`; `command` is our program as a function. */
  function tab(line: string, folder: string): string[] {
    const program = `drybench() { "${process.execPath}" "${join(root, 'bin/drybench.cjs')}" "$@"; }`;
    const script = `${program}
      eval "$(drybench completion bash)"
      complete -p drybench >&2
      COMP_LINE=$1 COMP_POINT=\${#1}
      COMP_WORDS=("\${@:2}") COMP_CWORD=$(($# - 2))
      _drybench
      printf '%s\\n' "\${COMPREPLY[@]}"`;
    // Bash parts words at = and : as well.
    const words = line.split(/(?<=[\s=:])|(?=[=:])/).flatMap((w) => (w.trim() === '' ? [] : [w.trim()]));
    const all = line.endsWith(' ') ? [...words, ''] : words;
    const done = spawnSync('bash', ['-c', script, 'bash', line, ...all], { cwd: folder, encoding: 'utf8' });
    expect(done.stderr).toBe('complete -F _drybench drybench\n');
    return done.stdout.split('\n').filter((word) => word !== '');
  }

  it('Tab offers commands, options, pieces, steps, words of lists and files', () =>
    inShop({ 'note one.ics': '' }, async (folder) => {
      expect(tab('drybench wa', folder)).toEqual(['wall']);
      expect(tab('drybench week --f', folder)).toEqual(['--for']);
      expect(tab('drybench ready ', folder)).toEqual(['stool']);
      expect(tab('drybench done --at 2027-01-11T07:30 stool seat/w', folder)).toEqual(['seat/wipe']);
      expect(tab('drybench setup new --units ', folder)).toEqual(['metric', 'us']);
      expect(tab('drybench phone --file note', folder)).toEqual(['note one.ics']);
      expect(tab('drybench week --shop rec', folder)).toEqual(['recipes']);
      await Promise.resolve();
    }));
});

describe.skipIf(!there('fish'))('in a real fish', () => {
  /** What fish offers at a press of Tab behind `line`, without what it says of each. */
  function tab(line: string, folder: string): string[] {
    const program = `function drybench; "${process.execPath}" "${join(root, 'bin/drybench.cjs')}" $argv; end`;
    const script = `${program}\ndrybench completion fish | source\ncomplete -C "${line}"`;
    const done = spawnSync('fish', ['--no-config', '-c', script], { cwd: folder, encoding: 'utf8' });
    expect(done.stderr).toBe('');
    return done.stdout.split('\n').flatMap((text) => (text === '' ? [] : [text.split('\t')[0] ?? '']));
  }

  it('Tab offers commands, pieces, steps, files and folders, and never the sign that stands for them', () =>
    inShop({ 'note.ics': '' }, async (folder) => {
      expect(tab('drybench wal', folder)).toEqual(['wall']);
      expect(tab('drybench ready ', folder)).toEqual(['stool']);
      expect(tab('drybench done stool seat/w', folder)).toEqual(['seat/wipe']);
      expect(tab('drybench phone --file note', folder)).toEqual(['note.ics']);
      expect(tab('drybench week --shop rec', folder)).toEqual(['recipes/']);
      await Promise.resolve();
    }));
});

describe('the scripts', () => {
  it.each(shells)('%s takes its script as it is', async (shell) => {
    const { code, out, err } = await drybench(['completion', shell]);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain(' offer -- ');
    if (!there(shell)) return;
    const folder = mkdtempSync(join(tmpdir(), 'drybench-script-'));
    const file = join(folder, 'script');
    writeFileSync(file, out);
    const { stderr } = spawnSync(shell, ['-n', file], { encoding: 'utf8' });
    rmSync(folder, { recursive: true });
    expect(stderr).toBe('');
  });

  it('of another shell is not to be had', async () => {
    const { code, err } = await drybench(['completion', 'cmd']);
    expect(code).toBe(2);
    expect(err).toContain('write one of bash, zsh, fish');
  });
});
