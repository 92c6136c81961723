// @ts-check
// What the browser keeps for the page, which it may refuse at any time.

const PREFIX = 'remount-course:';
const LEFT = 'remount-left';

/** Names of all courses that are kept. */
export function names() {
  const keys = allowed(() => Object.keys(localStorage), []);
  const own = keys.filter((key) => key.startsWith(PREFIX));
  return own.map((key) => key.slice(PREFIX.length)).sort();
}

/**
 * The course kept under a name, null if there is none.
 * @param {string} name
 */
export const kept = (name) => allowed(() => localStorage.getItem(PREFIX + name), null);

/**
 * Whether the browser keeps the course.
 * @param {string} name
 * @param {string} text
 */
export function keep(name, text) {
  return allowed(() => {
    localStorage.setItem(PREFIX + name, text);
    return true;
  }, false);
}

/**
 * Whether the browser let the course be forgotten.
 * @param {string} name
 */
export function forget(name) {
  return allowed(() => {
    localStorage.removeItem(PREFIX + name);
    return true;
  }, false);
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
