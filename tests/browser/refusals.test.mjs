// What the page does where the browser refuses something, and what it keeps when it is left.

import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { test } from 'node:test';
import { assertQuiet, browser, openPage, SINGLE_FILE, share, site, text, untilReady } from './harness.mjs';

share();

/** Opens the page after `prepare` has run in it. */
async function openAfter(prepare, address = SINGLE_FILE) {
  const context = await browser.newContext();
  await context.addInitScript(prepare);
  const page = await context.newPage();
  const uncaught = [];
  page.on('pageerror', (error) => uncaught.push(String(error)));
  await page.goto(String(address));
  await untilReady(page);
  return { context, page, uncaught };
}

async function dropCourse(page, name, contents) {
  const data = await page.evaluateHandle(
    ([name, contents]) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([contents], name));
      return transfer;
    },
    [name, contents],
  );
  await page.dispatchEvent('#lap-drop', 'drop', { dataTransfer: data });
}

const refuseWorkers = {
  'throws when one is made': () => {
    globalThis.Worker = class {
      constructor() {
        throw new DOMException('refused', 'SecurityError');
      }
    };
  },
  'fails once one is made': () => {
    globalThis.Worker = class {
      constructor() {
        setTimeout(() => this.onerror(new Event('error')));
      }
      postMessage() {}
      terminate() {}
    };
  },
};

test('where workers keep silent the page starts by itself', async () => {
  const { page, uncaught } = await openAfter(() => {
    globalThis.Worker = class {
      postMessage() {}
      terminate() {}
    };
  });
  await page.fill('#rings-b', '40');
  await page.waitForFunction(() => /was/.test(document.getElementById('decide-rings').textContent));
  assert.deepEqual(uncaught, []);
});

for (const [how, prepare] of Object.entries(refuseWorkers)) {
  test(`a search where the browser ${how} is over and says why`, async () => {
    const { page, uncaught } = await openAfter(prepare);
    await page.evaluate(() => document.getElementById('search-start').click());
    await page.waitForFunction(() => /does not let the page search/.test(document.getElementById('search-left').textContent));
    assert.doesNotMatch(await text(page, '#lap-found'), /Searching/);
    assert.equal(await page.getAttribute('#search-start', 'aria-disabled'), 'false');
    assert.equal(await page.locator('#search-bar').isHidden(), true);
    assert.deepEqual(uncaught, []);
  });
}

const odd = {
  'stretches that refuse to be texts': '{"remountCourse": 1, "stretches": [{"toString": 1, "valueOf": 1}]}',
  'stretches in stretches': `{"remountCourse": 1, "stretches": ${'['.repeat(20_000)}${']'.repeat(20_000)}}`,
};

for (const [what, course] of Object.entries(odd)) {
  test(`a course with ${what} is refused in words`, async () => {
    const { page, heard } = await openPage(browser, SINGLE_FILE);
    await dropCourse(page, 'odd.json', course);
    await page.waitForFunction(() => document.getElementById('lap-course').textContent.includes('“odd.json” is not taken'));
    assert.equal(await page.inputValue('#course'), 'meadow');
    assertQuiet(heard);
  });
}

test('a course with odd smoothing is taken without it', async () => {
  const { page, heard } = await openPage(browser, SINGLE_FILE);
  const course = { remountCourse: 1, smoothingM: { valueOf: 1, toString: 1 }, stretches: ['800; 0; tarmac'] };
  await dropCourse(page, 'odd.json', JSON.stringify(course));
  await page.waitForFunction(() => document.getElementById('course').value === 'own');
  assertQuiet(heard);
});

test('a change made just before the page is reloaded is kept', async () => {
  const { page } = await openPage(browser, site.address);
  await page.evaluate(() => {
    const field = document.getElementById('rings-a');
    field.value = '48/33';
    field.dispatchEvent(new Event('input', { bubbles: true }));
    location.reload();
  });
  await page.waitForURL(/ra=48\/33/);
  await untilReady(page);
  assert.equal(await page.inputValue('#rings-a'), '48/33');
});

test('a change made just before the page is left is there on coming back', async () => {
  const { page } = await openPage(browser, site.address);
  await page.evaluate(() => {
    const field = document.getElementById('rings-a');
    field.value = '48/33';
    field.dispatchEvent(new Event('input', { bubbles: true }));
    location.href = 'about:blank';
  });
  await page.waitForURL('about:blank');
  await page.goBack();
  await untilReady(page);
  assert.match(page.url(), /ra=48\/33/);
  assert.equal(await page.inputValue('#rings-a'), '48/33');
});

test('a course is not kept in the place of another without a question', async () => {
  const { page } = await openPage(browser, site.address);
  const keep = () => page.evaluate(() => document.getElementById('keep').click());
  const says = () => text(page, '#kept-says');
  await page.fill('#keep-name', 'Club lap');
  await keep();
  assert.match(await says(), /^Kept in this browser as “Club lap”/);
  await keep();
  assert.match(await says(), /^Kept in this browser as “Club lap”/, 'the same course once more');
  await page.selectOption('#course', 'sand-pit');
  const before = await page.evaluate(() => localStorage.getItem('remount-course:Club lap'));
  await keep();
  assert.match(await says(), /Another course is kept as “Club lap”/);
  assert.equal(await page.evaluate(() => localStorage.getItem('remount-course:Club lap')), before);
  await keep();
  assert.match(await says(), /^Kept in this browser as “Club lap”/);
  assert.notEqual(await page.evaluate(() => localStorage.getItem('remount-course:Club lap')), before);
});

test('a course kept in another window is listed at once', async () => {
  const { context, page } = await openAfter(() => {}, site.address);
  const other = await context.newPage();
  await other.goto(site.address);
  await untilReady(other);
  await other.fill('#keep-name', 'From elsewhere');
  await other.evaluate(() => document.getElementById('keep').click());
  await page.waitForFunction(() => [...document.getElementById('kept').options].some(({ label }) => label === 'From elsewhere'));
});

test('storage that is withdrawn later is said, not thrown', async () => {
  const { page, uncaught } = await openAfter(() => {}, site.address);
  await page.evaluate(() => document.getElementById('keep').click());
  await page.evaluate(() => {
    Object.defineProperty(globalThis, 'localStorage', {
      get: () => {
        throw new DOMException('withdrawn', 'SecurityError');
      },
    });
  });
  await page.selectOption('#kept', { index: 1 });
  assert.match(await text(page, '#chosen-says'), /no longer kept/);
  await page.evaluate(() => document.getElementById('keep').click());
  assert.match(await text(page, '#kept-says'), /This browser keeps nothing for this page/);
  await page.evaluate(() => document.getElementById('forget').click());
  assert.deepEqual(uncaught, []);
});

test('in a sandbox the single file works without what it may not have', async () => {
  const context = await browser.newContext();
  const page = await context.newPage();
  const uncaught = [];
  page.on('pageerror', (error) => uncaught.push(String(error)));
  const body = await readFile(SINGLE_FILE, 'utf8');
  const headers = { 'content-security-policy': 'sandbox allow-scripts' };
  await page.route(site.address, (route) => route.fulfill({ contentType: 'text/html', headers, body }));
  await page.goto(site.address);
  await page.waitForSelector('html[data-engine=ready]', { state: 'attached' });
  assert.deepEqual(uncaught, []);
});

test('a button may put a value into a field', async () => {
  const { page, heard } = await openPage(browser, SINGLE_FILE);
  await page.evaluate(() => {
    const button = document.createElement('button');
    button.dataset.write = 'rings-a=48/33';
    document.getElementById('bench').after(button);
    button.click();
  });
  assert.equal(await page.inputValue('#rings-a'), '48/33');
  await page.waitForURL(/ra=48\/33/);
  await page.click('[data-act=undo]');
  assert.equal(await page.inputValue('#rings-a'), '50/34');
  assertQuiet(heard);
});
