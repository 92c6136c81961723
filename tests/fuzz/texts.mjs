// Random texts for the page: what is typed, links, tracks, courses, racks and files of all. None of them holds the words that a
// fault of the page would show.

const SCRIPT = '<img src=x onerror="globalThis.ran=1"><script>globalThis.ran=1</script>';
const HOSTILE = [
  '',
  ' ',
  '-1',
  '-0',
  '0',
  '1e9',
  '1e-300',
  '99999999999999999999',
  '1:0',
  '١٢',
  '\u202e12',
  '🚲',
  SCRIPT,
  '\'"><b>',
  ',,,',
];
const UNITS = ['', ' mm', ' cm', ' in', ' lb', 'psi', ' %', '°', ' mph', 'c', ' furlongs'];
const GROUNDS = ['tarmac', 'packed gravel', 'firm grass', 'wet soft grass', 'mud', 'deep mud', 'loose sand', 'lava'];
const PARTS = ['rings', 'cassette', 'gears-off', 'tyre', 'rim', 'capacity', 'links', 'bike-mass', '__proto__', 'colour'];

const number = (chance) => {
  const size = 10 ** (chance.below(6) - 1);
  return String(Math.round(chance.share() * size * 100) / 100).replace('.', chance.one(['.', ',']));
};
const teeth = (chance) => chance.some(13, () => 8 + chance.below(50)).join(chance.one(['-', '/', ', ', ' ']));

/** What may be typed into any field. */
export function typed(chance) {
  const kinds = [
    () => number(chance) + chance.one(UNITS),
    () => teeth(chance),
    () => chance.one(HOSTILE),
    () => chance.some(6, () => stretch(chance)).join('\n'),
    () => chance.one(['x', '5', '-', '\n', 'mud; ']).repeat(chance.below(5000)),
    () => `${20 + chance.below(40)}-${406 + chance.below(300)}`,
  ];
  return chance.one(kinds)();
}

function stretch(chance) {
  const more = chance.one(['', '; foot 1', '; corner 12', '; heading 90', '; foot', '; corner x']);
  return `${number(chance)}; ${chance.one(['', '-'])}${number(chance)}; ${chance.one(GROUNDS)}${more}`;
}

const fields = (chance, keys, most) => Object.fromEntries(chance.some(most, () => [chance.one(keys), typed(chance)]));

/** An address to a bench. */
export function link(chance, keys) {
  const parts = Object.entries(fields(chance, [...keys, 'sq', 'pq', 'x'], 12));
  const text = `r=${chance.one(['3', '3', '2', '9'])}&${parts.map(([key, text]) => `${key}=${encodeURIComponent(text)}`).join('&')}`;
  return chance.share() < 0.2 ? text.slice(chance.below(text.length)) : text;
}

/** A recorded track, sound or nearly. */
export function track(chance) {
  let [lat, lon, height] = [50 + chance.share(), 8 + chance.share(), 100];
  const points = chance.some(300, () => {
    [lat, lon, height] = [
      lat + (chance.share() - 0.5) / 2000,
      lon + (chance.share() - 0.5) / 2000,
      height + chance.share() * 4 - 2,
    ];
    return `<trkpt lat="${lat}" lon="${lon}"><ele>${chance.share() < 0.02 ? chance.one(HOSTILE) : height}</ele></trkpt>`;
  });
  const text = `<?xml version="1.0"?><gpx><trk><name>t</name><trkseg>${points.join('')}</trkseg></trk></gpx>`;
  return chance.share() < 0.3 ? text.slice(0, chance.below(text.length)) : text;
}

/** Any value of JSON. */
function anything(chance, depth = 3) {
  const kinds = [() => null, () => chance.below(99), () => typed(chance), () => true];
  if (depth > 0) {
    kinds.push(() => chance.some(4, () => anything(chance, depth - 1)));
    kinds.push(() => Object.fromEntries(chance.some(4, () => [chance.one([...PARTS, 'name']), anything(chance, depth - 1)])));
  }
  return chance.one(kinds)();
}

const course = (chance) => ({
  name: chance.one(['Hill', SCRIPT, '']),
  smoothingM: chance.below(90),
  stretches: chance.some(9, () => stretch(chance)),
});
const bike = (chance) => ({
  name: chance.one(['Mud', 'Road', SCRIPT, '']),
  parts: fields(chance, PARTS, 8),
  'not-mine': fields(chance, PARTS, 3),
});

/** A value with one of its properties at random put in the place of another. */
function spoilt(chance, value) {
  if (chance.share() < 0.5) return value;
  return { ...value, [chance.one(Object.keys(value))]: anything(chance) };
}

/** A file that calls itself a course, a rack or all. */
export function file(chance, keys) {
  const kinds = [
    () => ({ remountCourse: 1, ...course(chance) }),
    () => ({ remount: 'rack', version: 1, bikes: chance.some(4, () => bike(chance)), box: typed(chance) }),
    () => ({
      remount: 'scenario',
      version: 1,
      bench: { mine: fields(chance, keys, 12), 'not-mine': fields(chance, [...keys, '__proto__'], 4) },
      ridden: course(chance),
      bikes: chance.some(3, () => spoilt(chance, bike(chance))),
      courses: chance.some(2, () => spoilt(chance, course(chance))),
    }),
  ];
  return JSON.stringify(spoilt(chance, chance.one(kinds)()));
}
