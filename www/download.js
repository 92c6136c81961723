// @ts-check
// Files that the page hands out.

const READ_AFTER = 1000; // milliseconds

/**
 * Saves a text, or what else a file holds.
 * @param {string} name
 * @param {BlobPart} content
 * @param {string} type
 */
export function save(name, content, type) {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([content], { type }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), READ_AFTER);
}
