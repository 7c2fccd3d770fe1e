// The lints, and above all the import rule: kit <- features <- screens, and only ipc knows Tauri and the bindings.
import js from '@eslint/js';
import svelte from 'eslint-plugin-svelte';
import globals from 'globals';
import ts from 'typescript-eslint';
import svelteConfig from './svelte.config.js';

const OUTSIDE_IPC = [
  { regex: '^@tauri-apps/', message: 'Only src/ipc talks to the shell.' },
  { regex: '(^|/)bindings(\\.ts)?$', message: 'Take command types from src/ipc.' },
];
const up = (folder, message) => ({ regex: `(^|/)${folder}(/|$)`, message });

const tier = (files, patterns) => ({
  files: files.flatMap((f) => [`${f}.ts`, `${f}.svelte`]),
  rules: { 'no-restricted-imports': ['error', { patterns }] },
});

export default ts.config(
  { ignores: ['dist', 'dist-gallery', 'node_modules', 'src/ipc/bindings.ts'] },
  js.configs.recommended,
  ...ts.configs.recommendedTypeChecked,
  ...svelte.configs.recommended,
  {
    languageOptions: {
      globals: globals.browser,
      parserOptions: { projectService: true, extraFileExtensions: ['.svelte'] },
    },
    rules: {
      eqeqeq: 'error',
      'no-console': 'error',
      'no-restricted-globals': [
        'error',
        { name: 'alert', message: 'Use Dialog.' },
        { name: 'confirm', message: 'Use Dialog.' },
      ],
    },
  },
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    languageOptions: { parserOptions: { parser: ts.parser, svelteConfig } },
    rules: {
      // The router is our own hash router: there is no SvelteKit whose resolve() this rule asks for.
      'svelte/no-navigation-without-resolve': 'off',
      // Types of snippets and generic components reach the linter as any; svelte-check sees them whole.
      '@typescript-eslint/no-unsafe-argument': 'off',
      '@typescript-eslint/no-unsafe-assignment': 'off',
      '@typescript-eslint/no-unsafe-call': 'off',
      '@typescript-eslint/no-unsafe-member-access': 'off',
      '@typescript-eslint/no-unsafe-return': 'off',
      '@typescript-eslint/no-unnecessary-type-assertion': 'off',
      '@typescript-eslint/no-redundant-type-constituents': 'off',
    },
  },
  tier(
    ['src/kit/**/*'],
    [
      ...OUTSIDE_IPC,
      up('ipc', 'kit knows no command.'),
      up('features', 'kit knows no feature.'),
      up('screens', 'kit knows no screen.'),
    ],
  ),
  tier(['src/features/**/*'], [...OUTSIDE_IPC, up('screens', 'A feature knows no screen.')]),
  tier(['src/screens/**/*', 'src/gallery/**/*', 'src/*'], OUTSIDE_IPC),
  tier(
    ['src/ipc/**/*'],
    [up('kit', 'ipc stands alone.'), up('features', 'ipc stands alone.'), up('screens', 'ipc stands alone.')],
  ),
  {
    // Plain tools run by Node, outside the TypeScript project.
    files: ['**/*.js', '**/*.mjs'],
    ...ts.configs.disableTypeChecked,
    languageOptions: { ...ts.configs.disableTypeChecked.languageOptions, globals: globals.node },
    rules: {
      ...ts.configs.disableTypeChecked.rules,
      'no-console': 'off',
      // Taking parts out of an object is how the rest of it is had.
      '@typescript-eslint/no-unused-vars': ['error', { ignoreRestSiblings: true }],
    },
  },
);
