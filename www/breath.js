// @ts-check
// A pause in the work of a worker.

/** The next task, in which a newer order is heard first. @returns {Promise<void>} */
export const breath = () => new Promise((go) => void setTimeout(go));
