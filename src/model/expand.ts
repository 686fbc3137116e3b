import type { Book } from './book.ts';
import { filmNeeds, type LaidFilm, preparationNeeds } from './film-needs.ts';
import type { Material, Preparation } from './material.ts';
import { withOilyRags } from './oily-rags.ts';
import type { Piece, Section } from './piece.ts';
import { preparationWork } from './preparation.ts';
import type { Recipe, RecipeStep, RecipeWay, StepLink } from './recipe.ts';
import { roundUp } from './round-up.ts';
import { type ChainStep, findStep, insertJoin, sectionSteps } from './section-steps.ts';
import { slotParts } from './slot-parts.ts';
import type { Need, Task, Way } from './task.ts';
import { translated, worded } from '../words/worded.ts';

/** The section under which the joining steps of a whole piece stand. */
export const WHOLE = 'whole';

interface Chain {
  readonly section: Section;
  readonly object: string;
  readonly steps: readonly ChainStep[];
}

function must<T>(value: T | undefined, what: string): T {
  if (value === undefined) throw new Error(`${what} is missing, though the files were checked`);
  return value;
}

function taskId(piece: Piece, section: string, step: string): string {
  return `${piece.id}/${section}/${step}`;
}

/** What comes before and after the coat itself, and all together. */
function minutesOf(
  book: Book,
  way: RecipeWay,
  section: Section,
  shares: boolean,
): Pick<Way, 'workMinutes' | 'inSession'> {
  const { fixedMinutes, minutesPerM2, minutesPerItem, mixMinutes = 0 } = way.time;
  const work = fixedMinutes + minutesPerM2 * section.areaM2 + minutesPerItem * section.items;
  const tools = book.shop.tools.filter((tool) => way.tools.includes(tool.id));
  const before = mixMinutes + tools.reduce((sum, tool) => sum + tool.setUpMinutes, 0);
  const after = tools.reduce((sum, tool) => sum + tool.washUpMinutes, 0);
  return {
    workMinutes: roundUp(before + work + after),
    ...(shares &&
      before + after > 0 && {
        inSession: { first: roundUp(before + work), middle: roundUp(work), last: roundUp(work + after) },
      }),
  };
}

function wayOf(book: Book, way: RecipeWay, step: RecipeStep, section: Section, material: Material | undefined): Way {
  const film = material !== undefined && material.mechanism !== 'none';
  return {
    name: way.name,
    // Glue is mixed joint by joint.
    ...minutesOf(book, way, section, film && material.family !== 'glue'),
    stations: way.stations,
    tools: way.tools,
    ...(way.skill !== undefined && { skill: way.skill }),
    ...(film && way.transferEfficiency < 1 && { transfer: way.transferEfficiency }),
    ...(film && {
      film: {
        material: material.id,
        thickness: way.thickness,
        ...(step.depthMm !== undefined && { depthMm: step.depthMm }),
      },
    }),
  };
}

function materialOf(book: Book, step: RecipeStep, section: Section): Material | undefined {
  if (step.material === undefined) return undefined;
  const id = section.materials[step.material] ?? step.material;
  return must(book.materials.get(id), `material ${id}`);
}

/** The whole piece as if it were one section. */
export function wholeSection(piece: Piece): Section {
  return {
    id: WHOLE,
    name: piece.name,
    recipe: piece.whole ?? '',
    areaM2: piece.sections.reduce((sum, s) => sum + s.areaM2, 0),
    items: piece.sections.reduce((sum, s) => sum + s.items, 0),
    thicknessMm: Math.max(...piece.sections.map((s) => s.thicknessMm)),
    materials: {},
    without: [],
  };
}

/** Section whose place `section` shares: itself, or the one that it cannot be taken off. */
export function rootOf(piece: Piece, section: Section): string {
  const seen = new Set<string>();
  let root = section;
  while (root.attachedTo !== undefined && !seen.has(root.id)) {
    seen.add(root.id);
    root = must(
      piece.sections.find((s) => s.id === root.attachedTo),
      `section ${root.attachedTo}`,
    );
  }
  return root.id;
}

function sectionChain(book: Book, piece: Piece, section: Section): Chain {
  const recipe = must(book.recipes.get(section.recipe), `recipe ${section.recipe}`);
  const joins = piece.joins.filter((j) => j.section === section.id);
  const steps = slotParts(recipe.steps, section.with ?? [], book.parts ?? new Map());
  return {
    section,
    object: `${piece.id}/${rootOf(piece, section)}`,
    steps: joins.reduce<readonly ChainStep[]>(insertJoin, sectionSteps(steps, section)),
  };
}

function wholeChain(piece: Piece, recipe: Recipe | undefined, which: 'begin' | 'end'): Chain {
  const section = wholeSection(piece);
  const steps = (recipe?.steps ?? []).filter((s) => (s.joins ?? 'end') === which);
  return { section, object: `${piece.id}/${WHOLE}`, steps: sectionSteps(steps, section) };
}

function linkNeeds(link: StepLink, target: string): Need[] {
  return [
    link.mark === undefined
      ? { kind: 'order', task: target, waitHours: link.waitHours ?? 0 }
      : { kind: 'mark', task: target, mark: link.mark },
    ...(link.mark !== undefined && link.waitHours !== undefined
      ? [{ kind: 'order' as const, task: target, waitHours: link.waitHours }]
      : []),
    ...(link.atMostHours === undefined
      ? []
      : [{ kind: 'within' as const, task: target, hours: link.atMostHours, why: worded`the recipe says so` }]),
  ];
}

/** The tasks of one piece, in the order begin, sections, end. Expects files that were checked. */
export function expandPiece(book: Book, piece: Piece): readonly Task[] {
  const whole = piece.whole === undefined ? undefined : must(book.recipes.get(piece.whole), `recipe ${piece.whole}`);
  const begin = wholeChain(piece, whole, 'begin');
  const end = wholeChain(piece, whole, 'end');
  const sections = piece.sections.map((s) => sectionChain(book, piece, s));
  const chains = [begin, ...sections, end];

  const resolve = (name: string, from: Chain, which: 'first' | 'last'): string => {
    const [sectionId, step] = name.includes('/') ? name.split('/') : [from.section.id, name];
    for (const chain of chains) {
      if (chain.section.id !== sectionId) continue;
      const found = findStep(chain.steps, step ?? '', which);
      if (found !== undefined) return taskId(piece, chain.section.id, found.id);
    }
    throw new Error(`step ${name} is missing, though the files were checked`);
  };
  const filmsOf = (chain: Chain, upTo = chain.steps.length): (LaidFilm & { readonly index: number })[] =>
    chain.steps.slice(0, upTo).flatMap((s, index) => {
      const material = materialOf(book, s.recipeStep, chain.section);
      if (material === undefined || material.mechanism === 'none') return [];
      return [{ task: taskId(piece, chain.section.id, s.id), material, index }];
    });
  const lastOf = (chain: Chain): string[] => {
    const last = chain.steps.at(-1);
    return last === undefined ? [] : [taskId(piece, chain.section.id, last.id)];
  };

  const askedOf = new Map<string, Need[]>();
  for (const chain of chains)
    for (const step of chain.steps)
      for (const link of step.recipeStep.before ?? []) {
        const target = resolve(link.step, chain, 'first');
        const needs = linkNeeds(link, taskId(piece, chain.section.id, step.id));
        askedOf.set(target, [...(askedOf.get(target) ?? []), ...needs]);
      }

  const entryNeeds = (chain: Chain): Need[] => {
    const awaited = chain === begin ? [] : chain === end ? sections.flatMap(lastOf) : lastOf(begin);
    const fallBack = chain === end && awaited.length === 0 ? lastOf(begin) : awaited;
    return fallBack.map((task) => ({ kind: 'order', task, waitHours: 0 }));
  };

  const tasksOfStep = (chain: Chain, step: ChainStep, index: number): Task[] => {
    const id = taskId(piece, chain.section.id, step.id);
    const { recipeStep } = step;
    const material = materialOf(book, recipeStep, chain.section);
    const links = recipeStep.after ?? [];
    const own = links.filter((l) => !l.step.includes('/') || l.step.startsWith(`${chain.section.id}/`));
    const previous = chain.steps[index - 1];
    const chainNeeds: Need[] =
      own.length > 0
        ? []
        : previous === undefined
          ? entryNeeds(chain)
          : [{ kind: 'order', task: taskId(piece, chain.section.id, previous.id), waitHours: 0 }];
    const earlier =
      chain === begin ? [] : chain === end ? [begin, ...sections].flatMap((c) => filmsOf(c)) : filmsOf(begin);
    const ownFilms = filmsOf(chain, index);
    const between = (film: LaidFilm): RecipeStep[] => {
      const laid = ownFilms.find((f) => f.task === film.task);
      return chain.steps.slice((laid?.index ?? -1) + 1, index).map((s) => s.recipeStep);
    };
    const unmasks = recipeStep.unmasks;
    const masked = unmasks === undefined ? undefined : resolve(unmasks, chain, 'last');
    const needs = [
      ...chainNeeds,
      ...links.flatMap((l) => linkNeeds(l, resolve(l.step, chain, 'last'))),
      ...(askedOf.get(id) ?? []),
      ...(masked === undefined ? [] : tapeNeeds(book, chains, piece, masked)),
      ...filmNeeds(id, recipeStep, material, [...earlier, ...ownFilms], between),
    ];
    const common = {
      piece: piece.id,
      section: chain.section.id,
      people: recipeStep.people,
      object: chain.object,
    };
    const task: Task = {
      ...common,
      id,
      step: step.id,
      title: recipeStep.title,
      stage: recipeStep.stage,
      ...(step.coat !== undefined && { coat: step.coat }),
      ways: recipeStep.ways.map((w) => wayOf(book, w, recipeStep, chain.section, material)),
      dusty: recipeStep.dusty,
      // A film that is half laid cannot wait for tomorrow.
      mayPause: recipeStep.mayPause && (material === undefined || material.mechanism === 'none'),
      needs: withoutRepeats(needs),
      ...(recipeStep.disturbsOldPaint && { disturbsOldPaint: true as const }),
      gated: piece.mayCarryLead && recipeStep.disturbsOldPaint,
      thicknessMm: chain.section.thicknessMm,
      ...(recipeStep.grit !== undefined && { grit: recipeStep.grit }),
      ...(material !== undefined && { material: material.id }),
      supplies: recipeStep.supplies,
      ...(recipeStep.caution !== undefined && { caution: recipeStep.caution }),
    };
    const films = [...earlier, ...ownFilms];
    return [...preparations(task, films, chain.section, chainNeeds), task];
  };

  return withOilyRags(
    book,
    chains.flatMap((chain) => chain.steps.flatMap((step, index) => tasksOfStep(chain, step, index))),
  );
}

function tapeNeeds(book: Book, chains: readonly Chain[], piece: Piece, masked: string): Need[] {
  const order: Need = { kind: 'order', task: masked, waitHours: 0 };
  for (const chain of chains)
    for (const step of chain.steps) {
      if (taskId(piece, chain.section.id, step.id) !== masked) continue;
      const within = materialOf(book, step.recipeStep, chain.section)?.removeWithin;
      if (within === undefined) return [order];
      return [
        order,
        { kind: 'within', task: masked, hours: within.low, why: worded`the tape must be off again by then` },
      ];
    }
  return [order];
}

/** The optional tasks that the windows of `coat` ask for. `films` holds every film that it has a window of. */
export function preparations(
  coat: Task,
  films: readonly LaidFilm[],
  section: Section,
  chainNeeds: readonly Need[],
): Task[] {
  return coat.needs.flatMap((need) => {
    if (need.kind !== 'window') return [];
    const film = must(
      films.find((f) => f.task === need.task),
      `film of ${need.task}`,
    );
    return need.windows.flatMap((window) =>
      window.prep === undefined || window.prepTask === undefined
        ? []
        : [
            preparation(coat, window.prep, window.prepTask, section, [
              ...chainNeeds,
              ...preparationNeeds(film, window.remedy),
            ]),
          ],
    );
  });
}

function preparation(coat: Task, prep: Preparation, id: string, section: Section, needs: readonly Need[]): Task {
  const work = preparationWork[prep];
  return {
    id,
    piece: coat.piece,
    section: coat.section,
    step: id.slice(id.lastIndexOf('/') + 1),
    title: translated(work.title),
    stage: work.dusty ? 'sand' : 'clean',
    ways: [
      {
        name: '',
        workMinutes: roundUp(work.fixedMinutes + work.minutesPerM2 * section.areaM2),
        stations: work.stations,
        tools: [],
      },
    ],
    people: 1,
    dusty: work.dusty,
    mayPause: work.dusty,
    needs: withoutRepeats(needs),
    onlyFor: coat.id,
    gated: false,
    ...(work.grit !== undefined && { grit: work.grit }),
    supplies: [],
    object: coat.object,
  };
}

function withoutRepeats(needs: readonly Need[]): Need[] {
  const seen = new Set<string>();
  return needs.filter((need) => {
    const key = JSON.stringify(need);
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

const expanded = new WeakMap<Book, readonly Task[]>();

/** The tasks of all pieces, as the files say, before the journal. Worked out once for each book. */
export function expand(book: Book): readonly Task[] {
  let tasks = expanded.get(book);
  if (tasks === undefined) expanded.set(book, (tasks = book.pieces.flatMap((piece) => expandPiece(book, piece))));
  return tasks;
}
