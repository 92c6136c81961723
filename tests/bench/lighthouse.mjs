// What Lighthouse makes of the hosted page on its settings for a phone.

import { launch } from 'chrome-launcher';
import lighthouse from 'lighthouse';
import { SITE } from '../browser/harness.mjs';
import { serveGzipped } from './gzipped.mjs';

/** The page's policy lets nobody fetch anything from inside it, and so not this file either. */
const SKIPPED = ['robots-txt'];
const AUDITS = [
  'first-contentful-paint',
  'largest-contentful-paint',
  'total-blocking-time',
  'cumulative-layout-shift',
  'interactive',
];

/** One run may be disturbed by whatever else the machine does. */
const RUNS = 5;

export async function lighthouseRows() {
  const { address, close } = await serveGzipped(SITE);
  const runs = [];
  while (runs.length < RUNS) runs.push(await asked(address));
  close();
  const { categories, audits } = runs.toSorted((a, b) => performance(a) - performance(b))[Math.floor(RUNS / 2)];
  return [
    { what: `Lighthouse: Performance of ${RUNS} runs`, figure: runs.map((run) => Math.round(100 * performance(run))).join(', ') },
    ...Object.values(categories).map(({ title, score }) => ({
      what: `Lighthouse, the middle run: ${title}`,
      figure: String(Math.round(100 * score)),
    })),
    ...AUDITS.map((audit) => ({
      what: `Lighthouse, the middle run: ${audits[audit].title}`,
      figure: audits[audit].displayValue,
    })),
  ];
}

const performance = ({ categories }) => categories.performance.score;

async function asked(address) {
  const chrome = await launch({
    chromePath: process.env.CHROMIUM,
    chromeFlags: ['--headless=new', '--no-sandbox', '--disable-gpu'],
  });
  const { lhr } = await lighthouse(address, { port: chrome.port, logLevel: 'error', skipAudits: SKIPPED });
  await chrome.kill();
  return lhr;
}
