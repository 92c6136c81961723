// @ts-check
// Files that the page hands out.

const READ_AFTER = 1000; // milliseconds

/**
 * Saves a text as a file.
 * @param {string} name
 * @param {string} text
 * @param {string} type
 */
export function save(name, text, type) {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), READ_AFTER);
}
