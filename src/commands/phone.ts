import { harmless } from '../terminal/harmless.ts';
import { printJson, tell, wantsJson } from './answers.ts';
import { CannotGoOn, isFlagged, textFlag, type Call, type ExitCode } from './call.ts';
import { calendarWishes } from './calendar-wishes.ts';
import { openShop } from './open-shop.ts';
import { outFile } from './out-file.ts';
import { planOf } from './plan-of.ts';
import { toldCalendar } from './told-calendar.ts';
import { counted, phrase, translated, worded } from '../words/worded.ts';

const advice =
  phrase(`Import it into a calendar of its own: then you can empty that calendar and import it anew at any time.
Many calendars keep an old entry when a file is imported again; one that is subscribed to follows by itself (drybench phone --serve).
`);

async function writeFile(call: Call, file: string): Promise<ExitCode> {
  const to = outFile(call, file);
  const shop = await openShop(call);
  const wishes = await calendarWishes(call, shop);
  const { plan } = await planOf(call, shop);
  const calendar = toldCalendar(call.disk, shop, plan, { ...wishes, form: 'file' }, ({ text }) => {
    to.write(text, 'PRODID:-//Drybench//');
  });
  if (to.path === undefined) return 0;
  if (wantsJson(call)) printJson(call, { format: 'drybench.phone/1', file: to.path, events: calendar.eventCount });
  else
    await tell(
      call,
      worded`Written to ${harmless(file)}: ${counted(calendar.eventCount, '{0} entry', '{0} entries')}.\n${translated(advice)}`,
    );
  return 0;
}

/** Writes the plan as a calendar that a phone can import, or serves it for a phone to subscribe to. */
export async function answer(call: Call): Promise<ExitCode> {
  const file = textFlag(call, 'file');
  const serves = isFlagged(call, 'serve');
  if (file !== undefined && serves)
    throw new CannotGoOn(worded`--file and --serve do not go together`, worded`write one of them`);
  if (file !== undefined) return writeFile(call, file);
  if (serves && isFlagged(call, 'dryRun'))
    throw new CannotGoOn(worded`--dry-run and --serve do not go together`, worded`try it with --file -`);
  if (serves) return (await import('./serve-calendar.ts')).serveCalendar(call);
  throw new CannotGoOn(worded`say where the calendar is to go`, worded`write --file shop.ics, or --serve`);
}
