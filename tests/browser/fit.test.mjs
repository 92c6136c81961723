// "Which tyre, how hard?", "Does it sit like the road bike?" and the workshop sheet, as they are used.

import assert from 'node:assert/strict';
import { test } from 'node:test';
import { addressWith, assertQuiet, browser, frame, layOut, openPage, PHONE, SINGLE_FILE, share, site, text } from './harness.mjs';

share();

async function type(page, key, value) {
  await unfold(page, key);
  await page.fill(`#${key}`, value);
  await frame(page);
}

async function choose(page, key, value) {
  await unfold(page, key);
  await page.selectOption(`#${key}`, value);
  await frame(page);
}

const unfold = (page, key) =>
  page.evaluate((id) => document.getElementById(id).closest('details')?.setAttribute('open', ''), key);

const GEARS = '#r=3&ra=50/34&ca=11-12-13-14-15-17-19-21-24-27-30&rb=44/32&cb=11-12-13-14-16-18-20-22-25-28-32&ty=33-622&tc=33';

test('a rider finds tyre and pressure for a muddy race', async () => {
  const { page, heard } = await openPage(browser, SINGLE_FILE);
  await choose(page, 'tyre-kind', 'tubular');
  await choose(page, 'tyre-ground', 'soft');
  await type(page, 'body-mass', '61');
  await type(page, 'kit-mass', '2.5');
  await type(page, 'bike-mass', '8.5');
  // 25 psi × 72 ÷ 79 × 0.85 = 19.37 psi; × 0.95 in front, × 1.05 behind: 1.269 and 1.402 bar.
  const answer = await text(page, '#tyre-answer');
  assert.match(
    answer,
    /A tubular is about as wide as its label, 33\.0 mm on any rim, give or take 0\.5 mm; against the race limit of 33 mm that is too close to tell: measure it\./,
  );
  assert.match(answer, /Start with 1\.27 bar \(18 psi\) in front and 1\.40 bar \(20 psi\) behind\./);
  assert.match(await text(page, '#tyre-tables'), /push it off its rim/);
  await choose(page, 'width-limit', '35');
  assert.match(await text(page, '#tyre-answer'), /likely within the limit/);
  assertQuiet(heard);
});

test('no pressure is given where floor and mark exclude one another', async () => {
  const { page } = await openPage(browser, new URL('#r=3&ty=33-622&rim=21&bm=62&bi=8.9', SINGLE_FILE));
  await choose(page, 'tyre-kind', 'clincher');
  await choose(page, 'tyre-ground', 'rocky');
  await type(page, 'tyre-mark', '55 psi');
  const answer = await text(page, '#tyre-answer');
  assert.match(
    answer,
    /No pressure suits: .* on rocks and roots \(common practice\) is 4\.14 bar or 60 psi, but the tyre is marked with no more/,
  );
  assert.doesNotMatch(answer, /Start with/);
  assert.match(await text(page, '#sheet-page'), /Pressure\s+No pressure suits/);
});

test('a rim wider than the tyre is named beside the rim and in the answer', async () => {
  const { page, heard } = await openPage(browser, SINGLE_FILE);
  await type(page, 'tyre', '20-622');
  assert.match(await text(page, '#tyre-answer'), /This tyre cannot go on this rim/);
  assert.match(await text(page, '#says-rim'), /narrower inside than the tyre/);
  await page.locator('#tyre-section [data-picture] .plot').scrollIntoViewIfNeeded();
  await frame(page);
  assertQuiet(heard);
});

test('a mechanic carries a position over and finds a stem', async () => {
  const { page, heard } = await openPage(browser, SINGLE_FILE);
  const bike = {
    'saddle-height': '700',
    setback: '50',
    'seat-angle': '74',
    'tip-to-bar': '520',
    'bar-drop': '60',
    'road-crank': '170',
    'road-sole': '16',
    'cross-seat-angle': '74',
    'cross-crank': '170',
    'cross-sole': '20',
    lower: '0',
    'bar-up': '10',
    'bar-closer': '10',
  };
  for (const [key, value] of Object.entries(bike)) await type(page, key, value);
  // A row of tests/reference/data/position-transfer-examples.csv.
  const measures = await text(page, '#position-tables');
  assert.match(measures, /Saddle height[^\n]*\s+700 mm\s+704 mm/);
  assert.match(measures, /Bar centre ahead[^\n]*\s+\S+ mm\s+458 mm/);
  assert.match(measures, /Bar centre above[^\n]*\s+\S+ mm\s+627 mm/);
  await type(page, 'reach', '480');
  const answer = await text(page, '#position-answer');
  assert.match(answer, /^Not with a stem that is sold, because at \S+ even the shortest stem sold is \d+ mm too long/);
  assert.match(await text(page, '#position-tables'), /What is missing/);
  await type(page, 'front-centre', '590');
  assert.match(await text(page, '#position-tables'), /Toe overlap: \d+ mm/);
  assertQuiet(heard);
});

const BAD = ['words', '-900', '1e9', '<img src=x onerror=alert(1)>'];

/** Run in the page, because five hundred round trips take minutes: types each of `all` into a field, and then `value` again. */
async function typeAllInto({ key, value, all }) {
  const field = document.getElementById(key);
  const typed = async (text) => {
    field.value = text;
    field.dispatchEvent(new Event('input', { bubbles: true }));
    for (let frames = 0; frames < 2; frames++) await new Promise(requestAnimationFrame);
    const says = document.getElementById(`says-${key}`).textContent;
    return { value: field.value, invalid: field.getAttribute('aria-invalid'), says };
  };
  const refused = [];
  for (const text of all) refused.push(await typed(text));
  const doubt = document.querySelector('#sheet-page .doubt').textContent;
  return { refused, doubt, restored: (await typed(value)).invalid };
}

test('a bad value in any field is named beside it and every answer stays', async () => {
  const { page, heard } = await openPage(browser, SINGLE_FILE);
  const fields = await page.$$eval('main [data-field]:not([type=range])', (inputs) =>
    inputs.filter((input) => input.localName === 'input').map(({ id, value }) => [id, value]),
  );
  assert.ok(fields.length >= 35);
  for (const [key, value] of fields) {
    const { refused, doubt, restored } = await page.evaluate(typeAllInto, { key, value, all: BAD });
    for (const [place, bad] of BAD.entries()) {
      assert.equal(refused[place].value, bad);
      assert.equal(refused[place].invalid, 'true', `${key} ${bad}`);
      assert.match(refused[place].says, /The page goes on with/, key);
    }
    assert.match(doubt, /is left aside; this goes on with/);
    assert.equal(restored, null, key);
  }
  assert.equal(await page.locator('img').count(), 0);
  assertQuiet(heard);
});

test('what two sections share is one field, and a link leads to it', async () => {
  const { page, heard } = await openPage(browser, new URL('#r=3&bm=62&bi=8.9&xc=172.5', SINGLE_FILE));
  await type(page, 'front-centre', '590');
  const lead = async (section, words, key) => {
    const link = page.locator(`${section} a[href="#${key}"]`);
    assert.match(await text(page, `${section} a[href="#${key}"]`), words);
    await link.click();
    assert.equal(await page.evaluate(() => document.activeElement.id), key);
    assert.ok(await page.locator(`#${key}`).isVisible(), key);
  };
  await lead('#tyre-section', /^rider of 62 kg$/, 'body-mass');
  await lead('#tyre-section', /^2 kg of kit$/, 'kit-mass');
  await lead('#tyre-section', /^bike of 8\.9 kg$/, 'bike-mass');
  await lead('#tyre-section', /^45 %$/, 'rear-weight');
  await lead('#position-tables', /^65 mm below the axles$/, 'bracket-drop');
  await lead('#ride-ends', /^crank of 172\.5 mm$/, 'cross-crank');
  await type(page, 'cross-crank', '165');
  assert.match(await text(page, '#ride-ends'), /crank of 165 mm/);
  await type(page, 'rear-weight', '0.6');
  assert.match(await text(page, '#tyre-answer'), /40 % of the weight on the front wheel/);
  await type(page, 'kit-mass', 'words');
  assert.match(await text(page, '#tyre-answer'), /^“Kit” is left aside; this goes on with 2 kg\./);
  assert.match(await text(page, '#ride-answer'), /^“Kit” is left aside/);
  assert.doesNotMatch(await text(page, '#position-answer'), /is left aside/);
  assert.doesNotMatch(page.url(), /#(body-mass|cross-crank)/);
  assertQuiet(heard);
});

test('what is not the rider’s is listed and hatched until it is claimed', async () => {
  const { page, heard } = await openPage(browser, SINGLE_FILE);
  const hatch = (selector) =>
    page
      .locator(selector)
      .first()
      .evaluate((it) => getComputedStyle(it).backgroundImage);
  assert.match(await text(page, '#scenario'), /Not yours yet: set-up A \(2\), .*position \(14\)\./);
  assert.match(await hatch('#rings-a'), /gradient/);
  assert.match(await hatch('#tyre-answer b'), /gradient/);
  assert.equal(await page.locator('.good').count(), 0);
  const marked = (title) => page.$eval(title, (it) => getComputedStyle(it, '::after').content);
  const titles = ['#ride figcaption b', '#ride-ends caption span', '#position figcaption b', '#position-tables caption span'];
  for (const title of titles) assert.equal(await marked(title), '"demo values"', title);
  for (const title of ['#cage-classes caption span', '#tyre-rules caption span'])
    assert.equal(await marked(title), 'none', title);
  for (let left = await page.locator('.mine button').count(); left > 0; left -= 1) {
    await page.locator('.mine button').first().focus();
    await page.keyboard.press('Enter');
    await frame(page);
  }
  assert.doesNotMatch(await text(page, '#scenario'), /Not yours/);
  assert.equal(await hatch('#rings-a'), 'none');
  assert.equal(await hatch('#tyre-answer b'), 'none');
  for (const title of titles) assert.equal(await marked(title), 'none', title);
  assert.match(await text(page, '#lap-answer'), /The course is an invented one\./);
  const again = await openPage(browser, await addressWith(page, 'hs=12'));
  assert.doesNotMatch(await text(again.page, '#scenario'), /Not yours/);
  await page.click('[data-act=reset]');
  assert.match(await text(page, '#scenario'), /Not yours yet: set-up A/);
  assertQuiet(heard);
});

test('the caption of a table that scrolls stays whole and in sight on a phone', async () => {
  const { page } = await openPage(browser, SINGLE_FILE, { viewport: PHONE });
  await layOut(page);
  const captions = await page.$$eval('.scroll:has(caption)', (boxes) =>
    boxes
      .filter((box) => box.offsetWidth > 0)
      .map((box) => {
        box.scrollLeft = box.scrollWidth;
        const caption = box.querySelector('caption');
        const [outer, inner] = [box, caption].map((one) => one.getBoundingClientRect());
        return {
          words: caption.textContent,
          scrolled: box.scrollLeft,
          cut: Math.max(outer.left - inner.left, inner.right - outer.right),
        };
      }),
  );
  assert.ok(captions.some(({ scrolled }) => scrolled > 0));
  for (const { words, cut } of captions) assert.ok(cut <= 1, `${words}: ${cut}`);
});

test('a sheet from a file says where its link belongs', async () => {
  const { page } = await openPage(browser, SINGLE_FILE);
  assert.match(await text(page, '#sheet-page .link'), /put this behind the address of the Remount page: #r=3/);
  const served = await openPage(browser, site.address);
  assert.doesNotMatch(await text(served.page, '#sheet-page .link'), /put this behind/);
});

test('the sheet is for A, for B or for both', async () => {
  const { page } = await openPage(browser, SINGLE_FILE);
  assert.match(await text(page, '#sheet-page'), /A Cassette[\s\S]*B Cassette/);
  await choose(page, 'sheet-for', 'b');
  const sheet = await text(page, '#sheet-page');
  assert.match(sheet, /Set-up B/);
  assert.doesNotMatch(sheet, /A Cassette/);
  const again = await openPage(browser, await addressWith(page, 'sf=b'));
  assert.equal(await again.page.inputValue('#sheet-for'), 'b');
});

test('the sheet is copied as text, with the link that opens the same bench', async () => {
  const { page } = await openPage(browser, site.address + GEARS, { permissions: ['clipboard-read', 'clipboard-write'] });
  await type(page, 'saddle-height', '731');
  await page.click('[data-act=copy-sheet]');
  const copied = (await page.evaluate(() => navigator.clipboard.readText())).replaceAll('\u00a0', ' ');
  assert.match(copied, /^Workshop sheet\nSet-ups A and B\n/);
  assert.match(copied, /\n= Gears =\nA Rings: 50\/34\n/);
  assert.match(copied, /\n {2}A Development, m \| 50 \| 34\n {2}11 \| 9\.82 \| 6\.68×\n/);
  assert.match(copied, /\n- Stem, post, bolts, brakes -\n\[ \] Pull neither/);
  assert.match(copied, /\n\[ \] Tighten every bolt/);
  assert.match(copied, /\n- How to measure -\n[^[]/);
  assert.match(copied, /\nSaddle height: not known ____/);
  const [, link] = copied.match(/again: (\S+)$/);
  assert.ok(link.startsWith(site.address), link);
  const again = await openPage(browser, link);
  assert.equal(await again.page.inputValue('#saddle-height'), '731');
});

test('where the clipboard is refused, the text stands ready to be copied', async () => {
  const { page } = await openPage(browser, SINGLE_FILE);
  await page.evaluate(() => {
    Object.defineProperty(navigator, 'clipboard', { value: { writeText: () => Promise.reject(new Error('refused')) } });
  });
  await page.click('[data-act=copy-sheet]');
  await page.waitForSelector('#sheet-text:not([hidden])');
  const box = page.locator('#sheet-text');
  assert.match(await box.inputValue(), /^Workshop sheet/);
  const marked = await box.evaluate((area) => [area.selectionStart, area.selectionEnd === area.value.length]);
  assert.deepEqual(marked, [0, true]);
  assert.match(await text(page, '#sheet-copied'), /copy the marked text/);
});

const FULL =
  '#r=3&ra=52/42/30&ca=9-10-11-13-15-17-19-22-25-29-34-40-48-60&rb=50/40/28&cb=10-11-12-13-15-17-19-22-25-29-34-40-46-52&tk=clincher&ho=hookless&bd=-60&re=470&li=6.1&rr=80&xr=70&rp=125&xp=115&fc=570&rim=30&co=meadow&ty=33-622&tc=33&ls=34&ss=11&rd=16&bm=62&bi=8.9&pw=220&gr=wet-grass&sl=9&le=60&tg=soft&sh=728&sb=56&tb=545&sa=73.5&rc=172.5&rs=15&xa=73&xc=172.5&xs=21&st=578&ha=72&hs=12';

const PAPERS = { A4: { width: 718, height: 1054 }, Letter: { width: 740, height: 988 } };

test('what leaves room on A4 and on Letter is printed as large as it fits', async () => {
  const sizes = { A4: [], Letter: [] };
  for (const hash of ['', '#r=3&sf=a', '#r=3&ra=40&ca=18&rb=40&cb=18', FULL]) {
    const { page } = await openPage(browser, new URL(hash, SINGLE_FILE), { viewport: PAPERS.A4, rides: true });
    await page.emulateMedia({ media: 'print' });
    await page.waitForFunction(() => /likely/.test(document.getElementById('lap-answer').textContent), null, {
      timeout: 60_000,
    });
    for (const [format, viewport] of Object.entries(PAPERS)) {
      await page.setViewportSize(viewport);
      // In one go, because the lap on the sheet is still sharpened.
      const { points, height } = await page.$eval('#sheet-page', (sheet) => {
        dispatchEvent(new Event('beforeprint'));
        const points = Number.parseFloat(getComputedStyle(sheet.querySelector('dd')).fontSize) * 0.75;
        return { points, height: sheet.offsetHeight };
      });
      assert.ok(height <= viewport.height, `${format} ${hash}: ${height} px`);
      assert.ok(height >= 0.93 * viewport.height || points >= 8.3, `${format} ${hash}: ${height} px in ${points} pt`);
      sizes[format].push(Number(points.toFixed(2)));
    }
    await page.context().close();
  }
  for (const [demo, a, simple, full] of Object.values(sizes)) {
    for (const points of [demo, a, simple, full]) assert.ok(points >= 8.5, `${points} pt`);
    assert.ok(a >= demo, `${a} pt for A alone, ${demo} pt for both`);
  }
});

test('fitting the sheet to its paper leaves the page as it was', async () => {
  const { page } = await openPage(browser, SINGLE_FILE, { rides: true });
  const place = () =>
    page.evaluate(() => {
      const { position, width } = document.getElementById('sheet-page').style;
      return { scrolled: scrollY, position, width, media: document.getElementById('print-type').media };
    });
  await page.evaluate(() => document.getElementById('sheet').scrollIntoView({ behavior: 'instant' }));
  await page.waitForFunction(() => document.getElementById('sheet-page').textContent.includes('Lap'));
  await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
  const before = await place();
  await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
  assert.deepEqual(await place(), before);
  assert.deepEqual(before, { ...before, position: '', width: '', media: 'print' });
});

test('the button prints', async () => {
  const { page } = await openPage(browser, SINGLE_FILE, { viewport: PHONE });
  await page.evaluate(() => (window.print = () => (window.printed = true)));
  await page.click('[data-act=print]');
  assert.equal(await page.evaluate(() => window.printed), true);
});

test('a link of the first version still opens', async () => {
  const kept =
    '#remount=1&rings-a=48/34&cassette-a=11-12-13-14-15-17-19-21-24-27-30&rings-b=42&cassette-b=11-13-15-17-19-21-24-28-32-37-42&tyre=700x35c&cadence-low=57,5+rpm';
  const { page, heard } = await openPage(browser, new URL(kept, SINGLE_FILE));
  assert.equal(await page.inputValue('#rings-a'), '48/34');
  assert.equal(await page.inputValue('#tyre'), '700x35c');
  assert.equal(await page.inputValue('#cadence-low'), '57,5 rpm');
  assert.match(await text(page, '#notices'), /^This link is from before laps were ridden as you ride/);
  await type(page, 'rings-b', '40');
  assert.match((await addressWith(page, 'rb=40')).hash, /^#r=3&ra=48\/34&/);
  assertQuiet(heard);
});
