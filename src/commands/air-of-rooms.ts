import { shopAir } from '../air/shop-air.ts';
import { readPlan } from '../files/plan-file.ts';
import { openSpans } from '../model/hours.ts';
import type { Learned } from '../model/learned.ts';
import type { Situation } from '../model/situation.ts';
import { learnedMaterials } from '../planning/factors.ts';
import { situationOf } from '../planning/situation-of.ts';
import { airDocument } from '../reports/air-document.ts';
import { doubtLines, doubtsOf } from '../reports/doubts.ts';
import { lessonLines, lessonsDocument } from '../reports/learned.ts';
import { roomAirScreen, type RoomAir } from '../reports/room-air.ts';
import { harmless, harmlessData } from '../terminal/harmless.ts';
import { localDay } from '../time/zone.ts';
import { answerLook, print, printJson, wantsJson } from './answers.ts';
import { numberFlag, type Call, type ExitCode } from './call.ts';
import { openShop } from './open-shop.ts';
import { worded } from '../words/worded.ts';

const DAY = 1440;

/** Materials that are still to be laid down. */
function stillLaid({ tasks, done }: Situation): ReadonlySet<string> {
  const open = tasks.filter((t) => !done.has(t.id));
  return new Set(open.flatMap((t) => t.ways.flatMap((w) => w.film?.material ?? [])));
}

/** The air of each room of the shop through the coming days. */
export async function answerRooms(call: Call): Promise<ExitCode> {
  const count = numberFlag(call, 'days', 2, 1, 14);
  const { book, folder, manner } = await openShop(call);
  const days = Array.from({ length: count }, (_, plus) => localDay(manner.now, manner.zone, plus));
  // A day before, for the work has followed the air; two days after, for some coats mind how cold it gets by then.
  const air = shopAir(book.shop, (days[0]?.start ?? manner.now) - DAY, (days.at(-1)?.end ?? manner.now) + 2 * DAY);
  const { plan: kept } = readPlan(folder);
  const situation = situationOf(book, manner.now);
  const lessons = { materials: learnedMaterials(situation, air, kept), hands: new Map<string, Learned>() };
  const laid = stillLaid(situation);
  const doubts = doubtsOf(laid, book);
  const materials = [...book.materials.values()].filter((m) => laid.size === 0 || laid.has(m.id)).map(harmlessData);
  const open = openSpans(book.shop.opening, manner.zone, days[0]?.start ?? manner.now, days.at(-1)?.end ?? manner.now);
  const rooms = book.shop.rooms.flatMap((room): (RoomAir & { readonly id: string })[] => {
    const series = air.get(room.id);
    return series === undefined ? [] : [{ id: room.id, name: harmless(room.name), series, days, materials, open }];
  });
  if (wantsJson(call))
    printJson(call, {
      format: 'drybench.air/1',
      timeZone: manner.zone,
      rooms: rooms.map((r) => airDocument(r.id, r, manner)),
      learned: lessonsDocument(lessons).materials,
      doubts,
    });
  else {
    const look = await answerLook(call);
    print(call, rooms.map((room) => roomAirScreen(room, manner, look)).join('\n'));
    const after = [
      ...lessonLines(lessons, harmlessData(book), look),
      ...doubtLines(doubts, look, worded`What these speeds and hours rest on`),
    ];
    if (after.length > 0) print(call, `\n${after.join('\n')}\n`);
  }
  return 0;
}
