// Random calls of the JavaScript module: sound inputs, one or two values of them spoilt.

const RIDER = { bodyKg: 66, kitKg: 2, powerW: 240 };
const BIKE = { massKg: 9, rings: [44, 32], sprockets: [11, 13, 15, 18, 21, 24, 28, 32], circumferenceMm: 2130 };
const COURSE = {
  stretches: [
    { lengthM: 90, gradientPercent: 0, ground: 'firm grass' },
    { lengthM: 35, gradientPercent: 14, ground: 'mud' },
    { lengthM: 80, gradientPercent: -6, ground: 'packed gravel' },
  ],
};
const { rings, sprockets, circumferenceMm } = BIKE;
const FRAME = { stackMm: 578, reachMm: 383, headAngleDeg: 72, topCapMm: 12, clampHeightMm: 40 };
const SEARCH = { rider: RIDER, bike: BIKE, course: COURSE, smallestRing: 42, largestRing: 44, rings: 'single' };

/** Functions with inputs that they take. */
const SOUND = {
  gearTable: [{ rings, sprockets, circumferenceMm, cadencesRpm: [55, 85] }],
  cassetteNamed: [12, 25, 8],
  overlap: [{ rings, sprockets, circumferenceMm, duplicateTolerancePercent: 2 }],
  compare: [
    { a: { rings, sprockets, circumferenceMm }, b: { rings: [40], sprockets, circumferenceMm }, duplicateTolerancePercent: 2 },
  ],
  wheel: [{ designation: '33-622' }],
  cageCheck: [{ rings, sprockets, totalCapacityTeeth: 33 }],
  chain: [{ rings, sprockets, chainstayMm: 425, bottomBracketDropMm: 68 }],
  rideOrRun: [{ rider: RIDER, bike: BIKE, gradientsPercent: [4, 9, 14] }],
  climb: [{ rider: RIDER, bike: BIKE, gradientPercent: 9, lengthM: 60 }],
  lap: [{ rider: RIDER, bike: BIKE, course: COURSE }],
  search: [SEARCH],
  combine: [{ box: { chainsets: [[50, 34], [40]], cassettes: [sprockets] }, rider: RIDER, bike: BIKE, course: COURSE }],
  tyreWidth: [{ labelMm: 33, rimInnerMm: 21 }],
  airSpring: [{ widthMm: 33, rimInnerMm: 21, outerRadiusMm: 344, loadN: 400, pressureBar: 1.9 }],
  tyrePressure: [{ riderKg: 66, kitKg: 2, bikeKg: 9, widthMm: 33, labelMm: 33, construction: 'tubeless', terrain: 'soft' }],
  stemPosition: [{ ...FRAME, spacersMm: 10, stemLengthMm: 100, stemAngleDeg: -6 }],
  stemSearch: [{ targetXMm: 460, targetYMm: 630, ...FRAME, toleranceMm: 5, maxSpacersMm: 30 }],
};

const SPOILS = [
  Number.NaN,
  Infinity,
  -Infinity,
  -1,
  0,
  1e-300,
  1e300,
  65536,
  '',
  'mud',
  null,
  undefined,
  true,
  {},
  [],
  [[]],
  [1e9],
];

/** One call: a function's name and what it is given. */
export function call(chance) {
  const name = chance.one(Object.keys(SOUND));
  const given = structuredClone(SOUND[name]);
  for (let times = chance.below(3); times > 0; times -= 1) spoil(chance, given);
  return { name, given };
}

function spoil(chance, value) {
  const key = chance.one(Object.keys(value));
  const inner = value[key];
  const isFilled = typeof inner === 'object' && inner !== null && Object.keys(inner).length > 0;
  if (isFilled && chance.share() < 0.8) return spoil(chance, inner);
  value[key] =
    typeof inner === 'number' && chance.share() < 0.5
      ? inner * 10 ** (chance.share() * 4 - 2)
      : structuredClone(chance.one(SPOILS));
}

/** Whether anything in an answer is no number where one should be. */
export const holdsNaN = (answer) =>
  typeof answer === 'object' && answer !== null ? Object.values(answer).some(holdsNaN) : Number.isNaN(answer);
