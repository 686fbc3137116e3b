import { Command as Program, CommanderError, Help } from 'commander';
import { asWideAsAsked } from './commands/asked-width.ts';
import { CannotGoOn, isFlagged, type Call, type ExitCode } from './commands/call.ts';
import { faces, type Face } from './commands/faces.ts';
import { speakAsAsked } from './commands/language.ts';
import { about, care, commonOptions } from './commands/program.ts';
import { namesWorded, usageTrouble } from './commands/usage.ts';
import { realDisk } from './files/disk.ts';
import { shippedVersion } from './files/shipped.ts';
import { toldColumns, usualColumns } from './terminal/columns.ts';
import { harmlessLines } from './terminal/harmless.ts';
import { processIo, type Io, type Output } from './terminal/io.ts';
import { phrase, translated, worded } from './words/worded.ts';

const columnsOf = (screen: Output) => toldColumns(screen) ?? usualColumns;

/** Broken between words; the program has no layout loaded here. */
function careFor(io: Io): string {
  return `\n${new Help().boxWrap(translated(care), Math.min(columnsOf(io.stdout), 100))}`;
}

/** An entry of the help; what it means stands below where there is no room beside it. */
function formatItem(this: Help, term: string, termWidth: number, about: string, help: Help): string {
  const width = help.helpWidth ?? usualColumns;
  if (width - termWidth - 4 >= 30) return Help.prototype.formatItem.call(this, term, termWidth, about, help);
  const below = help.boxWrap(about, width - 6).replaceAll(/^/gm, '      ');
  return `  ${term}${about === '' ? '' : `\n${below}`}`;
}

/** `drybench week [options]` */
function commandUsage(this: Help, command: Program): string {
  return namesWorded(Help.prototype.commandUsage.call(this, command));
}

/** `week [options]` */
function subcommandTerm(this: Help, command: Program): string {
  return namesWorded(Help.prototype.subcommandTerm.call(this, command));
}

/** Asked by the scripts of shells only: no help and no manual names it. */
const offer: Face = {
  name: 'offer',
  words: '<line>',
  about: phrase('what may stand at the end of a line'),
  group: 'Shell',
  load: () => import('./commands/offer.ts'),
};

/** For a script as a document, like all else. */
function versionText(words: readonly string[]): string {
  const version = shippedVersion();
  if (!words.includes('--json')) return `drybench ${version}\n`;
  return `${JSON.stringify({ format: 'drybench.version/1', version }, undefined, 2)}\n`;
}

function programOf(words: readonly string[], io: Io, onAnswer: (code: ExitCode) => void): Program {
  const program = new Program('drybench')
    .description(translated(about))
    .helpOption('-h, --help', worded`display help for command`)
    .configureHelp({
      showGlobalOptions: true,
      minWidthToWrap: 20,
      formatItem,
      styleTitle: translated,
      commandUsage,
      subcommandTerm,
      optionTerm: ({ flags }) => namesWorded(flags),
    })
    .addHelpText('after', () => careFor(io))
    .exitOverride()
    .showSuggestionAfterError()
    .helpCommand(false)
    .configureOutput({
      writeOut: (text) => io.stdout.write(text),
      getOutHelpWidth: () => columnsOf(io.stdout),
      getErrHelpWidth: () => columnsOf(io.stderr),
      getOutHasColors: () => false,
      getErrHasColors: () => false,
      // Said as every other error, below.
      outputError: () => undefined,
    });
  for (const [flags, text] of commonOptions) program.option(flags, translated(text));
  program.on('option:version', () => {
    io.stdout.write(versionText(words));
    throw new CommanderError(0, 'commander.version', '');
  });
  for (const face of faces) program.addCommand(commandOf(face, program, io, onAnswer));
  program.addCommand(commandOf(offer, program, io, onAnswer), { hidden: true });
  return program;
}

function commandOf(face: Face, program: Program, io: Io, onAnswer: (code: ExitCode) => void): Program {
  const command = new Program(face.name)
    .copyInheritedSettings(program)
    .description(translated(face.about))
    .helpGroup(`${translated(face.group)}:`)
    .allowExcessArguments(false);
  if (face.words !== undefined) command.arguments(face.words);
  for (const [flags, text] of face.options ?? []) command.option(flags, translated(text));
  return command.action(async () => {
    const loaded = await face.load();
    const call: Call = {
      words: command.args,
      flags: command.optsWithGlobals(),
      io,
      disk: realDisk,
      halt: { early: false },
    };
    if (isFlagged(call, 'dryRun'))
      onAnswer(await (await import('./commands/dry-run.ts')).answerDry(face, loaded, call));
    else onAnswer(await loaded.answer(call));
    if (!call.halt.early) return;
    io.stderr.write(worded`drybench: stopped early; this is the best that was found until then\n`);
    onAnswer(130);
  });
}

/** What went wrong, for a person: one line each, never a stack unless that is asked for. */
async function failure(error: unknown, io: Io, words: readonly string[]): Promise<ExitCode> {
  // The help or the version was asked for.
  if (error instanceof CommanderError && error.exitCode === 0) return 0;
  const trouble = await troubleOf(error, words);
  const { complaint, troubleJson } = await import('./commands/complain.ts');
  if (words.includes('--json')) io.stderr.write(troubleJson(trouble));
  else io.stderr.write(await complaint(trouble, io));
  const isAsked = words.includes('--debug') || io.env['DRYBENCH_DEBUG'] === '1';
  if (trouble.exitCode === 70 && isAsked && error instanceof Error)
    io.stderr.write(`${harmlessLines(error.stack ?? '')}\n`);
  return trouble.exitCode;
}

/** The command that a line begins with. */
function commandIn(words: readonly string[]): string | undefined {
  const first = words.find((word) => !word.startsWith('-'));
  return faces.find((face) => face.name === first)?.name;
}

/** What is to be said of an error, and the exit code that it ends with. */
async function troubleOf(error: unknown, words: readonly string[]): Promise<CannotGoOn> {
  if (error instanceof CannotGoOn) return error;
  if (error instanceof CommanderError) {
    const { message, advice } = usageTrouble(error.message, commandIn(words));
    return new CannotGoOn(message, advice);
  }
  const { FileTrouble } = await import('./files/file-trouble.ts');
  if (error instanceof FileTrouble)
    return new CannotGoOn(error.message, undefined, error.kind === 'cannot-write' ? 2 : 75);
  const text = error instanceof Error ? error.message : String(error);
  return new CannotGoOn(worded`a defect in Drybench, not in your files: ${text}`, undefined, 70);
}

/** Runs one command. @returns its exit code; see ExitCode. */
export async function run(words: readonly string[], process: Io = processIo()): Promise<ExitCode> {
  let code: ExitCode = 0;
  let io = process;
  try {
    await speakAsAsked(words, io);
    io = asWideAsAsked(words, io);
    const program = programOf(words, io, (answered) => (code = answered));
    if (words.length === 0) io.stdout.write(`${program.helpInformation()}${careFor(io)}\n`);
    else await program.parseAsync(words, { from: 'user' });
    return code;
  } catch (error) {
    return failure(error, io, words);
  }
}
