'use strict';

/**
 * The section on the lap: files, kept courses, the lap that is worked out after everything else, and the search in
 * workers. `show` puts an answer of the engine in place.
 */
function roundTheLap(engine, show) {
  const find = (id) => document.getElementById(id);
  const LARGEST_FILE = 32 * 1024 * 1024;
  const SETTLE_AFTER = 300;
  const SHOW_EVERY = 400;
  const KEPT = 'remount-course:';
  let near = false;
  let soon = 0;
  let later = 0;
  let fromKept = '';

  /** The lap in coarse steps in the next task, and until it has settled once nothing has changed for a while. */
  function due() {
    // A kept course can be chosen again once another is ridden.
    if (find('kept').value && engine.courseName() !== fromKept) find('kept').value = '';
    if (!near) return;
    soon ||= setTimeout(() => {
      soon = 0;
      put(engine.lap(false));
    });
    clearTimeout(later);
    later = setTimeout(() => put(engine.lap(true)), SETTLE_AFTER);
  }

  function put(update) {
    if (update) show(update, false);
  }

  const shown = new Set();
  const watch = new IntersectionObserver((entries) => {
    for (const { target, isIntersecting } of entries) shown[isIntersecting ? 'add' : 'delete'](target);
    near = shown.size > 0;
    due();
  }, { rootMargin: '600px' });
  for (const id of ['lap', 'sheet']) watch.observe(find(id));
  const settle = () => put(engine.lap(true));
  addEventListener('beforeprint', settle);
  document.addEventListener('click', ({ target }) => target.closest('[data-act=copy-sheet]') && settle(), true);

  // Courses: chosen, dropped, kept.

  async function take(file) {
    if (!file) return;
    if (file.size > LARGEST_FILE) return show(engine.refuse(file.name, 'the file is larger than 32 MB; keep one lap of it'));
    const text = await file.text().catch(() => null);
    if (text === null) return show(engine.refuse(file.name, 'the file cannot be read'));
    const name = file.name.replace(/\.[^.]*$/, '');
    show(text.trimStart().startsWith('{') ? takeKept(file.name, text) : engine.takeTrack(name, text));
  }

  /** A course as written by `kept`: {"remountCourse": 1, "name": …, "smoothingM": 40, "stretches": ["120; 1.5; firm grass", …]}. */
  function takeKept(from, text) {
    let course;
    try {
      course = JSON.parse(text);
    } catch {
      return engine.refuse(from, 'it is neither GPX nor one of our courses');
    }
    if (course?.remountCourse !== 1 || !Array.isArray(course.stretches)) {
      return engine.refuse(from, 'it is not one of our courses, or of a later version');
    }
    const name = typeof course.name === 'string' ? course.name : from;
    return engine.takeRows(name, course.stretches.join('\n'), Number(course.smoothingM) || undefined);
  }

  /** The course that is ridden, ready to be kept; nothing while its file is still to be chosen. */
  function kept() {
    const [name, rows] = engine.course();
    if (!rows) return null;
    const stretches = rows.trim().split('\n');
    return { name, text: JSON.stringify({ remountCourse: 1, name, smoothingM: engine.smoothingM(), stretches }, null, 1) };
  }

  function lacksCourse(place) {
    find(place).textContent = 'There is no course to ride yet: first choose the file of one that can be used.';
  }

  function save() {
    const course = kept();
    if (!course) return lacksCourse('kept-says');
    const { name, text } = course;
    const link = document.createElement('a');
    link.href = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
    link.download = name.replace(/[^\p{L}\p{N}]+/gu, '-') + '.json';
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 1000);
    find('kept-says').textContent = `Saved as “${link.download}”.${withPaint()}`;
  }

  /** Changes on stretches of a course become part of what is kept of it. */
  const withPaint = () => (find('paint').value.trim() ? ' Your changes on its stretches are part of what was kept: they need not be made again.' : '');

  function keep() {
    const course = kept();
    if (!course) return lacksCourse('kept-says');
    const name = find('keep-name').value.trim() || course.name;
    try {
      localStorage.setItem(KEPT + name, JSON.stringify({ ...JSON.parse(course.text), name }));
      find('kept-says').textContent = `Kept in this browser as “${name}”.${withPaint()}`;
    } catch {
      find('kept-says').textContent = 'This browser keeps nothing for this page: save the course as a file.';
    }
    list();
  }

  function list() {
    const select = find('kept');
    let names = [];
    try {
      names = Object.keys(localStorage).filter((key) => key.startsWith(KEPT)).sort();
    } catch {
      // Storage may be forbidden.
    }
    select.replaceChildren(new Option('', ''), ...names.map((key) => new Option(key.slice(KEPT.length), key)));
    find('kept-row').hidden = names.length === 0;
  }

  const drop = find('lap-drop');
  find('lap-file').addEventListener('change', async ({ target }) => {
    await take(target.files[0]);
    target.value = '';
  });
  // Anywhere on the page: a file dropped beside the section would make the browser leave the page for it.
  for (const type of ['dragover', 'drop']) {
    document.addEventListener(type, async (event) => {
      if (!event.dataTransfer?.types.includes('Files')) return;
      event.preventDefault();
      drop.classList.toggle('over', type === 'dragover');
      if (type !== 'drop') return;
      const outside = !find('lap').contains(event.target);
      await take(event.dataTransfer.files[0]);
      if (outside) drop.scrollIntoView({ block: 'center' });
    });
  }
  document.addEventListener('dragleave', () => drop.classList.remove('over'));
  find('keep').addEventListener('click', keep);
  find('save-course').addEventListener('click', save);
  find('kept').addEventListener('change', ({ target }) => {
    if (!target.value) return;
    const name = target.value.slice(KEPT.length);
    const text = localStorage.getItem(target.value);
    if (text !== null) {
      const update = takeKept(name, text);
      fromKept = engine.courseName();
      return show(update);
    }
    list();
    find('kept-says').textContent = `“${name}” is no longer kept: it was forgotten elsewhere. The course stays as it was.`;
  });
  find('forget').addEventListener('click', () => {
    const key = find('kept').value;
    if (!key) return;
    localStorage.removeItem(key);
    find('kept-says').textContent = `“${key.slice(KEPT.length)}” is forgotten.`;
    list();
    find(find('kept-row').hidden ? 'keep-name' : 'kept').focus();
  });
  list();

  // The search: as many workers as help, each with an engine of its own.

  let workers = [];

  function busy(searching) {
    // Not disabled, which would take the focus away from whoever has just pressed it.
    find('search-start').setAttribute('aria-disabled', searching);
    find('search-stop').setAttribute('aria-disabled', !searching);
    find('search-bar').hidden = !searching;
    if (!searching) find('search-left').textContent = '';
  }

  function stop() {
    for (const worker of workers) worker.terminate();
    workers = [];
    busy(false);
  }

  function search() {
    if (workers.length > 0) return;
    if (document.querySelector('[data-field][aria-invalid]')) {
      find('search-left').textContent = 'First put right the fields that are marked.';
      return;
    }
    const [, rows] = engine.course();
    if (!rows) return lacksCourse('search-left');
    const [update, total] = engine.beginSearch();
    show(update);
    if (total === 0) return show(engine.endSearch([]));
    busy(true);
    const bar = find('search-bar');
    bar.max = total;
    bar.value = 0;
    const began = performance.now();
    const count = Math.min(4, Math.max(1, navigator.hardwareConcurrency || 2), total);
    let waiting = [];
    let done = 0;
    let left = count;
    let shown = began;
    const mine = [];
    const hear = (worker) => ({ data }) => {
      if (workers !== mine) return;
      if (data.finals) {
        stop();
        return show(engine.endSearch(data.finals));
      }
      if (data.problem) {
        stop();
        find('search-left').textContent = data.problem;
        return;
      }
      waiting.push(...data.rows);
      done += data.rows.length / 7;
      if (data.done) left -= 1;
      const now = performance.now();
      bar.value = done;
      const seconds = Math.ceil(((now - began) / 1000) * (total / Math.max(done, 1) - 1));
      find('search-left').textContent = `${done} of ${total}, about ${seconds} s to go`;
      if (left === 0 || now - shown > SHOW_EVERY) {
        show(engine.takeFound(new Float64Array(waiting)));
        waiting = [];
        shown = performance.now();
      }
      if (left === 0) {
        find('search-left').textContent = 'Riding the best once more, with every doubt moved';
        worker.postMessage({ finals: engine.leading() });
      }
    };
    workers = mine;
    const source = URL.createObjectURL(new Blob([document.getElementById('glue').textContent, `(${inWorker})()`], { type: 'text/javascript' }));
    const order = { bytes: engineBytes(), link: engine.link(), rows };
    for (let index = 0; index < count; index += 1) {
      const worker = new Worker(source);
      worker.onmessage = hear(worker);
      worker.onerror = () => hear(worker)({ data: { problem: 'This browser does not let the page search in the background.' } });
      worker.postMessage({ ...order, index, count });
      mine.push(worker);
    }
    URL.revokeObjectURL(source);
  }

  find('search-start').addEventListener('click', search);
  find('search-stop').addEventListener('click', () => {
    if (workers.length === 0) return;
    stop();
    show(engine.endSearch([]));
  });

  return due;
}

/** Runs in a worker: opens the same bench, searches its part of the set-ups and says what it finds as it goes. */
function inWorker() {
  const MESSAGE_EVERY = 60;
  onmessage = async ({ data }) => {
    if (data.finals) return postMessage({ finals: wasm_bindgen.finals(data.finals) });
    try {
      await wasm_bindgen({ module_or_path: data.bytes });
      wasm_bindgen.open(data.link);
      if (!wasm_bindgen.hunt(data.rows, data.index, data.count)) throw new Error('The lap cannot be worked out for this rider and course.');
    } catch (problem) {
      return postMessage({ problem: problem.message });
    }
    let batch = 4;
    for (;;) {
      const began = performance.now();
      const rows = wasm_bindgen.huntOn(batch);
      const took = performance.now() - began;
      const done = rows.length < batch * 7;
      postMessage({ rows, done });
      if (done) return;
      batch = Math.min(500, Math.max(1, Math.round((batch * MESSAGE_EVERY) / Math.max(took, 1))));
    }
  };
}
