import { RegExpParser, type AST } from '@eslint-community/regexpp';

// Weber and Seidl, On the degree of ambiguity of finite automata, Theoretical Computer Science 88 (1991) 325-349: a search
// that goes back and forth takes exponential time where some text leads from a place of the pattern to itself in two ways,
// and polynomial time where it leads from one place to itself, to another, and from that to itself.

/** How a text may be gone through in a pattern: a place for each character that it names. */
interface Automaton {
  /** Which of the sample characters each place takes. */
  readonly takes: readonly ReadonlySet<number>[];
  /** Place -> the place that may come next -> in how many ways. */
  readonly follow: readonly Map<number, number>[];
}

interface Part {
  /** In how many ways it may be empty. */
  readonly empty: number;
  readonly first: ReadonlyMap<number, number>;
  readonly last: ReadonlyMap<number, number>;
}

const samples = [
  ...Array.from({ length: 0x100 }, (_, code) => String.fromCodePoint(code)),
  ...['\u0301', '\u200e', '\u2018', '\u2013', '\u2028', '\u202e', '\u2068', '\u2103', '\u2212', '\u6f22', '\u3000'],
  ...['\ud800', '\ufeff', '\uffff', '\ufe0f', '\u{1f1e6}', '\u{1f6cb}'],
];

/** A count as high as this is told from two no more: what counts is whether there is one way or several. */
const MANY = 2;
/** As many repetitions as this are as good as any number. */
const MOST_COPIES = 4;

function merged(a: ReadonlyMap<number, number>, b: ReadonlyMap<number, number>, times = 1): Map<number, number> {
  const sum = new Map(a);
  if (times > 0) for (const [k, n] of b) sum.set(k, Math.min(MANY, (sum.get(k) ?? 0) + n * times));
  return sum;
}

function automatonOf(pattern: AST.Alternative[], flags: string): Automaton {
  const takes: ReadonlySet<number>[] = [];
  const follow: Map<number, number>[] = [];
  const own = flags.replaceAll(/[gyd]/g, '');
  const nothing: Part = { empty: 1, first: new Map(), last: new Map() };

  const place = (raw: string): Part => {
    const test = new RegExp(`^(?:${raw})$`, own);
    takes.push(new Set(samples.flatMap((c, i) => (test.test(c) ? [i] : []))));
    follow.push(new Map());
    const here = new Map([[takes.length - 1, 1]]);
    return { empty: 0, first: here, last: here };
  };
  const join = (from: Part, to: Part): void => {
    for (const [a, n] of from.last)
      for (const [b, m] of to.first) {
        const next = follow[a]!;
        next.set(b, Math.min(MANY, (next.get(b) ?? 0) + n * m));
      }
  };
  const then = (a: Part, b: Part): Part => {
    join(a, b);
    return {
      empty: Math.min(MANY, a.empty * b.empty),
      first: merged(a.first, b.first, a.empty),
      last: merged(b.last, a.last, b.empty),
    };
  };
  const either = (parts: readonly Part[]): Part =>
    parts.reduce((a, b) => ({
      empty: Math.min(MANY, a.empty + b.empty),
      first: merged(a.first, b.first),
      last: merged(a.last, b.last),
    }));
  const ofAll = (alternatives: readonly AST.Alternative[]): Part =>
    either(alternatives.map((a) => a.elements.map(partOf).reduce(then, nothing)));

  function repeated(node: AST.Quantifier): Part {
    const least = Math.min(node.min, MOST_COPIES);
    const isEndless = node.max > MOST_COPIES;
    let part = nothing;
    for (let k = 0; k < least; k += 1) part = then(part, partOf(node.element));
    const more = isEndless ? 1 : node.max - least;
    for (let k = 0; k < more; k += 1) {
      const once = partOf(node.element);
      if (isEndless) join(once, once);
      // An empty repetition is not gone through again.
      part = then(part, { ...once, empty: 1 });
    }
    return part;
  }
  function partOf(node: AST.Element): Part {
    switch (node.type) {
      case 'Character':
      case 'CharacterSet':
      case 'CharacterClass':
      case 'ExpressionCharacterClass':
        return place(node.raw);
      case 'Group':
      case 'CapturingGroup':
        return ofAll(node.alternatives);
      case 'Quantifier':
        return repeated(node);
      // What looks ahead or behind takes nothing; its own pattern is looked at by itself.
      case 'Assertion':
        return nothing;
      case 'Backreference':
        throw new Error(`${node.raw} is not looked through`);
    }
  }
  ofAll(pattern);
  return { takes, follow };
}

/** The strongly connected components of a graph (Tarjan 1972, without recursion): node -> number of its component. */
function components(nodes: Iterable<number>, next: (node: number) => readonly number[]): Map<number, number> {
  const index = new Map<number, number>();
  const low = new Map<number, number>();
  const of = new Map<number, number>();
  const stack: number[] = [];
  for (const root of nodes) {
    if (index.has(root)) continue;
    const path: { node: number; rest: number[] }[] = [];
    const enter = (node: number): void => {
      index.set(node, index.size);
      low.set(node, index.get(node)!);
      stack.push(node);
      path.push({ node, rest: [...next(node)] });
    };
    enter(root);
    while (path.length > 0) {
      const { node, rest } = path.at(-1)!;
      const to = rest.pop();
      if (to !== undefined) {
        if (!index.has(to)) enter(to);
        else if (!of.has(to)) low.set(node, Math.min(low.get(node)!, index.get(to)!));
        continue;
      }
      path.pop();
      const above = path.at(-1);
      if (above) low.set(above.node, Math.min(low.get(above.node)!, low.get(node)!));
      if (low.get(node) !== index.get(node)) continue;
      for (;;) {
        const member = stack.pop()!;
        of.set(member, index.get(node)!);
        if (member === node) break;
      }
    }
  }
  return of;
}

export type Ambiguity = 'exponential' | 'polynomial' | 'none';

function ambiguityOf({ takes, follow }: Automaton): Ambiguity {
  const n = takes.length;
  const all = Array.from({ length: n }, (_, i) => i);
  const single = components(all, (p) => [...follow[p]!.keys()]);
  const inLoop = (p: number, q: number) => single.get(p) === single.get(q);
  // Two ways from one place to the next, which leads back.
  for (const p of all) for (const [q, ways] of follow[p]!) if (ways > 1 && inLoop(p, q)) return 'exponential';

  const meets = all.map((p) => all.map((q) => [...takes[p]!].some((c) => takes[q]!.has(c))));
  const pairNext = (pair: number): number[] => {
    const [p, q] = [Math.floor(pair / n), pair % n];
    return [...follow[p]!.keys()].flatMap((a) =>
      [...follow[q]!.keys()].flatMap((b) => (meets[a]![b]! ? [a * n + b] : [])),
    );
  };
  const pairs = components(
    all.map((p) => p * n + p),
    pairNext,
  );
  for (const [pair, component] of pairs) {
    const [p, q] = [Math.floor(pair / n), pair % n];
    if (p !== q && all.some((r) => pairs.get(r * n + r) === component)) return 'exponential';
  }

  const shared = (a: number, b: number, c: number) => [...takes[a]!].some((s) => takes[b]!.has(s) && takes[c]!.has(s));
  const loops = all.filter((p) => follow[p]!.has(p) || all.some((q) => q !== p && inLoop(p, q)));
  const triple = (a: number, b: number, c: number) => (a * n + b) * n + c;
  const starts = loops.flatMap((p) => loops.flatMap((q) => (p === q ? [] : [[p, q] as const])));
  for (const [p, q] of starts) {
    // Is there a text that leads from p to p, from p to q and from q to q?
    const seen = new Set<number>();
    const open = [[p, p, q] as const];
    while (open.length > 0) {
      const [a, b, c] = open.pop()!;
      for (const x of follow[a]!.keys())
        if (inLoop(x, p))
          for (const y of follow[b]!.keys())
            for (const z of follow[c]!.keys()) {
              const key = triple(x, y, z);
              if (seen.has(key) || !inLoop(z, q) || !shared(x, y, z)) continue;
              seen.add(key);
              open.push([x, y, z] as never);
            }
    }
    if (seen.has(triple(p, q, q))) return 'polynomial';
  }
  return 'none';
}

/** How long a pattern may take over a text that it does not fit in the end; of all that it looks ahead or behind at, too. */
export function ambiguity(pattern: RegExp): Ambiguity {
  const parsed = new RegExpParser({ ecmaVersion: 2025 }).parsePattern(pattern.source, 0, pattern.source.length, {
    unicode: pattern.flags.includes('u'),
    unicodeSets: pattern.flags.includes('v'),
  });
  const patterns: AST.Alternative[][] = [parsed.alternatives];
  const look = (node: AST.Element): void => {
    if (node.type === 'Quantifier') look(node.element);
    if (!('alternatives' in node)) return;
    if (node.type === 'Assertion') patterns.push(node.alternatives);
    node.alternatives.forEach((a) => a.elements.forEach(look));
  };
  parsed.alternatives.forEach((a) => a.elements.forEach(look));
  const found = patterns.map((p) => ambiguityOf(automatonOf(p, pattern.flags)));
  return found.includes('exponential') ? 'exponential' : found.includes('polynomial') ? 'polynomial' : 'none';
}
