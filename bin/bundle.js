// Puts the program and the packages it uses into few files: hundreds of small ones take longer to open than to run.
import { createHash } from 'node:crypto';
import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { rolldown } from 'rolldown';

const home = fileURLToPath(new URL('..', import.meta.url));
const folder = `${home}dist/program`;

// The package that reads the command line can start commands that are programs of their own; none here is, and what it would
// start them with takes its time to load.
const noProcesses = {
  name: 'no-processes',
  resolveId: (id) => (id === 'node:child_process' ? '\0no-processes' : undefined),
  load: (id) => (id === '\0no-processes' ? 'export default {};' : undefined),
};

/** CommonJS: V8's code of an ES module cannot be kept with the functions that a run has compiled. */
async function bundled(input, cleanDir) {
  const bundle = await rolldown({ input, platform: 'node', cwd: home, plugins: [noProcesses] });
  const { output } = await bundle.write({ dir: folder, format: 'cjs', cleanDir, minify: 'dce-only' });
  await bundle.close();
  return output;
}

const output = await bundled(
  { cli: `${home}src/cli.ts`, 'search-worker': `${home}src/commands/search-worker.ts` },
  true,
);
// For itself, since it loads the others.
await bundled({ start: `${home}src/start.ts` }, false);
writeFileSync(`${folder}/package.json`, '{ "type": "commonjs" }\n');

// What one build has read is nothing to another.
const code = createHash('sha256');
for (const chunk of output) if (chunk.type === 'chunk') code.update(chunk.code);
writeFileSync(`${folder}/stamp.txt`, code.digest('hex'));

const modules = output.flatMap((chunk) => (chunk.type === 'chunk' ? chunk.moduleIds : []));
const packages = new Set(
  modules.flatMap((id) => /^.*[\\/]node_modules[\\/](?:@[^\\/]+[\\/])?[^\\/]+/.exec(id)?.[0] ?? []),
);
writeFileSync(`${folder}/licences.txt`, [...packages].sort().map(licenceOf).join('\n\n'));

/** Their licences ask to be kept with every copy. */
function licenceOf(path) {
  const { name, version, license } = JSON.parse(readFileSync(`${path}/package.json`, 'utf8'));
  const file = readdirSync(path).find((entry) => /^licen[cs]e/i.test(entry));
  if (file === undefined) throw new Error(`${name} comes without a licence file`);
  return `${name} ${version} (${license})\n\n${readFileSync(`${path}/${file}`, 'utf8').trim()}\n`;
}
