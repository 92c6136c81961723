// @ts-check
// What the browser keeps for the page, which it may refuse at any time.

const PREFIX = 'remount-course:';
const BIKE = 'remount-bike:';
const BENCH = 'remount-bench';
const LEFT = 'remount-left';

/** Names of all courses that are kept. */
export const names = () => namesBehind(PREFIX).sort();

/** @param {string} prefix */
function namesBehind(prefix) {
  const keys = allowed(() => Object.keys(localStorage), []);
  return keys.filter((key) => key.startsWith(prefix)).map((key) => key.slice(prefix.length));
}

/**
 * The course kept under a name, null if there is none.
 * @param {string} name
 */
export const kept = (name) => get(PREFIX + name);

/**
 * Whether the browser keeps the course.
 * @param {string} name
 * @param {string} text
 */
export const keep = (name, text) => put(PREFIX + name, text);

/**
 * Whether the browser let the course be forgotten.
 * @param {string} name
 */
export const forget = (name) => drop(PREFIX + name);

/** Bikes that the browser would not keep, until the page is closed. @type {Map<string, string>} */
const unkept = new Map();

/** All bikes that are kept, each under its own key, with their names. */
export function bikes() {
  const kept = new Map(unkept);
  for (const name of namesBehind(BIKE)) {
    if (!kept.has(name)) kept.set(name, String(get(BIKE + name)));
  }
  return kept;
}

/**
 * Whether the browser keeps the bike.
 * @param {string} name
 * @param {string} text
 */
export function keepBike(name, text) {
  const isKept = put(BIKE + name, text);
  if (isKept) unkept.delete(name);
  else unkept.set(name, text);
  return isKept;
}

/**
 * Whether the browser let the bike be forgotten.
 * @param {string} name
 */
export function forgetBike(name) {
  unkept.delete(name);
  return drop(BIKE + name);
}

/**
 * Listens to what other windows do with bikes.
 * @param {() => void} listener
 */
export function whenBikesChange(listener) {
  addEventListener('storage', ({ key }) => {
    if (key === null || key.startsWith(BIKE)) listener();
  });
}

/** The link to the bench that was last on this page, null if it is the demo's. */
export const lastBench = () => get(BENCH);

/**
 * Keeps the link to the bench for the next visit, none of a bench that is the demo's.
 * @param {string} link
 */
export function keepBench(link) {
  const isDemo = !link.includes('&');
  return allowed(() => (isDemo ? localStorage.removeItem(BENCH) : localStorage.setItem(BENCH, link)), undefined);
}

/**
 * Leaves a link behind for this window's next visit: a page that is reloaded comes back at the address it was left with.
 * @param {string} link
 */
export const leaveBehind = (link) => allowed(() => sessionStorage.setItem(LEFT, link), undefined);

/** The link that was left behind, once. */
export function leftBehind() {
  return allowed(() => {
    const link = sessionStorage.getItem(LEFT);
    sessionStorage.removeItem(LEFT);
    return link;
  }, null);
}

/**
 * The text kept under a key, null if there is none.
 * @param {string} key
 */
function get(key) {
  return allowed(() => localStorage.getItem(key), null);
}

/**
 * Whether the browser keeps a text.
 * @param {string} key
 * @param {string} text
 */
function put(key, text) {
  return allowed(() => {
    localStorage.setItem(key, text);
    return true;
  }, false);
}

/**
 * Whether the browser let a text be forgotten.
 * @param {string} key
 */
function drop(key) {
  return allowed(() => {
    localStorage.removeItem(key);
    return true;
  }, false);
}

/**
 * What `work` gives, or `otherwise` where the browser forbids it.
 * @template T
 * @param {() => T} work
 * @param {T} otherwise
 */
function allowed(work, otherwise) {
  try {
    return work();
  } catch {
    return otherwise;
  }
}

const FOLDS = 'remount-folds';

/** Ids of the panels that were open when the page was left. */
export const openFolds = () => (get(FOLDS) ?? '').split(' ').filter(Boolean);

/** @param {string[]} open */
export const keepFolds = (open) => put(FOLDS, open.join(' '));

const USED = 'remount-used:';

/**
 * Values of a list that were picked last, the latest first.
 * @param {string} list
 */
export const used = (list) => (get(USED + list) ?? '').split('\n').filter(Boolean);

/**
 * @param {string} list
 * @param {string[]} values
 */
export const keepUsed = (list, values) => put(USED + list, values.join('\n'));
