// How the window's pages are built: plain files only, so that the content policy needs no exception.
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';

/** The window's content policy; the gallery is served under it so that each component is seen under it. */
const policy =
  "default-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; object-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

export default defineConfig(({ mode }) => {
  const gallery = mode === 'gallery';
  return {
    plugins: [svelte()],
    build: {
      outDir: gallery ? 'dist-gallery' : 'dist',
      target: 'safari17',
      assetsInlineLimit: 0,
      modulePreload: { polyfill: false },
      rolldownOptions: { input: gallery ? 'gallery.html' : 'index.html' },
    },
    server: { host: '127.0.0.1', fs: { allow: ['..'] } },
    // The test of the inks reads the style sheet itself.
    test: { css: true },
    preview: { host: '127.0.0.1', headers: { 'Content-Security-Policy': policy } },
  };
});
