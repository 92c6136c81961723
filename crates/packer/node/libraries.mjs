// What the page takes from packages.

/** Makes one element the same as another, touching only what differs. */
export { default as morph } from 'morphdom';
