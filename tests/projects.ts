import { playwright } from '@vitest/browser-playwright';
import type { ViteUserConfig } from 'vitest/config';
import { CHROMIUM_FLAGS, findChromium } from './chromium.ts';

/** The three groups of tests: in Node, in a real browser, and on the built app in a real browser. */
export function testSettings(): Pick<ViteUserConfig, 'optimizeDeps' | 'test'> {
  const launchOptions = { executablePath: findChromium(), args: CHROMIUM_FLAGS };
  return {
    optimizeDeps: { include: BROWSER_PACKAGES },
    test: {
      projects: [
        {
          extends: true,
          test: {
            name: 'node',
            environment: 'node',
            // Properties go through hundreds of cases; on a busy machine that takes a while.
            testTimeout: 60_000,
            include: ['tests/**/*.test.ts'],
            exclude: ['tests/browser/**', 'tests/e2e/**'],
          },
        },
        {
          extends: true,
          test: {
            name: 'browser',
            include: ['tests/browser/**/*.test.ts'],
            testTimeout: 60_000,
            browser: {
              enabled: true,
              headless: true,
              screenshotFailures: false,
              provider: playwright({ launchOptions }),
              instances: [{ browser: 'chromium' }],
            },
          },
        },
        {
          extends: true,
          test: {
            name: 'built app',
            environment: 'node',
            include: ['tests/e2e/**/*.test.ts'],
            globalSetup: 'tests/e2e/serve.ts',
            testTimeout: 30_000,
            hookTimeout: 60_000,
            fileParallelism: false,
            // After the others: these measure what a person waits for, so nothing else may run.
            sequence: { groupOrder: 1 },
          },
        },
      ],
    },
  };
}

// Every package a browser test reaches: vite would reload the page in the middle of a test on
// finding another.
const BROWSER_PACKAGES = [
  'axe-core',
  'fast-check',
  'idb-keyval',
  'lit',
  'lit/decorators.js',
  'lit/directives/class-map.js',
  'lit/directives/guard.js',
  'lit/directives/if-defined.js',
  'lit/directives/keyed.js',
  'lit/directives/live.js',
  'lit/directives/ref.js',
  'lit/directives/repeat.js',
  'mathjs/number',
  'papaparse',
];
