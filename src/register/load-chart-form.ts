/** The fields of a form that make up a load chart, as the DTO reads it. */
const FIELDS = {
  basis: 'loadChart.distanceBasis',
  points: 'loadChart.points',
  axleToForkFaceMm: 'loadChart.axleToForkFaceMm',
  axleToCarriageMm: 'loadChart.axleToCarriageMm',
  coverBy: 'loadChart.attachmentCover.by',
  coverReference: 'loadChart.attachmentCover.reference',
} as const;

/** The chart that a form's fields say, or undefined where nothing but the way of measuring is filled in. */
export function readChartForm(form: Readonly<Record<string, unknown>>): Record<string, unknown> | undefined {
  const { basis, points, axleToForkFaceMm, axleToCarriageMm, coverBy, coverReference } = FIELDS;
  const isBlank = Object.values(FIELDS).every((name) => name === basis || form[name] === undefined);
  if (isBlank) return undefined;
  const cover = filled({ by: form[coverBy], reference: form[coverReference] });
  return {
    points: chartPoints(form[points]),
    ...filled({
      distanceBasis: form[basis],
      axleToForkFaceMm: form[axleToForkFaceMm],
      axleToCarriageMm: form[axleToCarriageMm],
      ...(Object.keys(cover).length > 0 && { attachmentCover: cover }),
    }),
  };
}

/** Points of a text with one to a line. What cannot be taken apart stays in the last figure, which then is refused. */
export function chartPoints(text: unknown): Record<string, string>[] {
  if (typeof text !== 'string') return [];
  return text
    .split(/\r?\n/)
    .filter((line) => line.trim() !== '')
    .map((line) => {
      const [heightMm = '', distanceMm = '', ...rest] = line.trim().split(/[\s,;]+/);
      return { heightMm, distanceMm, capacityKg: rest.join(' ') };
    });
}

/** Points as the form shows them: the text that `chartPoints` reads. */
export function pointsText(points: unknown): string {
  if (!Array.isArray(points)) return '';
  return points.map((point: unknown) => figures(point).join(', ')).join('\n');
}

function figures(point: unknown): string[] {
  if (typeof point !== 'object' || point === null) return [];
  const all: unknown[] = ['heightMm', 'distanceMm', 'capacityKg'].map((name): unknown =>
    Reflect.get(point, name),
  );
  return all.filter((figure) => typeof figure === 'string').filter((figure) => figure !== '');
}

function filled(fields: Readonly<Record<string, unknown>>): Record<string, unknown> {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined));
}
