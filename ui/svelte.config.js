// Svelte's settings, shared by the build, the checker and the linter.
import { vitePreprocess } from '@sveltejs/vite-plugin-svelte';

export default { preprocess: vitePreprocess(), compilerOptions: { runes: true } };
