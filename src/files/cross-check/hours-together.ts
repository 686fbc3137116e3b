import { weekdays, type ClockSpan, type Hours, type Shop, type Weekday } from '../../model/shop.ts';

function common(a: readonly ClockSpan[], b: readonly ClockSpan[]): ClockSpan[] {
  return a.flatMap((x) =>
    b.map((y) => ({ from: Math.max(x.from, y.from), to: Math.min(x.to, y.to) })).filter((s) => s.from < s.to),
  );
}

function spansOn(hours: Hours, date: string | undefined, weekday: Weekday): readonly ClockSpan[] {
  return (date === undefined ? undefined : hours.days[date]) ?? hours.week[weekday];
}

function weekdayOf(date: string): Weekday {
  return weekdays[(new Date(`${date}T00:00Z`).getUTCDay() + 6) % 7] ?? 'monday';
}

/** The longest stretch of a day that the same `people` are in for, each with a list of spans. */
function longestShared(spansOfEach: readonly (readonly ClockSpan[])[], people: number): number {
  const spans = spansOfEach.flat();
  const lengths = spans.map(({ from }) => {
    const ends = spans.filter((s) => s.from <= from && from < s.to).map((s) => s.to);
    const lastTogether = ends.sort((a, b) => b - a)[people - 1];
    return lastTogether === undefined ? 0 : lastTogether - from;
  });
  return Math.max(0, ...lengths);
}

/**
 * The longest stretch in one go, on any day, that the shop is open and `people` hands with the skill are in together, by
 * the hours that come every week and those of single days; in minutes.
 */
export function longestTogether({ opening, hands }: Shop, skill: string | undefined, people: number): number {
  const able = hands.filter((hand) => skill === undefined || hand.skills.includes(skill));
  const dates = [opening, ...able.map((hand) => hand.hours)].flatMap((hours) => Object.keys(hours.days));
  const days = [
    ...weekdays.map((weekday) => ({ date: undefined, weekday })),
    ...dates.map((date) => ({ date, weekday: weekdayOf(date) })),
  ];
  return Math.max(
    ...days.map(({ date, weekday }) => {
      const open = spansOn(opening, date, weekday);
      return longestShared(
        able.map(({ hours }) => common(open, spansOn(hours, date, weekday))),
        people,
      );
    }),
  );
}
