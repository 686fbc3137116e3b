import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';
import { Script } from 'node:vm';
import { rolldown } from 'rolldown';

/**
 * A file of tests with the sources it uses, as one function, called afresh for each mutant so that no cache outlives one.
 * Of the sources, those that `isMutated` are taken from here, where all mutants are in them; the rest from `original`, a
 * tree without, since asking at each step which mutant is on makes them many times as slow.
 */
export async function bundled(file, original, isMutated) {
  const here = process.cwd();
  const bundle = await rolldown({
    input: file,
    platform: 'node',
    external: (id) => /^[^./\0]/.test(id) && !id.startsWith(here),
    plugins: [
      {
        name: 'with-few-mutants',
        load: (id) =>
          id.startsWith(`${here}/src/`) && !isMutated(id.slice(here.length + 1))
            ? readFileSync(`${original}${id.slice(here.length)}`, 'utf8')
            : undefined,
        transform: withOwnUrl,
      },
    ],
    logLevel: 'silent',
  });
  const { output } = await bundle.generate({ format: 'cjs', codeSplitting: false });
  await bundle.close();
  const { code } = output[0];
  const script = new Script(`(function (require, module, exports) {${code}\n})`, { filename: file });
  const run = script.runInThisContext();
  const requireHere = createRequire(`${here}/`);
  const start = (given) => run((id) => given[id] ?? requireHere(id), { exports: {} }, {});
  return { start, code: code.replaceAll(pathToFileURL(here).href, '') };
}

/** Bundled, a module would take the bundle's place for its own. */
function withOwnUrl(code, id) {
  return code.includes('import.meta.url')
    ? code.replaceAll('import.meta.url', JSON.stringify(pathToFileURL(id).href))
    : undefined;
}
