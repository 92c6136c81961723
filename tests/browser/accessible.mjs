// What any part of the page owes those who see, point or read otherwise: what axe-core asks for, and contrast, which axe-core
// leaves open over hatched and translucent grounds.

import assert from 'node:assert/strict';
import axe from 'axe-core';

/** Nothing in this part breaks a rule of axe-core. */
export async function assertAxe(page, part = 'html', state = '') {
  await page.evaluate(`globalThis.axe ?? (() => {${axe.source}})()`);
  const violations = await page.evaluate(
    (part) =>
      globalThis.axe
        .run(part, { resultTypes: ['violations'], rules: { 'color-contrast': { enabled: false } } })
        .then(({ violations }) =>
          violations.flatMap(({ id, help, nodes }) => nodes.map(({ target }) => `${id} at ${target}: ${help}`)),
        ),
    part,
  );
  assert.deepEqual(violations, [], state);
}

/** Every text in this part stands out by 4.5 to 1, or by 3 to 1 where it is large (WCAG 2.2, 1.4.3), against the worst behind it. */
export async function assertContrast(page, part = 'html', state = '') {
  const { faint, texts } = await page.evaluate(faintTexts, part);
  assert.ok(texts > 0, `${part} holds text ${state}`);
  assert.deepEqual(faint, [], state);
}

/** Runs in the page. */
function faintTexts(part) {
  const pen = new OffscreenCanvas(1, 1).getContext('2d', { willReadFrequently: true });
  const known = new Map();
  /** Red, green, blue and alpha of a colour in any notation. */
  const read = (colour) => {
    if (!known.has(colour)) {
      pen.clearRect(0, 0, 1, 1);
      pen.fillStyle = colour;
      pen.fillRect(0, 0, 1, 1);
      const [red, green, blue, alpha] = pen.getImageData(0, 0, 1, 1).data;
      known.set(colour, [red, green, blue, alpha / 255]);
    }
    return known.get(colour);
  };
  const over = ([red, green, blue, alpha], ground) =>
    [red, green, blue].map((part, place) => part * alpha + ground[place] * (1 - alpha));
  const luminance = (colour) => {
    const [red, green, blue] = colour.map((part) => {
      const share = part / 255;
      return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
  };
  const contrast = (one, other) => {
    const [dark, light] = [luminance(one), luminance(other)].sort((a, b) => a - b);
    return (light + 0.05) / (dark + 0.05);
  };
  const grounds = new Map();
  /**
   * Every colour that may be behind an element: its own, those of its hatching, or what is behind its parent. Shades along an
   * edge say that a table goes on there and lie under nothing that is read.
   */
  const behind = (element) => {
    if (!element) return [over(read('Canvas'), [255, 255, 255])];
    if (!grounds.has(element)) {
      const { backgroundColor, backgroundImage } = getComputedStyle(element);
      const own = read(backgroundColor);
      const below = own[3] === 1 ? [own.slice(0, 3)] : behind(element.parentElement).map((ground) => over(own, ground));
      const hatching = /^repeating-linear-gradient/.test(backgroundImage) ? backgroundImage : '';
      const hatched = (hatching.match(/(rgba?|color|oklab|oklch)\([^()]*\)/g) ?? []).map(read);
      grounds.set(element, [...below, ...hatched.flatMap((hatch) => below.map((ground) => over(hatch, ground)))]);
    }
    return grounds.get(element);
  };
  const opacity = (element) => (element ? Number(getComputedStyle(element).opacity) * opacity(element.parentElement) : 1);
  const isSeen = (element) => {
    const { width, height } = element.getBoundingClientRect();
    return (
      width > 1 &&
      height > 1 &&
      !element.closest('.unseen') &&
      element.checkVisibility({ visibilityProperty: true, opacityProperty: true })
    );
  };
  const faint = [];
  let texts = 0;
  const judge = (element, words, style) => {
    texts += 1;
    const points = Number.parseFloat(style.fontSize) * 0.75;
    const least = points >= 18 || (points >= 14 && Number(style.fontWeight) >= 700) ? 3 : 4.5;
    const [red, green, blue, alpha] = read(style.color);
    const ink = [red, green, blue, alpha * opacity(element)];
    const ratio = Math.min(...behind(element).map((ground) => contrast(over(ink, ground), ground)));
    if (ratio < least)
      faint.push(`${ratio.toFixed(2)} “${words.trim().slice(0, 40)}” in ${element.localName} ${element.id} ${element.className}`);
  };
  for (const element of document.querySelectorAll(`${part}, ${part} *`)) {
    if (element.closest('svg, script, style, option, canvas') || !isSeen(element)) continue;
    const style = getComputedStyle(element);
    const own = [...element.childNodes].filter(({ nodeType }) => nodeType === Node.TEXT_NODE).map(({ data }) => data);
    if (own.join('').trim()) judge(element, own.join(''), style);
    if (element.matches('input:not([type=range]), textarea, select')) judge(element, element.value, style);
    if (element.placeholder && !element.value) judge(element, element.placeholder, getComputedStyle(element, '::placeholder'));
    for (const pseudo of ['::before', '::after']) {
      const drawn = getComputedStyle(element, pseudo);
      if (/"\S/.test(drawn.content)) judge(element, drawn.content, drawn);
    }
  }
  return { faint, texts };
}
