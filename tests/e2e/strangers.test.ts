import { readFile } from 'node:fs/promises';
import { chromium, type Browser, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { CHROMIUM_FLAGS, findChromium } from '../chromium.ts';
import { STRANGE, STRANGER, STRANGE_CSV, strangeNotebook } from '../hostile/strange.ts';
import { complaintsOf } from './open.ts';
import { isLoopback, recordRequests, type Recorder } from './recorder.ts';

const DESK = { width: 1440, height: 1000 };
const PHONE = { width: 390, height: 844 };

let recorder: Recorder;
let browser: Browser;
beforeAll(async () => {
  recorder = await recordRequests();
  browser = await chromium.launch({
    executablePath: findChromium(),
    // Addresses of this machine go through the proxy too, and no name is looked up beside it.
    args: [...CHROMIUM_FLAGS, `--proxy-server=${recorder.address}`, '--proxy-bypass-list=<-loopback>'], // prettier-ignore
    headless: true,
  });
});
afterAll(async () => {
  await browser.close();
  await recorder.close();
});

describe('a whole session on a notebook and a file full of markup', { timeout: 120_000 }, () => {
  it('makes no element of it and runs none, shows it as it was typed, and asks nothing of any other machine', async () => {
    const { page, context, complaints, asked } = await opened();
    const looks = new Looks(page);

    const field = page.getByLabel('Notebook file');
    await field.setInputFiles(fileOf(`${STRANGE}.json`, strangeNotebook()));
    await page.getByRole('grid', { name: /posts/i }).waitFor();
    await page.getByText('Your column posts.nowhere').waitFor();
    await looks.at('the job', [STRANGE, STRANGER, '__proto__', 'constructor']);
    await page.getByRole('button', { name: 'Put away' }).click();
    await page.locator('bp-asks summary').click();
    await looks.at('the asks', [STRANGE]);

    await page.locator('[aria-label=Readings]').first().setInputFiles(fileOf(`${STRANGE}.csv`, STRANGE_CSV)); // prettier-ignore
    await page.getByRole('heading', { name: 'comes in' }).waitFor();
    await looks.at('a file before it comes in', [
      STRANGE,
      `Before ${STRANGE}.csv`,
      'hasOwnProperty',
    ]);
    await page.getByRole('button', { name: 'Bring in', exact: true }).click();
    await page
      .getByRole('dialog')
      .getByRole('button', { name: /^Merge/ })
      .waitFor();
    await looks.at('what would change', [STRANGE]);
    await page
      .getByRole('dialog')
      .getByRole('button', { name: /^Merge/ })
      .click();
    await page.locator('bp-brought-in').waitFor();
    await looks.at('what came of the file', [STRANGE]);

    // An entry, its working, and a formula with text of that kind.
    await page.locator('bp-sheet#posts [role=rowheader]').first().click();
    await page.keyboard.press('End');
    await page.keyboard.press('Alt+Enter');
    await page.locator('bp-working').waitFor({ state: 'attached' });
    await looks.at('a working', [STRANGE]);
    await page.keyboard.press('Escape');

    for (const choice of [
      'What if, and why the price changed',
      'A list as the yard wants it',
      'Files brought in',
      'Earlier today',
      'Backups and room',
    ]) {
      await fromMenu(page, choice);
      await page.getByRole('dialog').waitFor();
      await looks.at(
        choice,
        ['Files brought in', 'Earlier today'].includes(choice) ? [STRANGE] : [],
      );
      await page.getByRole('dialog').getByRole('button', { name: 'Close' }).first().click();
      await page.getByRole('dialog').waitFor({ state: 'hidden' });
    }
    await fromMenu(page, 'Earlier today');
    await page.getByRole('dialog').getByRole('listitem').first().getByRole('button').click();
    await page.getByRole('button', { name: 'Back to now' }).waitFor();
    await looks.at('an earlier time', [STRANGE]);
    await page.getByRole('button', { name: 'Back to now' }).click();

    for (const printed of [
      'the supplier’s list',
      'the crew sheet',
      'the quote',
      'the return visit',
      'the working of this sheet',
      'the whole working',
    ]) {
      await fromMenu(page, `Print ${printed}`);
      await page.waitForFunction(() => document.documentElement.dataset['prints'] === 'one');
      await looks.at(printed, [STRANGE]);
      await page.evaluate(putPaperAway);
    }

    await page.setViewportSize(PHONE);
    await page.locator('bp-phone').waitFor();
    await looks.at('the phone', [STRANGE]);
    await page.setViewportSize(DESK);
    await page.getByRole('grid', { name: /posts/i }).waitFor();

    const coming = page.waitForEvent('download');
    await fromMenu(page, 'Save as a file');
    const backup = await readFile(await (await coming).path(), 'utf8');
    expect(JSON.parse(backup)).toMatchObject({ name: STRANGE });
    await page.getByRole('button', { name: 'Undo' }).first().click();
    await page.getByText('Saved on this device').first().waitFor();
    await fromMenu(page, 'Other jobs');
    await page.getByRole('heading', { name: 'Jobs on this device' }).waitFor();
    await looks.at('the jobs', [STRANGE]);
    await field.setInputFiles(fileOf('backup.json', backup));
    await page.getByRole('dialog').getByText('differs').waitFor();
    await looks.at('a backup before it comes in', [STRANGE]);
    await page.getByRole('dialog').getByLabel('in its place').check();
    await page.getByRole('dialog').getByRole('button', { name: 'Bring in' }).click();
    await page.getByRole('dialog').waitFor({ state: 'hidden' });

    // The second visit, with no network.
    await page.evaluate(isKeptOffline);
    await context.setOffline(true);
    await page.goto(inject('address'));
    await page.locator('bp-kept-jobs').getByRole('button', { name: STRANGE, exact: true }).click();
    await page.getByRole('grid', { name: /posts/i }).waitFor();
    await looks.at('the second visit', [STRANGE]);

    expect(looks.found).toEqual([]);
    expect(complaints).toEqual([]);
    expect(asked.length).toBeGreaterThan(20);
    expect(asked.filter((url) => !isLoopback(url))).toEqual([]);
    expect(recorder.asked.length).toBeGreaterThan(20);
    expect(elsewhere()).toEqual([]);
    await context.close();
  });
});

describe('the built page', () => {
  it('is refused every way out of this machine by its policy', async () => {
    const { page, context } = await opened();
    recorder.asked.splice(0);
    const tried = await page.evaluate(tryToLeave);
    expect(tried.refused).toEqual(tried.ways);
    expect(elsewhere()).toEqual([]);
    // What the recorder would have seen.
    const other = await context.newPage();
    await other.goto('http://elsewhere.invalid/').catch(() => undefined);
    expect(elsewhere()).toEqual(['http://elsewhere.invalid/']);
    await context.close();
  });
});

// What the browser asks its maker by itself, whatever page is open: the time, an account, its list of forms.
const BROWSERS_OWN = /(?:^|[./])google(?:apis)?\.com[:/]/;

/** What left the browser for other machines, but for what the browser itself asks. */
function elsewhere(): string[] {
  return recorder.asked.filter((url) => !isLoopback(url) && !BROWSERS_OWN.test(url));
}

/** A page of its own, which counts what its policy refused among its complaints and shows what it would print. */
async function opened() {
  const context = await browser.newContext({ viewport: DESK });
  // Of the page, its threads and its service worker.
  const asked: string[] = [];
  context.on('request', (request) => asked.push(request.url().replace(/^blob:/, '')));
  const page = await context.newPage();
  page.setDefaultTimeout(20_000);
  const complaints = complaintsOf(page);
  await page.addInitScript(prepare);
  await page.goto(inject('address'));
  return { page, context, complaints, asked };
}

/** Looks at a screen after the other, and keeps what is not as it should be. */
class Looks {
  readonly found: string[] = [];
  private readonly page: Page;

  constructor(page: Page) {
    this.page = page;
  }

  async at(screen: string, typed: readonly string[]): Promise<void> {
    const missing = (text: string) => typed.filter((words) => !text.includes(words));
    let seen = await this.page.evaluate(everything);
    // It may still be drawn.
    for (let tried = 0; tried < 50 && missing(seen.text).length > 0; tried += 1) {
      await this.page.waitForTimeout(50);
      seen = await this.page.evaluate(everything);
    }
    this.found.push(
      ...seen.strangers.map((stranger) => `${screen}: ${stranger}`),
      ...missing(seen.text).map((words) => `${screen}: “${words}” is not shown as typed`),
    );
  }
}

async function fromMenu(page: Page, choice: string): Promise<void> {
  await page.locator('summary', { hasText: /^More$/ }).click();
  await page.getByRole('button', { name: choice, exact: true }).click();
}

function fileOf(name: string, text: string) {
  return { name, mimeType: 'text/plain', buffer: Buffer.from(text) };
}

// The functions below run in the page.

function prepare(): void {
  // Nobody is there to say where a file should go.
  Reflect.deleteProperty(window, 'showSaveFilePicker');
  window.print = () => {
    document.documentElement.dataset['prints'] = 'one';
  };
  document.addEventListener('securitypolicyviolation', ({ violatedDirective, blockedURI }) => {
    reportError(new Error(`Refused by the policy: ${violatedDirective} ${blockedURI}`));
  });
}

function putPaperAway(): void {
  dispatchEvent(new Event('afterprint'));
  delete document.documentElement.dataset['prints'];
}

/** All that stands on the page, in every shadow root: its text, and elements that text of strangers would have made. */
function everything(): { strangers: string[]; text: string } {
  const strangers: string[] = [];
  const texts: string[] = [document.title];
  const look = (root: Document | ShadowRoot): void => {
    for (const element of root.querySelectorAll('*')) {
      const isOurs =
        element instanceof HTMLScriptElement && element.src.startsWith(location.origin);
      if (element.matches('[data-in], img, iframe, object, embed, script, [onload], [onerror]') && !isOurs) strangers.push(element.localName); // prettier-ignore
      for (const { value } of element.attributes) texts.push(value);
      if ('value' in element) texts.push(String(element.value));
      if (element.shadowRoot) look(element.shadowRoot);
    }
    texts.push(root.textContent ?? '', ...[...root.children].map((child) => child.textContent));
  };
  look(document);
  if ('ran' in globalThis) strangers.push('it ran');
  if ('polluted' in {}) strangers.push('every object has a new field');
  return { strangers, text: texts.join('\n') };
}

async function isKeptOffline(): Promise<void> {
  await navigator.serviceWorker.ready;
  while (navigator.serviceWorker.controller === null)
    await new Promise((resolve) => setTimeout(resolve, 20));
}

/** Tries every way a page has to ask another machine for something; the policy should refuse each. */
async function tryToLeave(): Promise<{ ways: string[]; refused: string[] }> {
  const there = (path: string) => `http://elsewhere.invalid/${path}`;
  const put = (tag: string, attributes: Readonly<Record<string, string>>): void => {
    const element = document.createElement(tag);
    for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
    document.head.append(element);
  };
  const ways: Readonly<Record<string, () => unknown>> = {
    fetch: () => fetch(there('fetch')).catch(() => undefined),
    beacon: () => navigator.sendBeacon(there('beacon'), 'x'),
    events: () => new EventSource(there('events')),
    socket: () => new WebSocket(there('socket').replace('http', 'ws')),
    image: () => (new Image().src = there('image')),
    style: () => put('link', { rel: 'stylesheet', href: there('style') }),
    prefetch: () => put('link', { rel: 'prefetch', href: there('prefetch') }),
    font: () => new FontFace('x', `url(${there('font')})`).load().catch(() => undefined),
    frame: () => put('iframe', { src: there('frame') }),
    object: () => put('object', { data: there('object') }),
    media: () => new Audio(there('media')).load(),
    form: () => {
      const form = Object.assign(document.createElement('form'), { action: there('form') });
      document.body.append(form);
      form.submit();
    },
  };
  const refused: string[] = [];
  for (const [way, leave] of Object.entries(ways)) {
    const heard = new Promise<boolean>((resolve) => {
      document.addEventListener('securitypolicyviolation', () => resolve(true), { once: true });
      setTimeout(() => resolve(false), 2000);
    });
    try {
      await leave();
    } catch {
      // Some ways are refused by throwing; the policy says so all the same.
    }
    if (await heard) refused.push(way);
  }
  return { ways: Object.keys(ways), refused };
}
