// Type-aware rules, React's rules of hooks, and the bans of DEVELOPERS.md. Formatting is Biome's.
import hooks from 'eslint-plugin-react-hooks';
import tseslint from 'typescript-eslint';

const pure = ['src/model/**', 'src/geometry/**', 'src/drawing/**'];
const ban = (selector, message) => ({ selector, message });
const storage = [
  ban(
    'Identifier[name=/^(localStorage|sessionStorage|indexedDB)$/]',
    'Storage is the business of src/persist.',
  ),
  ban(
    "MemberExpression[object.name='navigator'][property.name='storage']",
    'Storage is the business of src/persist.',
  ),
];
const frame = [
  ban(
    'CallExpression[callee.name=/^(requestAnimationFrame|useFrame)$/]',
    'Time runs in one place: src/scene/animation-driver.tsx, src/app/motion.ts, src/app/main.ts (the first paint) or camera code.',
  ),
];
const chance = [
  ban(
    "MemberExpression[object.name='Math'][property.name='random']",
    'The pure layers give the same answer every time: pass a seed in.',
  ),
  ban("Identifier[name='Date']", 'The pure layers know no clock: pass the time in.'),
  ban('CallExpression[callee.name=/^(setTimeout|setInterval)$/]', 'No timers in the pure layers.'),
];
const defaultExport = [ban('ExportDefaultDeclaration', 'Named exports only.')];

export default tseslint.config(
  {
    ignores: [
      'dist/',
      'node_modules/',
      'reports/',
      'public/',
      'test-output/',
      '*.mjs',
      '.dependency-cruiser.mjs',
      'tools/*.mjs',
    ],
  },
  {
    files: ['**/*.ts', '**/*.tsx'],
    extends: [...tseslint.configs.strictTypeChecked],
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
    plugins: { 'react-hooks': hooks },
    rules: {
      ...hooks.configs.recommended.rules,
      'max-lines': ['error', { max: 400, skipBlankLines: true, skipComments: false }],
      'max-lines-per-function': ['error', { max: 120, skipBlankLines: true, skipComments: true }],
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      '@typescript-eslint/no-confusing-void-expression': ['error', { ignoreArrowShorthand: true }],
      '@typescript-eslint/switch-exhaustiveness-check': 'error',
      '@typescript-eslint/consistent-type-imports': 'error',
      'no-restricted-syntax': ['error', ...storage, ...frame, ...defaultExport],
    },
  },
  {
    files: pure,
    rules: {
      'no-restricted-syntax': ['error', ...storage, ...frame, ...chance, ...defaultExport],
      'max-lines-per-function': ['error', { max: 80, skipBlankLines: true, skipComments: true }],
    },
  },
  { files: ['src/persist/**'], rules: { 'no-restricted-syntax': ['error', ...frame, ...defaultExport] } },
  {
    files: [
      'src/scene/animation-driver.tsx',
      'src/scene/camera*.tsx',
      'src/app/motion.ts',
      'src/app/main.ts',
    ],
    rules: { 'no-restricted-syntax': ['error', ...storage, ...defaultExport] },
  },
  {
    files: ['tests/**', 'bench/**', 'tools/**', 'vite.config.ts'],
    rules: {
      'no-restricted-syntax': 'off',
      'max-lines-per-function': 'off',
      '@typescript-eslint/no-non-null-assertion': 'off',
    },
  },
  { files: ['**/*-table.ts'], rules: { 'max-lines': 'off' } },
);
