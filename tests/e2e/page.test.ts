import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { openApp, startBrowser } from './open.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(async () => {
  await browser.close();
});

describe('the built page', () => {
  it('opens with something to read and without a complaint', async () => {
    const { page, complaints } = await openApp(browser);
    await page.getByRole('heading', { name: 'Backplumb' }).waitFor();
    for (const way of ['Open the demo job', 'Import a CSV', 'Start empty']) {
      expect(await page.getByRole('button', { name: way }).isVisible()).toBe(true);
    }
    await page.waitForLoadState('networkidle');
    expect(complaints).toEqual([]);
  });

  it('blocks script that is written into it', async () => {
    const { page } = await openApp(browser);
    const ran = await page.evaluate(async () => {
      const script = document.createElement('script');
      try {
        script.textContent = 'document.title = "written in"';
        document.head.append(script);
      } catch {
        return 'refused';
      }
      await new Promise((resolve) => setTimeout(resolve, 50));
      return document.title;
    });
    expect(ran).toBe('refused');
  });

  it('carries its content policy in its headers and in itself', async () => {
    const answer = await fetch(inject('address'));
    const policy = answer.headers.get('content-security-policy');
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(await answer.text()).toContain('http-equiv="Content-Security-Policy"');
  });

  it('gives the licence of everything that it is built from', async () => {
    const answer = await fetch(new URL('licences.txt', inject('address')));
    const text = await answer.text();
    expect(answer.headers.get('content-type')).toContain('text/plain');
    for (const name of [
      'lit',
      'lit-html',
      'idb-keyval',
      'papaparse',
      '@fontsource/barlow-condensed',
    ])
      expect(text).toMatch(
        new RegExp(`^${name} [\\d.]+ \\((?:MIT|BSD-3-Clause|Apache-2.0|OFL-1.1)\\)$`, 'm'),
      );
    expect(text).toContain('Permission is hereby granted');
  });
});
