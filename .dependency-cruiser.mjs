import { readFileSync } from 'node:fs';

// The architecture, written down once; which folder may import which stands in tools/layers.json, explained in DEVELOPERS.md.
// Each rule says what to do when it bites.
const mayImport = JSON.parse(readFileSync(new URL('tools/layers.json', import.meta.url), 'utf8'));
const only = (name, comment, from, pkgs) => ({
  name,
  severity: 'error',
  comment,
  from: { path: '^src/', pathNot: from },
  to: { path: `node_modules/(${pkgs})/` },
});
export default {
  forbidden: [
    {
      name: 'no-cycles',
      severity: 'error',
      comment: 'Move the shared part down a layer.',
      from: {},
      to: { circular: true },
    },
    {
      name: 'pure-needs-no-package',
      severity: 'error',
      comment: 'model, geometry and drawing are plain TypeScript; zod lives in model/schema only.',
      from: { path: '^src/(model|geometry|drawing)/', pathNot: '^src/model/schema/' },
      to: { dependencyTypes: ['npm', 'npm-dev', 'npm-peer', 'core'] },
    },
    only(
      'three-only-in-scene',
      'Put three code in src/scene.',
      '^src/scene/',
      'three|@types/three|@react-three',
    ),
    only(
      'manifold-only-in-solids',
      'Bodies are made and packed in src/solids.',
      '^src/solids/',
      'manifold-3d|fflate',
    ),
    only(
      'storage-only-in-persist',
      'Storage and files are the business of src/persist.',
      '^src/persist/',
      'dexie|browser-fs-access',
    ),
    only('zod-only-in-schema', 'Schemas live in src/model/schema.', '^src/model/schema/', 'zod'),
    only(
      'react-only-in-views',
      'React belongs to panels, scene and app.',
      '^src/(panels|scene|app)/',
      'react|react-dom',
    ),
    {
      name: 'no-dep-on-test',
      severity: 'error',
      comment: 'src never imports tests, bench or tools.',
      from: { path: '^src/' },
      to: { path: '^(tests|bench|tools)/' },
    },
    {
      name: 'no-inter-test',
      severity: 'error',
      comment: 'Shared test code goes to tests/support.',
      from: { path: '^tests/' },
      to: { path: '\\.(test|spec|prop\\.test)\\.tsx?$' },
    },
    {
      name: 'no-orphans',
      severity: 'error',
      comment: 'Nothing reaches this file: delete it or use it.',
      from: { orphan: true, path: '^src/', pathNot: '\\.d\\.ts$' },
      to: {},
    },
    ...Object.entries(mayImport).map(([layer, ok]) => ({
      name: `${layer}-imports-only-below`,
      severity: 'error',
      comment: 'See the layer table in DEVELOPERS.md.',
      from: { path: `^src/${layer}/` },
      to: { path: '^src/', pathNot: `^src/(${ok.join('|')})/` },
    })),
  ],
  options: {
    tsConfig: { fileName: 'tsconfig.json' },
    tsPreCompilationDeps: true,
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '^(dist|reports)/' },
  },
};
