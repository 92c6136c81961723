// Who rides in the comparison: the rider, bike and account of effort of `reserve_lap` in src/lib.rs, with gear-math's usual values.

export const GRAVITY = 9.81;
export const RIDER = { body: 64, kit: 2, efficiency: 0.23, standing: 1.5 };
export const BIKE = { mass: 9, wheel: 2.15, efficiency: 0.96, load: 1.2, inertia: 0.14 };
export const AIR = { drag: 0.5 * 1.2 * (0.4 + 0.0044), foot: 0.01 };
export const BEARING = [0.091, 0.0087];
export const STANCE = { rear: 0.55, lean: 1050 / 1020 };
export const HABITS = { rear: 0.2, front: 0.6, off: 1.5, on: 1.5, braking: 3, balance: 1.2 };

export const MASS = RIDER.body + RIDER.kit + BIKE.mass;
const RADIUS = BIKE.wheel / (2 * Math.PI);
export const EFFECTIVE_MASS = MASS + BIKE.inertia / (RADIUS * RADIUS);

/** Sustainable and peak power, what is repaid of a joule, the share of strength that lasts, what leaving the preferred cadence costs. */
export const SUSTAINABLE = 230;
export const PEAK = 14 * RIDER.body;
export const REPAID = 0.5 * SUSTAINABLE;
export const LASTING = 0.5;
export const CADENCE_COST = 0.4;
export const FASTEST_RPM = 230;
export const USUAL_PRICE = 0.68 / SUSTAINABLE;

const AT_NO_POWER_RPM = 42.5;
export const RPM_PER_W = 0.142;
export const SLOWEST_RPM = 40;

export const peakAt = (rpm) => {
  const share = rpm / FASTEST_RPM;
  return 4 * PEAK * share * Math.max(1 - share, 0);
};

export const heldOf = (peak) => Math.min(SUSTAINABLE, LASTING * peak);

export const preferredRpm = (power) => Math.max(AT_NO_POWER_RPM + RPM_PER_W * power, SLOWEST_RPM);

function rate(power, held, peak) {
  if (power <= held) return REPAID * (power / held - 1);
  return power < peak ? ((power - held) * (peak - held)) / (peak - power) : Infinity;
}

/** What a second takes from the reserve, W. */
export function charge(power, rpm) {
  if (power <= 0) return -REPAID;
  const peak = peakAt(rpm);
  const off = rpm / preferredRpm(power) - 1;
  return rate(power * (1 + CADENCE_COST * off * off), heldOf(peak), peak);
}

export const chargeOnFoot = (power) => rate(Math.max(power, 0), SUSTAINABLE, PEAK);

/** Power at which one more joule charges `worth`; the formulas stand in src/rider/worth.rs. */
export function powerWorth(worth, rpm, guess) {
  const peak = peakAt(rpm);
  const held = heldOf(peak);
  if (held <= 0) return 0;
  if (worth >= 1) {
    const power = powerAbove(worth, rpm, Math.max(guess, held), peak, held);
    if (power >= held) return power;
  }
  const lasting = held / factorAt(held, rpm);
  if (worth * lasting <= REPAID) return 0;
  if (worth <= feltAt(held, rpm)) return lasting;
  return Math.max(powerAbove(worth, rpm, Math.max(guess, lasting), peak, held), lasting);
}

function powerAbove(worth, rpm, power, peak, held) {
  return (peak - (peak - held) * Math.sqrt(feltAt(power, rpm) / worth)) / factorAt(power, rpm);
}

function factorAt(power, rpm) {
  const off = rpm / preferredRpm(power) - 1;
  return 1 + CADENCE_COST * off * off;
}

function feltAt(power, rpm) {
  const preferred = preferredRpm(power);
  const ratio = rpm / preferred;
  const growth = preferred > SLOWEST_RPM ? RPM_PER_W / preferred : 0;
  const off = ratio - 1;
  return Math.max(1 + CADENCE_COST * off * off - power * 2 * CADENCE_COST * off * ratio * growth, 0.2);
}
