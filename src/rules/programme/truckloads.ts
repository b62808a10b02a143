/**
 * The panels of each truck: full loads, and what is left over on the last.
 *
 * Example: `truckloads(40, 18)` gives `[18, 18, 4]`.
 */
export function truckloads(panels: number, panelsPerLoad: number): readonly number[] {
  const loads = Math.ceil(panels / panelsPerLoad);
  return Array.from({ length: loads }, (_, load) => Math.min(panelsPerLoad, panels - load * panelsPerLoad));
}
