// The JavaScript module: the same answers in Node and in a browser, from one import.

import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { test } from 'node:test';
import { API, launchBrowser, serveFolder } from './harness.mjs';

const FUNCTIONS = ['gearTable', 'overlap', 'compare', 'wheel', 'cageCheck'];

const api = await import(new URL('remount.js', API));

test('Node imports every function ready to be called', async () => {
  assert.deepEqual(FUNCTIONS.filter((name) => typeof api[name] !== 'function'), []);
  await api.default();
  await api.default();
});

test('every function has its type declared', async () => {
  const types = await readFile(new URL('remount.d.ts', API), 'utf8');
  const names = Object.keys(api).filter((name) => name !== 'default');
  assert.deepEqual(names.filter((name) => !types.includes(`export function ${name}(`)), []);
});

test('a browser imports the same functions', async () => {
  const browser = await launchBrowser();
  const server = await serveFolder(API);
  try {
    const page = await browser.newPage();
    await page.route(server.address, (route) => route.fulfill({ contentType: 'text/html', body: '' }));
    await page.goto(server.address);
    const names = await page.evaluate(async () => Object.keys(await import('/remount.js')));
    assert.deepEqual(names.sort(), Object.keys(api).sort());
  } finally {
    await browser.close();
    await server.close();
  }
});
