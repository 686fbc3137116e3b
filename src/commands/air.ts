import { answerReading } from '../air/reading.ts';
import { readingDocument } from '../reports/reading-document.ts';
import { noteText, readingScreen } from '../reports/reading.ts';
import { answerLook, print, printJson, wantsJson } from './answers.ts';
import { CannotGoOn, textFlag, type Call, type ExitCode } from './call.ts';
import { readAir, readTemp } from './read-air.ts';
import { worded } from '../words/worded.ts';

/** What the meter on the wall says now, for coating: needs no shop. */
async function answerMeter(call: Call, written: string): Promise<ExitCode> {
  const [surface, heatTo] = [textFlag(call, 'surface'), textFlag(call, 'heatTo')];
  const surfaceC = surface === undefined ? undefined : readTemp('--surface', surface);
  const heatToC = heatTo === undefined ? undefined : readTemp('--heat-to', heatTo);
  const reading = readAir('--reading', written);
  const answered = answerReading({ ...reading, ...(surfaceC !== undefined && { surfaceC }) }, heatToC);
  const units = /°?\s*F\b/i.test(written) ? 'us' : 'metric';
  if (wantsJson(call)) {
    printJson(call, readingDocument(answered, surfaceC !== undefined, units));
    for (const note of answered.warnings) call.io.stderr.write(`drybench: ${noteText(note, answered, { units })}\n`);
  } else print(call, readingScreen(answered, { units }, await answerLook(call)));
  return 0;
}

/** The air of each room through the coming days; or, with --reading, what one reading means. */
export async function answer(call: Call): Promise<ExitCode> {
  const reading = textFlag(call, 'reading');
  if (reading !== undefined) return answerMeter(call, reading);
  for (const name of ['surface', 'heatTo'])
    if (textFlag(call, name) !== undefined)
      throw new CannotGoOn(
        worded`--surface and --heat-to go with --reading`,
        worded`write --reading "13 °C 82 %" as well`,
      );
  const { answerRooms } = await import('./air-of-rooms.ts');
  return answerRooms(call);
}
