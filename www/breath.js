// @ts-check
// A pause in long work.

/** The next task, in which what has happened meanwhile is heard first. @returns {Promise<void>} */
export const breath = () => new Promise((go) => void setTimeout(go));
