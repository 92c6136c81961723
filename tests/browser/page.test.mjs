// What the built page promises whatever it shows: quiet, self-contained, guarded, small.

import assert from 'node:assert/strict';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, test } from 'node:test';
import { pathToFileURL } from 'node:url';
import { gzipSync } from 'node:zlib';
import { decompress } from 'lzma1';
import { assertQuiet, browser, openPage, SINGLE_FILE, serveSite, share, site } from './harness.mjs';

const SIZE_BUDGET = 528_000;

share();

const homes = { 'from disk': () => SINGLE_FILE, 'from a web server': () => site.address };

for (const [where, address] of Object.entries(homes)) {
  describe(where, () => {
    test('loads without a complaint and asks for nothing afterwards', async () => {
      const { page, heard } = await openPage(browser, address(), { rides: true });
      const served = site.requests.length;
      await page.mouse.move(200, 300);
      await page.keyboard.press('Tab');
      await page.waitForTimeout(300);
      assertQuiet(heard);
      assert.equal(site.requests.length, served);
    });

    test('carries its policy before anything it governs', async () => {
      const { page } = await openPage(browser, address(), { rides: true });
      const order = await page.$$eval('meta[http-equiv], script, style, link', (tags) =>
        tags.map((tag) => tag.httpEquiv ?? tag.localName),
      );
      assert.equal(order[0], 'Content-Security-Policy');
    });

    test('refuses a script that was not built in', async () => {
      const { page, heard } = await openPage(browser, address(), { rides: true });
      const ran = await page.evaluate(() => {
        const script = document.createElement('script');
        script.textContent = 'globalThis.intruder = true';
        document.head.append(script);
        return globalThis.intruder === true;
      });
      assert.equal(ran, false);
      assert.match(heard.complaints.join('\n'), /script-src/);
    });

    test('cannot reach the network', async () => {
      const { page } = await openPage(browser, address(), { rides: true });
      const reached = await page.evaluate(
        (elsewhere) =>
          fetch(elsewhere).then(
            () => true,
            () => false,
          ),
        site.address,
      );
      assert.equal(reached, false);
    });

    test('may start a worker from a blob', async () => {
      const { page, heard } = await openPage(browser, address(), { rides: true });
      const answer = await page.evaluate(() => {
        const worker = new Worker(URL.createObjectURL(new Blob(['postMessage("works")'])));
        return new Promise((resolve, reject) => {
          worker.onmessage = (event) => resolve(event.data);
          worker.onerror = reject;
        });
      });
      assert.equal(answer, 'works');
      assert.deepEqual(heard.complaints, []);
    });
  });
}

test('one file asks for nothing but itself', async () => {
  const { heard } = await openPage(browser, SINGLE_FILE, { rides: true });
  const asked = heard.requests.map(({ url }) => url).filter((url) => !/^(data|blob):/.test(url));
  assert.deepEqual(asked, [SINGLE_FILE.href]);
});

test('the hosted page works with the server gone, after one visit', async () => {
  const short = await serveSite();
  const { page, heard } = await openPage(browser, short.address, { rides: true });
  await short.close();
  for (const place of ['', '#r=3', 'index.html', '?again']) {
    await page.goto(short.address + place);
    await page.reload();
    await page.waitForSelector('html[data-engine=ready]', { state: 'attached' });
  }
  assert.deepEqual(heard.complaints, []);
});

test('says what is wrong in a browser without WebAssembly', async () => {
  const context = await browser.newContext();
  const page = await context.newPage();
  await page.addInitScript(() => delete globalThis.WebAssembly);
  await page.goto(SINGLE_FILE.href);
  await page.waitForSelector('html[data-engine=failed]', { state: 'attached' });
  assert.match(await page.innerText('body'), /browser/);
});

const WITHOUT = {
  JavaScript: ({ browser }) => browser.newContext({ javaScriptEnabled: false }),
  WebAssembly: async ({ browser }) => {
    const context = await browser.newContext();
    await context.addInitScript(() => delete globalThis.WebAssembly);
    return context;
  },
};

for (const [what, opened] of Object.entries(WITHOUT)) {
  test(`without ${what} there is one true reason and nothing that does not answer`, async () => {
    const page = await (await opened({ browser })).newPage();
    await page.goto(SINGLE_FILE.href);
    await page.locator('noscript p, #starting').filter({ visible: true, hasText: what }).waitFor();
    assert.doesNotMatch(await page.innerText('body'), /Getting ready/);
    assert.match(await page.innerText('#decide-rings'), /\d\sto\s\d+\.\d\skm/);
    const dead = page.locator('button, summary, nav a').filter({ visible: true });
    assert.equal(await dead.count(), 0, await dead.allInnerTexts().then(String));
    assert.equal(await page.locator('#rings-a').evaluate((field) => getComputedStyle(field).pointerEvents), 'none');
    await page.context().close();
  });
}

test('in a window so low as that of a page zoomed in far nothing stays in the way', async () => {
  for (const width of [320, 700]) {
    const { page } = await openPage(browser, SINGLE_FILE, { viewport: { width, height: 225 }, folded: true });
    await page.evaluate(() => scrollTo(0, 1500));
    const covering = await page.evaluate(() => {
      const held = [...document.querySelectorAll('body *')].filter((it) => /fixed|sticky/.test(getComputedStyle(it).position));
      return held
        .map((it) => [it.id || it.className, it.checkVisibility() ? it.getBoundingClientRect() : null])
        .filter(([, box]) => box && box.height > 0 && box.top < innerHeight && box.bottom > 0)
        .map(([name, { height }]) => `${name} ${height}`);
    });
    assert.deepEqual(covering, []);
    await page.context().close();
  }
});

test('a page that did not arrive whole says what to do', async () => {
  const whole = await readFile(SINGLE_FILE, 'utf8');
  const unpacker = whole.indexOf('id="engine"') + 5000;
  const engine = unpacker + 100_000;
  const damaged = (at) => `${whole.slice(0, at)}AAAAAAAA${whole.slice(at + 8)}`;
  const damages = {
    'unpacker damaged': damaged(unpacker),
    'engine damaged': damaged(engine),
    'not base64': `${whole.slice(0, engine)}????${whole.slice(engine + 4)}`,
    'cut short': whole.slice(0, engine),
  };
  const folder = await mkdtemp(join(tmpdir(), 'remount-'));
  const page = await (await browser.newContext()).newPage();
  for (const [damage, text] of Object.entries(damages)) {
    const file = join(folder, `${damage}.html`);
    await writeFile(file, text);
    await page.goto(String(pathToFileURL(file)));
    await page.waitForFunction(() => document.body.innerText.includes('load or copy it again'), null, { timeout: 20_000 });
  }
  await rm(folder, { recursive: true });
});

test('the engine names no file of the sources and no folder of the machine that built it', async () => {
  const [, packed] = (await readFile(SINGLE_FILE, 'utf8')).match(/id="engine">\S+ ([^<]+)</);
  const engine = Buffer.from(decompress(Buffer.from(packed, 'base64'))).toString('latin1');
  assert.match(engine, /__wbindgen_/);
  assert.doesNotMatch(engine, /registry.src|rustlib|library.core.src|[\w-]\.rs\b/);
});

test(`the file stays below ${SIZE_BUDGET} bytes gzipped`, async () => {
  const { length } = gzipSync(await readFile(SINGLE_FILE), { level: 9 });
  assert.ok(length <= SIZE_BUDGET, `${length} bytes`);
});
