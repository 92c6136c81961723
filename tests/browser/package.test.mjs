// The JavaScript module as a package: packed, installed, read as its manual says, bundled, and taken from another origin.

import assert from 'node:assert/strict';
import { execFile } from 'node:child_process';
import { cp, mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { promisify } from 'node:util';
import { rollup } from 'rollup';
import { API, launchBrowser, serveFolder } from './harness.mjs';

const run = promisify(execFile);
const ESBUILD = fileURLToPath(new URL('../../crates/packer/node/node_modules/.bin/esbuild', import.meta.url));
const PROGRAM = `import { gearTable } from 'remount';
globalThis.answer = gearTable({ rings: [44], sprockets: [11], circumferenceMm: 2100 }).gears[0].ratio;
`;

/** A project that has installed the package from its archive. */
let project;
const inProject = (name) => join(project, name);

before(async () => {
  project = await mkdtemp(join(tmpdir(), 'remount-package-'));
  const { stdout } = await run('npm', ['pack', fileURLToPath(API), '--json'], { cwd: project });
  await writeFile(inProject('package.json'), '{"private": true, "type": "module"}');
  await run('npm', ['install', '--offline', '--no-audit', '--no-fund', inProject(JSON.parse(stdout)[0].filename)], {
    cwd: project,
  });
  await writeFile(inProject('program.js'), PROGRAM);
});
after(() => rm(project, { recursive: true }));

test('what is packed says what it is', async () => {
  const described = JSON.parse(await readFile(inProject('node_modules/remount/package.json'), 'utf8'));
  const workspace = await readFile(new URL('../../Cargo.toml', import.meta.url), 'utf8');
  const setting = (name) => new RegExp(`^${name} = "(.*)"`, 'm').exec(workspace)[1];
  assert.equal(described.version, setting('version'));
  assert.equal(described.license, setting('license'));
  for (const file of described.files) await readFile(inProject(`node_modules/remount/${file}`));
});

test('its manual runs as printed and calls every function', async () => {
  const manual = await readFile(inProject('node_modules/remount/README.md'), 'utf8');
  const examples = [...manual.matchAll(/```js\n([\s\S]*?)```/g)].map(([, example]) => example);
  for (const [index, example] of examples.entries()) {
    await writeFile(inProject(`example-${index}.js`), example);
    const { stdout } = await run('node', [`example-${index}.js`], { cwd: project });
    const printed = [...example.matchAll(/^console\.log\(.*\); \/\/ (.*)$/gm)].map(([, line]) => line);
    assert.ok(printed.length > 0, example);
    assert.deepEqual(stdout.trim().split('\n'), printed);
  }
  const api = await import(new URL('remount.js', API));
  const called = examples.join('\n');
  const functions = Object.keys(api).filter((name) => !['default', 'start'].includes(name));
  assert.deepEqual(
    functions.filter((name) => !called.includes(`${name}(`)),
    [],
  );
});

test('a program that waits for the engine gets it from bytes, at once or later', async () => {
  const use = `import { gearTable, START } from 'remount/unstarted';
import { readFileSync } from 'node:fs';
const bytes = readFileSync('node_modules/remount/remount_bg.wasm');
await START(bytes);
console.log(gearTable({ rings: [44], sprockets: [11], circumferenceMm: 2100 }).gears[0].ratio);`;
  for (const start of ['start', 'startSync']) {
    await writeFile(inProject('waits.js'), use.replaceAll('START', start));
    const { stdout } = await run('node', ['waits.js'], { cwd: project });
    assert.equal(stdout, '4\n');
  }
});

async function answerOf(address) {
  const browser = await launchBrowser();
  const server = await serveFolder(pathToFileURL(`${project}/web/`));
  try {
    const page = await (await browser.newContext()).newPage();
    await page.goto(server.address);
    return await page.evaluate((script) => import(script).then(() => globalThis.answer), address);
  } finally {
    await browser.close();
    await server.close();
  }
}

/** A page with what a bundler made, the engine copied beside it as the manual says. */
async function webPage(bundle) {
  await mkdir(inProject('web'), { recursive: true });
  await writeFile(inProject('web/index.html'), '<!doctype html><title>A page</title>');
  await bundle(inProject('web/bundle.js'));
  await cp(fileURLToPath(new URL('remount_bg.wasm', API)), inProject('web/remount_bg.wasm'));
}

test('two bundlers take it for a browser without a complaint', async () => {
  const bundlers = {
    esbuild: async (outfile) => {
      const { stderr } = await run(
        ESBUILD,
        ['program.js', '--bundle', '--format=esm', '--platform=browser', `--outfile=${outfile}`, '--log-level=warning'],
        { cwd: project },
      );
      assert.equal(stderr, '');
    },
    rollup: async (file) => {
      const complaints = [];
      const resolve = {
        name: 'packages',
        resolveId: (id) => (id === 'remount' ? inProject('node_modules/remount/remount.js') : null),
      };
      const bundle = await rollup({
        input: inProject('program.js'),
        plugins: [resolve],
        onLog: (level, { message }) => complaints.push(`${level}: ${message}`),
      });
      await bundle.write({ file, format: 'es' });
      assert.deepEqual(complaints, []);
    },
  };
  for (const bundle of Object.values(bundlers)) {
    await webPage(bundle);
    assert.equal(await answerOf('./bundle.js'), 4);
  }
});

test('a page takes it from another origin that allows it', async () => {
  const elsewhere = await serveFolder(API, () => ({ 'Access-Control-Allow-Origin': '*' }));
  try {
    await webPage((file) => writeFile(file, PROGRAM.replace("'remount'", `'${elsewhere.address}remount.js'`)));
    assert.equal(await answerOf('./bundle.js'), 4);
  } finally {
    await elsewhere.close();
  }
});
