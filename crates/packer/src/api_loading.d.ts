/**
 * Resolves when the functions of this module can be called.
 *
 * They can be as soon as the module is imported; calling this, once or often, does no harm.
 */
export default function init(): Promise<void>;
