import { findingsScreen } from '../reports/findings.ts';
import { paragraph, paragraphs } from '../reports/layout.ts';
import { harmless, harmlessJson } from '../terminal/harmless.ts';
import type { Io } from '../terminal/io.ts';
import { lookOf } from '../terminal/look.ts';
import type { CannotGoOn } from './call.ts';

/** Why a command cannot go on, with what was found and what to do. */
export async function complaint(problem: CannotGoOn, io: Io): Promise<string> {
  const look = await lookOf(io.stderr, io.env, false);
  const found = problem.findings.length === 0 ? '' : `${findingsScreen(problem.findings, look, harmless)}\n`;
  const details = problem.details.flatMap((text) => paragraph(`- ${harmless(text)}`, look, 2, (t) => t, 4));
  const advice = problem.advice === undefined ? [] : paragraph(harmless(problem.advice), look, 2);
  const message = paragraphs(`drybench: ${harmless(problem.message)}`, look);
  return `${found}${[message, ...details, ...advice].join('\n')}\n`;
}

/** The same as one line of JSON, for a script. */
export function troubleJson({ message, details, advice, findings, exitCode }: CannotGoOn): string {
  const trouble = {
    format: 'drybench.trouble/1',
    exitCode,
    message,
    ...(details.length > 0 && { details }),
    ...(advice !== undefined && { advice }),
    ...(findings.length > 0 && { findings }),
  };
  return `${harmlessJson(JSON.stringify(trouble))}\n`;
}
