import { readFileSync, writeFileSync } from 'node:fs';

const REPORT = 'build/mutate/mutation.json';
const REASONS = 'tests/mutate/reasons.json';
const SURVIVORS = 'tests/mutate/survivors.md';
const LEAST_PERCENT = 85;

const dead = new Set(['Killed', 'Timeout']);
const alive = new Set(['Survived', 'NoCoverage']);

function originalOf(source, { start, end }) {
  const lines = source.split('\n').slice(start.line - 1, end.line);
  lines[lines.length - 1] = lines.at(-1).slice(0, end.column - 1);
  lines[0] = lines[0].slice(start.column - 1);
  return lines.map((line) => line.trim()).join(' ');
}

function mutantsIn({ files }) {
  return Object.entries(files).flatMap(([file, { source, mutants }]) =>
    mutants.map(({ mutatorName, replacement, status, location }) => ({
      file,
      line: location.start.line,
      mutator: mutatorName,
      original: originalOf(source, location),
      replacement: replacement.replace(/\s+/g, ' '),
      status,
    })),
  );
}

function scoreOf(mutants) {
  const killed = mutants.filter((m) => dead.has(m.status)).length;
  const all = killed + mutants.filter((m) => alive.has(m.status)).length;
  return { killed, all, percent: (100 * killed) / all };
}

/** A reason holds for a file, a kind of change and what stood there, and with `replacement` for one of several changes of it. */
function reasonFor(reasons, mutant) {
  return reasons.find((reason) =>
    ['file', 'mutator', 'original', 'replacement'].every((key) => !(key in reason) || reason[key] === mutant[key]),
  );
}

const folders = ['src/verify', 'src/drying'];
const code = (text) => `\`${text.replaceAll('`', "'").slice(0, 120)}\``;

/** Prints the scores; of a whole run also writes the list of survivors. @returns whether they are high enough, and each survivor has its reason. */
export function tell(isWhole) {
  const mutants = mutantsIn(JSON.parse(readFileSync(REPORT, 'utf8')));
  const reasons = JSON.parse(readFileSync(REASONS, 'utf8'));
  const survivors = mutants.filter((m) => alive.has(m.status));
  const scores = folders
    .map((folder) => ({ folder, ...scoreOf(mutants.filter((m) => m.file.startsWith(`${folder}/`))) }))
    .filter(({ all }) => all > 0);
  for (const { folder, killed, all, percent } of scores)
    console.log(`${folder}: ${killed} of ${all} killed, ${percent.toFixed(1)} %`);
  const bare = survivors.filter((m) => reasonFor(reasons, m) === undefined);
  for (const { file, line, mutator, original, replacement } of bare)
    console.log(`no reason: ${file}:${line} ${mutator}: ${original} => ${replacement}`);
  if (!isWhole) return bare.length === 0;
  // What only takes longer is broken off on a busy machine, and lives on an idle one.
  const mayLive = mutants.filter((m) => alive.has(m.status) || m.status === 'Timeout');
  const idle = reasons.filter((reason) => !mayLive.some((m) => reasonFor([reason], m)));
  for (const { file, original } of idle) console.log(`a reason for what does not survive: ${file}: ${original}`);
  writeFileSync(SURVIVORS, page(scores, survivors, reasons));
  return bare.length === 0 && idle.length === 0 && scores.every(({ percent }) => percent >= LEAST_PERCENT);
}

function page(scores, survivors, reasons) {
  const rows = scores.map(
    ({ folder, killed, all, percent }) => `| ${folder} | ${all} | ${killed} | ${percent.toFixed(1)} % |`,
  );
  const files = [...new Set(survivors.map((m) => m.file))].sort();
  const list = files.flatMap((file) => [
    `\n## ${file}\n`,
    ...survivors
      .filter((m) => m.file === file)
      .map((m) => {
        const why = reasonFor(reasons, m)?.reason ?? 'no reason yet';
        return `- line ${m.line}: ${code(m.original)} → ${code(m.replacement)} (${m.mutator}): ${why}`;
      }),
  ]);
  return [
    '# Mutants that survive',
    '',
    'Written by `npm run mutate` from its report and `reasons.json`. A mutant is one change of one place of the source; it is',
    'killed when a test of its own folder fails, or when it goes round and round.',
    '',
    '| folder | mutants | killed | score |',
    '| --- | --- | --- | --- |',
    ...rows,
    ...list,
    '',
  ].join('\n');
}
