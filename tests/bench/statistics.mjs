/** The value below which the given share of the sorted values lies. */
export function quantile(values, share) {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
}

export const median = (values) => quantile(values, 0.5);

export const ms = (value, digits = 2) => `${value.toFixed(digits)} ms`;

export const times = (value) => `× ${value.toFixed(2)}`;
