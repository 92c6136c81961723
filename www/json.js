// @ts-check
// Texts of JSON.

/**
 * What a text of JSON holds; undefined where it is none.
 * @param {string} text
 */
export function parsed(text) {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
