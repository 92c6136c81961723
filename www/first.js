// @ts-check
// Before anything is shown: the demo that is written into the page is not, where the address or the browser holds a bench.

import { lastBench } from './storage.js';

if (location.hash.length > 1 || lastBench() !== null) document.documentElement.dataset.awaits = 'bench';
