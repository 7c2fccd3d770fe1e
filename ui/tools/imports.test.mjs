// The import rule bites: kit <- features <- screens, and only ipc knows the shell and the bindings.
import { ESLint } from 'eslint';
import { expect, test } from 'vitest';

const eslint = new ESLint({
  overrideConfig: { languageOptions: { parserOptions: { projectService: false } } },
});

/** The import rule's findings for one import, as if it stood in that file. */
async function found(file, from) {
  const config = await eslint.calculateConfigForFile(file);
  const rule = config.rules['no-restricted-imports'];
  const alone = new ESLint({
    overrideConfigFile: true,
    overrideConfig: [{ files: ['**/*'], rules: { 'no-restricted-imports': rule ?? 'off' } }],
  });
  const [result] = await alone.lintText(`import x from '${from}';\nx();\n`, { filePath: 'sample.js' });
  if (result.fatalErrorCount > 0) throw new Error(result.messages[0].message);
  return result.messages.length;
}

test.each([
  ['src/kit/x.ts', '../ipc'],
  ['src/kit/x.ts', '../ipc/call'],
  ['src/kit/deep/x.svelte', '../../features/goals/x'],
  ['src/kit/x.svelte', '../screens/App.svelte'],
  ['src/kit/x.ts', '@tauri-apps/api/core'],
  ['src/features/goals/x.ts', '../../screens/App.svelte'],
  ['src/features/goals/x.svelte', '@tauri-apps/api/core'],
  ['src/features/goals/x.svelte', '../../ipc/bindings'],
  ['src/screens/x.svelte', '../ipc/bindings'],
  ['src/screens/x.svelte', '@tauri-apps/api/core'],
  ['src/main.ts', '@tauri-apps/api/core'],
  ['src/ipc/x.ts', '../kit/dates'],
])('%s may not import %s', async (file, from) => {
  expect(await found(file, from)).toBe(1);
});

test.each([
  ['src/kit/x.svelte', './dates'],
  ['src/features/goals/x.svelte', '../../kit/dates'],
  ['src/features/goals/x.ts', '../../ipc'],
  ['src/screens/x.svelte', '../features/goals/x'],
  ['src/screens/x.svelte', '../ipc'],
  ['src/ipc/x.ts', './bindings'],
  ['src/ipc/x.ts', '@tauri-apps/api/core'],
])('%s may import %s', async (file, from) => {
  expect(await found(file, from)).toBe(0);
});
