// A log as the application sends it: a header that says what there is, then numbers as the processor holds them.

/**
 * Little-endian throughout: the header's length (4 bytes), the header (JSON), the times (64 bits each, seconds), then
 * each column (32 bits each, NaN where there is none). The times begin at a multiple of 8.
 * Returns {headline, titles, bands, marks, times, columns: [{name, label, quantity, unit, values}]}.
 * @type {(buffer: ArrayBuffer) => Log}
 */
export function readColumns(buffer) {
  const length = new DataView(buffer).getUint32(0, true);
  const header = JSON.parse(new TextDecoder().decode(new Uint8Array(buffer, 4, length)));
  /** @type {Log & { rows: number }} */
  const { rows, columns, bands = [], marks = [], headline = "", titles = {} } = header;
  const times = new Float64Array(buffer, 4 + length, rows);
  const after = times.byteOffset + times.byteLength;
  const filled = columns.map((column, at) => ({
    ...column,
    values: new Float32Array(buffer, after + at * rows * Float32Array.BYTES_PER_ELEMENT, rows),
  }));
  return { headline, titles, bands, marks, times, columns: filled };
}

/** Temperatures share a panel, humidities another: what has one unit has one scale.
 * @type {(columns: Column[]) => Column[][]} */
export function panelsOf(columns) {
  /** @type {Map<string, Column[]>} */
  const panels = new Map();
  for (const column of columns) {
    panels.set(column.unit, [...(panels.get(column.unit) ?? []), column]);
  }
  return [...panels.values()];
}

/** The drawing knows a gap by null. @type {(values: Float32Array) => Float32Array | (number | null)[]} */
export function withGaps(values) {
  return values.some(Number.isNaN) ? Array.from(values, (value) => (Number.isNaN(value) ? null : value)) : values;
}

/** The row whose time is next to a moment. @type {(times: Float64Array, moment: number) => number} */
export function nearest(times, moment) {
  let [low, high] = [0, times.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (times[middle] <= moment) low = middle;
    else high = middle;
  }
  return moment - times[low] <= times[high] - moment ? low : high;
}
