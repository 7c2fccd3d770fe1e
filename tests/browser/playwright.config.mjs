// How the browser stories run: Debian's own Chromium, one story at a time, nothing downloaded.
import { defineConfig } from '@playwright/test';
import { out } from '../world/place.mjs';

export default defineConfig({
  testDir: '.',
  testMatch: '*.story.mjs',
  workers: 1,
  forbidOnly: true,
  retries: 0,
  timeout: 60_000,
  expect: { timeout: 10_000 },
  outputDir: `${out}/browser`,
  reporter: [['list']],
  use: {
    browserName: 'chromium',
    viewport: { width: 1200, height: 820 },
    locale: 'en-GB',
    screenshot: 'only-on-failure',
    launchOptions: {
      executablePath: process.env.CARRYOVER_CHROMIUM ?? '/usr/bin/chromium',
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
      ],
    },
  },
});
