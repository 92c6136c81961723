// A program that takes the module as a package: its types hold under TypeScript's strictest settings.

import init, { type CageCheckResult, cageCheck, gearTable, type RideOrRunInput, rideOrRun } from '../../../dist/api/remount.js';
import { start, startSync } from '../../../dist/api/unstarted.js';

await init();
await start(new URL('https://example.org/remount_bg.wasm'));
startSync(new Uint8Array());

const checked: CageCheckResult = cageCheck({ rings: [44, 32], sprockets: [11, 32] });
const spare: number | null = checked.spareTeeth;

const asked: RideOrRunInput = {
  rider: { bodyKg: 62, kitKg: 2, powerW: 220 },
  bike: { massKg: 9, rings: [44], sprockets: [11, 32] },
  gradientsPercent: [4],
};
const speed: number | undefined = rideOrRun(asked).rows[0]?.rideMs;

// @ts-expect-error: a text is no list of teeth.
gearTable({ rings: '44', sprockets: [11], circumferenceMm: 2100 });

export { spare, speed };
