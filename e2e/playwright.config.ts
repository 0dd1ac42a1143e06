// The journeys run in the Chromium of the machine, on the width of a phone and of a desk.

import { findChromium } from '@colla/infra/chromium';
import { defineConfig } from '@playwright/test';

const chromium = process.env.CHROMIUM_PATH ?? findChromium();

// The last five keep the browser from talking to anyone but the server under test.
const args = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export default defineConfig({
  testDir: 'journeys',
  outputDir: 'output',
  workers: 1,
  forbidOnly: true,
  timeout: 240_000,
  expect: { timeout: 15_000 },
  reporter: [['list']],
  use: {
    launchOptions: { args, ...(chromium ? { executablePath: chromium } : {}) },
    locale: 'en-GB',
    timezoneId: 'Europe/London',
    actionTimeout: 30_000,
    trace: 'retain-on-failure',
    screenshot: 'only-on-failure',
  },
  projects: [
    {
      name: 'desk',
      testIgnore: 'between-two-halls.spec.ts',
      use: { viewport: { width: 1280, height: 900 } },
    },
    {
      name: 'phone',
      testIgnore: ['another-browser-sees-nothing.spec.ts', 'by-keyboard-alone.spec.ts'],
      use: { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, deviceScaleFactor: 2 },
    },
  ],
});
