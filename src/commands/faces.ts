import type { Command } from './call.ts';

/** What the command line knows of a command before its own file is loaded. */
export interface Face {
  readonly name: string;
  /** As commander writes arguments: `<needed>`, `[optional]`, `[several...]`. */
  readonly words?: string;
  readonly about: string;
  readonly group: 'Plan' | 'Shop' | 'Journal' | 'Share';
  readonly options?: readonly (readonly [flags: string, about: string])[];
  readonly load: () => Promise<Command>;
}

export const faces: readonly Face[] = [
  {
    name: 'week',
    about: 'what to do when, day by day, and what dries meanwhile',
    group: 'Plan',
    options: [
      ['--days <number>', 'how many days to show (default 7)'],
      ['--picture', 'with a small picture of the days'],
      ['--for <seconds>', 'search as long as that for a better plan'],
      ['--look', 'only look: the shop goes on following the plan that it has'],
    ],
    load: () => import('./week.ts'),
  },
  {
    name: 'today',
    about: 'now, next and after; when to coat; what opens and shuts',
    group: 'Plan',
    load: () => import('./today.ts'),
  },
  {
    name: 'ready',
    words: '[piece]',
    about: 'when a piece can be touched, carried, wrapped, handed over',
    group: 'Plan',
    options: [['--all', 'every piece']],
    load: () => import('./ready.ts'),
  },
  {
    name: 'why',
    words: '<piece> <step>',
    about: 'what holds a step where it is',
    group: 'Plan',
    load: () => import('./why.ts'),
  },
  {
    name: 'promise',
    words: '<recipe...>',
    about: 'could I take on a piece with these recipes, and when would it be ready',
    group: 'Plan',
    options: [
      ['--by <date>', 'when it is wanted'],
      ['--area <areas>', 'area of each section, or of all: "1.2 m2" or "1.2 m2, 0.4 m2" (default 1 m2)'],
      ['--items <numbers>', 'pieces in each section, or in all: 4 or "1, 4" (default 1)'],
      ['--arrives <time>', 'when it comes in (default: now)'],
      ['--whole <recipe>', 'its joining steps (default: as most pieces have them)'],
      ['--price <money>', 'what it would bring: weighed against what others lose by waiting'],
    ],
    load: () => import('./promise.ts'),
  },
  {
    name: 'compare',
    about: 'the plan beside the same with changes, each by itself',
    group: 'Plan',
    options: [
      ['--warmer <room=difference...>', 'a room heated more: garage=+3K'],
      ['--drier <room=humidity...>', 'a room dried: workshop=45%'],
      ['--slot <station=number...>', 'more places: bench-1=+1'],
      ['--open <date=hours...>', 'open on a day: 2027-01-16=08:00-16:00'],
      ['--helper <date=hours...>', 'another pair of hands on a day: 2027-01-16=08:00-12:00'],
      ['--instead <section=recipe...>', 'another recipe: washstand/body=painted-brushed'],
      ['--material <use=other...>', 'another material: washstand/body/oil-primer=bonding-primer'],
      ['--without <piece...>', 'without a piece'],
      ['--together', 'all changes at once as well'],
      ['--cost <change=money...>', 'what a change costs: helper=40EUR, warmer=12EUR'],
    ],
    load: () => import('./compare.ts'),
  },
  {
    name: 'check',
    about: 'are my files right, and if not, where',
    group: 'Shop',
    load: () => import('./check.ts'),
  },
  {
    name: 'air',
    about: 'the air of each room, and the hours fit for coating',
    group: 'Shop',
    options: [
      ['--days <number>', 'how many days to show (default 2)'],
      ['--reading <text>', 'what the meter says: "13 °C 82 %" (needs no shop)'],
      ['--surface <temp>', 'how warm the surface of the work is: "12 °C"'],
      ['--heat-to <temp>', 'what if the same air were heated: "16 °C"'],
    ],
    load: () => import('./air.ts'),
  },
  {
    name: 'buy',
    about: 'what to buy, how much, and by which day',
    group: 'Shop',
    options: [
      ['--until <date>', 'only for work that begins until then'],
      ['--steps', 'with the steps that use it'],
    ],
    load: () => import('./buy.ts'),
  },
  {
    name: 'price',
    words: '[piece]',
    about: 'what a piece has cost, the hours in it, the price below which it loses',
    group: 'Shop',
    load: () => import('./price.ts'),
  },
  {
    name: 'done',
    words: '<piece> [step]',
    about: 'a step is done',
    group: 'Journal',
    options: [
      ['--from <time>', 'when it began (default: as entered with begun, else its usual time before the end)'],
      ['--to <time>', 'when it was over (default: now)'],
      ['--by <hand...>', 'who did it (default: as planned)'],
      ['--used <amount>', 'how much of its material it took: "0.35 L" (for what the piece costs)'],
      ['--air <text>', 'what the meter said: "18 °C 55 %"'],
    ],
    load: () => import('./done.ts'),
  },
  {
    name: 'begun',
    words: '<piece> [step]',
    about: 'a step is begun and goes on',
    group: 'Journal',
    load: () => import('./begun.ts'),
  },
  {
    name: 'seen',
    words: '<piece> <step> <how>',
    about: 'how a film looks: wet, tacky, dry or hard',
    group: 'Journal',
    load: () => import('./seen.ts'),
  },
  {
    name: 'slip',
    words: '<piece> <step> <until>',
    about: 'a step cannot be done before a time',
    group: 'Journal',
    load: () => import('./slip.ts'),
  },
  {
    name: 'skip',
    words: '<piece> <step>',
    about: 'a step is left out',
    group: 'Journal',
    load: () => import('./skip.ts'),
  },
  {
    name: 'again',
    words: '<piece> <step>',
    about: 'a step is to be done once more',
    group: 'Journal',
    load: () => import('./again.ts'),
  },
  {
    name: 'failed',
    words: '<piece> <step> <fault>',
    about: 'a coat failed: runs, fish-eyes, scratched-through, blush, wrinkles, dust-nibs',
    group: 'Journal',
    load: () => import('./failed.ts'),
  },
  {
    name: 'lead-test',
    words: '<piece> <result>',
    about: 'the lead test of the old paint: found, or none',
    group: 'Journal',
    load: () => import('./lead-test.ts'),
  },
  {
    name: 'undo',
    about: 'take back the last entry of the journal',
    group: 'Journal',
    load: () => import('./undo.ts'),
  },
  {
    name: 'phone',
    about: 'the plan for the calendar of a phone',
    group: 'Share',
    options: [
      ['--file <file>', 'write the calendar to this file (.ics)'],
      ['--serve', 'serve it for a phone to subscribe to, on this machine only'],
      ['--lan', 'serve it in the local network'],
      ['--host <address>', 'serve it at this address'],
      ['--port <number>', 'serve it at this port (default 47631)'],
      ['--for <time>', 'stop serving after this long, e.g. "10 min"'],
      ['--new-address', 'make the address given out so far worthless'],
      ['--only <kinds>', 'only work, drying, window, ready: one or several, with commas'],
      ['--piece <piece>', 'only this piece'],
      ['--hand <hand>', 'only what this hand does'],
      ['--warn <minutes>', 'how long before a window shuts its alarm rings (default 60)'],
    ],
    load: () => import('./phone.ts'),
  },
  {
    name: 'wall',
    about: 'a page to print: the week as a picture with its day sheet, a card for a buyer, or labels',
    group: 'Share',
    options: [
      ['--file <file>', 'write the page to this file (default: wall.html, card-PIECE.html, labels.html)'],
      ['--days <number>', 'how many days to show (default 7)'],
      ['--from <date>', 'first day to show (default: today)'],
      ['--card <piece>', 'a card for the buyer of this piece'],
      ['--labels', 'labels for sections and bags of hardware'],
    ],
    load: () => import('./wall.ts'),
  },
];
