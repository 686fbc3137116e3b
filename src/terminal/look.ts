import type { ChalkInstance } from 'chalk';
import { showsUnicode, wantsColour, type Environment } from './colour.ts';
import { toldColumns, usualColumns } from './columns.ts';
import { graphemes, widthOf } from './width.ts';

/** What a stream tells about where its text goes. */
export interface Screen {
  readonly isTTY?: boolean | undefined;
  readonly columns?: number | undefined;
}

const fewestColumns = 30;

function columnsOf(screen: Screen, env: Environment): number {
  const told = toldColumns(screen) ?? Number(env['COLUMNS']);
  return Number.isInteger(told) && told > 0 ? Math.max(told, fewestColumns) : usualColumns;
}

/** Only a terminal has a width. What goes elsewhere is read line by line, so that nothing in it is broken over two. */
const isTerminal = (screen: Screen) => screen.columns !== undefined;

const same = (text: string) => text;

function paints(chalk: ChalkInstance | undefined) {
  return {
    strong: chalk?.bold ?? same,
    quiet: chalk?.dim ?? same,
    good: chalk?.green ?? same,
    warn: chalk?.yellow ?? same,
    bad: chalk?.red ?? same,
  };
}

/** How text is to look on `screen`: its width, if it has one, colour or none, all characters or ASCII only (`plain`). */
export async function lookOf(screen: Screen, env: Environment, plain: boolean) {
  // Loaded only for colour: most answers that a script reads have none.
  const chalk = wantsColour(plain, env, screen.isTTY === true)
    ? new (await import('chalk')).Chalk({ level: 1 })
    : undefined;
  const pictureColumns = columnsOf(screen, env);
  return {
    columns: isTerminal(screen) ? pictureColumns : Infinity,
    pictureColumns,
    ascii: plain || !showsUnicode(env),
    paint: paints(chalk),
    widthOf,
    graphemes,
  };
}
