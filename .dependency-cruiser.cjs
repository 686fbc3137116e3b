// The arrows between the folders of src: a folder may import itself and what its row lists, nothing else.
const arrows = {
  words: [],
  time: ['words', 'at'],
  model: ['time', 'words', 'at', 'once-per'],
  air: ['model', 'time', 'words', 'at', 'typed'],
  drying: ['air', 'model', 'time', 'words', 'at', 'once-per', 'typed'],
  engine: ['time', 'at', 'typed'],
  schedule: ['engine', 'drying', 'air', 'model', 'time', 'words', 'at', 'once-per'],
  verify: ['drying', 'air', 'model', 'time', 'words', 'at', 'once-per'],
  planning: ['verify', 'schedule', 'engine', 'drying', 'air', 'model', 'time', 'words', 'at', 'once-per'],
  bookkeeping: ['drying', 'model', 'time', 'words', 'at'],
  intake: ['model', 'time', 'words', 'at'],
  files: ['intake', 'model', 'time', 'air', 'words', 'at'],
  reports: ['intake', 'planning', 'bookkeeping', 'schedule', 'drying', 'air', 'model', 'time', 'words', 'at'],
  terminal: ['words', 'at'],
  phone: ['reports', 'model', 'time', 'terminal', 'words', 'at'],
  commands: ['.*'],
};

// Packages from outside, by folder. Node's own modules count as packages.
const packages = {
  time: ['luxon'],
  files: ['diff', 'yaml', 'zod', 'node:'],
  reports: ['cli-table3', 'node:crypto'],
  terminal: ['chalk', 'get-east-asian-width', 'node:'],
  phone: ['uqr', 'node:'],
  commands: ['commander', 'uqr', 'node:'],
};

const folders = Object.keys(arrows);

const folderRules = folders
  .filter((folder) => folder !== 'commands')
  .map((folder) => ({
    name: `arrows-from-${folder}`,
    comment: `src/${folder} may import only ${['itself', ...arrows[folder]].join(', ')}`,
    severity: 'error',
    from: { path: `^src/${folder}/` },
    to: { path: '^src/', pathNot: [folder, ...arrows[folder]].map((f) => `^src/${f}(/|\\.ts$)`) },
  }));

const packageRules = folders.flatMap((folder) => {
  const allowed = packages[folder] ?? [];
  const rule = (name, to) => ({
    name: `${name}-of-${folder}`,
    comment: `src/${folder} may use only ${allowed.length > 0 ? allowed.join(', ') : 'no package'}`,
    severity: 'error',
    from: { path: `^src/${folder}/` },
    to,
  });
  const nodeModules = allowed.filter((p) => p.startsWith('node:') && p !== 'node:').map((p) => `^${p.slice(5)}$`);
  return [
    rule('packages', {
      path: '^node_modules/',
      pathNot: allowed.filter((p) => !p.startsWith('node:')).map((p) => `^node_modules/(@types/)?${p}/`),
    }),
    ...(allowed.includes('node:') ? [] : [rule('node-modules', { dependencyTypes: ['core'], pathNot: nodeModules })]),
    rule('unresolved', { couldNotResolve: true }),
  ];
});

module.exports = {
  forbidden: [
    { name: 'no-circles', severity: 'error', from: {}, to: { circular: true } },
    {
      name: 'only-commands-below-the-top',
      severity: 'error',
      from: { path: '^src/(?!commands/|cli\\.ts|start\\.ts|index\\.ts)' },
      to: { path: '^src/(commands/|cli\\.ts|start\\.ts|index\\.ts)' },
    },
    ...folderRules,
    ...packageRules,
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'types', 'node', 'default'] },
  },
};
