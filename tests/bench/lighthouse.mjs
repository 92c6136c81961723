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

export async function lighthouseRows() {
  const { address, close } = await serveGzipped(SITE);
  const chrome = await launch({
    chromePath: process.env.CHROMIUM,
    chromeFlags: ['--headless=new', '--no-sandbox', '--disable-gpu'],
  });
  const { lhr } = await lighthouse(address, { port: chrome.port, logLevel: 'error', skipAudits: SKIPPED });
  await chrome.kill();
  close();
  return [
    ...Object.values(lhr.categories).map(({ title, score }) => ({
      what: `Lighthouse: ${title}`,
      figure: String(Math.round(100 * score)),
    })),
    ...AUDITS.map((audit) => ({ what: `Lighthouse: ${lhr.audits[audit].title}`, figure: lhr.audits[audit].displayValue })),
  ];
}
