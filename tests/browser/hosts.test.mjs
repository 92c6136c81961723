// The page on servers that know nothing of it: their character sets, their own policies, copies side by side, new versions.

import assert from 'node:assert/strict';
import { cp, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, afterEach, before, test } from 'node:test';
import { pathToFileURL } from 'node:url';
import { assertQuiet, frame, launchBrowser, openPage, SINGLE_FILE, SITE, serveFolder, text, untilReady } from './harness.mjs';

const STRICT = "default-src 'self' 'wasm-unsafe-eval'";
/** Without leave for WebAssembly. */
const STRICTER = "default-src 'self'";

let browser;
let folder;
const servers = [];

before(async () => {
  browser = await launchBrowser();
  folder = await mkdtemp(join(tmpdir(), 'remount-'));
  await cp(SINGLE_FILE, join(folder, 'remount.html'));
  for (const copy of ['one', 'two']) await cp(SITE, join(folder, copy), { recursive: true });
});
after(() => Promise.all([browser?.close(), rm(folder, { recursive: true })]));
afterEach(() => Promise.all(servers.splice(0).map((server) => server.close())));

async function served(headersOf) {
  const server = await serveFolder(pathToFileURL(`${folder}/`), headersOf);
  servers.push(server);
  return server.address;
}

const TYPES = { html: 'text/html', js: 'text/javascript', css: 'text/css' };
const inCharset = (charset) => (path) => {
  const type = TYPES[path.split('.').at(-1)];
  return type ? { 'Content-Type': `${type}; charset=${charset}` } : {};
};
const under = (policy) => () => ({ 'Content-Security-Policy': policy });

test('a server that names another character set changes nothing', async () => {
  for (const charset of ['iso-8859-1', 'windows-1252']) {
    const address = await served(inCharset(charset));
    for (const place of ['remount.html', 'one/']) {
      const { page, heard } = await openPage(browser, address + place);
      const label = await page.textContent('label[for=cassette-b]');
      assert.ok(label.includes('B’s'), `${charset}: ${label}`);
      assertQuiet(heard);
      await page.context().close();
    }
  }
});

test('the site works under a policy of the server, workers and all', async () => {
  const address = await served(under(STRICT));
  const { page, heard } = await openPage(browser, `${address}one/`, { rides: true });
  await page.locator('#lap').scrollIntoViewIfNeeded();
  await page.waitForFunction(() => /likely/.test(document.getElementById('lap-answer').textContent), null, {
    timeout: 60_000,
  });
  const { page: free } = await openPage(browser, `${await served()}one/`);
  const drawn = (page) =>
    page.evaluate(() => {
      const canvas = document.querySelector('[data-picture=ladder] canvas');
      return canvas.toDataURL();
    });
  for (const each of [page, free]) {
    await each.locator('[data-picture=ladder]').scrollIntoViewIfNeeded();
    await frame(each);
  }
  assert.ok((await drawn(page)) === (await drawn(free)), 'the picture is another one under the policy');
  assert.deepEqual(
    heard.complaints.filter((complaint) => !/style-src-attr|inline style/i.test(complaint)),
    [],
  );
});

test('what a policy of the server forbids is said as it is', async () => {
  const address = await served(under(STRICTER));
  const page = await (await browser.newContext()).newPage();
  await page.goto(`${address}remount.html`);
  assert.match(await page.innerText('body'), /forbids scripts written into a page: save the page and open the file/);
  await page.goto(`${address}one/`);
  await page.waitForSelector('html[data-engine=failed]', { state: 'attached' });
  assert.match(await page.innerText('#starting'), /forbids WebAssembly: its Content-Security-Policy lacks/);
});

test('two copies on one server do not take each other’s files away', async () => {
  const address = await served();
  const context = await browser.newContext();
  const page = await context.newPage();
  for (const copy of ['one', 'two', 'one']) {
    await page.goto(`${address}${copy}/`);
    await untilReady(page, true);
  }
  await servers.pop().close();
  for (const copy of ['one', 'two']) {
    await page.goto(`${address}${copy}/`);
    await untilReady(page, true);
  }
});

test('a new version says that it is there, mixes with nothing, and is what is opened next', async () => {
  const address = await served();
  const { page, heard } = await openPage(browser, `${address}two/`, { rides: true });
  assert.equal(await text(page, '#newer'), '');
  await renew(join(folder, 'two'));
  await page.evaluate(async () => (await navigator.serviceWorker.getRegistration()).update());
  await page.waitForFunction(() => /loads the next time/.test(document.getElementById('newer').textContent));
  const works = await page.evaluate(
    () =>
      new Promise((resolve) => {
        const worker = new Worker(document.getElementById('script').src);
        worker.onerror = () => resolve(false);
        setTimeout(resolve, 500, true);
      }),
  );
  assert.equal(works, true, 'the script of the version shown is gone');
  await page.reload();
  await untilReady(page, true);
  assert.equal(await page.title(), 'Renewed');
  assertQuiet({ ...heard, loadedAt: Infinity });
});

test('an update of which a file is missing, or all of it, leaves the version before', async () => {
  const address = await served();
  const { page } = await openPage(browser, `${address}one/`, { rides: true });
  const update = () =>
    page.evaluate(async () => {
      const registration = await navigator.serviceWorker.getRegistration();
      await registration.update().catch(() => {});
      const { installing } = registration;
      while (installing && !['redundant', 'activated'].includes(installing.state))
        await new Promise((done) => setTimeout(done, 20));
    });
  await renew(join(folder, 'one'));
  await rm(join(folder, 'one', 'page-renewed.js'));
  await update();
  for (const name of ['sw.js', 'index.html']) {
    await page.reload();
    await untilReady(page, true);
    assert.notEqual(await page.title(), 'Renewed');
    await rm(join(folder, 'one', name));
    await update();
  }
  await servers.pop().close();
  await page.reload();
  await untilReady(page, true);
});

/** Makes another version of a copy: another title, another script. */
async function renew(copy) {
  const names = await readdir(copy);
  const script = names.find((name) => /^page-.*\.js$/.test(name));
  const edit = async (name, change) => {
    const path = join(copy, name);
    await writeFile(path, change(await readFile(path, 'utf8')));
  };
  await cp(join(copy, script), join(copy, 'page-renewed.js'));
  await rm(join(copy, script));
  for (const name of ['index.html', 'sw.js']) await edit(name, (text) => text.replaceAll(script, 'page-renewed.js'));
  await edit('index.html', (text) => text.replace(/<title>[^<]*/, '<title>Renewed'));
  await edit('sw.js', (text) => text.replace(/VERSION = '[^']*'/, "VERSION = 'renewed'"));
}
