// From a keystroke to the picture: the input event, the page's work in the frame that follows, layout and paint.
//
// A change is over when the first task after that frame runs. The compositor's own work, in another process, is not
// in the figure. A frame with one changed pixel is timed in the same way, to show how much of the figure is not the page's.

import { openPage, SINGLE_FILE } from '../browser/harness.mjs';
import { median, ms, quantile } from './statistics.mjs';

const CHANGES = 200;
const WARM_UP = 20;

/** The field that is changed and what is typed into it in turn: a change that every section depends on. */
const FIELD = '#cadence-usual';
const TYPED = ['84', '85', '86', '87'];

export async function paintRows(browser) {
  const { page } = await openPage(browser, SINGLE_FILE);
  const onePixel = await page.evaluate(timeChanges, { count: WARM_UP + CHANGES });
  const changes = await page.evaluate(timeChanges, { field: FIELD, typed: TYPED, count: WARM_UP + CHANGES });
  const timed = changes.slice(WARM_UP);
  return [
    { what: `input to painted, median of ${CHANGES} changes`, figure: ms(median(timed)) },
    { what: 'input to painted, 95th percentile', figure: ms(quantile(timed, 0.95)) },
    { what: 'the same for one changed pixel, median', figure: ms(median(onePixel.slice(WARM_UP))) },
  ];
}

/** Runs in the page. Without a field, a pixel in the corner changes colour. */
async function timeChanges({ field, typed, count }) {
  const input = field && document.querySelector(field);
  const pixel = document.createElement('i');
  pixel.style = 'position: fixed; top: 0; left: 0; width: 1px; height: 1px';
  document.body.append(pixel);
  const durations = [];
  for (let change = 0; change < count; change += 1) {
    const start = performance.now();
    if (input) {
      input.value = typed[change % typed.length];
      input.dispatchEvent(new Event('input', { bubbles: true }));
    } else {
      pixel.style.background = change % 2 ? 'navy' : 'orange';
    }
    await new Promise((painted) => {
      requestAnimationFrame(() => {
        const channel = new MessageChannel();
        channel.port1.onmessage = painted;
        channel.port2.postMessage(null);
      });
    });
    durations.push(performance.now() - start);
  }
  pixel.remove();
  return durations;
}
