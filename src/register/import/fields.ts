/** What a column of a file can hold, besides the sizes of a kind, which are `size.` and the dimension's name. */
export const FIELDS = [
  'tag',
  'kind',
  'maker',
  'serial',
  'batch',
  'rating',
  'length',
  'lastExamined',
  'store',
  'notes',
  'manufacturedOn',
  'firstUsedOn',
  'condition',
  'labelLegible',
  'certificateOnFile',
  'owner',
  'hiredFrom',
  'hiredTo',
] as const;
export type Field = (typeof FIELDS)[number] | `size.${string}`;

/** The columns without which no row can be taken. The store may also be chosen for the whole file. */
export const NEEDED_FIELDS = ['tag', 'kind', 'maker', 'serial'] as const satisfies readonly Field[];

/** What each field is called on the page and in an export. */
export const FIELD_NAMES: Readonly<Record<(typeof FIELDS)[number], string>> = {
  tag: 'Tag',
  kind: 'Kind',
  maker: 'Maker',
  serial: 'Serial number',
  batch: 'Batch',
  rating: 'Rating',
  length: 'Length',
  lastExamined: 'Last examined',
  store: 'Store',
  notes: 'Notes',
  manufacturedOn: 'Manufactured',
  firstUsedOn: 'First used',
  condition: 'Condition',
  labelLegible: 'Label legible',
  certificateOnFile: 'Report on file',
  owner: 'Owner',
  hiredFrom: 'First day of hire',
  hiredTo: 'Last day of hire',
};

/** True for a name of the list, or a size. */
export function isField(text: string): text is Field {
  return text.startsWith('size.') || FIELDS.some((field) => field === text);
}
